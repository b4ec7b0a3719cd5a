"""Camera geometry: from pixels of a real lens to pixels of an ideal camera, for points only.

The ideal camera has no distortion, one focal length in both directions and its axis through
the middle of the image, so everything else may reckon with
u = (x - middle) / focal. Images themselves are never warped: that would cost time and blur
what the network sees. The lens model is Brown's with three radial and two tangential terms, as
OpenCV writes it (https://docs.opencv.org, camera calibration). numpy only.
"""

import dataclasses
import math

import numpy as np

from measure.domain.acquisition import CameraSetup, LensProfile
from measure.domain.landmarks import FloatArray
from measure.domain.tracks import Track

#: Steps of the inverse; a usable lens is solved to a thousandth of a pixel in about five.
#: [technical]
#: [technical]
_STEPS = 20
#: Steps shorter than this change nothing, in focal lengths. [technical] [technical]
_SOLVED = 1e-12
#: A point whose way back misses by more than this, pixels, has no place in an ideal camera.
#: [technical]
_MISS_PX = 0.01


def undistort_points(points_px: FloatArray, lens: LensProfile) -> FloatArray:
    """Return points of the real image as an ideal camera would show them.

    Parameters
    ----------
    points_px
        Shape (..., 2), pixels of the image that the profile belongs to; NaN allowed.

    Returns
    -------
    Shape (..., 2), pixels. NaN for NaN, and for points so far outside the image that the
    lens model does not reach them.
    """
    focal, centre = np.array(lens.focal_px), np.array(lens.centre_px)
    seen: FloatArray = (points_px - centre) / focal
    plain: FloatArray = seen.copy()
    with np.errstate(invalid="ignore", over="ignore", divide="ignore"):
        for _ in range(_STEPS):
            step = _newton_step(plain, seen, lens)
            plain = plain - step
            if np.max(np.abs(step), initial=0.0, where=np.isfinite(step)) < _SOLVED:
                break
        miss = np.max(np.abs(distorted(plain, lens) - seen) * focal, axis=-1)
        good = (miss <= _MISS_PX) & (_stretch(plain, lens) > 0)
    ideal: FloatArray = plain * lens.focal_px[0] + _middle(lens)
    ideal[~good] = np.nan
    return ideal


def real_points(ideal_px: FloatArray, lens: LensProfile) -> FloatArray:
    """Return where the real lens shows what an ideal camera shows at a point; (..., 2)."""
    plain = (ideal_px - _middle(lens)) / lens.focal_px[0]
    seen: FloatArray = distorted(plain, lens) * np.array(lens.focal_px) + np.array(lens.centre_px)
    return seen


def undistort_and_level(
    points_px: FloatArray, camera: CameraSetup, size_px: FloatArray
) -> FloatArray:
    """Return points as an ideal camera, held level, would show them, as far as it is known.

    Of an unknown camera they come back as they are. A turn about the axis is taken back about
    the middle of the image, where the ideal camera's axis goes through.

    Parameters
    ----------
    points_px
        Shape (..., 2), pixels, y down; NaN allowed.
    size_px
        Shape (2,), width and height of the image.

    Raises
    ------
    ValueError
        When the profile was made at another image size: it then says nothing.
    """
    if camera.lens is not None:
        _check_size(camera.lens, int(size_px[0]), int(size_px[1]))
        points_px = undistort_points(points_px, camera.lens)
    if not camera.roll_deg:
        return points_px
    middle = (size_px - 1) / 2
    # A camera turned clockwise shows everything turned anticlockwise.
    cos, sin = math.cos(math.radians(camera.roll_deg)), math.sin(math.radians(camera.roll_deg))
    x, y = points_px[..., 0] - middle[0], points_px[..., 1] - middle[1]
    return np.stack([cos * x - sin * y, sin * x + cos * y], axis=-1) + middle


def undistort_track(track: Track, lens: LensProfile) -> Track:
    """Return a track as an ideal camera would have seen it.

    Raises
    ------
    ValueError
        When the profile was made at another image size: it then says nothing.
    """
    _check_size(lens, track.width_px, track.height_px)
    return dataclasses.replace(track, points_px=undistort_points(track.points_px, lens))


def distorted(plain: FloatArray, lens: LensProfile) -> FloatArray:
    """Return directions (u, v) = (X/Z, Y/Z), shape (..., 2), bent as the lens bends them."""
    _, _, p1, p2, _ = lens.distortion
    u, v = plain[..., 0], plain[..., 1]
    square = u * u + v * v
    radial, _ = _radial(square, lens)
    return np.stack(
        [
            u * radial + 2 * p1 * u * v + p2 * (square + 2 * u * u),
            v * radial + p1 * (square + 2 * v * v) + 2 * p2 * u * v,
        ],
        axis=-1,
    )


def _check_size(lens: LensProfile, width_px: int, height_px: int) -> None:
    if (width_px, height_px) != (lens.width_px, lens.height_px):
        raise ValueError(
            f"a lens profile for {lens.width_px} x {lens.height_px} does not fit pictures of "
            f"{width_px} x {height_px}"
        )


def _middle(lens: LensProfile) -> FloatArray:
    # Pixel centres are whole numbers.
    return np.array([lens.width_px - 1, lens.height_px - 1], dtype=np.float64) / 2


def _radial(square: FloatArray, lens: LensProfile) -> tuple[FloatArray, FloatArray]:
    """Return the radial factor at a squared radius, and its derivative by it."""
    k1, k2, _, _, k3 = lens.distortion
    return (
        1 + square * (k1 + square * (k2 + square * k3)),
        k1 + square * (2 * k2 + 3 * square * k3),
    )


def _stretch(plain: FloatArray, lens: LensProfile) -> FloatArray:
    """Return by how much the lens stretches outward; 0 or less where the model folds back."""
    square = np.sum(plain * plain, axis=-1)
    radial, slope = _radial(square, lens)
    stretch: FloatArray = radial + 2 * square * slope
    return stretch


def _newton_step(plain: FloatArray, seen: FloatArray, lens: LensProfile) -> FloatArray:
    _, _, p1, p2, _ = lens.distortion
    u, v = plain[..., 0], plain[..., 1]
    radial, slope = _radial(u * u + v * v, lens)
    uu = radial + 2 * u * u * slope + 2 * p1 * v + 6 * p2 * u
    uv = 2 * u * v * slope + 2 * p1 * u + 2 * p2 * v
    vv = radial + 2 * v * v * slope + 6 * p1 * v + 2 * p2 * u
    off = distorted(plain, lens) - seen
    below = uu * vv - uv * uv
    return np.stack(
        [
            (vv * off[..., 0] - uv * off[..., 1]) / below,
            (uu * off[..., 1] - uv * off[..., 0]) / below,
        ],
        axis=-1,
    )
