"""Proportional bias: regression of the instruments' difference on their mean.

After Bland & Altman 1999, section 3.2 (doi:10.1177/096228029900800204), with the difference
camera minus goniometer: a regression on one instrument alone would show a slope even where there
is none.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy import stats

from calibration.statistics.estimate import TAIL, Estimate
from measure.domain.landmarks import FloatArray

#: Fewest people for a line with an interval. [project]
FEWEST_PEOPLE = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class ProportionalBias:
    """The line difference = at_centre + slope * (mean - centre).

    Attributes
    ----------
    slope
        Degrees of difference per degree of the mean; 0 is no gain error.
    at_centre_deg
        The line's difference at the centre of the means.
    centre_deg, lowest_deg, highest_deg
        Mean, smallest and largest of the pairs' means.
    residual_sd_deg
        Standard deviation of the differences about the line.
    """

    slope: Estimate
    at_centre_deg: float
    centre_deg: float
    lowest_deg: float
    highest_deg: float
    residual_sd_deg: float

    @property
    def camera_per_goniometer(self) -> float:
        """Change of the camera's reading per degree of the goniometer's.

        From difference = slope * mean: c - g = slope (c + g) / 2.
        """
        half = self.slope.value / 2
        return (1 + half) / (1 - half) if half < 1 else math.inf

    def difference_at(self, mean_deg: float) -> float:
        """Return the line's difference, camera minus goniometer, at a mean of both."""
        return self.at_centre_deg + self.slope.value * (mean_deg - self.centre_deg)


def proportional_bias(
    camera: Sequence[FloatArray], goniometer: Sequence[FloatArray]
) -> ProportionalBias | None:
    """Return the regression of difference on mean; one array of paired readings a person.

    With one pair a person the interval of the slope is the usual one (t, n - 2). With more,
    pairs of a person are not independent: the interval then comes from leaving out one person
    at a time (the jackknife of MacKinnon & White 1985, doi:10.1016/0304-4076(85)90158-7, with
    people as what is left out; t, people - 1).

    Returns
    -------
    None for fewer than three people, or where the means do not differ, so that there is no
    line; also where leaving out one person leaves no line.
    """
    people = len(camera)
    if people < FEWEST_PEOPLE:
        return None
    means = [(c + g) / 2 for c, g in zip(camera, goniometer, strict=True)]
    differences = [c - g for c, g in zip(camera, goniometer, strict=True)]
    x, y = np.concatenate(means), np.concatenate(differences)
    fitted = _line(x, y)
    if fitted is None:
        return None
    slope, at_centre = fitted
    residuals = y - at_centre - slope * (x - x.mean())
    residual_sd = float(np.sqrt(np.sum(residuals**2) / (len(x) - 2)))
    if len(x) == people:
        error = residual_sd / float(np.sqrt(np.sum((x - x.mean()) ** 2)))
        half = float(stats.t.isf(TAIL, people - 2)) * error
    else:
        without = [
            _line(
                np.concatenate([*means[:omitted], *means[omitted + 1 :]]),
                np.concatenate([*differences[:omitted], *differences[omitted + 1 :]]),
            )
            for omitted in range(people)
        ]
        slopes = np.array([line[0] for line in without if line is not None])
        if len(slopes) < people:
            return None
        spread = float(np.sum((slopes - slope) ** 2))
        half = float(stats.t.isf(TAIL, people - 1)) * (spread * (people - 1) / people) ** 0.5
    return ProportionalBias(
        slope=Estimate(value=slope, low=slope - half, high=slope + half),
        at_centre_deg=at_centre,
        centre_deg=float(x.mean()),
        lowest_deg=float(x.min()),
        highest_deg=float(x.max()),
        residual_sd_deg=residual_sd,
    )


def _line(x: FloatArray, y: FloatArray) -> tuple[float, float] | None:
    """Return slope and height at the centre by least squares; None without a range."""
    spread = float(np.sum((x - x.mean()) ** 2))
    if spread <= 1e-12 * max(1.0, float(np.max(np.abs(x)))) ** 2:
        return None
    return float(np.sum((x - x.mean()) * y)) / spread, float(y.mean())
