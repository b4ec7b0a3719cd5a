"""System libraries that the packages need, found by loading each part in a child process.

A missing library shows as an abort without a message once a window is opened or the pose library
is loaded; the child process may die of it. Run as a module, it prints the names of the Debian
packages that hold what is missing, for the Makefile.
"""

import importlib.util
import re
import shutil
import subprocess
import sys
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

#: Seconds that loading one library may take; a few tenths are usual, a cold disk more. [technical]
_LOAD_TIMEOUT_S = 60.0

#: Debian's and Ubuntu's package of each library; found with ldd on the libraries of
#: mediapipe 1.2.3, OpenCV 5.1 and PySide6 6.11.
DEBIAN_PACKAGES: Mapping[str, str] = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libGLESv2.so.2": "libgles2",
    "libX11-xcb.so.1": "libx11-xcb1",
    "libX11.so.6": "libx11-6",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libfreetype.so.6": "libfreetype6",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libgthread-2.0.so.0": "libglib2.0-0",
    "libpulse.so.0": "libpulse0",
    "libpulse-mainloop-glib.so.0": "libpulse-mainloop-glib0",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-image.so.0": "libxcb-image0",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-randr.so.0": "libxcb-randr0",
    "libxcb-render-util.so.0": "libxcb-render-util0",
    "libxcb-render.so.0": "libxcb-render0",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxcb-shm.so.0": "libxcb-shm0",
    "libxcb-sync.so.1": "libxcb-sync1",
    "libxcb-util.so.1": "libxcb-util1",
    "libxcb-xfixes.so.0": "libxcb-xfixes0",
    "libxcb-xkb.so.1": "libxcb-xkb1",
    "libxcb.so.1": "libxcb1",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libxkbcommon.so.0": "libxkbcommon0",
}


class Part(StrEnum):
    """What a library is needed for."""

    POSE = "pose library"
    VIDEO = "video library"
    WINDOW = "window"
    SOUND = "sound"


@dataclass(frozen=True, slots=True, kw_only=True)
class Loading:
    """Result of loading one part.

    Attributes
    ----------
    missing
        Names of the system libraries that are lacking, sorted.
    error
        What the system said if loading failed for any reason, else empty.
    """

    part: Part
    missing: tuple[str, ...] = ()
    error: str = ""

    @property
    def works(self) -> bool:
        return not self.error


_LOAD = """
import ctypes, os, sys
path = sys.argv[1]
if hasattr(os, "add_dll_directory"):
    os.add_dll_directory(os.path.dirname(path))
    os.add_dll_directory(sys.argv[2])
ctypes.CDLL(path)
"""


def libraries() -> dict[Part, Path | None]:
    """Return the file to be loaded for each part; None where its package lacks it."""
    ending = {"win32": "dll", "darwin": "dylib"}.get(sys.platform, "so")
    plugin = {"win32": "qwindows", "darwin": "libqcocoa"}.get(sys.platform, "libqxcb")
    qt = "" if sys.platform == "win32" else "Qt/"
    sound = {
        "win32": "Qt6Multimedia.dll",
        "darwin": "Qt/lib/QtMultimedia.framework/QtMultimedia",
    }.get(sys.platform, "Qt/lib/libQt6Multimedia.so.6")
    return {
        Part.POSE: _inside("mediapipe", f"tasks/c/libmediapipe.{ending}"),
        Part.VIDEO: _inside("cv2", "cv2*.pyd" if sys.platform == "win32" else "cv2*.so"),
        Part.WINDOW: _inside("PySide6", f"{qt}plugins/platforms/{plugin}.{ending}"),
        Part.SOUND: _inside("PySide6", sound),
    }


def _inside(package: str, pattern: str) -> Path | None:
    """Return a file of an installed package without importing the package."""
    spec = importlib.util.find_spec(package)
    for folder in (spec.submodule_search_locations or ()) if spec else ():
        for file in sorted(Path(folder).glob(pattern)):
            return file
    return None


def try_loading(part: Part, file: Path | None) -> Loading:
    """Load a part in a child process."""
    if file is None:
        return Loading(part=part, error="its package is not installed completely")
    if part is Part.VIDEO:
        command = [sys.executable, "-c", "import cv2"]
    else:
        command = [sys.executable, "-c", _LOAD, str(file), str(_package_folder(file))]
    try:
        child = subprocess.run(
            command,
            stdin=subprocess.DEVNULL,
            capture_output=True,
            timeout=_LOAD_TIMEOUT_S,
            check=False,
        )
    except (OSError, subprocess.TimeoutExpired) as failure:
        return Loading(part=part, error=f"loading it did not finish ({failure})")
    if child.returncode == 0:
        return Loading(part=part)
    lines = child.stderr.decode("utf-8", "replace").strip().splitlines()
    error = lines[-1] if lines else f"loading it crashed (code {child.returncode})"
    return Loading(part=part, missing=tuple(sorted(_missing(file, error))), error=error)


def _package_folder(file: Path) -> Path:
    """Return the folder of the package that a file belongs to."""
    packages = (folder for folder in file.parents if (folder / "__init__.py").is_file())
    return next(packages, file.parent)


def _missing(file: Path, error: str) -> set[str]:
    """Return the libraries that the system cannot find; the loader's error names only one."""
    missing = set(re.findall(r"(lib[\w.+-]+): cannot open shared object file", error))
    if ldd := shutil.which("ldd"):
        try:
            listed = subprocess.run(
                [ldd, str(file)], capture_output=True, timeout=_LOAD_TIMEOUT_S, check=False
            ).stdout.decode("utf-8", "replace")
        except (OSError, subprocess.TimeoutExpired):
            return missing
        missing |= set(re.findall(r"^\s*(\S+) => not found", listed, re.MULTILINE))
    return missing


def packages_for(missing: Iterable[str]) -> list[str]:
    """Return the Debian packages of missing libraries; an unknown one keeps its own name."""
    return sorted({DEBIAN_PACKAGES.get(name, name) for name in missing})


def main() -> int:
    """Print what to install, one name a line; return 1 if something cannot be loaded."""
    loadings = [try_loading(part, file) for part, file in libraries().items()]
    for name in packages_for(name for loading in loadings for name in loading.missing):
        print(name)
    for loading in loadings:
        if not loading.works and not loading.missing:
            print(f"{loading.part}: {loading.error}", file=sys.stderr)
    return 0 if all(loading.works for loading in loadings) else 1


if __name__ == "__main__":
    sys.exit(main())
