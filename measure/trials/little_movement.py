"""Little movement: trials of very stiff shoulders, in which next to nothing moves.

Where a series shows no trial of the usual size, a smaller one may still be told from standing
still: by a held step, by a pose that is only taken for the movement (the forearm square and
ahead, the hand placed behind the back), or by the person, who says so. Arms that hang off a
large body have their own rest.
"""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Family, View
from measure.kinematics.angles import length, median_over
from measure.kinematics.fusion import FusedSeries
from measure.kinematics.reach import sideways_of
from measure.trials.segmentation import (
    LEAST_HOLD_S,
    LEAST_REST_S,
    SegmentationParams,
    TrialCandidate,
    segment_trials,
    usual_step_s,
)

#: An arm that hangs still farther from the trunk than this, degrees, is no rest of its own.
#: [project]
OWN_REST_MOST_DEG = 45.0
#: How far from its own rest an arm still rests, degrees. [project]
OWN_REST_TOLERANCE_DEG = 8.0
#: Candidates that travel less than this share of the farthest are stirs beside it. [project]
LIKE_FARTHEST = 0.6
#: The hold of a small move, as a share of the way up: of so little way the network's own scatter
#: is a large share. [project]
SMALL_HOLD_SHARE = 0.5
#: A small move goes at least so many times as far as the arm sways at rest: nobody stands quite
#: still. [project]
OVER_SWAY = 1.5
#: A hand that is placed behind the back moves by this, over the trunk, and then stays within the
#: second figure. [project]
HAND_PLACED, HAND_STEADY = 0.15, 0.03
#: A hanging hand, seen from behind, is farther than this from the middle of the hips, over the
#: trunk. [project]
HANGS_BESIDE = 0.22
#: How long the zero pose is seen before the position that is held, seconds. [project]
ZERO_POSE_S = 0.8


def little_trials(
    fused: FusedSeries, task: MeasurementTask, params: SegmentationParams
) -> tuple[TrialCandidate, ...]:
    """Return trials where :func:`segment_trials` finds none of the usual size.

    Parameters
    ----------
    fused
        The coarse pass's series of the whole source.
    params
        How the series of the movement behaves.
    """
    time_s, values = fused.time_s, fused.value
    match task.facts.family:
        case Family.ELEVATION:
            own = own_rest(time_s, values, params)
            usual = segment_trials(time_s, values, own).candidates
            return usual or _steps_over_sway(time_s, values, own, task.facts.least_step)
        case Family.ROTATION:
            step = task.facts.least_step
            return (
                _held_steps(time_s, values, params, step)
                or _held_steps_down(time_s, values, params, step)
                or _held_pose(time_s, values, params)
            )
        case Family.REACH:
            return _placed_hand(fused, task.known_view)


def own_rest(
    time_s: FloatArray, values: FloatArray, params: SegmentationParams
) -> SegmentationParams:
    """Return the parameters with the person's own rest, where the usual one is never seen.

    It is the first still stretch, if no later one lies lower and the arm still hangs.
    """
    if segment_trials(time_s, values, params).neutral_seen:
        return params
    levels = [level for _, _, level in _still_stretches(time_s, values, params.steady)]
    if not levels or levels[0] > min(OWN_REST_MOST_DEG, min(levels) + OWN_REST_TOLERANCE_DEG):
        return params
    return replace(params, rest=(levels[0], OWN_REST_TOLERANCE_DEG))


def held_until_now(
    time_s: FloatArray, values: FloatArray, params: SegmentationParams
) -> TrialCandidate | None:
    """Return the trial whose position is being held as the series ends, however little it moved.

    For a person who has said that this is the position: nothing else tells it from resting.
    """
    stretches = _still_stretches(time_s, values, params.steady)
    if not stretches or stretches[-1][1] < time_s[-1] - LEAST_REST_S:
        return None
    start_s, end_s, level = stretches[-1]
    if len(stretches) == 1:
        return _parted(start_s, end_s, level)
    rest_start_s, rest_end_s, rest = stretches[0]
    held = _candidate((rest_start_s, rest_end_s), (start_s, end_s), rest)
    return replace(held, little=abs(level - rest) < params.least_travel)


def _held_steps(
    time_s: FloatArray, values: FloatArray, params: SegmentationParams, step: float
) -> tuple[TrialCandidate, ...]:
    """Return small moves that end in a steady hold, the farthest ones."""
    small = replace(params, least_travel=step, hold_share=SMALL_HOLD_SHARE)
    smaller = segment_trials(time_s, values, small)
    held = [trial for trial in smaller.candidates if trial.hold_start_s is not None]
    travels = {
        trial: abs(_median_between(time_s, values, trial) - trial.rest_value)
        for trial in held
        if trial.steady
    }
    farthest = max(travels.values(), default=0.0)
    return tuple(
        replace(trial, little=True)
        for trial, travel in travels.items()
        if travel >= LIKE_FARTHEST * farthest
    )


def _steps_over_sway(
    time_s: FloatArray, values: FloatArray, params: SegmentationParams, step: float
) -> tuple[TrialCandidate, ...]:
    """Return the held steps of an arm that otherwise hangs and sways much less."""
    steps = _held_steps(time_s, values, params, step)
    least = OVER_SWAY * _sway(time_s, values, steps)
    return tuple(
        trial
        for trial in steps
        if abs(_median_between(time_s, values, trial) - trial.rest_value) >= least
    )


def _sway(time_s: FloatArray, values: FloatArray, moves: Sequence[TrialCandidate]) -> float:
    """Return how far values range outside of moves, all but a twentieth at either end; 0 unseen."""
    outside = np.isfinite(values)
    for move in moves:
        outside &= (time_s < move.start_s) | (time_s > move.end_s)
    if not np.any(outside):
        return 0.0
    low, high = np.percentile(values[outside], (5, 95))
    return float(high - low)


def _held_steps_down(
    time_s: FloatArray, values: FloatArray, params: SegmentationParams, step: float
) -> tuple[TrialCandidate, ...]:
    """Return the same of moves below rest; what they say is in the unturned series' unit."""
    turned = _held_steps(time_s, -values, params, step)
    return tuple(replace(trial, rest_value=-trial.rest_value) for trial in turned)


def _held_pose(
    time_s: FloatArray, values: FloatArray, params: SegmentationParams
) -> tuple[TrialCandidate, ...]:
    """Return the position in which the turned forearm stays, as one trial after its zero pose."""
    centre, tolerance = params.rest
    for start_s, end_s, level in _still_stretches(time_s, values, params.steady):
        if abs(level - centre) <= tolerance:
            pose = _parted(start_s, end_s, level)
            return () if pose is None else (pose,)
    return ()


def _placed_hand(fused: FusedSeries, view: View) -> tuple[TrialCandidate, ...]:
    """Return trials in which the hand leaves its place at rest and stays in another.

    Seen from behind, it must rest beside the body and then be held behind it.
    """
    keypoints, time_s = fused.keypoints, fused.time_s
    place = (keypoints.thumb - keypoints.mid_hip) / keypoints.trunk_px[:, None]
    seen = np.isfinite(place[:, 0])
    if not np.any(seen):
        return ()
    early = seen & (time_s <= time_s[seen][0] + LEAST_REST_S)
    aside = np.abs(sideways_of(keypoints))
    if view is View.BACK and float(median_over(aside, early)) < HANGS_BESIDE:
        return ()
    moved = length(place - median_over(place, early))
    params = SegmentationParams(
        rest=(0.0, HAND_PLACED / 2), least_travel=HAND_PLACED, steady=HAND_STEADY
    )
    segmented = segment_trials(time_s, moved, params)
    return tuple(
        replace(trial, little=True, rest_value=_rest_level(time_s, fused.value, trial))
        for trial in segmented.candidates
        if trial.hold_start_s is not None
        and (view is not View.BACK or _median_between(time_s, aside, trial) < HANGS_BESIDE)
    )


def _rest_level(time_s: FloatArray, values: FloatArray, trial: TrialCandidate) -> float:
    rest = (time_s >= trial.rest_start_s) & (time_s <= trial.rest_end_s)
    return float(median_over(values, rest))


def _median_between(time_s: FloatArray, values: FloatArray, trial: TrialCandidate) -> float:
    assert trial.hold_start_s is not None
    assert trial.hold_end_s is not None
    hold = (time_s >= trial.hold_start_s) & (time_s <= trial.hold_end_s)
    return float(median_over(values, hold))


def _still_stretches(
    time_s: FloatArray, values: FloatArray, steady: float
) -> list[tuple[float, float, float]]:
    """Return start, end and level of each stretch of a hold's length that stays still."""
    finite = np.isfinite(values)
    time_s, values = time_s[finite], values[finite]
    least_s = LEAST_HOLD_S - usual_step_s(time_s) - 1e-6
    stretches, first = [], 0
    while first < len(values):
        last = first
        while last + 1 < len(values) and np.ptp(values[first : last + 2]) <= 2 * steady:
            last += 1
        if time_s[last] - time_s[first] >= least_s:
            level = float(np.median(values[first : last + 1]))
            stretches.append((float(time_s[first]), float(time_s[last]), level))
            first = last + 1
        else:
            first += 1
    return stretches


def _parted(start_s: float, end_s: float, level: float) -> TrialCandidate | None:
    """Return a trial that stays in one position: its beginning is the rest, the rest the hold."""
    rest_end_s = start_s + ZERO_POSE_S
    if end_s - rest_end_s < LEAST_HOLD_S:
        return None
    return _candidate((start_s, rest_end_s), (rest_end_s, end_s), level)


def _candidate(
    rest: tuple[float, float], hold: tuple[float, float], level: float
) -> TrialCandidate:
    return TrialCandidate(
        rest_start_s=rest[0],
        rest_end_s=rest[1],
        start_s=rest[1],
        end_s=hold[1],
        hold_start_s=hold[0],
        hold_end_s=hold[1],
        rest_value=level,
        steady=True,
        gap=False,
        little=True,
    )
