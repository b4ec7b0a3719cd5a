"""Good files that readings leave or take: set-ups, placements, lines of results."""

from collections.abc import Callable
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from measure.batch.results_file import ResultsFile
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult, ReadingSettings
from measure.clips.setup_file import read_setup, write_setup
from measure.domain.acquisition import KnownSetup
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import ClipError
from tests.fuzz.fuzz_clips import MODELS
from tests.support import record_samples as sample

_ENTRIES = [
    ClipEntry(clip=Path(f"raise {number}.mp4"), movement=Movement.FLEXION, side=Side.LEFT)
    for number in range(3)
]


@cache
def setup_file() -> bytes:
    """A set-up that `thawline replay --setup` takes."""
    known = KnownSetup(camera=sample.SETUP.camera, body=sample.SETUP.body)
    return _made(lambda path: write_setup(path, known))


def use_setup(path: Path) -> None:
    read_setup(path)


def _results(path: Path) -> ResultsFile:
    return ResultsFile(path, _ENTRIES, ReadingSettings(models=MODELS))


@cache
def results_file() -> bytes:
    """Results of three clips, one of which could not be read."""

    def write(path: Path) -> None:
        file = _results(path)
        measurement = sample.record(sample.session(sample.person())).measurement
        for number, entry in enumerate(_ENTRIES):
            error = ClipError("The clip is empty.") if number == 1 else None
            file.add(
                ClipResult(
                    number=number,
                    entry=entry,
                    measurement=None if error else measurement,
                    error=error,
                )
            )

    return _made(write)


def use_results(path: Path) -> None:
    """What an interrupted run finds when it goes on."""
    file = _results(path)
    for number in range(len(_ENTRIES)):
        file.cached(number)


def _made(write: Callable[[Path], None]) -> bytes:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "file"
        write(path)
        return path.read_bytes()
