"""The annotated clip and the curve, from kept landmarks of a committed clip."""

import os
from pathlib import Path

import cv2
import numpy as np
import pytest

from measure.clips.observation_file import load_observation
from measure.clips.read import ClipReading, measurement_from_observation
from measure.domain.acquisition import Setup
from measure.domain.landmarks import arm
from measure.errors import DataError
from measure.export.annotated_clip import write_annotated
from measure.export.clip_figure import draw_curve
from measure.export.clip_series_csv import part_of
from measure.video.sampling import COARSE_HZ
from tests.bench.keep_clips import CLIPS, TRACKS

NAME = "abduction-right-restricted"


@pytest.fixture(scope="module")
def reading() -> ClipReading:
    return measurement_from_observation(load_observation(TRACKS / f"{NAME}.npz")[1], Setup())


def frames_of(clip: Path) -> list[np.ndarray]:
    source = cv2.VideoCapture(str(clip))
    frames = []
    while True:
        readable, frame = source.read()
        if not readable:
            source.release()
            return frames
        frames.append(frame)


def test_every_processed_frame_is_drawn_with_its_own_arm(
    reading: ClipReading, tmp_path: Path
) -> None:
    out = tmp_path / "annotated.mp4"
    write_annotated(CLIPS / f"{NAME}.mp4", out, reading)
    if os.name == "posix":
        assert out.stat().st_mode & 0o077 == 0
    frames, track = frames_of(out), reading.track
    assert len(frames) == len(track)
    assert frames[0].shape == (track.height_px, track.width_px, 3)
    assert cv2.VideoCapture(str(out)).get(cv2.CAP_PROP_FPS) == pytest.approx(COARSE_HZ, abs=0.01)

    originals = frames_of(CLIPS / f"{NAME}.mp4")
    own = arm(reading.measurement.side)
    held = [n for n, t in enumerate(track.time_s) if part_of(reading.measurement, t) == "hold"]
    assert len(held) >= 5
    for number in held:
        x, y = np.round(track.points_px[number, [own.shoulder, own.elbow]].mean(axis=0)).astype(int)
        # The middle of the upper arm lies under the light line, whatever the sleeve's colour.
        assert frames[number][y - 1 : y + 2, x - 1 : x + 2].mean() > 190
        shown = originals[round(track.time_s[number] * 20)]
        assert shown.shape == frames[number].shape
        # Away from what is drawn the picture is the clip's own.
        corner = (slice(100, 200), slice(0, 60))
        assert np.abs(frames[number][corner].astype(int) - shown[corner]).mean() < 12


def test_the_curve_is_a_picture(reading: ClipReading, tmp_path: Path) -> None:
    draw_curve(tmp_path / "curve.png", reading, None)
    picture = cv2.imread(str(tmp_path / "curve.png"))
    assert picture.shape[0] > 200
    assert picture.shape[1] > 300
    assert len(np.unique(picture.reshape(-1, 3), axis=0)) > 20


def test_a_place_that_cannot_be_written_is_named(reading: ClipReading, tmp_path: Path) -> None:
    with pytest.raises(DataError, match=r"no-folder.*cannot be written"):
        write_annotated(CLIPS / f"{NAME}.mp4", tmp_path / "no-folder" / "a.mp4", reading)
