"""What the window says: complete, short, and never urging."""

from dataclasses import replace

import numpy as np
import pytest

from gui.protocol.plan import MovementTask, SessionPlan
from gui.session.setup_check import SetupAspect, aspect_text
from gui.text.session_wording import (
    hint_sentence,
    live_sentence,
    move_sentence,
    next_sentence,
    reason_phrase,
    rest_sentence,
    start_position_sentence,
    trouble_sentence,
)
from gui.text.wording import (
    advice_words,
)
from measure.camera.faults import SourceFault
from measure.domain.landmarks import LANDMARKS, Side
from measure.domain.measurements import Trial
from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from measure.live.events import LiveEvent, LiveEventKind, LiveFrame, Phase, SetupHint

TASK = MovementTask(movement=Movement.FLEXION, side=Side.LEFT)
FRAME = LiveFrame(
    picture=np.zeros((4, 4, 3), dtype=np.uint8),
    frame_id=1,
    time_s=0.0,
    phase=Phase.MOVE,
    points_px=np.zeros((LANDMARKS, 2)),
)
SCORED = Trial(value=142.4, low=137.4, high=147.4, start_s=0, end_s=4, hold_start_s=2, hold_end_s=3)
#: Two lines of the least type in a window of 1280 pixels, in a wide font.
LONGEST = 68


def everything_said() -> list[str]:
    said = [hint_sentence(hint) for hint in SetupHint]
    said += [trouble_sentence(trouble) for trouble in SourceFault]
    said += [move_sentence(movement) for movement in Movement]
    said += [start_position_sentence(movement, side) for movement in Movement for side in Side]
    said += [
        live_sentence(SessionPlan([TASK]), replace(FRAME, phase=phase), None) for phase in Phase
    ]
    return said


@pytest.mark.parametrize("sentence", everything_said())
def test_a_sentence_can_be_read_from_across_the_room(sentence: str) -> None:
    assert 0 < len(sentence) <= LONGEST
    assert sentence[0].isupper()


@pytest.mark.parametrize("sentence", everything_said())
@pytest.mark.parametrize("urging", ["further", "more!", "higher", "try harder", "goal", "target"])
def test_nothing_urges_anybody_on(sentence: str, urging: str) -> None:
    assert urging not in sentence.lower()


@pytest.mark.parametrize("movement", list(Movement))
def test_every_move_says_to_stop_before_pain(movement: Movement) -> None:
    assert "Stop before it becomes painful" in move_sentence(movement)


@pytest.mark.parametrize("reason", list(Reason))
def test_every_reason_has_few_words_and_advice(reason: Reason) -> None:
    assert 0 < len(reason_phrase(reason)) <= 40
    assert advice_words([reason])


def test_a_hint_is_said_while_nobody_stands_right() -> None:
    frame = replace(FRAME, phase=Phase.SEARCHING_FOR_PERSON, setup_hints=(SetupHint.STEP_BACK,))
    assert live_sentence(SessionPlan([TASK]), frame, None) == "Step back a little."


def test_trouble_goes_before_all_else_and_pause_before_the_phase() -> None:
    guide = SessionPlan([TASK])
    guide.take(LiveEvent(kind=LiveEventKind.PAUSED))
    assert live_sentence(guide, FRAME, None).startswith("Paused")
    assert "unplugged" in live_sentence(guide, FRAME, SourceFault.CAMERA_UNPLUGGED)


def test_a_refusal_is_told_at_rest() -> None:
    guide = SessionPlan([TASK])
    refused = replace(SCORED, value=None, low=None, high=None, refused_for=(Reason.ELBOW_BENT,))
    guide.take(LiveEvent(kind=LiveEventKind.TRIAL_REFUSED, trial_id=1, trial=refused))
    assert rest_sentence(guide) == "Not counted: the elbow was bent."


def test_the_arm_that_is_measured_comes_nearer_for_the_rotation() -> None:
    assert "turn half right" in start_position_sentence(Movement.EXTERNAL_ROTATION, Side.LEFT)
    assert "turn half left" in start_position_sentence(Movement.EXTERNAL_ROTATION, Side.RIGHT)


def test_the_next_movement_is_said_only_when_there_is_one() -> None:
    assert next_sentence(SessionPlan([TASK])) == "That is all. Thank you."


@pytest.mark.parametrize("place", list(SetupAspect))
def test_the_place_has_a_sign_and_a_word_for_every_state(place: SetupAspect) -> None:
    assert aspect_text(place, None)[0] == "\u25cb"
    assert aspect_text(place, FRAME)[0] == "\u2713"
    hints = tuple(SetupHint)
    assert aspect_text(place, replace(FRAME, setup_hints=hints))[0] == "\u2717"
