"""Pain on the way: stopped by a key, said once, kept for the day."""

from collections.abc import Callable

from PySide6.QtCore import Qt

from gui.app.window_pages import MainPage
from gui.pages.exercises.planned_line import PlannedLine
from gui.protocol.exercise_round import RoundPhase
from gui.protocol.red_flags import ScreeningAnswer, ScreeningPage
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome
from tests.support.gui.measuring_steps import begin_home, trials
from tests.support.gui.planned_exercises import PENDULUM, WALL, logs_of, page_of, swinging
from tests.support.gui.stage import WindowHarness


def test_one_key_stops_it_and_the_limit_is_told_calmly(
    planned: WindowHarness, press: Callable[..., None]
) -> None:
    page = swinging(planned)
    planned.pass_seconds(4)
    press(Qt.Key.Key_S)
    assert page.rounds.hurt.isVisible()
    planned.pass_seconds(200)
    assert page.rounds.round.guided is not None
    assert page.rounds.round.guided.paused
    press(Qt.Key.Key_3)
    assert page.rounds.hurt.passed.text() == ""
    press(Qt.Key.Key_5)
    assert page.rounds.hurt.passed.text() == "Your programme says to stop when pain reaches 4."
    assert page.rounds.hurt.next.isVisible()
    press(Qt.Key.Key_N)
    assert page.rounds.round.isVisible()
    assert page.rounds.round.title.text() == "Wall walk, left arm"
    press(Qt.Key.Key_Escape)
    # How much it hurt has been said: it is not asked again.
    planned.settle()
    assert page.today.isVisible()
    log = logs_of(planned)[PENDULUM]
    assert (log.pain, log.repetitions) == (5, 1)
    assert page.today.state.text() == "Stop for today: pain reached 5."
    assert page.today.passed.text() == "Your programme says to stop when pain reaches 4."
    assert not page.today.start.isVisible()
    assert page.today.go_on.accessibleName() == "Continue today's exercises"
    assert not page.today.go_on.accessibleDescription()
    assert page.today.enough.accessibleDescription() == "Enter"
    assert page.today.go_on.isVisible()
    lines = page.today.findChildren(PlannedLine)
    done = [line.done.text() for line in lines if line.done.isVisible()]
    assert done[0] == "\u2013  Partly done: 1 repetition, pain 5 of 10."
    page.today.enough.click()  # stopping is the first choice
    planned.settle()
    assert not page.today.go_on.isVisible()
    planned.window.go(MainPage.MEASURE)
    planned.settle()
    said = planned.window.measure.start.at_home.rest_words.text()
    assert "Pain reached 5 of 10 today." in said
    planned.window.go(MainPage.EXERCISES)
    planned.settle()
    assert not page.today.go_on.isVisible()
    page.today.resume.click()  # it was a mistake
    assert page.today.enough.isVisible()
    page.reload()
    planned.settle()
    assert page.today.go_on.isVisible()
    assert not page.today.resume.isVisible()
    page.today.enough.click()
    assert page.today.resume.isVisible()


def test_pain_while_measuring_counts_for_the_exercises_of_the_day(planned: WindowHarness) -> None:
    planned.window.go(MainPage.MEASURE)
    measure = planned.window.measure
    begin_home(planned)
    trials(planned, 100.0, 100.0, 100.0, 100.0)
    measure.pain.pain.button(6).click()
    measure.pain.finish.click()
    planned.settle()
    measure.summary.finish.click()
    planned.window.go(MainPage.EXERCISES)
    planned.settle()
    today = page_of(planned).today
    assert today.state.text() == "Stop for today: pain reached 6."
    assert today.enough.isVisible()
    assert not today.start.isVisible()


def test_pain_before_the_first_repetition_is_over_is_kept(
    planned: WindowHarness, press: Callable[..., None]
) -> None:
    page = swinging(planned)
    press(Qt.Key.Key_S)
    press(Qt.Key.Key_5)
    press(Qt.Key.Key_Return)
    assert page.today.isVisible()
    log = logs_of(planned)[PENDULUM]
    assert (log.pain, log.repetitions) == (5, 0)
    assert page.today.state.text() == "Stop for today: pain reached 5."


def test_much_pain_leads_to_the_page_that_measuring_has(
    planned: WindowHarness, press: Callable[..., None]
) -> None:
    page = swinging(planned)
    planned.pass_seconds(4)
    press(Qt.Key.Key_S)
    press(Qt.Key.Key_7)
    assert not page.rounds.hurt.next.isVisible()
    press(Qt.Key.Key_Return)
    assert page.rounds.safety.isVisible()
    assert page.rounds.safety.screening.page is ScreeningPage.EMERGENCY
    page.rounds.safety.give(ScreeningAnswer.NONE_FITS)
    page.rounds.safety.give(ScreeningAnswer.NONE_FITS)
    page.rounds.safety.ways_out[0].click()
    planned.settle()
    assert page.today.isVisible()
    assert logs_of(planned)[PENDULUM].pain == 7
    (screening,) = planned.store.screenings(planned.history().person.id)[-1:]
    assert screening.occasion is ScreeningOccasion.AFTER_PAIN
    assert screening.outcome is ScreeningOutcome.CLEAR


def test_much_pain_that_is_told_at_the_end_leads_there_too(planned: WindowHarness) -> None:
    page = swinging(planned)
    planned.pass_seconds(4)
    page.rounds.round.end.click()
    page.rounds.rating.rows[0].pain.button(8).click()
    page.rounds.rating.keep.click()
    planned.settle()
    assert page.rounds.safety.isVisible()
    assert logs_of(planned)[PENDULUM].pain == 8


def test_a_mistaken_stop_leads_back_to_the_exercise_which_waits(
    planned: WindowHarness, press: Callable[..., None]
) -> None:
    page = swinging(planned)
    press(Qt.Key.Key_S)
    press(Qt.Key.Key_Escape)
    assert page.rounds.round.isVisible()
    assert page.rounds.round.guided is not None
    assert page.rounds.round.guided.paused
    press(Qt.Key.Key_Space)
    assert not page.rounds.round.guided.paused
    assert page.rounds.round.title.text() == "Pendulum, left arm"


def test_what_was_said_of_the_pain_is_not_asked_again_but_can_be_changed(
    planned: WindowHarness, press: Callable[..., None]
) -> None:
    page = page_of(planned)
    page.today.start.click()
    planned.pass_until(RoundPhase.HOLD)
    planned.pass_until(RoundPhase.REST)
    press(Qt.Key.Key_S)
    press(Qt.Key.Key_3)
    press(Qt.Key.Key_Return)
    pendulum, wall = page.rounds.rating.rows
    assert pendulum.pain.row.isVisible()
    assert not wall.pain.row.isVisible()
    press(Qt.Key.Key_2)
    assert (pendulum.pain.value, wall.pain.value) == (2, 3)
    wall.change.click()
    assert wall.pain.row.isVisible()
    wall.pain.button(5).click()
    assert wall.passed.isVisible()
    page.rounds.rating.keep.click()
    planned.settle()
    assert (logs_of(planned)[PENDULUM].pain, logs_of(planned)[WALL].pain) == (2, 5)
