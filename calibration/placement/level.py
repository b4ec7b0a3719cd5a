"""Camera roll and tilt from plumb lines marked in an image.

A plumb line, a door frame, a corner of the room: two points on each. One line gives the roll; two
or more, well apart, give roll and tilt, since upright lines meet in one vanishing point. The
standing person as a check is in :mod:`calibration.placement.standing`.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from calibration.placement.viewpoint import PinholeView
from measure.domain.acquisition import LARGEST_ROLL_DEG
from measure.domain.landmarks import FloatArray
from measure.errors import InputError

#: Error of a marked point, 95 of 100, pixels. [project]
MARK_ERROR_PX = 2.0
#: Shortest line, pixels. [project]
SHORTEST_LINE_PX = 60.0
#: Least separation of lines for a tilt, as directions X/Z (0.2 is 11 degrees). [project]
MIN_LINE_SEPARATION = 0.2
#: Half of the range of an unknown tilt of a laptop's camera, 95 of 100, degrees. [project]
USUAL_TILT_DEG = 20.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PlumbLine:
    """Upright line marked in an image: upper and lower point, pixels (x, y down)."""

    top_px: tuple[float, float]
    bottom_px: tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class CameraOrientation:
    """Orientation of the camera.

    Attributes
    ----------
    roll_deg
        Turned clockwise about its axis, seen from behind the camera.
    roll_half_deg
        Half of its 95 % interval.
    tilt_deg
        Tilted upwards, or None where the lines do not determine it.
    tilt_half_deg
        Half of its 95 % interval, or None.
    lines
        Number of lines.
    """

    roll_deg: float
    roll_half_deg: float
    tilt_deg: float | None
    tilt_half_deg: float | None
    lines: int


def orientation_from_plumb_lines(
    lines: Sequence[PlumbLine], view: PinholeView
) -> CameraOrientation:
    """Return roll, and with lines well apart the tilt.

    Raises
    ------
    InputError
        For no lines, a line too short or upside down, or lines that are not upright.
    """
    points = np.array([[line.top_px, line.bottom_px] for line in lines], dtype=np.float64)
    _check(points, view)
    flat = view.plane(points)
    if np.ptp(flat.mean(axis=1)[:, 0]) < MIN_LINE_SEPARATION:
        return _from_one_place(points, view)
    up = _up(flat)
    return CameraOrientation(
        roll_deg=_checked_roll(up),
        roll_half_deg=_half(points, view, lambda lines: _roll_deg(_up(lines))),
        tilt_deg=_tilt_deg(up),
        tilt_half_deg=_half(points, view, lambda lines: _tilt_deg(_up(lines))),
        lines=len(lines),
    )


def up_direction(roll_deg: float, tilt_deg: float) -> FloatArray:
    """Return upwards in the camera's axes (x right, y up, z forwards), unit length."""
    roll, tilt = math.radians(roll_deg), math.radians(tilt_deg)
    return np.array(
        [-math.sin(roll) * math.cos(tilt), math.cos(roll) * math.cos(tilt), math.sin(tilt)]
    )


def _from_one_place(points: FloatArray, view: PinholeView) -> CameraOrientation:
    """Return the roll from lines close together, which lean when the camera is tilted.

    An upright line at u beside the image's middle leans by about u tan(tilt).
    """
    flat = view.plane(points)
    weight = np.hypot(*(flat[:, 0] - flat[:, 1]).T)
    beside = float(np.sum(flat.mean(axis=1)[:, 0] * weight) / weight.sum())
    lean = math.degrees(abs(beside) * math.tan(math.radians(USUAL_TILT_DEG)))
    marks = _half(points, view, lambda lines: _roll_deg(_lean(lines)))
    return CameraOrientation(
        roll_deg=_checked_roll(_lean(flat)),
        roll_half_deg=math.hypot(marks, lean),
        tilt_deg=None,
        tilt_half_deg=None,
        lines=len(points),
    )


def _lean(flat: FloatArray) -> FloatArray:
    """Return the lines' common direction in the image, upwards; longer lines count more."""
    up: FloatArray = np.append((flat[:, 0] - flat[:, 1]).sum(axis=0), 0.0)
    return up


def _up(flat: FloatArray) -> FloatArray:
    """Return the direction that lies in every line's plane through the camera.

    The plane of a line is spanned by the directions to its points; the direction square to all
    the planes' normals is the last right singular vector. Longer lines count more.

    Parameters
    ----------
    flat
        Shape (lines, 2, 2): directions (X/Z, Y/Z) to the upper and the lower points.
    """
    rays = np.concatenate([flat, np.ones((len(flat), 2, 1))], axis=2)
    _, _, rows = np.linalg.svd(np.cross(rays[:, 0], rays[:, 1]))
    up: FloatArray = rows[-1]
    return up if up[1] > 0 else -up


def _roll_deg(up: FloatArray) -> float:
    return math.degrees(math.atan2(-up[0], up[1]))


def _tilt_deg(up: FloatArray) -> float:
    return math.degrees(math.asin(float(up[2] / np.linalg.norm(up))))


def _checked_roll(up: FloatArray) -> float:
    roll = _roll_deg(up)
    if abs(roll) > LARGEST_ROLL_DEG:
        raise InputError(
            f"The lines lean by {abs(roll):.0f} degrees. Mark the upper end first, on something "
            "upright; turn the picture upright if it is not."
        )
    return roll


def _half(points: FloatArray, view: PinholeView, figure: Callable[[FloatArray], float]) -> float:
    """Return half of a figure's 95 % interval, from errors of the marks and an unknown lens.

    Each mark is moved by MARK_ERROR_PX along each axis; the changes add in quadrature. An unknown
    lens adds the largest change over the usual fields of view.
    """
    middle = figure(view.plane(points))
    steps = MARK_ERROR_PX * np.eye(points.size).reshape(points.size, *points.shape)
    changes = [figure(flat) - middle for flat in view.plane(points + steps)]
    lens = max(abs(figure(candidate.plane(points)) - middle) for candidate in view.candidates())
    return math.hypot(*changes, lens)


def _check(points: FloatArray, view: PinholeView) -> None:
    if len(points) == 0:
        raise InputError("Mark at least one upright line by its upper and lower point.")
    if not np.isfinite(points).all():
        raise InputError("A marked point is not a number.")
    size = np.array([view.width_px, view.height_px])
    if not ((points >= -0.5) & (points <= size - 0.5)).all():
        raise InputError(
            f"A marked point lies outside the picture of {size[0]} x {size[1]} pixels."
        )
    lengths = np.hypot(*(points[:, 0] - points[:, 1]).T)
    if lengths.min() < SHORTEST_LINE_PX:
        raise InputError(
            f"A marked line is only {lengths.min():.0f} pixels long; mark points at least "
            f"{SHORTEST_LINE_PX:.0f} pixels apart, the farther the better."
        )
