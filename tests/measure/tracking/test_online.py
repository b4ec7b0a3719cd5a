"""Online tracking agrees with that over a whole clip."""

from dataclasses import replace

import numpy as np
import pytest

from measure.domain.landmarks import LANDMARKS, Side
from measure.domain.movements import Movement, View
from measure.domain.tracks import FrameState, PoseFrame
from measure.tracking.offline import track_subject
from measure.tracking.online import OnlineTracker
from tests.support.stick_figure import elevation_track, raise_and_hold

SIZE = (640, 480)
RATE_HZ = 15.0


def figure(n, *, at=0.5, trunk_px=110.0):
    """The landmarks of n frames of somebody standing at a place across the picture."""
    angles = np.resize(raise_and_hold(60.0, rate_hz=RATE_HZ), n)
    track = elevation_track(
        angles, Movement.ABDUCTION, Side.LEFT, View.FRONT, trunk_px=trunk_px, rate_hz=RATE_HZ
    )
    return track.points_px + np.array([(at - 0.5) * SIZE[0], 0.0])


def frames(*people):
    """Frames with these people; each is an array of landmarks with NaN where they are away."""
    result = []
    for n in range(len(people[0])):
        here = [one[n] for one in people if np.isfinite(one[n]).all()]
        points = np.array(here).reshape(len(here), LANDMARKS, 2)
        sure = np.full((len(here), LANDMARKS), 0.9)
        result.append(
            PoseFrame(index=n, time_s=n / RATE_HZ, points_px=points, visibility=sure, presence=sure)
        )
    return result


def away(points, start, end):
    points = points.copy()
    points[start:end] = np.nan
    return points


def compare(sequence, *, judged_from=20):
    """Follow both ways; return the share of equal states and of equal points where seen."""
    whole = track_subject(sequence, width_px=SIZE[0], height_px=SIZE[1])
    live = OnlineTracker(*SIZE)
    people = [live.add(frame) for frame in sequence]
    states = np.array([int(subject.state) for subject in people])
    for n, subject in enumerate(people):
        if subject.points_px is not None and whole.state[n] == FrameState.SEEN:
            np.testing.assert_array_equal(subject.points_px, whole.points_px[n])
        assert (subject.points_px is None) == (subject.state is not FrameState.SEEN)
    return float(np.mean(states[judged_from:] == whole.state[judged_from:])), states


def follow(sequence):
    live = OnlineTracker(*SIZE)
    return np.array([int(live.add(frame).state) for frame in sequence])


def test_one_person_is_seen_from_the_first_frame_on():
    same, states = compare(frames(figure(90)), judged_from=0)
    assert same == 1.0
    assert set(states) == {FrameState.SEEN}


def test_the_larger_central_person_is_followed_and_the_other_counted():
    own, other = figure(90), figure(90, at=0.85, trunk_px=70.0)
    sequence = frames(other, own)
    same, _ = compare(sequence)
    live = OnlineTracker(*SIZE)
    assert same == 1.0
    assert [live.add(frame).people for frame in sequence][-1] == 2


def test_somebody_who_stays_while_the_person_leaves_is_not_measured():
    own, other = away(figure(120), 50, 120), figure(120, at=0.85, trunk_px=80.0)
    same, states = compare(frames(own, other))
    assert same > 0.97
    assert FrameState.SEEN not in states[52:]
    assert FrameState.OTHER_PERSON in states[52:]


def test_the_person_comes_back_to_the_same_place():
    own = away(figure(200), 60, 110)
    _, states = compare(frames(own))
    assert set(states[61:109]) == {FrameState.NOBODY}
    assert set(states[125:]) == {FrameState.SEEN}


def test_somebody_elsewhere_soon_after_is_not_the_person():
    own, other = away(figure(200), 60, 200), away(figure(200, at=0.8), 0, 85)
    _, states = compare(frames(own, other))
    assert FrameState.SEEN not in states[85:]


def test_who_comes_alone_after_a_while_is_measured_wherever_they_stand():
    own, other = away(figure(200), 60, 200), away(figure(200, at=0.8), 0, 110)
    states = follow(frames(own, other))
    assert FrameState.SEEN not in states[61:130]
    assert set(states[140:]) == {FrameState.SEEN}


def test_who_was_there_before_the_person_left_is_not_measured_later():
    own, helper = away(figure(300), 60, 300), figure(300, at=0.85, trunk_px=80.0)
    assert FrameState.SEEN not in follow(frames(own, helper))[62:]


def test_who_only_passed_by_does_not_keep_the_place():
    passing, own = away(figure(100, at=0.2), 12, 100), away(figure(100), 0, 30)
    states = follow(frames(passing, own))
    assert set(states[50:]) == {FrameState.SEEN}


def test_after_a_long_absence_whoever_comes_is_measured():
    live = OnlineTracker(*SIZE)
    for frame in frames(figure(60)):
        live.add(frame)
    late = [replace(frame, time_s=frame.time_s + 300.0) for frame in frames(figure(60, at=0.75))]
    states = [live.add(frame).state for frame in late]
    assert states[-1] is FrameState.SEEN


def test_a_damaged_frame_is_marked():
    live = OnlineTracker(*SIZE)
    none = np.empty((0, LANDMARKS))
    frame = PoseFrame(
        index=0,
        time_s=0.0,
        points_px=np.empty((0, LANDMARKS, 2)),
        visibility=none,
        presence=none,
        readable=False,
    )
    assert live.add(frame).state is FrameState.UNREADABLE


@pytest.mark.parametrize("shrink", [0.0, 0.01])
def test_a_skeleton_without_size_is_nobody(shrink):
    flat = figure(30) * shrink
    live = OnlineTracker(*SIZE)
    assert {live.add(frame).state for frame in frames(flat)} == {FrameState.NOBODY}


def test_an_hour_takes_no_more_memory_than_a_minute():
    live = OnlineTracker(*SIZE)
    sequence = frames(figure(45), figure(45, at=0.85, trunk_px=70.0))
    for round_number in range(30):
        for frame in sequence:
            live.add(replace(frame, time_s=frame.time_s + 3.0 * round_number))
    kept = [detection for tracklet in live._linker.tracklets for detection in tracklet.detections]
    assert len(kept) <= 2 * 41 * RATE_HZ
    assert len(live._own) <= 41 * RATE_HZ
