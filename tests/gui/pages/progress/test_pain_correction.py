"""Pain of a session: shown as it was saved, corrected, undone, and read by a screen reader."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel

from gui.app.window_pages import MainPage
from gui.pages.progress.pain_correction import PainCorrectionPage
from gui.pages.progress.progress_page import ProgressPage
from gui.protocol.red_flags import ScreeningAnswer
from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import Pain, Person, SessionRecord
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome
from measure.report.pain_correction import PainRatings
from tests.support.gui.demo_history import demo_history
from tests.support.gui.measuring_steps import give_history, measured_up_to_summary
from tests.support.gui.stage import TODAY, WindowHarness
from tests.support.progress_histories import history

LEFT, RIGHT = (Movement.FLEXION, Side.LEFT), (Movement.FLEXION, Side.RIGHT)
GARDEN = history({LEFT: [(0, 90.0)], RIGHT: [(0, 150.0)]}, pain={0: Pain(rest=7, worst_24h=3)})


@pytest.fixture
def page(qapp: QApplication) -> PainCorrectionPage:
    made = PainCorrectionPage(Appearance(Scheme.LIGHT))
    made.show_session(GARDEN.sessions[0], "6 Apr 2026, 09:00", GARDEN.measurements)
    return made


def test_what_was_saved_is_chosen_and_named(page: PainCorrectionPage) -> None:
    assert page.title.text() == "Correct pain: 6 Apr 2026, 09:00"
    assert (page.rest.value, page.night.value, page.worst.value) == (7, None, 3)
    assert page.rest.button(7).accessibleName() == "Pain at rest, 7 of 10"
    assert page.night.button(0).accessibleName() == "Pain the night before, 0 of 10"
    assert page.worst.button(3).accessibleName() == "Worst pain in 24 hours, 3 of 10"
    left, right = page.during.values()
    assert left.button(1).accessibleName() == "Flexion, left arm: pain, 1 of 10"
    assert right.accessibleName() == "Flexion, right arm: pain"
    assert page.ratings.during == {each.id: each.pain_during for each in GARDEN.measurements}


def test_only_a_change_can_be_saved(page: PainCorrectionPage) -> None:
    given: list[tuple[SessionRecord, PainRatings]] = []
    page.corrected.connect(lambda session, ratings: given.append((session, ratings)))
    assert not page.keep.isEnabled()
    assert page.keep.text().startswith("Change a number first")
    page.rest.button(1).click()
    assert page.keep.isEnabled()
    page.rest.button(7).click()
    assert not page.keep.isEnabled()
    page.rest.button(7).click()  # A second press empties it.
    next(iter(page.during.values())).button(4).click()
    page.keep.click()
    ((session, ratings),) = given
    assert session == GARDEN.sessions[0]
    assert ratings.before == Pain(worst_24h=3)
    assert next(iter(ratings.during.values())) == 4


def test_movements_measured_twice_are_told_apart(page: PainCorrectionPage) -> None:
    (first, _) = GARDEN.measurements
    page.show_session(GARDEN.sessions[0], "6 Apr 2026, 09:00", (first, first))
    (scale,) = page.during.values()
    assert scale.accessibleName().startswith("Flexion, left arm: 90")


def test_a_day_of_pain_alone_has_no_movements(page: PainCorrectionPage) -> None:
    page.show_session(GARDEN.sessions[0], "6 Apr 2026, 09:00", ())
    assert page._measured.isHidden()
    assert not page.during


@pytest.fixture
def grown(stage: WindowHarness) -> WindowHarness:
    """A stage whose person has twenty weeks behind them, and the sessions in sight."""
    stage.store.merge(demo_history(stage.store.people()[0], TODAY, weeks=20))
    stage.window.go(MainPage.PROGRESS)
    stage.settle()
    stage.window.progress.to_details.click()
    stage.settle()
    return stage


@pytest.mark.parametrize("percent", [100, 200])
def test_what_the_numbers_mean_stands_once_above_the_first(
    grown: WindowHarness, percent: int
) -> None:
    grown.services.appearance.choose(percent=percent)
    grown.window.progress.details.correct.click()
    grown.settle()
    page = grown.window.progress.pain
    said = [
        words
        for words in page.findChildren(QLabel)
        if words.isVisible() and "0: no pain" in words.text()
    ]
    (ends,) = said
    lower_edge = ends.mapToGlobal(ends.rect().bottomLeft()).y()
    assert lower_edge < page.rest.mapToGlobal(page.rest.rect().topLeft()).y()


def test_a_correction_is_saved_shown_and_undone(grown: WindowHarness) -> None:
    page, before = grown.window.progress, grown.history()
    session = before.sessions[-2]
    page.details.list.setCurrentRow(1)
    page.details.correct.click()
    grown.settle()
    assert page.pain.isVisible()
    assert page.pain.isAncestorOf(grown.window.focusWidget())
    page.pain.worst.button(1).click()
    page.pain.keep.click()
    grown.settle()
    assert page.details.isVisible()
    assert page.details.list.currentRow() == 1
    saved = grown.store.session(session.id)
    assert saved.pain.worst_24h == 1
    assert "worst in 24 hours: 1 instead of no answer" in saved.note
    assert "has been corrected. You can undo this" in grown.window.messages.text
    grown.window.messages.undo.click()
    grown.settle()
    assert grown.history() == before
    assert page.details.isVisible()
    assert page.details.list.currentRow() == 1


def test_escape_changes_nothing(grown: WindowHarness) -> None:
    page, before = grown.window.progress, grown.history()
    page.details.correct.click()
    page.pain.rest.button(9).click()
    QTest.keyClick(page.pain, Qt.Key.Key_Escape)
    grown.settle()
    assert page.details.isVisible()
    assert grown.history() == before
    page.details.correct.click()
    assert page.pain.rest.value is before.sessions[-1].pain.rest


def test_what_was_undone_is_not_left_on_the_page(grown: WindowHarness) -> None:
    page = grown.window.progress
    page.details.correct.click()
    page.pain.rest.button(9).click()
    page.pain.keep.click()
    grown.settle()
    page.details.correct.click()
    grown.window.messages.undo.click()
    grown.settle()
    assert page.details.isVisible()


def test_pain_alone_can_be_corrected_before_anything_was_measured(stage: WindowHarness) -> None:
    person = stage.store.people()[0]
    noted = stage.store.start_session(person.id, pain=Pain(rest=7))
    stage.window.go(MainPage.PROGRESS)
    stage.settle()
    page = stage.window.progress
    assert page.empty.isVisible()
    page.to_days.click()
    page.details.correct.click()
    page.pain.rest.button(1).click()
    page.pain.keep.click()
    stage.settle()
    assert stage.store.session(noted.id).pain == Pain(rest=1)
    assert page.details.isVisible()
    page.to_curves.click()
    assert page.empty.isVisible()


def test_no_way_leads_to_sessions_where_there_are_none(stage: WindowHarness) -> None:
    stage.window.go(MainPage.PROGRESS)
    stage.settle()
    assert stage.window.progress.to_days.isHidden()


def test_a_session_that_is_finished_later_keeps_its_correction(stage: WindowHarness) -> None:
    measured_up_to_summary(stage)
    page = stage.window.progress
    page.show_details()
    page.details.correct.click()
    page.pain.worst.button(2).click()
    page.pain.keep.click()
    stage.settle()
    stage.window.go(MainPage.MEASURE)
    stage.window.measure.summary.finish.click()
    stage.settle()
    (session,) = stage.history().sessions
    assert session.finished
    assert session.pain.worst_24h == 2
    assert "worst in 24 hours: 2 instead of no answer" in session.note


def corrected_to_much_pain(stage: WindowHarness, person: Person) -> ProgressPage:
    """Correct the pain at rest of a session of today to 8, which asks the safety questions."""
    stage.store.start_session(person.id, pain=Pain(rest=2))
    stage.window.go(MainPage.PROGRESS)
    stage.settle()
    page = stage.window.progress
    page.to_days.click()
    page.details.correct.click()
    page.pain.rest.button(8).click()
    page.pain.keep.click()
    stage.settle()
    assert page.safety.isVisible()
    return page


def test_much_pain_entered_afterwards_asks_the_safety_questions(stage: WindowHarness) -> None:
    person = stage.store.people()[0]
    page = corrected_to_much_pain(stage, person)
    words = [said.text() for said in page.safety.findChildren(QLabel) if said.isVisible()]
    assert "Asked now because the pain was rated 8 of 10." in words
    page.safety.give(ScreeningAnswer.ONE_FITS)
    page.safety.ways_out[-1].click()
    stage.settle()
    assert page.details.isVisible()
    asked = stage.store.screenings(person.id)[-1]
    assert (asked.occasion, asked.outcome) == (
        ScreeningOccasion.AFTER_PAIN,
        ScreeningOutcome.EMERGENCY,
    )


def test_questions_that_were_left_for_another_page_come_before_measuring(
    stage: WindowHarness,
) -> None:
    """Though the questions had been answered earlier that day."""
    corrected_to_much_pain(stage, give_history(stage))
    stage.window.go(MainPage.MEASURE)
    stage.settle()
    stage.window.measure.start.at_home.start.click()
    stage.settle()
    assert stage.window.measure.safety.isVisible()


def test_pain_of_another_day_asks_nothing(grown: WindowHarness) -> None:
    page = grown.window.progress
    page.details.list.setCurrentRow(1)
    page.details.correct.click()
    page.pain.rest.button(9).click()
    page.pain.keep.click()
    grown.settle()
    assert page.details.isVisible()
