"""Clinician prompts: findings worth showing to a clinician, in words. Never advice on treatment.

Nothing here is an emergency; those signs are asked for before measuring.
"""

import datetime as dt
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from statistics import median

import numpy as np

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.records import History
from measure.progress.shoulder import SideProgress
from measure.progress.weekly_verdicts import (
    STALL_BELOW_DEG,
    STALL_SHORT_DEG,
    STALL_SHORT_SHARE,
    STALL_WINDOW_DAY,
    Verdict,
    trend,
)
from measure.progress.wording import signed, signed_number

#: A drop counts when every measurement of the last days lies lower by this many spreads: the
#: smallest change that two single measurements show for certain.
#: [source: 1.96 times the square root of 2]
DROP_SPREADS = 2.77
#: Days in which every measurement must lie lower. [project]
DROP_DAY = 14
#: Fewest days with a measurement, in these days and in those before. [project]
DROP_LEAST_DAYS = 4
#: Days before them with which they are compared. [project]
DROP_BEFORE_DAY = 42
#: Median rating of pain at rest or at night from which on it is reported, of 10. [project]
HIGH_PAIN = 7
#: Days over which pain ratings are taken together. [project]
PAIN_DAY = 14
#: Fewest ratings that are taken together. [project]
PAIN_LEAST = 3
#: Least days between the first and the last of them. [project]
PAIN_LEAST_SPAN_DAY = 7
#: Points by which pain must be higher than in the weeks before; the smallest change that matters
#: is 2.17 points (Michener 2011). [project]
MORE_PAIN = 2.0
#: Days before with whose ratings the latest are compared. [project]
PAIN_BEFORE_DAY = 42
#: Days over which no gain is reported. [project]
NO_GAIN_DAY = 91
#: Fewest weekly checks in these days that could have shown a gain. [project]
NO_GAIN_LEAST_CHECKS = 8

WORTH_SHOWING = "This is worth showing to a clinician."


class PromptKind(StrEnum):
    LOSING = "losing"
    DROP = "drop"
    STALLED = "stalled"
    NO_GAIN = "no-gain"
    HIGH_PAIN = "high-pain"
    MORE_PAIN = "more-pain"


#: What the records show, with places for movement, side and numbers.
PROMPT_WORDS: Mapping[PromptKind, str] = {
    PromptKind.LOSING: "{movement}, {side} side: readings went down over {weeks} weeks, by {value} "
    "({low} to {high}) a month, 95 % interval in brackets.",
    PromptKind.DROP: "{movement}, {side} side: every reading of the last two weeks lies well below "
    "those of the weeks before, by {value} in the middle.",
    PromptKind.STALLED: "{movement}, {side} side: over the last {weeks} weeks a gain of {least} a "
    "month or more is unlikely (at most {most} a month with 95 %), and this side is {short} short "
    "of the other.",
    PromptKind.NO_GAIN: "Three months of readings of the {side} side show no gain that stands out "
    "of the noise in {movement}.",
    PromptKind.HIGH_PAIN: "Pain: over the last two weeks pain at rest or at night was rated "
    "{rating} of 10 in the middle of {sessions} sessions.",
    PromptKind.MORE_PAIN: "Pain: the worst pain in 24 hours was rated {rating} of 10 in the middle "
    "of the last two weeks, {before} in the weeks before.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Prompt:
    """A reason to talk to a clinician.

    Attributes
    ----------
    movements, side
        Subject of the prompt; empty and None for pain.
    numbers
        The numbers of its sentence in PROMPT_WORDS, the same in every language.
    """

    kind: PromptKind
    movements: tuple[Movement, ...]
    side: Side | None
    numbers: Mapping[str, str]

    @property
    def movement(self) -> Movement | None:
        """Its only movement; None for pain, and where there are several."""
        return self.movements[0] if len(self.movements) == 1 else None

    @property
    def text(self) -> str:
        """What the records show, with its numbers, and that it is worth showing."""
        names = ", ".join(MOVEMENTS[movement].name for movement in self.movements)
        if self.kind is PromptKind.NO_GAIN:
            names = names.lower()
        words = PROMPT_WORDS[self.kind].format(movement=names, side=self.side or "", **self.numbers)
        return f"{words} {WORTH_SHOWING}"


def prompts(sides: Sequence[SideProgress], history: History, today: dt.date) -> tuple[Prompt, ...]:
    """Return the prompts of a person, motion first, then pain.

    Parameters
    ----------
    sides
        The affected sides, each movement under its most frequent condition.
    """
    of_motion: list[Prompt] = []
    without_gain: dict[Side, list[Movement]] = {}
    for progress in sides:
        if prompt := _of_motion(progress):
            of_motion.append(prompt)
        elif _no_gain(progress):
            without_gain.setdefault(progress.side, []).append(progress.movement)
    # One prompt a side, however many of its movements show no gain.
    of_no_gain = (
        Prompt(kind=PromptKind.NO_GAIN, movements=tuple(movements), side=side, numbers={})
        for side, movements in without_gain.items()
    )
    return (*of_motion, *of_no_gain, *_of_pain(history, today))


def _of_motion(progress: SideProgress) -> Prompt | None:
    if progress.verdict is Verdict.LOSING:
        kind, numbers = PromptKind.LOSING, _losing_numbers(progress)
    elif (drop := _drop(progress)) is not None:
        unit = MOVEMENTS[progress.movement].unit
        kind, numbers = PromptKind.DROP, {"value": signed(drop, unit)}
    elif progress.verdict is Verdict.STALLED:
        kind, numbers = PromptKind.STALLED, _stalled_numbers(progress)
    else:
        return None
    return Prompt(kind=kind, movements=(progress.movement,), side=progress.side, numbers=numbers)


def _losing_numbers(progress: SideProgress) -> dict[str, str]:
    check = progress.weekly_checks[-1]
    assert check.slope is not None
    unit = MOVEMENTS[progress.movement].unit
    low, high = (signed_number(end, unit) for end in check.slope.interval_per_month())
    return {
        "weeks": f"{check.weeks:.0f}",
        "value": signed(check.slope.per_month, unit),
        "low": low,
        "high": high,
    }


def _stalled_numbers(progress: SideProgress) -> dict[str, str]:
    upper = progress.weekly_checks[-1].upper_per_month
    assert upper is not None
    assert progress.short_by is not None
    return {
        "weeks": str(STALL_WINDOW_DAY // 7),
        "least": f"{STALL_BELOW_DEG:.0f}°",
        "most": signed(upper, Unit.DEGREES, 1),
        "short": f"{progress.short_by:.0f}°",
    }


def _drop(progress: SideProgress) -> float | None:
    """Return how far all of two weeks lie below the weeks before, or None where they do not."""
    segment = progress.series.latest_segment()
    ago = segment.day[-1] - segment.day
    lately = segment.value[ago < DROP_DAY]
    before = segment.value[(ago >= DROP_DAY) & (ago < DROP_DAY + DROP_BEFORE_DAY)]
    if (
        min(len(lately), len(before)) < DROP_LEAST_DAYS
        or np.ptp(ago[ago < DROP_DAY]) < DROP_DAY / 2
    ):
        return None
    usual = float(np.median(before))
    if lately.max() >= usual - DROP_SPREADS * progress.spread:
        return None
    return float(np.median(lately)) - usual


def _no_gain(progress: SideProgress) -> bool:
    """Return whether three months of checks show no gain while the side is still short."""
    if not progress.weekly_checks or not _short(progress):
        return False
    first = progress.weekly_checks[-1].day - dt.timedelta(days=NO_GAIN_DAY)
    if progress.series.latest_segment().date(0) > first:
        return False
    ends = [
        k
        for k, check in enumerate(progress.weekly_checks)
        if check.day > first and check.slope is not None
    ]
    gains = (Verdict.GAINING, Verdict.LIKELY_GAINING)
    return len(ends) >= NO_GAIN_LEAST_CHECKS and all(
        trend(progress.weekly_checks[: k + 1]) not in gains for k in ends
    )


def _short(progress: SideProgress) -> bool:
    facts = MOVEMENTS[progress.movement]
    if progress.other is None or progress.short_by is None:
        return progress.recent.high < facts.usual[0]
    enough_deg = STALL_SHORT_DEG if facts.unit is Unit.DEGREES else float("inf")
    return progress.short_by > min(enough_deg, STALL_SHORT_SHARE * progress.other.value)


def _of_pain(history: History, today: dt.date) -> Iterable[Prompt]:
    rated = [
        ((today - session.started.day).days, session.pain)
        for session in history.sessions
        if session.started.day <= today
    ]
    nightly = [
        (ago, max(ratings))
        for ago, pain in rated
        if ago < PAIN_DAY and (ratings := [r for r in (pain.rest, pain.night) if r is not None])
    ]
    if _enough(nightly) and (middle := median(rating for _, rating in nightly)) >= HIGH_PAIN:
        yield _pain_prompt(PromptKind.HIGH_PAIN, rating=f"{middle:.0f}", sessions=str(len(nightly)))
    worst = [(ago, pain.worst_24h) for ago, pain in rated if pain.worst_24h is not None]
    lately = [(ago, rating) for ago, rating in worst if ago < PAIN_DAY]
    before = [(ago, rating) for ago, rating in worst if 0 <= ago - PAIN_DAY < PAIN_BEFORE_DAY]
    if _enough(lately) and _enough(before):
        now, then = median(r for _, r in lately), median(r for _, r in before)
        if now - then >= MORE_PAIN:
            yield _pain_prompt(PromptKind.MORE_PAIN, rating=f"{now:.0f}", before=f"{then:.0f}")


def _enough(ratings: Sequence[tuple[int, int]]) -> bool:
    """Return whether there are enough ratings, over enough days; each is (days ago, rating)."""
    if len(ratings) < PAIN_LEAST:
        return False
    days_ago = [ago for ago, _ in ratings]
    return max(days_ago) - min(days_ago) >= PAIN_LEAST_SPAN_DAY


def _pain_prompt(kind: PromptKind, **numbers: str) -> Prompt:
    return Prompt(kind=kind, movements=(), side=None, numbers=numbers)
