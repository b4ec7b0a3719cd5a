"""Checks of this computer: what Thawline needs, what is lacking, and the cure for each.

Every check is a function that returns findings; none raises for a fault of the machine, and none
changes or fetches anything.
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
from measure.pose_models.bundles import bundle_path, load
from measure.pose_models.catalogue import ModelQuality
from measure.system.paths import data_folder

#: Versions of Python that the tests ran with, (major, minor). [technical]
TRIED_PYTHONS = ((3, 11), (3, 12), (3, 13))

#: Free bytes that sessions, reports and annotated clips need. [technical]
FREE_SPACE_WANTED = 500 << 20

#: The build of OpenCV that the pose library itself requires.
OPENCV = "opencv-contrib-python"

#: Seconds that a child process may take to answer. [technical]
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
    """Result of one check.

    Attributes
    ----------
    name
        What was checked, in a few words.
    purpose
        What it is needed for.
    result
        What was found.
    cure
        What to do, one sentence; empty if nothing needs to be done.
    """

    name: str
    purpose: Purpose
    result: str
    cure: str = ""

    @property
    def present(self) -> bool:
        """Whether it is as it should be."""
        return not self.cure


def check_machine() -> list[Finding]:
    """Make every check; takes a few seconds because libraries are loaded in child processes."""
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
    """Return whether clips can be measured here, whatever else is lacking."""
    return all(finding.present for finding in findings if finding.purpose is Purpose.MEASURING)


def python_finding(running: tuple[int, int], is_64_bit: bool) -> Finding:
    """Check the version of Python, (major, minor), and the size of its addresses."""
    tried = ", ".join(f"{major}.{minor}" for major, minor in TRIED_PYTHONS)
    cure = (
        f"Install a 64-bit Python of one of the tried versions ({tried}) and set up again with it."
    )
    return Finding(
        name="Python",
        purpose=Purpose.MEASURING,
        result=f"{running[0]}.{running[1]}, {64 if is_64_bit else 32} bit",
        cure="" if running in TRIED_PYTHONS and is_64_bit else cure,
    )


def platform_finding(system: str, processor: str) -> Finding:
    """Check whether the pose library exists for this system and processor."""
    processor = processor.lower()
    arm = processor in {"arm64", "aarch64"}
    intel = processor in {"x86_64", "amd64"}
    works = {"linux": intel or arm, "win32": intel, "darwin": arm}.get(system, False)
    if system == "darwin" and intel:
        cure = (
            "Use another computer: the pose library is no longer available for Macs with an Intel "
            "processor."
        )
    else:
        cure = (
            "Use Linux (x86-64 or ARM64), Windows (x86-64) or a Mac with an Apple processor: "
            "the pose library is available only for these."
        )
    return Finding(
        name="System",
        purpose=Purpose.MEASURING,
        result=f"{system}, {processor}",
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
            installed = version(wanted.name)
        except PackageNotFoundError:
            installed = ""
        fits = bool(installed) and wanted.specifier.contains(installed, prereleases=True)
        for_window = wanted.name.lower().startswith(("pyside6", "pyqtgraph"))
        cure = f'Install a tried version: pip install "{wanted.name}{wanted.specifier}"'
        yield Finding(
            name=f"Package {wanted.name}",
            purpose=Purpose.WINDOW if for_window else Purpose.MEASURING,
            result=installed or "not installed",
            cure="" if fits else cure,
        )


def opencv_finding(providers: Sequence[str]) -> Finding:
    """Check that exactly one package provides OpenCV: two overwrite each other's files."""
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
        purpose=Purpose.MEASURING,
        result=" and ".join(names) or "none",
        cure=cure,
    )


_PART_PURPOSE: Mapping[Part, Purpose] = {
    Part.POSE: Purpose.MEASURING,
    Part.VIDEO: Purpose.MEASURING,
    Part.WINDOW: Purpose.WINDOW,
    Part.SOUND: Purpose.SOUND,
}


def library_finding(loading: Loading) -> Finding:
    """Return the finding that says how loading a part went."""
    if loading.works:
        result, cure = "loads", ""
    elif loading.missing:
        result = f"system libraries missing: {', '.join(loading.missing)}"
        cure = (
            f"Install them; on Debian and Ubuntu: sudo apt-get install "
            f"{' '.join(packages_for(loading.missing))}"
        )
    else:
        result = f"does not load: {loading.error}"
        cure = "Install Thawline's packages again in a new virtual environment."
    return Finding(
        name=f"Libraries of the {loading.part}",
        purpose=_PART_PURPOSE[loading.part],
        result=result,
        cure=cure,
    )


def model_findings() -> Iterator[Finding]:
    """Verify the kept pose bundles; 'full' is the one that measuring cannot do without."""
    for quality in (ModelQuality.FULL, ModelQuality.HEAVY, ModelQuality.LITE):
        needed = quality is ModelQuality.FULL
        try:
            bundle = load(quality)
            result, cure = f"{bundle.path}, verified, SHA-256 {bundle.sha256[:12]}...", ""
        except ModelError as error:
            result = str(error)
            place = bundle_path(quality)
            cure = (
                f"Run: thawline model{'' if needed else ' (this quality needs npm)'}. Without a "
                f"network, copy {place.name} from another computer into {place.parent}"
            )
        yield Finding(
            name=f"Pose model '{quality}'",
            purpose=Purpose.MEASURING if needed else Purpose.STEADIER_READINGS,
            result=result,
            cure=cure,
        )


def folder_finding(folder: Path) -> Finding:
    """Check whether sessions can be kept; a folder that is not there yet is not made."""
    nearest = _nearest_existing(folder)
    fault = ""
    if not nearest.is_dir():
        fault = f"{nearest} is not a folder"
    elif not os.access(nearest, os.W_OK | os.X_OK):
        fault = f"{nearest} is not writable"
    elif nearest == folder:
        try:
            with tempfile.TemporaryFile(dir=folder):
                pass
        except OSError as error:
            fault = f"{folder} cannot be written ({error.strerror or error})"
    return Finding(
        name="Data folder",
        purpose=Purpose.MEASURING,
        result=fault or f"{folder} is writable",
        cure=fault and "Give yourself write permission, or set THAWLINE_DATA to another folder.",
    )


def space_finding(folder: Path) -> Finding:
    """Check the free space on the disk of a folder, also of one that is not there yet."""
    free = shutil.disk_usage(_nearest_existing(folder)).free
    return Finding(
        name="Free space",
        purpose=Purpose.MEASURING,
        result=f"{free >> 20} MB free, {FREE_SPACE_WANTED >> 20} MB needed",
        cure=""
        if free >= FREE_SPACE_WANTED
        else "Free some space, or set THAWLINE_DATA to another disk.",
    )


def _nearest_existing(folder: Path) -> Path:
    """Return the folder, or the nearest one above it that exists."""
    candidates = (folder.absolute(), *folder.absolute().parents)
    return next((candidate for candidate in candidates if candidate.exists()), folder)


_CONNECT = """
import ctypes, sys
xcb = ctypes.CDLL("libxcb.so.1")
xcb.xcb_connect.restype = ctypes.c_void_p
xcb.xcb_connection_has_error.argtypes = [ctypes.c_void_p]
sys.exit(1 if xcb.xcb_connection_has_error(xcb.xcb_connect(None, None)) else 0)
"""


def display_finding(system: str, environment: Mapping[str, str]) -> Finding:
    """Check whether a window could be shown; Windows and macOS always have a display."""
    cure = ""
    if system in {"win32", "darwin"}:
        display = "the system's own"
    elif socket := environment.get("WAYLAND_DISPLAY"):
        place = Path(environment.get("XDG_RUNTIME_DIR", "/run"), socket)
        display = f"Wayland, {socket}"
        if not place.exists():
            display, cure = f"Wayland, but {place} is not there", "Log in to a graphical session."
    elif name := environment.get("DISPLAY"):
        display = f"X, {name}"
        code, _ = _run_child(_CONNECT, environment)
        if code != 0:
            display, cure = f"X, but {name} does not answer", "Log in to a graphical session."
    else:
        display, cure = "none", "Log in to a graphical session. Clips can be measured without one."
    return Finding(name="Display", purpose=Purpose.WINDOW, result=display, cure=cure)


_CAMERAS = """
from cv2_enumerate_cameras import enumerate_cameras
names = {camera.path or str(camera.index): camera.name for camera in enumerate_cameras()}
print("\\n".join(names.values()))
"""


def camera_finding() -> Finding:
    """Check which cameras the system lists; none is opened."""
    code, output = _run_child(_CAMERAS, os.environ)
    names = [line for line in output.splitlines() if line.strip()] if code == 0 else []
    devices = sorted(Path("/dev").glob("video*")) if sys.platform == "linux" else []
    closed = [str(device) for device in devices if not os.access(device, os.R_OK | os.W_OK)]
    if closed:
        listed = f"{', '.join(closed)}: no permission"
        cure = (
            "Add yourself to the group of the camera (sudo usermod -aG video $USER), then log in "
            "again."
        )
    elif names:
        listed, cure = ", ".join(names), ""
    else:
        listed = "none" if code == 0 else "the system could not be asked"
        cure = "Plug in a webcam or allow access to it. Clips can be measured without one."
    return Finding(name="Camera", purpose=Purpose.CAMERA, result=listed, cure=cure)


def _run_child(code: str, environment: Mapping[str, str]) -> tuple[int, str]:
    """Run code that may crash or hang in a child process; return its exit code and output."""
    try:
        child = subprocess.run(
            [sys.executable, "-c", code],
            stdin=subprocess.DEVNULL,
            capture_output=True,
            timeout=_CHILD_TIMEOUT_S,
            env=dict(environment),
            check=False,
        )
    except (OSError, subprocess.TimeoutExpired):
        return 1, ""
    return child.returncode, child.stdout.decode("utf-8", "replace")
