"""Playback: a clip played at real speed as if it were the camera."""

import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path

from measure.camera.capture import CapturedFrame
from measure.camera.faults import SourceFault, SourceTroubleError
from measure.errors import ClipError
from measure.video.reader import ClipReader, SourceFrame
from measure.video.source import FrameSource, open_clip


class ClipCamera:
    """Plays a clip: each frame comes when its time has come, or at once when that is past.

    Parameters
    ----------
    clip
        The clip.
    start_s
        Where to begin, seconds from its first frame.
    loop
        Whether it begins anew at its end; times go on.
    clock
        Seconds that never run backwards.

    Raises
    ------
    SourceTroubleError
        The clip cannot be played.
    """

    def __init__(
        self,
        clip: Path,
        *,
        start_s: float = 0.0,
        loop: bool = False,
        clock: Callable[[], float] = time.monotonic,
        open_source: Callable[[Path], FrameSource] = open_clip,
    ) -> None:
        self._clip = clip
        self._start_s = start_s
        self._loop = loop
        self._clock = clock
        self._open_source = open_source
        self._stopped = threading.Event()
        self._began_s: float | None = None
        self._added_s = 0.0
        self._source = self._opened()
        self._reader = ClipReader(self._source, clip.name)
        self._frames: Iterator[SourceFrame] = self._reader.frames()

    @property
    def backend(self) -> str:
        return f"{self._source.facts.backend}, played"

    @property
    def sample_aspect(self) -> float:
        return self._source.facts.sample_aspect

    def next(self) -> CapturedFrame | None:
        while not self._stopped.is_set():
            frame = self._next_frame()
            if frame is None:
                return None
            time_s = frame.time_s + self._added_s
            if time_s < self._start_s:
                continue
            self._wait_until(time_s)
            return CapturedFrame(time_s=time_s, pixels=frame.pixels)
        return None

    def stop(self) -> None:
        self._stopped.set()

    def close(self) -> None:
        self._source.close()

    def _next_frame(self) -> SourceFrame | None:
        try:
            frame = next(self._frames, None)
            if frame is None and self._loop and self._reader.frames_read:
                self._added_s += self._reader.last_s + self._reader.interval_s
                self._source.close()
                self._source = self._opened()
                self._reader = ClipReader(self._source, self._clip.name)
                self._frames = self._reader.frames()
                frame = next(self._frames, None)
        except ClipError as error:
            raise SourceTroubleError(SourceFault.CLIP_UNREADABLE, error.message) from None
        return frame

    def _wait_until(self, time_s: float) -> None:
        if self._began_s is None:
            self._began_s = self._clock() - time_s
        self._stopped.wait(max(0.0, self._began_s + time_s - self._clock()))

    def _opened(self) -> FrameSource:
        try:
            return self._open_source(self._clip)
        except ClipError as error:
            raise SourceTroubleError(SourceFault.CLIP_UNREADABLE, error.message) from None
