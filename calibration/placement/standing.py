"""Camera roll, tilt, height and distance from a person standing upright.

A check on the level and a rough guide for placing the camera, not a measurement: people do not
stand plumb, and their proportions differ. Tilt, height and distance need the legs in the image.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from calibration.placement.viewpoint import PinholeView
from measure.domain.landmarks import FloatArray, Landmark
from measure.domain.standing_pose import Neutral
from measure.domain.tracks import Track
from measure.errors import InputError
from measure.kinematics.neutral_pose import median_points, neutral_of

#: Height over stature of the middle of a left and a right landmark, as the network places them
#: on the virtual people of the sample clips, eyes at 0.936 [project]. Joint centres after Drillis
#: & Contini 1966 (in Winter, Biomechanics and Motor Control of Human Movement) lie at 0.039,
#: 0.285, 0.530, 0.818: with those the tilt came out ten degrees too low.
HEIGHTS: Mapping[tuple[Landmark, Landmark], float] = {
    (Landmark.LEFT_ANKLE, Landmark.RIGHT_ANKLE): 0.067,
    (Landmark.LEFT_KNEE, Landmark.RIGHT_KNEE): 0.285,
    (Landmark.LEFT_HIP, Landmark.RIGHT_HIP): 0.517,
    (Landmark.LEFT_SHOULDER, Landmark.RIGHT_SHOULDER): 0.806,
    (Landmark.LEFT_EYE, Landmark.RIGHT_EYE): 0.936,
}
#: Error of a joint's height over stature, 95 of 100. [project]
HEIGHT_ERROR = 0.02
#: Deviation of a standing trunk from plumb, 95 of 100, degrees. [project]
PLUMB_ERROR_DEG = 4.0
#: Statures of 95 of 100 adults, low, usual, high, metres, for an unknown stature. [project]
USUAL_STATURE_M = (1.50, 1.70, 1.92)
#: Range of a typed stature, metres. [project]
STATURES_M = (0.8, 2.5)


@dataclass(frozen=True, slots=True, kw_only=True)
class WithUncertainty:
    """A rough figure and half of its 95 % interval."""

    value: float
    half: float


@dataclass(frozen=True, slots=True, kw_only=True)
class StandingEstimate:
    """Estimates from a standing person; None where the legs were not seen.

    Attributes
    ----------
    roll_deg
        The camera's roll, if the person stands plumb.
    tilt_deg
        The camera's tilt, upwards positive.
    distance_m, height_m
        Horizontal distance from the camera to the person, and the camera's height above the
        floor.
    """

    neutral: Neutral
    roll_deg: WithUncertainty
    tilt_deg: WithUncertainty | None
    distance_m: WithUncertainty | None
    height_m: WithUncertainty | None


def estimate_from_standing(
    track: Track, view: PinholeView, stature_m: float | None = None
) -> StandingEstimate | str:
    """Return the estimates from a track of a person standing upright, or why there are none.

    Raises
    ------
    InputError
        For an impossible stature.
    """
    if stature_m is not None and not STATURES_M[0] <= stature_m <= STATURES_M[1]:
        raise InputError(
            f"{stature_m:g} m is not a possible height. Give it in metres, such as 1.72."
        )
    neutral = neutral_of(track)
    if isinstance(neutral, str):
        return neutral
    places = median_points(track)
    roll = _roll_deg(places, view)
    pairs = [pair for pair in HEIGHTS if all(mark in places for mark in pair)]
    rough = WithUncertainty(value=roll, half=PLUMB_ERROR_DEG)
    legs = {Landmark.LEFT_ANKLE, Landmark.LEFT_KNEE, Landmark.LEFT_HIP, Landmark.LEFT_SHOULDER}
    if not legs <= {pair[0] for pair in pairs}:
        return StandingEstimate(
            neutral=neutral, roll_deg=rough, tilt_deg=None, distance_m=None, height_m=None
        )
    middles = np.array([(np.add(places[a], places[b])) / 2 for a, b in pairs])
    shares = np.array([HEIGHTS[pair] for pair in pairs])
    tilt, distance, height = _with_halves(middles, shares, view, roll)
    low, usual, high = USUAL_STATURE_M
    stature = usual if stature_m is None else stature_m
    spread = 0.0 if stature_m is not None else (high - low) / 2 / usual

    def metres(figure: WithUncertainty) -> WithUncertainty:
        value = figure.value * stature
        return WithUncertainty(value=value, half=math.hypot(figure.half * stature, spread * value))

    return StandingEstimate(
        neutral=neutral,
        roll_deg=rough,
        tilt_deg=tilt,
        distance_m=metres(distance),
        height_m=metres(height),
    )


def _roll_deg(places: Mapping[Landmark, tuple[float, float]], view: PinholeView) -> float:
    shoulder = np.add(places[Landmark.LEFT_SHOULDER], places[Landmark.RIGHT_SHOULDER]) / 2
    hip = np.add(places[Landmark.LEFT_HIP], places[Landmark.RIGHT_HIP]) / 2
    up = view.plane(shoulder) - view.plane(hip)
    return math.degrees(math.atan2(-up[0], up[1]))


def _with_halves(
    middles: FloatArray, shares: FloatArray, view: PinholeView, roll_deg: float
) -> tuple[WithUncertainty, WithUncertainty, WithUncertainty]:
    """Return tilt in degrees, distance and camera height in statures, each with its half.

    Each joint's share is moved by its error, the roll by that of standing plumb, and an unknown
    lens through the usual fields of view; the changes add in quadrature.
    """
    middle = _solve(middles, shares, view, roll_deg)
    changes = [
        _solve(middles, shares + HEIGHT_ERROR * unit, view, roll_deg) - middle
        for unit in np.eye(len(shares))
    ]
    changes.append(_solve(middles, shares, view, roll_deg + PLUMB_ERROR_DEG) - middle)
    lens = [
        np.abs(_solve(middles, shares, candidate, roll_deg) - middle)
        for candidate in view.candidates()
    ]
    changes.append(np.max(lens, axis=0))
    halves = np.sqrt(np.sum(np.square(changes), axis=0))
    tilt, distance, height = (
        WithUncertainty(value=float(value), half=float(half))
        for value, half in zip(middle, halves, strict=True)
    )
    return tilt, distance, height


def _solve(
    middles: FloatArray, shares: FloatArray, view: PinholeView, roll_deg: float
) -> FloatArray:
    """Return tilt (degrees), distance and camera height (statures) from points on a plumb line.

    A point at height h (statures) on a plumb line at distance D, seen from height c by a
    camera tilted up by t, appears at v = (a h + b) / (m h + n) above the middle, with a = cos t,
    b = -(c cos t + D sin t), m = sin t, n = D cos t - c sin t. Four or more points give
    (a, b, m, n) up to scale as the last right singular vector.
    """
    roll = math.radians(roll_deg)
    flat = view.plane(middles)
    v = -math.sin(roll) * flat[:, 0] + math.cos(roll) * flat[:, 1]
    rows = np.stack([shares, np.ones_like(shares), -v * shares, -v], axis=1)
    _, _, right = np.linalg.svd(rows)
    a, b, m, n = right[-1] / math.hypot(right[-1][0], right[-1][2])
    if a < 0:
        a, b, m, n = -a, -b, -m, -n
    distance = n * a - b * m
    height = -(b * a + n * m)
    return np.array([math.degrees(math.atan2(m, a)), distance, height])
