"""Deming regression of the camera on the goniometer: a gain error apart from unequal errors.

The regression of difference on mean (:mod:`calibration.statistics.proportional_bias`) also slopes
where the two instruments merely err by different amounts. Deming's line takes the ratio of their
error variances into account; repeats give that ratio. Slope and jackknife after Linnet 1993
(doi:10.1093/clinchem/39.3.424).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy import stats

from calibration.statistics.estimate import TAIL, Estimate
from measure.domain.landmarks import FloatArray

#: Fewest people for a line with an interval. [project]
FEWEST_PEOPLE = 4
#: Fewest degrees of freedom of the repeats for a ratio of variances: with 10 the ratio is known
#: to within a factor of about 3.7. [project]
FEWEST_DEGREES = 10


@dataclass(frozen=True, slots=True, kw_only=True)
class ErrorRatio:
    """Error variances of both instruments from repeats of the same position.

    Attributes
    ----------
    camera_variance, goniometer_variance
        Square degrees; what both share, the person's own variation, is left out.
    degrees
        Degrees of freedom of either.
    """

    camera_variance: float
    goniometer_variance: float
    degrees: int

    @property
    def ratio(self) -> float:
        """Camera's error variance over the goniometer's."""
        return self.camera_variance / self.goniometer_variance


@dataclass(frozen=True, slots=True, kw_only=True)
class DemingLine:
    """The line camera = at_centre + slope * (goniometer - centre).

    Attributes
    ----------
    slope
        Change of the camera's reading for a true change of one degree; 1 is no gain error.
    at_centre_deg, centre_deg
        Mean of the camera's and of the goniometer's readings.
    errors
        The error variances that the line goes by.
    """

    slope: Estimate
    at_centre_deg: float
    centre_deg: float
    errors: ErrorRatio


def error_ratio(
    camera: Sequence[FloatArray], goniometer: Sequence[FloatArray], *, same_move: bool
) -> ErrorRatio | None:
    """Return the error variances from repeats of the same position, one array a shoulder.

    Where both instruments read the same moves, the person's own variation from move to move is in
    both alike: it is the covariance of the two within shoulders, and taken off either variance.

    Returns
    -------
    None for fewer than 10 degrees of freedom, or where a variance comes out as zero or less.
    """
    squares = {"camera": 0.0, "goniometer": 0.0, "shared": 0.0}
    degrees = {"camera": 0, "goniometer": 0}
    for c, g in zip(camera, goniometer, strict=True):
        for name, values in (("camera", c), ("goniometer", g)):
            if len(values) > 1:
                squares[name] += float(np.sum((values - values.mean()) ** 2))
                degrees[name] += len(values) - 1
        if same_move and len(c) > 1:
            squares["shared"] += float(np.sum((c - c.mean()) * (g - g.mean())))
    fewest = min(degrees.values())
    if fewest < FEWEST_DEGREES:
        return None
    shared = squares["shared"] / fewest
    variances = [squares[name] / degrees[name] - shared for name in ("camera", "goniometer")]
    if min(variances) <= 0:
        return None
    return ErrorRatio(
        camera_variance=variances[0], goniometer_variance=variances[1], degrees=fewest
    )


def deming(
    camera: Sequence[FloatArray], goniometer: Sequence[FloatArray], errors: ErrorRatio
) -> DemingLine | None:
    """Return Deming's line; one array of paired readings a person.

    The interval comes from leaving out one person at a time (t, people - 1).

    Returns
    -------
    None for fewer than four people, or where the readings do not rise together.
    """
    people = len(camera)
    if people < FEWEST_PEOPLE:
        return None
    slope = deming_slope(np.concatenate(camera), np.concatenate(goniometer), errors.ratio)
    without = [
        deming_slope(
            np.concatenate([*camera[:omitted], *camera[omitted + 1 :]]),
            np.concatenate([*goniometer[:omitted], *goniometer[omitted + 1 :]]),
            errors.ratio,
        )
        for omitted in range(people)
    ]
    slopes = np.array([value for value in without if value is not None])
    if slope is None or len(slopes) < people:
        return None
    spread = float(np.sum((slopes - slopes.mean()) ** 2))
    half = float(stats.t.isf(TAIL, people - 1)) * math.sqrt(spread * (people - 1) / people)
    return DemingLine(
        slope=Estimate(value=slope, low=slope - half, high=slope + half),
        at_centre_deg=float(np.concatenate(camera).mean()),
        centre_deg=float(np.concatenate(goniometer).mean()),
        errors=errors,
    )


def deming_slope(camera: FloatArray, goniometer: FloatArray, ratio: float) -> float | None:
    """Return the slope of camera on goniometer; None where they do not rise together.

    Parameters
    ----------
    ratio
        The camera's error variance over the goniometer's.
    """
    c, g = camera - camera.mean(), goniometer - goniometer.mean()
    across, up, both = float(np.sum(g * g)), float(np.sum(c * c)), float(np.sum(c * g))
    if both <= 1e-12 * max(1.0, across, up):
        return None
    lead = up - ratio * across
    return (lead + math.sqrt(lead**2 + 4 * ratio * both**2)) / (2 * both)
