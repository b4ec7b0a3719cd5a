"""Outcome of one clip among many: its reading, or the error that prevented one."""

from collections.abc import Callable
from dataclasses import dataclass, field

from measure.clips.inputs import ClipEntry
from measure.clips.read import ClipReading, read_clip
from measure.domain.acquisition import KnownSetup
from measure.domain.measurements import Measurement
from measure.errors import (
    DataError,
    InputError,
    MachineError,
    ModelError,
    PoseProcessError,
    ThawlineError,
)
from measure.message import TranslatableMessage
from measure.pose.ensemble import ModelSet
from measure.pose.supervisor import PoseProcess
from measure.trials.aggregation import aggregate_accepted_trials


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingSettings:
    """All besides the clip that decides what is read in it.

    Attributes
    ----------
    every_frame
        True for inference on every frame instead of a few each second.
    """

    models: ModelSet
    setup: KnownSetup = field(default_factory=KnownSetup)
    every_frame: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipResult:
    """Outcome of one entry.

    Attributes
    ----------
    number
        Place of the entry in the list, from 0.
    measurement
        None beside an error.
    reading
        The measurement with its series, as long as they are needed.
    is_earlier
        True when an earlier run found it, and the clip was not read now.
    accepted
        For each trial whether a person lets it count; empty where no one has left one out.
    """

    number: int
    entry: ClipEntry
    measurement: Measurement | None = None
    reading: ClipReading | None = None
    error: ThawlineError | None = None
    is_earlier: bool = False
    accepted: tuple[bool, ...] = ()

    @property
    def counted(self) -> Measurement | None:
        """The measurement of the trials that no one has left out."""
        if self.measurement is None:
            return None
        return aggregate_accepted_trials(self.measurement, self.accepted)

    @property
    def left_out(self) -> tuple[int, ...]:
        """Numbers, from 1, of the trials that a person left out."""
        return tuple(number for number, wanted in enumerate(self.accepted, start=1) if not wanted)


def read_entry(
    process: PoseProcess,
    settings: ReadingSettings,
    number: int,
    entry: ClipEntry,
    progress: Callable[[float], None] = lambda share: None,
) -> ClipResult:
    """Read one clip; an error of the clip becomes part of the outcome.

    Raises
    ------
    ModelError
        A bundle cannot be used, so no clip can be read.
    """
    try:
        reading = read_clip(
            process,
            settings.models,
            entry.clip,
            entry.task(settings.setup.of(entry.movement)),
            every_frame=settings.every_frame,
            progress=progress,
        )
    except ModelError:
        raise
    except (InputError, DataError, PoseProcessError) as error:
        return ClipResult(number=number, entry=entry, error=error)
    except Exception as error:  # noqa: BLE001 - the top of a worker: other clips go on
        return ClipResult(number=number, entry=entry, error=internal_error(entry, error))
    return ClipResult(number=number, entry=entry, measurement=reading.measurement, reading=reading)


def internal_error(entry: ClipEntry, error: BaseException) -> MachineError:
    """Return the error for a clip that met an unforeseen exception."""
    return MachineError(
        TranslatableMessage(
            "The clip {clip} caused an error inside Thawline ({kind}: {detail}). Other clips are "
            "not affected. Please report the error.",
            {"clip": entry.clip.name, "kind": type(error).__name__, "detail": str(error)},
        )
    )
