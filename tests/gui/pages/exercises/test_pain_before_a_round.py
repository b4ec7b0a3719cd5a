"""Much pain before a round: the safety questions come first, as before measuring."""

from dataclasses import replace

import pytest
from PySide6.QtWidgets import QLabel

from gui.app.window_pages import MainPage
from gui.pages.exercises.exercises_page import ExercisesPage
from gui.protocol.red_flags import ScreeningAnswer
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome
from tests.support.gui.planned_exercises import PENDULUM, logs_of, page_of
from tests.support.gui.stage import WindowHarness

CAUTION = "Pain reached 8 of 10 today. Let the shoulder rest; carry on another day."


def note_pain(stage: WindowHarness, rest: int) -> None:
    """Note pain at rest on the measuring page; much of it brings the questions there."""
    page = stage.window.measure
    stage.window.go(MainPage.MEASURE)
    for button in (page.start.at_home.note_pain, page.before.now.button(rest), page.before.go):
        button.click()
        stage.settle()
    assert page.safety.isVisible() is (rest >= 7)


def start(stage: WindowHarness) -> ExercisesPage:
    """Open the exercises and begin a round."""
    stage.window.go(MainPage.EXERCISES)
    stage.settle()
    page = page_of(stage)
    page.today.start.click()
    stage.settle()
    return page


def deny_all(page: ExercisesPage, stage: WindowHarness) -> None:
    for _ in range(3):
        page.rounds.safety.give(ScreeningAnswer.NONE_FITS)
    stage.settle()


@pytest.mark.parametrize("left", [True, False])
def test_pain_that_waits_for_answers_asks_before_a_round(
    planned: WindowHarness, left: bool
) -> None:
    """Whether the questions were left by Back or for another page, and though some were
    answered earlier that day."""
    note_pain(planned, 8)
    if left:
        planned.window.measure.safety.go_back()
        planned.settle()
    page = start(planned)
    assert page.rounds.safety.isVisible()
    assert not page.leading
    assert page.rounds.round.guided is None
    said = [words.text() for words in page.rounds.safety.findChildren(QLabel)]
    assert "Asked again because pain reached 8 of 10 today." in said
    deny_all(page, planned)
    assert page.rounds.round.isVisible()
    assert page.leading
    assert CAUTION in planned.window.messages.text
    last = planned.store.screenings(planned.history().person.id)[-1]
    assert (last.occasion, last.outcome) == (ScreeningOccasion.BEFORE, ScreeningOutcome.CLEAR)
    # Once answered, the next round begins, with the caution again.
    page.rounds.round.end.click()
    planned.settle()
    planned.window.messages.close_it.click()
    page.today.start.click()
    planned.settle()
    assert page.rounds.round.isVisible()
    assert CAUTION in planned.window.messages.text


def test_the_first_list_leads_back_to_today_and_is_asked_again(planned: WindowHarness) -> None:
    note_pain(planned, 8)
    page = start(planned)
    page.rounds.safety.go_back()
    planned.settle()
    assert page.today.isVisible()
    assert len(planned.store.screenings(planned.history().person.id)) == 1
    page.today.start.click()
    planned.settle()
    assert page.rounds.safety.isVisible()


def test_a_sign_leads_no_round_that_day(planned: WindowHarness) -> None:
    note_pain(planned, 8)
    page = start(planned)
    page.rounds.safety.give(ScreeningAnswer.ONE_FITS)
    page.rounds.safety.stopped.emit()
    planned.settle()
    assert page.today.isVisible()
    last = planned.store.screenings(planned.history().person.id)[-1]
    assert last.outcome is ScreeningOutcome.EMERGENCY
    page.today.start.click()
    planned.settle()
    assert page.rounds.safety.isVisible()
    assert not logs_of(planned)


def test_answers_while_measuring_hold_for_the_round(planned: WindowHarness) -> None:
    note_pain(planned, 8)
    for _ in range(3):
        planned.window.measure.safety.give(ScreeningAnswer.NONE_FITS)
    planned.settle()
    page = start(planned)
    assert page.rounds.round.isVisible()
    assert CAUTION in planned.window.messages.text


def test_answers_before_a_round_hold_while_measuring(planned: WindowHarness) -> None:
    note_pain(planned, 8)
    planned.window.measure.safety.go_back()
    page = start(planned)
    deny_all(page, planned)
    page.rounds.round.end.click()
    planned.window.go(MainPage.MEASURE)
    planned.settle()
    planned.window.measure.start.at_home.start.click()
    planned.settle()
    assert not planned.window.measure.safety.isVisible()


def test_less_pain_asks_nothing_and_cautions_of_nothing(planned: WindowHarness) -> None:
    note_pain(planned, 6)
    planned.window.messages.close_it.click()
    page = start(planned)
    assert page.rounds.round.isVisible()
    assert "Pain reached" not in planned.window.messages.text


def test_much_pain_of_a_movement_asks_before_each_round(planned: WindowHarness) -> None:
    """As it does before measuring; who begins all the same has been told to rest."""
    person = planned.history().person
    page = page_of(planned)
    log = planned.store.log_exercise(person.id, PENDULUM)
    planned.store.save_exercise_log(replace(log, pain=8))
    page.reload()
    planned.settle()
    for _ in range(2):
        assert page.today.go_on.isVisible()
        page.today.go_on.click()
        planned.settle()
        assert page.rounds.safety.isVisible()
        deny_all(page, planned)
        page.rounds.round.end.click()
        planned.settle()
        page.show_today()
        planned.settle()
