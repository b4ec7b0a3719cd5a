"""What can be said about a movement's progress, in words. The judging is done elsewhere."""

from collections.abc import Sequence

from gui.text.words import movement_name, side_name, side_title, tr
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement
from measure.domain.records import AssessmentCondition
from measure.progress.clinician_prompts import PROMPT_WORDS, WORTH_SHOWING, Prompt
from measure.progress.comparison import Change
from measure.progress.home_programme import WeekDone
from measure.progress.overview import Progress
from measure.progress.shoulder import SideProgress
from measure.progress.trend_line import Slope
from measure.progress.weekly_verdicts import SeriesPhase, Verdict
from measure.progress.wording import signed


def verdict_name(verdict: Verdict) -> str:
    return {
        Verdict.TOO_EARLY: tr("too early to say"),
        Verdict.NO_CLEAR_CHANGE: tr("no clear change"),
        Verdict.LIKELY_GAINING: tr("likely gaining"),
        Verdict.GAINING: tr("gaining"),
        Verdict.LIKELY_LOSING: tr("likely losing"),
        Verdict.LOSING: tr("losing"),
        Verdict.STALLED: tr("stalled"),
    }[verdict]


def progress_of_sides(
    progress: Progress, movement: Movement, conduct: AssessmentCondition
) -> tuple[SideProgress, ...]:
    """Return what is known of both sides of a movement done in one way."""
    return tuple(
        each for each in progress.sides if each.movement is movement and each.conduct == conduct
    )


def side_words(each: SideProgress) -> str:
    """Return one line: the verdict, and by how much where that can be told."""
    line = tr("{side}: {verdict}").format(
        side=side_title(each.side), verdict=verdict_name(each.verdict)
    )
    if each.verdict is Verdict.TOO_EARLY:
        since = each.series.breaks[-1] if each.series.breaks else None
        if since is None:
            return line + tr(". It takes four weeks and eight sessions.")
        return line + tr(
            ". It takes four weeks and eight sessions, counted anew from {day} ({why})."
        ).format(day=since.day.isoformat(), why=tr(since.why))
    parts = []
    slope = each.weekly_checks[-1].slope if each.weekly_checks else None
    if slope is not None:
        parts.append(tr("{change} a month").format(change=_slope_words(slope, each.movement)))
    if each.change is not None:
        parts.append(
            tr("{change} since the first weeks").format(
                change=_change_words(each.change, each.movement)
            )
        )
    return line + (". " + ", ".join(parts) if parts else "") + "."


def _change_words(change: Change, movement: Movement) -> str:
    """Return a change with its interval, "+18° (+12 to +24)"."""
    unit = MOVEMENTS[movement].unit
    low, high = (signed(each, unit).rstrip("° %") for each in (change.low, change.high))
    return tr("{value} ({range})").format(
        value=signed(change.value, unit), range=tr("{low} to {high}").format(low=low, high=high)
    )


def _slope_words(slope: Slope, movement: Movement) -> str:
    low, high = slope.interval_per_month()
    return _change_words(Change(value=slope.per_month, low=low, high=high), movement)


def _chapter_words(side: Side, chapter: SeriesPhase, movement: Movement) -> str:
    """Return what was to be said before a break, "Left, from ... to ..., then injection"."""
    why = ", ".join(tr(each) for each in chapter.ended_by.split(" and "))
    line = tr("{side}, from {first} to {last}, then {why}: {verdict}").format(
        side=side_title(side),
        first=chapter.first.isoformat(),
        last=chapter.last.isoformat(),
        why=why,
        verdict=verdict_name(chapter.verdict),
    )
    if chapter.slope is None:
        return line + "."
    return tr("{line}, {change} a month.").format(
        line=line, change=_slope_words(chapter.slope, movement)
    )


def weeks_words(weeks: Sequence[WeekDone]) -> str:
    """Return what was done of the plan in each week, the earliest first."""
    told = [
        tr("{done} of {planned} in the week from {day}").format(
            day=week.monday.isoformat(), done=week.done, planned=week.planned
        )
        for week in weeks
        if week.planned
    ]
    return tr("Stretches done of those planned: {weeks}.").format(weeks="; ".join(told))


def prompt_words(prompt: Prompt) -> str:
    """Return what is worth showing to a clinician, with its numbers."""
    seen = tr(PROMPT_WORDS[prompt.kind]).format(
        movement=", ".join(movement_name(each) for each in prompt.movements),
        side=side_name(prompt.side) if prompt.side else "",
        **prompt.numbers,
    )
    return f"{seen} {tr(WORTH_SHOWING)}"


def progress_notes(progress: Progress, sides: Sequence[SideProgress]) -> tuple[str, ...]:
    """Return what else is worth knowing about a movement: drift, tasks, prompts."""
    lines = []
    if any(each.drifted_by is not None for each in sides):
        lines.append(
            tr(
                "Both shoulders moved together, so the set-up may have changed and no trend is "
                "told."
            )
        )
    for each in sides:
        lines.extend(_chapter_words(each.side, chapter, each.movement) for chapter in each.earlier)
    for each in sides:
        tasks = [tr(one.task.words) for one in each.milestones if one.reached]
        if tasks and each.affected:
            lines.append(
                tr("{side}, range for: {tasks}.").format(
                    side=side_title(each.side), tasks="; ".join(tasks)
                )
            )
    movements = {each.movement for each in sides}
    lines.extend(
        prompt_words(prompt)
        for prompt in progress.prompts
        if not prompt.movements or movements & {*prompt.movements}
    )
    return tuple(lines)
