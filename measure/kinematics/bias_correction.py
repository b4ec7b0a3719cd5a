"""Bias correction of rotation and reach: from what the network shows to angle and height.

The network's points lie beside the joint centres by amounts that change with pose and view. The
few coefficients are in ``fitted.json``, written by the accuracy bench from virtual people of the
fitting set alone. Elevations have none: on real people a correction fitted on virtual ones made
them worse.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.movements import View


@cache
def fitted() -> Mapping[str, Any]:
    """Return the coefficients, as written by the accuracy bench."""
    content: Mapping[str, Any] = json.loads(
        files("measure.kinematics").joinpath("fitted.json").read_text(encoding="utf-8")
    )
    return content


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


def rotation_correction() -> RotationCorrection:
    return RotationCorrection(**fitted()["rotation"])


def reach_correction(view: View) -> ReachCorrection:
    return ReachCorrection(**fitted()["reach"][str(view)])
