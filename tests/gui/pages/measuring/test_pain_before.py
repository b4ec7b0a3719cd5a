"""Much pain told just before measuring: the safety questions come first, the pain is kept."""

from contextlib import closing
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication, QLabel

from gui.protocol.red_flags import ScreeningAnswer, ScreeningPage
from measure.domain.movements import Movement
from measure.domain.records import Pain
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome
from measure.storage.store import Store
from tests.support.gui.measuring_steps import give_history, screening_today, shown
from tests.support.gui.stage import TODAY, StageClock, WindowHarness


@pytest.fixture
def asked(stage: WindowHarness) -> WindowHarness:
    """A stage on which somebody is asked about the pain before a session at home."""
    give_history(stage)
    stage.window.measure.start.at_home.start.click()
    stage.settle()
    assert shown(stage) is stage.window.measure.before
    return stage


def tell(stage: WindowHarness, rest: int) -> None:
    """Tell pain at rest before a session, and press on."""
    before = stage.window.measure.before
    before.now.choose(None)
    before.now.button(rest).click()
    before.go.click()
    stage.settle()


def deny_all(stage: WindowHarness) -> None:
    for _ in range(3):
        stage.window.measure.safety.give(ScreeningAnswer.NONE_FITS)
    stage.settle()


def note_and_answer(stage: WindowHarness, rest: int) -> None:
    """Note pain at rest alone, answer its questions without a sign, and go to what is asked."""
    page = stage.window.measure
    page.show_start()
    for button in (page.start.at_home.note_pain, page.before.now.button(rest), page.before.go):
        button.click()
        stage.settle()
    deny_all(stage)
    page.start.at_home.start.click()
    stage.settle()


def rests_of(stage: WindowHarness) -> list[int | None]:
    """Return the pain at rest of today's sessions."""
    sessions = stage.store.history(stage.store.people()[0].id).sessions
    return [session.pain.rest for session in sessions if session.started.day == TODAY]


def test_much_pain_at_rest_asks_first_and_then_goes_on_with_a_caution(
    asked: WindowHarness,
) -> None:
    page = asked.window.measure
    told: list[str] = []
    page.message_raised.connect(told.append)
    tell(asked, 8)
    assert shown(asked) is page.safety
    assert page.measuring is None
    assert page.safety.sides == page.history.person.affected
    said = [words.text() for words in page.safety.findChildren(QLabel)]
    assert "Asked again because pain reached 8 of 10 today." in said
    deny_all(asked)
    assert shown(asked) is page.live
    assert page.measuring is not None
    tasks = (page.measuring.guide.task, page.measuring.guide.upcoming)
    assert all(task is None or task.movement is not Movement.HAND_BEHIND_BACK for task in tasks)
    assert any("Stop where pain begins." in words for words in told)
    assert rests_of(asked) == [8]
    last = asked.store.screenings(asked.store.people()[0].id)[-1]
    assert (last.occasion, last.outcome) == (ScreeningOccasion.BEFORE, ScreeningOutcome.CLEAR)


def test_less_pain_goes_on_at_once(asked: WindowHarness) -> None:
    tell(asked, 6)
    assert shown(asked) is asked.window.measure.live


def test_pain_as_high_as_what_was_answered_today_is_not_asked_about_again(
    asked: WindowHarness,
) -> None:
    note_and_answer(asked, 8)
    tell(asked, 8)
    assert shown(asked) is asked.window.measure.live


def test_more_pain_than_was_answered_today_is_asked_about(asked: WindowHarness) -> None:
    note_and_answer(asked, 7)
    tell(asked, 8)
    assert shown(asked) is asked.window.measure.safety


def test_a_sign_ends_it_there_and_the_pain_is_kept(asked: WindowHarness) -> None:
    page = asked.window.measure
    tell(asked, 9)
    page.safety.give(ScreeningAnswer.ONE_FITS)
    assert page.safety.screening.page is ScreeningPage.STOP_EMERGENCY
    page.safety.stopped.emit()
    asked.settle()
    assert shown(asked) is page.start
    assert page.measuring is None
    assert rests_of(asked) == [9]
    page.start.at_home.start.click()
    asked.settle()
    assert shown(asked) is page.safety


def test_questions_that_were_left_come_before_the_next_session(asked: WindowHarness) -> None:
    page = asked.window.measure
    tell(asked, 8)
    page.safety.go_back()
    asked.settle()
    assert shown(asked) is page.start
    assert rests_of(asked) == [8]
    page.start.at_home.start.click()
    asked.settle()
    assert shown(asked) is page.safety
    deny_all(asked)
    assert shown(asked) is page.before
    tell(asked, 8)
    assert shown(asked) is page.live
    assert page.measuring is not None
    assert rests_of(asked) == [8, 8]


def test_somebody_else_answers_nothing_for_who_told_the_pain(asked: WindowHarness) -> None:
    page = asked.window.measure
    first = page.history.person
    other = asked.keeper.add_person("Fern")
    tell(asked, 8)
    page.choose_person(other.id)
    asked.settle()
    assert shown(asked) is page.start
    assert not asked.store.screenings(other.id)
    assert not asked.store.history(other.id).sessions
    assert asked.store.history(first.id).sessions[-1].pain == Pain(rest=8)
    page.choose_person(first.id)
    asked.settle()
    page.start.at_home.start.click()
    asked.settle()
    assert shown(asked) is page.safety


def test_closing_the_window_at_the_questions_keeps_the_pain(
    asked: WindowHarness, qapp: QApplication, tmp_path: Path
) -> None:
    path = tmp_path / "sessions.sqlite"
    person = asked.history().person
    with closing(Store.open(path)) as store:
        store.merge(asked.history())
        store.save_screening(screening_today(person))
    stage = WindowHarness(open_store=lambda: Store.open(path, clock=StageClock()))
    stage.window.measure.start.use_at_home()
    stage.window.measure.start.at_home.start.click()
    stage.settle()
    tell(stage, 8)
    assert shown(stage) is stage.window.measure.safety
    stage.close()
    with closing(Store.open(path)) as store:
        last = store.history(person.id).sessions[-1]
    assert (last.pain, last.finished) == (Pain(rest=8), True)


@pytest.mark.parametrize("begun_first", [True, False])
def test_nobody_is_asked_in_place_of_somebody_chosen_in_the_same_moment(
    asked: WindowHarness, begun_first: bool
) -> None:
    """Answers about one person that are still being read begin nothing for another."""
    page = asked.window.measure
    page.show_start()
    other = asked.keeper.add_person("Fern")
    page.people.load()
    asked.settle()
    if begun_first:
        page.start.at_home.start.click()
    page.choose_person(other.id)
    if not begun_first:
        page.start.at_home.start.click()
    asked.settle()
    assert shown(asked) is page.start
    assert page.people.person == other
    page.start.at_home.start.click()
    asked.settle()
    assert shown(asked) is page.safety  # who was chosen has not answered anything yet
