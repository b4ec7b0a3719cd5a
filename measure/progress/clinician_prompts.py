"""When to talk to a clinician: what the records show, in words. Never advice on treatment.

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
from measure.progress.wording import signed

#: A drop counts when every reading of two weeks lies lower by more than this many spreads:
#: the smallest change that two single readings show for certain, 1.96 times the root of 2.
DROP_SPREADS = 2.77
DROP_DAY = 14
DROP_LEAST_DAYS = 4
DROP_BEFORE_DAY = 42
#: Pain at rest or at night from this rating on, over this many days. Ours.
HIGH_PAIN = 7
PAIN_DAY = 14
PAIN_LEAST = 3
PAIN_LEAST_SPAN_DAY = 7
#: Pain higher by this much than over the weeks before. Ours, from a smallest change that
#: matters of 2.17 points (Michener 2011).
MORE_PAIN = 2.0
PAIN_BEFORE_DAY = 42
#: No gain over this many days, of which so many weekly looks could have shown one. Ours.
NO_GAIN_DAY = 91
NO_GAIN_LEAST_CHECKS = 8

WORTH_SHOWING = "This is worth showing to a clinician."


class PromptKind(StrEnum):
    LOSING = "losing"
    DROP = "drop"
    STALLED = "stalled"
    NO_GAIN = "no-gain"
    HIGH_PAIN = "high-pain"
    MORE_PAIN = "more-pain"


#: What the records show, with room for what it is about and for the numbers.
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
        What it is about; empty and None for pain.
    numbers
        The numbers of its sentence in PROMPT_WORDS, alike in every language.
    """

    kind: PromptKind
    movements: tuple[Movement, ...]
    side: Side | None
    numbers: Mapping[str, str]

    @property
    def movement(self) -> Movement | None:
        """The movement that it is about; None for pain, and where it is about several."""
        return self.movements[0] if len(self.movements) == 1 else None

    @property
    def text(self) -> str:
        """What the records show, with its numbers, and that it is worth showing."""
        names = ", ".join(MOVEMENTS[each].name for each in self.movements)
        if self.kind is PromptKind.NO_GAIN:
            names = names.lower()
        seen = PROMPT_WORDS[self.kind].format(movement=names, side=self.side or "", **self.numbers)
        return f"{seen} {WORTH_SHOWING}"


def prompts(sides: Sequence[SideProgress], history: History, today: dt.date) -> tuple[Prompt, ...]:
    """Return what is worth talking about, motion first, then pain.

    Parameters
    ----------
    sides
        The affected sides, each movement in the way it is done most often.
    """
    found = [prompt for each in sides for prompt in _of_motion(each)]
    told = {(movement, each.side) for each in found for movement in each.movements}
    quiet = [each for each in sides if (each.movement, each.side) not in told]
    return (*found, *_of_no_gain(quiet), *_of_pain(history, today))


def _of_motion(each: SideProgress) -> Iterable[Prompt]:
    def prompt(kind: PromptKind, numbers: Mapping[str, str]) -> Prompt:
        return Prompt(kind=kind, movements=(each.movement,), side=each.side, numbers=numbers)

    if each.verdict is Verdict.LOSING:
        yield prompt(PromptKind.LOSING, _losing_numbers(each))
    elif (drop := _drop(each)) is not None:
        yield prompt(PromptKind.DROP, {"value": signed(drop, MOVEMENTS[each.movement].unit)})
    elif each.verdict is Verdict.STALLED:
        yield prompt(PromptKind.STALLED, _stalled_numbers(each))


def _of_no_gain(sides: Iterable[SideProgress]) -> Iterable[Prompt]:
    """Yield one prompt a side, however many of its movements show no gain."""
    found: dict[Side, list[Movement]] = {}
    for each in sides:
        if _no_gain(each):
            found.setdefault(each.side, []).append(each.movement)
    for side, movements in found.items():
        yield Prompt(kind=PromptKind.NO_GAIN, movements=tuple(movements), side=side, numbers={})


def _losing_numbers(each: SideProgress) -> dict[str, str]:
    check = each.weekly_checks[-1]
    assert check.slope is not None
    unit = MOVEMENTS[each.movement].unit
    low, high = (signed(end, unit).rstrip("°% ") for end in check.slope.interval_per_month())
    return {
        "weeks": f"{check.weeks:.0f}",
        "value": signed(check.slope.per_month, unit),
        "low": low,
        "high": high,
    }


def _stalled_numbers(each: SideProgress) -> dict[str, str]:
    upper = each.weekly_checks[-1].upper_per_month
    assert upper is not None
    assert each.short_by is not None
    return {
        "weeks": str(STALL_WINDOW_DAY // 7),
        "least": f"{STALL_BELOW_DEG:.0f}°",
        "most": signed(upper, Unit.DEGREES, 1),
        "short": f"{each.short_by:.0f}°",
    }


def _drop(each: SideProgress) -> float | None:
    """Return how far all of two weeks lie below the weeks before, as a number below 0."""
    segment = each.series.latest_segment()
    ago = segment.day[-1] - segment.day
    lately = segment.value[ago < DROP_DAY]
    before = segment.value[(ago >= DROP_DAY) & (ago < DROP_DAY + DROP_BEFORE_DAY)]
    if (
        min(len(lately), len(before)) < DROP_LEAST_DAYS
        or np.ptp(ago[ago < DROP_DAY]) < DROP_DAY / 2
    ):
        return None
    usual = float(np.median(before))
    if lately.max() >= usual - DROP_SPREADS * each.spread:
        return None
    return float(np.median(lately)) - usual


def _no_gain(each: SideProgress) -> bool:
    """Tell whether three months of looks show no gain while the side is still short."""
    if not each.weekly_checks or not _short(each):
        return False
    first = each.weekly_checks[-1].day - dt.timedelta(days=NO_GAIN_DAY)
    if each.series.latest_segment().date(0) > first:
        return False
    ends = [
        k
        for k, check in enumerate(each.weekly_checks)
        if check.day > first and check.slope is not None
    ]
    gains = (Verdict.GAINING, Verdict.LIKELY_GAINING)
    return len(ends) >= NO_GAIN_LEAST_CHECKS and all(
        trend(each.weekly_checks[: k + 1]) not in gains for k in ends
    )


def _short(each: SideProgress) -> bool:
    if each.other is None or each.short_by is None:
        return each.recent.high < MOVEMENTS[each.movement].usual[0]
    enough_deg = STALL_SHORT_DEG if MOVEMENTS[each.movement].unit is Unit.DEGREES else float("inf")
    return each.short_by > min(enough_deg, STALL_SHORT_SHARE * each.other.value)


def _of_pain(history: History, today: dt.date) -> Iterable[Prompt]:
    rated = [
        ((today - session.started.day).days, session.pain)
        for session in history.sessions
        if session.started.day <= today
    ]
    nightly = [
        (ago, max(known))
        for ago, pain in rated
        if ago < PAIN_DAY and (known := [r for r in (pain.rest, pain.night) if r is not None])
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
    """Tell whether there are enough ratings, over enough days; each is (days ago, rating)."""
    if len(ratings) < PAIN_LEAST:
        return False
    ago = [each for each, _ in ratings]
    return max(ago) - min(ago) >= PAIN_LEAST_SPAN_DAY


def _pain_prompt(kind: PromptKind, **numbers: str) -> Prompt:
    return Prompt(kind=kind, movements=(), side=None, numbers=numbers)
