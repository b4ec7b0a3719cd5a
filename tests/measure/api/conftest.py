"""A working folder for examples: clips of the scripted arm, a kept observation, the demo story."""

import functools
import shutil
from pathlib import Path

import pytest
from thawline import clip_reading

from measure.demo.story import load_story
from measure.pose.supervisor import PoseProcess
from measure.storage.store import Store
from tests.support import scripted_arm

KEPT = Path(__file__).parents[2] / "tracks" / "clips" / "flexion-left-full.npz"


@pytest.fixture
def working_folder(tmp_path: Path, data_folder: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return the current folder, with raise.mp4, lower.mp4 and raise.npz."""
    process = functools.partial(PoseProcess, command=scripted_arm.COMMAND)
    monkeypatch.setattr(clip_reading, "PoseProcess", process)
    monkeypatch.setattr(clip_reading, "models_for", lambda *_, **__: scripted_arm.MODELS)
    monkeypatch.chdir(tmp_path)
    scripted_arm.write_clip(tmp_path / "raise.mp4", peak=100.0)
    scripted_arm.write_clip(tmp_path / "later.mp4", peak=120.0)
    shutil.copy(KEPT, tmp_path / "raise.npz")
    with Store.open() as store:
        load_story(store)
    return tmp_path
