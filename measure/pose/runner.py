"""Jobs carried out: decoding a clip, or taking frames from memory, and running the passes.

Decoding and inference overlap: the caller's thread decodes, and each pass has a thread of its own
(the native code lets other threads run, and one network keeps only one processor busy). Short
queues between them keep memory flat. No pipes and no processes here.
"""

import time
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from measure.errors import ClipError, InputError
from measure.pose.inference import InferenceThread, PoseEstimator, QueuedFrame, ResultSink
from measure.pose.jobs import ClipInfo, ClipJob, InferencePass, PictureJob
from measure.pose_models.catalogue import ModelQuality
from measure.video.frame import FrameNormalizer, from_normalized
from measure.video.reader import ClipReader, SourceFrame
from measure.video.sampling import merged
from measure.video.source import FrameSource, SourceFacts, open_clip

#: Time between two reports of progress, seconds. [technical]
_REPORT_S = 0.25


def run_job(
    job: ClipJob,
    make_estimator: Mapping[ModelQuality, Callable[[], PoseEstimator]],
    listener: ResultSink,
    open_source: Callable[[Path], FrameSource] = open_clip,
) -> ClipInfo:
    """Run the passes of a job over a clip; results go to the listener.

    Raises
    ------
    ClipError
        If the clip cannot be read.
    PoseProcessError
        If a network keeps failing.
    """
    source = open_source(job.clip)
    threads: list[InferenceThread] = []
    try:
        gate = FrameNormalizer(
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
            decimation=job.decimation,
            tick=ticker.tick,
        )
        threads += _inference_threads(job.passes, make_estimator, listener)
        size_px = _feed(reader, gate, threads, job.clip.name)
        for thread in threads:
            thread.finish()
        size_px = size_px or gate.upright_size(source.facts.width_px, source.facts.height_px)
        return _info(source.facts, size_px, gate, reader, threads)
    except ClipError:
        raise
    except InputError as error:
        raise ClipError(f"The clip {job.clip.name}: {error}") from None
    finally:
        for thread in threads:
            thread.abandon()
        source.close()


def _feed(
    reader: ClipReader, gate: FrameNormalizer, threads: Sequence[InferenceThread], name: str
) -> tuple[int, int] | None:
    """Give every chosen frame to every thread; return their upright size, if there was one."""
    size_px = None
    for frame in reader.frames():
        picture = gate.normalize(frame.pixels) if frame.pixels is not None else None
        if picture is not None:
            size_px = size_px or (picture.width_px, picture.height_px)
            if size_px != (picture.width_px, picture.height_px):
                raise ClipError(
                    f"The picture size of the clip {name} changes at {frame.time_s:.1f} s. "
                    "Convert it to one size."
                )
        for thread in threads:
            thread.put(QueuedFrame(frame=frame, picture=picture))
    return size_px


def run_picture_job(
    job: PictureJob,
    make_estimator: Mapping[ModelQuality, Callable[[], PoseEstimator]],
    listener: ResultSink,
) -> None:
    """Run the passes of a job over frames held in memory; results go to the listener.

    Raises
    ------
    PoseProcessError
        If a network keeps failing.
    """
    threads = _inference_threads(job.passes, make_estimator, listener)
    try:
        for number, kept in enumerate(job.pictures):
            listener.progress(number / len(job.pictures))
            waiting = QueuedFrame(
                frame=SourceFrame(
                    index=kept.index, time_s=kept.time_s, pixels=None, window=kept.window
                ),
                picture=from_normalized(kept.rgb, job.width_px, job.height_px),
            )
            for thread in threads:
                thread.put(waiting)
        for thread in threads:
            thread.finish()
    finally:
        for thread in threads:
            thread.abandon()


def _inference_threads(
    passes: Sequence[InferencePass],
    make_estimator: Mapping[ModelQuality, Callable[[], PoseEstimator]],
    listener: ResultSink,
) -> list[InferenceThread]:
    """Return a started thread for each pass."""
    threads = [
        InferenceThread(make_estimator[inference_pass.quality], number, inference_pass, listener)
        for number, inference_pass in enumerate(passes)
    ]
    for thread in threads:
        thread.start()
    return threads


def _info(
    stated: SourceFacts,
    size_px: tuple[int, int],
    gate: FrameNormalizer,
    reader: ClipReader,
    threads: Sequence[InferenceThread],
) -> ClipInfo:
    notes = [*reader.notes, *(thread.note for thread in threads if thread.note)]
    frames = reader.frames_read + reader.frames_lost
    if reader.frames_lost:
        notes.append(
            f"{reader.frames_lost} of {frames} frames ({reader.frames_lost / frames:.0%}) are "
            "damaged and were left out."
        )
    return ClipInfo(
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

    def __init__(self, listener: ResultSink, stated: SourceFacts, job: ClipJob) -> None:
        self._listener = listener
        ends = [stated.stated_duration_s or 0.0]
        if job.windows:
            ends.append(max(end for _, end in job.windows))
        self._end_s = min((end for end in ends if end > 0), default=0.0)
        self._due = 0.0

    def tick(self, time_s: float) -> None:
        now = time.monotonic()
        if now >= self._due:
            self._due = now + _REPORT_S
            self._listener.progress(min(1.0, time_s / self._end_s) if self._end_s else 0.0)
