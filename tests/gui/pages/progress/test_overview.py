"""The weekly look: one sentence, the clinician's card, the other side, what ended movements."""

import datetime as dt

import pytest
from PySide6.QtWidgets import QFileDialog

from gui.app.window_pages import MainPage
from gui.pages.progress.limits_card import month_words
from gui.pages.progress.overview import ProgressOverview
from measure.demo.story import story_histories
from measure.domain.records import LimitingFactor
from measure.progress.movement_ends import MonthEnds
from measure.progress.overview import progress_of
from measure.progress.week_sentence import week_sentence
from tests.support.gui.screenshots import resize
from tests.support.gui.stage import TODAY, StageClock, WindowHarness

HISTORIES = {records.person.pseudonym: records for records in story_histories(StageClock().now())}


def overview_of(stage: WindowHarness, name: str) -> ProgressOverview:
    records = HISTORIES[name]
    stage.store.merge(records)
    stage.window.go(MainPage.PROGRESS)
    stage.window.progress.show_person(records.person)
    stage.settle()
    return stage.window.progress.overview


@pytest.mark.parametrize("name", HISTORIES)
def test_the_page_opens_with_one_sentence_and_the_persons_name(
    stage: WindowHarness, name: str
) -> None:
    overview = overview_of(stage, name)
    sentence = week_sentence(progress_of(HISTORIES[name], TODAY))
    assert overview.sentence.text() == sentence
    assert name in overview.accessibleName()
    assert overview.sentence.y() < overview.curves.y()


def test_what_is_worth_a_look_stands_above_with_the_report(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    overview = overview_of(stage, "demo-Bramble")
    card = overview.clinician
    assert card.isVisible()
    assert card.title.text() == "Please show this to your clinician"
    assert "Flexion, right side" in card.words.text()
    assert not card.words.isVisible()
    card.seen.click()
    assert card.words.isVisible()
    assert "clinician" not in card.words.text()
    assert card.y() < overview.curves.y()
    asked: list[object] = []
    stage.window.progress.report_wanted.connect(lambda: asked.append(True))
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: ("", ""))
    card.report.click()
    assert asked == [True]


def test_one_low_session_asks_for_another_and_no_report(stage: WindowHarness) -> None:
    card = overview_of(stage, "demo-Thistle").clinician
    assert card.title.text() == ("Please measure again on another day: Hand behind back, right arm")
    # How far below is said once, by the word.
    assert "below the weeks before, by 9 cm." in card.words.text()
    assert not card.report.isVisible()


def test_nothing_to_show_no_card(stage: WindowHarness) -> None:
    assert not overview_of(stage, "demo-Clover").clinician.isVisible()


def test_the_affected_side_stands_beside_the_other_one(stage: WindowHarness) -> None:
    card = overview_of(stage, "demo-Bramble").comparison
    assert card.isVisible()
    assert card.title.text() == "Right compared with left"
    lines = card.words.text().split("\n")
    assert lines[0].startswith("External rotation at the side: 37° (")
    assert "49 % (" in lines[0]
    assert "not a diagnosis" in card.caution.text()
    assert "Range compared with the other side" in card.figure.accessibleDescription()


def test_what_ended_movements_by_month(stage: WindowHarness) -> None:
    card = overview_of(stage, "demo-Thistle").limits
    assert card.isVisible()
    assert card.words.text().startswith("Nov 2026: stiffness ")
    months = card.bars.accessibleDescription()
    assert "Jul 2026: pain " in months


def test_the_words_of_a_month() -> None:
    times = {LimitingFactor.PAIN: 3, LimitingFactor.STIFFNESS: 5}
    month = MonthEnds(month=dt.date(2026, 11, 1), times=times)
    assert month_words(month) == "Nov 2026: pain 3 of 8, stiffness 5 of 8."


def test_days_with_exercises_are_counted_without_a_score(stage: WindowHarness) -> None:
    said = overview_of(stage, "demo-Marigold").exercises.text()
    assert said.startswith("Days with exercises logged: ")
    assert " of " not in said


@pytest.mark.parametrize("percent", [100, 150, 200])
def test_a_headline_of_one_line_is_as_large_as_other_pages_headings(
    stage: WindowHarness, percent: int
) -> None:
    overview = overview_of(stage, "demo-Bramble")
    stage.services.appearance.choose(percent=percent)
    overview.sentence.setText("Left shoulder: steady.")
    resize(stage, (1366, 700))
    overview._fit()
    assert overview.sentence.property("role") == "display"
    overview.sentence.setText("Left shoulder: " + ", ".join(["steady in flexion"] * 8))
    overview._fit()
    assert overview.sentence.property("role") == "title"
