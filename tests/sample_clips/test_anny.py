"""Our own posing and filming with the real body model."""

import shutil
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from sample_clips.body import bodies_folder, load_body, shape_of
from sample_clips.film import render_clip
from sample_clips.make import mp4_length_s
from sample_clips.motion import MotionPhase, frame_states
from sample_clips.person import VirtualPerson
from sample_clips.roster import sample_scenarios
from sample_clips.scenario import Camera, Tempo
from sample_clips.skeleton import Skin

anny = pytest.importorskip("anny", reason="needs the synth extra: anny")
torch = pytest.importorskip("torch", reason="needs the synth extra: torch")
pytest.importorskip("pyvista", reason="needs the synth extra: pyvista")
SCENARIO = sample_scenarios()[0]


@pytest.mark.timeout(600)
def test_posing_agrees_with_the_body_model() -> None:
    """Joints and skin of a raised arm, posed here and by the model with world orientations."""
    body = load_body(shape_of(SCENARIO.body), bodies_folder())
    held = next(now for now in frame_states(SCENARIO) if now.phase is MotionPhase.HOLD)
    bones = VirtualPerson(body, SCENARIO).pose(held)
    model = anny.Anny(pose_parameterization="world-orient")
    shape = shape_of(SCENARIO.body)
    kinds = ("gender", "age", "muscle", "weight", "height", "proportions")
    phenotype = {name: getattr(shape, name) for name in kinds}
    rest = model(phenotype_kwargs=phenotype)["rest_bone_poses"][0].numpy()
    wanted = np.tile(np.eye(4), (1, len(body.bones), 1, 1))
    wanted[0, :, :3, :3] = bones.turns @ rest[:, :3, :3]
    wanted[0, 0, :3, 3] = bones.heads[0] - body.heads[0]
    posed = model(pose_parameters=torch.tensor(wanted), phenotype_kwargs=phenotype)
    heads = posed["bone_poses"][0, :, :3, 3].numpy()
    elbow, wrist = body.bones.index("lowerarm01.L"), body.bones.index("wrist.L")
    # Moving the twist joints onto the line between their neighbours costs a few millimetres.
    ours, theirs = bones.heads[wrist] - bones.heads[0], heads[wrist] - heads[0]
    assert ours == pytest.approx(theirs, abs=0.008)
    assert bones.heads[elbow] - bones.heads[0] == pytest.approx(heads[elbow] - heads[0], abs=0.008)
    vertices, _ = Skin(body, body.vertices, body.normals).pose(bones)
    offset = (vertices - bones.heads[0]) - (posed["vertices"][0].numpy() - heads[0])
    assert np.percentile(np.linalg.norm(offset, axis=1), 99) < 0.012


@pytest.mark.timeout(600)
@pytest.mark.skipif(shutil.which("ffmpeg") is None, reason="needs the synth extra: ffmpeg")
def test_films_a_short_clip(tmp_path: Path) -> None:
    tempo = Tempo(neutral_s=0.2, move_s=0.2, hold_s=0.2, return_s=0.2)
    camera = Camera(width=320, height=240, fps=10, barrel=0.03)
    scenario = replace(SCENARIO, name="short", tempo=tempo, camera=camera)
    made = render_clip(scenario, tmp_path, bodies_folder())
    content = (tmp_path / "short.mp4").read_bytes()
    assert mp4_length_s(content) == pytest.approx(made["frames"] / 10, abs=0.02)
    rows = (tmp_path / "short.csv").read_text(encoding="utf-8").splitlines()
    assert len(rows) == made["frames"] + 1
    assert not list(tmp_path.glob("*.part*"))
