"""Clips read from Python: one, many side by side, or again from a kept observation."""

import os
import warnings
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from enum import StrEnum
from pathlib import Path
from typing import TypeVar

from measure.batch.run import read_many, usual_workers
from measure.clips import observation_file, read
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult, ReadingSettings
from measure.clips.read import ClipReading, measurement_from_observation
from measure.domain.acquisition import KnownSetup
from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from measure.errors import InputError
from measure.pose.ensemble import ModelSet, models_for
from measure.pose.supervisor import PoseProcess
from measure.pose_models.catalogue import ModelQuality

_Choice = TypeVar("_Choice", bound=StrEnum)
_PathLike = str | os.PathLike[str]


def _ignore_progress(done: float) -> None:
    """Take a share done and do nothing."""


def read_clip(
    clip: _PathLike,
    movement: Movement | str,
    side: Side | str,
    *,
    view: View | str | None = None,
    setup: KnownSetup | None = None,
    model_quality: ModelQuality | str | None = None,
    model_file: _PathLike | None = None,
    every_frame: bool = False,
    progress: Callable[[float], None] = _ignore_progress,
) -> ClipReading:
    """Read one recorded clip.

    Parameters
    ----------
    clip
        Path of a video file.
    movement, side
        What the clip shows, as enumeration or text such as "flexion" and "left"; the side is
        the person's own.
    view
        What the camera sees, or None to recognise it among the movement's views.
    setup
        What is known of camera, body and corrections; None for nothing.
    model_quality
        "lite", "full" or "heavy"; None takes the heavy model, or the full one where the heavy
        one cannot be had. Nothing is fetched: `thawline model` does that.
    model_file
        A pose bundle of one's own instead.
    every_frame
        True to use every frame instead of a few each second: many times slower.
    progress
        Called with the share done, 0..1; an exception from it stops the reading.

    Returns
    -------
    ClipReading
        With the measurement, a reading or a refusal with its reasons, in ``measurement``.

    Raises
    ------
    InputError
        Movement, side, view or model quality do not exist; ClipError when the clip cannot be
        read; ModelFileError for an unusable `model_file`.
    DataError
        The lens profile of `setup` is of another picture size.
    MachineError
        ModelError when no model can be had, PoseProcessError when the pose process failed.

    Examples
    --------
    >>> import thawline
    >>> reading = thawline.read_clip("raise.mp4", "flexion", "left")
    >>> round(reading.measurement.value), str(reading.measurement.unit)
    (100, 'deg')
    >>> thawline.read_clip("raise.mp4", "flexion", "middle")
    Traceback (most recent call last):
        ...
    measure.errors.InputError: 'middle' is not a side. Use one of left, right.
    """
    known_view = None if view is None else _choice(View, view, "view")
    entry = replace(_entry((clip, movement, side)), view=known_view)
    task = entry.task((setup or KnownSetup()).of(entry.movement))
    models = _models(model_quality, model_file)
    with PoseProcess(models.bundles) as process:
        return read.read_clip(
            process, models, entry.clip, task, every_frame=every_frame, progress=progress
        )


def read_clips(
    clips: Iterable[ClipEntry | tuple[_PathLike, Movement | str, Side | str]],
    *,
    setup: KnownSetup | None = None,
    model_quality: ModelQuality | str | None = None,
    model_file: _PathLike | None = None,
    every_frame: bool = False,
    workers: int | None = None,
    progress: Callable[[float], None] = _ignore_progress,
) -> Iterator[ClipResult]:
    """Read many clips side by side and yield the result of each as soon as it is there.

    A clip that cannot be read is no exception: its result carries the error.

    Parameters
    ----------
    clips
        Tuples (clip, movement, side), or entries as :func:`thawline.read_manifest` returns them.
    setup, model_quality, model_file, every_frame
        As in :func:`read_clip`, for all clips.
    workers
        Pose processes side by side, at least 1; None for as many as suit this computer. Each
        takes about a gigabyte of memory. The readings do not depend on it.
    progress
        Called with the number of clips done, in parts of a clip, from several threads.

    Returns
    -------
    Iterator
        Results in the order in which the clips are done; their ``number`` is the place in
        `clips`, from 0.

    Raises
    ------
    InputError
        A movement or side does not exist; ModelFileError for an unusable `model_file`.
    ModelError
        No model can be had, so no clip can be read.

    Examples
    --------
    >>> import thawline
    >>> clips = [("raise.mp4", "flexion", "left"), ("missing.mp4", "flexion", "left")]
    >>> results = sorted(thawline.read_clips(clips), key=lambda result: result.number)
    >>> [result.measurement is not None for result in results]
    [True, False]
    >>> isinstance(results[1].error, thawline.ClipError)
    True
    """
    entries = [_entry(clip) for clip in clips]
    settings = ReadingSettings(
        models=_models(model_quality, model_file),
        setup=setup or KnownSetup(),
        every_frame=every_frame,
    )
    return read_many(
        entries,
        settings,
        workers=workers or usual_workers(),
        progress=progress,
        new_process=PoseProcess,
    )


def read_observation(path: _PathLike, *, setup: KnownSetup | None = None) -> ClipReading:
    """Read a clip again from a kept observation, without its images or any model.

    Parameters
    ----------
    path
        A file of :func:`save_observation` or of ``thawline replay --keep-tracks``.
    setup
        What is known of camera, body and corrections; may be another than when the clip was
        read.

    Raises
    ------
    DataError
        The file cannot be read, is none of Thawline's or is damaged, or the set-up asks for
        frames that were not analysed.

    Examples
    --------
    >>> import thawline
    >>> reading = thawline.read_observation("raise.npz")
    >>> len(reading.measurement.trials), reading.track.points_px.shape[1:]
    (1, (33, 2))
    """
    _, observation = observation_file.load_observation(Path(path))
    movement_setup = (setup or KnownSetup()).of(observation.movement)
    return measurement_from_observation(observation, movement_setup)


def save_observation(path: _PathLike, clip: _PathLike, reading: ClipReading) -> None:
    """Keep what the networks saw of a clip, so that it can be read again without its images.

    Parameters
    ----------
    path
        The new file, .npz; one of the same name is replaced.
    clip
        Path of the clip, kept as text.

    Raises
    ------
    DataError
        The file cannot be written.

    Examples
    --------
    >>> import thawline
    >>> reading = thawline.read_clip("raise.mp4", "flexion", "left")
    >>> thawline.save_observation("kept.npz", "raise.mp4", reading)
    >>> thawline.read_observation("kept.npz").measurement == reading.measurement
    True
    """
    observation = reading.observation
    entry = ClipEntry(
        clip=Path(clip),
        movement=observation.movement,
        side=observation.side,
        view=observation.view,
    )
    observation_file.save_observation(Path(path), entry, observation)


def _entry(clip: ClipEntry | tuple[_PathLike, Movement | str, Side | str]) -> ClipEntry:
    if isinstance(clip, ClipEntry):
        return clip
    path, movement, side = clip
    return ClipEntry(
        clip=Path(path),
        movement=_choice(Movement, movement, "movement"),
        side=_choice(Side, side, "side"),
    )


def _models(quality: ModelQuality | str | None, file: _PathLike | None) -> ModelSet:
    """Return the models to read with; a sentence about a lesser one becomes a warning."""
    return models_for(
        None if quality is None else _choice(ModelQuality, quality, "model quality"),
        None if file is None else Path(file),
        fetch=False,
        say=lambda sentence: warnings.warn(sentence, stacklevel=5),
    )


def _choice(kind: type[_Choice], value: str, name: str) -> _Choice:
    try:
        return kind(value)
    except ValueError:
        raise InputError(f"{value!r} is not a {name}. Use one of {', '.join(kind)}.") from None
