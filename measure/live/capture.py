"""Capture: the thread that takes frames from a live source, and the mailbox of the newest one.

Reading never waits for inference: a camera is emptied as fast as it delivers, and the network gets
the newest frame. A clip can wait, so all of its frames that a trial is read from are analysed: it
then reads live as it reads from the file.
"""

import threading
import time
import traceback
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from measure.camera.capture import CapturedFrame, LiveSource
from measure.camera.faults import SourceFault, SourceTroubleError
from measure.camera.health import ExposureSettling, SourceWatch, fingerprint
from measure.domain.acquisition import CameraSetup
from measure.errors import InputError
from measure.video.frame import FrameNormalizer, Picture
from measure.video.sampling import COARSE_HZ, FINE_HZ, RateSampler

#: Frames of a clip that may wait. [technical]
_WAITING = 3

#: Pause before a camera that failed is opened again, seconds. [technical]
_AGAIN_S = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameForInference:
    """One frame on its way to the network.

    Attributes
    ----------
    picture
        None for a frame lost to damage.
    index, time_s
        Number of the frame and its time.
    coarse, fine
        Whether it belongs to the grid of the coarse and of the fine passes; for a camera
        that is decided when it is analysed.
    opening
        Number of times the source had been opened; the network starts anew with each.
    """

    picture: Picture | None
    index: int
    time_s: float
    coarse: bool
    fine: bool
    opening: int


class Mailbox:
    """One place for the newest frame, and a short queue for those that are not to be missed.

    Attributes
    ----------
    replaced
        Frames that a newer one replaced.
    """

    def __init__(self) -> None:
        self.replaced = 0
        self._newest: FrameForInference | None = None
        self._grid: deque[FrameForInference] = deque()
        self._change = threading.Condition()

    def put(self, taken: FrameForInference, go_on: Callable[[], bool]) -> None:
        """Leave a frame; one of a grid waits for room in the queue.

        Parameters
        ----------
        go_on
            Asked now and then whether to go on waiting; if not, the frame is dropped.
        """
        with self._change:
            if not (taken.coarse or taken.fine):
                self.replaced += self._newest is not None
                self._newest = taken
                self._change.notify_all()
                return
            while len(self._grid) >= _WAITING:
                if not go_on():
                    return
                self._change.wait(0.05)
            self._newest = None  # older than this one
            self._grid.append(taken)
            self._change.notify_all()

    def take(self, timeout_s: float) -> FrameForInference | None:
        """Return the frame to analyse next, or None if none came in time."""
        with self._change:
            self._change.wait_for(lambda: bool(self._grid) or self._newest is not None, timeout_s)
            if self._grid:
                taken: FrameForInference | None = self._grid.popleft()
            else:
                taken, self._newest = self._newest, None
            self._change.notify_all()
            return taken

    @property
    def is_empty(self) -> bool:
        with self._change:
            return not self._grid and self._newest is None


class CaptureThread:
    """Opens a source, takes its frames, and opens a camera again when it fails.

    Parameters
    ----------
    open_source
        Opens it; runs in the thread, may take long.
    setup
        How its frames are made upright.
    is_camera
        Whether it is watched and opened again; a clip is played once, and waits for the
        network rather than losing frames of the grids.

    Attributes
    ----------
    mailbox
        Where frames are left.
    opened
        (backend, sample aspect) once open.
    ended
        True after the end of a clip.
    """

    def __init__(
        self, open_source: Callable[[], LiveSource], setup: CameraSetup, *, is_camera: bool
    ) -> None:
        self.mailbox = Mailbox()
        self.opened: tuple[str, float] | None = None
        self.ended = False
        self._open_source = open_source
        self._setup = setup
        self._is_camera = is_camera
        self._fault: SourceTroubleError | None = None
        self._watch: SourceWatch | None = None
        self._stopped = threading.Event()
        self._again = False
        self._source: LiveSource | None = None
        self._progress_s = time.monotonic()
        self._opening = 0
        self._index = -1
        self._coarse, self._fine = RateSampler(COARSE_HZ), RateSampler(FINE_HZ)
        self._thread = threading.Thread(target=self._work, name="capture", daemon=True)

    def start(self) -> None:
        self._thread.start()

    def stop(self, timeout_s: float) -> bool:
        """Let the source go; return whether that was done in time."""
        self._stopped.set()
        source = self._source
        if source is not None:
            source.stop()
        self._thread.join(timeout_s)
        return not self._thread.is_alive()

    def open_again(self, trouble: SourceFault) -> None:
        """Close a camera in trouble and open it anew, as soon as the present read returns."""
        self._fault = self._fault or SourceTroubleError(trouble, "")
        self._again = True
        source = self._source
        if source is not None:
            source.stop()

    @property
    def fault(self) -> SourceTroubleError | None:
        """What ended the last reading, until frames come again."""
        return self._fault

    @property
    def is_opening(self) -> bool:
        return self._source is None

    @property
    def fps(self) -> float:
        """Frames a second that the camera delivers, 0 where not known."""
        watch = self._watch
        return 0.0 if watch is None else watch.fps or 0.0

    def trouble(self, now_s: float) -> SourceFault | None:
        """Return what keeps frames from coming at this moment."""
        fault, watch = self._fault, self._watch
        if fault is not None:
            return fault.trouble
        return watch.trouble(now_s) if watch is not None and self._is_camera else None

    def idle_s(self, now_s: float) -> float:
        """Return since when the source has not answered, seconds."""
        return now_s - self._progress_s

    def _work(self) -> None:
        while not self._stopped.is_set():
            try:
                self._open_and_read()
                self.ended = not self._stopped.is_set() and not self._is_camera
            except SourceTroubleError as error:
                self._fault = self._now_unplugged(error)
            except Exception as error:  # noqa: BLE001 - the top of a thread
                traceback.print_tb(error.__traceback__)
                name = type(error).__name__
                self._fault = SourceTroubleError(
                    SourceFault.OTHER, f"Pictures stopped coming ({name})."
                )
            if not self._is_camera:
                return
            self._progress_s = time.monotonic()
            self._stopped.wait(_AGAIN_S if self._fault is not None else 0.0)

    def _now_unplugged(self, error: SourceTroubleError) -> SourceTroubleError:
        """Return the error, as unplugged where the camera was there before."""
        if error.trouble is SourceFault.CAMERA_MISSING and self._opening:
            return SourceTroubleError(SourceFault.CAMERA_UNPLUGGED, error.message)
        return error

    def _open_and_read(self) -> None:
        self._again = False
        source = self._open_source()
        try:
            self._opening += 1
            self._watch = SourceWatch(time.monotonic())
            self._progress_s = time.monotonic()
            self._source = source
            gate = FrameNormalizer(
                sample_aspect=source.sample_aspect,
                quarter_turns=self._setup.quarter_turns,
                already_mirrored=self._setup.already_mirrored,
            )
            self.opened = (source.backend, source.sample_aspect)
            self._read(source, gate, ExposureSettling() if self._is_camera else None)
        finally:
            self._source = None
            source.close()

    def _read(
        self, source: LiveSource, gate: FrameNormalizer, exposure: ExposureSettling | None
    ) -> None:
        while not self._stopped.is_set() and not self._again:
            shot = source.next()
            now_s = self._progress_s = time.monotonic()
            if shot is None:
                return
            if exposure is not None and not self._is_usable(shot, now_s, exposure):
                continue
            try:
                self._leave(shot, gate)
            except InputError as error:
                raise SourceTroubleError(SourceFault.OTHER, error.message) from None

    def _is_usable(self, shot: CapturedFrame, now_s: float, exposure: ExposureSettling) -> bool:
        """Return whether a camera's frame is new and its brightness has settled."""
        assert self._watch is not None
        shown = fingerprint(np.asarray(shot.pixels))
        if not self._watch.see(now_s, shown):
            return False
        self._fault = None
        return exposure.finished(now_s, shown)

    def _leave(self, shot: CapturedFrame, gate: FrameNormalizer) -> None:
        self._index += 1
        coarse = fine = False
        if not self._is_camera:
            coarse, fine = self._coarse.chooses(shot.time_s), self._fine.chooses(shot.time_s)
        taken = FrameForInference(
            picture=None if shot.pixels is None else gate.normalize(shot.pixels),
            index=self._index,
            time_s=shot.time_s,
            coarse=coarse,
            fine=fine,
            opening=self._opening,
        )
        self.mailbox.put(taken, lambda: not self._stopped.is_set())
