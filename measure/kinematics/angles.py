"""Plane geometry on landmarks, in pixels. The only place where the image's y axis is flipped.

Conventions: plane coordinates have x to the right and y up; angles are in degrees,
anticlockwise positive; NaN in gives NaN out; shapes broadcast over leading axes.
Pixels are square and belong to an upright frame (see :mod:`measure.video.source`): normalised
coordinates must never come here, as a wide frame would bend every angle.
"""

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import FloatArray


def plane_from_pixels(points_px: FloatArray) -> FloatArray:
    """Return points with y up from pixels with y down; shape (..., 2), unit pixels."""
    return np.asarray(points_px * np.array([1.0, -1.0]))


def direction_deg(vectors: FloatArray) -> FloatArray:
    """Return the direction of plane vectors, shape (..., 2) -> (...), in (-180, 180].

    Zero vectors have no direction: NaN.
    """
    with np.errstate(invalid="ignore"):
        angle = np.degrees(np.arctan2(vectors[..., 1], vectors[..., 0]))
        return np.where(length(vectors) > 0, angle, np.nan)


def length(vectors: FloatArray) -> FloatArray:
    """Return the length of plane vectors, shape (..., 2) -> (...)."""
    return np.hypot(vectors[..., 0], vectors[..., 1])


def wrap_deg(angle_deg: FloatArray, *, lowest: float = -180.0) -> FloatArray:
    """Return the same direction in [lowest, lowest + 360)."""
    return (angle_deg - lowest) % 360.0 + lowest


def turn_deg(start: FloatArray, end: FloatArray) -> FloatArray:
    """Return the signed turn from one plane vector to another, in [-180, 180)."""
    return wrap_deg(direction_deg(end) - direction_deg(start))


def corner_deg(first: FloatArray, corner: FloatArray, last: FloatArray) -> FloatArray:
    """Return the unsigned angle at `corner`, in [0, 180]; a straight limb gives 180."""
    return np.abs(turn_deg(first - corner, last - corner))


def mean_near_median(values: FloatArray, within: float) -> float:
    """Return the mean of the values that lie within a distance of their median.

    Robust against single wrong frames without the coarse steps of a median. NaN values are
    left out; all NaN gives NaN, and so do two equal groups that both lie too far from the median
    between them.
    """
    finite = values[np.isfinite(values)]
    if len(finite) == 0:
        return float("nan")
    near: NDArray[np.bool_] = np.abs(finite - np.median(finite)) <= within
    return float(np.mean(finite[near])) if near.any() else float("nan")


def nanmedian(layers: FloatArray) -> FloatArray:
    """Return the median over the first axis, NaN left out; all NaN (or nothing) gives NaN.

    As `numpy.nanmedian`, which takes ten times as long for so few values.
    """
    if not len(layers):
        return np.full(layers.shape[1:], np.nan)
    ordered = np.sort(layers, axis=0)  # NaN comes last
    count = np.count_nonzero(~np.isnan(layers), axis=0)
    lower = np.take_along_axis(ordered, np.maximum(count - 1, 0)[None] // 2, axis=0)[0]
    upper = np.take_along_axis(ordered, np.minimum(count // 2, len(layers) - 1)[None], axis=0)[0]
    return np.asarray((lower + upper) / 2)


def median_over(values: FloatArray, chosen: NDArray[np.bool_]) -> FloatArray:
    """Return the median over the chosen frames, NaN left out; shape (n, ...) -> (...).

    Nothing known gives NaN.
    """
    return nanmedian(values[chosen])
