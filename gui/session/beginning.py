"""Beginning of a measuring session: who, what and how, with the record that is kept of it."""

import datetime as dt
from dataclasses import dataclass

from PySide6.QtCore import QObject

from gui.protocol.plan import (
    MovementTask,
    SessionMode,
    SessionPlan,
    limit_to_dose,
    without_practice,
)
from gui.protocol.red_flags import todays_high_pain
from gui.session.log import SessionRecorder
from gui.session.measurement_session import MeasurementSession
from gui.session.services import Services
from gui.text.wording import message_text, tr
from measure.domain.exercise_rounds import exercises_left
from measure.domain.records import AssessmentCondition, History, Pain
from measure.domain.session_comparison import readings_of_day
from measure.domain.session_facts import SessionState
from measure.progress.home_programme import (
    AssessmentDose,
    assessment_dose,
    irritability_on,
    pain_to_rest_from,
    plan_on,
)
from measure.progress.measuring_plan import MeasuringPlan


@dataclass(frozen=True, slots=True)
class SessionOutline:
    """Whom a session measures, in which movements, and what was said before it.

    Attributes
    ----------
    history
        What is saved of the person by now.
    saving
        Whether anything is written.
    """

    person_id: str
    history: History
    tasks: tuple[MovementTask, ...]
    mode: SessionMode
    conduct: AssessmentCondition
    pain: Pain
    state: SessionState
    saving: bool


def record_pain(outline: SessionOutline, services: Services, parent: QObject) -> SessionRecorder:
    """Save what was said about pain alone, as a session that measures nothing."""
    log = _recorder(outline, services, parent)
    log.keep_pain()
    log.finish("")
    return log


def only_exercises_due(history: History, plan: MeasuringPlan, today: dt.date) -> bool:
    """Return whether exercises are due, nothing is to be measured, and no pain asks for a rest."""
    left = exercises_left(plan_on(history.plans, today), history.exercises_done, today)
    rests = pain_to_rest_from(history, today) is not None
    high = todays_high_pain(history, today) is not None
    return bool(left) and not (plan.due or rests or high or history.person.demo)


def dose_of(outline: SessionOutline, services: Services) -> AssessmentDose:
    """Return how much may be measured, as irritable as the shoulder is today.

    A movement that would be left out is measured where nothing else was chosen.
    """
    band = irritability_on(outline.history, services.today(), outline.pain)
    dose = assessment_dose(band)
    return dose if limit_to_dose(outline.tasks, dose) else assessment_dose(band, leaves_out=False)


def tasks_of(outline: SessionOutline, services: Services) -> tuple[MovementTask, ...]:
    """Return what is measured, as irritable as the shoulder is today."""
    return limit_to_dose(outline.tasks, dose_of(outline, services))


def new_session(outline: SessionOutline, services: Services, parent: QObject) -> MeasurementSession:
    """Return a session that has not begun; what was said about pain is saved at once."""
    tasks = tasks_of(outline, services)
    if services.clips:
        tasks = without_practice(tasks)
    log = _recorder(outline, services, parent)
    log.keep_pain()
    measuring = MeasurementSession(
        services.feed,
        services.cues,
        log,
        SessionPlan(tasks),
        outline.mode,
        services.next_source,
        parent,
        place=services.placement_monitor if outline.saving else None,
        undo=services.undo,
    )
    measuring.earlier = readings_of_day(outline.history, log.conduct, services.today())
    return measuring


def first_words(outline: SessionOutline, services: Services) -> str:
    """Return what is said as a session begins: cautions, and what is known of camera and body."""
    sentence = dose_of(outline, services).sentence
    messages = map(message_text, services.setup_provider.take_messages())
    return " ".join((*((tr(sentence),) if sentence else ()), *messages))


def _recorder(outline: SessionOutline, services: Services, parent: QObject) -> SessionRecorder:
    return SessionRecorder(
        *(services.keeper, services.records, outline.person_id, outline.conduct, outline.pain),
        parent,
        state=outline.state,
        saving=outline.saving,
    )
