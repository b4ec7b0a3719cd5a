"""A movement without a reading: what is said of it, where it stands, and how it is repeated."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QLabel, QPushButton

from gui.style.measures import GAP_PX
from gui.widgets.text import SignedLine
from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from measure.domain.records import LimitingFactor
from measure.live.events import LiveEventKind
from tests.support.gui.measuring_steps import begin_clinic, begin_home, shown, trials
from tests.support.gui.screenshots import SIZES, resize
from tests.support.gui.stage import WindowHarness

Press = Callable[..., None]


def refuse(stage: WindowHarness) -> None:
    """Let a movement of the left arm end without a reading, most of its trials for leaning."""
    begin_clinic(stage)
    for reasons in ((Reason.TRUNK_LEAN,), (Reason.WRONG_VIEW, Reason.TRUNK_LEAN)):
        stage.engine.capture(119.0)
        stage.settle()
        stage.engine.settle(reasons)
        stage.settle()
    stage.engine.happen(LiveEventKind.MEASUREMENT_DONE, measurement=stage.engine.measurement())
    stage.settle()


def ways_to_measure_again(stage: WindowHarness) -> list[QPushButton]:
    """Return the buttons on the card of results that measure something once more."""
    buttons = stage.window.measure.summary.card.findChildren(QPushButton)
    return [way for way in buttons if way.text() == "Measure again" and way.isVisible()]


def test_of_several_reasons_the_one_of_most_trials_is_said(stage: WindowHarness) -> None:
    refuse(stage)
    page = stage.window.measure
    assert page.pain.number.text() == "No reading"
    assert page.pain.interval.text() == "Trunk leaned."
    assert page.pain.advice.text() == "Next time: stay upright."
    for part in (page.pain.movement, page.pain.number, page.pain.interval, page.pain.advice):
        assert part.isVisible()
    assert not page.pain.on_body.isVisible()
    assert not page.pain.refused.isVisible()
    page.pain.done.click()
    stage.settle()
    card = page.summary.card
    assert not card.findChildren(SignedLine)
    said = {label.text(): label for label in card.findChildren(QLabel)}
    (again,) = ways_to_measure_again(stage)
    assert again.accessibleName() == "Measure again: Flexion, left arm"
    for part in (
        said["No reading"],
        said["Trunk leaned."],
        said["Next time: stay upright."],
        again,
    ):
        # Under the arm that has no reading, with nothing of it under the other one.
        assert part.mapTo(card, part.rect().topRight()).x() < card.width() / 2
    other = page.summary.next_side
    assert other.isVisible()
    rooms = []
    for way, words in ((again, "Next time: stay upright."), (other, "Not measured today")):
        begins, under = way.mapTo(card, QPoint()), said[words].mapTo(card, QPoint())
        room = begins.y() - under.y() - said[words].height()
        rooms.append(room)
        assert begins.x() == under.x(), words
    # Each right under its own words.
    assert min(rooms) > 0
    assert max(rooms) < 3 * GAP_PX
    # The words of both sides begin at one height.
    tops = {said[words].mapTo(card, QPoint()).y() for words in ("No reading", "Not measured today")}
    assert len(tops) == 1


def test_in_large_text_a_missing_reading_stands_below_the_answers(stage: WindowHarness) -> None:
    stage.services.appearance.choose(percent=200)
    refuse(stage)
    pain = stage.window.measure.pain
    assert pain.refused.isVisible()
    # What to do comes too late for the movement that has ended.
    assert pain.refused.text() == "No reading.  Next time: stay upright."
    parts = (pain.line, pain.sentence, pain.pain, pain.reason.row, pain.refused)
    tops = [part.mapTo(pain, QPoint()).y() for part in parts]
    assert tops == sorted(tops)  # nothing stands between the question and its answers
    assert not pain.number.isVisible()


def test_the_questions_after_a_movement_stand_together(stage: WindowHarness) -> None:
    refuse(stage)
    pain = stage.window.measure.pain
    for size in SIZES:
        resize(stage, size)
        scale, stopped = (part.mapTo(pain, QPoint()).y() for part in (pain.pain, pain.reason.row))
        following = pain.next_title.mapTo(pain, QPoint()).y()
        # Room that is left over is below what follows, not between.
        assert stopped - scale - pain.pain.height() < 12 * GAP_PX, size
        assert following - stopped - pain.reason.row.height() < 12 * GAP_PX, size


def test_what_gave_no_reading_is_measured_again(stage: WindowHarness) -> None:
    refuse(stage)
    page = stage.window.measure
    page.pain.done.click()
    stage.settle()
    (again,) = ways_to_measure_again(stage)
    again.click()
    stage.settle()
    assert shown(stage) is page.live
    assert (stage.engine.movement, stage.engine.side) == (Movement.FLEXION, Side.LEFT)
    trials(stage, 90.0, 92.0)
    page.pain.done.click()
    stage.settle()
    assert page.summary.card.readings == ["91\u00b0 (85 to 97)"]
    assert ways_to_measure_again(stage) == []


@pytest.mark.parametrize(
    ("pain", "stopped_by"), [(5, None), (None, LimitingFactor.PAIN), (2, LimitingFactor.PAIN)]
)
def test_what_hurt_is_not_offered_again(
    stage: WindowHarness, pain: int | None, stopped_by: LimitingFactor | None
) -> None:
    refuse(stage)
    page = stage.window.measure
    page.pain.pain.choose(pain)
    page.pain.reason.choose(stopped_by)
    page.pain.done.click()
    stage.settle()
    assert shown(stage) is page.summary
    assert ways_to_measure_again(stage) == []


def test_what_was_stopped_before_a_trial_is_measured_again(
    stage: WindowHarness, press: Press
) -> None:
    begin_home(stage)
    page = stage.window.measure
    trials(stage, 150.0)  # practice alone, which does not count
    press(Qt.Key.Key_Escape)
    assert shown(stage) is page.summary
    assert page.summary.without.text().startswith("Flexion, right arm: no reading")
    (again,) = ways_to_measure_again(stage)
    assert again.accessibleName() == "Measure again: Flexion, right arm"
    again.click()
    stage.settle()
    assert shown(stage) is page.live
    assert (stage.engine.movement, stage.engine.side) == (Movement.FLEXION, Side.RIGHT)
    trials(stage, 149.0, 150.0, 151.0, 152.0)
    page.pain.done.click()
    stage.settle()
    assert page.summary.card.readings == ["151\u00b0 (145 to 157)"]
    assert page.summary.without.text() == ""
    assert ways_to_measure_again(stage) == []


@pytest.mark.parametrize(
    ("pain", "stopped_by", "offered"),
    [(1, LimitingFactor.PAIN, 0), (None, LimitingFactor.PAIN, 0), (5, None, 0), (1, None, 1)],
)
def test_what_hurt_before_a_trial_is_not_offered_again(
    stage: WindowHarness, pain: int | None, stopped_by: LimitingFactor | None, offered: int
) -> None:
    begin_clinic(stage)
    page = stage.window.measure
    page.live.hurts.click()
    stage.settle()
    page.pain.pain.choose(pain)
    page.pain.reason.choose(stopped_by)
    page.pain.done.click()
    stage.settle()
    assert shown(stage) is page.summary
    assert page.summary.without.text().startswith("Flexion, left arm: no reading")
    assert len(ways_to_measure_again(stage)) == offered


def test_who_stopped_because_it_hurt_is_not_told_how_to_move(stage: WindowHarness) -> None:
    begin_clinic(stage)
    page = stage.window.measure
    stage.engine.capture(119.0)
    stage.settle()
    stage.engine.settle((Reason.NO_MOVE,))
    stage.settle()
    page.live.hurts.click()
    stage.engine.happen(LiveEventKind.MEASUREMENT_DONE, measurement=stage.engine.measurement())
    stage.settle()
    assert shown(stage) is page.pain
    assert page.pain.interval.text() == "Stopped because it hurt."
    page.pain.pain.choose(2)
    page.pain.done.click()
    stage.settle()
    words = " ".join(line.text() for line in page.summary.card.findChildren(QLabel))
    assert "Pain 2 of 10, stopped by pain." in words
    assert "Next time" not in words


def test_a_missing_number_is_told_alike_after_every_movement(
    stage: WindowHarness, press: Press
) -> None:
    begin_clinic(stage)
    trials(stage, 90.0, 90.0)
    pain = stage.window.measure.pain
    assert pain.next_words.isVisible()
    assert pain.next_words.text() == "Choose a number, then Finish to see the results."
    pain.reason.button(LimitingFactor.STIFFNESS).click()
    # Pain may be left out: the way on is open before there is a number.
    assert pain.done.isEnabled()
    assert pain.done.property("role") == "main"
    press(Qt.Key.Key_2, "2")
    assert pain.next_words.text() == "Finish shows the results."


def test_the_remark_on_the_movement_before_stands_beneath_what_comes_next(
    stage: WindowHarness,
) -> None:
    begin_home(stage)
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CLIP_ENDED)
    stage.settle()
    page = stage.window.measure.next
    tops = [
        part.mapTo(page, QPoint()).y()
        for part in (page.title, page.sentence, page.figure, page.without_reading)
    ]
    assert tops == sorted(tops)
    assert page.without_reading.isVisible()
