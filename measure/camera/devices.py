"""Camera devices: the cameras of this computer by name, which people choose and the settings keep.

An index means nothing: it changes when something is plugged in or out, and then another camera
answers. Two cameras of one make share a name; a sign of the port is added to both.
The decoding library is loaded by listing, so the window lists in a process of its own.
"""

import json
import os
import subprocess
import sys
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import Any

from measure.camera.faults import SourceFault, SourceTroubleError
from measure.errors import CameraError
from measure.message import TranslatableMessage

#: Longest time a listing may take, seconds: some drivers think for long. [technical]
LIST_S = 20.0


@dataclass(frozen=True, slots=True, kw_only=True)
class CameraEntry:
    """One camera as the system knows it now.

    Attributes
    ----------
    label
        What people see, and what tells it apart from all others: its name, with a sign of the
        port where another has the same name.
    name, path
        As the system names it, and where it is.
    index, backend
        How OpenCV opens it now; not to be remembered.
    """

    label: str
    name: str
    path: str
    index: int
    backend: int


def backends() -> tuple[int, ...]:
    """Return OpenCV's ways to cameras on this system, the preferred one first."""
    import cv2

    if sys.platform == "win32":
        return cv2.CAP_MSMF, cv2.CAP_DSHOW
    if sys.platform == "darwin":
        return (cv2.CAP_AVFOUNDATION,)
    return (cv2.CAP_V4L2,)


def list_cameras(
    backend: int | None = None, enumerate_cameras: Callable[[int], Sequence[Any]] | None = None
) -> tuple[CameraEntry, ...]:
    """Return the cameras that the system knows, in its order. Loads OpenCV; switches none on.

    Parameters
    ----------
    backend
        OpenCV's number; None takes the preferred one.
    enumerate_cameras
        Lists for a backend objects with `name`, `path` and `index`; tests put others here.
    """
    chosen = backends()[0] if backend is None else backend
    devices = sorted(
        (enumerate_cameras or _enumerate)(chosen), key=lambda device: int(device.index)
    )
    names = [str(device.name or f"Camera {device.index}") for device in devices]
    shared = {name for name, count in Counter(names).items() if count > 1}
    return tuple(
        CameraEntry(
            label=f"{name} (port {_port_sign(str(device.path or device.index))})"
            if name in shared
            else name,
            name=name,
            path=str(device.path or ""),
            index=int(device.index),
            backend=chosen,
        )
        for name, device in zip(names, devices, strict=True)
    )


def _enumerate(backend: int) -> Sequence[Any]:
    from cv2_enumerate_cameras import enumerate_cameras

    return enumerate_cameras(backend)


def _port_sign(path: str) -> str:
    """Return four letters that stay the same as long as the camera stays in its port."""
    place = path
    by_port = Path("/dev/v4l/by-path")
    if by_port.is_dir():
        same = [link.name for link in sorted(by_port.iterdir()) if link.resolve() == Path(path)]
        place = same[0] if same else path
    return sha256(place.encode()).hexdigest()[:4]


def camera_called(label: str | None, cameras: Sequence[CameraEntry]) -> CameraEntry:
    """Return the camera with a label; None takes the first.

    Raises
    ------
    SourceTroubleError
        There is none, or two go by the name, so that either could be the wrong one.
    """
    if not cameras:
        raise SourceTroubleError(
            SourceFault.CAMERA_MISSING,
            TranslatableMessage("No camera is connected. Plug one in and try again."),
        )
    if label is None:
        return cameras[0]
    named = [camera for camera in cameras if camera.label == label] or [
        camera for camera in cameras if camera.name == label
    ]
    if len(named) == 1:
        return named[0]
    message = (
        TranslatableMessage(
            "There are two cameras called {camera}. Plug it in, or choose one on the set-up page.",
            {"camera": label},
        )
        if named
        else TranslatableMessage(
            "There is no camera called {camera}. Plug it in, or choose one on the set-up page.",
            {"camera": label},
        )
    )
    raise SourceTroubleError(SourceFault.CAMERA_MISSING, message)


def find_cameras(timeout_s: float = LIST_S) -> tuple[str, ...]:
    """Return the labels of the cameras, listed by a process of its own. May take seconds.

    Raises
    ------
    CameraError
        The cameras could not be listed.
    """
    try:
        done = subprocess.run(
            (sys.executable, "-P", "-m", "measure.camera.devices"),
            capture_output=True,
            timeout=timeout_s,
            check=True,
            env={**os.environ, "PYTHONPATH": str(Path(__file__).resolve().parents[2])},
            creationflags=getattr(subprocess, "CREATE_NO_WINDOW", 0),
        )
        return tuple(json.loads(done.stdout.splitlines()[-1]))
    except subprocess.TimeoutExpired:
        raise CameraError(
            TranslatableMessage(
                "The cameras could not be listed within {seconds} s. Unplug cameras that are "
                "not needed and try again.",
                {"seconds": f"{timeout_s:g}"},
            )
        ) from None
    except (OSError, subprocess.CalledProcessError, ValueError, IndexError):
        raise CameraError(
            TranslatableMessage(
                "The cameras could not be listed. Run `thawline check`: it names what is missing."
            )
        ) from None


if __name__ == "__main__":
    print(json.dumps([camera.label for camera in list_cameras()]))
