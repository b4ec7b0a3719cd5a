"""The work of the pose process on one clip: decoding, looking, passing results on.

Decoding and looking overlap: the caller's thread decodes, and one thread for each pass looks
(the native code lets other threads run, and one network keeps only one processor busy). Short
queues between them keep memory flat.
No pipes and no processes here.
"""

import queue
import threading
import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

import numpy as np

from measure.body import LANDMARKS, SIDES_EXCHANGED, FloatArray, PoseFrame
from measure.clip_job import ClipFacts, ClipJob, PosePass
from measure.errors import ClipError, InputError, PoseProcessError
from measure.frame import FrameGate, Picture, PixelArray, readmitted
from measure.picture_job import PictureJob
from measure.pose_model_checksums import ModelQuality
from measure.video import FrameSource, SourceFacts, open_clip
from measure.video_read import ClipReader, SourceFrame, merged

#: How often a pass may start anew after the network failed on a picture. Ours.
MOST_REBUILDS = 3

#: Pictures that may wait for a network. Ours.
_WAITING = 4

#: Frames passed on together, and the longest wait for that many. Ours.
_TOGETHER = 32
_LONGEST_WAIT_S = 0.5


class Found(Protocol):
    """People in one picture, as fractions of it; see :class:`measure.landmarker.Detection`."""

    @property
    def places(self) -> FloatArray: ...
    @property
    def visibility(self) -> FloatArray: ...
    @property
    def presence(self) -> FloatArray: ...


class Looker(Protocol):
    """A network that looks at pictures; see :class:`measure.landmarker.Landmarker`."""

    def detect(self, rgb: PixelArray, time_s: float) -> Found: ...
    def close(self) -> None: ...


class Listener(Protocol):
    """Takes results; called from several threads."""

    def frames(self, pass_number: int, frames: Sequence[PoseFrame]) -> None: ...
    def progress(self, share: float) -> None: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Waiting:
    """A picture on its way to the networks; no picture for a frame lost to damage."""

    frame: SourceFrame
    picture: Picture | None


def run_job(
    job: ClipJob,
    make_looker: Mapping[ModelQuality, Callable[[], Looker]],
    listener: Listener,
    open_source: Callable[[Path], FrameSource] = open_clip,
) -> ClipFacts:
    """Look at a clip; results go to the listener.

    Raises
    ------
    ClipError
        If the clip cannot be read.
    PoseProcessError
        If a network keeps failing.
    """
    source = open_source(job.clip)
    threads: list[LookingThread] = []
    try:
        gate = FrameGate(
            sample_aspect=source.facts.sample_aspect,
            quarter_turns=job.quarter_turns,
            already_mirrored=job.already_mirrored,
        )
        ticker = _Ticker(listener, source.facts, job)
        reader = ClipReader(
            source,
            job.clip.name,
            rate_hz=job.rate_hz,
            windows=merged(job.windows) if job.windows is not None else None,
            tick=ticker.tick,
        )
        threads += _looking_threads(job.passes, make_looker, listener)
        size_px = _feed(reader, gate, threads, job.clip.name)
        for thread in threads:
            thread.finish()
        size_px = size_px or gate.upright_size(source.facts.width_px, source.facts.height_px)
        return _facts(source.facts, size_px, gate, reader, threads)
    except ClipError:
        raise
    except InputError as error:
        raise ClipError(f"The clip {job.clip.name}: {error}") from None
    finally:
        for thread in threads:
            thread.abandon()
        source.close()


def _feed(
    reader: ClipReader, gate: FrameGate, threads: Sequence["LookingThread"], name: str
) -> tuple[int, int] | None:
    """Give every chosen picture to every thread; return their upright size, if there was one."""
    size_px = None
    for frame in reader.frames():
        picture = gate.admit(frame.pixels) if frame.pixels is not None else None
        if picture is not None:
            size_px = size_px or (picture.width_px, picture.height_px)
            if size_px != (picture.width_px, picture.height_px):
                raise ClipError(
                    f"The clip {name} changes the size of its picture at {frame.time_s:.1f} s. "
                    "Convert it to one size."
                )
        for thread in threads:
            thread.put(Waiting(frame=frame, picture=picture))
    return size_px


def look_at(
    job: PictureJob,
    make_looker: Mapping[ModelQuality, Callable[[], Looker]],
    listener: Listener,
) -> None:
    """Look at pictures that were kept in memory; results go to the listener.

    Raises
    ------
    PoseProcessError
        If a network keeps failing.
    """
    threads = _looking_threads(job.passes, make_looker, listener)
    try:
        for number, kept in enumerate(job.pictures):
            listener.progress(number / len(job.pictures))
            waiting = Waiting(
                frame=SourceFrame(
                    index=kept.index, time_s=kept.time_s, pixels=None, window=kept.window
                ),
                picture=readmitted(kept.rgb, job.width_px, job.height_px),
            )
            for thread in threads:
                thread.put(waiting)
        for thread in threads:
            thread.finish()
    finally:
        for thread in threads:
            thread.abandon()


def _looking_threads(
    passes: Sequence[PosePass],
    make_looker: Mapping[ModelQuality, Callable[[], Looker]],
    listener: Listener,
) -> list["LookingThread"]:
    """Return a started thread for each pass."""
    threads = [
        LookingThread(make_looker[each.quality], number, each, listener)
        for number, each in enumerate(passes)
    ]
    for thread in threads:
        thread.start()
    return threads


def _facts(
    stated: SourceFacts,
    size_px: tuple[int, int],
    gate: FrameGate,
    reader: ClipReader,
    threads: Sequence["LookingThread"],
) -> ClipFacts:
    notes = [*reader.notes, *(thread.note for thread in threads if thread.note)]
    frames = reader.frames_read + reader.frames_lost
    if reader.frames_lost:
        notes.append(
            f"{reader.frames_lost} of {frames} frames ({reader.frames_lost / frames:.0%}) are "
            "damaged and were left out."
        )
    return ClipFacts(
        width_px=size_px[0],
        height_px=size_px[1],
        frames_read=reader.frames_read,
        frames_expected=stated.stated_frames,
        frames_unreadable=reader.frames_lost,
        duration_s=reader.last_s,
        measured_fps=(frames - 1) / reader.last_s if reader.last_s > 0 else 0.0,
        backend=stated.backend,
        rotation_deg=(stated.rotation_deg + 90 * gate.quarter_turns) % 360,
        sample_aspect=stated.sample_aspect,
        notes=tuple(notes),
    )


class _Ticker:
    """Reports progress now and then; also the sign of life while frames are skipped."""

    def __init__(self, listener: Listener, stated: SourceFacts, job: ClipJob) -> None:
        self._listener = listener
        ends = [stated.stated_duration_s or 0.0]
        if job.windows:
            ends.append(max(end for _, end in job.windows))
        self._end_s = min((end for end in ends if end > 0), default=0.0)
        self._due = 0.0

    def tick(self, time_s: float) -> None:
        now = time.monotonic()
        if now >= self._due:
            self._due = now + _LONGEST_WAIT_S / 2
            self._listener.progress(min(1.0, time_s / self._end_s) if self._end_s else 0.0)


class LookingThread:
    """The thread of one pass, which looks at the pictures given to it."""

    def __init__(
        self, make_looker: Callable[[], Looker], number: int, which: PosePass, listener: Listener
    ) -> None:
        self._waiting: queue.Queue[Waiting | None] = queue.Queue(_WAITING)
        self._stopped = threading.Event()
        self._error: Exception | None = None
        self._run = _Run(number, which, make_looker, listener)
        self._thread = threading.Thread(target=self._work, name=which.name, daemon=True)

    @property
    def note(self) -> str | None:
        """What was odd, or None."""
        return self._run.note

    def start(self) -> None:
        self._thread.start()

    def put(self, waiting: Waiting | None) -> None:
        """Hand over a picture, or None at the end; raise what went wrong in the thread."""
        while not self._stopped.is_set():
            try:
                self._waiting.put(waiting, timeout=0.1)
                return
            except queue.Full:
                continue
        self._raise()

    def finish(self) -> None:
        """Wait until every picture was looked at."""
        self.put(None)
        self._thread.join()
        self._raise()

    def abandon(self) -> None:
        """Stop as soon as the present picture is done."""
        self._stopped.set()
        if self._thread.ident is not None:
            self._thread.join()

    def _raise(self) -> None:
        if self._error is not None:
            raise self._error

    def _work(self) -> None:
        try:
            while not self._stopped.is_set():
                try:
                    waiting = self._waiting.get(timeout=0.1)
                except queue.Empty:
                    continue
                if waiting is None:
                    break
                self._run.look(waiting)
            self._run.flush()
        except Exception as error:  # noqa: BLE001 - the top of a thread; raised in the caller's
            self._error = error
        finally:
            self._run.close()
            self._stopped.set()


class _Run:
    """One pass: a network that is made anew for every span of time, and after a failure."""

    def __init__(
        self,
        number: int,
        which: PosePass,
        make_looker: Callable[[], Looker],
        listener: Listener,
    ) -> None:
        self._number = number
        self._which = which
        self._make_looker = make_looker
        self._listener = listener
        self._looker: Looker | None = None
        self._window = -1
        self._rebuilds = 0
        self._done: list[PoseFrame] = []
        self._due = time.monotonic() + _LONGEST_WAIT_S

    @property
    def note(self) -> str | None:
        if not self._rebuilds:
            return None
        return f"The network failed {self._rebuilds} times ({self._which.name}) and was restarted."

    def look(self, waiting: Waiting) -> None:
        """Look at a picture and keep the result until several can be passed on."""
        if waiting.frame.window != self._window:
            self.close()
            self._window = waiting.frame.window
        self._done.append(self._result(waiting))
        if len(self._done) >= _TOGETHER or time.monotonic() >= self._due:
            self.flush()

    def flush(self) -> None:
        """Pass the results on."""
        if self._done:
            self._listener.frames(self._number, self._done)
        self._done = []
        self._due = time.monotonic() + _LONGEST_WAIT_S

    def close(self) -> None:
        """Close the network, if one is open."""
        if self._looker is not None:
            looker, self._looker = self._looker, None
            looker.close()

    def _result(self, waiting: Waiting) -> PoseFrame:
        picture = waiting.picture
        if picture is None:
            return _empty(waiting.frame)
        if self._looker is None:
            self._looker = self._make_looker()
        shown = picture.mirrored() if self._which.mirrored else picture
        try:
            found = self._looker.detect(shown.rgb, waiting.frame.time_s)
        except PoseProcessError as error:
            self.close()
            self._rebuilds += 1
            if self._rebuilds > MOST_REBUILDS:
                raise PoseProcessError(f"It failed again and again. {error}") from None
            return _empty(waiting.frame)
        return _pose_frame(waiting.frame, picture, found, self._which.mirrored)


def _pose_frame(frame: SourceFrame, picture: Picture, found: Found, turn_back: bool) -> PoseFrame:
    places, visibility, presence = found.places, found.visibility, found.presence
    if turn_back:
        places = places[:, SIDES_EXCHANGED] * [-1.0, 1.0] + [1.0, 0.0]
        visibility = visibility[:, SIDES_EXCHANGED]
        presence = presence[:, SIDES_EXCHANGED]
    return PoseFrame(
        index=frame.index,
        time_s=frame.time_s,
        points_px=picture.pixels(places),
        visibility=visibility,
        presence=presence,
    )


def _empty(frame: SourceFrame) -> PoseFrame:
    """Return the result for a frame that could not be looked at."""
    return PoseFrame(
        index=frame.index,
        time_s=frame.time_s,
        points_px=np.empty((0, LANDMARKS, 2)),
        visibility=np.empty((0, LANDMARKS)),
        presence=np.empty((0, LANDMARKS)),
        readable=False,
    )
