"""Motion files read back: true times, units, axes, and gaps that stay gaps."""

import os
from dataclasses import replace

import ezc3d
import numpy as np
import pytest

from measure.clips.observation import ClipObservation
from measure.domain.landmarks import Landmark, Side
from measure.domain.movements import Movement, View
from measure.domain.tracks import FrameState
from measure.errors import DataError, InputError
from measure.export.motion_files import LABELS, motion_points, slots_of, write_c3d, write_trc
from measure.pose.jobs import ClipInfo
from measure.video.sampling import COARSE_HZ
from tests.support.stick_figure import elevation_track, raise_and_hold

GAP = slice(10, 13)
FACTS = ClipInfo(
    width_px=640,
    height_px=480,
    frames_read=200,
    frames_expected=200,
    frames_unreadable=0,
    duration_s=6.8,
    measured_fps=25.0,
    backend="none",
    rotation_deg=0,
    sample_aspect=1.0,
)


@pytest.fixture(scope="module")
def observation():
    """A raise as the quick pass looks at it at 25 frames a second; in three frames is nobody."""
    track = elevation_track(raise_and_hold(90), Movement.ABDUCTION, Side.LEFT, View.FRONT)
    state, places = track.state.copy(), track.points_px.copy()
    state[GAP], places[GAP] = FrameState.NOBODY, np.nan
    uneven = np.rint(track.time_s * 25) / 25
    track = replace(track, state=state, points_px=places, time_s=uneven)
    return ClipObservation(
        movement=Movement.ABDUCTION,
        side=Side.LEFT,
        view=View.FRONT,
        model="heavy",
        facts=FACTS,
        coarse=track,
    )


def read_trc(path):
    lines = path.read_text(encoding="utf-8").splitlines()
    rows = [line.split("\t") for line in lines[6:]]
    numbers = np.array([[float(cell) if cell else np.nan for cell in row] for row in rows])
    return lines, numbers[:, 1], numbers[:, 2:].reshape(len(rows), -1, 3)


@pytest.mark.parametrize(("scale", "units", "near"), [(None, "px", 6e-4), (0.004, "m", 6e-7)])
def test_trc_round_trip(observation, tmp_path, scale, units, near):
    points = motion_points(observation, scale)
    write_trc(tmp_path / "a.trc", points)
    lines, times, places = read_trc(tmp_path / "a.trc")
    facts = dict(zip(lines[1].split("\t"), lines[2].split("\t"), strict=True))
    assert (facts["Units"], facts["DataRate"], facts["NumMarkers"]) == (
        units,
        f"{COARSE_HZ:g}",
        "33",
    )
    assert int(facts["NumFrames"]) == len(times) == len(observation.coarse)
    assert [label for label in lines[3].split("\t")[2:] if label] == list(LABELS)
    assert lines[5] == ""
    np.testing.assert_allclose(times, observation.coarse.time_s, atol=1e-6)
    np.testing.assert_allclose(places, points.places, atol=near)
    assert np.isnan(places[GAP]).all()
    assert np.isfinite(np.delete(places, range(10, 13), axis=0)).all()


@pytest.mark.parametrize(("scale", "units"), [(None, "px"), (0.004, "m")])
def test_c3d_round_trip(observation, tmp_path, scale, units):
    points = motion_points(observation, scale)
    write_c3d(tmp_path / "a.c3d", points)
    file = ezc3d.c3d(str(tmp_path / "a.c3d"))
    point = file["parameters"]["POINT"]
    assert point["UNITS"]["value"] == [units]
    assert point["LABELS"]["value"] == list(LABELS)
    assert point["RATE"]["value"] == pytest.approx([COARSE_HZ])
    places = file["data"]["points"][:3].transpose(2, 1, 0)
    np.testing.assert_allclose(places, points.places, rtol=1e-6)
    assert np.isnan(places[GAP]).all()
    residuals = file["data"]["meta_points"]["residuals"][0]
    assert (residuals[:, GAP] < 0).all()
    assert (np.delete(residuals, range(10, 13), axis=1) == 0).all()
    assert file["parameters"]["ANALOG"]["LABELS"]["value"] == ["TIME"]
    assert file["parameters"]["ANALOG"]["UNITS"]["value"] == ["s"]
    np.testing.assert_allclose(file["data"]["analogs"][0, 0], observation.coarse.time_s, atol=1e-6)


def test_slots_without_a_frame_are_invalid_points(observation, tmp_path):
    track = observation.coarse.frames(np.delete(np.arange(len(observation.coarse)), range(20, 30)))
    points = motion_points(replace(observation, coarse=track))
    write_c3d(tmp_path / "a.c3d", points)
    file = ezc3d.c3d(str(tmp_path / "a.c3d"))
    places, times = file["data"]["points"], file["data"]["analogs"][0, 0]
    assert places.shape[2] == len(observation.coarse) == len(track) + 10
    assert np.isnan(places[:3, :, 20:30]).all()
    assert np.isnan(times[20:30]).all()
    np.testing.assert_allclose(times[30:], track.time_s[20:], atol=1e-6)


def test_y_points_up_and_pixels_are_those_of_the_picture(observation):
    points = motion_points(observation)
    shoulder, hip = Landmark.LEFT_SHOULDER, Landmark.LEFT_HIP
    assert (points.places[0, shoulder, 1] > points.places[0, hip, 1]).all()
    assert points.places[0, hip, 1] == 479 - observation.coarse.points_px[0, hip, 1]
    assert (points.places[0, :, 2] == 0).all()


@pytest.mark.parametrize(
    ("times", "expected"),
    [
        ([0.0, 0.1, 0.2], [0, 1, 2]),
        ([5.0, 5.1, 5.4], [0, 1, 4]),
        ([0.0, 0.01, 0.02, 0.5], [0, 1, 2, 5]),
        ([0.0], [0]),
    ],
)
def test_no_frame_is_lost_to_the_grid(times, expected):
    assert slots_of(np.array(times), 10.0).tolist() == expected


@pytest.mark.parametrize("scale", [0.0, -1.0, float("nan"), float("inf")])
def test_a_pixel_has_a_length_or_none(observation, scale):
    with pytest.raises(InputError, match="not a possible length"):
        motion_points(observation, scale)


@pytest.mark.parametrize("write", [write_trc, write_c3d])
def test_a_motion_file_is_for_its_owner_only(observation, tmp_path, write):
    path = tmp_path / "a.motion"
    write(path, motion_points(observation, None))
    assert os.name != "posix" or path.stat().st_mode & 0o777 == 0o600


def test_places_that_cannot_be_written(observation, tmp_path):
    points = motion_points(observation)
    for write, name in ((write_trc, "a.trc"), (write_c3d, "a.c3d")):
        with pytest.raises(DataError, match="cannot be written"):
            write(tmp_path / "none" / name, points)


def test_without_a_frame_there_is_no_c3d(observation, tmp_path):
    points = motion_points(replace(observation, coarse=observation.coarse.frames(slice(0, 0))))
    with pytest.raises(InputError, match="no frame"):
        write_c3d(tmp_path / "a.c3d", points)
