"""Four weeks of a course of treatment: what the window says on its days, with a real store."""

import datetime as dt
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication, QLabel, QWidget
from pytestqt.qtbot import QtBot

from gui.app.application import configure_application
from gui.app.window_pages import MainPage
from gui.protocol.red_flags import ScreeningAnswer
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import ComparedWithLast, Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Unit
from measure.domain.records import EventKind, History
from measure.storage.store import Store
from measure.system.clock import new_id
from tests.support import record_samples as sample
from tests.support.gui.measuring_steps import shown, trials
from tests.support.gui.moved_clock import MovedClock
from tests.support.gui.stage import WindowHarness

FIRST = dt.date(2026, 3, 2)
EVENING, EARLIER, MORNING = dt.time(18, 20), dt.time(18, 0), dt.time(9)
PENDULUM = PlannedExercise(
    exercise=Exercise(listed=ListedExercise.PENDULUM), repetitions=2, hold_s=0, times_a_day=2
)
WALL = PlannedExercise(
    exercise=Exercise(listed=ListedExercise.WALL_WALK), repetitions=2, hold_s=5, times_a_day=1
)


#: How long a trial takes, minutes, so that four of them take a minute.
TRIAL_MIN = 0.25
#: What each day's round is rated: pain, and how it went compared with the last time.
ROUNDS = {1: (2, None), 3: (3, ComparedWithLast.SAME), 5: (2, ComparedWithLast.EASIER)}
#: How far the stiff arm goes forwards on the day of the first routine measurement, degrees.
ROUTINE_DEG = 96.0
#: Days of the routine measurements after the first week.
LATER_DAYS = (8, 10, 14, 16, 18, 21, 23, 25)


class Course:
    """A person's window, opened on one day after the other."""

    def __init__(self, folder: Path) -> None:
        self.clock = MovedClock()
        self._path, self._settings = folder / "sessions.sqlite", folder / "window.ini"
        self._stage: WindowHarness | None = None

    @property
    def stage(self) -> WindowHarness:
        assert self._stage is not None
        return self._stage

    def open(self, days: int, time: dt.time = EVENING) -> WindowHarness:
        """Close the window and open it anew so many days after the first."""
        self.close()
        self.clock.move_to(dt.datetime.combine(FIRST + dt.timedelta(days=days), time))
        self._stage = WindowHarness(
            open_store=lambda: Store.open(self._path, clock=self.clock),
            clock=self.clock,
            settings=self._settings,
        )
        self._stage.settle()
        return self._stage

    def close(self) -> None:
        if self._stage is not None:
            self._stage.close()
            self._stage = None

    def go(self, page: MainPage) -> None:
        self.stage.window.go(page)
        self.stage.settle()

    def history(self) -> History:
        """Return what is in the store's file of the one person."""
        with Store.open(self._path, clock=self.clock) as store:
            (person,) = store.people()
            return store.history(person.id)

    def save_plan(self, *exercises: PlannedExercise) -> None:
        """Save a programme from today on, with a pain limit of four."""
        person, today = self.history().person, self.clock.today()
        plan = Plan(
            id=new_id(),
            person_id=person.id,
            first_day=today,
            exercises=exercises,
            pain_limit=4,
            chosen_by="physiotherapist",
            review=today + dt.timedelta(days=28),
        )
        with Store.open(self._path, clock=self.clock) as store:
            store.save_plan(plan)

    def week(self) -> str:
        """Return the sentence that opens the progress page."""
        self.go(MainPage.PROGRESS)
        return self.stage.window.progress.overview.sentence.text()

    def measure(self, affected: float, other: float, *, pain: int | None = 1) -> None:
        """Measure what is on the live page until the summary is reached."""
        page = self.stage.window.measure
        while shown(self.stage) is page.live:
            engine = self.stage.engine
            value = affected if engine.side is Side.LEFT else other
            unit = MOVEMENTS[engine.movement].unit
            count = page.measuring.guide.task.trials + page.measuring.guide.task.practice
            self.clock.pass_minutes(count * TRIAL_MIN)
            trials(self.stage, *[value if unit is Unit.DEGREES else value / 300] * count)
            if pain is not None:
                page.pain.pain.button(pain).click()
            page.pain.done.click()
            self.stage.settle()

    def measure_at_home(self, affected: float) -> None:
        """Measure what is due, as a click begins it."""
        page = self.stage.window.measure
        page.start.at_home.start.click()
        self.stage.settle()
        assert shown(self.stage) is page.before
        page.before.go.click()
        self.stage.settle()
        self.measure(affected, 160.0)
        page.summary.finish.click()
        self.stage.settle()

    def add_sessions(self) -> None:
        """Save the routine measurements of the weeks to come, each at six in the evening."""
        person = self.history().person
        sessions, records = [], []
        for day in LATER_DAYS:
            self.clock.move_to(dt.datetime.combine(FIRST + dt.timedelta(days=day), EARLIER))
            session = sample.session(person, number=day, started=self.clock.now(), duration_s=60.0)
            measured = sample.measurement(value=ROUTINE_DEG + day)
            sessions.append(session)
            records.append(
                sample.record(session, 1, measured, taken=session.started, conduct=session.conduct)
            )
        with Store.open(self._path, clock=self.clock) as store:
            store.merge(
                History(person=person, sessions=tuple(sessions), measurements=tuple(records))
            )

    def do_round(self, pain: int, compared: ComparedWithLast | None) -> None:
        """Do the round of what is due to its end, and rate it."""
        self.go(MainPage.EXERCISES)
        page = self.stage.window.exercises
        page.today.start.click()
        self.stage.settle()
        while page.rounds.round.isVisible():
            self.stage.pass_seconds(5)
            self.stage.settle()
        assert page.rounds.rating.isVisible()
        for row in page.rounds.rating.rows:
            row.pain.button(pain).click()
            if compared is not None:
                row.compared.button(compared).click()
        page.rounds.rating.keep.click()
        self.stage.settle()
        assert page.today.isVisible()


@pytest.fixture
def course(qapp: QApplication, qtbot: QtBot, tmp_path: Path) -> Iterator[Course]:
    configure_application(qapp)
    made = Course(tmp_path)
    yield made
    made.close()


def words_of(widget: QWidget) -> str:
    """Return all that is read on a widget."""
    return "\n".join(text.text() for text in widget.findChildren(QLabel) if text.isVisible())


def first_visit(course: Course) -> None:
    """Take a new person's full baseline in a clinic and set the programme."""
    stage = course.open(0, MORNING)
    page = stage.window.measure
    page.start.use_in_clinic()
    page.start.in_clinic.who.name.setText("Fennel")
    page.start.in_clinic.who.new.click()
    stage.settle()
    what = page.start.in_clinic.what
    what.affected.button((Side.LEFT,)).click()
    stage.settle()
    what.start.click()
    stage.settle()
    for _ in range(3):
        page.safety.give(ScreeningAnswer.NONE_FITS)
    stage.settle()
    course.measure(95.0, 160.0, pain=2)
    assert shown(stage) is page.summary
    assert len(page.summary.card.readings) == 10
    page.summary.finish.click()
    stage.settle()
    course.save_plan(PENDULUM, WALL)
    page.start.use_at_home()


def test_four_weeks_from_first_visit_to_review(course: Course) -> None:
    first_visit(course)
    assert "too early to say" in course.week()

    # The day after: nothing to measure yet, so the exercises are shown; one key begins them.
    stage = course.open(1)
    assert stage.window.measure.start.at_home.title.text() == "Next on Wednesday"
    assert stage.window.focusWidget() is stage.window.exercises.today.start
    course.do_round(*ROUNDS[1])
    assert "Logged this evening." in stage.window.exercises.today.state.text()

    # Two days on the main movements of one arm are due; the morning after is asked for.
    stage = course.open(2)
    home, exercises = stage.window.measure.start.at_home, stage.window.exercises
    assert home.isVisible()
    assert home.title.text() == "Today"
    assert home.sentence.text().endswith("left arm, about 3 minutes")
    course.go(MainPage.EXERCISES)
    assert "After yesterday's exercises" in exercises.today.question.text()
    exercises.today.no.click()
    stage.settle()
    course.go(MainPage.MEASURE)
    course.measure_at_home(ROUTINE_DEG)
    assert exercises.today.start.isVisible()
    (answer,) = course.history().next_mornings
    assert (answer.day, answer.eased) == (FIRST + dt.timedelta(days=1), False)

    # A movement that reaches the programme's limit waits for a choice; a flare is an event.
    stage = course.open(4)
    page = stage.window.measure
    page.start.at_home.start.click()
    stage.settle()
    page.before.go.click()
    stage.settle()
    trials(stage, *[98.0] * 4)
    page.pain.pain.button(4).click()
    page.pain.done.click()
    stage.settle()
    assert shown(stage) is page.next
    page.next.finish.click()
    stage.settle()
    page.summary.finish.click()
    stage.settle()
    stage.window.show_events()
    stage.settle()
    stage.window.progress.events.kind.choose(EventKind.FLARE)
    stage.window.progress.events.keep.click()
    stage.settle()
    assert [event.kind for event in course.history().events] == [
        EventKind.CLINIC_VISIT,
        EventKind.FLARE,
    ]

    # A week after the first visit everything is due on both sides.
    stage = course.open(7)
    home = stage.window.measure.start.at_home
    assert home.sentence.text() == "4 movements, both arms, about 7 minutes"
    assert "Once a week, all movements of both arms" in words_of(home)
    course.add_sessions()

    # Nearly four weeks on: a usual time of day, and a sentence about the shoulder.
    stage = course.open(27)
    home = stage.window.measure.start.at_home
    assert "Best at about 18:00" in words_of(home)
    home.choose.setChecked(True)
    stage.settle()
    assert course.week() == (
        "Left since 10 Mar 2026 (way of measuring changed): too early to say for "
        "flexion; no readings yet of external rotation and hand behind back."
    )

    # The answers to the safety questions have expired; nothing is measured before new ones.
    stage = course.open(31)
    page = stage.window.measure
    page.start.at_home.start.click()
    stage.settle()
    assert shown(stage) is page.safety
