"""Another language takes the window's place at once, with its page, and costs no work."""

import datetime as dt
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import SIGNAL, QLocale, QTranslator
from PySide6.QtWidgets import QApplication

from gui.app.main_window import MainWindow
from gui.app.window_pages import MainPage
from measure.domain.exercises import ListedExercise
from measure.domain.landmarks import Side
from measure.domain.records import EventKind, Pain
from tests.support.gui.measuring_steps import begin_single, give_history
from tests.support.gui.stage import WindowHarness


@pytest.fixture(autouse=True)
def as_before(qapp: QApplication) -> Iterator[None]:
    """Put language, locale and direction back as they were."""
    locale, direction = QLocale(), qapp.layoutDirection()
    yield
    for translator in qapp.findChildren(QTranslator):
        qapp.removeTranslator(translator)
    QLocale.setDefault(locale)
    qapp.setLayoutDirection(direction)


def choose_language(stage: WindowHarness, code: str) -> None:
    stage.window.preferences.choose_language(code)
    stage.settle(200)


def words(window: MainWindow) -> list[str]:
    return [word.text() for word in window.words]


def test_the_window_speaks_another_language_at_once_on_the_same_page(stage: WindowHarness) -> None:
    before = stage.window
    before.resize(1111, 777)
    before.clips.open([Path("bed-three-flexion-right.mp4")])
    before.go(MainPage.PROGRESS)
    choose_language(stage, "es")
    after = stage.window
    assert after is not before
    assert words(after) == [*("Medir", "Ejercicios", "Evolución", "Grabaciones", "Preparación")]
    assert after.progress.isVisible()
    assert (after.width(), after.height()) == (1111, 777)
    assert [clip.name for clip in after.clips.opened] == ["bed-three-flexion-right.mp4"]
    choose_language(stage, "en")
    assert words(stage.window)[0] == "Measure"
    windows = [
        window for window in QApplication.topLevelWidgets() if isinstance(window, MainWindow)
    ]
    assert windows == [stage.window]


def test_the_settings_stay_where_the_language_was_chosen(stage: WindowHarness) -> None:
    before = stage.window
    before.go(MainPage.SETUP)
    before.show_settings()
    stage.settle()
    before.settings.settings.language.button("es").click()
    stage.settle(200)
    page = stage.window.settings.settings
    assert stage.window is not before
    assert page.isVisible()
    assert page.title.text() == "Ajustes"
    assert QApplication.focusWidget() is page.language.button("es")
    page.leave.click()
    assert stage.window.setup.isVisible()


def test_a_session_is_never_broken_off_for_a_language(stage: WindowHarness) -> None:
    before = stage.window
    begin_single(before.measure)
    stage.settle()
    choose_language(stage, "es")
    assert stage.window is before
    assert "when the current measurement" in before.messages.text
    for _ in range(2):
        stage.engine.capture(90.0)
        stage.settle(30)
        stage.engine.settle()
        stage.settle(30)
    before.measure.pain.done.click()
    stage.settle()
    before.measure.summary.finish.click()
    stage.settle(200)
    assert words(stage.window)[0] == "Medir"
    assert len(stage.history().measurements) == 1


@pytest.mark.parametrize("typed", ["2 Jan 2026", "in Jan"])
def test_an_event_that_is_half_entered_outlasts_the_language(
    stage: WindowHarness, typed: str
) -> None:
    stage.window.show_events()
    stage.settle()
    page = stage.window.progress.events
    page.kind.choose(EventKind.FLARE)
    page.side.choose(Side.RIGHT)
    page.day.text.setText(typed)
    page.note.setText("after the har")
    stage.window.show_settings()
    stage.settle()
    choose_language(stage, "es")
    settings = stage.window.settings.settings
    assert QApplication.focusWidget() is settings.language.button("es")
    settings.leave.click()
    stage.settle()
    page = stage.window.progress.events
    assert page.isVisible()
    assert page.title.text().startswith("Añadir")
    assert (page.kind.value, page.side.value) == (EventKind.FLARE, Side.RIGHT)
    day = dt.date(2026, 1, 2)
    assert (page.day.day or page.day.text.text()) == (day if typed[0] == "2" else typed)
    assert page.note.text() == "after the har"
    assert page.keep.isEnabled()


def test_another_persons_page_shows_nothing_that_was_entered(stage: WindowHarness) -> None:
    stage.window.show_events()
    stage.settle()
    entered = stage.window.progress.events.entered
    assert entered is not None
    progress = stage.window.progress
    progress.show_curves()
    assert progress.isVisible()
    progress.resume(replace(entered, person_id="another", note="of another person"))
    stage.settle()
    assert not progress.events.isVisible()
    assert progress.events.note.text() == ""


def test_a_goal_and_a_new_name_that_are_half_typed_outlast_the_language(
    stage: WindowHarness,
) -> None:
    stage.window.measure.start.in_clinic.who.name.setText("Mari")
    stage.window.go(MainPage.PROGRESS)
    stage.window.progress.show_goals()
    stage.settle()
    stage.window.progress.goals.words.setText("put on a jac")
    stage.window.show_settings()
    stage.settle()
    choose_language(stage, "es")
    stage.window.settings.settings.leave.click()
    stage.settle()
    page = stage.window.progress.goals
    assert page.isVisible()
    assert page.words.isVisible()
    assert page.words.text() == "put on a jac"
    assert stage.window.measure.start.in_clinic.who.name.text() == "Mari"


def test_a_programme_that_is_half_entered_is_saved_before_the_language_changes(
    stage: WindowHarness,
) -> None:
    before = stage.window
    before.show_home_programme()
    stage.settle()
    page = before.exercises.programme
    page.lines[ListedExercise.WALL_WALK].wanted.click()
    before.show_settings()
    choose_language(stage, "es")
    assert stage.window is before
    assert "when the exercise programme is saved or left" in before.messages.text
    before.show_home_programme()
    stage.settle()
    assert page.isVisible()
    assert page.lines[ListedExercise.WALL_WALK].wanted.isChecked()
    page.pain_limit.choose(3)
    page.keep.click()
    stage.settle(200)
    assert words(stage.window)[1] == "Ejercicios"
    assert len(stage.history().plans) == 1


def test_pain_told_before_a_session_outlives_the_window(stage: WindowHarness) -> None:
    give_history(stage)
    before = stage.window.measure
    before.start.at_home.start.click()
    stage.settle()
    before.before.now.button(8).click()
    before.before.go.click()
    stage.settle()
    assert before.safety.isVisible()
    choose_language(stage, "es")
    assert stage.window.measure is not before
    assert stage.history().sessions[-1].pain == Pain(rest=8)
    stage.window.measure.start.at_home.start.click()
    stage.settle()
    assert stage.window.measure.safety.isVisible()


def listening(stage: WindowHarness) -> list[int]:
    """How many listen to what outlives a window."""
    appearance, undo = stage.services.appearance, stage.services.undo
    changed = SIGNAL("changed()")
    return [
        appearance.receivers(changed),
        appearance.receivers(SIGNAL("window_resized()")),
        undo.receivers(changed),
        undo.receivers(SIGNAL("put_back()")),
    ]


def test_nothing_of_the_window_before_follows_the_text_size(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    faults: list[BaseException] = []
    monkeypatch.setattr(sys, "excepthook", lambda _kind, fault, _trace: faults.append(fault))
    for page in MainPage:
        stage.window.go(page)
    stage.settle()
    choose_language(stage, "es")
    before = listening(stage)
    choose_language(stage, "en")
    for page in MainPage:
        stage.window.go(page)
    choose_language(stage, "es")
    assert listening(stage) == before
    stage.window.preferences.choose_percent(150)
    stage.settle()
    assert faults == []
