"""Reliability between instruments and testers, and the repeatability of each instrument.

Selects the rows of each comparison; the statistics are in :mod:`calibration.statistics.icc` and
:mod:`calibration.statistics.bland_altman`.
"""

import math
from collections.abc import Callable, Hashable, Sequence
from dataclasses import dataclass
from operator import attrgetter

import numpy as np

from calibration.agreement.pairs_table import PairedReading
from calibration.statistics.bland_altman import Pairing
from calibration.statistics.deming import ErrorRatio, error_ratio
from calibration.statistics.estimate import Estimate, sd_with_interval
from calibration.statistics.icc import (
    FEWEST_SHOULDERS,
    Z90,
    Z95,
    Reliability,
    intraclass_correlation,
    minimal_detectable_change,
)
from calibration.statistics.pooled_variance import pooled_variance
from calibration.statistics.variance_components import reliability_of_pairs
from measure.domain.landmarks import FloatArray

GroupKey = Callable[[PairedReading], Hashable]
ReadingGetter = Callable[[PairedReading], float]

person_key: GroupKey = attrgetter("person")
shoulder_key: GroupKey = attrgetter("shoulder")
camera_reading: ReadingGetter = attrgetter("camera_deg")
goniometer_reading: ReadingGetter = attrgetter("goniometer_deg")


@dataclass(frozen=True, slots=True, kw_only=True)
class WithinSubjectSd:
    """Within-subject standard deviation of one instrument over repeated measurements.

    Attributes
    ----------
    sd_deg
        Standard deviation within a shoulder (and tester), with its chi-square interval. It
        includes the instrument's error and the person's own variation.
    shoulders
        Number of shoulders with repeats.
    """

    sd_deg: Estimate
    shoulders: int

    @property
    def mdc90_deg(self) -> float:
        return minimal_detectable_change(self.sd_deg.value, z=Z90)

    @property
    def mdc95_deg(self) -> float:
        return minimal_detectable_change(self.sd_deg.value, z=Z95)


@dataclass(frozen=True, slots=True, kw_only=True)
class TesterBias:
    """Mean difference, camera minus goniometer, over the pairs of one tester."""

    tester: str
    pairs: int
    mean_deg: float


def group_readings(
    pairs: Sequence[PairedReading], unit: GroupKey, reading: ReadingGetter
) -> list[FloatArray]:
    """Return the finite readings of each unit, an array per unit; it may be empty."""
    groups: dict[Hashable, list[float]] = {}
    for pair in pairs:
        group = groups.setdefault(unit(pair), [])
        if math.isfinite(reading(pair)):
            group.append(reading(pair))
    return [np.array(group, dtype=np.float64) for group in groups.values()]


def sort_by_repeat(pairs: Sequence[PairedReading]) -> list[PairedReading]:
    """Return the pairs by their repeat number; pairs without one keep their place at the end."""
    return sorted(pairs, key=lambda pair: math.inf if pair.repeat is None else pair.repeat)


def compare_instruments(pairs: Sequence[PairedReading], pairing: Pairing) -> Reliability | None:
    """Compare single readings of camera and goniometer, from all pairs of all shoulders.

    With one pair of each shoulder the intervals are exact (F); with repeats the coefficients come
    from components of variance. The unit is the shoulder; people are what is left out.
    """
    camera = group_readings(pairs, shoulder_key, camera_reading)
    goniometer = group_readings(pairs, shoulder_key, goniometer_reading)
    if len(camera) < FEWEST_SHOULDERS:
        return None
    if all(len(group) == 1 for group in (*camera, *goniometer)):
        return intraclass_correlation(
            np.column_stack([np.concatenate(camera), np.concatenate(goniometer)])
        )
    people = [person for person, _ in dict.fromkeys(pair.shoulder for pair in pairs)]
    return reliability_of_pairs(camera, goniometer, people, pairing)


def compare_errors(pairs: Sequence[PairedReading], *, same_move: bool) -> ErrorRatio | None:
    """Return how much either instrument errs, from repeats of a shoulder by one tester."""
    unit = attrgetter("shoulder", "tester")
    return error_ratio(
        group_readings(pairs, unit, camera_reading),
        group_readings(pairs, unit, goniometer_reading),
        same_move=same_move,
    )


def compare_testers(pairs: Sequence[PairedReading]) -> Reliability | None:
    """Compare the testers on the shoulders that all of them measured, first reading each."""
    testers = sorted({pair.tester for pair in pairs if pair.tester})
    if len(testers) < 2:
        return None
    first: dict[Hashable, dict[str, float]] = {}
    for pair in sort_by_repeat(pairs):
        if pair.tester and math.isfinite(pair.goniometer_deg):
            first.setdefault(pair.shoulder, {}).setdefault(pair.tester, pair.goniometer_deg)
    rows = [
        [row[tester] for tester in testers] for row in first.values() if len(row) == len(testers)
    ]
    if len(rows) < FEWEST_SHOULDERS:
        return None
    return intraclass_correlation(np.array(rows, dtype=np.float64))


def within_subject_sd(
    pairs: Sequence[PairedReading], reading: ReadingGetter
) -> WithinSubjectSd | None:
    """Return the scatter of readings within a shoulder and tester; None without repeats.

    Within a tester also for the camera: where two testers read one held position, the table
    holds the same camera reading twice, which is no repeat.
    """
    groups = [
        group
        for group in group_readings(pairs, attrgetter("shoulder", "tester"), reading)
        if len(group) > 1
    ]
    variance, degrees = pooled_variance(groups)
    if degrees == 0:
        return None
    return WithinSubjectSd(sd_deg=sd_with_interval(variance, degrees), shoulders=len(groups))


def bias_by_tester(pairs: Sequence[PairedReading]) -> tuple[TesterBias, ...]:
    """Return each tester's mean difference; empty unless there are at least two testers."""
    testers = sorted({pair.tester for pair in pairs})
    if len(testers) < 2:
        return ()
    biases = []
    for tester in testers:
        differences = [
            pair.camera_deg - pair.goniometer_deg
            for pair in pairs
            if pair.tester == tester and pair.complete
        ]
        if differences:
            biases.append(
                TesterBias(
                    tester=tester or "no name",
                    pairs=len(differences),
                    mean_deg=float(np.mean(differences)),
                )
            )
    return tuple(biases)
