"""Clip reader of the window: analyses on the path of `thawline replay`, and small pictures.

Called from the window's other threads; everything heavy is imported when first needed.
"""

from collections.abc import Callable, Iterator, Sequence
from contextlib import closing
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QBuffer, QByteArray, QIODevice
from PySide6.QtGui import QImage

from gui.session.interfaces import ClipAnalysis, ClipCurve, ReadClip
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult, ReadingSettings
from measure.domain.acquisition import KnownSetup
from measure.errors import ClipError, ThawlineError
from measure.message import TranslatableMessage
from measure.pose.ensemble import ModelSet, installed_models
from measure.pose.supervisor import PoseProcess
from measure.pose_models.bundles import load
from measure.pose_models.catalogue import ModelQuality

#: Pictures a second that are kept, so every frame of a usual clip, and how many at most: a minute
#: of them; longer clips are shown with fewer a second. [technical]
_PICTURES_HZ = 30.0
_MOST_PICTURES = 1800
#: Longer side of a kept picture, pixels. [technical]
_LONGER_SIDE_PX = 800


class ReadingCancelledError(ThawlineError):
    """The person stopped the reading."""


def local_models(quality: ModelQuality | None) -> ModelSet:
    """Return the models on this computer; never goes online.

    Raises
    ------
    ModelError
        When the one asked for, or the full one, is not here.
    """
    if quality is not None:
        return ModelSet(name=quality.value, bundles={quality: load(quality)})
    return installed_models()


class WindowBatchReader:
    """Reads lists of clips side by side, with the command's results file.

    Parameters
    ----------
    new_process
        As for :func:`measure.batch.run.read_many`.
    """

    def __init__(
        self,
        load_models: Callable[[], ModelSet],
        new_process: Callable[..., PoseProcess] = PoseProcess,
    ) -> None:
        self._load_models = load_models
        self._new_process = new_process

    def __call__(
        self,
        entries: Sequence[ClipEntry],
        setup: KnownSetup,
        results: Path | None,
        progress: Callable[[float], bool],
        *,
        fresh: bool = False,
    ) -> Iterator[ReadClip]:
        from measure.batch.results_file import ResultsFile
        from measure.batch.run import nothing_earlier, read_many, usual_workers

        done = 0.0

        def report(now: float) -> None:
            nonlocal done
            done = now
            if not progress(now):
                raise ReadingCancelledError("The reading was stopped.")

        settings = ReadingSettings(models=self._load_models(), setup=setup)
        kept = None if results is None else ResultsFile(results, entries, settings)
        coming = read_many(
            entries,
            settings,
            workers=usual_workers(),
            cached=nothing_earlier if kept is None or fresh else kept.cached,
            progress=report,
            new_process=self._new_process,
        )
        with closing(coming):
            for read in coming:
                if not progress(done):
                    return
                result = read
                if kept is not None:
                    result = kept.with_trials_left_out(read)
                    kept.add(result)
                yield ReadClip(result=replace(result, reading=None), analysis=_analysis(result))


def _analysis(result: ClipResult) -> ClipAnalysis | None:
    reading = result.reading
    if reading is None:
        return None
    return ClipAnalysis(
        measurement=reading.measurement,
        curve=ClipCurve(time_s=reading.track.time_s, value=reading.guide),
        track=reading.track,
    )


@dataclass(frozen=True, slots=True)
class ScrubThumbnails:
    """Small pictures of a clip, kept packed."""

    times_s: NDArray[np.float64]
    packed: tuple[bytes, ...]

    def at(self, time_s: float) -> NDArray[np.uint8]:
        """Return the picture nearest to a time, RGB, shape (h, w, 3)."""
        image = QImage.fromData(self.packed[int(np.argmin(np.abs(self.times_s - time_s)))])
        plain = image.convertToFormat(QImage.Format.Format_RGB888)
        rows = np.frombuffer(plain.constBits(), dtype=np.uint8)
        rows = rows.reshape(plain.height(), plain.bytesPerLine())[:, : plain.width() * 3]
        # A copy: the image's own memory goes with it.
        return rows.copy().reshape(plain.height(), plain.width(), 3)


def open_scrub_thumbnails(path: Path) -> ScrubThumbnails:
    """Take small pictures out of a clip.

    Raises
    ------
    ClipError
        When the clip cannot be read.
    """
    from measure.video.frame import FrameNormalizer
    from measure.video.reader import ClipReader
    from measure.video.source import open_clip

    source = open_clip(path)
    try:
        facts = source.facts
        stated = facts.stated_duration_s or 0.0
        gate = FrameNormalizer(sample_aspect=facts.sample_aspect, longest_side_px=_LONGER_SIDE_PX)
        rate_hz = min(_PICTURES_HZ, _MOST_PICTURES / stated if stated > 0 else _PICTURES_HZ)
        times: list[float] = []
        packed: list[bytes] = []
        for frame in ClipReader(source, path.name, rate_hz=rate_hz).frames():
            if frame.pixels is not None and len(packed) < _MOST_PICTURES:
                times.append(frame.time_s)
                packed.append(_packed(gate.normalize(frame.pixels).rgb))
    finally:
        source.close()
    if not packed:
        raise ClipError(
            TranslatableMessage("{clip}: no picture could be read.", {"clip": path.name})
        )
    return ScrubThumbnails(np.asarray(times, dtype=np.float64), tuple(packed))


def _packed(picture: NDArray[np.uint8]) -> bytes:
    height, width = picture.shape[:2]
    image = QImage(picture.data, width, height, 3 * width, QImage.Format.Format_RGB888)
    store = QByteArray()
    buffer = QBuffer(store)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "JPG", 85)  # type: ignore[call-overload] # the stub wants bytes
    buffer.close()
    return bytes(store.data())
