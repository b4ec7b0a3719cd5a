"""The real pose model and the sample clips, for the few tests that need them."""

from pathlib import Path

import pytest

import sample_clips
from measure.errors import ModelError
from measure.pose_models.bundles import Bundle, load
from measure.pose_models.catalogue import ModelQuality

CLIPS = Path(sample_clips.__file__).parent / "clips"


def bundle(quality: ModelQuality = ModelQuality.LITE) -> Bundle:
    """The kept bundle; the test is skipped where there is none."""
    try:
        return load(quality)
    except ModelError as error:
        pytest.skip(f"data not here: {error}")


def clip(name: str) -> Path:
    """A sample clip by the name that it has without its ending."""
    path = CLIPS / f"{name}.mp4"
    assert path.exists(), f"{path} is gone"
    return path
