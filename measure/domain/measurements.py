"""Measurements: trials, and the value that they add up to, with its provenance. Values only."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from measure.domain.acquisition import Setup
from measure.domain.landmarks import Side
from measure.domain.movements import Movement, Unit, View
from measure.domain.reasons import Reason


class Status(StrEnum):
    READING = "reading"
    REFUSED = "refused"


class Reference(StrEnum):
    """Reference line of an angle."""

    TRUNK_AXIS = "trunk-axis"
    PLUMB_LINE = "plumb-line"


class IntervalBasis(StrEnum):
    """Whose errors a 95 % interval is based on."""

    REAL_PEOPLE = "real-people"
    VIRTUAL_PEOPLE = "virtual-people"
    OWN_STUDY = "own-study"


#: What each basis means, as a sentence.
BASIS_SENTENCES: Mapping[IntervalBasis, str] = {
    IntervalBasis.REAL_PEOPLE: (
        "The 95 % interval is based on pictures of real people, marked by hand."
    ),
    IntervalBasis.VIRTUAL_PEOPLE: (
        "The 95 % interval is based on virtual people, with an allowance for real ones."
    ),
    IntervalBasis.OWN_STUDY: (
        "The 95 % interval is based on your own goniometer study, or on the errors measured "
        "earlier where these were larger."
    ),
}
#: Name of the basis in a reading's source.
BASIS = "interval_basis"


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """One trial: neutral, movement, hold and return.

    Attributes
    ----------
    value, low, high
        Mean over the hold and its 95 % interval, in the movement's unit; None if refused.
    start_s, end_s
        First and last moment of the trial, seconds from the source's first frame.
    hold_start_s, hold_end_s
        The hold inside it; None where no hold was found.
    flags
        Reasons that were noted; those that refused the trial come first.
    refused_for
        Reasons for which the trial is not scored; empty for a scored trial.
    spread
        Standard deviation of the frames in the hold, in the movement's unit; None if refused.
    """

    value: float | None
    low: float | None
    high: float | None
    start_s: float
    end_s: float
    hold_start_s: float | None
    hold_end_s: float | None
    flags: tuple[Reason, ...] = ()
    refused_for: tuple[Reason, ...] = ()
    spread: float | None = None

    @property
    def scored(self) -> bool:
        return self.value is not None and not self.refused_for


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelBand:
    """Level that a thumb behind the back reaches: a band of levels, never a point.

    Attributes
    ----------
    low, high
        Names of the lowest and highest level of the band, such as "L3" and "T12".
    band
        The region in words.
    decided_by
        "camera", "self" or "clinician".
    """

    low: str
    high: str
    band: str
    decided_by: str = "camera"


@dataclass(frozen=True, slots=True, kw_only=True)
class Provenance:
    """Provenance: everything besides the body that can change a number.

    Attributes
    ----------
    model
        Quality of the deciding model: "lite", "full", "heavy", or "own" for a given file.
    model_hashes
        SHA-256 of each bundle used, by quality.
    passes
        The fine passes used, such as "heavy" or "heavy mirrored".
    software
        Versions by name: thawline, mediapipe, opencv, numpy, python.
    source
        Backend, frames read and expected, share unreadable, measured frames a second,
        rotation and pixel-aspect decisions, as text by name.
    setup
        What was known about camera, body and corrections.
    """

    model: str
    model_hashes: dict[str, str] = field(default_factory=dict)
    passes: tuple[str, ...] = ()
    software: dict[str, str] = field(default_factory=dict)
    source: dict[str, str] = field(default_factory=dict)
    setup: Setup = field(default_factory=Setup)


@dataclass(frozen=True, slots=True, kw_only=True)
class Measurement:
    """One movement on one side: the median of its scored trials, or a refusal.

    Attributes
    ----------
    value, low, high
        Median of the scored trials and its 95 % interval, in `unit`; None if refused.
    best
        The largest scored trial, kept apart: it is biased upwards.
    against_vertical
        The same angle against the image's vertical, for the lean check; None where it has no
        meaning.
    reasons
        Reasons of the refusal, or notes, most important first.
    level
        Band of levels for a hand-behind-back reach, otherwise None.
    """

    movement: Movement
    side: Side
    view: View
    status: Status
    unit: Unit
    value: float | None
    low: float | None
    high: float | None
    trials: tuple[Trial, ...]
    reasons: tuple[Reason, ...]
    provenance: Provenance
    best: float | None = None
    against_vertical: float | None = None
    reference: Reference = Reference.TRUNK_AXIS
    level: LevelBand | None = None

    @property
    def interval_basis(self) -> IntervalBasis | None:
        """What the interval rests on; None for a refusal or an older reading."""
        stated = self.provenance.source.get(BASIS, "")
        return IntervalBasis(stated) if stated in set(IntervalBasis) else None

    @property
    def refused_for(self) -> tuple[Reason, ...]:
        """The reasons that refused it, without what is only noted; empty for a reading."""
        if self.status is Status.READING:
            return ()
        if not self.trials:
            return self.reasons
        of_trials = {reason for trial in self.trials for reason in trial.refused_for}
        return tuple(
            reason for place, reason in enumerate(self.reasons) if place == 0 or reason in of_trials
        )

    @property
    def notes(self) -> tuple[Reason, ...]:
        """The reasons that it carries as notes: of a reading all."""
        refused = self.refused_for
        return tuple(reason for reason in self.reasons if reason not in refused)
