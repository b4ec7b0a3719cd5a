from dataclasses import replace

import numpy as np
import pytest

from measure.domain.landmarks import Landmark, Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.domain.reasons import Reason
from measure.domain.tracks import FrameState
from measure.kinematics.fusion import FusedSeries
from measure.kinematics.keypoints import arm_keypoints
from measure.trials.elevation_gates import elevation_gates, shrug_gate
from measure.trials.quality_gates import person_gate, rate_gate, value_gate
from tests.support.stick_figure import elevation_track, raise_and_hold

SERIES = raise_and_hold(110)
REST = np.arange(len(SERIES)) < 8
HOLD = SERIES > 109.9


def gates(
    track, movement=Movement.ABDUCTION, side=Side.LEFT, view=View.FRONT, elevation_deg=np.nan
):
    """Return what the gates say of a track, its own values set aside."""
    keypoints = arm_keypoints(track, side)
    values = np.full(len(track), elevation_deg)
    fused = FusedSeries(keypoints=keypoints, per_pass=values[None], value=values)
    return elevation_gates(fused, MeasurementTask(movement, side, view), REST, HOLD)


def standing(**changes):
    return elevation_track(SERIES, Movement.ABDUCTION, Side.LEFT, View.FRONT, **changes)


def moved(track, mark, frames, place):
    points = track.points_px.copy()
    points[np.ix_(np.flatnonzero(frames), [mark])] = place
    return replace(track, points_px=points)


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize(
    ("movement", "view"),
    [
        (Movement.ABDUCTION, View.FRONT),
        (Movement.ABDUCTION, View.BACK),
        (Movement.FLEXION, View.SIDE),
        (Movement.EXTENSION, View.SIDE),
    ],
)
def test_a_perfect_trial_passes_without_a_word(movement, view, side):
    track = elevation_track(SERIES / 3, movement, side, view)
    result = gates(track, movement, side, view)
    assert result.refused_for == ()
    assert result.notes == ()


@pytest.mark.parametrize(
    ("lean", "noted", "refused"),
    [(0, False, False), (4, False, False), (7, True, False), (13, False, True)],
)
def test_a_leaning_trunk(lean, noted, refused):
    result = gates(standing(lean_deg=np.where(HOLD, lean, 0)))
    assert (Reason.TRUNK_LEAN in result.notes) == noted
    assert (Reason.TRUNK_LEAN in result.refused_for) == refused


@pytest.mark.parametrize(
    ("bend", "noted", "refused"),
    [
        (0, False, False),
        (25, False, False),  # straight arms of real people are seen like this
        (35, True, False),
        (50, False, True),
    ],
)
def test_a_bent_elbow(bend, noted, refused):
    result = gates(standing(elbow_bend_deg=np.where(HOLD, bend, 0)))
    assert (Reason.ELBOW_BENT in result.notes) == noted
    assert (Reason.ELBOW_BENT in result.refused_for) == refused


def test_a_hand_beyond_the_edge_is_out_of_the_picture():
    result = gates(moved(standing(), Landmark.LEFT_WRIST, HOLD, (300, -25)))
    assert Reason.OUT_OF_PICTURE in result.refused_for


def test_hips_below_the_picture_are_out_of_it():
    track = standing(trunk_px=260)
    points = track.points_px.copy()
    points[:, [Landmark.LEFT_HIP, Landmark.RIGHT_HIP], 1] = 495
    assert Reason.OUT_OF_PICTURE in gates(replace(track, points_px=points)).refused_for


@pytest.mark.parametrize("value", [0.0, 0.1, np.nan])
def test_points_seen_unsurely_or_who_knows_how_are_hidden(value):
    track = standing()
    presence = track.presence.copy()
    presence[:, Landmark.LEFT_ELBOW] = value
    hidden = Reason.HIDDEN in gates(replace(track, presence=presence)).refused_for
    assert hidden


def test_flexion_from_the_front_is_the_wrong_view():
    result = gates(standing(), movement=Movement.FLEXION, view=View.SIDE)
    assert Reason.WRONG_VIEW in result.refused_for


def test_the_far_arm_is_told_by_where_the_nose_points():
    near_right = elevation_track(SERIES, Movement.FLEXION, Side.RIGHT, View.SIDE)
    result = gates(near_right, Movement.FLEXION, Side.LEFT, View.SIDE)
    assert Reason.FAR_ARM in result.refused_for


def test_a_tracker_that_believes_in_a_turned_trunk_is_refused():
    track = standing()
    points = track.points_px.copy()
    frames = np.ix_(np.flatnonzero(HOLD), [Landmark.RIGHT_SHOULDER])
    points[frames] = points[np.ix_(np.flatnonzero(HOLD), [Landmark.LEFT_SHOULDER])] + [-20, 0]
    result = gates(replace(track, points_px=points))
    assert Reason.SIDES_EXCHANGED in result.refused_for


@pytest.mark.parametrize("roll", [90, 180, -90])
def test_a_turned_picture_is_noticed(roll):
    result = gates(standing(roll_deg=roll))
    assert Reason.TURNED_PICTURE in result.refused_for


@pytest.mark.parametrize(
    ("share", "reason"), [(0.75, Reason.OUT_OF_PLANE), (1.4, Reason.LIMB_LENGTH)]
)
def test_an_arm_that_changes_its_length(share, reason):
    track = standing()
    points = track.points_px.copy()
    shoulder = points[:, [Landmark.LEFT_SHOULDER]]
    for mark in (Landmark.LEFT_ELBOW, Landmark.LEFT_WRIST):
        changed = shoulder + share * (points[:, [mark]] - shoulder)
        points[HOLD, mark] = changed[HOLD, 0]
    assert reason in gates(replace(track, points_px=points)).refused_for


@pytest.mark.parametrize(
    ("state", "reason"),
    [
        (FrameState.NOBODY, Reason.PERSON_LOST),
        (FrameState.OTHER_PERSON, Reason.OTHER_PERSON),
        (FrameState.AMBIGUOUS, Reason.OTHER_PERSON),
        (FrameState.UNREADABLE, Reason.UNREADABLE_FRAMES),
    ],
)
@pytest.mark.parametrize(("share", "refused"), [(0.1, False), (0.5, True)])
def test_frames_without_the_person(state, reason, share, refused):
    track = standing()
    states = track.state.copy()
    states[: int(share * len(states))] = state
    two = np.full(len(track), 2, dtype=np.int64)
    assert (reason in person_gate(replace(track, state=states, people=two)).refused_for) == refused


@pytest.mark.parametrize("state", [FrameState.OTHER_PERSON, FrameState.AMBIGUOUS])
def test_somebody_alone_who_was_not_followed_moved_too_fast(state):
    track = standing()
    states = track.state.copy()
    states[: len(states) // 2] = state
    assert person_gate(replace(track, state=states)).refused_for == (Reason.MOVED_FAST,)


def test_an_empty_room_is_nobody():
    track = standing()
    empty = np.full(len(track), int(FrameState.NOBODY), dtype=np.int64)
    assert person_gate(replace(track, state=empty)).refused_for == (Reason.NOBODY,)
    assert person_gate(track.frames(slice(0, 0))).refused_for == (Reason.NOBODY,)


def test_a_second_person_is_noted_and_a_slow_source_refused():
    track = standing()
    two = replace(track, people=np.full(len(track), 2, dtype=np.int64))
    assert person_gate(two).notes == (Reason.TWO_PEOPLE,)
    slow = replace(track, time_s=track.time_s * 2)
    assert rate_gate(slow).refused_for == (Reason.LOW_FRAME_RATE,)
    assert rate_gate(track).refused_for == ()


@pytest.mark.parametrize(("rise_px", "noted"), [(6, False), (12, True)])
def test_a_shrug_is_only_noted(rise_px, noted):
    track = standing()
    points = track.points_px.copy()
    points[HOLD, Landmark.LEFT_SHOULDER, 1] -= rise_px  # of 52 pixels up to the ear
    result = gates(replace(track, points_px=points))
    assert (Reason.SHRUG in result.notes) == noted
    assert Reason.SHRUG not in result.refused_for


def test_a_shoulder_rises_with_a_high_arm_without_a_note():
    keypoints = arm_keypoints(standing(), Side.LEFT)
    raised = replace(keypoints, shoulder=keypoints.shoulder + np.where(HOLD, 15, 0)[:, None])
    assert shrug_gate(raised, REST, HOLD, 20).notes == (Reason.SHRUG,)
    assert shrug_gate(raised, REST, HOLD, 150).notes == ()


@pytest.mark.parametrize(
    ("width", "noted", "refused"),
    [(0.66, False, False), (0.47, True, False), (0.40, False, True), (0.2, False, True)],
)
def test_a_turned_trunk_is_told_by_narrow_shoulders(width, noted, refused):
    track = standing()
    points = track.points_px.copy()
    middle = points[:, [Landmark.LEFT_SHOULDER, Landmark.RIGHT_SHOULDER], 0].mean(axis=1)
    for mark in (Landmark.LEFT_SHOULDER, Landmark.RIGHT_SHOULDER):
        points[:, mark, 0] = middle + width / 0.66 * (points[:, mark, 0] - middle)
    narrower = replace(track, points_px=points)
    raised, hanging = gates(narrower, elevation_deg=110), gates(narrower, elevation_deg=8)
    assert (Reason.TRUNK_OBLIQUE in raised.notes) == noted
    assert Reason.TRUNK_OBLIQUE not in hanging.notes
    for result in (raised, hanging):
        assert (Reason.TRUNK_OBLIQUE in result.refused_for) == refused


@pytest.mark.parametrize(
    ("aside", "elevation_deg", "noted", "refused"),
    [
        (0.1, 110, False, False),
        (0.2, 110, True, False),
        (0.2, 8, False, False),
        (0.28, 110, False, True),
        (0.28, 8, False, False),
        (0.33, 8, False, True),
        (-0.33, 8, False, True),
    ],
)
def test_a_turned_trunk_is_told_by_a_nose_beside_the_shoulders_middle(
    aside, elevation_deg, noted, refused
):
    track = standing()
    points = track.points_px.copy()
    points[:, Landmark.NOSE, 0] += aside * 150
    result = gates(replace(track, points_px=points), elevation_deg=elevation_deg)
    assert (Reason.TRUNK_OBLIQUE in result.notes) == noted
    assert (Reason.TRUNK_OBLIQUE in result.refused_for) == refused


@pytest.mark.parametrize(("share", "noted"), [(0.6, False), (0.3, True)])
def test_a_forearm_that_points_at_the_camera_is_a_bent_elbow(share, noted):
    track = standing()
    points = track.points_px.copy()
    elbow = points[:, Landmark.LEFT_ELBOW]
    points[:, Landmark.LEFT_WRIST] = elbow + share * (points[:, Landmark.LEFT_WRIST] - elbow)
    result = gates(replace(track, points_px=points))
    assert (Reason.ELBOW_BENT in result.notes) == noted
    assert result.refused_for == ()


@pytest.mark.parametrize(("other_deg", "noted"), [(0, False), (30, False), (60, True), (170, True)])
def test_the_other_arm_raised_is_noted_and_no_refusal(other_deg, noted):
    track = standing()
    points = track.points_px.copy()
    shoulder = points[HOLD, Landmark.RIGHT_SHOULDER]
    angle = np.radians(other_deg)
    points[HOLD, Landmark.RIGHT_ELBOW] = shoulder + 80 * np.array([-np.sin(angle), np.cos(angle)])
    result = gates(replace(track, points_px=points))
    assert (Reason.OTHER_ARM_RAISED in result.notes) == noted
    assert result.refused_for == ()


@pytest.mark.parametrize(
    ("visibility", "noted", "refused"),
    [(0.5, False, False), (0.25, True, False), (0.15, False, True)],
)
def test_an_elbow_seen_badly_is_noted_before_it_is_refused(visibility, noted, refused):
    track = standing()
    seen = track.visibility.copy()
    seen[:, Landmark.LEFT_ELBOW] = visibility
    result = gates(replace(track, visibility=seen))
    assert (Reason.HIDDEN in result.notes) == noted
    assert (Reason.HIDDEN in result.refused_for) == refused


def test_a_far_arm_is_not_called_hidden():
    track = elevation_track(SERIES, Movement.FLEXION, Side.RIGHT, View.SIDE)
    seen = track.visibility.copy()
    seen[:, Landmark.LEFT_WRIST] = 0.0
    result = gates(replace(track, visibility=seen), Movement.FLEXION, Side.LEFT, View.SIDE)
    assert Reason.FAR_ARM in result.refused_for
    assert Reason.HIDDEN not in result.refused_for


@pytest.mark.parametrize(
    ("movement", "value", "refused"),
    [
        (Movement.ABDUCTION, 185, False),
        (Movement.ABDUCTION, 195, True),
        (Movement.EXTENSION, 95, True),
        (Movement.HAND_BEHIND_BACK, 1.05, True),
        (Movement.EXTERNAL_ROTATION, -30, False),
    ],
)
def test_a_value_beyond_what_a_shoulder_can_do_is_refused(movement, value, refused):
    assert (value_gate(movement, value).refused_for == (Reason.IMPOSSIBLE_VALUE,)) == refused
