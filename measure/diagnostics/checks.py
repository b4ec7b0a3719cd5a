"""What this computer lacks for Thawline, each with its cure. Nothing is changed or fetched.

Every check is a function that returns findings; none raises for a fault of the machine.
"""

import os
import platform
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from importlib.metadata import PackageNotFoundError, packages_distributions, requires, version
from pathlib import Path

from measure.diagnostics.system_libraries import Loading, Part, libraries, packages_for, try_loading
from measure.errors import ModelError
from measure.pose_models.bundles import ModelQuality, load
from measure.system.paths import data_folder

#: Versions of Python that the tests ran with.
TRIED_PYTHONS = ((3, 11), (3, 12), (3, 13))

#: Free space that sessions, reports and annotated clips want. Ours.
FREE_SPACE_WANTED = 500 << 20

#: The build of OpenCV that the pose library itself requires.
OPENCV = "opencv-contrib-python"

_CHILD_TIMEOUT_S = 60.0


class Purpose(StrEnum):
    """What is not possible while something lacks."""

    MEASURING = "measuring"
    WINDOW = "window"
    CAMERA = "camera"
    STEADIER_READINGS = "steadier readings"
    SOUND = "sound"


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing looked at.

    Attributes
    ----------
    name
        What was looked at, in a few words.
    present
        Whether it is as it should be.
    purpose
        What it is needed for.
    found
        What was found.
    cure
        What to do, one sentence; empty if nothing needs to be done.
    """

    name: str
    present: bool
    purpose: Purpose
    found: str
    cure: str = ""


def check_machine() -> list[Finding]:
    """Look at everything; takes a few seconds because libraries are loaded in children."""
    return [
        python_finding(sys.version_info[:2], sys.maxsize > 1 << 32),
        platform_finding(sys.platform, platform.machine()),
        *package_findings(requires("thawline") or []),
        opencv_finding(packages_distributions().get("cv2", [])),
        *(library_finding(try_loading(part, file)) for part, file in libraries().items()),
        *model_findings(),
        folder_finding(data_folder()),
        space_finding(data_folder()),
        display_finding(sys.platform, os.environ),
        camera_finding(),
    ]


def ready(findings: Iterable[Finding]) -> bool:
    """Return whether clips can be measured here, whatever else lacks."""
    return all(each.present for each in findings if each.purpose is Purpose.MEASURING)


def python_finding(found: tuple[int, int], is_64_bit: bool) -> Finding:
    tried = ", ".join(f"{major}.{minor}" for major, minor in TRIED_PYTHONS)
    return Finding(
        name="Python",
        present=found in TRIED_PYTHONS and is_64_bit,
        purpose=Purpose.MEASURING,
        found=f"{found[0]}.{found[1]}, {64 if is_64_bit else 32} bit",
        cure=""
        if found in TRIED_PYTHONS and is_64_bit
        else f"Install a 64-bit Python of one of the tried versions ({tried}) and set up anew "
        "with it.",
    )


def platform_finding(system: str, processor: str) -> Finding:
    """Say whether the pose library exists for this system and processor."""
    processor = processor.lower()
    arm = processor in {"arm64", "aarch64"}
    intel = processor in {"x86_64", "amd64"}
    works = {"linux": intel or arm, "win32": intel, "darwin": arm}.get(system, False)
    if system == "darwin" and intel:
        cure = (
            "Use another computer: the pose library is no longer made for Macs with an Intel "
            "processor."
        )
    else:
        cure = (
            "Use Linux (x86-64 or ARM64), Windows (x86-64) or a Mac with an Apple processor: "
            "the pose library is made for these only."
        )
    return Finding(
        name="System",
        present=works,
        purpose=Purpose.MEASURING,
        found=f"{system}, {processor}",
        cure="" if works else cure,
    )


def package_findings(requirements: Sequence[str]) -> Iterator[Finding]:
    """Compare the installed packages with the ranges that Thawline was tried with.

    Parameters
    ----------
    requirements
        As in the metadata of Thawline's own package; those of extras are passed over.
    """
    from packaging.requirements import Requirement

    for text in requirements:
        wanted = Requirement(text)
        if wanted.marker and not wanted.marker.evaluate({"extra": ""}):
            continue
        try:
            found = version(wanted.name)
        except PackageNotFoundError:
            found = ""
        fits = bool(found) and wanted.specifier.contains(found, prereleases=True)
        windowed = wanted.name.lower().startswith(("pyside6", "pyqtgraph"))
        yield Finding(
            name=f"Package {wanted.name}",
            present=fits,
            purpose=Purpose.WINDOW if windowed else Purpose.MEASURING,
            found=found or "not installed",
            cure=""
            if fits
            else f'Install a tried version: pip install "{wanted.name}{wanted.specifier}"',
        )


def opencv_finding(providers: Sequence[str]) -> Finding:
    """Say whether exactly one package provides OpenCV: two overwrite each other's files."""
    names = sorted({name.lower() for name in providers})
    if names == [OPENCV]:
        cure = ""
    elif not names:
        cure = f"Install it: pip install {OPENCV}"
    else:
        cure = (
            f"Keep {OPENCV} only: pip uninstall {' '.join(names)}, then pip install "
            f"--force-reinstall --no-deps {OPENCV}"
        )
    return Finding(
        name="OpenCV from one package",
        present=not cure,
        purpose=Purpose.MEASURING,
        found=" and ".join(names) or "none",
        cure=cure,
    )


_PART_PURPOSE: Mapping[Part, Purpose] = {
    Part.POSE: Purpose.MEASURING,
    Part.VIDEO: Purpose.MEASURING,
    Part.WINDOW: Purpose.WINDOW,
    Part.SOUND: Purpose.SOUND,
}


def library_finding(loading: Loading) -> Finding:
    """Turn the loading of a part into words and a cure."""
    if loading.works:
        found, cure = "loads", ""
    elif loading.missing:
        found = f"system libraries missing: {', '.join(loading.missing)}"
        cure = (
            f"Install them; on Debian and Ubuntu: sudo apt-get install "
            f"{' '.join(packages_for(loading.missing))}"
        )
    else:
        found = f"does not load: {loading.said}"
        cure = "Install Thawline's packages anew into a fresh virtual environment."
    return Finding(
        name=f"Libraries of the {loading.part}",
        present=loading.works,
        purpose=_PART_PURPOSE[loading.part],
        found=found,
        cure=cure,
    )


def model_findings() -> Iterator[Finding]:
    """Verify the kept pose bundles; 'full' is the one that measuring cannot do without."""
    for quality in (ModelQuality.FULL, ModelQuality.HEAVY, ModelQuality.LITE):
        needed = quality is ModelQuality.FULL
        try:
            found, cure = f"verified, SHA-256 {load(quality).sha256[:12]}...", ""
        except ModelError as error:
            found = str(error)
            cure = "Run: thawline model" + ("" if needed else " (this quality needs npm)")
        yield Finding(
            name=f"Pose model '{quality}'",
            present=not cure,
            purpose=Purpose.MEASURING if needed else Purpose.STEADIER_READINGS,
            found=found,
            cure=cure,
        )


def folder_finding(folder: Path) -> Finding:
    """Say whether sessions can be kept; a folder that is not there yet is not made."""
    nearest = _nearest(folder)
    fault = ""
    if not nearest.is_dir():
        fault = f"{nearest} is not a folder"
    elif not os.access(nearest, os.W_OK | os.X_OK):
        fault = f"{nearest} may not be written"
    elif nearest == folder:
        try:
            with tempfile.TemporaryFile(dir=folder):
                pass
        except OSError as error:
            fault = f"{folder} cannot be written ({error.strerror or error})"
    return Finding(
        name="Data folder",
        present=not fault,
        purpose=Purpose.MEASURING,
        found=fault or f"{folder} can be written",
        cure=fault and "Give yourself write permission, or set THAWLINE_DATA to another folder.",
    )


def space_finding(folder: Path) -> Finding:
    free = shutil.disk_usage(_nearest(folder)).free
    enough = free >= FREE_SPACE_WANTED
    return Finding(
        name="Free space",
        present=enough,
        purpose=Purpose.MEASURING,
        found=f"{free >> 20} MB free, {FREE_SPACE_WANTED >> 20} MB wanted",
        cure="" if enough else "Free some space, or set THAWLINE_DATA to another disk.",
    )


def _nearest(folder: Path) -> Path:
    """Return the folder, or the nearest one above it that is there."""
    for each in (folder.absolute(), *folder.absolute().parents):
        if each.exists():
            return each
    return folder


_CONNECT = """
import ctypes, sys
xcb = ctypes.CDLL("libxcb.so.1")
xcb.xcb_connect.restype = ctypes.c_void_p
xcb.xcb_connection_has_error.argtypes = [ctypes.c_void_p]
sys.exit(1 if xcb.xcb_connection_has_error(xcb.xcb_connect(None, None)) else 0)
"""


def display_finding(system: str, environment: Mapping[str, str]) -> Finding:
    """Say whether a window could be shown; Windows and macOS always have a display."""
    cure = ""
    if system in {"win32", "darwin"}:
        found = "the system's own"
    elif socket := environment.get("WAYLAND_DISPLAY"):
        place = Path(environment.get("XDG_RUNTIME_DIR", "/run"), socket)
        found = f"Wayland, {socket}"
        if not place.exists():
            found, cure = f"Wayland, but {place} is not there", "Log in to a graphical session."
    elif name := environment.get("DISPLAY"):
        found = f"X, {name}"
        code, _ = _ask_child(_CONNECT, environment)
        if code != 0:
            found, cure = f"X, but {name} does not answer", "Log in to a graphical session."
    else:
        found, cure = "none", "Log in to a graphical session; clips can be measured without."
    return Finding(name="Display", present=not cure, purpose=Purpose.WINDOW, found=found, cure=cure)


_CAMERAS = """
from cv2_enumerate_cameras import enumerate_cameras
names = {each.path or str(each.index): each.name for each in enumerate_cameras()}
print("\\n".join(names.values()))
"""


def camera_finding() -> Finding:
    """Say which cameras the system lists; none is opened."""
    code, listed = _ask_child(_CAMERAS, os.environ)
    names = [line for line in listed.splitlines() if line.strip()] if code == 0 else []
    closed = [str(each) for each in _cameras_without_permission()]
    if closed:
        found = f"{', '.join(closed)}: no permission"
        cure = (
            "Add yourself to the group of the camera (sudo usermod -aG video $USER), log in anew."
        )
    elif names:
        found, cure = ", ".join(names), ""
    else:
        found = "none" if code == 0 else "the system could not be asked"
        cure = "Plug in a webcam or allow access to it; clips can be measured without."
    return Finding(name="Camera", present=not cure, purpose=Purpose.CAMERA, found=found, cure=cure)


def _cameras_without_permission() -> list[Path]:
    devices = Path("/dev").glob("video*") if sys.platform == "linux" else ()
    return sorted(each for each in devices if not os.access(each, os.R_OK | os.W_OK))


def _ask_child(code: str, environment: Mapping[str, str]) -> tuple[int, str]:
    """Run code that may crash or hang in a child; return its exit code and output."""
    try:
        done = subprocess.run(
            [sys.executable, "-c", code],
            stdin=subprocess.DEVNULL,
            capture_output=True,
            timeout=_CHILD_TIMEOUT_S,
            env=dict(environment),
            check=False,
        )
    except (OSError, subprocess.TimeoutExpired):
        return 1, ""
    return done.returncode, done.stdout.decode("utf-8", "replace")
