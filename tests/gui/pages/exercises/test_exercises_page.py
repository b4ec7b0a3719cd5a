"""The exercises page: today, the round, pain on the way, how it went, the morning after."""

import datetime as dt
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtPrintSupport import QPrintPreviewDialog
from PySide6.QtWidgets import QAbstractButton, QFileDialog, QLabel
from pytestqt.qtbot import QtBot

from gui.app.window_pages import MainPage
from gui.pages.exercises.planned_line import PlannedLine
from gui.protocol.exercise_round import READY_S, RoundPhase
from measure.domain.home_programme_records import ComparedWithLast, ExerciseLog, NextMorning
from measure.system.clock import Timestamp, new_id
from tests.support.gui.planned_exercises import (
    EXERCISES,
    LEAN,
    PENDULUM,
    WALL,
    logs_of,
    page_of,
    plan_exercises,
    swinging,
)
from tests.support.gui.stage import TODAY, WindowHarness


def log_before(stage: WindowHarness, days: int) -> dt.date:
    """Log an exercise so many days ago and return the day."""
    day = TODAY - dt.timedelta(days=days)
    stage.store.save_exercise_log(
        ExerciseLog(
            id=new_id(),
            person_id=stage.history().person.id,
            exercise=WALL,
            done=Timestamp(utc=dt.datetime.combine(day, dt.time(9), dt.UTC)),
        )
    )
    page_of(stage).reload()
    stage.settle()
    return day


def test_without_a_programme_it_says_how_to_enter_one(stage: WindowHarness) -> None:
    stage.window.go(MainPage.EXERCISES)
    stage.settle()
    today = page_of(stage).today
    assert today.empty.text() == "No exercises yet."
    assert "Thawline adds nothing" in today.how_to_begin.text()
    assert not today.start.isVisible()
    today.edit.click()
    stage.settle()
    assert page_of(stage).programme.isVisible()


def test_nothing_is_said_of_a_programme_before_it_was_looked_up(planned: WindowHarness) -> None:
    page = page_of(planned)
    page.show_person(planned.window.measure.people.person)
    assert not page.today.empty.isVisible()
    assert not page.today.edit.isEnabled()
    planned.settle()
    assert page.today.plan.isVisible()
    assert page.today.edit.isEnabled()


def test_what_was_looked_up_of_somebody_is_not_shown_of_another(planned: WindowHarness) -> None:
    page = page_of(planned)
    other = planned.keeper.add_person("Fern")
    planned.window.go(MainPage.MEASURE)
    page.reload()
    page.show_person(other)
    planned.settle()
    page.begin_round()
    assert page.rounds.round.guided is None


def test_the_round_is_the_first_thing_on_the_page(planned: WindowHarness) -> None:
    today = page_of(planned).today
    assert today.start.isVisible()
    assert planned.window.focusWidget() is today.start
    assert today.state.text() == "3 exercises, about 2 minutes"
    assert (
        "Stop when pain reaches 4 of 10, or before. Chosen by: physiotherapist."
        in today.plan.text()
    )
    said = "Programme from 15 Nov 2026. Review: 15 Dec 2026."
    assert said in today.plan.text().replace("\u00a0", " ")
    # No line ends within a date.
    assert "15\u00a0Nov\u00a02026" in today.plan.text()


def test_a_round_by_keys_alone_is_led_to_its_end_and_saved(
    planned: WindowHarness, press: Callable[..., None]
) -> None:
    page = page_of(planned)
    press(Qt.Key.Key_Return)
    assert page.rounds.round.isVisible()
    assert not planned.window.words[0].isVisible()
    assert page.rounds.round.sentence.text == "Get ready: Pendulum, left arm."
    planned.pass_until(RoundPhase.SWING)
    assert page.rounds.round.count.digits == "1"
    assert page.rounds.round.count.caption == "of 3"
    assert page.rounds.round.count.accessibleName() == "Repetition 1 of 3"
    press(Qt.Key.Key_Space)
    assert page.rounds.round.sentence.text == "Paused. Let the arm rest."
    assert page.rounds.round.pause.accessibleName() == "Continue"
    planned.pass_seconds(60)
    press(Qt.Key.Key_Space)
    planned.pass_until(RoundPhase.MOVE)
    assert page.rounds.round.title.text() == "Wall walk, left arm"
    assert page.rounds.round.sentence.text == "Move slowly. Stop before it becomes painful."
    planned.pass_until(RoundPhase.HOLD)
    planned.pass_seconds(1.0)
    assert (page.rounds.round.count.digits, page.rounds.round.count.caption) == ("4", "seconds")
    assert page.rounds.round.beside.text == "1 of 2"
    assert "hold, 4 s left" in page.rounds.round.count.accessibleName()
    planned.pass_seconds(40)
    assert page.rounds.round.how.text() == "Lean in a doorway."
    press(Qt.Key.Key_N)
    planned.settle()
    assert page.rounds.rating.isVisible()
    # Where the keyboard is, digits rate one row after the other.
    press(Qt.Key.Key_2)
    press(Qt.Key.Key_3)
    assert not any(asked.compared.row.isVisible() for asked in page.rounds.rating.rows)
    press(Qt.Key.Key_Return)
    assert page.today.isVisible()
    logs = logs_of(planned)
    assert set(logs) == {PENDULUM, WALL}
    assert (logs[PENDULUM].pain, logs[PENDULUM].repetitions) == (2, 3)
    assert (logs[WALL].pain, logs[WALL].compared) == (3, None)
    # The pendulum again another time, the door lean now: the round goes on with it.
    assert page.today.start.accessibleName() == "Continue today's exercises"
    assert page.today.state.text() == "Logged this evening. 1 exercise not done yet."


def test_what_is_read_from_across_a_room_is_large(planned: WindowHarness) -> None:
    page = swinging(planned)
    for size in ((1280, 800), (1024, 700)):
        for percent in (100, 200):
            planned.services.appearance.choose(percent=percent)
            planned.window.resize(*size)
            planned.settle()
            least = planned.window.height() / 15
            assert page.rounds.round.sentence.fitted_font().pixelSize() >= least
            count = page.rounds.round.count
            assert min(count.caption_px(), count.digits_px()) >= least
            assert count.visibleRegion().boundingRect() == count.rect()
            assert count.width() >= count.minimumSizeHint().width()
            stop = page.rounds.round.stop
            lowest = stop.mapTo(planned.window, stop.rect().bottomRight())
            assert planned.window.rect().contains(lowest)


def test_every_repetition_is_in_the_store_at_once(planned: WindowHarness) -> None:
    page = page_of(planned)
    page.today.start.click()
    planned.pass_seconds(READY_S + 3.5)
    planned.settle()
    assert logs_of(planned)[PENDULUM].repetitions == 1
    planned.pass_seconds(3)
    planned.settle()
    assert logs_of(planned)[PENDULUM].repetitions == 2
    page.rounds.round.skip.click()
    planned.settle()
    assert logs_of(planned)[PENDULUM].repetitions == 2


def test_a_round_without_a_repetition_leaves_nothing(planned: WindowHarness) -> None:
    page = page_of(planned)
    page.today.start.click()
    planned.pass_seconds(5)
    page.rounds.round.end.click()
    planned.settle()
    assert page.today.isVisible()
    assert logs_of(planned) == {}


def test_opening_another_page_pauses_the_round(planned: WindowHarness) -> None:
    page = swinging(planned)
    planned.window.go(MainPage.PROGRESS)
    planned.settle()
    planned.pass_seconds(100)
    planned.window.go(MainPage.EXERCISES)
    assert page.rounds.round.isVisible()
    assert page.rounds.round.guided is not None
    assert page.rounds.round.guided.paused
    assert not planned.window.words[0].isVisible()


def log_elsewhere(stage: WindowHarness, place: int) -> None:
    """Choose an entry of the list of what was done without the window."""
    menu = page_of(stage).today.elsewhere.menu_of_exercises
    [entry for entry in menu.actions() if not entry.isSeparator()][place].trigger()
    stage.settle()


def test_one_choice_logs_a_round_done_elsewhere_and_another_undoes_it(
    planned: WindowHarness,
) -> None:
    today = page_of(planned).today
    today.elsewhere.click()
    menu = today.elsewhere.menu_of_exercises
    assert menu.isVisible()
    menu.close()
    log_elsewhere(planned, 0)
    assert set(logs_of(planned)) == {PENDULUM, WALL, LEAN}
    assert today.undo.accessibleName() == "Undo: Pendulum, Wall walk, Door lean"
    # What is left of the day is the second time of the pendulum.
    assert today.state.text().endswith("Next: 1 exercise.")
    today.undo.click()
    planned.settle()
    assert logs_of(planned) == {}
    assert not today.undo.isVisible()


def entries_of(stage: WindowHarness) -> dict[str, QAbstractButton]:
    """Return what is shown as logged today, each with the button that removes it."""
    start = "Remove: "
    buttons = page_of(stage).today.findChildren(QAbstractButton)
    named = {button.accessibleName(): button for button in buttons if button.isVisible()}
    return {name.removeprefix(start): its for name, its in named.items() if name.startswith(start)}


def rate_two(stage: WindowHarness) -> None:
    """Log two exercises with all that can be said of them, and the morning after."""
    person = stage.history().person
    for hour, exercise, pain in ((8, WALL, 3), (9, PENDULUM, 2)):
        log = ExerciseLog(
            id=new_id(),
            person_id=person.id,
            exercise=exercise,
            done=Timestamp(utc=dt.datetime.combine(TODAY, dt.time(hour), dt.UTC), offset_min=60),
            pain=pain,
            compared=ComparedWithLast.EASIER,
            repetitions=1,
        )
        stage.store.save_exercise_log(log)
    morning = NextMorning(id=new_id(), person_id=person.id, day=TODAY, eased=False)
    stage.store.save_next_morning(morning)
    page_of(stage).reload()
    stage.settle()


@pytest.mark.parametrize("by_key", [False, True], ids=["button", "Ctrl+Z"])
def test_what_was_removed_is_put_back_as_it_was(
    planned: WindowHarness, qtbot: QtBot, *, by_key: bool
) -> None:
    rate_two(planned)
    before, shown = planned.history(), list(entries_of(planned))
    # Something older that could be undone stays as it is.
    older: list[str] = []
    planned.services.undo.offer("An older deletion.", lambda: older.append("put back"))
    entries_of(planned)[shown[0]].click()
    planned.settle()
    assert len(planned.history().exercises_done) == 1
    assert list(entries_of(planned)) == shown[1:]
    messages = planned.window.messages
    assert f"This entry is deleted: {shown[0]}. You can undo this" in messages.text
    assert messages.undo.isVisible()
    if by_key:
        qtbot.keyClick(planned.window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    else:
        messages.undo.click()
    planned.settle()
    assert planned.history() == before
    assert list(entries_of(planned)) == shown
    assert older == []
    assert not messages.undo.isVisible()


def test_entries_removed_together_are_put_back_together(planned: WindowHarness) -> None:
    log_elsewhere(planned, 0)
    before, shown = planned.history(), list(entries_of(planned))
    page_of(planned).today.undo.click()
    planned.settle()
    assert planned.history().exercises_done == ()
    said = "These entries are deleted: Pendulum, Wall walk, Door lean. You can undo this"
    assert said in planned.window.messages.text
    planned.window.messages.undo.click()
    planned.settle()
    assert planned.history() == before
    assert list(entries_of(planned)) == shown


def test_an_entry_that_is_gone_already_is_not_offered_again(planned: WindowHarness) -> None:
    rate_two(planned)
    first, _second = entries_of(planned).values()
    first.click()
    first.click()
    planned.settle()
    assert len(planned.history().exercises_done) == 1
    planned.services.undo.undo()
    planned.settle()
    assert len(planned.history().exercises_done) == 2
    assert planned.services.undo.next is None


def test_one_exercise_is_logged_alone_and_its_line_says_so(planned: WindowHarness) -> None:
    log_elsewhere(planned, 2)
    assert set(logs_of(planned)) == {WALL}
    lines = page_of(planned).today.findChildren(PlannedLine)
    said = [line.done.text() for line in lines if line.done.isVisible()]
    assert said == ["\u2013  Not done today.", "\u2713  Done.", "\u2013  Not done today."]


def test_nothing_is_offered_beyond_what_is_planned_for_a_day(planned: WindowHarness) -> None:
    today = page_of(planned).today
    for _ in range(2):
        log_elsewhere(planned, 0)
    assert not today.start.isVisible()
    assert today.state.text() == "Everything planned for today is logged."


def test_the_morning_after_is_asked_for_once(planned: WindowHarness) -> None:
    today = page_of(planned).today
    assert not today.question.isVisible()
    day = log_before(planned, days=1)
    assert "After yesterday's exercises" in today.question.text()
    today.later.click()
    planned.settle()
    assert not today.question.isVisible()
    page_of(planned).reload()
    planned.settle()
    assert not today.question.isVisible()
    assert planned.history().next_mornings == ()
    page_of(planned)._later = None  # as after the next start
    page_of(planned).reload()
    planned.settle()
    today.no.click()
    planned.settle()
    assert not today.question.isVisible()
    # Space begins the round then; it logs none that was done elsewhere.
    assert planned.window.focusWidget() is today.start
    (answer,) = planned.history().next_mornings
    assert (answer.day, answer.eased) == (day, False)


def test_a_day_some_time_ago_is_asked_for_by_its_date(planned: WindowHarness) -> None:
    log_before(planned, days=4)
    assert "21 Nov 2026" in page_of(planned).today.question.text()


def test_a_made_up_person_logs_nothing(planned: WindowHarness) -> None:
    person = planned.history().person
    planned.store.save_person(
        type(person)(id=person.id, pseudonym=person.pseudonym, affected=person.affected, demo=True)
    )
    planned.window.measure.people.load()
    planned.settle()
    planned.window.measure.people.choose(person.id)
    planned.settle()
    page = page_of(planned)
    page.reload()
    planned.settle()
    assert "made up" in page.today.empty.text()
    assert not page.today.start.isVisible()
    page._log((WALL,))
    planned.settle()
    assert logs_of(planned) == {}


def test_the_page_for_the_person_is_written_and_previewed(
    planned: WindowHarness, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    today, target = page_of(planned).today, tmp_path / "Rowan.pdf"
    monkeypatch.setattr(
        QFileDialog, "getSaveFileName", staticmethod(lambda *_arguments: (str(target), ""))
    )
    today.language.choose("es")
    today.pdf.click()
    planned.settle()
    assert target.read_bytes().startswith(b"%PDF")
    assert "Rowan.pdf" in planned.window.messages.text
    today.pdf.click()  # the file is there: it is left as it is, and the window says so
    planned.settle()
    assert "Rowan.pdf" in planned.window.messages.text
    painted = []

    def show(dialog: QPrintPreviewDialog) -> int:
        painted.append(dialog.windowTitle())
        dialog.paintRequested.emit(dialog.printer())
        return 0

    monkeypatch.setattr(QPrintPreviewDialog, "exec", show)
    today.print.click()
    assert painted == ["Ejercicios: Rowan"]


def test_the_drawn_person_moves_in_step_with_the_round(planned: WindowHarness) -> None:
    page = page_of(planned)
    page.today.start.click()
    figure = page.rounds.round.figure
    assert "Pendulum" in figure.accessibleName()
    planned.pass_until(RoundPhase.SWING)
    page.rounds.round.skip.click()
    planned.pass_until(RoundPhase.HOLD)
    held = figure.time_s
    planned.pass_seconds(2)
    assert figure.time_s == held
    planned.pass_until(RoundPhase.BACK)
    planned.pass_seconds(2)
    assert figure.time_s is not None
    assert held is not None
    assert figure.time_s > held
    page.rounds.round.pause.click()
    assert figure.time_s is None
    page.rounds.round.skip.click()
    # One of the clinician's own has no drawing.
    assert page.rounds.round.title.text() == "Door lean"
    assert not figure.isVisible()


def test_only_what_was_done_before_is_compared_with_the_last_time(
    planned: WindowHarness, press: Callable[..., None]
) -> None:
    log_before(planned, 3)
    page = swinging(planned)
    planned.pass_until(RoundPhase.HOLD)
    planned.pass_seconds(60)
    press(Qt.Key.Key_N)
    asked = {rating.exercise: rating.compared.row for rating in page.rounds.rating.rows}
    assert asked[WALL].isVisible()
    assert not asked[PENDULUM].isVisible()


def with_and_without_room(planned: WindowHarness) -> Iterator[bool]:
    """Give the round a window with room beside its count, then one without; say which."""
    for percent, size, roomy in ((100, (1366, 700), True), (200, (1024, 700), False)):
        planned.services.appearance.choose(percent=percent)
        planned.window.resize(*size)
        planned.settle()
        planned.pass_seconds(0.2)
        yield roomy


def test_how_it_is_done_stands_beside_the_count_where_it_has_room(
    planned: WindowHarness,
) -> None:
    led = swinging(planned).rounds.round
    for roomy in with_and_without_room(planned):
        assert led.reminder.isVisible() or not roomy
        assert led.reminder.text() == "Arm hanging, small\u00a0circles."
        assert not led.how.isVisible()


def test_how_it_is_done_is_said_in_full_above_before_it_begins(
    planned: WindowHarness,
) -> None:
    page = page_of(planned)
    page.today.start.click()
    led = page.rounds.round
    for roomy in with_and_without_room(planned):
        assert led.reminder.isVisible() or not roomy
        assert led.how.isVisible() or led.reminder.isVisible()
        assert led.how.isVisible() or not roomy
        assert led.how.text().startswith("Lean on the other hand")
        assert not led.title.isVisible()


def test_what_is_said_of_a_round_begins_where_the_large_button_does(planned: WindowHarness) -> None:
    led = swinging(planned).rounds.round
    for size in ((1024, 700), (1366, 700), (1920, 1080)):
        planned.window.resize(*size)
        planned.settle()
        assert led.limit.mapTo(led, QPoint(0, 0)).x() == led.stop.x()


def test_a_line_of_today_says_the_arm_with_the_exercise(planned: WindowHarness) -> None:
    lines = page_of(planned).today.findChildren(PlannedLine)
    said = [[shown.text() for shown in line.findChildren(QLabel)] for line in lines]
    assert "Pendulum, left\u00a0arm" in said[0]
    assert "3 repetitions, 2 times a day" in said[0]
    # None is stated for this one.
    assert "Door lean" in said[2]


def test_an_exercise_without_a_number_is_ended_and_not_skipped(stage: WindowHarness) -> None:
    endless = [replace(planned, repetitions=None) for planned in EXERCISES[::2]]
    plan_exercises(stage, tuple(endless))
    page = page_of(stage)
    page.today.start.click()
    leading = page.rounds.round
    assert leading.skip.accessibleName() == "Skip exercise"
    stage.pass_until(RoundPhase.SWING)
    assert leading.skip.accessibleName() == "Next exercise"
    assert (leading.count.digits, leading.count.caption) == ("1", "repetition")
    leading.skip.click()
    stage.pass_until(RoundPhase.MOVE)
    assert leading.skip.accessibleName() == "Finish"
    leading.skip.click()
    stage.settle()
    assert {log.repetitions for log in logs_of(stage).values()} == {1}
    assert set(logs_of(stage)) == {PENDULUM, LEAN}
