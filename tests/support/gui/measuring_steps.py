"""Steps through the measuring pages of a window on a stage."""

import datetime as dt

from gui.app.window_pages import MainPage
from gui.pages.measuring.measure_page import MeasurePage
from gui.protocol.red_flags import ScreeningAnswer
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History, Person
from measure.domain.screening_records import (
    ScreeningOccasion,
    ScreeningOutcome,
    ScreeningRecord,
)
from measure.system.clock import Timestamp, new_id
from tests.support import record_samples as sample
from tests.support.gui.stage import TODAY, WindowHarness


def trials(stage: WindowHarness, *values: float) -> None:
    """Capture and settle trials one after the other."""
    for value in values:
        stage.engine.capture(value)
        stage.settle(30)
        stage.engine.settle()
        stage.settle(30)


def shown(stage: WindowHarness) -> object:
    """Return the page that is shown."""
    page = stage.window.measure
    parts = (page.start, page.safety, page.before, page.live, page.pain, page.next, page.summary)
    (visible,) = [part for part in parts if part.isVisible()]
    return visible


def screening_today(person: Person, day: dt.date = TODAY) -> ScreeningRecord:
    """Return answers without a sign."""
    return ScreeningRecord(
        id=new_id(),
        person_id=person.id,
        day=day,
        occasion=ScreeningOccasion.BEFORE,
        outcome=ScreeningOutcome.CLEAR,
    )


def give_history(stage: WindowHarness, days_ago: int = 9) -> Person:
    """Let the first person of the store have one earlier session; return the person."""
    (person,) = stage.store.people()
    started = dt.datetime.combine(TODAY - dt.timedelta(days=days_ago), dt.time(9), dt.UTC)
    session = sample.session(person, started=Timestamp(utc=started), duration_s=120.0)
    records = tuple(
        sample.record(session, number, measurement, taken=session.started, conduct=session.conduct)
        for number, measurement in enumerate(
            (sample.measurement(), sample.measurement(side=Side.RIGHT, value=160.0)), start=1
        )
    )
    stage.store.merge(History(person=person, sessions=(session,), measurements=records))
    stage.window.measure.people.load()
    stage.settle()
    return person


def begin_home(stage: WindowHarness) -> None:
    """Begin a session of the usual movements on both sides, whatever is planned."""
    stage.window.measure.start.use_at_home()
    stage.window.measure.start.at_home.choose.setChecked(True)
    stage.window.measure.start.at_home.start.click()
    stage.settle()
    if stage.window.measure.before.isVisible():
        stage.window.measure.before.go.click()
        stage.settle()


def measured_up_to_summary(stage: WindowHarness) -> None:
    """Measure a little of a session, stop at its results and look at the progress."""
    begin_home(stage)
    trials(stage, 100.0, 101.0, 102.0, 103.0)
    stage.window.measure.pain.finish.click()
    stage.settle()
    assert shown(stage) is stage.window.measure.summary
    stage.window.go(MainPage.PROGRESS)
    stage.settle()


def begin_single(
    page: MeasurePage, movement: Movement = Movement.FLEXION, side: Side = Side.RIGHT
) -> None:
    """Choose one movement in a clinic, and begin it."""
    page.start.prefer(movement, side)
    page.start.in_clinic.what.start.click()


def measured_after_questions(
    stage: WindowHarness, movement: Movement, side: Side, *values: float
) -> None:
    """Measure one movement in a clinic, the safety questions first, up to its results."""
    page = stage.window.measure
    begin_single(page, movement, side)
    stage.settle()
    for _ in range(3):
        page.safety.give(ScreeningAnswer.NONE_FITS)
    stage.settle()
    trials(stage, *values)
    page.pain.done.click()
    stage.settle()


def begin_clinic_session(stage: WindowHarness, name: str = "Linden") -> None:
    """Measure one movement of a new person in a clinic and open the fields for typed values."""
    page = stage.window.measure
    page.start.use_in_clinic()
    page.start.in_clinic.who.name.setText(name)
    page.start.in_clinic.who.new.click()
    stage.settle()
    measured_after_questions(stage, Movement.FLEXION, Side.LEFT, 90.0, 92.0)
    page.summary.typing.click()
    stage.settle()


def begin_clinic(stage: WindowHarness, movement: Movement = Movement.FLEXION) -> None:
    begin_single(stage.window.measure, movement, Side.LEFT)
    stage.settle()
