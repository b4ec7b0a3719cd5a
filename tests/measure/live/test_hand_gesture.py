"""The raised hand: noticed once, only where it is surely a hand of its own."""

from dataclasses import replace

import numpy as np
import pytest

from measure.domain.landmarks import Landmark, Side
from measure.domain.movements import Movement, View
from measure.live.hand_gesture import RAISED_S, RaisedHandDetector
from tests.support.live_figures import person
from tests.support.stick_figure import elevation_track

BOTH = frozenset(Side)
WRIST = {Side.LEFT: Landmark.LEFT_WRIST, Side.RIGHT: Landmark.RIGHT_WRIST}
STANDING = person(
    elevation_track(np.zeros(1), Movement.ABDUCTION, Side.RIGHT, View.FRONT, trunk_px=110), 0
)


def raised(*sides, height=60.0, visibility=1.0):
    points, visible = STANDING.points_px.copy(), STANDING.visibility.copy()
    for side in sides:
        points[WRIST[side], 1] = points[Landmark.NOSE, 1] - height
        visible[WRIST[side]] = visibility
    return replace(STANDING, points_px=points, visibility=visible)


def reported(frames, hands=BOTH, fps=25.0):
    """Show frames; return what was told, with the number of its frame."""
    watch = RaisedHandDetector()
    answers = [watch.raised(n / fps, person, hands) for n, person in enumerate(frames)]
    return [(n, side) for n, side in enumerate(answers) if side is not None]


@pytest.mark.parametrize("side", list(Side))
def test_a_hand_held_up_is_told_once_after_a_while(side):
    ((n, which),) = reported([STANDING] * 20 + [raised(side)] * 60)
    assert which is side
    assert 0.7 * RAISED_S <= (n - 20) / 25 <= 1.1 * RAISED_S


def test_it_is_told_again_after_it_was_lowered():
    up, down = [raised(Side.LEFT)] * 40, [STANDING] * 40
    assert len(reported(down + up + down + up)) == 2


def test_frames_that_miss_it_do_not_matter():
    frames = [raised(Side.LEFT)] * 60
    frames[10::9] = [STANDING] * len(frames[10::9])
    assert len(reported([STANDING] * 20 + frames)) == 1


@pytest.mark.parametrize(
    "pose",
    [
        raised(Side.LEFT, height=10.0),
        raised(Side.LEFT, visibility=0.4),
        raised(Side.LEFT, Side.RIGHT),
        replace(STANDING, points_px=None, visibility=None),
    ],
    ids=["beside the head", "hidden", "both", "nobody"],
)
def test_what_is_no_sign(pose):
    assert reported([STANDING] * 20 + [pose] * 60) == []


def test_an_arm_drawn_along_with_the_other_is_no_sign():
    pose = raised(Side.LEFT)
    points = pose.points_px.copy()
    points[WRIST[Side.RIGHT]] = points[WRIST[Side.LEFT]] + [5.0, 40.0]  # not above the head
    assert reported([STANDING] * 20 + [replace(pose, points_px=points)] * 60) == []


def test_a_wave_is_too_short():
    assert reported([STANDING] * 20 + [raised(Side.LEFT)] * 15 + [STANDING] * 40) == []


def test_only_the_hands_that_may_are_heard():
    up = [STANDING] * 20 + [raised(Side.LEFT)] * 60
    assert reported(up, frozenset({Side.RIGHT})) == []
    assert reported(up, frozenset()) == []
