"""Wording of exercises: the guided round, what is planned, what was logged."""

import math
from collections.abc import Sequence

from gui.protocol.exercise_round import (
    ExerciseRound,
    RoundPhase,
    RoundTask,
    duration_s,
    tasks_of,
)
from gui.text.wording import exercise_name, tr
from measure.domain.exercise_rounds import DayOfExercises, DayPart
from measure.domain.exercises import EXERCISE_FACTS, ListedExercise
from measure.domain.home_programme_records import (
    ComparedWithLast,
    ExerciseLog,
    Plan,
    PlannedExercise,
)
from measure.domain.landmarks import Side
from measure.progress.dates import date_words


def _arm_words(side: Side) -> str:
    return tr("left arm") if side is Side.LEFT else tr("right arm")


def planned_title(planned: PlannedExercise) -> str:
    """Return for example "Wall walk, left arm", or the exercise alone where no side is stated."""
    name = exercise_name(planned.exercise)
    if not planned.sides:
        return name
    arms = tr("both arms") if len(planned.sides) > 1 else _arm_words(planned.sides[0])
    return f"{name}, {_in_one_line(arms)}"


def round_task_title(task: RoundTask) -> str:
    """Return for example "Wall walk, left arm"."""
    name = exercise_name(task.planned.exercise)
    return name if task.side is None else f"{name}, {_arm_words(task.side)}"


def how_sentence(planned: PlannedExercise) -> str:
    """Return how an exercise is done: the clinician's words, after ours for one of the list."""
    listed = planned.exercise.listed
    parts = ("" if listed is None else tr(EXERCISE_FACTS[listed].how), planned.note)
    return " ".join(part for part in parts if part)


def how_in_short(planned: PlannedExercise) -> str:
    """Return how an exercise is done in the words that are read while doing it, as above."""
    listed = planned.exercise.listed
    parts = ("" if listed is None else _in_short(listed), planned.note)
    return " ".join(part for part in parts if part)


def _in_short(listed: ListedExercise) -> str:
    return {
        ListedExercise.TABLE_SLIDE_FORWARD: tr("Let the hand slide forwards."),
        ListedExercise.TABLE_SLIDE_SIDEWAYS: tr("Let the hand slide to the side."),
        ListedExercise.PENDULUM: tr("Arm hanging, small circles."),
        ListedExercise.WALL_WALK: tr("Walk your fingers up the wall."),
        ListedExercise.EXTERNAL_ROTATION: tr("Elbow at your side. Turn away from the hand."),
        ListedExercise.INTERNAL_ROTATION: tr("Elbow at your side. Turn towards the hand."),
        ListedExercise.EXTENSION: tr("Walk away from the handle."),
        ListedExercise.BEHIND_BACK: tr("Turn away from the handle."),
        ListedExercise.CROSS_BODY: tr("Draw the arm across your chest."),
        ListedExercise.TOWEL: tr("Draw the towel gently upwards."),
    }[listed]


def round_sentence(guided: ExerciseRound) -> str:
    """Return what to do at this moment of a round: short, and without urging."""
    if guided.paused:
        return tr("Paused. Let the arm rest.")
    if guided.phase is RoundPhase.READY:
        return tr("Get ready: {exercise}.").format(exercise=round_task_title(guided.task))
    return _moving_sentences()[guided.phase]


def _moving_sentences() -> dict[RoundPhase, str]:
    return {
        RoundPhase.MOVE: tr("Move slowly. Stop before it becomes painful."),
        RoundPhase.HOLD: tr("Hold it there, gently."),
        RoundPhase.BACK: tr("Slowly back."),
        RoundPhase.REST: tr("Let the arm rest."),
        RoundPhase.SWING: tr("Let the arm swing gently."),
        RoundPhase.OVER: tr("Done. Let the arm rest."),
    }


def moving_sentences() -> list[str]:
    """Return what is said of a round once an exercise has begun, in any phase."""
    return list(_moving_sentences().values())


def count_unit(guided: ExerciseRound) -> tuple[str, str]:
    """Return what stands with the number of a repetition, and in short: "of 10", "repetition"."""
    planned = guided.task.planned.repetitions
    if planned is None:
        return tr("repetition"), tr("rep.")
    words = tr("of {count}").format(count=planned)
    return words, words


def repetition_words(guided: ExerciseRound) -> str:
    """Return which repetition it is: "Repetition 4 of 10", or without a count "Repetition 4"."""
    planned = guided.task.planned.repetitions
    if planned is None:
        return tr("Repetition {number}").format(number=guided.repetition)
    return tr("Repetition {number} of {count}").format(number=guided.repetition, count=planned)


def beside_words(guided: ExerciseRound) -> str:
    """Return which repetition it is or comes next, what a countdown leads to, what is done."""
    if guided.paused:
        planned = guided.task.planned.repetitions
        words = tr("{done} of {planned} done") if planned else tr("{done} done")
        return words.format(done=guided.done, planned=planned)
    if guided.phase is RoundPhase.READY:
        return tr("Starts by itself.")
    if guided.phase not in (RoundPhase.HOLD, RoundPhase.REST):
        return ""
    if guided.task.planned.repetitions is None:
        next_one = tr("Next: repetition {number}").format(number=guided.repetition)
        return repetition_words(guided) if guided.phase is RoundPhase.HOLD else next_one
    words = f"{guided.repetition} {count_unit(guided)[0]}"
    if guided.phase is RoundPhase.HOLD:
        return words
    return tr("Next: {repetition}").format(repetition=words)


def limit_sentence(limit: int) -> str:
    """Return at which pain to stop, 1..10."""
    if limit == 1:
        return tr("Stop at the first pain.")
    return tr("Stop when pain reaches {limit} of 10, or before.").format(limit=limit)


def limit_in_short(limit: int) -> str:
    """Return at which pain to stop, 1..10, to be read from across a room."""
    if limit == 1:
        return tr("Stop at the first pain.")
    return tr("Stop at pain {limit}\u00a0of\u00a010, or before.").format(limit=limit)


def limit_passed_sentence(limit: int) -> str:
    return tr("Your programme says to stop when pain reaches {limit}.").format(limit=limit)


def round_length_words(tasks: Sequence[RoundTask]) -> str:
    """Return how many exercises a round has, and about how many minutes."""
    minutes = max(1, math.ceil(duration_s(tasks) / 60))
    about = (
        tr("about 1 minute")
        if minutes == 1
        else tr("about {minutes} minutes").format(minutes=minutes)
    )
    return f"{_count_words(len({task.planned.exercise for task in tasks}))}, {about}"


def _count_words(count: int) -> str:
    return tr("1 exercise") if count == 1 else tr("{count} exercises").format(count=count)


def day_words(day: DayOfExercises, *, begin: bool) -> str:
    """Return in one line what was logged today and what is left of it.

    Parameters
    ----------
    begin
        Whether what is left is offered.
    """
    if not day.due:
        return tr("Everything planned for today is logged.")
    if not day.parts:
        return round_length_words(tasks_of(day.due))
    logged = _logged_words(day.parts)
    count = _count_words(len(day.due))
    rest = tr("{exercises} not done yet.") if day.begun else tr("Next: {exercises}.")
    return f"{logged} {rest.format(exercises=count)}" if begin else logged


def _logged_words(parts: Sequence[DayPart]) -> str:
    """Return in which parts of today something was logged."""
    if len(parts) == 1:
        return {
            DayPart.MORNING: tr("Logged this morning."),
            DayPart.AFTERNOON: tr("Logged this afternoon."),
            DayPart.EVENING: tr("Logged this evening."),
        }[parts[0]]
    names = {
        DayPart.MORNING: tr("morning"),
        DayPart.AFTERNOON: tr("afternoon"),
        DayPart.EVENING: tr("evening"),
    }
    return tr("Logged today: {parts}.").format(parts=", ".join(names[part] for part in parts))


def compared_name(compared: ComparedWithLast) -> str:
    return {
        ComparedWithLast.EASIER: tr("Easier"),
        ComparedWithLast.SAME: tr("The same"),
        ComparedWithLast.HARDER: tr("Harder"),
    }[compared]


def log_words(log: ExerciseLog, plan: Plan | None) -> str:
    """Return one line for an exercise that was logged: when, which, and how it went.

    Parameters
    ----------
    plan
        The programme of that day, or None.
    """
    planned = plan.planned(log.exercise) if plan else None
    parts = [
        f"{log.done.local:%H:%M}  {exercise_name(log.exercise)}",
        in_part_words(log.repetitions, planned.repetitions if planned else None),
    ]
    if log.pain is not None:
        parts.append(tr("pain {pain} of 10").format(pain=log.pain))
    if log.compared is not None:
        parts.append(compared_name(log.compared).lower())
    return ", ".join(part for part in parts if part)


def done_words(planned: PlannedExercise, logged: Sequence[ExerciseLog]) -> str:
    """Return what was done of a planned exercise today, as it was last; nothing if it was not."""
    own = [log for log in logged if log.exercise == planned.exercise]
    if not own:
        return ""
    last, times = own[-1], planned.times_a_day
    whole = tr("done") if times == 1 else tr("done {count} of {times} times today")
    count = sum(log.repetitions != 0 for log in own)
    parts = [
        in_part_words(last.repetitions, planned.repetitions)
        or whole.format(count=min(count, times), times=times)
    ]
    if last.pain is not None:
        parts.append(tr("pain {pain} of 10").format(pain=last.pain))
    words = ", ".join(parts)
    return f"{words[0].upper()}{words[1:]}."


def done_whole(planned: PlannedExercise, logged: Sequence[ExerciseLog]) -> bool:
    """Return whether all of a planned exercise was done today when it was last logged."""
    own = [log for log in logged if log.exercise == planned.exercise]
    return bool(own) and not in_part_words(own[-1].repetitions, planned.repetitions)


def in_part_words(repetitions: int | None, planned: int | None) -> str:
    """Return how many repetitions were done where not all of the planned ones were, or nothing."""
    if repetitions == 0:
        return tr("not done")
    if repetitions is None or planned is None or repetitions >= planned:
        return ""
    if repetitions == 1:
        return tr("partly done: 1 repetition")
    return tr("partly done: {count} repetitions").format(count=repetitions)


def plan_sentences(plan: Plan, *, with_limit: bool = True) -> str:
    """Return at which pain to stop, who chose the plan, since when, and when it is looked at.

    No line ends within a date.
    """
    parts = [
        limit_sentence(plan.pain_limit) if with_limit else "",
        tr("Chosen by: {who}.").format(who=plan.chosen_by) if plan.chosen_by else "",
        _in_one_line(tr("Programme from {day}.").format(day=date_words(plan.first_day, tr))),
        _in_one_line(tr("Review: {day}.").format(day=date_words(plan.review, tr)))
        if plan.review
        else "",
    ]
    return " ".join(part for part in parts if part)


def _in_one_line(words: str) -> str:
    """Return words that stay together where a line ends."""
    return words.replace(" ", "\u00a0")
