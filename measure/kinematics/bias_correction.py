"""Bias correction: small smooth corrections from the network's keypoints to joint centres.

The network's shoulder, elbow and wrist lie a little beside the joint centres, by amounts that
change with elevation and view. One low-order curve a movement and view takes the mean of that
away; its few coefficients are in ``fitted.json``, written by the accuracy bench from virtual
people of the fitting set alone. No correction is applied outside the range it was fitted in
without being held at the range's end.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.movements import Movement, View


@cache
def fitted() -> Mapping[str, Any]:
    """Return the coefficients, as written by the accuracy bench."""
    content: Mapping[str, Any] = json.loads(
        files("measure.kinematics").joinpath("fitted.json").read_text(encoding="utf-8")
    )
    return content


@dataclass(frozen=True, slots=True, kw_only=True)
class ElevationCorrection:
    """value = x + offset + slope x + curve x² + rest n cos x; x raw angle, n wrist line at rest.

    Seen from the side the network puts the shoulder before or behind the joint, a little
    differently in each person and shirt. That turns the hanging arm's line one way and the
    raised arm's line the other, as the cosine does: so the arm at rest, which ought to hang
    straight down, tells part of the error at the end of the movement.
    """

    offset: float
    slope: float
    curve: float
    rest: float

    def __call__(self, raw_deg: FloatArray, rest_deg: float) -> FloatArray:
        x = np.clip(raw_deg, 0.0, 180.0)
        displaced = rest_deg * np.cos(np.radians(x))
        return np.asarray(
            raw_deg + self.offset + self.slope * x + self.curve * x * x + self.rest * displaced
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class RotationCorrection:
    """value = offset + azimuth α + zero z + turn τ; z = -α in the zero pose, τ the trunk's turn."""

    offset: float
    azimuth: float
    zero: float
    turn: float

    def __call__(self, azimuth_deg: FloatArray, zero_deg: float, turn_deg: float) -> FloatArray:
        return np.asarray(
            self.offset + self.azimuth * azimuth_deg + self.zero * -zero_deg + self.turn * turn_deg
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ReachCorrection:
    """value = offset + height h + separation q; q the shoulders' signed separation at rest."""

    offset: float
    height: float
    separation: float

    def __call__(self, height: FloatArray, separation: float) -> FloatArray:
        return np.asarray(self.offset + self.height * height + self.separation * separation)


def elevation_correction(movement: Movement, view: View) -> ElevationCorrection:
    return ElevationCorrection(**fitted()["elevation"][f"{movement}:{view}"])


def rotation_correction() -> RotationCorrection:
    return RotationCorrection(**fitted()["rotation"])


def reach_correction(view: View) -> ReachCorrection:
    return ReachCorrection(**fitted()["reach"][str(view)])
