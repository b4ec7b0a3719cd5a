"""The home programme, entered in the window; both side pages by keys alone."""

import dataclasses
import datetime as dt
import string
from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from gui.text.wording import tr
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import ExerciseLog, Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History
from measure.progress.clinician_prompts import PROMPT_WORDS, Prompt, PromptKind, prompt_text
from measure.system.clock import Timestamp, new_id
from tests.support.gui.demo_history import demo_history
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


@pytest.fixture
def plan_page(stage: WindowHarness) -> WindowHarness:
    stage.window.show_home_programme()
    stage.settle()
    return stage


def test_a_plan_is_entered_and_saved(plan_page: WindowHarness) -> None:
    page = plan_page.window.progress.plan
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
    # Nobody has been measured yet, and the exercises can be tapped all the same.
    taps = plan_page.window.progress.early_exercises.buttons
    assert [one.text() for one in taps] == ["Pendulum", "Wall walk"]
    assert taps[1].toolTip() == "10 repetitions, held for 15 s, 2 times a day, left"


def test_exercises_of_the_clinicians_own(plan_page: WindowHarness) -> None:
    page = plan_page.window.progress.plan
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
    plan_page.window.progress.early_exercises.buttons[0].click()
    plan_page.settle()
    assert plan_page.history().exercises_done[-1].exercise == Exercise(own_name="Door lean")
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
    page = plan_page.window.progress.plan
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
    page = plan_page.window.progress.plan
    page.lines[ListedExercise.TOWEL].wanted.click()
    page.pain_limit.choose(3)
    page.review.text.setText(day)
    page.keep.click()
    plan_page.settle()
    assert "A review is written like" in page.lacking.text()
    assert plan_page.history().plans == ()


@pytest.mark.parametrize(
    ("tick", "told"), [(False, "No exercise is ticked"), (True, "pain level at which to stop")]
)
def test_a_plan_without_exercises_or_pain_limit_is_not_kept(
    plan_page: WindowHarness, tick: bool, told: str
) -> None:
    page = plan_page.window.progress.plan
    page.lines[ListedExercise.TOWEL].wanted.setChecked(tick)
    page.keep.click()
    plan_page.settle()
    assert told in page.lacking.text()
    assert page.isVisible()
    assert plan_page.history().plans == ()


def test_the_plan_in_force_is_shown_and_followed_by_the_new_one(stage: WindowHarness) -> None:
    before = planned(stage, TODAY - dt.timedelta(days=10))
    stage.window.show_home_programme()
    stage.settle()
    page = stage.window.progress.plan
    assert page.lines[ListedExercise.WALL_WALK].planned == before.exercises[1]
    assert page.lines[ListedExercise.TOWEL].planned is None
    assert page.pain_limit.value == 4
    page.pain_limit.choose(3)
    page.keep.click()
    stage.settle()
    assert [(each.first_day, each.pain_limit) for each in stage.history().plans] == [
        (before.first_day, 4),
        (TODAY, 3),
    ]
    # What was put down today is corrected, not followed by yet another plan.
    stage.window.show_home_programme()
    stage.settle()
    page.pain_limit.choose(5)
    page.keep.click()
    stage.settle()
    assert [each.pain_limit for each in stage.history().plans] == [4, 5]


def test_primary_movements_of_a_plan_outlast_its_correction(stage: WindowHarness) -> None:
    chosen = (Movement.ABDUCTION,)
    before = planned(stage, TODAY - dt.timedelta(days=10))
    stage.store.save_plan(dataclasses.replace(before, primary=chosen))
    stage.window.show_home_programme()
    stage.settle()
    stage.window.progress.plan.keep.click()
    stage.settle()
    assert [kept.primary for kept in stage.history().plans] == [chosen, chosen]


def test_a_programme_can_be_ended(stage: WindowHarness) -> None:
    planned(stage, TODAY - dt.timedelta(days=10))
    stage.window.show_home_programme()
    stage.settle()
    stage.window.progress.plan.end.click()
    stage.settle()
    assert stage.history().plans[-1].exercises == ()
    assert not stage.window.progress.early_exercises.isVisible()


def test_one_tap_logs_an_exercise_and_another_takes_it_back(stage: WindowHarness) -> None:
    person = stage.history().person
    stage.store.merge(demo_history(person, TODAY, weeks=6))
    planned(stage, TODAY - dt.timedelta(days=9))
    before = stage.history().exercises_done
    stage.window.go(1)
    stage.settle()
    row = stage.window.progress.overview.exercise_row
    assert "pain 4 of 10" in row.limit.text()
    assert not row.undo.isVisible()
    row.buttons[1].click()
    stage.settle()
    assert stage.history().exercises_done[-1].exercise.listed is ListedExercise.WALL_WALK
    assert "Wall walk" in row.undo.text()
    row.undo.click()
    stage.settle()
    assert stage.history().exercises_done == before
    assert not row.undo.isVisible()


def test_adherence_stands_beside_the_curves(stage: WindowHarness) -> None:
    person = stage.history().person
    stage.store.merge(demo_history(person, TODAY, weeks=6))
    monday = TODAY - dt.timedelta(days=TODAY.weekday())
    planned(stage, monday)
    taps = [
        ExerciseLog(
            id=new_id(),
            person_id=person.id,
            exercise=Exercise(listed=ListedExercise.WALL_WALK),
            done=Timestamp(utc=dt.datetime.combine(monday, dt.time(9 + k), dt.UTC)),
        )
        for k in range(3)
    ]
    store = stage.store
    for log in store.exercises_done(person.id):
        store.delete_exercise_log(log.id)
    store.merge(History(person=person, exercises_done=tuple(taps)))
    stage.window.go(1)
    stage.settle()
    # Days are counted, not what is missing from a plan.
    said = stage.window.progress.overview.exercises.text()
    assert said == "Days with exercises logged: 1 in the last week, 1 in the last four weeks."


@pytest.mark.parametrize("name", ["plan", "events"])
def test_every_field_of_the_pages_has_a_name_and_escape_leads_back(
    stage: WindowHarness, press: Callable[..., None], name: str
) -> None:
    planned(stage, TODAY)
    (stage.window.show_home_programme if name == "plan" else stage.window.show_events)()
    stage.settle()
    page = getattr(stage.window.progress, name)
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
    page = getattr(stage.window.progress, name)
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


@pytest.mark.parametrize("kind", list(PromptKind))
def test_what_is_worth_showing_is_told_alike_in_window_and_report(kind: PromptKind) -> None:
    fields = {name for _, name, _, _ in string.Formatter().parse(PROMPT_WORDS[kind]) if name}
    about = "movement" in fields
    prompt = Prompt(
        kind=kind,
        movements=(Movement.FLEXION,) if about else (),
        side=Side.LEFT if about else None,
        numbers={name: f"<{name}>" for name in fields - {"movement", "side"}},
    )
    assert prompt_text(prompt, tr).lower() == prompt.text.lower()
    assert all(number in prompt.text for number in prompt.numbers.values())
