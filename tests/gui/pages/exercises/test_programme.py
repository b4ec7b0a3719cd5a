"""The home programme, entered in the window; both side pages by keys alone."""

import datetime as dt
from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QDialog, QLabel, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from gui.app.window_pages import MainPage
from gui.pages.exercises.programme import HomeProgrammePage
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind
from measure.progress.home_programme import USUAL_PAIN_LIMIT, events_with_plans
from measure.system.clock import new_id
from tests.support.gui.stage import TODAY, WindowHarness


def planned(stage: WindowHarness, first_day: dt.date) -> Plan:
    """Keep a plan of two exercises and return it."""
    plan = Plan(
        id=new_id(),
        person_id=stage.history().person.id,
        first_day=first_day,
        exercises=(
            PlannedExercise(
                exercise=Exercise(listed=ListedExercise.PENDULUM), times_a_day=3, hold_s=0
            ),
            PlannedExercise(
                exercise=Exercise(listed=ListedExercise.WALL_WALK), times_a_day=2, hold_s=12
            ),
        ),
        pain_limit=4,
        chosen_by="physiotherapist",
    )
    stage.store.save_plan(plan)
    return plan


def shown(stage: WindowHarness) -> HomeProgrammePage:
    """Open the page of the programme and return it."""
    stage.window.show_home_programme()
    stage.settle()
    return stage.window.exercises.programme


@pytest.fixture
def plan_page(stage: WindowHarness) -> WindowHarness:
    stage.window.show_home_programme()
    stage.settle()
    return stage


def test_a_plan_is_entered_and_saved(plan_page: WindowHarness) -> None:
    page = plan_page.window.exercises.programme
    assert page.isVisible()
    assert not page.end.isVisible()
    line = page.lines[ListedExercise.WALL_WALK]
    assert not line.dose.isVisible()
    line.wanted.click()
    assert line.dose.isVisible()
    assert line.dose.side.value == (Side.LEFT,)  # the affected one
    line.dose.repetitions.choose(10)
    line.dose.hold.choose(15)
    line.dose.times.choose(2)
    line.note.setText(" Fingers only. ")
    pendulum = page.lines[ListedExercise.PENDULUM]
    pendulum.wanted.click()
    assert not pendulum.dose.hold.isVisible()
    pendulum.dose.side.choose(())
    page.pain_limit.button(4).click()
    page.review.text.setText("2026-12-23")
    page.chosen_by.setText("physiotherapist")
    page.keep.click()
    plan_page.settle()
    (plan,) = plan_page.history().plans
    assert plan.first_day == TODAY
    assert plan.pain_limit == 4
    assert plan.review == dt.date(2026, 12, 23)
    assert plan.chosen_by == "physiotherapist"
    assert plan.exercises == (
        PlannedExercise(exercise=Exercise(listed=ListedExercise.PENDULUM), times_a_day=1, hold_s=0),
        PlannedExercise(
            exercise=Exercise(listed=ListedExercise.WALL_WALK),
            repetitions=10,
            hold_s=15,
            times_a_day=2,
            sides=(Side.LEFT,),
            note="Fingers only.",
        ),
    )
    assert plan_page.window.exercises.today.isVisible()


def test_exercises_of_the_clinicians_own(plan_page: WindowHarness) -> None:
    page = plan_page.window.exercises.programme
    for name in ("Door lean", "door  lean again", ""):
        page.add_own.click()
        page.own_lines[-1].name.setText(name)
    first, _second, _unnamed = page.own_lines
    first.sentence.setText("Lean in a doorway.")
    first.dose.repetitions.choose(5)
    assert first.remove.accessibleName() == "Remove: Door lean"
    assert first.dose.hold.accessibleName().startswith("Door lean, how long")
    page.pain_limit.choose(3)
    page.keep.click()
    plan_page.settle()
    (plan,) = plan_page.history().plans
    assert [planned.exercise.own_name for planned in plan.exercises] == [
        "Door lean",
        "door lean again",
    ]
    assert (plan.exercises[0].note, plan.exercises[0].repetitions) == ("Lean in a doorway.", 5)
    # The page shows them again, and one can be removed.
    plan_page.window.show_home_programme()
    plan_page.settle()
    assert [line.planned for line in page.own_lines] == list(plan.exercises)
    page.own_lines[0].remove.click()
    page.keep.click()
    plan_page.settle()
    (plan,) = plan_page.history().plans
    assert [planned.exercise.own_name for planned in plan.exercises] == ["door lean again"]


def test_two_exercises_of_one_name_are_not_saved(plan_page: WindowHarness) -> None:
    page = plan_page.window.exercises.programme
    for _ in range(2):
        page.add_own.click()
        page.own_lines[-1].name.setText("Door lean")
    page.pain_limit.choose(3)
    page.keep.click()
    plan_page.settle()
    assert "needs a name that no other exercise" in page.lacking.text()
    assert plan_page.history().plans == ()


@pytest.mark.parametrize("day", ["2026-11-24", "soon", "2026-02-30"])
def test_a_review_that_is_no_day_to_come_is_not_saved(plan_page: WindowHarness, day: str) -> None:
    page = plan_page.window.exercises.programme
    page.lines[ListedExercise.TOWEL].wanted.click()
    page.pain_limit.choose(3)
    page.review.text.setText(day)
    page.keep.click()
    plan_page.settle()
    assert "Enter the review as" in page.lacking.text()
    assert plan_page.history().plans == ()


@pytest.mark.parametrize(
    ("tick", "told"), [(False, "No exercise is ticked"), (True, "number that the clinician set")]
)
def test_a_plan_without_exercises_or_pain_limit_is_not_kept(
    plan_page: WindowHarness, tick: bool, told: str
) -> None:
    page = plan_page.window.exercises.programme
    page.lines[ListedExercise.TOWEL].wanted.setChecked(tick)
    page.keep.click()
    plan_page.settle()
    assert told in page.lacking.text()
    assert page.isVisible()
    assert plan_page.history().plans == ()


def test_the_plan_in_force_is_shown_and_followed_by_the_new_one(stage: WindowHarness) -> None:
    before = planned(stage, TODAY - dt.timedelta(days=10))
    page = shown(stage)
    assert page.lines[ListedExercise.WALL_WALK].planned == before.exercises[1]
    assert page.lines[ListedExercise.TOWEL].planned is None
    assert page.pain_limit.value == 4
    assert page.first_day.day == before.first_day
    page.pain_limit.choose(3)
    page.keep.click()
    stage.settle()
    assert [(kept.first_day, kept.pain_limit) for kept in stage.history().plans] == [
        (before.first_day, 4),
        (TODAY, 3),
    ]
    # What was put down today is corrected, not followed by yet another plan.
    page = shown(stage)
    assert not page.corrects.isVisible()
    page.pain_limit.choose(5)
    page.keep.click()
    stage.settle()
    assert [kept.pain_limit for kept in stage.history().plans] == [4, 5]


def test_what_changes_nothing_for_the_shoulder_is_no_other_programme(stage: WindowHarness) -> None:
    before = planned(stage, TODAY - dt.timedelta(days=10))
    page = shown(stage)
    page.keep.click()
    stage.settle()
    assert stage.history().plans == (before,)
    page = shown(stage)
    page.review.text.setText("2026-12-20")
    page.primary[Movement.ABDUCTION].click()
    page.keep.click()
    stage.settle()
    (plan,) = stage.history().plans
    assert (plan.id, plan.first_day) == (before.id, before.first_day)
    assert (plan.review, plan.primary) == (dt.date(2026, 12, 20), (Movement.ABDUCTION,))
    assert events_with_plans(stage.history()) == ()
    page = shown(stage)
    assert page.primary[Movement.ABDUCTION].isChecked()


def test_a_mistake_is_corrected_since_the_first_day(stage: WindowHarness) -> None:
    before = planned(stage, TODAY - dt.timedelta(days=10))
    page = shown(stage)
    page.lines[ListedExercise.WALL_WALK].dose.hold.choose(20)
    page.corrects.click()
    page.first_day.text.setText("2026-11-13")
    page.keep.click()
    stage.settle()
    (plan,) = stage.history().plans
    assert (plan.id, plan.first_day) == (before.id, dt.date(2026, 11, 13))
    assert plan.exercises[1].hold_s == 20
    assert events_with_plans(stage.history()) == ()


def test_another_programme_can_begin_on_a_day_gone_by(stage: WindowHarness) -> None:
    before = planned(stage, TODAY - dt.timedelta(days=10))
    page = shown(stage)
    page.pain_limit.choose(2)
    page.first_day.text.setText("2026-11-20")
    page.keep.click()
    stage.settle()
    assert [plan.first_day for plan in stage.history().plans] == [
        before.first_day,
        dt.date(2026, 11, 20),
    ]
    (event,) = events_with_plans(stage.history())
    assert (event.kind, event.day) == (EventKind.PROGRAMME_CHANGED, dt.date(2026, 11, 20))


@pytest.mark.parametrize("day", ["2026-11-26", "", "monday"])
def test_a_first_day_to_come_is_not_saved(plan_page: WindowHarness, day: str) -> None:
    page = plan_page.window.exercises.programme
    page.lines[ListedExercise.TOWEL].wanted.click()
    page.pain_limit.choose(3)
    page.first_day.text.setText(day)
    page.keep.click()
    plan_page.settle()
    assert "Enter the first day as" in page.lacking.text()
    assert plan_page.history().plans == ()


def test_a_pain_limit_of_nothing_and_four_movements_cannot_be_chosen(
    plan_page: WindowHarness,
) -> None:
    page = plan_page.window.exercises.programme
    assert page.pain_limit.row.buttons[0].text() == "1"
    page.lines[ListedExercise.TOWEL].wanted.click()
    page.pain_limit.choose(3)
    for tick in list(page.primary.values())[:4]:
        tick.click()
    page.keep.click()
    plan_page.settle()
    assert "at most three" in page.lacking.text()
    assert plan_page.history().plans == ()


def test_a_programme_can_be_ended(stage: WindowHarness) -> None:
    planned(stage, TODAY - dt.timedelta(days=10))
    stage.window.show_home_programme()
    stage.settle()
    stage.window.exercises.programme.end.click()
    stage.settle()
    assert stage.history().plans[-1].exercises == ()
    assert not stage.window.exercises.today.start.isVisible()


def page_of(stage: WindowHarness, name: str) -> QWidget:
    window = stage.window
    return window.exercises.programme if name == "plan" else window.progress.events


@pytest.mark.parametrize("name", ["plan", "events"])
def test_every_field_of_the_pages_has_a_name_and_escape_leads_back(
    stage: WindowHarness, press: Callable[..., None], name: str
) -> None:
    planned(stage, TODAY)
    (stage.window.show_home_programme if name == "plan" else stage.window.show_events)()
    stage.settle()
    page = page_of(stage, name)
    fields = [
        *page.findChildren(QAbstractButton),
        *page.findChildren(QLineEdit),
    ]
    assert len(fields) > 12
    assert [field for field in fields if not field.accessibleName()] == []
    assert page.isAncestorOf(focused())
    press(Qt.Key.Key_Escape)
    assert not page.isVisible()


@pytest.mark.parametrize("name", ["plan", "events"])
def test_the_pages_are_worked_by_keys_alone(
    stage: WindowHarness, press: Callable[..., None], qtbot: QtBot, name: str
) -> None:
    (stage.window.show_home_programme if name == "plan" else stage.window.show_events)()
    stage.settle()
    page = page_of(stage, name)
    press(Qt.Key.Key_Space)  # ticks the first exercise, or says injection
    if name == "plan":
        page.pain_limit.button(3).setFocus()
        press(Qt.Key.Key_Space)
    reached = set()
    for _ in range(60):
        qtbot.keyClick(focused(), Qt.Key.Key_Tab)
        reached.add(focused())
        if focused() is page.keep:
            break
    assert focused() is page.keep
    assert all(page.isAncestorOf(one) for one in reached)
    press(Qt.Key.Key_Space)
    assert len(stage.history().plans) + len(stage.history().events) == 1


def focused() -> QWidget:
    found = QApplication.focusWidget()
    assert found is not None
    return found


def test_what_is_changed_is_not_lost_without_a_question(
    stage: WindowHarness, press: Callable[..., None]
) -> None:
    stage.window.show_home_programme()
    stage.settle()
    page = stage.window.exercises.programme
    press(Qt.Key.Key_Space)  # ticks the first exercise
    press(Qt.Key.Key_Escape)
    (asked,) = page.findChildren(QDialog)
    assert asked.isVisible()
    asked.reject()
    assert page.isVisible()
    page.leave.click()
    page.findChildren(QDialog)[-1].accept()
    stage.settle()
    assert not page.isVisible()
    assert stage.history().plans == ()


def test_a_key_saves_the_programme_and_what_is_missing_is_said_once(
    stage: WindowHarness, press: Callable[..., None], qtbot: QtBot
) -> None:
    stage.window.show_home_programme()
    stage.settle()
    page = stage.window.exercises.programme
    press(Qt.Key.Key_Space)
    qtbot.keyClick(focused(), Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    stage.settle()
    assert page.lacking.text() == "Choose the number that the clinician set."
    page.pain_limit.choose(3)
    qtbot.keyClick(focused(), Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    stage.settle()
    assert len(stage.history().plans) == 1


def test_who_was_given_no_pain_level_is_offered_the_usual_one(plan_page: WindowHarness) -> None:
    page = plan_page.window.exercises.programme
    next(iter(page.lines.values())).wanted.setChecked(True)
    words = " ".join(shown.text() for shown in page.findChildren(QLabel))
    assert "4 is Thawline's usual number, an unverified default." in words
    page.usual_limit.click()
    page.keep.click()
    plan_page.settle()
    (kept,) = plan_page.history().plans
    assert kept.pain_limit == USUAL_PAIN_LIMIT


def test_what_was_entered_outlasts_other_pages_until_it_is_given_up(
    plan_page: WindowHarness,
) -> None:
    page = plan_page.window.exercises.programme
    line = page.lines[ListedExercise.WALL_WALK]
    line.wanted.click()
    page.chosen_by.setText("physiotherapist")
    plan_page.window.measure.people.load()
    plan_page.settle()
    plan_page.window.go(MainPage.MEASURE)
    plan_page.window.show_home_programme()
    plan_page.settle()
    assert page.isVisible()
    assert line.wanted.isChecked()
    assert page.chosen_by.text() == "physiotherapist"
    page.leave.click()
    (asked,) = [each for each in page.findChildren(QDialog) if each.isVisible()]
    asked.accept()
    plan_page.settle()
    assert plan_page.window.exercises.today.isVisible()
    plan_page.window.show_home_programme()
    plan_page.settle()
    assert not line.wanted.isChecked()
    assert page.chosen_by.text() == ""


def test_closing_the_window_asks_about_a_programme_that_is_not_saved(
    plan_page: WindowHarness,
) -> None:
    window = plan_page.window
    line = window.exercises.programme.lines[ListedExercise.WALL_WALK]
    line.wanted.click()
    window.go(MainPage.MEASURE)
    assert not window.close()
    assert window.isVisible()
    (asked,) = [each for each in window.findChildren(QDialog) if each.isVisible()]
    asked.reject()
    plan_page.settle()
    assert window.exercises.programme.isVisible()
    assert line.wanted.isChecked()
    assert not window.close()
    (asked,) = [each for each in window.findChildren(QDialog) if each.isVisible()]
    asked.accept()
    assert not window.isVisible()
