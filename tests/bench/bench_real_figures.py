"""Figures over readings of real people: errors, intervals held, and how sure they are.

Arms of one group are no independent witnesses, so confidence intervals come from a bootstrap that
draws whole groups.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from measure.domain.landmarks import FloatArray
from tests.bench.bench_real_readings import ArmReading

#: Errors beyond this are gross, degrees.
GROSS_DEG = 15.0
#: With fewer groups a bootstrap says nothing.
LEAST_GROUPS = 5
_DRAWS, _SEED = 2000, 0

Span = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A mean over arms and its 95 % confidence interval; None with too few groups."""

    value: float
    span: Span | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """What the accepted arms of one cell show, degrees and shares (0..1).

    Attributes
    ----------
    offered
        Usable arms on the right person, accepted or not.
    accepted
        Arms that were read.
    refused_for
        First reason of each refusal, with how many it refused.
    held
        Share of the marked angles inside the shown interval.
    held_allowing
        The same, with the scatter of the marking itself allowed for.
    half
        Mean half-width of the shown intervals; None for readings that have none.
    """

    offered: int
    accepted: int
    refused_for: Counter[str]
    bias: Figure
    mean_error: Figure
    p95: float
    gross: float
    held: Figure | None
    held_allowing: float | None
    half: float | None


def figures(readings: Sequence[ArmReading], line: str = "") -> Figures | None:
    """Return the figures of readings, or of a plain line over the same accepted arms.

    None where nothing was accepted.
    """
    accepted = [reading for reading in readings if reading.accepted]
    if line:
        accepted = [reading for reading in accepted if line in reading.plain_deg]
    if not accepted:
        return None
    groups = [reading.arm.group for reading in accepted]
    errors = np.array(
        [reading.plain_error_deg(line) if line else reading.error_deg for reading in accepted]
    )
    size = np.abs(errors)
    common: dict[str, Any] = {
        "offered": len(readings),
        "accepted": len(accepted),
        "refused_for": first_reasons(readings),
        "bias": mean_figure(errors, groups),
        "mean_error": mean_figure(size, groups),
        "p95": float(np.percentile(size, 95)),
        "gross": float(np.mean(size > GROSS_DEG)),
    }
    if line:
        return Figures(**common, held=None, held_allowing=None, half=None)
    halves = np.array([reading.half_deg for reading in accepted], dtype=np.float64)
    noise = np.array([reading.arm.noise_deg for reading in accepted])
    return Figures(
        **common,
        held=mean_figure((size <= halves).astype(np.float64), groups),
        held_allowing=float(np.mean(size <= np.hypot(halves, 1.96 * noise))),
        half=float(np.mean(halves)),
    )


def first_reasons(readings: Sequence[ArmReading]) -> Counter[str]:
    return Counter(reading.refused_for[0] for reading in readings if reading.refused_for)


def mean_figure(values: FloatArray, groups: Sequence[str]) -> Figure:
    """Return the mean of values with its interval by a bootstrap over their groups."""
    return Figure(value=float(np.mean(values)), span=group_bootstrap(values, groups))


def group_bootstrap(values: FloatArray, groups: Sequence[str]) -> Span | None:
    """Return the 95 % interval of the mean when whole groups are drawn with replacement.

    The seed is fixed: the same values give the same interval. None with too few groups.
    """
    names, index = np.unique(np.array(groups), return_inverse=True)
    if len(names) < LEAST_GROUPS:
        return None
    sums, counts = np.bincount(index, weights=values), np.bincount(index)
    drawn = np.random.default_rng(_SEED).integers(0, len(names), (_DRAWS, len(names)))
    means = sums[drawn].sum(axis=1) / counts[drawn].sum(axis=1)
    low, high = np.percentile(means, [2.5, 97.5])
    return float(low), float(high)


def mean_over_ranges(readings: Sequence[ArmReading]) -> tuple[float, float]:
    """Return (mean error, size of the bias), each the mean over the ranges that hold a reading.

    Most arms hang; so every range counts as much as the others.
    """
    cells = [figures([one for one in readings if in_range(one, span)]) for span in RANGES.values()]
    filled = [cell for cell in cells if cell is not None]
    if not filled:
        return float("nan"), float("nan")
    return (
        float(np.mean([cell.mean_error.value for cell in filled])),
        float(np.mean([abs(cell.bias.value) for cell in filled])),
    )


#: Ranges of the marked angle, degrees: from, below.
RANGES: dict[str, Span] = {
    "below 30°": (-90.0, 30.0),
    "30-60°": (30.0, 60.0),
    "60-120°": (60.0, 120.0),
    "from 120°": (120.0, 270.0),
}


def in_range(reading: ArmReading, span: Span) -> bool:
    low, high = span
    return low <= reading.arm.marked_deg < high
