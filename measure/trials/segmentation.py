"""Segmentation: trials in a series of values, each neutral, move, hold and return.

The series may be an angle or a height; what counts as neutral and as a move comes from the
movement's model. A value is never made up: frames without one (NaN) are left out, and a
long gap inside a trial is reported.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import FloatArray

#: Shortest hold, seconds. [project]
LEAST_HOLD_S = 1.0
#: Shortest rest before a trial, seconds. [project]
LEAST_REST_S = 0.4
#: A hold lies at least this share of the way up from rest to the top of its trial. [project]
HOLD_SHARE = 0.8
#: Edges of a hold farther from its median than this share of "steady" belong to the moves.
#: [project]
EDGE_SHARE = 0.4
#: A gap without values longer than this, seconds, inside a trial means that the person was lost.
#: [project]
LONGEST_GAP_S = 0.7


@dataclass(frozen=True, slots=True, kw_only=True)
class SegmentationParams:
    """How the series of one movement behaves, in the series' own unit.

    Attributes
    ----------
    rest
        (centre, tolerance) of the neutral position.
    least_travel
        A smaller move is no trial.
    steady
        A hold's values stay within this distance of their median.
    hold_share
        A hold lies at least this share of the way up from rest to the top of its trial.
    """

    rest: tuple[float, float]
    least_travel: float
    steady: float
    hold_share: float = HOLD_SHARE


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialCandidate:
    """One way up and back in a series; times in seconds.

    Attributes
    ----------
    rest_start_s, rest_end_s
        The neutral stretch before it.
    start_s, end_s
        From leaving neutral until back in it, or until the series ends.
    hold_start_s, hold_end_s
        The hold; None where there was none.
    rest_value
        Median value of the neutral stretch.
    steady
        False where the hold drifts more than a steady one.
    gap
        True where values were missing for longer than a moment.
    little
        True where next to nothing moved; see :mod:`measure.trials.little_movement`.
    """

    rest_start_s: float
    rest_end_s: float
    start_s: float
    end_s: float
    hold_start_s: float | None
    hold_end_s: float | None
    rest_value: float
    steady: bool
    gap: bool
    little: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Segmentation:
    """The trial candidates of a series, and whether neutral and any move were seen at all."""

    candidates: tuple[TrialCandidate, ...]
    neutral_seen: bool
    moved: bool


def segment_trials(
    time_s: FloatArray, values: FloatArray, params: SegmentationParams
) -> Segmentation:
    """Return the trials of a series.

    Parameters
    ----------
    time_s
        Shape (n,), strictly increasing.
    values
        Shape (n,), NaN where there is none.
    params
        What counts as neutral, as a move and as a hold.
    """
    finite = np.isfinite(values)
    time_s, values = time_s[finite], values[finite]
    if len(values) < 3:
        return Segmentation(candidates=(), neutral_seen=False, moved=False)
    smooth = _median_of_three(values)
    centre, tolerance = params.rest
    neutral = np.abs(smooth - centre) <= tolerance
    moved = bool(np.ptp(smooth) >= params.least_travel)
    least_s = LEAST_REST_S - usual_step_s(time_s) - 1e-6
    candidates: list[TrialCandidate] = []
    position, neutral_seen = 0, False
    while position < len(smooth):
        rest = _first_rest(time_s, smooth, neutral, position, params, least_s)
        if rest is None:
            break
        neutral_seen = True
        first, last = rest
        level = float(np.median(smooth[first : last + 1]))
        candidate, position = _candidate_after(time_s, smooth, first, last, level, params)
        while candidate is None and position < len(smooth):
            # A small stir: the rest goes on, unless another comes before the arm leaves this one.
            leaves = _first_above(smooth, level + params.least_travel / 2, position)
            again = _first_rest(time_s, smooth[:leaves], neutral, position, params, least_s)
            if leaves == len(smooth) or again is not None:
                break
            candidate, position = _candidate_after(time_s, smooth, first, position, level, params)
        if candidate is not None:
            candidates.append(candidate)
    return Segmentation(candidates=tuple(candidates), neutral_seen=neutral_seen, moved=moved)


def _median_of_three(values: FloatArray) -> FloatArray:
    """Return the running median: a single wrong frame makes no hold and no move."""
    padded = np.concatenate([values[:1], values, values[-1:]])
    return np.asarray(np.median(np.stack([padded[:-2], padded[1:-1], padded[2:]]), axis=0))


def usual_step_s(time_s: FloatArray) -> float:
    """Return the usual time between frames.

    Frames are samples: a hold of a second may show one step less between its first and last.
    A single frame has no step: 0.
    """
    return float(np.median(np.diff(time_s))) if len(time_s) > 1 else 0.0


def _first_rest(
    time_s: FloatArray,
    values: FloatArray,
    neutral: NDArray[np.bool_],
    start: int,
    params: SegmentationParams,
    least_s: float,
) -> tuple[int, int] | None:
    """Return first and last index of the next neutral stretch that lasts long enough."""
    n = len(values)
    first = start
    while first < n:
        if not neutral[first]:
            first += 1
            continue
        last = first
        low = high = values[first]
        while last + 1 < n and neutral[last + 1]:
            low, high = min(low, values[last + 1]), max(high, values[last + 1])
            if high - low > params.least_travel / 2:
                break
            last += 1
        if time_s[last] - time_s[first] >= least_s:
            return first, last
        first += 1
    return None


def _first_above(values: FloatArray, limit: float, start: int) -> int:
    """Return the first index from `start` on with a value above a limit, or their number."""
    while start < len(values) and values[start] <= limit:
        start += 1
    return start


def _candidate_after(
    time_s: FloatArray,
    values: FloatArray,
    first: int,
    last: int,
    level: float,
    params: SegmentationParams,
) -> tuple[TrialCandidate | None, int]:
    """Return the next candidate above `level` after index `last`, and where to go on."""
    n = len(values)
    away = level + params.least_travel / 2
    start = _first_above(values, away, last)
    if start == n:
        return None, n
    rest_end = start - 1
    while rest_end > first and values[rest_end] > level + params.least_travel / 4:
        rest_end -= 1
    end = start
    while end + 1 < n and values[end + 1] > away:
        end += 1
    here = slice(start, end + 1)
    top = float(np.percentile(values[here], 95))
    if top - level < params.least_travel:
        return None, end + 1
    hold = _hold(time_s[here], values[here], level, top, params)
    times = time_s[rest_end : min(end + 2, n)]
    return (
        TrialCandidate(
            rest_start_s=float(max(time_s[first], time_s[rest_end] - 2.0)),
            rest_end_s=float(time_s[rest_end]),
            start_s=float(time_s[rest_end]),
            end_s=float(time_s[min(end + 1, n - 1)]),
            hold_start_s=None if hold is None else hold[0],
            hold_end_s=None if hold is None else hold[1],
            rest_value=level,
            steady=hold is None or hold[2],
            gap=bool(np.max(np.diff(times), initial=0.0) > LONGEST_GAP_S),
        ),
        end + 1,
    )


def _hold(
    time_s: FloatArray, values: FloatArray, level: float, top: float, params: SegmentationParams
) -> tuple[float, float, bool] | None:
    """Return start, end and steadiness of the longest still stretch near the top.

    A steady one is searched for first, then one that drifts up to twice as much.
    """
    floor = level + params.hold_share * (top - level)
    least_s = LEAST_HOLD_S - usual_step_s(time_s) - 1e-6
    for spread, steady in ((params.steady, True), (2 * params.steady, False)):
        best: tuple[float, int, int] | None = None
        first = 0
        for last in range(len(values)):
            if values[last] < floor:
                first = last + 1
                continue
            while np.ptp(values[first : last + 1]) > 2 * spread:
                first += 1
            span = float(time_s[last] - time_s[first])
            if span >= least_s and (best is None or span > best[0]):
                best = (span, first, last)
        if best is not None:
            first, last = _core(time_s, values, best[1], best[2], EDGE_SHARE * spread, least_s)
            return float(time_s[first]), float(time_s[last]), steady
    return None


def _core(
    time_s: FloatArray, values: FloatArray, first: int, last: int, near: float, least_s: float
) -> tuple[int, int]:
    """Return a still stretch without the slow beginning and end of the moves around it.

    Edges farther than `near` from the stretch's median are cut off, the farther one first,
    as long as the least hold remains.
    """
    level = float(np.median(values[first : last + 1]))
    while True:
        ends = {first: abs(values[first] - level), last: abs(values[last] - level)}
        worst = max(ends, key=lambda end: ends[end])
        start, end = (first + 1, last) if worst == first else (first, last - 1)
        span = float(time_s[end] - time_s[start])
        if ends[worst] <= near or span < least_s:
            return first, last
        first, last = start, end
