"""Kept tracks give the same reading as the clip, bit for bit, and damage is noticed."""

import time
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from measure.clips.inputs import ClipEntry
from measure.clips.observation_file import load_observation, save_observation
from measure.clips.read import measurement_from_observation, read_clip
from measure.domain.acquisition import CameraSetup, Setup
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.errors import DataError
from measure.pose.supervisor import PoseProcess
from tests.support import scripted_arm


@pytest.fixture(scope="module")
def read(tmp_path_factory):
    """An entry, its reading from the clip, and the file of its tracks."""
    folder = tmp_path_factory.mktemp("tracks")
    clip = scripted_arm.write_clip(folder / "bean rows.clip", Movement.ABDUCTION, Side.RIGHT, 96.0)
    entry = ClipEntry(
        clip=clip,
        movement=Movement.ABDUCTION,
        side=Side.RIGHT,
        view=View.FRONT,
        reference=95.5,
        person="marigold",
    )
    models = scripted_arm.MODELS
    with PoseProcess(models.bundles, command=scripted_arm.COMMAND) as process:
        reading = read_clip(process, models, clip, entry.task(Setup()))
    save_observation(folder / "kept.npz", entry, reading.observation)
    return entry, reading, folder / "kept.npz"


def test_the_reading_is_the_same_to_the_last_bit(read):
    entry, reading, path = read
    kept_entry, observation = load_observation(path)
    again = measurement_from_observation(observation, Setup())
    assert kept_entry == entry
    assert reading.measurement.value is not None
    assert again.measurement == reading.measurement
    assert again.guide.tobytes() == reading.guide.tobytes()
    for kept, first in zip(again.refined, reading.refined, strict=True):
        assert kept.fused.per_pass.tobytes() == first.fused.per_pass.tobytes()
        assert kept.fused.per_pass.shape[0] == 2


def test_reading_again_takes_hundredths_of_a_second(read):
    began = time.process_time()
    for _ in range(10):
        measurement_from_observation(load_observation(read[2])[1], Setup())
    assert (time.process_time() - began) / 10 < 0.2


def test_the_passes_see_the_arm_differently_so_that_mixing_them_up_would_show(read):
    fine = read[1].observation.fine
    assert list(fine) == ["heavy", "heavy mirrored"]
    assert len({track.points_px.tobytes() for track in fine.values()}) == 2


def test_of_an_older_observation_only_the_deciding_model_counts(read):
    observation = read[1].observation
    other = {f"full{name.removeprefix('heavy')}": track for name, track in observation.fine.items()}
    older = replace(
        observation,
        fine={**other, **observation.fine},
        passes=(*other, *observation.passes),
    )
    assert list(older.deciding) == ["heavy", "heavy mirrored"]
    again = measurement_from_observation(older, Setup()).measurement
    assert again == read[1].measurement
    assert list(replace(older, model="full").deciding) == ["full", "full mirrored"]


@pytest.mark.parametrize(
    "camera", [CameraSetup(quarter_turns=1), CameraSetup(already_mirrored=True)], ids=str
)
def test_a_setup_that_turns_the_picture_needs_the_clip(read, camera):
    with pytest.raises(DataError, match="turns or mirrors"):
        measurement_from_observation(read[1].observation, Setup(camera=camera))


def test_trials_without_a_fine_pass_need_the_clip(read):
    observation = replace(read[1].observation, windows=((0.0, 0.5),))
    with pytest.raises(DataError, match="no detailed pass"):
        measurement_from_observation(observation, Setup())


def rewritten(path, tmp_path, **changes):
    with np.load(path) as arrays:
        content = {name: arrays[name] for name in arrays.files}
    target = tmp_path / "changed.npz"
    np.savez_compressed(target, **{**content, **changes})
    return target


def test_damage_is_noticed(read, tmp_path):
    whole = read[2].read_bytes()
    with np.load(read[2]) as arrays:
        times = arrays["quick:time_s"]
        said = arrays["said"].tobytes().decode()
    cases = {
        "cut off": whole[: len(whole) // 2],
        "empty": b"",
        "text": b"not tracks at all",
    }
    for name, content in cases.items():
        (tmp_path / name).write_bytes(content)
        with pytest.raises(DataError, match="damaged"):
            load_observation(tmp_path / name)
    changed = {
        "quick:time_s": times[::-1],
        "quick:points_px": np.zeros((3, 33, 2)),
        "quick:state": np.full(len(times), 9),
        "heavy:time_s": np.arange(3.0),
        "said": np.frombuffer(b"{", dtype=np.uint8),
    }
    for name, array in changed.items():
        with pytest.raises(DataError, match="damaged"):
            load_observation(rewritten(read[2], tmp_path, **{name: array}))
    later = said.replace('"form": 1', '"form": 2').encode()
    with pytest.raises(DataError, match="another version"):
        load_observation(rewritten(read[2], tmp_path, said=np.frombuffer(later, dtype=np.uint8)))
    wrong = said.replace('"abduction"', '"jumping"').encode()
    with pytest.raises(DataError, match="movement"):
        load_observation(rewritten(read[2], tmp_path, said=np.frombuffer(wrong, dtype=np.uint8)))


def test_a_pickle_is_never_opened(tmp_path):
    path = tmp_path / "evil.npz"
    np.savez(path, said=np.array([print], dtype=object))
    with pytest.raises(DataError):
        load_observation(path)


def test_files_and_folders_that_cannot_be_used(read, tmp_path):
    with pytest.raises(DataError, match="cannot be read"):
        load_observation(tmp_path / "none.npz")
    with pytest.raises(DataError, match="cannot be written"):
        save_observation(tmp_path / "none" / "x.npz", read[0], read[1].observation)
    assert list(tmp_path.iterdir()) == []


def test_a_clip_without_a_trial_keeps_no_careful_pass(tmp_path):
    clip = scripted_arm.write_clip(tmp_path / "still.clip", peak=1.0)
    models = scripted_arm.MODELS
    with PoseProcess(models.bundles, command=scripted_arm.COMMAND) as process:
        reading = read_clip(process, models, clip, MeasurementTask(Movement.FLEXION, Side.LEFT))
    entry = ClipEntry(clip=Path("still.clip"), movement=Movement.FLEXION, side=Side.LEFT)
    save_observation(tmp_path / "still.npz", entry, reading.observation)
    again = measurement_from_observation(load_observation(tmp_path / "still.npz")[1], Setup())
    assert again.observation.fine == {}
    assert again.measurement == reading.measurement
    assert again.measurement.reasons
