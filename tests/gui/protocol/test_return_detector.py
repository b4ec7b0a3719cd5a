"""After the answer about pain the next movement begins by itself, for who came and went back."""

from collections.abc import Callable

import numpy as np
import pytest

from gui.protocol.return_detector import QUIET_S, STANDING_S, ReturnDetector
from measure.domain.landmarks import Side
from measure.domain.records import LimitingFactor
from measure.live.events import LiveFrame, Phase, SetupHint
from tests.support.gui.scripted_engine import ScriptedEngine
from tests.support.gui.stage import WindowHarness

NEAR, FAR_LEFT = (SetupHint.STEP_BACK,), (SetupHint.STEP_RIGHT,)


def frame(time_s: float, *, seen: bool = True, hints: tuple[SetupHint, ...] = ()) -> LiveFrame:
    return LiveFrame(
        picture=np.zeros((2, 2, 3), dtype=np.uint8),
        frame_id=round(time_s * 30),
        time_s=time_s,
        phase=Phase.DONE,
        points_px=np.zeros((33, 2)) if seen else None,
        setup_hints=hints,
    )


@pytest.mark.parametrize("away", [{"seen": False}, {"hints": NEAR}])
def test_who_answered_and_went_back_is_there(away: dict[str, object]) -> None:
    back = ReturnDetector()
    assert not back.update(frame(0.0, **away))  # type: ignore[arg-type]
    back.answer()
    assert not back.update(frame(1.0, **away))  # type: ignore[arg-type]
    assert not back.update(frame(3.0, hints=FAR_LEFT))
    assert not back.update(frame(6.0))
    assert back.update(frame(6.0 + STANDING_S))


def test_without_an_answer_nothing_goes_on() -> None:
    back = ReturnDetector()
    back.update(frame(0.0, seen=False))
    assert not any(back.update(frame(float(second))) for second in range(1, 60))


def test_who_stayed_in_place_waits_for_who_answers() -> None:
    back = ReturnDetector()
    back.answer()
    assert not any(back.update(frame(float(second))) for second in range(60))


def test_a_further_answer_is_waited_for() -> None:
    back = ReturnDetector()
    back.update(frame(0.0, seen=False))
    back.answer()
    back.update(frame(1.0))
    back.answer()
    back.update(frame(4.0))
    assert not back.update(frame(4.0 + QUIET_S - 0.1))
    assert back.update(frame(4.0 + QUIET_S))


def test_walking_through_is_not_standing() -> None:
    back = ReturnDetector()
    back.update(frame(0.0, seen=False))
    back.answer()
    for second in range(1, 20, 2):
        assert not back.update(frame(float(second)))
        assert not back.update(frame(second + 0.9))
        assert not back.update(frame(second + 1.0, hints=NEAR))


@pytest.fixture
def asked(stage: WindowHarness) -> WindowHarness:
    """A session at home whose first movement has ended: pain is asked, somebody is near."""
    page = stage.window.measure
    page.start.at_home.start.click()
    stage.settle()
    page.before.go.click()
    stage.settle()
    for value in (150.0, 151.0, 152.0, 153.0):
        stage.engine.capture(value)
        stage.settle()
        stage.engine.settle()
        stage.settle()
    assert page.pain.isVisible()
    play(stage, 1.0, hints=NEAR)
    return stage


def play(stage: WindowHarness, seconds: float, *, hints: tuple[SetupHint, ...] = ()) -> None:
    """Let frames come for some seconds of the camera's own time."""
    engine: ScriptedEngine = stage.engine
    for _ in range(round(seconds * 30)):
        engine.show(Phase.DONE, hints=hints)
        stage.services.feed.pull()
        if not stage.window.measure.pain.isVisible():
            break


def press_pain(stage: WindowHarness) -> None:
    stage.window.measure.pain.pain.button(3).click()
    stage.window.measure.pain.reason.button(LimitingFactor.STIFFNESS).click()


def leave_open(stage: WindowHarness) -> None:
    stage.window.measure.pain.reason.button(LimitingFactor.STIFFNESS).click()


def press_much_pain(stage: WindowHarness) -> None:
    stage.window.measure.pain.pain.button(8).click()


@pytest.mark.parametrize("answered", [press_pain, leave_open, press_much_pain])
def test_the_next_movement_begins_without_another_click(
    asked: WindowHarness, answered: Callable[[WindowHarness], None]
) -> None:
    page = asked.window.measure
    answered(asked)
    play(asked, 2.0, hints=NEAR)
    assert page.pain.isVisible()
    play(asked, 8.0)
    if answered is press_pain:
        assert page.live.isVisible()
        assert asked.engine.side is Side.LEFT
        asked.settle()
        (record,) = asked.history().measurements
        assert (record.pain_during, record.stopped_by) == (3, LimitingFactor.STIFFNESS)
    elif answered is leave_open:
        assert page.pain.isVisible()
    else:
        # So much pain asks for a rest: nothing goes on before the button is pressed.
        assert page.pain.isVisible()
        page.pain.done.click()
        asked.settle()
        assert page.safety.isVisible()
