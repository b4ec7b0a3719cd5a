"""Distance of the person from the camera, from a length that is known."""

import numpy as np

from calibration.placement.viewpoint import PinholeView
from measure.domain.landmarks import FloatArray
from measure.errors import InputError


def distance_m(
    ends_px: tuple[tuple[float, float], tuple[float, float]],
    length_m: float,
    along: FloatArray,
    sight: PinholeView,
) -> tuple[float, float, float]:
    """Return how far away a known length is: distance, lowest and highest, metres.

    The two rays through its ends are followed to where they are apart by the length in its
    direction, by least squares; the distance is to its middle, along the camera's axis. An
    unknown lens makes the interval; it is empty for a known one.

    Parameters
    ----------
    ends_px
        Both ends in the picture, pixels, y down; the second lies from the first in the
        direction of `along`.
    length_m
        The length between them, metres.
    along
        Unit direction of the length in the camera's axes (x right, y up, z forwards): for an
        upright length :func:`calibration.placement.level.up_direction`, for the shoulders of
        a person facing the camera (1, 0, 0).

    Raises
    ------
    InputError
        For a length that is not positive, ends that coincide, or a direction away from the
        camera, along which a length says nothing.
    """
    if not (np.isfinite(length_m) and length_m > 0):
        raise InputError(f"{length_m:g} m is no length.")
    found = [_distance(ends_px, length_m, along, each) for each in sight.supposed()]
    return found[0], min(found), max(found)


def _distance(
    ends_px: tuple[tuple[float, float], tuple[float, float]],
    length_m: float,
    along: FloatArray,
    sight: PinholeView,
) -> float:
    flat = sight.plane(np.array(ends_px, dtype=np.float64))
    rays = np.concatenate([flat, np.ones((2, 1))], axis=1)
    if not np.isfinite(rays).all() or np.ptp(rays, axis=0).max() < 1e-6:
        raise InputError("The two ends of the known length are not two points of the picture.")
    sides = np.stack([-rays[0], rays[1]], axis=1)
    depths, _, _, _ = np.linalg.lstsq(sides, length_m * np.asarray(along), rcond=None)
    if not (np.isfinite(depths).all() and (depths > 0).all()):
        raise InputError(
            "The known length does not lie in that direction in the picture. Check which end "
            "is which."
        )
    return float(np.mean(depths))
