"""What becomes of a reading when the network takes left for right, and that depth is not used."""

import dataclasses

import numpy as np
import pytest

from measure.domain.landmarks import SIDES_EXCHANGED, Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import Measurement, Provenance, Status
from measure.domain.movements import Movement, View
from measure.domain.tracks import PoseFrame, Track
from measure.trials.aggregation import aggregate_refined
from measure.trials.refinement import refine_trial
from measure.trials.scan import scan_for_trials
from measure.video.sampling import COARSE_HZ
from tests.support.stick_figure import elevation_track, raise_and_hold

PEAK_DEG, RATE_HZ = 110.0, COARSE_HZ


def read(track: Track, view: View) -> Measurement:
    scan = scan_for_trials(track, MeasurementTask(Movement.ABDUCTION, Side.LEFT, view))
    refined = [
        refine_trial([track.between(*window)], trial, scan.task, "heavy")
        for trial, window in zip(scan.trials, scan.windows, strict=True)
    ]
    return aggregate_refined(
        refined, scan.task, Provenance(model="heavy"), nothing_found=scan.gate_result
    )


def track_with(frames: slice | None, view: View) -> Track:
    series = raise_and_hold(PEAK_DEG, rate_hz=RATE_HZ, hold_s=3.0)
    track = elevation_track(series, Movement.ABDUCTION, Side.LEFT, view, trunk_px=110)
    if frames is None:
        return track
    points = track.points_px.copy()
    points[frames] = points[frames][:, SIDES_EXCHANGED]
    return dataclasses.replace(track, points_px=points)


def hold_start() -> int:
    return int(np.argmax(raise_and_hold(PEAK_DEG, rate_hz=RATE_HZ, hold_s=3.0) >= PEAK_DEG - 0.01))


@pytest.mark.parametrize("view", [View.FRONT, View.BACK])
@pytest.mark.parametrize("count", [1, 3])
@pytest.mark.parametrize("after", [2, 8])
def test_a_few_exchanged_frames_do_not_move_the_reading(count: int, after: int, view: View) -> None:
    start = hold_start() + after
    usual = read(track_with(None, view), view)
    odd = read(track_with(slice(start, start + count), view), view)
    assert usual.value is not None
    if odd.status is Status.READING:
        assert odd.value == pytest.approx(usual.value, abs=1.0)
        assert odd.best == pytest.approx(usual.best, abs=1.0)
    else:
        assert odd.reasons


@pytest.mark.parametrize("view", [View.FRONT, View.BACK])
def test_one_exchanged_frame_costs_no_reading(view: View) -> None:
    start = hold_start() + 8
    assert read(track_with(slice(start, start + 1), view), view).status is Status.READING


@pytest.mark.parametrize("view", [View.FRONT, View.BACK])
def test_exchanged_for_the_whole_hold_is_no_confident_number(view: View) -> None:
    start = hold_start()
    odd = read(track_with(slice(start, start + round(3.0 * RATE_HZ)), view), view)
    assert odd.status is not Status.READING
    assert odd.value is None
    assert odd.reasons


def test_depth_is_never_taken_over() -> None:
    names = {field.name for kind in (PoseFrame, Track) for field in dataclasses.fields(kind)}
    assert {name for name in names if "depth" in name or "world" in name or name == "z"} == set()
    track = track_with(None, View.FRONT)
    assert track.points_px.shape[-1] == 2
