"""Clinician prompts: findings worth showing to a clinician, in words. Never advice on treatment.

Nothing here is an emergency; those signs are asked for before measuring.
"""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum

from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.records import History
from measure.progress.shoulder import SideProgress
from measure.progress.stall import STALL_BELOW_DEG, STALL_SHORT_DEG, STALL_SHORT_SHARE
from measure.progress.weekly_verdicts import Verdict
from measure.progress.wording import (
    Translate,
    english,
    signed,
    signed_number,
    with_decimal_sign,
)
from measure.trend.pain_course import high_pain, more_pain

#: Days over which no gain is reported. [project]
NO_GAIN_DAY = 91
#: Fewest weekly checks in these days that could have shown a gain. [project]
NO_GAIN_LEAST_CHECKS = 8

WORTH_SHOWING = "Please show this to your clinician."
MEASURE_AGAIN = "Measure again on another day."


class PromptKind(StrEnum):
    LOSING = "losing"
    DROP = "drop"
    LOW_SESSION = "low-session"
    SAME_DAY = "same-day"
    STALLED = "stalled"
    NO_GAIN = "no-gain"
    HIGH_PAIN = "high-pain"
    MORE_PAIN = "more-pain"


#: Findings that a further session is to confirm first.
TO_MEASURE_AGAIN = frozenset({PromptKind.LOW_SESSION, PromptKind.SAME_DAY})

#: What the records show, with places for movement, side and numbers.
PROMPT_WORDS: Mapping[PromptKind, str] = {
    PromptKind.LOSING: "{movement}, {side} side: readings went down over {weeks} weeks, by {value} "
    "({low} to {high}) a month, 95 % interval in brackets.",
    PromptKind.DROP: "{movement}, {side} side: the last {sessions} sessions were far below the "
    "weeks before, by {value} on average.",
    PromptKind.LOW_SESSION: "{movement}, {side} side: the latest session was far below the "
    "weeks before, by {value}.",
    PromptKind.SAME_DAY: "{movement}, {side} side: readings on the latest day range from "
    "{lowest} to {highest}, more than their 95 % intervals allow.",
    PromptKind.STALLED: "{movement}, {side} side: little or no change over the last {weeks} weeks "
    "(a gain of {least} a month is unlikely; at most {most}, 95 %), and about {short} less than "
    "the other side.",
    PromptKind.NO_GAIN: "{movement}, {side} side: no clear gain over three months.",
    PromptKind.HIGH_PAIN: "Pain at rest or at night over the last two weeks: {rating} of 10 "
    "(median of {sessions} sessions).",
    PromptKind.MORE_PAIN: "Worst pain in 24 hours: about {rating} of 10 over the last two weeks, "
    "about {before} in the weeks before.",
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
        """What the records show, with its numbers, and that it is worth showing; in English."""
        return prompt_text(self)

    @property
    def closing(self) -> str:
        """What to do: show it to a clinician, or measure again first."""
        return MEASURE_AGAIN if self.kind in TO_MEASURE_AGAIN else WORTH_SHOWING


def prompt_text(prompt: Prompt, tr: Translate = english) -> str:
    """Return what the records show, with its numbers, and what to do about it."""
    return f"{finding_text(prompt, tr)} {tr(prompt.closing)}"


def finding_text(prompt: Prompt, tr: Translate = english) -> str:
    """Return what the records show, with its numbers."""
    names = ", ".join(tr(MOVEMENTS[movement].name) for movement in prompt.movements).capitalize()
    return tr(PROMPT_WORDS[prompt.kind]).format(
        movement=names,
        side=tr(prompt.side.value) if prompt.side else "",
        **{name: with_decimal_sign(number, tr) for name, number in prompt.numbers.items()},
    )


def prompts(sides: Sequence[SideProgress], history: History, today: dt.date) -> tuple[Prompt, ...]:
    """Return the prompts of a person, motion first, then pain.

    A loss is told of every side, since the other shoulder may stiffen too, and readings that
    contradict one another; that a gain fails to come, of the affected ones. Nothing is told of a
    movement without recent sessions.

    Parameters
    ----------
    sides
        Both sides, each movement under its most frequent condition.
    """
    of_motion: list[Prompt] = []
    without_gain: dict[Side, list[Movement]] = {}
    for progress in sides:
        if progress.current.lapsed is not None:
            continue
        if prompt := _of_same_day(progress, history):
            of_motion.append(prompt)
        if prompt := _of_motion(progress):
            of_motion.append(prompt)
        elif progress.affected and _no_gain(progress, today):
            without_gain.setdefault(progress.side, []).append(progress.movement)
    # One prompt a side, however many of its movements show no gain.
    of_no_gain = (
        Prompt(kind=PromptKind.NO_GAIN, movements=tuple(movements), side=side, numbers={})
        for side, movements in without_gain.items()
    )
    return (*of_motion, *of_no_gain, *_of_pain(history, today))


def _of_same_day(progress: SideProgress, history: History) -> Prompt | None:
    """Return that readings of the latest day exclude one another, if they do."""
    series = progress.series
    readings = [
        (measurement.low, measurement.value, measurement.high)
        for record in history.measurements
        if (measurement := record.measurement).status is Status.READING
        and (measurement.movement, measurement.side) == (progress.movement, progress.side)
        and record.conduct == series.conduct
        and record.taken.day == series.date(-1)
    ]
    whole = [
        (low, value, high)
        for low, value, high in readings
        if low is not None and value is not None and high is not None
    ]
    if not whole or max(low for low, _, _ in whole) <= min(high for _, _, high in whole):
        return None
    values = sorted(value for _, value, _ in whole)
    unit = MOVEMENTS[progress.movement].unit
    lowest, highest = (signed(end, unit).lstrip("+") for end in (values[0], values[-1]))
    return Prompt(
        kind=PromptKind.SAME_DAY,
        movements=(progress.movement,),
        side=progress.side,
        numbers={"lowest": lowest, "highest": highest},
    )


def _of_motion(progress: SideProgress) -> Prompt | None:
    loss = progress.sudden_loss
    if progress.verdict is Verdict.LOSING:
        kind, numbers = PromptKind.LOSING, _losing_numbers(progress)
    elif loss is not None:
        kind = PromptKind.DROP if loss.confirmed else PromptKind.LOW_SESSION
        numbers = {
            "value": signed(abs(loss.by), MOVEMENTS[progress.movement].unit).lstrip("+"),
            "sessions": str(loss.sessions),
        }
    elif progress.affected and progress.verdict is Verdict.STALLED:
        kind, numbers = PromptKind.STALLED, _stalled_numbers(progress)
    else:
        return None
    return Prompt(kind=kind, movements=(progress.movement,), side=progress.side, numbers=numbers)


def _losing_numbers(progress: SideProgress) -> dict[str, str]:
    shown = progress.current.shown
    assert shown is not None
    unit = MOVEMENTS[progress.movement].unit
    low, high = (signed_number(end, unit) for end in (shown.low, shown.high))
    return {
        "weeks": f"{progress.weekly_checks[-1].weeks:.0f}",
        "value": signed(shown.per_month, unit),
        "low": low,
        "high": high,
    }


def _stalled_numbers(progress: SideProgress) -> dict[str, str]:
    check = progress.weekly_checks[-1]
    assert check.upper_per_month is not None
    assert progress.short_by is not None
    return {
        "weeks": f"{check.weeks:.0f}",
        "least": f"{STALL_BELOW_DEG:.0f}°",
        "most": signed(check.upper_per_month, Unit.DEGREES, 1),
        "short": f"{progress.short_by:.0f}°",
    }


def _no_gain(progress: SideProgress, today: dt.date) -> bool:
    """Return whether three months of checks show no gain while the side is still short."""
    if not progress.weekly_checks or not _short(progress):
        return False
    first = today - dt.timedelta(days=NO_GAIN_DAY)
    if progress.series.latest_segment().date(0) > first:
        return False
    said = [
        verdict
        for check, verdict in zip(progress.weekly_checks, progress.current.said, strict=True)
        if check.day > first and check.slope is not None
    ]
    gains = (Verdict.GAINING, Verdict.LIKELY_GAINING)
    return len(said) >= NO_GAIN_LEAST_CHECKS and not any(verdict in gains for verdict in said)


def _short(progress: SideProgress) -> bool:
    facts = MOVEMENTS[progress.movement]
    if progress.other is None or progress.short_by is None:
        return progress.recent.high < facts.usual[0]
    enough_deg = STALL_SHORT_DEG if facts.unit is Unit.DEGREES else float("inf")
    return progress.short_by > min(enough_deg, STALL_SHORT_SHARE * progress.other.value)


def _of_pain(history: History, today: dt.date) -> tuple[Prompt, ...]:
    prompts_of_pain = []
    if (high := high_pain(history.sessions, today)) is not None:
        numbers = {"rating": f"{high.rating:.0f}", "sessions": str(high.sessions)}
        prompts_of_pain.append(_pain_prompt(PromptKind.HIGH_PAIN, numbers))
    if (more := more_pain(history.sessions, today)) is not None:
        numbers = {"rating": f"{more.now:.0f}", "before": f"{more.before:.0f}"}
        prompts_of_pain.append(_pain_prompt(PromptKind.MORE_PAIN, numbers))
    return tuple(prompts_of_pain)


def _pain_prompt(kind: PromptKind, numbers: Mapping[str, str]) -> Prompt:
    return Prompt(kind=kind, movements=(), side=None, numbers=numbers)
