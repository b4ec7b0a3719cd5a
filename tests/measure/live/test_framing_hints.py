"""What to change about the place: a stick figure in many wrong places."""

import numpy as np
import pytest

from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from measure.live.events import SetupHint
from measure.live.framing_hints import FramingAdvisor, light_hints, place_hints
from tests.support.stick_figure import elevation_track

SIZE = (640, 480)


def figure(*, trunk_px=110.0, view=View.FRONT, shift=(0.0, 0.0), roll_deg=0.0):
    """Landmarks of somebody standing well, unless changed; shift as shares of the picture."""
    movement = Movement.FLEXION if view is View.SIDE else Movement.ABDUCTION
    track = elevation_track(
        np.zeros(1), movement, Side.RIGHT, view, trunk_px=trunk_px, roll_deg=roll_deg
    )
    return track.points_px[0] + np.array(shift) * SIZE + np.array([0.0, 0.05 * SIZE[1]])


@pytest.mark.parametrize("view", [View.FRONT, View.BACK, View.SIDE])
def test_standing_well_needs_no_hint(view):
    assert place_hints(figure(view=view), SIZE) == ()


@pytest.mark.parametrize(
    ("changes", "hint"),
    [
        ({"trunk_px": 180.0}, SetupHint.STEP_BACK),
        ({"trunk_px": 50.0}, SetupHint.COME_CLOSER),
        ({"shift": (0.0, -0.2)}, SetupHint.RAISE_SCREEN),
        ({"shift": (0.0, 0.38)}, SetupHint.LOWER_SCREEN),
        ({"roll_deg": 8.0}, SetupHint.LEVEL_CAMERA),
        ({"roll_deg": -8.0}, SetupHint.LEVEL_CAMERA),
    ],
)
def test_each_wrong_place_has_its_hint(changes, hint):
    assert place_hints(figure(**changes), SIZE) == (hint,)


@pytest.mark.parametrize(
    ("view", "aside", "hint"),
    [
        (View.FRONT, 0.3, SetupHint.STEP_RIGHT),
        (View.FRONT, -0.3, SetupHint.STEP_LEFT),
        (View.BACK, 0.3, SetupHint.STEP_LEFT),
        (View.BACK, -0.3, SetupHint.STEP_RIGHT),
    ],
)
def test_left_and_right_are_the_persons(view, aside, hint):
    # Facing the camera, the picture's right side is the person's left: to come back to the
    # middle from there is a step to the person's right.
    assert place_hints(figure(view=view, shift=(aside, 0.0)), SIZE) == (hint,)


def test_from_the_side_a_step_aside_is_not_asked_for():
    assert place_hints(figure(view=View.SIDE, shift=(0.3, 0.0)), SIZE) == ()


def test_a_leaning_person_is_no_tilted_camera():
    track = elevation_track(
        np.zeros(1), Movement.ABDUCTION, Side.RIGHT, View.FRONT, lean_deg=8.0, trunk_px=110.0
    )
    points = track.points_px[0].copy()
    points[11:13, 1] = points[11:13, 1].mean()  # shoulders level, trunk leaning
    assert SetupHint.LEVEL_CAMERA not in place_hints(points, SIZE)


def test_a_figure_without_size_gives_no_hint():
    assert place_hints(np.full((33, 2), 100.0), SIZE) == ()


def grey(value):
    return np.full((480, 640, 3), value, dtype=np.uint8)


def test_a_dark_room_needs_light_with_or_without_a_person():
    assert light_hints(grey(30), None, SIZE) == (SetupHint.MORE_LIGHT,)
    assert light_hints(grey(30), figure(), SIZE) == (SetupHint.MORE_LIGHT,)
    assert light_hints(grey(120), None, SIZE) == ()
    assert light_hints(grey(120), figure(), SIZE) == ()


@pytest.mark.parametrize("scale", [1, 2])
def test_a_window_behind_the_person_is_told(scale):
    bright = grey(230)
    bright[60:420, 240:400] = 30
    picture = np.ascontiguousarray(bright[::scale, ::scale])
    assert light_hints(picture, figure(), SIZE) == (SetupHint.LIGHT_FROM_FRONT,)


def test_a_dark_shirt_in_a_usual_room_is_no_back_light():
    room = grey(140)
    room[60:420, 240:400] = 40
    assert light_hints(room, figure(), SIZE) == ()


def test_hints_neither_flicker_nor_stay():
    watch = FramingAdvisor()
    good, far = figure(), figure(trunk_px=50.0)
    given = []
    for n in range(90):
        one_bad_frame = n % 10 == 0
        points = far if 30 <= n < 60 or one_bad_frame else good
        given.append(watch.update(n / 30, points, SIZE, grey(120)))
    assert set(given[10:30]) == {()}
    assert given[58] == (SetupHint.COME_CLOSER,)
    assert given[-1] == ()
