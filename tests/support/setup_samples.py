"""Lens profiles and corrections for tests, with everything that a test does not care about."""

from typing import Any

from measure.domain.acquisition import Correction, LensProfile

_LENS: dict[str, Any] = {
    "camera_name": "garden camera",
    "width_px": 640,
    "height_px": 480,
    "focal_px": (500.0, 500.0),
    "centre_px": (320.0, 240.0),
    "distortion": (0.0, 0.0, 0.0, 0.0, 0.0),
    "reprojection_px": 0.2,
    "views": 24,
}
_CORRECTION: dict[str, Any] = {
    "bias_deg": 4.0,
    "gain": 0.0,
    "centre_deg": 90.0,
    "pairs": 40,
    "study": "spring",
    "lowest_deg": 40.0,
    "highest_deg": 150.0,
}


def sample_lens(**changes: Any) -> LensProfile:
    return LensProfile(**_LENS | changes)


def sample_correction(**changes: Any) -> Correction:
    return Correction(**_CORRECTION | changes)
