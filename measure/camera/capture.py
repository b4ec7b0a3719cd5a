"""Camera capture: a camera opened by name, and its frames until it fails.

Whatever OpenCV answers, the caller gets frames with the time they were taken or an error
that says which fault it is. What cannot be seen from here (a read that never returns,
frames that stay the same or black) is watched by :mod:`measure.camera.health`.
"""

import os
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Protocol

import numpy as np
from numpy.typing import NDArray

from measure.camera.devices import CameraEntry, backends, camera_called, list_cameras
from measure.camera.faults import SourceFault, SourceTroubleError
from measure.message import TranslatableMessage

#: Width and height that a camera is asked for, pixels: the network gets 256 x 256 pixels of the
#: person, who fills half of the height; more would only cost time and memory. [project]
WANTED_SIZE_PX = (640, 480)

#: Frames a second that a camera is asked for. [project]
WANTED_FPS = 30

#: Failed reads in a row after which the camera counts as gone. [technical]
_MOST_FAILURES = 15

#: Pause between failed reads, seconds. [technical]
_RETRY_S = 0.03


@dataclass(frozen=True, slots=True, kw_only=True)
class CapturedFrame:
    """One frame of a live source.

    Attributes
    ----------
    time_s
        When it was taken: for a camera by the clock that it was given, at the grab; for a
        clip its own time.
    pixels
        Blue-green-red as it was delivered; None for a frame of a clip lost to damage.
    """

    time_s: float
    pixels: NDArray[Any] | None


class LiveSource(Protocol):
    """Frames as they come. Opened, used and closed on one thread; `stop` may come from any."""

    @property
    def backend(self) -> str:
        """What delivers the frames, for the records."""

    @property
    def sample_aspect(self) -> float:
        """Width of a delivered frame's pixel over its height."""

    def next(self) -> CapturedFrame | None:
        """Wait for the next frame; None at the end of a clip.

        Raises
        ------
        SourceTroubleError
            When no more will come.
        """

    def stop(self) -> None:
        """Let `next` answer None as soon as it can."""

    def close(self) -> None: ...


class Capture(Protocol):
    """The part of `cv2.VideoCapture` that is used."""

    def isOpened(self) -> bool: ...  # noqa: N802 - OpenCV's name
    def grab(self) -> bool: ...
    def retrieve(self) -> tuple[bool, Any]: ...
    def get(self, prop: int) -> float: ...
    def set(self, prop: int, value: float) -> bool: ...
    def release(self) -> None: ...


def _open_capture(index: int, backend: int) -> Capture:
    # Hardware transforms make Windows think for up to a minute before the first frame. macOS
    # itself asks for permission at first use, from any thread; OpenCV could only in the main one.
    os.environ.setdefault("OPENCV_VIDEOIO_MSMF_ENABLE_HW_TRANSFORMS", "0")
    os.environ.setdefault("OPENCV_AVFOUNDATION_SKIP_AUTH", "1")
    import cv2

    capture = cv2.VideoCapture()
    capture.setExceptionMode(False)
    capture.open(index, backend)
    opened: Capture = capture
    return opened


class Camera:
    """An open camera.

    Parameters
    ----------
    entry
        Which one.
    clock
        Seconds, for the times of the frames.
    open_capture
        Opens index and backend; tests put others here.
    still_listed
        Tells whether the system still knows the camera, asked when reading fails.
    wait
        Waits so many seconds.

    Raises
    ------
    SourceTroubleError
        It cannot be opened.
    """

    def __init__(
        self,
        entry: CameraEntry,
        *,
        clock: Callable[[], float] = time.monotonic,
        open_capture: Callable[[int, int], Capture] = _open_capture,
        still_listed: Callable[[CameraEntry], bool] | None = None,
        wait: Callable[[float], None] = time.sleep,
    ) -> None:
        self._entry = entry
        self._clock = clock
        self._still_listed = still_listed or is_listed
        self._wait = wait
        self._stopped = False
        self._capture = open_capture(entry.index, entry.backend)
        if not self._capture.isOpened():
            self._capture.release()
            raise _cannot_open(entry)
        self._ask_for_wanted()

    @property
    def backend(self) -> str:
        import cv2

        name = cv2.videoio_registry.getBackendName(self._entry.backend)
        return f"{name}, OpenCV {cv2.__version__}"

    @property
    def sample_aspect(self) -> float:
        return 1.0

    def next(self) -> CapturedFrame | None:
        for _ in range(_MOST_FAILURES):
            if self._stopped:
                return None
            if self._capture.grab():
                time_s = self._clock()
                retrieved, frame = self._capture.retrieve()
                if retrieved and frame is not None and np.asarray(frame).size:
                    return CapturedFrame(time_s=time_s, pixels=np.asarray(frame))
            self._wait(_RETRY_S)
        raise self._gone()

    def stop(self) -> None:
        self._stopped = True

    def close(self) -> None:
        """Let the camera go. Never while another thread reads: that would crash."""
        self._capture.release()

    def _ask_for_wanted(self) -> None:
        """Ask for size and rate; what the camera makes of it shows in its frames.

        The compressed form comes first: drivers choose among its sizes then, and uncompressed
        frames may be too much for the cable at 30 a second. Every question to Windows' own
        way makes it start anew, so it gets only the size.
        """
        import cv2

        width, height = WANTED_SIZE_PX
        size = [(cv2.CAP_PROP_FRAME_WIDTH, width), (cv2.CAP_PROP_FRAME_HEIGHT, height)]
        if self._entry.backend == cv2.CAP_MSMF:
            wanted: Sequence[tuple[int, float]] = size
        else:
            form = cv2.VideoWriter.fourcc(*"MJPG")
            wanted = [
                (cv2.CAP_PROP_FOURCC, form),
                *size,
                (cv2.CAP_PROP_FPS, WANTED_FPS),
                (cv2.CAP_PROP_BUFFERSIZE, 1),
            ]
        for prop, value in wanted:
            self._capture.set(prop, value)

    def _gone(self) -> SourceTroubleError:
        if self._still_listed(self._entry):
            return SourceTroubleError(
                SourceFault.CAMERA_BUSY,
                TranslatableMessage(
                    "The camera {camera} delivers no pictures. Close other programs that use it, "
                    "open its cover and allow it in the privacy settings.",
                    {"camera": self._entry.label},
                ),
            )
        return SourceTroubleError(
            SourceFault.CAMERA_UNPLUGGED,
            TranslatableMessage(
                "The camera {camera} is no longer connected. Plug it in again.",
                {"camera": self._entry.label},
            ),
        )


def is_listed(entry: CameraEntry) -> bool:
    """Return whether the system still lists a camera."""
    return entry.path in {camera.path for camera in list_cameras(entry.backend)}


def _cannot_open(entry: CameraEntry) -> SourceTroubleError:
    """Return why a listed camera does not open, as far as the system tells."""
    device = entry.path if entry.path.startswith("/dev/") else None
    if device is not None and not os.path.exists(device):
        return SourceTroubleError(
            SourceFault.CAMERA_MISSING,
            TranslatableMessage(
                "The camera {camera} is no longer connected. Plug it in again.",
                {"camera": entry.label},
            ),
        )
    if device is not None and not os.access(device, os.R_OK | os.W_OK):
        return SourceTroubleError(
            SourceFault.CAMERA_DENIED,
            TranslatableMessage(
                "You do not have permission to use the camera {camera}. On Linux, your account "
                "must belong to the group `video`.",
                {"camera": entry.label},
            ),
        )
    return SourceTroubleError(
        SourceFault.CAMERA_BUSY,
        TranslatableMessage(
            "The camera {camera} cannot be opened. Close other programs that use it, and allow "
            "it in the privacy settings.",
            {"camera": entry.label},
        ),
    )


def open_camera(label: str | None, clock: Callable[[], float] = time.monotonic) -> Camera:
    """Open the camera with a label, or the first one; the second way is tried where there is one.

    Raises
    ------
    SourceTroubleError
        There is no such camera, or it does not open.
    """
    first_error: SourceTroubleError | None = None
    for backend in backends():
        try:
            return Camera(camera_called(label, list_cameras(backend)), clock=clock)
        except SourceTroubleError as error:
            first_error = first_error or error
    assert first_error is not None
    raise first_error
