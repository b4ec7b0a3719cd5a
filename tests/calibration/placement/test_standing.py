"""What a standing person tells about the camera, in virtual rooms."""

import numpy as np
import pytest

from calibration.placement.standing import StandingEstimate, WithUncertainty, estimate_from_standing
from measure.domain.landmarks import Landmark
from measure.domain.standing_pose import Neutral, facing_turn_deg
from measure.domain.tracks import FrameState, Track
from measure.errors import InputError
from measure.kinematics.neutral_pose import median_points, neutral_of
from tests.support.virtual_room import Room, standing


def stand(room: Room, track: Track, stature_m: float | None = 1.72) -> StandingEstimate:
    estimate = estimate_from_standing(track, room.view(), stature_m)
    assert isinstance(estimate, StandingEstimate), estimate
    return estimate


def value(rough: WithUncertainty | None) -> float:
    assert rough is not None
    return rough.value


def held(rough: WithUncertainty | None, truth: float) -> bool:
    assert rough is not None
    return abs(rough.value - truth) <= rough.half


@pytest.mark.parametrize("roll", [-6.0, 0.0, 3.0])
@pytest.mark.parametrize("tilt", [-6.0, 0.0, 1.5])
@pytest.mark.parametrize("distance", [2.8, 3.4])
def test_a_person_of_usual_proportions_gives_the_camera_back(
    roll: float, tilt: float, distance: float
) -> None:
    room = Room(roll_deg=roll, tilt_deg=tilt, height_m=1.1, focal=900.0)
    estimate = stand(room, standing(room, distance_m=distance))
    assert estimate.roll_deg.value == pytest.approx(roll, abs=0.3)
    assert value(estimate.tilt_deg) == pytest.approx(tilt, abs=0.3)
    assert value(estimate.distance_m) == pytest.approx(distance, rel=0.05)
    assert value(estimate.height_m) == pytest.approx(1.1, abs=0.05)


def test_the_interval_holds_what_proportions_and_noise_do() -> None:
    room = Room(tilt_deg=-4.0, height_m=0.9, focal=900.0)
    shares = {Landmark.LEFT_HIP: 0.532, Landmark.RIGHT_HIP: 0.532}
    estimate = stand(room, standing(room, shares=shares, error_px=2.0))
    assert held(estimate.tilt_deg, -4.0)
    assert held(estimate.distance_m, 3.0)
    assert held(estimate.height_m, 0.9)


def test_an_unknown_lens_and_stature_widen_the_interval() -> None:
    for focal in (800.0, 1000.0, 1200.0):
        room = Room(tilt_deg=2.0, height_m=1.0, focal=focal)
        track = standing(room, distance_m=3.6, stature_m=1.75)
        estimate = estimate_from_standing(track, room.unknown())
        assert isinstance(estimate, StandingEstimate)
        assert held(estimate.tilt_deg, 2.0)
        assert held(estimate.distance_m, 3.6)
        assert held(estimate.height_m, 1.0)
    certain = stand(Room(), standing(Room(), distance_m=3.6, stature_m=1.75), 1.75)
    assert certain.distance_m is not None
    assert isinstance(estimate, StandingEstimate)
    assert estimate.distance_m is not None
    assert certain.distance_m.half < estimate.distance_m.half


def test_without_legs_only_the_roll_is_told() -> None:
    room = Room(roll_deg=4.0)
    track = standing(room)
    points = track.points_px.copy()
    points[:, [Landmark.LEFT_ANKLE, Landmark.LEFT_KNEE]] = np.nan
    legless = Track(
        time_s=track.time_s,
        points_px=points,
        visibility=track.visibility,
        presence=track.presence,
        state=track.state,
        people=track.people,
        width_px=track.width_px,
        height_px=track.height_px,
    )
    estimate = stand(room, legless)
    assert estimate.roll_deg.value == pytest.approx(4.0, abs=0.3)
    assert estimate.tilt_deg is None
    assert estimate.distance_m is None


def test_feet_below_the_picture_are_a_guess_and_do_not_count() -> None:
    room = Room(height_m=1.3)  # close by, the feet are out of the picture
    track = standing(room, distance_m=2.4)
    assert float(track.points_px[0, Landmark.LEFT_ANKLE, 1]) > room.height
    estimate = stand(room, track)
    assert estimate.tilt_deg is None
    assert estimate.roll_deg.value == pytest.approx(0.0, abs=0.3)


def test_statures_that_cannot_be() -> None:
    with pytest.raises(InputError, match="not a possible height"):
        estimate_from_standing(standing(Room()), Room().view(), 172)


def with_state(track: Track, state: FrameState) -> Track:
    return Track(
        time_s=track.time_s,
        points_px=track.points_px,
        visibility=track.visibility,
        presence=track.presence,
        state=np.full(len(track), state, dtype=np.int64),
        people=track.people,
        width_px=track.width_px,
        height_px=track.height_px,
    )


def test_a_neutral_needs_a_person_seen_near_and_still() -> None:
    room = Room()
    good = neutral_of(standing(room))
    assert isinstance(good, Neutral)
    assert good.frames == 8
    nobody = neutral_of(with_state(standing(room), FrameState.NOBODY))
    assert isinstance(nobody, str)
    assert "not seen" in nobody
    short = neutral_of(standing(room, frames=3))
    assert isinstance(short, str)
    far = neutral_of(standing(room, distance_m=20.0))
    assert isinstance(far, str)
    assert "Step closer" in far
    walking = standing(room)
    drift = np.linspace(0, 120, len(walking))[:, np.newaxis, np.newaxis] * [1.0, 0.0]
    moved = Track(
        time_s=walking.time_s,
        points_px=walking.points_px + drift,
        visibility=walking.visibility,
        presence=walking.presence,
        state=walking.state,
        people=walking.people,
        width_px=walking.width_px,
        height_px=walking.height_px,
    )
    said = neutral_of(moved)
    assert isinstance(said, str)
    assert "Stand still" in said


@pytest.mark.parametrize("turn", [0.0, 45.0, 90.0, 135.0, 180.0])
def test_the_turn_from_the_shoulders_width(turn: float) -> None:
    # Far away, where perspective does not matter; the shoulders are 0.68 of the trunk.
    room = Room(focal=4000.0)
    estimate = neutral_of(standing(room, distance_m=12.0, turn_deg=turn))
    assert isinstance(estimate, Neutral)
    assert facing_turn_deg(estimate.width_over_trunk, 0.196 / 0.289) == pytest.approx(turn, abs=2.0)


def test_medians_are_of_the_frames_that_saw_the_person() -> None:
    track = standing(Room(), frames=9, error_px=1.0)
    places = median_points(track)
    assert places[Landmark.LEFT_HIP][0] == pytest.approx(
        float(np.median(track.points_px[:, Landmark.LEFT_HIP, 0]))
    )
    assert Landmark.NOSE not in places
