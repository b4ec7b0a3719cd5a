"""Ending in the middle: finishing a session, stopping for pain, a movement without a reading."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from measure.camera.faults import SourceFault
from measure.domain.records import LimitingFactor
from measure.live.events import LiveEventKind
from tests.support.gui.measuring_steps import begin_home, shown, trials
from tests.support.gui.stage import WindowHarness

Press = Callable[..., None]


def test_finishing_after_a_trial_asks_its_pain_and_ends(stage: WindowHarness, press: Press) -> None:
    begin_home(stage)
    page = stage.window.measure
    trials(stage, 150.0, 151.0)
    press(Qt.Key.Key_Escape)
    assert shown(stage) is page.pain
    assert page.pain.next_title.text() == "This was the last movement"
    assert page.pain.finish.isHidden()
    press(Qt.Key.Key_3, "3")
    press(Qt.Key.Key_Return)
    assert shown(stage) is page.summary
    assert [record.pain_during for record in stage.history().measurements] == [3]


def test_finishing_is_acknowledged_while_trials_are_calculated(stage: WindowHarness) -> None:
    begin_home(stage)
    page = stage.window.measure
    trials(stage, 150.0)
    stage.engine.capture(151.0)
    stage.settle()
    assert page.measuring is not None
    page.measuring.finish_here()  # what was captured has not been refined yet
    assert page.live.sentence.text == "Lower the arm. What was captured is being calculated."
    ways = (page.live.stop, page.live.hurts, page.live.here, page.live.pause)
    assert not any(way.isEnabled() for way in ways)
    stage.settle()
    assert shown(stage) is page.pain
    assert page.pain.next_title.text() == "This was the last movement"


def test_stopping_for_pain_asks_how_much_even_without_a_trial(
    stage: WindowHarness, press: Press
) -> None:
    begin_home(stage)
    page = stage.window.measure
    press(Qt.Key.Key_S, "s")
    assert shown(stage) is page.pain
    assert page.pain.reason.value is LimitingFactor.PAIN
    press(Qt.Key.Key_5, "5")
    rest = "That much pain asks for a rest. Nothing starts by itself."
    assert page.pain.next_words.text() == rest
    press(Qt.Key.Key_Return)
    assert shown(stage) is page.next
    assert page.next.pain_words.isVisible()
    (record,) = stage.history().measurements
    assert (record.pain_during, record.stopped_by) == (5, LimitingFactor.PAIN)


def test_questions_after_much_pain_say_why_they_appear(stage: WindowHarness, press: Press) -> None:
    begin_home(stage)
    page = stage.window.measure
    trials(stage, 150.0, 151.0, 152.0, 153.0)
    press(Qt.Key.Key_8, "8")
    rest = "That much pain asks for a rest. Nothing starts by itself."
    assert page.pain.next_words.text() == rest
    press(Qt.Key.Key_Return)
    assert shown(stage) is page.safety
    said = [words.text() for words in page.safety.findChildren(QLabel)]
    assert "Asked now because the pain was rated 8 of 10." in said


def test_a_movement_without_a_reading_is_not_passed_over(stage: WindowHarness) -> None:
    begin_home(stage)
    page = stage.window.measure
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CLIP_ENDED)
    stage.settle()
    assert shown(stage) is page.next
    assert page.next.without_reading.text() == ("Flexion, right arm: no reading, no movement seen.")
    page.next.finish.click()
    stage.settle()
    assert page.summary.without.text() == page.next.without_reading.text()
