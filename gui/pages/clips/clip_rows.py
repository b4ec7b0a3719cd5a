"""Rows of the list of clips: what each holds, how far it is, and its words."""

from dataclasses import dataclass, replace
from enum import Enum, auto
from pathlib import Path

from gui.pages.clips.clip_saving import ClipFacts
from gui.text.finding_keywords import finding_keywords
from gui.text.wording import (
    error_text,
    movement_name,
    range_words,
    side_title,
    task_title,
    tr,
    value_words,
)
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Status
from measure.domain.movements import Movement, View
from measure.domain.reasons import Reason
from measure.errors import ThawlineError


class Fact(Enum):
    """What can be said of a clip."""

    CLIP = auto()
    STATUS = auto()
    MOVEMENT = auto()
    SIDE = auto()
    READING = auto()
    RANGE = auto()
    REASONS = auto()


@dataclass(slots=True, kw_only=True)
class ClipRow:
    """One clip of the list.

    Attributes
    ----------
    movement, side
        None until they are chosen.
    result
        Outcome of reading it, without its series; None before.
    accepted
        For each trial whether it counts; all of them until a person leaves one out.
    counted
        The measurement of the trials that count; None without any.
    listed
        Whether a manifest names it.
    number
        Place in the order in which clips were added.
    saved_for
        Name of the person in whose record it was saved, if it was.
    saved_day
        The day of recording that it was saved with.
    facts
        What saving it has found out of it and asks for.
    queued, under_way
        Whether it is to be read in the present run, and whether it is its turn.
    """

    clip: Path
    movement: Movement | None = None
    side: Side | None = None
    view: View | None = None
    reference: float | None = None
    person: str = ""
    result: ClipResult | None = None
    accepted: tuple[bool, ...] = ()
    counted: Measurement | None = None
    listed: bool = False
    number: int = 0
    saved_for: str = ""
    saved_day: str = ""
    facts: ClipFacts | None = None
    queued: bool = False
    under_way: bool = False

    @classmethod
    def of_entry(cls, entry: ClipEntry) -> "ClipRow":
        """Return the row of a line of a manifest."""
        return cls(
            clip=entry.clip,
            movement=entry.movement,
            side=entry.side,
            view=entry.view,
            reference=entry.reference,
            person=entry.person,
            listed=True,
        )

    @classmethod
    def of_clip(cls, clip: Path) -> "ClipRow":
        """Return the row of a file, with movement and side where its name holds them."""
        name = clip.stem.lower().replace("_", "-")
        return cls(
            clip=clip,
            movement=next((movement for movement in Movement if movement.value in name), None),
            side=next((side for side in Side if side.value in name), None),
        )

    @property
    def entry(self) -> ClipEntry | None:
        """The clip as it can be read; None while movement or side is open."""
        if self.movement is None or self.side is None:
            return None
        return ClipEntry(
            clip=self.clip,
            movement=self.movement,
            side=self.side,
            view=self.view,
            reference=self.reference,
            person=self.person,
        )

    @property
    def key(self) -> tuple[Path, Movement | None, Side | None]:
        """What two rows of the same clip have in common."""
        return self.clip, self.movement, self.side

    @property
    def gives_way(self) -> bool:
        """Whether what a manifest says of the clip can take its place."""
        return not self.listed and self.measurement is None

    @property
    def error(self) -> ThawlineError | None:
        return None if self.result is None else self.result.error

    @property
    def measurement(self) -> Measurement | None:
        """The measurement of all trials."""
        return None if self.result is None else self.result.measurement

    @property
    def waits(self) -> bool:
        """Whether it can be read and has no result."""
        return self.entry is not None and self.measurement is None

    def choose(self, movement: Movement | None, side: Side | None) -> None:
        """Set movement, side or both; another one makes a result void."""
        before = self.key
        self.movement, self.side = movement or self.movement, side or self.side
        if self.key != before:
            self.view = None
            self.take(None)

    def take(self, result: ClipResult | None) -> None:
        """Take a result, with the trials that someone left out of it before."""
        self.result, self.saved_for, self.facts = result, "", None
        self.queued = self.under_way = False
        whole = self.measurement
        self.accepted = () if whole is None else (True,) * len(whole.trials)
        if result is not None and result.accepted:
            self.accepted = result.accepted
        self.counted = result.counted if result is not None and self._counts else None

    @property
    def _counts(self) -> bool:
        """Whether any trial counts, or none could from the first."""
        whole = self.measurement
        if whole is None or all(self.accepted):
            return True
        pairs = zip(whole.trials, self.accepted, strict=True)
        return any(trial.scored and wanted for trial, wanted in pairs)

    def accept(self, accepted: tuple[bool, ...]) -> None:
        """Let some trials count, and no others."""
        if self.result is not None:
            self.take(replace(self.result, accepted=() if all(accepted) else accepted))

    def text(self, fact: Fact) -> str:
        """Return the words of a fact."""
        match fact:
            case Fact.CLIP:
                return self.clip.name
            case Fact.STATUS:
                return self.status
            case Fact.MOVEMENT:
                return movement_name(self.movement) if self.movement else tr("not chosen")
            case Fact.SIDE:
                return side_title(self.side) if self.side else tr("not chosen")
            case Fact.READING:
                return _reading(self.counted)
            case Fact.RANGE:
                return _range(self.counted)
            case Fact.REASONS:
                return self.reasons

    @property
    def task(self) -> str:
        """Movement and side in one line."""
        if self.movement is not None and self.side is not None:
            return task_title(self.movement, self.side)
        if self.movement is None and self.side is None:
            return tr("Not chosen")
        return f"{self.text(Fact.MOVEMENT)}, {self.text(Fact.SIDE).lower()}"

    @property
    def urgency(self) -> int:
        """How soon it needs somebody: 0 for an answer, 1 for a failure, 2 for nothing."""
        if self.entry is None:
            return 0
        return 1 if self.error is not None else 2

    @property
    def outcome(self) -> tuple[str, str]:
        """The reading with its range, and whose it is once saved; without one how far it is."""
        reading, limits = self.text(Fact.READING), self.text(Fact.RANGE)
        if not reading:
            return self.status, ""
        return f"{reading} ({limits})" if limits else reading, self.status * bool(self.saved_for)

    @property
    def status(self) -> str:
        """How far the clip is."""
        if self.saved_for:
            words = tr("Saved for {person}, {day}")
            return words.format(person=self.saved_for, day=self.saved_day)
        if self.error is not None:
            return tr("Not read")
        if self.measurement is not None:
            if self.counted is None:
                return tr("Left out")
            refused = self.counted.status is Status.REFUSED
            return tr("Not measured") if refused else tr("Measured")
        if self.queued:
            return tr("Being read") if self.under_way else tr("In the queue")
        return tr("Waiting") if self.entry else tr("Needs an answer")

    @property
    def reasons(self) -> str:
        """Why there is no reading, and what a reading carries as notes, in keywords."""
        if self.error is not None:
            return error_text(self.error)
        counted, whole = self.counted_words, self.counted
        noted = "" if whole is None else finding_keywords(whole.reasons, _scored(whole))
        return begun("; ".join(filter(None, (counted, noted))))

    def notes(self, *, by_trial: bool) -> str:
        """Return what a reading carries as notes, in keywords, that is not said beside it.

        Parameters
        ----------
        by_trial
            Whether each trial that does not count says why.
        """
        whole = self.counted
        if whole is None:
            return ""
        said: set[Reason] = {Reason.FEW_TRIALS} if whole.status is Status.READING else set()
        if by_trial:
            said |= {reason for trial in whole.trials for reason in trial.refused_for}
            said -= {reason for trial in whole.trials if trial.scored for reason in trial.flags}
        left = [reason for reason in whole.reasons if reason not in said]
        return begun(finding_keywords(left, _scored(whole)))

    @property
    def reasons_briefly(self) -> str:
        """The reasons, but of a failure what to do about it alone."""
        if self.error is None:
            return self.reasons
        cause, remedy = cause_and_remedy(error_text(self.error))
        return remedy or cause

    @property
    def why_briefly(self) -> str:
        """Why there is no reading: of a failure, what to do about it."""
        refused = self.counted is not None and self.counted.status is Status.REFUSED
        return self.reasons_briefly if refused or self.error is not None else ""

    @property
    def counted_words(self) -> str:
        """How many trials count, once a person left some out."""
        whole = self.measurement
        if whole is None or all(self.accepted):
            return ""
        scored = [trial.scored for trial in whole.trials]
        number = sum(good and wanted for good, wanted in zip(scored, self.accepted, strict=True))
        words = tr("{number} of {total} trials kept by you")
        return words.format(number=number, total=sum(scored))


def begun(keywords: str) -> str:
    """Return keywords that begin as a sentence does."""
    return keywords[:1].upper() + keywords[1:]


def _scored(measurement: Measurement) -> int:
    return sum(trial.scored for trial in measurement.trials)


def _reading(measurement: Measurement | None) -> str:
    if measurement is None or measurement.status is Status.REFUSED or measurement.value is None:
        return ""
    return value_words(measurement.value, measurement.unit)


def _range(measurement: Measurement | None) -> str:
    """Return the 95 % range, of the reach with the levels that it holds."""
    if measurement is None or measurement.status is Status.REFUSED:
        return ""
    if measurement.low is None or measurement.high is None:
        return ""
    words = range_words(measurement.low, measurement.high, measurement.unit)
    if measurement.level is None:
        return words
    levels = tr("{low} to {high}").format(
        low=tr(measurement.level.low), high=tr(measurement.level.high)
    )
    return f"{words} ({levels})"


def cause_and_remedy(text: str) -> tuple[str, str]:
    """Return an error in two parts: what happened, and the last sentence, which is what to do."""
    cause, stop, remedy = text.rstrip().rpartition(". ")
    return (f"{cause}.", remedy) if stop else (text, "")
