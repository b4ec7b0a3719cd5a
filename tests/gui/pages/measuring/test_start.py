"""From the first start to the first reading: whom, what, how many clicks, and what is written."""

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QAbstractButton, QLabel

from gui.app.main_window import USUAL_PX
from gui.app.window_pages import MainPage
from gui.protocol.plan import SessionMode, baseline_tasks
from gui.protocol.red_flags import ScreeningAnswer
from gui.widgets.figures.position_figure import PositionView
from measure.domain.home_programme_records import ExerciseLog
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind, Pain, Person
from measure.domain.screening_records import ScreeningOutcome
from measure.domain.session_facts import ExerciseTiming, SessionState
from measure.system.clock import new_id
from tests.support import record_samples as sample
from tests.support.gui.demo_history import demo_history
from tests.support.gui.measuring_steps import give_history, shown, trials
from tests.support.gui.stage import TODAY, WindowHarness

#: Width and height of a common laptop's screen, without the system's bars.
LAPTOP_PX = (1280, 680)


class Hand:
    """Presses what is seen and can be pressed, and counts."""

    def __init__(self, stage: WindowHarness) -> None:
        self.stage = stage
        self.clicks = 0

    def click(self, target: QAbstractButton) -> None:
        assert target.isVisible()
        assert target.isEnabled()
        target.click()
        self.clicks += 1
        self.stage.settle()

    def choose_one(self, movement: Movement, side: Side) -> None:
        """Choose one movement of one arm on the clinic's page."""
        what = self.stage.window.measure.start.in_clinic.what
        self.click(what.every)
        self.click(what.tiles.boxes[movement])
        self.click(what.arms.button((side,)))

    def deny_all(self, lists: int = 3) -> None:
        """Answer the safety questions, scrolling where a list is longer than the page."""
        safety = self.stage.window.measure.safety
        for _ in range(lists):
            while safety.rest.isVisible():
                self.click(safety.rest)
            self.click(safety.answers[ScreeningAnswer.NONE_FITS])


@pytest.mark.parametrize("size", [LAPTOP_PX, USUAL_PX])
def test_a_patient_needs_five_clicks_at_first_and_two_later(
    new_stage: WindowHarness, size: tuple[int, int]
) -> None:
    stage, page, hand = new_stage, new_stage.window.measure, Hand(new_stage)
    stage.window.resize(*size)
    stage.settle()
    hand.click(page.start.welcome.affected.button((Side.LEFT,)))
    hand.click(page.start.welcome.at_home)
    hand.deny_all()
    assert shown(stage) is page.live
    assert hand.clicks == 5
    assert (stage.engine.movement, stage.engine.side) == (Movement.FLEXION, Side.LEFT)
    trials(stage, 100.0, 101.0, 102.0, 103.0)
    hand.click(page.pain.finish)
    hand.click(page.summary.finish)
    (person,) = stage.store.people()
    assert (person.pseudonym, person.affected) == ("Me", (Side.LEFT,))
    hand.clicks = 0
    hand.click(page.start.at_home.start)
    hand.click(page.before.go)
    assert shown(stage) is page.live
    assert hand.clicks == 2


def test_a_clinicians_new_patient_needs_no_more(new_stage: WindowHarness) -> None:
    stage, page, hand = new_stage, new_stage.window.measure, Hand(new_stage)
    stage.window.resize(*LAPTOP_PX)
    hand.click(page.start.welcome.in_clinic)
    assert stage.services.settings.mode is SessionMode.CLINIC
    hand.clicks = 0
    page.start.in_clinic.who.name.setText("Linden")
    hand.click(page.start.in_clinic.who.new)
    hand.click(page.start.in_clinic.what.start)
    hand.deny_all()
    assert shown(stage) is page.live
    assert hand.clicks == 5
    assert page.live.title.text() == "Linden: Flexion, right arm"
    trials(stage, 100.0, 101.0)
    assert page.pain.line.text() == "Linden  \u00b7  Flexion, right arm"


def test_each_patient_of_a_clinic_gets_questions_and_a_history_of_their_own(
    new_stage: WindowHarness,
) -> None:
    stage, page, hand = new_stage, new_stage.window.measure, Hand(new_stage)
    hand.click(page.start.welcome.in_clinic)
    for name in ("Linden", "Hazel"):
        page.start.in_clinic.who.name.setText(name)
        hand.click(page.start.in_clinic.who.new)
        hand.choose_one(Movement.FLEXION, Side.RIGHT)
        hand.click(page.start.in_clinic.what.start)
        assert shown(stage) is page.safety
        hand.deny_all()
        trials(stage, 90.0, 91.0)
        hand.click(page.pain.done)
        hand.click(page.summary.finish)
        assert page.start.in_clinic.who.isVisible()
    for person in stage.store.people():
        history = stage.store.history(person.id)
        assert len(history.measurements) == 1
        assert [item.outcome for item in history.screenings] == [ScreeningOutcome.CLEAR]
    assert page.start.in_clinic.who.last.text().startswith("Last: Hazel")
    hand.click(page.start.in_clinic.who.last)
    hand.clicks = 0
    hand.click(page.start.in_clinic.what.start)
    assert shown(stage) is page.live  # the answers of today still hold
    assert page.people.name == "Hazel"


def test_of_who_is_not_to_be_saved_nothing_is_written(new_stage: WindowHarness) -> None:
    stage, page, hand = new_stage, new_stage.window.measure, Hand(new_stage)
    hand.click(page.start.welcome.in_clinic)
    for _ in range(2):
        hand.click(page.start.in_clinic.who.not_saved)
        hand.click(page.start.in_clinic.what.affected.button((Side.LEFT,)))
        hand.choose_one(Movement.FLEXION, Side.RIGHT)
        hand.click(page.start.in_clinic.what.start)
        hand.deny_all()  # each time
        trials(stage, 90.0, 91.0)
        assert page.pain.line.text().startswith("Not saved  \u00b7  ")
        hand.click(page.pain.done)
        assert page.summary.title.text() == "Today's results, not saved"
        assert page.summary.copy.isVisible()
        assert page.summary.copy.text() == "Copy as text"
        assert not page.summary.note.isVisible()
        assert page.live.stop.accessibleName() == "Finish"
        assert not page.summary.progress.isVisible()
        hand.click(page.summary.finish)
    assert stage.store.people() == []


def test_the_full_baseline_shows_the_difference_at_once(stage: WindowHarness) -> None:
    page, hand = stage.window.measure, Hand(stage)
    page.start.use_in_clinic()
    hand.click(page.start.in_clinic.who.last)
    hand.click(page.start.in_clinic.what.start)
    order = []
    for number in range(10):
        order.append((stage.engine.movement, stage.engine.side))
        value = 0.5 if number > 7 else 120.0 if stage.engine.side is Side.RIGHT else 80.0
        trials(stage, value, value)
        if order[-1] == (Movement.FLEXION, Side.LEFT):
            assert page.pain.difference.text().startswith("Left arm: 40\u00b0 less than the other")
            # Above the digits, where a common window shows it without scrolling.
            number_y = page.pain.number.mapTo(page.pain, QPoint()).y()
            assert page.pain.difference.mapTo(page.pain, QPoint()).y() < number_y
        hand.click(page.pain.done)
    assert shown(stage) is page.summary
    right, left = Side.RIGHT, Side.LEFT
    assert order[:5] == [
        (Movement.FLEXION, right),
        (Movement.EXTENSION, right),
        (Movement.FLEXION, left),
        (Movement.EXTENSION, left),
        (Movement.ABDUCTION, right),
    ]
    assert len(set(order)) == 10
    assert len(page.summary.card.readings) == 10
    assert len(page.summary.card.differences) == 5
    hand.click(page.summary.typing)
    field = page.summary.typed.fields
    for key, text in zip(field, ("98.5", "105", "-"), strict=False):
        field[key].setText(text)
    assert stage.window.focusWidget() is next(iter(field.values()))
    assert list(dict.fromkeys(movement for movement, *_ in field)) == list(Movement)[:4]
    hand.click(page.summary.copy)
    assert page.summary.copy.text() == "Copied as text"
    copied = QGuiApplication.clipboard().text()
    assert copied == page.summary.line
    # What was typed in stands beside the camera's reading of that arm.
    assert (
        "Flexion: left 80\u00b0 (74 to 86), 2 trials counted, by hand: active 98.5\u00b0, "
        "passive 105\u00b0; right 120\u00b0 (114 to 126), 2 trials counted; left arm: 40\u00b0 less"
        in copied
    )
    assert copied.endswith("not a diagnosis and not a medical device.")
    assert "Stop before" not in copied
    unfinished = list(field.values())[2]
    hand.click(page.summary.finish)
    assert shown(stage) is page.summary
    unfinished.clear()
    hand.click(page.summary.finish)
    (session,) = stage.history().sessions
    assert [item.value_deg for item in session.clinician_values] == [98.5, 105.0]


def test_the_plan_says_what_is_due_and_can_be_overridden(stage: WindowHarness) -> None:
    give_history(stage)
    home = stage.window.measure.start.at_home
    assert home.title.text() == "Today"
    assert home.sentence.text() == "4 movements, both arms, about 8 minutes"
    drawn = [figure for figure in home.findChildren(PositionView) if figure.isVisible()]
    assert len({figure.accessibleName() for figure in drawn}) == len(drawn) == 4
    home.choose.setChecked(True)
    assert home.title.text() == "Choose today's movements"
    for movement, box in home.tiles.boxes.items():
        box.setChecked(movement is Movement.ABDUCTION)
    assert home.sentence.text() == "1 movement, both arms, about 2 minutes"
    home.start.click()
    stage.settle()
    stage.window.measure.before.go.click()
    stage.settle()
    assert stage.engine.movement is Movement.ABDUCTION


def test_the_time_before_and_the_state_stand_beside_the_result(stage: WindowHarness) -> None:
    give_history(stage)
    page, hand = stage.window.measure, Hand(stage)
    hand.click(page.start.at_home.start)
    hand.click(page.before.state.timing.button(ExerciseTiming.BEFORE))
    hand.click(page.before.state.pain_relief)
    hand.click(page.before.go)
    trials(stage, 100.0, 101.0, 102.0, 103.0)
    hand.click(page.pain.finish)
    shown_words = [label.text() for label in page.summary.card.findChildren(QLabel)]
    assert any(words.startswith("Last time, 16 Nov 2026: 160\u00b0") for words in shown_words)
    hand.click(page.summary.finish)
    latest = stage.history().sessions[-1]
    assert (latest.state.timing, latest.state.pain_relief) == (ExerciseTiming.BEFORE, True)


def test_pain_is_noted_alone(stage: WindowHarness) -> None:
    give_history(stage)
    before = stage.history()
    page, hand = stage.window.measure, Hand(stage)
    hand.click(page.start.at_home.note_pain)
    assert not page.before.first.isVisible()
    assert page.before.go.text() == "Choose a number first"
    shown_words = [words.text() for words in page.before.findChildren(QLabel) if words.isVisible()]
    assert "One number is enough." in shown_words
    assert "You can skip any of these." not in shown_words
    assert not page.before.go.isEnabled()
    hand.click(page.before.now.button(3))
    hand.click(page.before.worst.button(5))
    hand.click(page.before.go)
    assert page.start.at_home.isVisible()
    after = stage.history()
    assert len(after.sessions) == len(before.sessions) + 1
    assert after.sessions[-1].pain == Pain(rest=3, worst_24h=5)
    assert after.measurements == before.measurements
    hand.click(page.start.at_home.start)
    assert page.before.first.isVisible()
    assert page.before.now.value is None
    assert page.before.go.text().startswith("Start")


def test_much_pain_noted_alone_asks_the_safety_questions(stage: WindowHarness) -> None:
    give_history(stage)
    page, hand = stage.window.measure, Hand(stage)
    hand.click(page.start.at_home.note_pain)
    hand.click(page.before.now.button(8))
    hand.click(page.before.go)
    assert shown(stage) is page.safety
    hand.deny_all()
    assert page.start.at_home.isVisible()
    assert stage.history().sessions[-1].pain == Pain(rest=8)
    assert stage.engine.calls == []


def test_exercises_in_the_log_answer_the_question(stage: WindowHarness) -> None:
    person = give_history(stage)
    log = sample.exercise_log(person)
    stage.store.save_exercise_log(
        ExerciseLog(id=new_id(), person_id=person.id, exercise=log.exercise, done=stage.store.now())
    )
    page, hand = stage.window.measure, Hand(stage)
    hand.click(page.start.at_home.start)
    assert page.before.state.logged.isVisible()
    assert not page.before.state.timing.row.isVisible()
    hand.click(page.before.go)
    trials(stage, 100.0, 101.0, 102.0, 103.0)
    hand.click(page.pain.finish)
    assert stage.history().sessions[-1].state.timing is ExerciseTiming.AFTER
    assert stage.history().sessions[-1].started.day == TODAY


def test_the_pain_limit_holds_in_a_first_visit_and_without_saving(
    new_stage: WindowHarness,
) -> None:
    """At the limit the next movement waits; at 7 the questions come, and only others are left."""
    stage, page, hand = new_stage, new_stage.window.measure, Hand(new_stage)
    hand.click(page.start.welcome.in_clinic)
    hand.click(page.start.in_clinic.who.not_saved)
    hand.click(page.start.in_clinic.what.start)
    hand.deny_all()
    trials(stage, 120.0, 121.0)
    hand.click(page.pain.pain.button(4))
    hand.click(page.pain.done)
    assert shown(stage) is page.next
    assert page.next.title.text().startswith("Not saved  \u00b7  ")
    hand.click(page.next.go)
    trials(stage, 40.0, 41.0)
    hand.click(page.pain.pain.button(8))
    hand.click(page.pain.done)
    hand.deny_all(2)
    hand.click(page.safety.ways_out[1])
    assert shown(stage) is page.next
    assert page.measuring is not None
    upcoming = page.measuring.guide.upcoming
    assert upcoming is not None
    assert upcoming.movement is Movement.FLEXION


def test_the_first_start_waits_for_a_shoulder(new_stage: WindowHarness) -> None:
    welcome = new_stage.window.measure.start.welcome
    assert not welcome.at_home.isEnabled()
    assert welcome.at_home.accessibleName() == "Choose a shoulder first"
    welcome.affected.button((Side.RIGHT,)).click()
    assert welcome.at_home.isEnabled()
    assert welcome.at_home.accessibleName() == "Start measuring"
    welcome.affected.button((Side.RIGHT,)).click()
    assert not welcome.at_home.isEnabled()


def test_in_a_clinic_all_movements_are_ticked_and_one_button_says_what_is_measured(
    new_stage: WindowHarness,
) -> None:
    page, hand = new_stage.window.measure, Hand(new_stage)
    hand.click(page.start.welcome.in_clinic)
    hand.click(page.start.in_clinic.who.not_saved)
    what = page.start.in_clinic.what
    assert what.tiles.ticked == tuple(Movement)
    assert what.arms.value == tuple(Side)
    assert what.start.property("role") == "main"
    assert new_stage.window.focusWidget() is what.start
    assert what.start.text().startswith("Measure 5 movements, both arms")
    assert what.length.text() == "2 trials each, about 4 minutes"
    # Nobody has said before which shoulder is stiff; it need not be said.
    assert what.affected.row.isVisible()
    assert what.affected.value is None
    hand.click(what.every)
    assert what.tiles.ticked == ()
    assert not what.start.isEnabled()
    assert what.start.text().startswith("Choose a movement first")
    assert what.length.text() == ""
    hand.click(what.every)
    assert what.tiles.ticked == tuple(Movement)
    assert len(what.tasks) == 10


def test_in_a_clinic_two_movements_of_both_arms_are_measured_in_the_order_of_the_baseline(
    new_stage: WindowHarness,
) -> None:
    stage, page, hand = new_stage, new_stage.window.measure, Hand(new_stage)
    hand.click(page.start.welcome.in_clinic)
    page.start.in_clinic.who.name.setText("Linden")
    hand.click(page.start.in_clinic.who.new)
    what = page.start.in_clinic.what
    hand.click(what.affected.button((Side.RIGHT,)))
    hand.click(what.every)
    for movement in (Movement.ABDUCTION, Movement.FLEXION):
        hand.click(what.tiles.boxes[movement])
    assert what.start.text().startswith("Measure 2 movements, both arms")
    assert what.length.text() == "2 trials each, about 2 minutes"
    hand.click(what.start)
    hand.deny_all()
    order = []
    for _ in range(4):
        order.append((stage.engine.movement, stage.engine.side))
        trials(stage, 100.0, 101.0)
        hand.click(page.pain.done)
    assert shown(stage) is page.summary
    both = (Movement.FLEXION, Movement.ABDUCTION)
    assert order == [(each, side) for each in both for side in (Side.LEFT, Side.RIGHT)]
    assert len(page.summary.card.readings) == 4
    assert len(page.summary.card.differences) == 2
    hand.click(page.summary.finish)
    hand.click(page.start.in_clinic.who.last)
    assert what.tiles.ticked == tuple(Movement), "the next time begins with all of them"
    assert what.arms.value == tuple(Side)
    assert what.affected.value == (Side.RIGHT,)


def test_in_a_clinic_one_movement_of_one_arm_is_measured_alone(new_stage: WindowHarness) -> None:
    stage, page, hand = new_stage, new_stage.window.measure, Hand(new_stage)
    hand.click(page.start.welcome.in_clinic)
    hand.click(page.start.in_clinic.who.not_saved)
    hand.choose_one(Movement.ABDUCTION, Side.LEFT)
    what = page.start.in_clinic.what
    assert what.start.text().startswith("Measure 1 movement, left arm")
    assert what.length.text() == "2 trials each, about 1 minute"
    hand.click(what.start)
    hand.deny_all()
    assert (stage.engine.movement, stage.engine.side) == (Movement.ABDUCTION, Side.LEFT)
    assert page.measuring is not None
    assert page.measuring.guide.upcoming is None


def test_a_clinician_can_say_what_changes_a_reading(new_stage: WindowHarness) -> None:
    stage, page, hand = new_stage, new_stage.window.measure, Hand(new_stage)
    hand.click(page.start.welcome.in_clinic)
    what = page.start.in_clinic.what
    for name, said in (("Linden", True), ("Hazel", False)):
        page.start.in_clinic.who.name.setText(name)
        hand.click(page.start.in_clinic.who.new)
        if said:
            hand.click(what.state.timing.button(ExerciseTiming.AFTER))
            hand.click(what.state.pain_relief)
            # A changed fact about the person leaves what was said of today.
            hand.click(what.affected.button((Side.LEFT,)))
        what.prefer((Movement.FLEXION,), (Side.LEFT,))
        hand.click(what.start)
        hand.deny_all()
        trials(stage, 90.0, 91.0)
        hand.click(page.pain.done)
        hand.click(page.summary.finish)
    states = {
        person.pseudonym: stage.store.history(person.id).sessions[-1].state
        for person in stage.store.people()
    }
    # A session in a clinic is a visit, since which later reports tell what changed.
    for person in stage.store.people():
        (visit,) = stage.store.history(person.id).events
        assert (visit.kind, visit.day) == (EventKind.CLINIC_VISIT, TODAY)
    assert states["Linden"] == SessionState(timing=ExerciseTiming.AFTER, pain_relief=True)
    assert states["Hazel"] == SessionState()


def test_back_from_the_questions_leads_to_the_page_before(new_stage: WindowHarness) -> None:
    stage, page, hand = new_stage, new_stage.window.measure, Hand(new_stage)
    hand.click(page.start.welcome.in_clinic)
    page.start.in_clinic.who.name.setText("Linden")
    hand.click(page.start.in_clinic.who.new)
    hand.click(page.start.in_clinic.what.state.pain_relief)
    hand.click(page.start.in_clinic.what.start)
    assert shown(stage) is page.safety
    page.safety.left.emit()
    stage.settle()
    assert page.start.in_clinic.what.isVisible()
    assert page.start.in_clinic.what.state.pain_relief.isChecked()
    hand.click(page.start.in_clinic.what.start)
    assert shown(stage) is page.safety


def test_in_a_clinic_anybodys_progress_can_be_opened(stage: WindowHarness) -> None:
    clover = Person(id=new_id(), pseudonym="Clover", demo=True)
    stage.store.merge(demo_history(clover, TODAY, weeks=6))
    window, start = stage.window, stage.window.measure.start
    start.use_in_clinic()
    window.measure.people.load()
    stage.settle()
    who = start.in_clinic.who
    assert clover.id in who.progress.values
    who.progress.picked.emit(clover.id)
    stage.settle()
    assert window.progress.overview.accessibleName() == "Progress: Clover"
    window.go(MainPage.MEASURE)
    who.guest_wanted.emit()
    stage.settle()
    window.go(MainPage.PROGRESS)
    stage.settle()
    whose = window.progress.whose
    assert whose.isVisible()
    whose.picked.emit(clover.id)
    stage.settle()
    assert not whose.isVisible()
    assert window.progress.overview.isVisible()
    window.measure._begin_clinic(baseline_tasks((Side.LEFT,)))
    stage.settle()
    assert "Clover is a made-up person." in window.messages.text
    assert window.measure.measuring is None


@pytest.mark.parametrize("stiff", [(), (Side.LEFT,)])
def test_in_a_clinic_the_stiff_shoulder_is_asked_and_the_other_arm_comes_first(
    stage: WindowHarness, stiff: tuple[Side, ...]
) -> None:
    what = stage.window.measure.start.in_clinic.what
    what.ask(replace(stage.store.people()[0], affected=stiff))
    assert what.affected.row.isVisibleTo(what)
    assert what.affected.value == (stiff or None)
    assert what.tasks[0].side is Side.RIGHT
    what.affected.button((Side.RIGHT,)).click()
    assert what.arms.value == tuple(Side), "which arm is measured is another question"
    assert what.tasks[0].side is Side.LEFT
    what.arms.button((Side.RIGHT,)).click()
    assert {task.side for task in what.tasks} == {Side.RIGHT}
