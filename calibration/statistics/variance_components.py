"""Agreement of two instruments from all their pairs, by components of variance.

Where shoulders were read several times the table of :mod:`calibration.statistics.icc`, one reading
each, would leave out most of the study. Here the variance of a single difference is that of
Bland & Altman 2007 (doi:10.1080/10543400701329422), between and within shoulders together, and
what the instruments have in common is their covariance. With one pair a shoulder the coefficients
are those of the table; with equally many they are those of the two-way analysis of variance with
replicates (Eliasziw 1994, doi:10.1093/ptj/74.8.777).
"""

import math
from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass

import numpy as np
from scipy import stats

from calibration.statistics.bland_altman import Pairing, bland_altman
from calibration.statistics.estimate import TAIL, Estimate
from calibration.statistics.icc import FEWEST_SHOULDERS, Reliability
from measure.domain.landmarks import FloatArray

#: Coefficients beyond this are cut off before their logarithm is taken. [technical]
_NEAR_ONE = 1 - 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Components:
    """Variances of a single reading, square degrees.

    Attributes
    ----------
    shoulders
        What both instruments see alike: the covariance of their readings.
    instruments
        Of the constant difference between the instruments; 0 at least.
    residual
        Half the variance of a single difference.
    """

    shoulders: float
    instruments: float
    residual: float

    def coefficient(self, *, agreement: bool, instruments: int = 1) -> float:
        """Return the intraclass correlation of the mean of one or both instruments."""
        error = self.residual + (self.instruments if agreement else 0.0)
        whole = self.shoulders + error / instruments
        return self.shoulders / whole if whole > 0 else math.nan


def components(
    camera: Sequence[FloatArray], goniometer: Sequence[FloatArray], pairing: Pairing
) -> Components:
    """Return the components from one array of readings for each shoulder and instrument.

    With SAME_MOVE the position may change from pair to pair, and counts as what is measured.

    Raises
    ------
    ValueError
        As :func:`calibration.statistics.bland_altman.bland_altman`.
    """
    limits = bland_altman(camera, goniometer, pairing)
    means = np.array([[c.mean(), g.mean()] for c, g in zip(camera, goniometer, strict=True)])
    shared = float(np.cov(means.T)[0, 1])
    if pairing is Pairing.SAME_MOVE:
        degrees = sum(len(c) - 1 for c in camera)
        if degrees:
            within = sum(
                float(np.sum((c - c.mean()) * (g - g.mean())))
                for c, g in zip(camera, goniometer, strict=True)
            )
            shared += (1 - float(np.mean([1 / len(c) for c in camera]))) * within / degrees
    of_bias = limits.between_sd**2 / limits.units
    return Components(
        shoulders=shared,
        instruments=max(0.0, (limits.bias.value**2 - of_bias) / 2),
        residual=limits.sd.value**2 / 2,
    )


def reliability_of_pairs(
    camera: Sequence[FloatArray],
    goniometer: Sequence[FloatArray],
    people: Sequence[Hashable],
    pairing: Pairing,
) -> Reliability | None:
    """Return coefficients and standard errors of measurement from all pairs.

    Intervals of the coefficients come from leaving out one person at a time, on Fisher's scale
    (t, people - 1); that of the standard error from the variance of a difference (Zou 2013).

    Parameters
    ----------
    people
        Whose each shoulder is.

    Returns
    -------
    None where all shoulders read the same, or where leaving out one person leaves too few.
    """
    whole = components(camera, goniometer, pairing)
    if whole.shoulders + whole.residual <= 0:
        return None
    parts = []
    for person in dict.fromkeys(people):
        kept = [place for place, other in enumerate(people) if other != person]
        if len(kept) < FEWEST_SHOULDERS:
            return None
        parts.append(components([camera[k] for k in kept], [goniometer[k] for k in kept], pairing))
    sd = bland_altman(camera, goniometer, pairing).sd
    return Reliability(
        icc_2_1=_jackknifed(whole, parts, lambda c: c.coefficient(agreement=True)),
        icc_3_1=_jackknifed(whole, parts, lambda c: c.coefficient(agreement=False)),
        icc_a_k=_jackknifed(whole, parts, lambda c: c.coefficient(agreement=True, instruments=2)),
        sem_agreement=math.sqrt(whole.instruments + whole.residual),
        sem_consistency=Estimate(
            value=sd.value / math.sqrt(2), low=sd.low / math.sqrt(2), high=sd.high / math.sqrt(2)
        ),
        shoulders=len(camera),
        raters=2,
    )


def _jackknifed(
    whole: Components, parts: Sequence[Components], figure: Callable[[Components], float]
) -> Estimate:
    def stretched(value: float) -> float:
        return math.atanh(min(_NEAR_ONE, max(-_NEAR_ONE, value)))

    value, count = figure(whole), len(parts)
    left_out = np.array([stretched(figure(part)) for part in parts])
    spread = float(np.sum((left_out - left_out.mean()) ** 2)) * (count - 1) / count
    half = float(stats.t.isf(TAIL, count - 1)) * math.sqrt(spread)
    middle = stretched(value)
    return Estimate(value=value, low=math.tanh(middle - half), high=math.tanh(middle + half))
