"""Ending in the middle: finishing a session, stopping for pain, a movement without a reading."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.reasons import Reason
from measure.domain.records import LimitingFactor
from measure.live.events import LiveEventKind
from measure.progress.series import all_series
from tests.support.gui.measuring_steps import begin_home, begin_single, give_history, shown, trials
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
    assert page.live.sentence.text.split("\n") == [
        "Lower the arm.",
        "What was captured is being calculated.",
    ]
    ways = (page.live.stop, page.live.discard, page.live.here, page.live.pause)
    assert not any(way.isEnabled() for way in ways)
    assert page.live.hurts.isEnabled()
    stage.settle()
    assert shown(stage) is page.pain
    assert page.pain.next_title.text() == "This was the last movement"
    assert page.pain.reason.value is None


@pytest.mark.parametrize("refused_for", [(), (Reason.TRUNK_LEAN,)])
@pytest.mark.parametrize("finishing", [True, False])
def test_that_it_hurts_can_be_said_while_trials_are_calculated(
    stage: WindowHarness,
    press: Press,
    monkeypatch: pytest.MonkeyPatch,
    finishing: bool,
    refused_for: tuple[Reason, ...],
) -> None:
    begin_home(stage)
    page, engine = stage.window.measure, stage.engine
    trials(stage, 150.0)
    for value in (151.0, 152.0, 153.0):  # the last ones: nothing more is to be done
        engine.capture(value)
    stage.settle()
    orders: list[str] = []
    monkeypatch.setattr(engine, "finish_movement", lambda: orders.append("finish"))
    if finishing:
        press(Qt.Key.Key_Escape)
        press(Qt.Key.Key_Return)  # once more by mistake: it says nothing about pain
    assert shown(stage) is page.live
    assert page.live.hurts.isEnabled()
    press(Qt.Key.Key_S, "s")
    assert page.live.sentence.text.split("\n") == [
        "Lower the arm.",
        "You will be asked about the pain.",
    ]
    assert not page.live.hurts.isEnabled()  # it was heard
    press(Qt.Key.Key_S, "s")
    assert orders == ["finish"]
    engine.calls.append("finish_movement")
    engine.settle(refused_for)
    engine.happen(LiveEventKind.MEASUREMENT_DONE, measurement=engine.measurement())
    stage.settle()
    assert shown(stage) is page.pain
    assert page.pain.reason.value is LimitingFactor.PAIN
    press(Qt.Key.Key_5, "5")
    press(Qt.Key.Key_Return)
    (record,) = stage.history().measurements
    assert (record.pain_during, record.stopped_by) == (5, LimitingFactor.PAIN)
    assert [trial.refused_for for trial in record.measurement.trials] == [refused_for] * 3


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


def test_pain_said_beforehand_is_saved_also_when_nothing_is_measured(
    stage: WindowHarness, press: Press
) -> None:
    give_history(stage)
    page = stage.window.measure
    page.start.use_at_home()
    page.start.at_home.start.click()
    stage.settle()
    page.before.now.choose(5)
    page.before.leave.click()
    page.start.at_home.start.click()
    stage.settle()
    assert page.before.now.value == 5  # going back loses nothing
    page.before.night.choose(6)
    page.before.go.click()
    stage.settle()
    press(Qt.Key.Key_Escape)
    assert shown(stage) is page.summary
    assert page.summary.title.text() == "Nothing was measured."
    assert page.summary.without.text().endswith("What you said about pain is saved.")
    page.summary.finish.click()
    stage.settle()
    session = stage.history().sessions[-1]
    assert (session.pain.rest, session.pain.night, session.finished) == (5, 6, True)
    page.start.at_home.start.click()
    stage.settle()
    assert page.before.now.value is None  # at another time it is asked anew


def test_pain_that_stopped_a_movement_before_a_trial_is_kept(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    """There is no measurement to keep it with, so the session's note says it."""
    page = stage.window.measure
    begin_single(page, side=Side.LEFT)
    stage.settle()
    engine = stage.engine
    monkeypatch.setattr(
        engine, "finish_movement", lambda: engine.happen(LiveEventKind.MEASUREMENT_DONE)
    )
    page.live.hurts.click()
    stage.settle()
    assert shown(stage) is page.pain
    page.pain.pain.choose(5)
    page.pain.finish.click()
    stage.settle()
    assert page.summary.without.text().endswith("What you said about pain is saved.")
    page.summary.noting.click()
    page.summary.note.setPlainText("Warm room")
    page.summary.finish.click()
    stage.settle()
    (session,) = stage.history().sessions
    assert session.note == "Warm room\nFlexion, left arm: pain 5 of 10, no reading."
    assert session.finished
    assert not stage.history().measurements


def test_pain_that_nobody_told_is_not_called_saved(stage: WindowHarness, press: Press) -> None:
    page = stage.window.measure
    begin_single(page, side=Side.LEFT)
    stage.settle()
    trials(stage, 90.0)
    press(Qt.Key.Key_Backspace)
    press(Qt.Key.Key_Escape)
    assert shown(stage) is page.summary
    assert page.summary.title.text() == "Nothing was measured."
    assert "pain" not in page.summary.without.text()


def test_an_earlier_reading_of_the_day_is_said_and_compared(stage: WindowHarness) -> None:
    page = stage.window.measure
    begin_single(page, side=Side.RIGHT)
    stage.settle()
    trials(stage, 150.0, 152.0)
    page.pain.done.click()
    page.summary.finish.click()
    stage.settle()
    begin_single(page, side=Side.LEFT)
    stage.settle()
    trials(stage, 90.0, 92.0)
    less = "Left arm: 60\u00b0 less than the other (51 to 69)"
    assert page.pain.difference.text() == less
    page.pain.done.click()
    stage.settle()
    words = [shown_label.text() for shown_label in page.summary.card.findChildren(QLabel)]
    assert "Earlier today: 151\u00b0 (145 to 157)" in words
    assert "Not measured today" not in words
    assert less in words
    assert not any("more than once" in line for line in words)


def test_a_second_reading_of_a_day_says_what_charts_and_report_take(stage: WindowHarness) -> None:
    """The card shows the readings that it compares; the day's value is another one."""
    page = stage.window.measure
    for first, second in ((90.0, 92.0), (130.0, 132.0)):
        begin_single(page, side=Side.LEFT)
        stage.settle()
        trials(stage, first, second)
        page.pain.done.click()
        stage.settle()
        words = [line.text() for line in page.summary.card.findChildren(QLabel)]
        page.summary.finish.click()
        stage.settle()
    (said,) = [line for line in words if line.startswith("Measured more than once today.")]
    assert "the latest reading of each side" in said
    assert "the median of the day's readings" in said
    assert "Earlier today: 91\u00b0 (85 to 97)" in words
    (series,) = all_series(stage.history())
    assert series.value.tolist() == pytest.approx([111.0])
    assert page.summary.title.text() == "Today's results, saved"
