"""Timing of a clip: its phases, and the state of the movement at each moment."""

import math
from dataclasses import dataclass
from enum import StrEnum

from sample_clips.scenario import ExtraEvent, Movement, Scenario

#: Rest after the last return, before the clip ends, in seconds.
_CODA_S = 0.5
#: How long the room stays empty after the person walked off, and the walk itself, in seconds.
_EMPTY_S = 4.0
_WALK_S = 2.6


class MotionPhase(StrEnum):
    FACING = "facing"
    TURN = "turn"
    NEUTRAL = "neutral"
    MOVE = "move"
    HOLD = "hold"
    RETURN = "return"
    AWAY = "away"


@dataclass(frozen=True, slots=True, kw_only=True)
class Segment:
    """One phase from ``start_s`` up to ``end_s``; ``repeat`` counts trials from 0."""

    phase: MotionPhase
    start_s: float
    end_s: float
    repeat: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class MotionState:
    """State of the story at one time.

    Attributes
    ----------
    raised
        Share of the way from neutral to the peak of its repeat, 0 to 1.
    turned
        Share of the way from facing the camera to the heading of the measurement.
    squared
        Share of the way from a hanging arm to the zero pose with the elbow at 90 degrees.
    gone
        Share of the way out of the room.
    """

    time_s: float
    phase: MotionPhase
    repeat: int
    raised: float
    turned: float
    squared: float
    gone: float


def eased(share: float) -> float:
    """Smooth course from 0 to 1 with zero speed and acceleration at both ends.

    The minimum-jerk course of a reaching arm: Flash & Hogan 1985,
    doi:10.1523/JNEUROSCI.05-07-01688.1985.
    """
    s = min(1.0, max(0.0, share))
    return s**3 * (10 - 15 * s + 6 * s**2)


def plan_segments(scenario: Scenario) -> tuple[Segment, ...]:
    """The clip's phases in order, without gaps."""
    tempo = scenario.tempo
    parts: list[tuple[MotionPhase, float, int]] = []
    if scenario.movement is Movement.EXTERNAL_ROTATION:
        parts += [(MotionPhase.FACING, tempo.facing_s, 0), (MotionPhase.TURN, tempo.turn_s, 0)]
    if scenario.story is ExtraEvent.WALKS_OFF:
        parts += [
            (MotionPhase.NEUTRAL, tempo.neutral_s, 0),
            (MotionPhase.AWAY, _WALK_S + _EMPTY_S, 0),
        ]
    else:
        for repeat in range(1 + len(scenario.peers)):
            parts += [
                (MotionPhase.NEUTRAL, tempo.neutral_s, repeat),
                (MotionPhase.MOVE, tempo.move_s, repeat),
                (MotionPhase.HOLD, tempo.hold_s, repeat),
                (MotionPhase.RETURN, tempo.return_s, repeat),
            ]
        parts.append((MotionPhase.NEUTRAL, _CODA_S, len(scenario.peers)))
    segments = []
    now = 0.0
    for phase, length, repeat in parts:
        segments.append(Segment(phase=phase, start_s=now, end_s=now + length, repeat=repeat))
        now += length
    return tuple(segments)


def state_at(segments: tuple[Segment, ...], time_s: float) -> MotionState:
    """The state at a time; after the end the last state stays."""
    index = 0
    while index + 1 < len(segments) and time_s >= segments[index].end_s:
        index += 1
    now = segments[index]
    inside = (time_s - now.start_s) / (now.end_s - now.start_s)
    before_turn = now.phase in (MotionPhase.FACING, MotionPhase.TURN)
    share = eased(inside) if now.phase is MotionPhase.TURN else float(not before_turn)
    raised = {
        MotionPhase.MOVE: eased(inside),
        MotionPhase.HOLD: 1.0,
        MotionPhase.RETURN: 1.0 - eased(inside),
    }.get(now.phase, 0.0)
    gone = (time_s - now.start_s) / _WALK_S if now.phase is MotionPhase.AWAY else 0.0
    return MotionState(
        time_s=time_s,
        phase=now.phase,
        repeat=now.repeat,
        raised=raised,
        turned=share,
        squared=share,
        gone=gone,
    )


def frame_states(scenario: Scenario) -> tuple[MotionState, ...]:
    """One moment per frame of the clip, frame k at k / fps seconds."""
    segments = plan_segments(scenario)
    count = math.floor(segments[-1].end_s * scenario.camera.fps)
    return tuple(state_at(segments, k / scenario.camera.fps) for k in range(count))
