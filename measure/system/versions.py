"""Versions of the software that made a number, without importing the heavy packages."""

import platform
from functools import cache
from importlib.metadata import version

#: Version of how values are estimated: raised where readings change on purpose. A stored series
#: breaks there.
ESTIMATOR = "3"


@cache
def software() -> dict[str, str]:
    """Return versions by name: of Thawline, Python, and of all that changes numbers."""
    packages = {
        "thawline": "thawline",
        "mediapipe": "mediapipe",
        "opencv": "opencv-contrib-python",
        "numpy": "numpy",
        "scipy": "scipy",
    }
    return {
        **{name: version(package) for name, package in packages.items()},
        "estimator": ESTIMATOR,
        "python": platform.python_version(),
        "system": f"{platform.system()} {platform.machine()}",
    }
