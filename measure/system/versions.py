"""Versions of the software that made a number, without importing the heavy packages."""

import platform
from functools import cache
from importlib.metadata import version


@cache
def software() -> dict[str, str]:
    """Return versions by name: of Thawline, Python, and the packages that change numbers."""
    packages = {
        "thawline": "thawline",
        "mediapipe": "mediapipe",
        "opencv": "opencv-contrib-python",
        "numpy": "numpy",
        "scipy": "scipy",
    }
    return {
        **{name: version(package) for name, package in packages.items()},
        "python": platform.python_version(),
        "system": f"{platform.system()} {platform.machine()}",
    }
