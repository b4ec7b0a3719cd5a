"""Words of the printed page of exercises, in the language that the person reads."""

from collections.abc import Callable
from dataclasses import dataclass

from gui.drawing.shown_movements import shown_exercise
from measure.domain.exercises import EXERCISE_FACTS
from measure.domain.home_programme_records import Plan, PlannedExercise
from measure.domain.records import Person
from measure.progress.dates import date_words
from measure.progress.home_programme import dose_words
from measure.progress.wording import name_words

#: Returns an English text in another language.
Translate = Callable[[str], str]


@dataclass(frozen=True, slots=True, kw_only=True)
class HandoutEntry:
    """One exercise on the page.

    Attributes
    ----------
    note
        What the clinician added; for one of their own, how it is done. May be empty.
    """

    planned: PlannedExercise
    name: str
    dose: str
    how: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class HandoutWords:
    """All that the page says, from its top to its foot.

    Attributes
    ----------
    facts
        Since when, by whom, and the review.
    rule
        When to stop.
    warnings
        Red flags in brief: a heading and its signs.
    """

    title: str
    facts: str
    rule: str
    entries: tuple[HandoutEntry, ...]
    warnings: tuple[tuple[str, str], ...]
    notice: str


def handout_words(person: Person, plan: Plan, tr: Translate) -> HandoutWords:
    """Return the words of a programme's page."""
    return HandoutWords(
        title=tr("Exercises: {person}").format(person=name_words(person.pseudonym, tr)),
        facts=_facts(plan, tr),
        rule=_rule(plan.pain_limit, tr),
        entries=tuple(_entry(planned, tr) for planned in plan.exercises),
        warnings=_warnings(tr),
        notice=tr(
            "Your clinician chose these exercises. Thawline added nothing. If you have "
            "questions, ask your clinician."
        ),
    )


def _facts(plan: Plan, tr: Translate) -> str:
    parts = [
        tr("Chosen by: {who}.").format(who=plan.chosen_by) if plan.chosen_by else "",
        tr("From {day}.").format(day=date_words(plan.first_day, tr)),
        tr("Review: {day}.").format(day=date_words(plan.review, tr)) if plan.review else "",
    ]
    listed = (planned.exercise.listed for planned in plan.exercises)
    if any(exercise and shown_exercise(exercise).as_in_mirror for exercise in listed):
        parts.append(tr("Drawings from the front and from the side are as in a mirror."))
    return " ".join(part for part in parts if part)


def _rule(limit: int, tr: Translate) -> str:
    slowly = tr("Move slowly, and stop before it becomes painful.")
    if limit == 1:
        return f"{slowly} {tr('Stop at the first pain.')}"
    at = tr("Stop when pain reaches {limit} of 10, or before.").format(limit=limit)
    return f"{slowly} {at}"


def _entry(planned: PlannedExercise, tr: Translate) -> HandoutEntry:
    listed = planned.exercise.listed
    facts = None if listed is None else EXERCISE_FACTS[listed]
    return HandoutEntry(
        planned=planned,
        name=tr(facts.name) if facts else planned.exercise.name,
        dose=dose_words(planned, tr),
        how=tr(facts.how) if facts else "",
        note=planned.note,
    )


def _warnings(tr: Translate) -> tuple[tuple[str, str], ...]:
    return (
        (
            tr("Stop and call the emergency number"),
            tr(
                "Chest pain or pressure, or pain spreading to the jaw, neck, back or arm; "
                "breathlessness; a drooping face, slurred speech, sudden weakness or numbness; an "
                "arm that is cold, pale, blue or suddenly swollen; a hot, red joint or a fever; a "
                "shoulder out of shape after an injury."
            ),
        ),
        (
            tr("Stop and see your clinician within a few days"),
            tr(
                "Constant pain that no rest eases, day and night; weakness or numbness that gets "
                "worse; an arm that you cannot lift since a fall; a new lump, or weight loss that "
                "you cannot explain; a swollen or discoloured hand."
            ),
        ),
    )
