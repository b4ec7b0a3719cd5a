"""Reading clips from Python: nothing is fetched, and what is wrong is said in words."""

from pathlib import Path

import pytest
import thawline

from measure.pose import ensemble
from tests.support import scripted_arm


def test_a_model_that_is_not_here_is_told_and_not_fetched(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("THAWLINE_MODELS", str(tmp_path / "models"))
    monkeypatch.setattr(ensemble, "obtain", lambda *_, **__: pytest.fail("a model was fetched"))
    clip = tmp_path / "raise.mp4"
    scripted_arm.write_clip(clip, peak=110.0)
    with pytest.raises(thawline.ModelError, match="Run: thawline model"):
        thawline.read_clip(clip, "flexion", "left")


@pytest.mark.parametrize(
    ("movement", "side", "part"),
    [("waving", "left", "is not a movement"), ("flexion", "both", "is not a side")],
)
def test_a_word_that_is_none_names_those_that_are(movement: str, side: str, part: str) -> None:
    with pytest.raises(thawline.InputError, match=part):
        thawline.read_clip("raise.mp4", movement, side)
