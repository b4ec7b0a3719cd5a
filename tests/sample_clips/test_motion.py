"""Phases follow each other without gaps, and the movement's course is smooth."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sample_clips.motion import MotionPhase, eased, frame_states, plan_segments, state_at
from sample_clips.scenario import Camera, ExtraEvent, Movement, Scenario, Side, Tempo, View

TEMPO = Tempo(facing_s=1, turn_s=1, neutral_s=1, move_s=2, hold_s=1.5, return_s=1)


def scenario(
    movement: Movement = Movement.FLEXION,
    peers: tuple[float, ...] = (),
    story: ExtraEvent = ExtraEvent.ORDINARY,
) -> Scenario:
    return Scenario(
        name="clip",
        movement=movement,
        side=Side.LEFT,
        view=View.SIDE,
        body=0,
        seed=1,
        peak=90,
        heading_deg=-90,
        tempo=TEMPO,
        peers=peers,
        story=story,
        camera=Camera(fps=10),
    )


def test_one_trial_in_order() -> None:
    told = [(part.phase, part.start_s, part.end_s) for part in plan_segments(scenario())]
    assert told == [
        (MotionPhase.NEUTRAL, 0, 1),
        (MotionPhase.MOVE, 1, 3),
        (MotionPhase.HOLD, 3, 4.5),
        (MotionPhase.RETURN, 4.5, 5.5),
        (MotionPhase.NEUTRAL, 5.5, 6.0),
    ]


def test_repeats_are_numbered() -> None:
    holds = [
        part.repeat
        for part in plan_segments(scenario(peers=(5, -5)))
        if part.phase is MotionPhase.HOLD
    ]
    assert holds == [0, 1, 2]


def test_rotation_begins_with_facing_and_turning() -> None:
    phases = [part.phase for part in plan_segments(scenario(Movement.EXTERNAL_ROTATION))]
    assert phases[:3] == [MotionPhase.FACING, MotionPhase.TURN, MotionPhase.NEUTRAL]


def test_walking_off_has_no_trial() -> None:
    phases = {part.phase for part in plan_segments(scenario(story=ExtraEvent.WALKS_OFF))}
    assert phases == {MotionPhase.NEUTRAL, MotionPhase.AWAY}


@pytest.mark.parametrize(
    ("time_s", "phase", "raised"),
    [
        (0.0, MotionPhase.NEUTRAL, 0.0),
        (1.0, MotionPhase.MOVE, 0.0),
        (2.0, MotionPhase.MOVE, 0.5),
        (3.0, MotionPhase.HOLD, 1.0),
        (4.4, MotionPhase.HOLD, 1.0),
        (5.0, MotionPhase.RETURN, 0.5),
        (99.0, MotionPhase.NEUTRAL, 0.0),
    ],
)
def test_state_at_a_time(time_s: float, phase: MotionPhase, raised: float) -> None:
    now = state_at(plan_segments(scenario()), time_s)
    assert (now.phase, now.raised) == (phase, pytest.approx(raised))


def test_turning_and_squaring_go_together_in_rotation() -> None:
    parts = plan_segments(scenario(Movement.EXTERNAL_ROTATION))
    assert [state_at(parts, t).turned for t in (0.5, 1.5, 2.5)] == pytest.approx([0, 0.5, 1])
    assert [state_at(parts, t).squared for t in (0.5, 1.5, 2.5)] == pytest.approx([0, 0.5, 1])


def test_one_moment_per_frame() -> None:
    frames = frame_states(scenario())
    assert len(frames) == 60
    assert frames[13].time_s == pytest.approx(1.3)


@settings(max_examples=60, deadline=None)
@given(st.floats(0, 1))
def test_course_is_symmetric_and_bounded(share: float) -> None:
    assert 0 <= eased(share) <= 1
    assert eased(share) + eased(1 - share) == pytest.approx(1)


@settings(max_examples=60, deadline=None)
@given(st.floats(-5, 5), st.floats(0, 0.2))
def test_course_never_goes_back(share: float, step: float) -> None:
    assert eased(share + step) >= eased(share) - 1e-12
