"""FHIR resources of a home programme: plans, goals, exercises done, and how it went."""

import datetime as dt
from collections.abc import Iterator, Sequence

from measure.domain.exercises import EXERCISE_FACTS, Exercise
from measure.domain.goal_records import Goal, GoalRating
from measure.domain.home_programme_records import ExerciseLog, NextMorning, Plan, PlannedExercise
from measure.domain.records import History
from measure.export.fhir_codes import (
    OWN_EXERCISE,
    OWN_MEASURE,
    Resource,
    coding,
    instant,
    observation,
    pain_observation,
    url_of,
    uuid_of,
)
from measure.progress.home_programme import dose_words, plan_on


def programme_resources(history: History, today: dt.date) -> Iterator[Resource]:
    """Yield the plans, goals, exercises done and answers of a history."""
    for goal in history.goals:
        yield _goal(goal)
    for rating in history.goal_ratings:
        yield _goal_rating(rating)
    for number, plan in enumerate(history.plans):
        yield _care_plan(plan, history.plans[number + 1 :], history.goals, today)
    for log in history.exercises_done:
        yield from _exercise_done(log, plan_on(history.plans, log.done.day))
    for morning in history.next_mornings:
        yield _next_morning(morning)


def _goal(goal: Goal) -> Resource:
    resource: Resource = {
        "resourceType": "Goal",
        "id": uuid_of(goal.id),
        "lifecycleStatus": "active" if goal.last_day is None else "completed",
        "description": {"text": goal.words},
        "subject": {"reference": url_of(uuid_of(goal.person_id))},
        "startDate": goal.first_day.isoformat(),
    }
    if goal.last_day is not None:
        resource["statusDate"] = goal.last_day.isoformat()
    return resource


def _goal_rating(rating: GoalRating) -> Resource:
    code = _own("goal-rating", "How well it goes, 0 to 10")
    identifier, day = uuid_of(rating.id), rating.day.isoformat()
    return observation(identifier, "survey", code, rating.person_id, day) | {
        "focus": [{"reference": url_of(uuid_of(rating.goal_id))}],
        "valueInteger": rating.rating,
    }


def _care_plan(
    plan: Plan, later: Sequence[Plan], goals: Sequence[Goal], today: dt.date
) -> Resource:
    """Return a plan; it ends where the next one begins."""
    following = min(
        (other.first_day for other in later if other.first_day > plan.first_day), default=None
    )
    over = following is not None and following <= today
    resource: Resource = {
        "resourceType": "CarePlan",
        "id": uuid_of(plan.id),
        "status": "completed" if over or not plan.exercises else "active",
        "intent": "plan",
        "title": "Home programme",
        "subject": {"reference": url_of(uuid_of(plan.person_id))},
        "period": {"start": plan.first_day.isoformat()},
    }
    if following is not None:
        resource["period"]["end"] = (following - dt.timedelta(days=1)).isoformat()
    during = [
        goal
        for goal in goals
        if (goal.last_day is None or goal.last_day >= plan.first_day)
        and (following is None or goal.first_day < following)
    ]
    if during:
        resource["goal"] = [{"reference": url_of(uuid_of(goal.id))} for goal in during]
    if plan.exercises:
        status = "completed" if over else "in-progress"
        resource["activity"] = [_activity(item, status) for item in plan.exercises]
    notes = [f"Stop at pain {plan.pain_limit} of 10."]
    if plan.chosen_by.strip():
        notes.append(f"Chosen by: {plan.chosen_by}")
    if plan.review is not None:
        notes.append(f"Review: {plan.review.isoformat()}")
    if plan.primary:
        notes.append(f"Verdicts rest on: {', '.join(plan.primary)}")
    resource["note"] = [{"text": note} for note in notes]
    return resource


def _activity(item: PlannedExercise, status: str) -> Resource:
    repeat: Resource = {"frequency": item.times_a_day, "period": 1, "periodUnit": "d"}
    listed = item.exercise.listed
    how = "" if listed is None else EXERCISE_FACTS[listed].how
    words = [dose_words(item), how, item.note]
    detail = {
        "kind": "ServiceRequest",
        "code": _exercise(item.exercise),
        "status": status,
        "scheduledTiming": {"repeat": repeat},
        "description": ". ".join(part for part in words if part.strip()),
    }
    return {"detail": detail}


def _exercise(exercise: Exercise) -> Resource:
    """Return an exercise: a code of ours for a listed one, words alone for a clinician's own."""
    concept: Resource = {"text": exercise.name}
    if exercise.listed is not None:
        concept["coding"] = [coding(OWN_EXERCISE, exercise.listed.value, exercise.name)]
    return concept


def _exercise_done(log: ExerciseLog, plan: Plan | None) -> Iterator[Resource]:
    """Yield the exercise as a procedure, and the pain reached in it."""
    identifier = uuid_of(log.id)
    procedure: Resource = {
        "resourceType": "Procedure",
        "id": identifier,
        "status": "completed",
        "code": _exercise(log.exercise),
        "subject": {"reference": url_of(uuid_of(log.person_id))},
        "performedDateTime": instant(log.done),
    }
    if plan is not None:
        procedure["basedOn"] = [{"reference": url_of(uuid_of(plan.id))}]
    notes = []
    if log.repetitions is not None:
        notes.append(f"Repetitions: {log.repetitions}")
    if log.compared is not None:
        notes.append(f"Compared with the last time: {log.compared.value}")
    if notes:
        procedure["note"] = [{"text": note} for note in notes]
    yield procedure
    if log.pain is not None:
        pain = pain_observation(
            f"{log.id} pain",
            log.person_id,
            instant(log.done),
            "exercise",
            f"Pain reached in an exercise: {log.exercise.name}",
            log.pain,
        )
        yield pain | {"partOf": [{"reference": url_of(identifier)}]}


def _next_morning(morning: NextMorning) -> Resource:
    code = _own("eased-by-next-morning", "The shoulder had settled by the next morning")
    identifier, day = uuid_of(morning.id), morning.day.isoformat()
    return observation(identifier, "survey", code, morning.person_id, day) | {
        "valueBoolean": morning.eased
    }


def _own(code: str, text: str) -> Resource:
    return {"coding": [coding(OWN_MEASURE, code, text)], "text": text}
