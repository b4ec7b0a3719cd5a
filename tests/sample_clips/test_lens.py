"""Points fall on the pixels that a ruler on paper gives."""

import numpy as np
import pytest

from sample_clips.lens import fitting_lens, place_lens
from sample_clips.scenario import Camera

#: 90 degrees wide: the focal length is half the width, 320 pixels.
SQUARE_ON = Camera(hfov_deg=90, distance_m=2)


@pytest.mark.parametrize(
    ("point", "pixel"),
    [
        ((0, 0, 1), (320, 240)),
        ((1, 0, 1), (480, 240)),
        ((0, 0, 2), (320, 80)),
        ((0, 2, 2), (320, 160)),
        ((-1, 2, 0), (240, 320)),
    ],
)
def test_pinhole(point: tuple[float, float, float], pixel: tuple[float, float]) -> None:
    lens = place_lens(SQUARE_ON, 1.0)
    assert lens.project(np.array([point]))[0] == pytest.approx(pixel)


def test_behind_the_camera_is_missing() -> None:
    assert np.isnan(place_lens(SQUARE_ON, 1.0).project(np.array([[0.0, -3.0, 1.0]]))).all()


def test_aim_holds_whatever_the_pitch() -> None:
    for pitch_deg in (-8, 0, 8):
        lens = place_lens(Camera(pitch_deg=pitch_deg, distance_m=2), 1.3)
        assert lens.project(np.array([[0, 0, 1.3]]))[0] == pytest.approx((320, 240))


def test_camera_that_looks_up_stands_lower() -> None:
    assert place_lens(Camera(pitch_deg=8), 1.3).position[2] < 1.3


def test_positive_roll_turns_the_picture_clockwise() -> None:
    lens = place_lens(Camera(hfov_deg=90, distance_m=2, roll_deg=90), 1.0)
    assert lens.project(np.array([[0, 0, 2.0]]))[0] == pytest.approx((480, 240))


def test_person_stands_aside() -> None:
    lens = place_lens(Camera(hfov_deg=90, distance_m=2, aside_m=0.5), 1.0)
    assert lens.project(np.array([[0, 0, 1.0]]))[0] == pytest.approx((400, 240))


def test_barrel_draws_the_border_inwards() -> None:
    straight = place_lens(SQUARE_ON, 1.0)
    bent = place_lens(Camera(hfov_deg=90, distance_m=2, barrel=0.06), 1.0)
    point = np.array([[1.5, 0, 1.8]])
    middle = np.array([320, 240])
    before, after = straight.project(point)[0] - middle, bent.project(point)[0] - middle
    radius_squared = (after**2).sum() / 320**2
    assert before == pytest.approx(after * (1 + 0.06 * radius_squared))
    assert np.linalg.norm(after) < np.linalg.norm(before)


def test_bending_a_straight_rendering_agrees_with_the_projection() -> None:
    lens = place_lens(Camera(hfov_deg=80, distance_m=2, barrel=0.05), 1.0)
    point = np.array([[0.9, 0.1, 1.5]])
    x, y = lens.project(point)[0]
    source = lens.source_pixels()
    assert source is not None
    row, column = divmod(int(source[int(y), int(x)]), lens.width)
    seen = (point[0] - lens.position) @ lens.axes.T
    straight = seen[:2] / seen[2] * lens.focal_px / lens.zoom + np.array([320, 240])
    assert (column + 0.5, row + 0.5) == pytest.approx(tuple(straight), abs=1.5)


def test_a_plain_lens_needs_no_bending() -> None:
    assert place_lens(SQUARE_ON, 1.0).source_pixels() is None


def test_fitting_puts_points_about_the_middle() -> None:
    points = np.array([[0, 0, 0.9], [0, 0, 2.1]])
    lens = fitting_lens(Camera(pitch_deg=6, distance_m=2.5), points)
    assert lens is not None
    pixels = lens.project(points)
    assert pixels[:, 1].mean() == pytest.approx(240, abs=2)


def test_too_near_does_not_fit() -> None:
    points = np.array([[0, 0, 0.1], [0, 0, 2.5]])
    assert fitting_lens(Camera(distance_m=1.0), points) is None
