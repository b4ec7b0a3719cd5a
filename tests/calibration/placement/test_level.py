"""Roll and tilt from upright lines in virtual rooms."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calibration.placement.level import (
    CameraOrientation,
    PlumbLine,
    orientation_from_plumb_lines,
    up_direction,
)
from calibration.placement.viewpoint import PinholeView
from measure.errors import InputError
from tests.support.virtual_room import Room


def uprights(room: Room, *places: float, error_px: float = 0.0, seed: int = 0) -> list[PlumbLine]:
    """Lines from 0.5 to 1.5 m high, 3 m away, at places to the right."""
    random = np.random.default_rng(seed)
    lines = []
    for x in places:
        ends = room.project(np.array([[x, 1.5, 3.0], [x, 0.5, 3.0]]))
        top, bottom = ends + random.normal(0, error_px, ends.shape)
        lines.append(PlumbLine(top_px=tuple(top.tolist()), bottom_px=tuple(bottom.tolist())))
    return lines


@pytest.mark.parametrize("roll", [-9.0, -3.0, 0.0, 0.5, 8.0])
@pytest.mark.parametrize("tilt", [-8.0, 0.0, 9.0])
def test_a_door_frame_gives_roll_and_tilt(roll: float, tilt: float) -> None:
    room = Room(roll_deg=roll, tilt_deg=tilt)
    orientation = orientation_from_plumb_lines(uprights(room, -0.5, 0.5), room.view())
    assert orientation.roll_deg == pytest.approx(roll, abs=0.01)
    assert orientation.tilt_deg == pytest.approx(tilt, abs=0.01)
    assert orientation.lines == 2


def test_a_camera_turned_clockwise_sees_upright_things_lean_to_the_left() -> None:
    # The convention by itself: the upper end of the line is further left than the lower.
    line = PlumbLine(top_px=(600.0, 100.0), bottom_px=(640.0, 600.0))
    view = PinholeView(width_px=1280, height_px=720)
    assert orientation_from_plumb_lines([line], view).roll_deg == pytest.approx(
        math.degrees(math.atan(0.08))
    )


def test_a_wide_lens_with_distortion() -> None:
    room = Room(
        roll_deg=4.0, tilt_deg=12.0, focal=640.0, distortion=(-0.22, 0.06, 0.001, -0.001, -0.004)
    )
    orientation = orientation_from_plumb_lines(uprights(room, -1.0, 0.2, 1.2), room.view())
    assert orientation.roll_deg == pytest.approx(4.0, abs=0.05)
    assert orientation.tilt_deg == pytest.approx(12.0, abs=0.05)


def test_lines_marked_by_hand_are_within_three_tenths_of_a_degree() -> None:
    errors = []
    for seed in range(40):
        room = Room(roll_deg=3.0, tilt_deg=-8.0)
        lines = uprights(room, -0.5, 0.5, error_px=0.7, seed=seed)
        orientation = orientation_from_plumb_lines(lines, room.view())
        errors.append(abs(orientation.roll_deg - 3.0))
        assert orientation.roll_half_deg < 1.0
    assert float(np.percentile(errors, 95)) < 0.3


def test_the_interval_holds_the_roll_and_tilt_when_the_lens_is_unknown() -> None:
    # 65 degrees is this camera's field: 1000 / 640. The interval must also bear others.
    for focal in (800.0, 1000.0, 1200.0):
        room = Room(roll_deg=3.0, tilt_deg=-5.0, focal=focal)
        orientation = orientation_from_plumb_lines(uprights(room, -0.4, 0.4), room.unknown())
        assert abs(orientation.roll_deg - 3.0) <= orientation.roll_half_deg
        assert orientation.tilt_deg is not None
        assert orientation.tilt_half_deg is not None
        assert abs(orientation.tilt_deg + 5.0) <= orientation.tilt_half_deg


@pytest.mark.parametrize("place", [0.0, 0.4, -0.9])
def test_one_line_tells_the_roll_and_widens_beside_the_middle(place: float) -> None:
    room = Room(roll_deg=2.0, tilt_deg=9.0)
    orientation = orientation_from_plumb_lines(uprights(room, place), room.view())
    assert orientation.tilt_deg is None
    assert abs(orientation.roll_deg - 2.0) <= orientation.roll_half_deg
    middle = orientation_from_plumb_lines(uprights(Room(), 0.0), room.view())
    assert middle.roll_half_deg < 0.6
    if abs(place) > 0.3:
        assert orientation.roll_half_deg > 2


def test_up_direction_is_what_the_room_does() -> None:
    room = Room(roll_deg=7.0, tilt_deg=-9.0, height_m=0.0)
    # Straight up from a point ahead, very far up: the picture shows the vanishing point.
    up = up_direction(7.0, -9.0)
    (seen,) = room.project(np.array([[0.0, -1e7, 3.0]]))  # tilted down, the lower one is ahead
    flat = room.view().plane(seen)
    assert flat == pytest.approx(up[:2] / up[2], abs=1e-4)


@pytest.mark.parametrize(
    ("lines", "part"),
    [
        ([], "at least one"),
        ([PlumbLine(top_px=(10, 10), bottom_px=(10, 50))], "only 40 pixels"),
        ([PlumbLine(top_px=(10, 600), bottom_px=(10, 50))], "upper end first"),
        ([PlumbLine(top_px=(10, 100), bottom_px=(600, 110))], "lean by"),
        ([PlumbLine(top_px=(10, 100), bottom_px=(10, 900))], "outside the picture"),
        ([PlumbLine(top_px=(math.nan, 100), bottom_px=(10, 300))], "not a number"),
    ],
)
def test_marks_that_cannot_be(lines: list[PlumbLine], part: str) -> None:
    with pytest.raises(InputError, match=part):
        orientation_from_plumb_lines(lines, PinholeView(width_px=1280, height_px=720))


def test_a_lens_of_another_picture_size_is_refused() -> None:
    lens = Room().view().lens
    with pytest.raises(InputError, match="Calibrate at this size"):
        PinholeView(width_px=640, height_px=480, lens=lens)


def mirrored(line: PlumbLine) -> PlumbLine:
    return PlumbLine(
        top_px=(1279 - line.top_px[0], line.top_px[1]),
        bottom_px=(1279 - line.bottom_px[0], line.bottom_px[1]),
    )


@settings(max_examples=60, deadline=None)
@given(roll=st.floats(-8, 8), tilt=st.floats(-9, 9), apart=st.floats(0.45, 0.8))
def test_the_mirror_image_has_the_opposite_roll_and_the_same_tilt(
    roll: float, tilt: float, apart: float
) -> None:
    room = Room(roll_deg=roll, tilt_deg=tilt)
    lines = uprights(room, -apart, apart, error_px=0.5)
    inside = all(0 <= x <= 1279 and 0 <= y <= 719 for line in lines for x, y in ends(line))
    if not inside:
        return
    straight: CameraOrientation = orientation_from_plumb_lines(lines, room.view())
    reversed_view = orientation_from_plumb_lines([mirrored(line) for line in lines], room.view())
    assert reversed_view.roll_deg == pytest.approx(-straight.roll_deg, abs=1e-6)
    assert reversed_view.tilt_deg == pytest.approx(straight.tilt_deg, abs=1e-6)


def ends(line: PlumbLine) -> tuple[tuple[float, float], tuple[float, float]]:
    return line.top_px, line.bottom_px
