"""What spoils this moment, on a stick figure."""

from dataclasses import replace

import numpy as np
import pytest

from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.domain.reasons import Reason
from measure.domain.tracks import FrameState
from measure.live.frame_quality import recent_flags, visibility_score
from measure.trials.scan import scan_for_trials
from tests.support.stick_figure import elevation_track, raise_and_hold

SERIES = raise_and_hold(100.0)[:30]


def now(track, movement=Movement.FLEXION, side=Side.RIGHT, view=View.SIDE):
    return recent_flags(scan_for_trials(track, MeasurementTask(movement, side, view)))


def track_of(series=SERIES, movement=Movement.FLEXION, view=View.SIDE, **more):
    return elevation_track(series, movement, Side.RIGHT, view, trunk_px=110, **more)


def test_a_good_moment_has_no_doubts():
    assert now(track_of()) == ()
    assert now(track_of(np.zeros(3))) == ()


@pytest.mark.parametrize(
    ("more", "reason"),
    [
        ({"elbow_bend_deg": np.where(np.arange(30) > 22, 50.0, 0.0)}, Reason.ELBOW_BENT),
        ({"lean_deg": np.where(np.arange(30) > 22, 15.0, 0.0)}, Reason.TRUNK_LEAN),
    ],
)
def test_what_goes_wrong_now_is_named_first(more, reason):
    assert now(track_of(**more))[0] is reason


def test_what_went_wrong_earlier_is_over():
    bend = np.where(np.arange(30) < 15, 50.0, 0.0)
    assert Reason.ELBOW_BENT not in now(track_of(elbow_bend_deg=bend))


def test_a_person_out_of_the_picture_is_told():
    track = track_of()
    points = track.points_px.copy()
    points[-8:, :, 1] -= 200.0
    assert Reason.OUT_OF_PICTURE in now(replace(track, points_px=points))


def test_from_the_wrong_side_it_says_so():
    track = track_of(np.zeros(20), Movement.ABDUCTION, View.FRONT)
    assert Reason.WRONG_VIEW in now(track)


@pytest.mark.parametrize("movement", [Movement.EXTERNAL_ROTATION, Movement.HAND_BEHIND_BACK])
def test_other_movements_are_judged_without_a_fault(movement):
    track = track_of(np.zeros(20), Movement.ABDUCTION, View.BACK)
    view = View.OBLIQUE if movement is Movement.EXTERNAL_ROTATION else View.BACK
    assert isinstance(now(track, movement, Side.RIGHT, view), tuple)


def test_nobody_has_no_doubts_and_no_sureness():
    track = track_of()
    away = replace(
        track,
        points_px=np.full_like(track.points_px, np.nan),
        state=np.full(len(track), int(FrameState.NOBODY), dtype=np.int64),
    )
    assert now(away) == ()
    assert visibility_score(away, Side.RIGHT) is None


def test_sureness_is_that_of_the_least_sure_mark_of_late():
    track = track_of()
    visibility = track.visibility.copy()
    visibility[:10] = 0.1
    visibility[-5:, 16] = 0.4  # the right wrist
    assert visibility_score(replace(track, visibility=visibility), Side.RIGHT) == pytest.approx(0.4)
    assert visibility_score(replace(track, visibility=visibility), Side.LEFT) == pytest.approx(1.0)
