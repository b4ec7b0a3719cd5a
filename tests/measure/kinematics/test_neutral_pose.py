"""How a person stood before moving: kept with every reading, and read back."""

import math
from dataclasses import replace
from pathlib import Path

import pytest

from measure.clips.observation_file import load_observation
from measure.clips.read import measurement_from_observation
from measure.domain.acquisition import CameraSetup, Setup
from measure.domain.standing_pose import STANDING, Neutral, standing_in, standing_text
from tests.support.setup_samples import sample_lens

TRACKS = Path(__file__).resolve().parents[2] / "tracks"
STOOD = Neutral(
    trunk_px=135.8,
    middle_px=(342.1, 246.4),
    lean_deg=0.9,
    width_over_trunk=-0.015,
    frames=8,
    width_px=640,
    height_px=480,
)


def test_a_neutral_is_written_and_read_back() -> None:
    neutral = standing_in({STANDING: standing_text(STOOD)})
    assert neutral is not None
    # Where the person was in the picture is nobody's business afterwards.
    assert all(map(math.isnan, neutral.middle_px))
    assert replace(neutral, middle_px=STOOD.middle_px) == STOOD


@pytest.mark.parametrize(
    "text",
    [
        "",
        "trunk_px=135.8",
        standing_text(STOOD).replace("135.8", "nan"),
        standing_text(STOOD).replace("135.8", "-3"),
        standing_text(STOOD).replace("lean_deg=0.9", "lean_deg="),
        standing_text(STOOD).replace("640x480", "640"),
        standing_text(STOOD).replace("640x480", "640x0"),
    ],
)
def test_a_text_that_says_nothing_is_no_neutral(text: str) -> None:
    assert standing_in({STANDING: text}) is None
    assert standing_in({}) is None


@pytest.mark.parametrize(
    ("name", "least", "most"),
    [
        ("trial-abduction-front-004", 0.6, 0.8),
        ("trial-abduction-back-002", -0.85, -0.7),
        ("trial-flexion-side-000", -0.1, 0.1),
    ],
)
def test_every_reading_says_how_the_person_stood(name: str, least: float, most: float) -> None:
    observation = load_observation(TRACKS / f"{name}.npz")[1]
    stood = standing_in(
        measurement_from_observation(observation, Setup()).measurement.provenance.source
    )
    assert stood is not None
    assert least <= stood.width_over_trunk <= most
    assert (stood.width_px, stood.height_px) == (640, 480)
    assert abs(stood.lean_deg) < 4.0


def test_a_known_lens_is_taken_into_account() -> None:
    observation = load_observation(TRACKS / "trial-abduction-front-004.npz")[1]
    lens = sample_lens(
        camera_name="Garden laptop", centre_px=(319.5, 239.5), distortion=(-0.3, 0.0, 0.0, 0.0, 0.0)
    )
    setup = Setup(camera=CameraSetup(name="Garden laptop", lens=lens))
    plain = standing_in(
        measurement_from_observation(observation, Setup()).measurement.provenance.source
    )
    through = standing_in(
        measurement_from_observation(observation, setup).measurement.provenance.source
    )
    assert plain is not None
    assert through is not None
    # A barrel lens shows what lies off its axis too small: set right, the trunk is longer.
    assert plain.trunk_px < through.trunk_px < 1.1 * plain.trunk_px
