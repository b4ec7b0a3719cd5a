"""Wording of a movement's progress for the window."""

import datetime as dt
from collections.abc import Sequence

from gui.text.wording import side_title, tr
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, History
from measure.progress.comparison import Change
from measure.progress.dates import date_words
from measure.progress.overview import Progress
from measure.progress.phases import SeriesPhase
from measure.progress.sentences import (
    shared_sentences,
    shown_change,
    side_sentences,
    slope_sentence,
    uncompared_slope,
    verdict_words,
)
from measure.progress.shoulder import SideProgress
from measure.progress.stall import STALL_BELOW_DEG
from measure.progress.warm_up import WarmUpEffect
from measure.progress.weekly_verdicts import Verdict
from measure.progress.wording import VERDICT_WORDS, change_words, slope_words


def progress_of_sides(
    progress: Progress, movement: Movement, conduct: AssessmentCondition
) -> tuple[SideProgress, ...]:
    """Return the progress of both sides of a movement done in one way."""
    return tuple(
        side for side in progress.sides if side.movement is movement and side.conduct == conduct
    )


def verdict_line(progress: SideProgress) -> str:
    """Return the verdict on a side in one line, with since when and the change it rests on."""
    words = f"{side_title(progress.side)}: {verdict_words(progress, tr)}."
    if not progress.affected:
        return words
    if progress.verdict is Verdict.NO_CLEAR_CHANGE:
        return f"{words} {_unclear_words(progress)}".strip()
    slope = slope_sentence(progress, tr)
    return f"{words} {slope}." if slope else words


def rate_line(progress: SideProgress) -> str:
    """Return the change a month of an affected side in one line, or nothing where none is shown."""
    if not progress.affected or progress.verdict is Verdict.TOO_EARLY:
        return ""
    if progress.verdict is Verdict.NO_CLEAR_CHANGE:
        words = _unclear_words(progress)
        words = words[:1].lower() + words[1:]
    else:
        slope = slope_sentence(progress, tr)
        words = f"{slope}." if slope else ""
    return f"{side_title(progress.side)}: {words}" if words else ""


def _unclear_words(progress: SideProgress) -> str:
    """Return a change a month that is no clear one in plain words, or nothing where none is shown.

    An interval without 0 alone is not enough for a verdict, so that is said with it.
    """
    change = shown_change(progress)
    if change is None:
        return ""
    if change.low > 0 or change.high < 0:
        words = tr("{change} a month, not certain enough to call it a change.")
    else:
        words = tr("It could be more movement or less: {change} a month.")
    return words.format(change=change_words(change, progress.movement, tr))


def _phase_words(side: SideProgress, phase: SeriesPhase) -> str:
    """Return the verdict before a break, "Left, from ... to ..., then injection"."""
    why = ", ".join(tr(reason) for reason in phase.ended_by.split(" and "))
    line = tr("{side}, from {first} to {last}, then {why}: {verdict}").format(
        side=side_title(side.side),
        first=date_words(phase.first, tr),
        last=date_words(phase.last, tr),
        why=why,
        verdict=tr(VERDICT_WORDS[phase.verdict]),
    )
    slope = uncompared_slope(phase, side)
    if slope is None:
        return line + "."
    return tr("{line}, {change} a month.").format(
        line=line, change=slope_words(slope, side.movement, tr)
    )


def warm_up_words(effects: Sequence[WarmUpEffect]) -> str:
    """Return how much further each side goes after exercises, or nothing."""
    lines = [
        tr(
            "{side}, after exercises: {change} compared with before ({pairs} pairs of sessions)."
        ).format(
            side=side_title(effect.side),
            change=change_words(
                Change(value=effect.value, low=effect.low, high=effect.high), effect.movement, tr
            ),
            pairs=effect.pairs,
        )
        for effect in effects
    ]
    if lines:
        lines.append(tr("This is the effect in the hour after exercises, not a change over weeks."))
    return "\n".join(lines)


def logged_words(history: History, today: dt.date) -> str:
    """Return on how many days of late exercises were logged; nothing where none ever was."""
    days = {log.done.day for log in history.exercises_done}
    if not days:
        return ""
    week, month = (sum(0 <= (today - day).days < within for day in days) for within in (7, 28))
    return tr(
        "Days with exercises logged: {week} in the last week, {month} in the last four weeks."
    ).format(week=week, month=month)


def progress_notes(sides: Sequence[SideProgress]) -> tuple[str, ...]:
    """Return notes on a movement: what to doubt, changes and events, tasks."""
    lines = []
    drifted = [side for side in sides if side.drifted_by is not None]
    if drifted:
        lines.append(
            tr(
                "The readings of both shoulders moved the same way, so the set-up may have "
                "changed, and no change a month is shown."
            )
        )
    if any(side.verdict is Verdict.STALLED for side in drifted):
        lines.append(
            tr("“Levelled off” still holds: as measured, the gain is below {gain} a month.").format(
                gain=f"{STALL_BELOW_DEG:.0f}°"
            )
        )
    for side in sides:
        name = side_title(side.side)
        lines.extend(f"{name}: {sentence}" for sentence in side_sentences(side, tr))
    lines.extend(shared_sentences(sides, tr))
    for side in sides:
        lines.extend(_phase_words(side, phase) for phase in side.earlier)
        tasks = [tr(milestone.task.words) for milestone in side.milestones if milestone.reached]
        if tasks and side.affected:
            lines.append(
                tr("{side} arm: enough movement to {tasks}.").format(
                    side=side_title(side.side), tasks="; ".join(tasks)
                )
            )
    return tuple(lines)
