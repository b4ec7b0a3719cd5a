"""Lens profiles of virtual cameras with known optics, and the refusal of poor views."""

import dataclasses
import math
from collections.abc import Sequence

import cv2
import numpy as np
import pytest

from calibration.lens.board import BoardView, find_board
from calibration.lens.capture import ENOUGH_VIEWS
from calibration.lens.fit import (
    LensFit,
    LensFitProblem,
    corner_coverage,
    fit_lens,
    horizontal_field_of_view_deg,
)
from measure.kinematics.angles import direction_deg, plane_from_pixels, turn_deg
from measure.kinematics.camera_geometry import undistort_points
from tests.support.virtual_board import (
    EVERYWHERE,
    MORE,
    USUAL,
    BoardPose,
    VirtualCamera,
    photographs,
    poses,
    true_view,
)

#: 90 degrees wide, with the barrel distortion of such a lens.
WIDE = VirtualCamera(640, 480, 320.0, (318.0, 241.0), (-0.22, 0.06, 0.0, 0.0, -0.004))


def views_of(camera: VirtualCamera, error_px: float = 0.1) -> list[BoardView]:
    return [true_view(camera, pose, error_px) for pose in poses(camera, EVERYWHERE)]


def fitted(camera: VirtualCamera, views: Sequence[BoardView]) -> LensFit:
    return fit_lens(views, camera_name="virtual", width_px=camera.width, height_px=camera.height)


@pytest.mark.parametrize("camera", [USUAL, WIDE])
def test_photographs_of_the_board_give_the_lens_back(camera: VirtualCamera) -> None:
    views = [find_board(picture) for picture in photographs(camera)]
    fit = fitted(camera, [view for view in views if view is not None])
    assert fit.profile is not None, fit.sentence
    assert fit.profile.focal_px == pytest.approx((camera.focal, camera.focal), rel=0.01)
    assert fit.profile.centre_px == pytest.approx(camera.centre, abs=3)
    assert fit.reprojection_px < 0.3
    assert fit.focal_error < 0.005
    assert "Lens calculated from 16 views" in fit.sentence
    assert arm_error(camera, fit) < 0.5


def arm_error(camera: VirtualCamera, fit: LensFit) -> float:
    """Return the largest error of an arm's angle, read through the profile, over the picture.

    An arm of 60 cm turns about shoulders anywhere in the picture at 2 m; against the same arm
    seen by a perfect camera.
    """
    assert fit.profile is not None
    perfect = dataclasses.replace(camera, centre=(319.5, 239.5), distortion=(0, 0, 0, 0, 0))
    worst = 0.0
    for across in (-0.9, -0.4, 0.0, 0.4, 0.9):
        for turn in range(0, 360, 30):
            shoulder = np.array([across, -0.1, 2.0])
            wrist = shoulder + 0.6 * np.array(
                [math.cos(math.radians(turn)), math.sin(math.radians(turn)), 0]
            )
            seen = project(camera, np.stack([shoulder, wrist]))
            if not ((seen > 0) & (seen < [camera.width - 1, camera.height - 1])).all():
                continue
            read = undistort_points(seen, fit.profile)
            truth = project(perfect, np.stack([shoulder, wrist]))
            arms = plane_from_pixels(np.stack([read[1] - read[0], truth[1] - truth[0]]))
            worst = max(worst, abs(float(turn_deg(arms[1], arms[0]))))
    return worst


def project(camera: VirtualCamera, points: np.ndarray) -> np.ndarray:
    seen, _ = cv2.projectPoints(
        points, np.zeros(3), np.zeros(3), camera.matrix, np.array(camera.distortion)
    )
    return np.asarray(seen).reshape(-1, 2)


def test_without_the_profile_a_wide_lens_bends_the_arm() -> None:
    # What the profile is good for: the same arms read without it.
    shoulder, wrist = np.array([0.9, -0.1, 2.0]), np.array([1.4, 0.5, 2.0])
    seen = project(WIDE, np.stack([shoulder, wrist]))
    perfect = dataclasses.replace(WIDE, distortion=(0, 0, 0, 0, 0))
    straight = project(perfect, np.stack([shoulder, wrist]))
    error = direction_deg(plane_from_pixels(seen[1] - seen[0])) - direction_deg(
        plane_from_pixels(straight[1] - straight[0])
    )
    assert abs(float(error)) > 2


def test_a_third_radial_term_only_where_it_is_needed() -> None:
    usual, wide = fitted(USUAL, views_of(USUAL)), fitted(WIDE, views_of(WIDE))
    assert usual.profile is not None
    assert wide.profile is not None
    assert usual.profile.distortion[4] == 0
    assert wide.profile.distortion[4] != 0
    assert horizontal_field_of_view_deg(wide.profile) == pytest.approx(90, abs=0.5)


@pytest.mark.parametrize("error_px", [0.2, 0.4])
def test_an_accepted_focal_length_is_within_a_hundredth(error_px: float) -> None:
    """Corners found to 0.2 pixels all do; at 0.4 those whose fit is unsure are refused."""
    views = [true_view(USUAL, pose) for pose in poses(USUAL, MORE)[:ENOUGH_VIEWS]]
    for seed in range(6):
        random = np.random.default_rng(seed)
        noisy = [
            dataclasses.replace(
                view, points_px=view.points_px + random.normal(0, error_px, view.points_px.shape)
            )
            for view in views
        ]
        fit = fitted(USUAL, noisy)
        if error_px > 0.2 and fit.faults == (LensFitProblem.UNSURE_FOCAL,):
            continue
        assert fit.profile is not None
        assert fit.profile.focal_px == pytest.approx((500, 500), rel=0.01)


def in_one_corner() -> list[BoardView]:
    places = [(-0.7 + 0.02 * n, -0.7 + 0.02 * n) for n in range(16)]
    return [true_view(USUAL, pose, 0.1) for pose in poses(USUAL, places)]


def held_squarely() -> list[BoardView]:
    poses_ = [
        BoardPose(turn=(0.0, 0.0, 0.0), middle=(x * 260.0, y * 200.0, 600.0))
        for x in (-0.9, -0.3, 0.3, 0.9)
        for y in (-0.9, -0.3, 0.3, 0.9)
    ]
    return [true_view(USUAL, pose, 0.2) for pose in poses_]


def far_away() -> list[BoardView]:
    # The board so small that its perspective drowns in the noise of its corners.
    places = [(x, y) for y in (-0.9, -0.5, 0.0, 0.5, 0.9) for x in (-0.9, -0.5, 0.0, 0.5, 0.9)]
    far = [
        dataclasses.replace(pose, middle=tuple(np.array(pose.middle) * 4))
        for pose in poses(USUAL, places)
    ]
    return [true_view(USUAL, pose, 0.6) for pose in far]


def shaken() -> list[BoardView]:
    random = np.random.default_rng(5)
    return [
        dataclasses.replace(
            view, points_px=view.points_px + random.normal(0, 3, view.points_px.shape)
        )
        for view in views_of(USUAL)
    ]


@pytest.mark.parametrize(
    ("views", "fault", "part"),
    [
        ([], LensFitProblem.FEW_VIEWS, "Useful views of the board: 0."),
        (views_of(USUAL)[:7], LensFitProblem.FEW_VIEWS, "8 are needed"),
        (in_one_corner(), LensFitProblem.UNCOVERED, "lower right"),
        (held_squarely(), LensFitProblem.UNTILTED, "tilt it to the left"),
        (far_away(), LensFitProblem.UNSURE_FOCAL, "nearer and farther"),
        (shaken(), LensFitProblem.LARGE_ERROR, "hold it still"),
    ],
)
def test_poor_views_are_refused(views: list[BoardView], fault: LensFitProblem, part: str) -> None:
    fit = fitted(USUAL, views)
    assert fit.profile is None
    assert fault in fit.faults
    assert part in fit.sentence
    assert fit.sentence.startswith("No lens profile was created.")


def test_views_with_few_corners_or_all_on_a_line_do_not_count() -> None:
    whole = views_of(USUAL)[5]
    few = BoardView(ids=whole.ids[:7], points_px=whole.points_px[:7])
    row = whole.ids < 7
    line = BoardView(
        ids=np.repeat(whole.ids[row], 2), points_px=np.repeat(whole.points_px[row], 2, axis=0)
    )
    assert fitted(USUAL, [few, line] * 10).views == 0


def test_coverage_counts_cells_and_names_bare_quarters() -> None:
    view = BoardView(ids=np.arange(3), points_px=np.array([[0.0, 0.0], [639, 479], [639, 0]]))
    coverage = corner_coverage([view], 640, 480)
    assert coverage.cells.sum() == 3
    assert coverage.share == pytest.approx(3 / 24)
    assert len(coverage.bare_quarters) == 4
    outside = BoardView(ids=np.arange(1), points_px=np.array([[-5.0, 500.0]]))
    assert corner_coverage([outside], 640, 480).cells.sum() == 1
