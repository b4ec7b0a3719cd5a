"""The perspective solve on a body built to its own assumptions: it must give exact azimuths."""

import math

import numpy as np
import pytest

from measure.domain.acquisition import BodySetup, CameraSetup, LensProfile, Setup
from measure.domain.landmarks import LANDMARKS, Landmark, Side, arm
from measure.domain.tracks import Track
from measure.kinematics.keypoints import arm_keypoints
from measure.kinematics.rotation import (
    ELBOW_BEARING_DEG,
    ELBOW_OFFSET,
    ELBOW_TO_HAND,
    TURN_SHARE,
    USUAL_ARM,
    USUAL_FOREARM,
    focal_px,
    rotation_of,
    trunk_turn_deg,
)
from measure.kinematics.rotation_phases import rotation_phases, zero_azimuth_deg
from measure.video.sampling import COARSE_HZ

WIDTH, HEIGHT = 640, 480
FOCAL = (WIDTH / 2) / math.tan(math.radians(65 / 2))
DISTANCE = 4.5  # trunk lengths
TURN = 45.0
FACING_FRAMES = 10


def project(places, side):
    """Camera places (x to the measured side, y down, depth) to pixels."""
    mirror = 1 if side is Side.LEFT else -1
    u = places[..., 0] / places[..., 2] * mirror
    v = places[..., 1] / places[..., 2]
    return np.stack([u * FOCAL + WIDTH / 2, v * FOCAL + HEIGHT / 2], axis=-1)


def rotation_track(azimuths_deg, side, forearm=USUAL_FOREARM, hung=USUAL_ARM):
    """Facing phase with an arm of the length `hung`, then a turned trunk at each azimuth."""
    own, other = arm(side), arm(side.other)
    depth = DISTANCE - ELBOW_OFFSET * math.sin(math.radians(ELBOW_BEARING_DEG + TURN_SHARE * TURN))
    frames = []
    for azimuth in [None] * FACING_FRAMES + list(azimuths_deg):
        places = np.tile(np.array([0.0, 0.0, DISTANCE]), (LANDMARKS, 1))
        half = 0.33 * (1.0 if azimuth is None else math.cos(math.radians(TURN)))
        for marks, sign in ((own, 1), (other, -1)):
            places[marks.shoulder, :2] = sign * half, -0.5
            places[marks.hip, :2] = sign * 0.7 * half, 0.5
            places[marks.wrist, :2] = sign * half, 0.6
        elbow = np.array([half + 0.05, 0.05, depth])
        places[own.elbow] = elbow
        if azimuth is None:
            places[own.elbow] = half, hung / 2 - 0.5, DISTANCE
            places[own.wrist] = half, hung - 0.5, DISTANCE
        else:
            angle = math.radians(azimuth)
            ahead = np.array([math.sin(angle), 0.0, -math.cos(angle)])
            places[own.wrist] = elbow + forearm * ahead
            for mark in (own.thumb, own.index, own.pinky):
                places[mark] = elbow + ELBOW_TO_HAND * forearm / USUAL_FOREARM * ahead
        places[Landmark.NOSE, 1] = -0.9
        frames.append(project(places, side))
    n = len(frames)
    return Track(
        time_s=np.arange(n) / COARSE_HZ,
        points_px=np.stack(frames),
        visibility=np.ones((n, LANDMARKS)),
        presence=np.ones((n, LANDMARKS)),
        state=np.zeros(n, dtype=np.int64),
        people=np.ones(n, dtype=np.int64),
        width_px=WIDTH,
        height_px=HEIGHT,
    )


AZIMUTHS = [-45.0] * 8 + [-20.0, 0.0, 20.0, 40.0] + [55.0] * 10


def solve(track, side, setup=None):
    keypoints = arm_keypoints(track, side)
    facing = np.arange(len(track)) < FACING_FRAMES
    return rotation_of(keypoints, facing, ~facing, setup or Setup())


@pytest.mark.parametrize("side", list(Side))
def test_azimuths_are_solved_exactly(side):
    rotation = solve(rotation_track(AZIMUTHS, side), side)
    assert rotation.turn_deg == pytest.approx(TURN, abs=1e-6)
    np.testing.assert_allclose(rotation.azimuth_deg[FACING_FRAMES:], AZIMUTHS, atol=1e-6)


def test_a_long_arm_is_known_by_how_it_hung():
    track = rotation_track(AZIMUTHS, Side.LEFT, 0.60, hung=USUAL_ARM * 0.60 / USUAL_FOREARM)
    own = solve(track, Side.LEFT)
    np.testing.assert_allclose(own.azimuth_deg[FACING_FRAMES:], AZIMUTHS, atol=1e-6)


def test_a_known_forearm_replaces_the_one_that_hung():
    track = rotation_track(AZIMUTHS, Side.LEFT, forearm=0.60)
    own = solve(track, Side.LEFT, Setup(body=BodySetup(forearm=0.60)))
    np.testing.assert_allclose(own.azimuth_deg[FACING_FRAMES:], AZIMUTHS, atol=1e-6)
    usual = solve(track, Side.LEFT)
    assert np.max(np.abs(usual.azimuth_deg[FACING_FRAMES:] - AZIMUTHS)) > 3


def test_an_arm_that_did_not_hang_in_sight_is_a_usual_one():
    track = rotation_track(AZIMUTHS, Side.LEFT)
    keypoints = arm_keypoints(track, Side.LEFT)
    facing = np.arange(len(track)) < FACING_FRAMES
    solved = rotation_of(keypoints, np.zeros_like(facing), ~facing, Setup())
    np.testing.assert_allclose(solved.azimuth_deg[FACING_FRAMES:], AZIMUTHS, atol=1e-6)


def test_focal_length_of_an_unknown_lens_belongs_to_the_long_side():
    assert focal_px(Setup(), 640, 480) == pytest.approx(FOCAL)
    assert focal_px(Setup(), 480, 640) == pytest.approx(FOCAL)
    lens = LensProfile(
        camera_name="bench",
        width_px=1280,
        height_px=720,
        focal_px=(900.0, 900.0),
        centre_px=(640.0, 360.0),
        distortion=(0.0,) * 5,
        reprojection_px=0.3,
        views=20,
    )
    assert focal_px(Setup(camera=CameraSetup(lens=lens)), 640, 360) == pytest.approx(450.0)


def test_the_turn_is_unknown_without_a_facing_stance():
    keypoints = arm_keypoints(rotation_track(AZIMUTHS, Side.LEFT), Side.LEFT)
    nothing = np.zeros(len(keypoints.time_s), dtype=bool)
    assert math.isnan(trunk_turn_deg(keypoints, nothing, ~nothing))


@pytest.mark.parametrize("side", list(Side))
def test_stances_and_zero_are_found(side):
    track = rotation_track(AZIMUTHS, side)
    phases = rotation_phases(arm_keypoints(track, side))
    expected = np.arange(len(track)) < FACING_FRAMES
    np.testing.assert_array_equal(phases.facing, expected)
    np.testing.assert_array_equal(phases.turned, ~expected)
    rotation = solve(track, side)
    assert zero_azimuth_deg(track.time_s, rotation.azimuth_deg, phases.turned) == pytest.approx(-45)


def test_no_raised_forearm_no_stance():
    track = rotation_track([], Side.LEFT)
    phases = rotation_phases(arm_keypoints(track, Side.LEFT))
    assert not phases.facing.any()
    assert not phases.turned.any()
    assert math.isnan(zero_azimuth_deg(track.time_s, np.full(len(track), np.nan), phases.turned))
