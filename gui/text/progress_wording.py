"""Wording of a movement's progress for the window."""

from collections.abc import Sequence

from gui.text.wording import movement_name, side_name, side_title, tr
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition
from measure.progress.clinician_prompts import PROMPT_WORDS, Prompt
from measure.progress.home_programme import WeekDone
from measure.progress.overview import Progress
from measure.progress.phases import SeriesPhase
from measure.progress.shoulder import SideProgress
from measure.progress.weekly_verdicts import Verdict
from measure.progress.wording import VERDICT_WORDS, change_words, slope_words


def progress_of_sides(
    progress: Progress, movement: Movement, conduct: AssessmentCondition
) -> tuple[SideProgress, ...]:
    """Return the progress of both sides of a movement done in one way."""
    return tuple(
        side for side in progress.sides if side.movement is movement and side.conduct == conduct
    )


def progress_line(progress: SideProgress) -> str:
    """Return one line: the verdict, and the change where there is one."""
    line = tr("{side}: {verdict}").format(
        side=side_title(progress.side), verdict=tr(VERDICT_WORDS[progress.verdict])
    )
    if progress.verdict is Verdict.TOO_EARLY:
        since = progress.series.breaks[-1] if progress.series.breaks else None
        if since is None:
            return line + tr(". It takes four weeks and eight sessions.")
        return line + tr(
            ". It takes four weeks and eight sessions, counted anew from {day} ({why})."
        ).format(day=since.day.isoformat(), why=tr(since.why))
    parts = []
    slope = progress.weekly_checks[-1].slope if progress.weekly_checks else None
    if slope is not None:
        parts.append(
            tr("{change} a month").format(change=slope_words(slope, progress.movement, tr))
        )
    if progress.change is not None:
        parts.append(
            tr("{change} since the first weeks").format(
                change=change_words(progress.change, progress.movement, tr)
            )
        )
    return line + (". " + ", ".join(parts) if parts else "") + "."


def _phase_words(side: Side, phase: SeriesPhase, movement: Movement) -> str:
    """Return the verdict before a break, "Left, from ... to ..., then injection"."""
    why = ", ".join(tr(reason) for reason in phase.ended_by.split(" and "))
    line = tr("{side}, from {first} to {last}, then {why}: {verdict}").format(
        side=side_title(side),
        first=phase.first.isoformat(),
        last=phase.last.isoformat(),
        why=why,
        verdict=tr(VERDICT_WORDS[phase.verdict]),
    )
    if phase.slope is None:
        return line + "."
    return tr("{line}, {change} a month.").format(
        line=line, change=slope_words(phase.slope, movement, tr)
    )


def weeks_words(weeks: Sequence[WeekDone]) -> str:
    """Return the stretches done of those planned in each week, the earliest first."""
    parts = [
        tr("{done} of {planned} in the week from {day}").format(
            day=week.monday.isoformat(), done=week.done, planned=week.planned
        )
        for week in weeks
        if week.planned
    ]
    return tr("Stretches done of those planned: {weeks}.").format(weeks="; ".join(parts))


def prompt_words(prompt: Prompt) -> str:
    """Return a finding that is worth showing to a clinician, with its numbers."""
    finding = tr(PROMPT_WORDS[prompt.kind]).format(
        movement=", ".join(movement_name(movement) for movement in prompt.movements),
        side=side_name(prompt.side) if prompt.side else "",
        **prompt.numbers,
    )
    return f"{finding} {tr(prompt.closing)}"


def progress_notes(progress: Progress, sides: Sequence[SideProgress]) -> tuple[str, ...]:
    """Return notes on a movement: drift of the set-up, earlier phases, tasks, prompts."""
    lines = []
    if any(side.drifted_by is not None for side in sides):
        lines.append(
            tr(
                "Both shoulders moved together, so the set-up may have changed and no trend is "
                "told."
            )
        )
    for side in sides:
        lines.extend(_phase_words(side.side, phase, side.movement) for phase in side.earlier)
    for side in sides:
        tasks = [tr(milestone.task.words) for milestone in side.milestones if milestone.reached]
        if tasks and side.affected:
            lines.append(
                tr("{side}, range for: {tasks}.").format(
                    side=side_title(side.side), tasks="; ".join(tasks)
                )
            )
    movements = {side.movement for side in sides}
    lines.extend(
        prompt_words(prompt)
        for prompt in progress.prompts
        if not prompt.movements or movements & {*prompt.movements}
    )
    return tuple(lines)
