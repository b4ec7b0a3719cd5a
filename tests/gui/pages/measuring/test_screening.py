"""Safety questions in the window: what may be answered when, and what follows much pain."""

import pytest
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QEnterEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QPushButton, QScrollArea, QWidget

from gui.app.main_window import SMALLEST_PX
from gui.pages.measuring.screening import SafetyPage
from gui.protocol.red_flags import ScreeningAnswer, ScreeningPage
from gui.style.appearance import Appearance
from gui.text.safety_wording import answer_text, screening_text
from gui.widgets.fold import MoreBelow
from gui.widgets.text import SignedLine
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.records import LimitingFactor
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome
from tests.support.gui.measuring_steps import (
    begin_clinic,
    begin_home,
    begin_single,
    give_history,
    shown,
    trials,
)
from tests.support.gui.stage import TODAY, WindowHarness


def test_the_first_start_asks_the_safety_questions(
    new_stage: WindowHarness, none_fits: tuple[ScreeningAnswer, ...]
) -> None:
    page = new_stage.window.measure
    begin_single(page)
    new_stage.settle()
    assert shown(new_stage) is page.safety
    assert page.safety.screening.page is ScreeningPage.EMERGENCY
    assert new_stage.engine.calls == []
    for answer in none_fits:
        page.safety.answers[answer].click()
        new_stage.settle()
    assert shown(new_stage) is page.live
    person = new_stage.store.people()[0]
    assert person.pseudonym == "Me"
    (screening,) = new_stage.store.screenings(person.id)
    assert (screening.day, screening.outcome) == (TODAY, ScreeningOutcome.CLEAR)


def test_an_emergency_blocks_measuring_and_asks_again_next_time(new_stage: WindowHarness) -> None:
    page = new_stage.window.measure
    page.start.at_home.start.click()
    new_stage.settle()
    page.safety.answers[ScreeningAnswer.ONE_FITS].click()
    assert page.safety.screening.page is ScreeningPage.STOP_EMERGENCY
    assert page.safety.answers == {}
    page.safety.ways_out[-1].click()
    new_stage.settle()
    assert shown(new_stage) is page.start
    person = new_stage.store.people()[0]
    (screening,) = new_stage.store.screenings(person.id)
    assert screening.outcome is ScreeningOutcome.EMERGENCY
    page.start.at_home.start.click()
    new_stage.settle()
    assert shown(new_stage) is page.safety


def test_a_wrong_press_can_be_taken_back(new_stage: WindowHarness) -> None:
    page = new_stage.window.measure
    page.start.at_home.start.click()
    new_stage.settle()
    page.safety.answers[ScreeningAnswer.ONE_FITS].click()
    page.safety.ways_out[0].click()
    assert page.safety.screening.page is ScreeningPage.EMERGENCY
    new_stage.settle()
    page.safety.answers[ScreeningAnswer.NONE_FITS].click()
    assert page.safety.screening.page is ScreeningPage.SOON
    page.safety.ways_out[0].click()
    assert page.safety.screening.page is ScreeningPage.EMERGENCY


@pytest.mark.parametrize("escape", [True, False])
def test_the_first_list_leads_back_without_an_answer(
    new_stage: WindowHarness, escape: bool
) -> None:
    page = new_stage.window.measure
    page.start.at_home.start.click()
    new_stage.settle()
    if escape:
        QTest.keyClick(page.safety, Qt.Key.Key_Escape)
    else:
        page.safety.ways_out[0].click()
    new_stage.settle()
    assert shown(new_stage) is page.start
    assert new_stage.store.screenings(new_stage.store.people()[0].id) == []
    page.start.at_home.start.click()
    new_stage.settle()
    assert shown(new_stage) is page.safety


def test_signs_can_be_denied_only_when_the_end_of_their_list_was_seen(
    new_stage: WindowHarness,
) -> None:
    new_stage.services.appearance.choose(percent=200)
    new_stage.window.resize(*SMALLEST_PX)
    page = new_stage.window.measure
    page.start.at_home.start.click()
    new_stage.settle()
    none = page.safety.answers[ScreeningAnswer.NONE_FITS]
    assert not none.isEnabled()
    assert page.safety.answers[ScreeningAnswer.ONE_FITS].isEnabled()
    none.click()
    assert page.safety.screening.page is ScreeningPage.EMERGENCY
    for _ in range(10):
        assert page.safety.rest.isVisible() is not none.isEnabled()
        page.safety.rest.click()
        new_stage.settle()
    assert none.isEnabled()
    none.click()
    assert page.safety.screening.page is ScreeningPage.SOON


@pytest.mark.parametrize("percent", [150, 200])
def test_a_sign_that_fades_at_the_lower_edge_is_still_to_be_shown(
    new_stage: WindowHarness, percent: int
) -> None:
    new_stage.services.appearance.choose(percent=percent)
    new_stage.window.resize(1366, 700)
    page = new_stage.window.measure
    page.start.at_home.start.click()
    page.safety.give(ScreeningAnswer.NONE_FITS)
    new_stage.settle()
    area = page.safety.findChild(QScrollArea)
    assert isinstance(area, QScrollArea)
    fold = area.findChild(MoreBelow)
    assert fold is not None
    clear = fold.fade[0] + 4
    assert clear < area.viewport().height()
    signs = page.safety.findChildren(SignedLine)
    ends = [sign.mapTo(area.viewport(), sign.rect().bottomLeft()).y() for sign in signs]
    faint = [end for end in ends if end > clear]
    assert 0 < len(faint) < len(signs)
    assert page.safety.rest.accessibleName() == f"Show {len(faint)} more"
    assert not page.safety.answers[ScreeningAnswer.NONE_FITS].isEnabled()


def _list_with_more_below(stage: WindowHarness) -> SafetyPage:
    """Show a message above a list that has room without it alone."""
    stage.window.resize(1366, 700)
    safety = stage.window.measure.safety
    stage.window.measure.start.at_home.start.click()
    stage.window.messages.tell("A message.\nOf three\nlines.", stays=True)
    stage.settle()
    assert safety.rest.isVisible()
    assert not safety.answers[ScreeningAnswer.NONE_FITS].isEnabled()
    safety._new.setRemainingTime(0)
    return safety


def _point_at(target: QWidget, *, beside: bool = False) -> None:
    """Let the pointer come to a widget and the row that it is in, or leave them."""
    place = QPointF(5, 5)
    row = target.parentWidget()
    for part in (target, row) if beside else (row, target):
        assert part is not None
        event = QEvent(QEvent.Type.Leave) if beside else QEnterEvent(place, place, place)
        QApplication.sendEvent(part, event)


@pytest.mark.parametrize("by", ["leaving", "pressing", "scrolling"])
def test_no_button_changes_beneath_a_resting_pointer(new_stage: WindowHarness, by: str) -> None:
    """Else a press meant for the rest of the list would deny signs that nobody has read."""
    safety = _list_with_more_below(new_stage)
    none, page = safety.answers[ScreeningAnswer.NONE_FITS], safety.screening.page
    said, place = safety.rest.text(), safety.rest.geometry()
    _point_at(safety.rest)
    new_stage.window.messages.hide()
    new_stage.settle()
    assert safety.rest.isVisible()
    assert (safety.rest.text(), safety.rest.geometry()) == (said, place)
    assert not none.isEnabled()
    if by == "leaving":
        _point_at(safety.rest, beside=True)
    elif by == "pressing":
        QTest.mouseClick(safety.rest, Qt.MouseButton.LeftButton)
    else:
        area = safety.findChild(QScrollArea)
        assert isinstance(area, QScrollArea)
        QTest.keyClick(area, Qt.Key.Key_PageUp)
        area.viewport().update()
    new_stage.settle()
    assert none.isVisible()
    assert none.isEnabled()
    # What was meant for the button before comes too soon.
    QTest.mouseClick(none, Qt.MouseButton.LeftButton)
    QTest.mouseDClick(none, Qt.MouseButton.LeftButton)
    QTest.keyClick(none, Qt.Key.Key_Space)
    QTest.keyClick(none, Qt.Key.Key_Return)
    assert safety.screening.page is page
    none._held.setRemainingTime(0)
    QTest.mouseClick(none, Qt.MouseButton.LeftButton)
    assert safety.screening.page is not page


def test_no_button_changes_while_the_keyboard_is_on_it(new_stage: WindowHarness) -> None:
    safety = _list_with_more_below(new_stage)
    safety.rest.setFocus()
    new_stage.window.messages.hide()
    new_stage.settle()
    assert safety.rest.isVisible()
    safety.keep_focus()
    new_stage.settle()
    assert safety.answers[ScreeningAnswer.NONE_FITS].isEnabled()


def deny_all(stage: WindowHarness) -> None:
    """Answer the two lists that follow much pain."""
    safety = stage.window.measure.safety
    for _ in range(2):
        stage.settle()
        safety.answers[ScreeningAnswer.NONE_FITS].click()
    assert safety.screening.page is ScreeningPage.CLEAR


@pytest.mark.parametrize("goes_on", [True, False])
def test_much_pain_leads_to_the_questions_and_a_rest(stage: WindowHarness, goes_on: bool) -> None:
    page = stage.window.measure
    begin_home(stage)
    trials(stage, 100.0, 100.0, 100.0, 100.0)
    assert page.measuring is not None
    painful = page.measuring.guide.task
    page.pain.pain.button(8).click()
    page.pain.reason.button(LimitingFactor.PAIN).click()
    page.pain.done.click()
    stage.settle()
    assert shown(stage) is page.safety
    assert page.safety.screening.page is ScreeningPage.EMERGENCY
    deny_all(stage)
    stopped, another = page.safety.ways_out
    (another if goes_on else stopped).click()
    stage.settle()
    assert shown(stage) is (page.next if goes_on else page.summary)
    if goes_on:
        upcoming = page.measuring.guide.upcoming
        assert upcoming is not None
        assert (upcoming.movement, upcoming.side) != (painful.movement, painful.side)
    history = stage.history()
    (record,) = history.measurements
    assert (record.pain_during, record.stopped_by) == (8, LimitingFactor.PAIN)


def test_much_pain_in_a_clinic_offers_another_movement_too(stage: WindowHarness) -> None:
    page = stage.window.measure
    begin_clinic(stage)
    trials(stage, 90.0, 90.0)
    page.pain.pain.button(7).click()
    page.pain.done.click()
    deny_all(stage)
    page.safety.ways_out[1].click()
    assert shown(stage) is page.start
    assert page.measuring is not None


@pytest.mark.parametrize(("limit", "waits"), [(None, True), (5, False), (3, True)])
def test_pain_at_the_limit_lets_the_next_movement_wait(
    stage: WindowHarness, limit: int | None, waits: bool
) -> None:
    page = stage.window.measure
    if limit is not None:
        pendulum = PlannedExercise(
            exercise=Exercise(listed=ListedExercise.PENDULUM), times_a_day=2, hold_s=0
        )
        plan = Plan(
            id="a" * 32,
            person_id=stage.store.people()[0].id,
            first_day=TODAY,
            exercises=(pendulum,),
            pain_limit=limit,
        )
        stage.store.save_plan(plan)
    begin_home(stage)
    trials(stage, 100.0, 100.0, 100.0, 100.0)
    page.pain.pain.button(4).click()
    page.pain.done.click()
    stage.settle()
    assert shown(stage) is (page.next if waits else page.live)
    if waits:
        assert page.next.pain_words.isVisible()
        assert f"The limit is {limit or 4}." in page.next.pain_words.text()


def _stopped_for_pain(stage: WindowHarness, pain: int = 8) -> None:
    """Measure one movement that hurts so much, and stop for today."""
    begin_home(stage)
    page = stage.window.measure
    trials(stage, 100.0, 100.0, 100.0, 100.0)
    page.pain.pain.button(pain).click()
    page.pain.done.click()
    stage.settle()
    page.safety.give(ScreeningAnswer.NONE_FITS)
    page.safety.give(ScreeningAnswer.NONE_FITS)
    page.safety.stopped.emit()
    stage.settle()
    page.summary.finish.click()
    stage.settle()


def test_a_stop_for_pain_is_remembered_that_day(stage: WindowHarness) -> None:
    page = stage.window.measure
    _stopped_for_pain(stage)
    home = page.start.at_home
    assert home.rest_words.isVisible()
    assert "Pain reached 8 of 10 today." in home.rest_words.text()
    assert home.start.accessibleName() == "Measure all the same"
    home.start.click()
    stage.settle()
    # Answers of the same day do not hold any more.
    assert shown(stage) is page.safety
    said = [words.text() for words in page.safety.findChildren(QLabel)]
    assert "Asked again because pain reached 8 of 10 today." in said


def test_a_shoulder_easily_irritated_stays_so_that_day_for_that_person_alone(
    stage: WindowHarness,
) -> None:
    page = stage.window.measure
    _stopped_for_pain(stage)
    home = page.start.at_home
    assert home.sore.isChecked()
    assert {task.trials for task in home.tasks} == {2}
    other = stage.keeper.add_person("Yarrow", (Side.LEFT,))
    page.people.choose(other.id)
    stage.settle()
    assert not home.sore.isChecked()
    assert not home.rest_words.isVisible()
    assert home.start.accessibleName() == "Start measuring"


@pytest.mark.parametrize(
    ("clinic", "said"),
    [
        (False, "Asked now because the pain rose from 0 to 3 of 10."),
        (True, "Ask the patient: the pain rose from 0 to 3 of 10."),
    ],
)
def test_a_rise_of_pain_is_told_from_where_it_began(
    appearance: Appearance, clinic: bool, said: str
) -> None:
    page = SafetyPage(appearance)
    page.pain_rose_from = 0
    page.ask(ScreeningOccasion.AFTER_PAIN, 3, clinic=clinic)
    assert said in [shown.text() for shown in page.findChildren(QLabel)]
    page.ask(ScreeningOccasion.BEFORE, 3, clinic=clinic)
    assert said not in [shown.text() for shown in page.findChildren(QLabel) if shown.isVisible()]


def test_in_a_clinic_the_questions_speak_to_the_clinician(appearance: Appearance) -> None:
    page = SafetyPage(appearance)
    page.ask(ScreeningOccasion.BEFORE, clinic=True)
    words = [shown.text() for shown in page.findChildren(QLabel)]
    assert "Ask the patient, 1 of 3" in words
    for step in ScreeningPage:
        text = screening_text(step, clinic=True)
        said = " ".join((text.title, text.close, *(() if text.strong else text.items)))
        assert step is ScreeningPage.ABOUT or "your clinician" not in said
        assert "clinician who treats you" not in said
    for answer in ScreeningAnswer:
        assert "My clinician" not in answer_text(answer, clinic=True)


def test_much_pain_at_rest_asks_until_the_questions_were_answered(stage: WindowHarness) -> None:
    """Leaving the questions answers none: the next session of the day asks them first."""
    give_history(stage)
    page = stage.window.measure

    def click(target: QPushButton) -> None:
        target.click()
        stage.settle()

    click(page.start.at_home.note_pain)
    click(page.before.now.button(8))
    click(page.before.go)
    page.safety.go_back()
    stage.settle()
    assert page.start.at_home.isVisible()
    click(page.start.at_home.start)
    assert shown(stage) is page.safety
    said = [text.text() for text in page.safety.findChildren(QLabel)]
    assert "Asked again because pain reached 8 of 10 today." in said
    for _ in range(3):
        page.safety.give(ScreeningAnswer.NONE_FITS)
    stage.settle()
    assert shown(stage) is page.before
    page.show_start()
    click(page.start.at_home.start)
    assert shown(stage) is page.before
