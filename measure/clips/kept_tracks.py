"""Clips read again from what the networks saw of them, without pictures or networks."""

from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from measure.clips.observation_file import load_observation
from measure.clips.outcome import ClipResult
from measure.clips.read import measurement_from_observation
from measure.domain.acquisition import KnownSetup
from measure.errors import DataError, InputError


def kept_files(path: Path) -> tuple[Path, ...]:
    """Return a file of kept tracks, or all of a folder in the order of their names.

    Raises
    ------
    InputError
        When there are none.
    """
    files = tuple(sorted(path.glob("*.npz"))) if path.is_dir() else (path,)
    if not files or not files[0].exists():
        raise InputError(f"There are no kept tracks in {path}. --keep-tracks keeps them.")
    return files


def read_observations(
    files: Sequence[Path], setup: KnownSetup, unusable: Callable[[DataError], None]
) -> Iterator[ClipResult]:
    """Read files of kept tracks.

    Parameters
    ----------
    setup
        What is known beforehand; may be another than when the clips were looked at.
    unusable
        Told of each file that does not even say which clip it is of; the others go on.
    """
    for number, file in enumerate(files):
        try:
            entry, observation = load_observation(file)
        except DataError as error:
            unusable(error)
            continue
        try:
            reading = measurement_from_observation(observation, setup.of(observation.movement))
        except DataError as error:
            yield ClipResult(number=number, entry=entry, error=error)
        else:
            yield ClipResult(
                number=number, entry=entry, measurement=reading.measurement, reading=reading
            )
