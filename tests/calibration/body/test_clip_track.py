"""A sample clip through the real network to what calibration makes of it."""

import json
from pathlib import Path

import pytest

from calibration.body.clip_track import track_from_clip
from calibration.body.lengths import BodyLengths, lengths_from_poses
from calibration.placement.standing import StandingEstimate, estimate_from_standing
from calibration.placement.viewpoint import PinholeView
from measure.domain.tracks import Track

CLIPS = Path(__file__).parents[3] / "sample_clips" / "clips"
CLIP = "abduction-right-restricted.mp4"


@pytest.fixture(scope="module")
def track() -> Track:
    shares: list[float] = []
    result = track_from_clip(CLIPS / CLIP, progress=shares.append)
    assert shares[-1] == pytest.approx(1.0)
    return result


def test_the_standing_person_tells_where_the_camera_is(track: Track) -> None:
    content = json.loads((CLIPS / "truth.json").read_text(encoding="utf-8"))
    (camera,) = (clip["camera"] for clip in content["clips"] if clip["file"] == CLIP)
    view = PinholeView(
        width_px=track.width_px,
        height_px=track.height_px,
        assumed_field_deg=camera["hfov_deg"],
    )
    estimate = estimate_from_standing(track, view)
    assert isinstance(estimate, StandingEstimate)
    assert estimate.neutral.width_over_trunk > 0.5  # facing the camera
    assert estimate.roll_deg.value == pytest.approx(camera["roll_deg"], abs=4)
    assert estimate.tilt_deg is not None
    assert abs(estimate.tilt_deg.value - camera["pitch_deg"]) <= estimate.tilt_deg.half
    assert estimate.distance_m is not None
    assert estimate.distance_m.value == pytest.approx(camera["distance_m"], rel=0.1)


def test_the_arms_come_out_within_the_error_told(track: Track) -> None:
    # Joint centres of this body, by its truth file: upper arms 0.606 and 0.595 of the trunk,
    # forearms 0.571 and 0.562.
    lengths = lengths_from_poses(track.between(0.0, 1.0))
    assert isinstance(lengths, BodyLengths)
    assert lengths.body.upper_arm == pytest.approx(0.60, rel=lengths.share_error)
    assert lengths.body.forearm == pytest.approx(0.567, rel=lengths.share_error)
