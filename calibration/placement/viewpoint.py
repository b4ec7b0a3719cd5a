"""Pinhole view of a camera: from pixels to directions, with or without a calibrated lens.

Directions are in the camera's axes: x to the right of the image, y up, z forwards, with z = 1.
"""

import math
from dataclasses import dataclass

import numpy as np

from measure.domain.acquisition import ASSUMED_HORIZONTAL_FIELD_DEG, LensProfile
from measure.domain.landmarks import FloatArray
from measure.errors import InputError
from measure.kinematics.camera_geometry import undistort_points

#: Fields of view between which 95 of 100 webcams lie, degrees; with an unknown lens, results are
#: computed with both ends and the interval spans them. [project]
USUAL_FIELDS_DEG = (55.0, 80.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class PinholeView:
    """Camera at one image size.

    Attributes
    ----------
    width_px, height_px
        Size of the upright image.
    lens
        Its profile, or None where unknown.
    assumed_field_deg
        Field of view along the image's longer side where the lens is unknown, degrees.
    """

    width_px: int
    height_px: int
    lens: LensProfile | None = None
    assumed_field_deg: float = ASSUMED_HORIZONTAL_FIELD_DEG

    def __post_init__(self) -> None:
        lens = self.lens
        if lens is not None and (lens.width_px, lens.height_px) != (self.width_px, self.height_px):
            raise InputError(
                f"The lens profile was made at {lens.width_px} x {lens.height_px} pixels; this "
                f"picture has {self.width_px} x {self.height_px}. Calibrate at this size too."
            )

    @property
    def focal_px(self) -> float:
        """Focal length of the ideal camera, pixels."""
        if self.lens is not None:
            return self.lens.focal_px[0]
        longer = max(self.width_px, self.height_px)
        return longer / 2 / math.tan(math.radians(self.assumed_field_deg / 2))

    def plane(self, points_px: FloatArray) -> FloatArray:
        """Return points as (X/Z, Y/Z) with y up, shape (..., 2); NaN stays NaN."""
        points = np.asarray(points_px, dtype=np.float64)
        ideal = points if self.lens is None else undistort_points(points, self.lens)
        middle = np.array([self.width_px - 1, self.height_px - 1]) / 2
        flat: FloatArray = (ideal - middle) / self.focal_px * [1.0, -1.0]
        return flat

    def with_field(self, field_deg: float) -> "PinholeView":
        """Return the same camera with another assumed field of view."""
        return PinholeView(
            width_px=self.width_px, height_px=self.height_px, assumed_field_deg=field_deg
        )

    def candidates(self) -> tuple["PinholeView", ...]:
        """Return itself alone when the lens is known, else also the extremes of usual lenses."""
        if self.lens is not None:
            return (self,)
        return (self, *(self.with_field(field) for field in USUAL_FIELDS_DEG))
