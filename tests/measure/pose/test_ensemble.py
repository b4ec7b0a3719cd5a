"""Which models are used: those kept here, without ever fetching one."""

import shutil

import pytest

from measure.domain.movements import Movement
from measure.errors import ModelError
from measure.pose.ensemble import installed_models
from measure.pose_models.bundles import bundle_path
from measure.pose_models.catalogue import ModelQuality
from tests.support import real_model


@pytest.fixture
def shelf(tmp_path, monkeypatch):
    """An empty folder for models, and how to put one there."""
    kept = {
        quality: real_model.bundle(quality).path
        for quality in (ModelQuality.FULL, ModelQuality.HEAVY)
    }
    monkeypatch.setenv("THAWLINE_MODELS", str(tmp_path))

    def put(quality):
        shutil.copy(kept[quality], bundle_path(quality))

    return put


def test_without_the_full_model_there_is_none(shelf):
    with pytest.raises(ModelError):
        installed_models()


def test_the_full_model_alone_reads_alone(shelf):
    shelf(ModelQuality.FULL)
    models = installed_models()
    assert models.name == "full"
    assert [each.name for each in models.fine()] == ["full", "full mirrored"]
    assert models.coarse(Movement.HAND_BEHIND_BACK).quality is ModelQuality.FULL


def test_with_both_the_heavy_one_decides(shelf):
    shelf(ModelQuality.FULL)
    shelf(ModelQuality.HEAVY)
    models = installed_models()
    assert models.name == "heavy"
    assert [each.name for each in models.fine()] == ["heavy", "heavy mirrored"]
    assert models.coarse(Movement.FLEXION).quality is ModelQuality.FULL
    assert models.coarse(Movement.HAND_BEHIND_BACK).quality is ModelQuality.HEAVY


def test_a_damaged_model_is_an_error_and_not_passed_over(shelf):
    shelf(ModelQuality.FULL)
    bundle_path(ModelQuality.HEAVY).write_bytes(b"half")
    with pytest.raises(ModelError):
        installed_models()
