"""Measuring from the first choice to the summary, by keys and by buttons."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QInputDialog

from gui.pages.measuring.live_band import BandState
from gui.protocol.plan import SessionStep
from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from measure.domain.records import (
    Assistance,
    BodyPosition,
    LimitingFactor,
)
from measure.live.events import LiveEventKind, Phase, SetupHint
from tests.support.gui.measuring_steps import (
    begin_clinic,
    begin_home,
    begin_single,
    give_history,
    shown,
    trials,
)
from tests.support.gui.screenshots import resize
from tests.support.gui.stage import WindowHarness

Press = Callable[..., None]


def test_a_session_at_home_by_keys_alone(stage: WindowHarness, press: Press) -> None:
    page = stage.window.measure
    page.start.at_home.choose.setChecked(True)
    press(Qt.Key.Key_Return)
    assert shown(stage) is page.live  # nothing to compare a first session's pain with
    assert stage.engine.side is Side.RIGHT
    trials(stage, 150.0, 151.0, 152.0, 153.0)
    assert shown(stage) is page.pain
    assert page.pain.next_title.text() == "Next, 2 of 8: Flexion, left arm"
    choose = "Choose a number, then go to your spot or Continue."
    assert page.pain.next_words.text() == choose
    press(Qt.Key.Key_2, "2")
    assert page.pain.next_words.text() == "Press Continue, or go to your spot."
    press(Qt.Key.Key_Return)
    assert shown(stage) is page.live
    assert stage.engine.side is Side.LEFT
    press(Qt.Key.Key_Escape)
    assert shown(stage) is page.summary  # nothing was captured, so there is nothing to ask
    assert page.summary.without.text() == (
        "Flexion, left arm: no reading, it ended before anything was captured."
    )
    assert len(page.summary.card.readings) == 1  # what was never tried is no refusal
    press(Qt.Key.Key_Return)
    assert shown(stage) is page.start
    history = stage.history()
    assert history.sessions[0].finished
    assert [each.pain_during for each in history.measurements] == [2]


def test_space_pauses_wherever_the_keyboard_is(stage: WindowHarness, press: Press) -> None:
    begin_clinic(stage)
    page = stage.window.measure
    for focused in (page.live.pause, page.live.discard, page.live.stop):
        focused.setFocus()
        press(Qt.Key.Key_Space)
        assert page.measuring is not None
        assert page.measuring.guide.paused
        assert page.live.pause.accessibleName() == "Continue"
        press(Qt.Key.Key_Space)
        assert not page.measuring.guide.paused
    assert "discard_last" not in stage.engine.calls


def test_backspace_discards_the_last_trial(stage: WindowHarness, press: Press) -> None:
    begin_clinic(stage)
    page = stage.window.measure
    assert not page.live.discard.isEnabled()
    trials(stage, 120.0)
    assert page.live.discard.isEnabled()
    press(Qt.Key.Key_Backspace)
    assert page.measuring is not None
    assert page.measuring.guide.counted == 0
    assert not page.live.discard.isEnabled()


def test_a_key_measures_the_position_that_is_held(stage: WindowHarness, press: Press) -> None:
    begin_clinic(stage)
    press(Qt.Key.Key_H)
    assert stage.engine.calls[-1] == "take_position"
    press(Qt.Key.Key_Space)
    stage.settle()
    press(Qt.Key.Key_H)
    assert stage.engine.calls[-1] == "pause"


def test_in_a_clinic_both_sides_take_few_keys(stage: WindowHarness, press: Press) -> None:
    page = stage.window.measure
    page.start.use_in_clinic()
    page.start.in_clinic.who.last.click()
    stage.settle()
    what = page.start.in_clinic.what
    what.every.click()
    press(Qt.Key.Key_B)
    assert stage.engine.calls == []  # nothing is ticked
    what.tiles.boxes[Movement.FLEXION].click()
    what.arms.button((Side.LEFT,)).click()
    press(Qt.Key.Key_B)
    assert stage.engine.calls == ["start", "choose"]
    trials(stage, 90.0, 92.0)
    press(Qt.Key.Key_Return)
    assert shown(stage) is page.summary
    press(Qt.Key.Key_T)
    assert stage.engine.side is Side.RIGHT
    trials(stage, 150.0, 152.0)
    press(Qt.Key.Key_Return)
    assert page.summary.card.readings == [
        "91\u00b0 (85 to 97)",
        "151\u00b0 (145 to 157)",
    ]
    press(Qt.Key.Key_M)
    assert shown(stage) is page.start
    begin_clinic(stage, Movement.ABDUCTION)
    trials(stage, 88.0, 88.0)
    press(Qt.Key.Key_Return)
    press(Qt.Key.Key_Return)
    history = stage.history()
    assert len(history.sessions) == 1
    assert len(history.measurements) == 3


def test_the_live_page_shows_guide_then_reading_then_refusal(stage: WindowHarness) -> None:
    begin_clinic(stage)
    live = stage.window.measure.live
    stage.engine.show(Phase.MOVE, 61.4)
    stage.settle()
    assert live.number.text == "61\u00b0"
    assert live.kind.text == "rough value"
    assert live.band.state is BandState.MOVING
    stage.engine.show(Phase.MOVE, 203.0)  # no arm goes there
    stage.settle()
    assert live.number.text == "\u2013"
    stage.engine.show(Phase.HOLD, 118.0, hold_share=0.5)
    stage.settle()
    assert live.hold.share == 0.5
    stage.engine.capture(118.0)
    stage.settle()
    assert live.hold.share is None
    assert live.number.text == "118\u00b0"
    assert live.kind.text == "being calculated"
    assert live.trials.words == ("being calculated", "next")
    assert live.video.isVisible()
    stage.engine.settle()
    stage.settle()
    assert live.kind.text == "final, 113\u00b0 to 123\u00b0"
    assert live.band.state is BandState.FINAL
    assert live.trials.words == ("118\u00b0 (113 to 123)", "next")
    assert live.on_body.isVisible()
    assert live.on_body.accessibleName() == "drawing on the body, left arm: 118\u00b0 (113 to 123)"
    stage.engine.capture(119.0)
    stage.settle()
    stage.engine.settle((Reason.TRUNK_LEAN,))
    stage.settle()
    assert live.sentence.text == "Not counted: the body leaned."
    assert live.reason.text == "Stay upright."
    assert live.reason.isVisible()
    assert live.refusal.example.isVisible()
    assert live.refusal.fault.accessibleName() == "drawing: the body leaned, left arm"
    assert live.rest.text == "Rest, then begin again."
    assert live.rest.isVisible()
    assert live.rest.geometry().top() > live.reason.geometry().bottom()
    assert live.trials.words == ("118\u00b0 (113 to 123)", "next")


def test_nothing_of_who_was_measured_before_is_seen_at_the_next_start(
    stage: WindowHarness,
) -> None:
    begin_clinic(stage)
    page = stage.window.measure
    stage.engine.show(Phase.HOLD, 149.0, hold_share=1.0)
    stage.engine.capture(149.0)
    stage.settle()
    assert page.live.number.isVisible()
    assert page.measuring is not None
    page.live.show_measuring(page.measuring, mirrored=False)
    assert page.live.position.isVisible()
    assert not page.live.number.isVisible()


def test_a_value_that_no_arm_reaches_is_not_shown_while_it_is_calculated(
    stage: WindowHarness,
) -> None:
    begin_clinic(stage)
    stage.engine.show(Phase.HOLD, 259.0, hold_share=1.0)
    stage.engine.capture(259.0)
    stage.settle()
    live = stage.window.measure.live
    assert (live.number.text, live.kind.text) == ("\u2013", "being calculated")


def test_no_number_is_shown_to_who_stands_so_that_nothing_can_count(stage: WindowHarness) -> None:
    begin_clinic(stage)
    live = stage.window.measure.live
    said = live.sentence.text
    for wrong in range(60):
        stage.engine.show(Phase.MOVE, -31.0, reasons=(Reason.FAR_ARM, Reason.TRUNK_LEAN))
        stage.settle()
        if wrong == 10:  # a moment of it is no more than a note
            assert live.number.isVisible()
    assert live.sentence.text == "Turn your other side to the camera."
    assert not live.number.isVisible()
    assert live.position.isVisible()
    stage.engine.show(Phase.MOVE, 31.0)
    stage.settle()
    assert live.sentence.text not in (said, "Turn your other side to the camera.")
    assert live.number.isVisible()


def test_the_number_stands_still_while_the_arm_comes_back(stage: WindowHarness) -> None:
    begin_clinic(stage)
    live = stage.window.measure.live
    for phase, value in ((Phase.MOVE, 90.0), (Phase.HOLD, 118.0)):
        stage.engine.show(phase, value, hold_share=1.0)
        stage.settle()
    for value in (97.0, 61.0, 20.0):
        stage.engine.show(Phase.RETURN, value)
        stage.settle()
        assert (live.number.text, live.kind.text) == ("118\u00b0", "value held")
        assert live.band.state is BandState.MEASURED
    stage.engine.show(Phase.MOVE, 44.0)
    stage.settle()
    stage.engine.show(Phase.RETURN, 12.0)
    stage.settle()
    assert (live.number.text, live.kind.text) == ("44\u00b0", "rough value")


def test_how_to_pause_from_afar_is_written(stage: WindowHarness) -> None:
    begin_clinic(stage)
    live = stage.window.measure.live
    stage.engine.show(Phase.MOVE, 61.4)
    stage.settle()
    assert live.hint.text == "Other hand up: pause."
    stage.engine.show(Phase.MOVE, 61.4, reasons=(Reason.SHRUG,))
    stage.settle()
    assert live.hint.text == "Keep the shoulder low."
    assert live.hint.marked
    stage.engine.pause()
    stage.settle()
    assert live.hint.text == "Other hand up: continue."
    assert live.paused.isVisible()
    assert not live.position.figure.isVisible()
    stage.engine.resume()
    stage.settle()
    stage.engine.show(Phase.MOVE, 61.4, reasons=(Reason.LIMB_LENGTH,))
    stage.settle()
    assert live.hint.text == "Note: arm not seen reliably."
    assert not live.paused.isVisible()


def test_how_else_to_stand_is_said_beneath_the_drawings(stage: WindowHarness) -> None:
    begin_single(stage.window.measure, Movement.EXTERNAL_ROTATION, Side.RIGHT)
    resize(stage, (1366, 700))
    live = stage.window.measure.live
    stage.engine.show(Phase.WAIT_NEUTRAL)
    stage.settle()
    assert live.sentence.text == "Face the camera, then turn half left."
    assert live.hint.text == "Forearm ahead."
    stage.engine.show(Phase.MOVE, 10.0)
    stage.settle()
    assert live.sentence.text.startswith("Forearm slowly outwards.")
    assert live.hint.text == "Other hand up: pause."


def test_the_position_is_drawn_while_nobody_stands_right(stage: WindowHarness) -> None:
    begin_clinic(stage)
    live = stage.window.measure.live
    stage.engine.show(Phase.SEARCHING_FOR_PERSON, seen=False, hints=(SetupHint.STEP_BACK,))
    stage.settle()
    assert live.sentence.text == "Step back a little."
    assert live.position.figure.isVisible()
    stage.engine.show(Phase.MOVE, 30.0)
    stage.settle()
    assert not live.position.figure.isVisible()


def test_trouble_offers_to_try_again(stage: WindowHarness, press: Press) -> None:
    begin_clinic(stage)
    live = stage.window.measure.live
    assert not live.retry.isVisible()
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_UNPLUGGED)
    stage.settle()
    assert live.retry.isVisible()
    assert "unplugged" in live.sentence.text
    assert live.video.empty_text == ""
    assert [member.isVisible() for member in (live.pause, live.here, live.discard)] == [False] * 3
    assert live.stop.isVisible()
    assert live.retry.hasFocus()
    press(Qt.Key.Key_R)
    assert stage.engine.calls[-1] == "start"
    assert not live.retry.isVisible()
    assert live.pause.isVisible()
    # Space means pause again, and ends nothing.
    assert live.pause.hasFocus()


def test_without_a_picture_finishing_ends_the_session(stage: WindowHarness, press: Press) -> None:
    begin_home(stage)
    page = stage.window.measure
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_UNPLUGGED)
    stage.settle()
    press(Qt.Key.Key_Escape)
    # Not the next movement, which could not be measured either.
    assert page.summary.isVisible()
    assert page.summary.title.text() == "Nothing was measured."


def test_conduct_is_stored_with_the_session_and_remembered(stage: WindowHarness) -> None:
    page = stage.window.measure
    page.start.in_clinic.what.how.posture.button(BodyPosition.SITTING).click()
    page.start.in_clinic.what.how.help.choose(Assistance.STICK)
    begin_clinic(stage)
    trials(stage, 90.0, 90.0)
    page.pain.done.click()
    stage.settle()
    (record,) = stage.history().measurements
    assert (record.conduct.posture, record.conduct.help) == (BodyPosition.SITTING, Assistance.STICK)
    assert stage.services.settings.conduct == record.conduct


def test_conduct_is_one_line_until_it_is_to_be_changed(stage: WindowHarness) -> None:
    page = stage.window.measure
    page.start.use_in_clinic()
    what = page.start.in_clinic.what
    page.start.in_clinic.setCurrentWidget(what)
    stage.settle()
    assert what.how.words.text() == "Standing, without help."
    assert not what.how.posture.row.isVisible()
    what.how.change.click()
    assert what.how.posture.row.isVisible()
    assert not what.how.words.isVisible()
    what.how.posture.button(BodyPosition.SITTING).click()
    what.how.fold()
    assert what.how.words.isVisible()
    assert what.how.words.text() == "Sitting, without help."


def test_somebody_else_can_be_measured(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QInputDialog, "getText", lambda *_: ("Linden", True))
    page = stage.window.measure
    page.start.at_home.add_person.click()
    stage.settle()
    assert page.people.person is not None
    assert page.people.person.pseudonym == "Linden"
    first = next(each for each in stage.store.people() if each.pseudonym == "Rowan")
    page.start.person_chosen.emit(first.id)
    stage.settle()
    assert page.people.person == first


def test_a_name_that_is_taken_is_told(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QInputDialog, "getText", lambda *_: ("Rowan", True))
    told: list[str] = []
    stage.window.measure.message_raised.connect(told.append)
    stage.window.measure.start.at_home.add_person.click()
    stage.settle()
    assert any("Rowan" in text for text in told)


def test_the_last_movement_can_be_measured_again(stage: WindowHarness, press: Press) -> None:
    page = stage.window.measure
    begin_home(stage)
    trials(stage, 100.0, 100.0, 100.0, 100.0)
    press(Qt.Key.Key_1, "1")
    press(Qt.Key.Key_A)
    assert shown(stage) is page.live
    assert stage.engine.side is Side.RIGHT
    trials(stage, 100.0, 100.0, 100.0, 100.0)
    press(Qt.Key.Key_Escape)
    assert shown(stage) is page.summary
    history = stage.history()
    assert [each.pain_during for each in history.measurements] == [1, None]


def test_without_a_movement_nothing_begins(stage: WindowHarness) -> None:
    page = stage.window.measure
    page.start.at_home.choose.setChecked(True)
    for box in page.start.at_home.tiles.boxes.values():
        box.setChecked(False)
    page.start.at_home.start.click()
    stage.settle()
    assert shown(stage) is page.start


def test_only_one_thing_at_a_time_is_on_the_page(stage: WindowHarness) -> None:
    window = stage.window
    assert window.words[0].isVisible()
    begin_clinic(stage)
    assert not window.words[0].isVisible()
    trials(stage, 90.0, 90.0)
    window.measure.pain.done.click()
    stage.settle()
    assert window.measure.measuring is not None
    assert window.measure.measuring.guide.step is SessionStep.FINISHED
    assert window.words[0].isVisible()


def test_pain_by_keys(stage: WindowHarness, press: Press) -> None:
    begin_clinic(stage)
    trials(stage, 90.0, 90.0)
    pain = stage.window.measure.pain
    assert not pain.finish.isVisible()  # nothing is left out by finishing
    press(Qt.Key.Key_5, "5")
    assert pain.pain.value == 5
    press(Qt.Key.Key_X, "x")
    assert pain.pain.value == 10
    # Enter goes on from wherever the keyboard is; it does not press what was chosen last again.
    reason = pain.reason.button(LimitingFactor.STIFFNESS)
    reason.click()
    reason.setFocus()
    press(Qt.Key.Key_1, "1")
    press(Qt.Key.Key_Return)
    assert stage.window.measure.summary.isVisible()
    (record,) = stage.history().measurements
    assert (record.pain_during, record.stopped_by) == (1, LimitingFactor.STIFFNESS)
    assert QApplication.focusWidget() is not None


@pytest.mark.parametrize(
    ("pain", "trials", "reach"), [(None, 3, True), (3, 3, True), (6, 3, True), (7, 2, False)]
)
def test_pain_beforehand_sets_how_much_testing_is_asked_for(
    stage: WindowHarness, pain: int | None, trials: int, reach: bool
) -> None:
    give_history(stage)
    page = stage.window.measure
    page.start.at_home.choose.setChecked(True)
    for movement, tick in page.start.at_home.tiles.boxes.items():
        tick.setChecked(movement in (Movement.FLEXION, Movement.HAND_BEHIND_BACK))
    page.start.at_home.start.click()
    stage.settle()
    page.before.night.choose(pain)
    page.before.go.click()
    stage.settle()
    assert page.measuring is not None
    guide = page.measuring.guide
    assert guide.task.trials == trials
    assert guide.task_position[1] == (4 if reach else 2)
    told = stage.window.messages.text
    assert ("easily irritated" in told) != reach


def test_at_home_a_choice_of_no_movement_says_what_to_do(stage: WindowHarness) -> None:
    start = stage.window.measure.start
    home = start.at_home
    home.choose.click()
    for box in home.tiles.boxes.values():
        box.setChecked(False)
    assert home.sentence.text() == "Choose at least one movement."
    assert home.start.isVisible()
    assert not home.start.isEnabled()
    start.keep_focus()
    assert any(box.hasFocus() for box in home.tiles.boxes.values())
    stage.window.measure.begin()
    stage.settle()
    assert shown(stage) is start
    home.tiles.boxes[Movement.ABDUCTION].click()
    assert home.start.isEnabled()
    assert home.sentence.text().startswith("1 movement, ")
    home.tiles.boxes[Movement.ABDUCTION].click()
    home.choose.click()
    assert home.start.isEnabled()
