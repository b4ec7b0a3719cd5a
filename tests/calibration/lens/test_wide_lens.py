"""A 90-degree lens with distortion: whole readings through its profile against a perfect camera.

What the networks saw of filmed people is bent as such a lens would bend it, and read with the
profile that noisy views of the board made.
"""

import dataclasses
import json
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from calibration.lens.capture import ENOUGH_VIEWS
from calibration.lens.fit import fit_lens
from measure.clips.observation import ClipObservation
from measure.clips.observation_file import load_observation
from measure.clips.read import measurement_from_observation
from measure.domain.acquisition import CameraSetup, LensProfile, Setup
from measure.domain.measurements import Measurement
from measure.domain.tracks import Track
from measure.kinematics.camera_geometry import real_points
from tests.support.virtual_board import MORE, VirtualCamera, poses, true_view

TRACKS = Path(__file__).resolve().parents[2] / "tracks"
BEND = (-0.22, 0.06, 0.0, 0.0, -0.004)
NAMES = [
    case["name"]
    for case in json.loads((TRACKS / "cases.json").read_text(encoding="utf-8"))
    if case["expected"] == ["reading"] and case["name"].startswith("trial-")
]
#: The profile may cost this much; a reach is a share of the back, of which 0.005 is as little.
MOST = {"deg": 0.5, "fraction": 0.005}


@cache
def lenses(width: int, height: int) -> tuple[LensProfile, LensProfile, LensProfile]:
    """Return a perfect camera 90 degrees wide, the bent one, and what the board tells of it."""
    camera = VirtualCamera(width, height, width / 2, ((width - 1) / 2, (height - 1) / 2), BEND)
    bent = LensProfile(
        camera_name="garden camera",
        width_px=width,
        height_px=height,
        focal_px=(width / 2, width / 2),
        centre_px=camera.centre,
        distortion=BEND,
        reprojection_px=0.1,
        views=ENOUGH_VIEWS,
    )
    random = np.random.default_rng(3)
    views = [true_view(camera, pose) for pose in poses(camera, MORE)[:ENOUGH_VIEWS]]
    noisy = [
        dataclasses.replace(
            view, points_px=view.points_px + random.normal(0, 0.2, view.points_px.shape)
        )
        for view in views
    ]
    fit = fit_lens(noisy, camera_name="garden camera", width_px=width, height_px=height)
    assert fit.profile is not None
    return dataclasses.replace(bent, distortion=(0.0,) * 5), bent, fit.profile


def bent(observation: ClipObservation, lens: LensProfile) -> ClipObservation:
    """Return what would have been seen through a lens."""

    def through(track: Track) -> Track:
        return dataclasses.replace(track, points_px=real_points(track.points_px, lens))

    return dataclasses.replace(
        observation,
        coarse=through(observation.coarse),
        fine={name: through(track) for name, track in observation.fine.items()},
    )


def read(observation: ClipObservation, lens: LensProfile | None) -> Measurement:
    setup = Setup() if lens is None else Setup(camera=CameraSetup(name="garden camera", lens=lens))
    return measurement_from_observation(observation, setup).measurement


@pytest.mark.parametrize("name", NAMES)
def test_the_profile_costs_no_more_than_half_a_degree(name: str) -> None:
    observation = load_observation(TRACKS / f"{name}.npz")[1]
    plain, true, fitted = lenses(observation.coarse.width_px, observation.coarse.height_px)
    perfect, profiled = read(observation, plain), read(bent(observation, true), fitted)
    assert perfect.value is not None
    assert profiled.value is not None
    assert abs(profiled.value - perfect.value) <= MOST[perfect.unit.value]
