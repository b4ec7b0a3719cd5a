"""From the quick pass's track to the stretches of time worth a careful look."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from measure.domain.acquisition import UNKNOWN_CAMERA, CameraSetup, Setup
from measure.domain.landmarks import FloatArray, Side
from measure.domain.movements import MOVEMENTS, Movement, Unit, View
from measure.domain.reasons import GateResult, Reason, refuse
from measure.domain.tracks import FrameState, Track
from measure.kinematics.angles import median_over
from measure.kinematics.fusion import fuse_passes
from measure.kinematics.keypoints import arm_keypoints
from measure.trials.quality_gates import (
    SEPARATION,
    person_gate,
    picture_gate,
    rate_gate,
    separation_share,
    upright_gate,
    view_gate,
)
from measure.trials.segmentation import (
    Segmentation,
    SegmentationParams,
    TrialCandidate,
    segment_trials,
)
from measure.video.sampling import FINE_HZ, SKIP, DecimationSpan

#: A hold's values stay this close to their median: degrees and fraction. Ours.
STEADY = {Unit.DEGREES: 2.5, Unit.FRACTION: 0.02}
#: Times closer than this are of one frame.
_NEAR_S = 1e-6
#: Rest before a trial that the careful passes also see, seconds.
LEAD_S = 1.5
#: Of the rest before a trial the careful passes look at every so-manyth of their pictures. Ours.
REST_EVERY = 2
#: A shorter hold, seconds, has fewer than eight pictures at their usual rate, and what one picture
#: says scatters. Ours.
SHORT_HOLD_S = 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class ScanResult:
    """Trials of one movement in a track.

    Attributes
    ----------
    view
        The view given, or the one recognised.
    trials
        What the careful passes shall look at.
    windows
        Start and end in seconds for each trial.
    verdict
        Why there is nothing to look at, when `trials` is empty.
    guide
        Shape (n,): the quick value over the track's time.
    """

    view: View
    trials: tuple[TrialCandidate, ...]
    windows: tuple[tuple[float, float], ...]
    verdict: GateResult
    guide: FloatArray


def segmentation_params(movement: Movement) -> SegmentationParams:
    """Return how the series of a movement behaves."""
    facts = MOVEMENTS[movement]
    return SegmentationParams(
        rest=facts.rest, least_travel=facts.least_travel, steady=STEADY[facts.unit]
    )


def scan_for_trials(
    track: Track, movement: Movement, side: Side, view: View | None, setup: Setup
) -> ScanResult:
    """Return the trials in a quick track, or why there are none."""
    facts = MOVEMENTS[movement]
    nothing = np.full(len(track), np.nan)
    seen = track.state == FrameState.SEEN
    chosen = view or recognised_view(track, movement, side, setup.camera)
    if not np.any(seen):
        return ScanResult(
            view=chosen, trials=(), windows=(), verdict=refuse(Reason.NOBODY), guide=nothing
        )
    if chosen not in facts.views:
        return ScanResult(
            view=chosen, trials=(), windows=(), verdict=refuse(Reason.WRONG_VIEW), guide=nothing
        )
    too_slow = rate_gate(track)
    if too_slow.refused_for:
        return ScanResult(view=chosen, trials=(), windows=(), verdict=too_slow, guide=nothing)
    no_rest = np.zeros(len(track), dtype=bool)
    guide = fuse_passes([track], movement, side, chosen, no_rest, setup).value
    result = segment_trials(track.time_s, guide, segmentation_params(movement))
    trials = result.candidates
    if all(each.hold_start_s is None for each in trials) and person_gate(track).refused_for:
        trials = ()  # somebody who walks off swings an arm; that is no trial without a hold
    verdict = GateResult() if trials else _why_none(track, movement, side, chosen, result, setup)
    return ScanResult(
        view=chosen,
        trials=trials,
        windows=tuple(window_of(each, movement) for each in trials),
        verdict=verdict,
        guide=guide,
    )


def window_of(trial: TrialCandidate, movement: Movement) -> tuple[float, float]:
    """Return the stretch that the careful passes look at: rest, move, hold.

    External rotation needs the facing stance at the start of the source as well.
    """
    end = trial.end_s if trial.hold_end_s is None else min(trial.end_s, trial.hold_end_s + 0.4)
    if movement is Movement.EXTERNAL_ROTATION:
        return 0.0, end
    return max(trial.rest_start_s, trial.start_s - LEAD_S), end


def fine_rate_factor(trials: Sequence[TrialCandidate], movement: Movement, fps: float) -> int:
    """Return how many times their usual rate the careful passes need: 2 for a short hold, else 1.

    Parameters
    ----------
    fps
        Pictures a second that there are.
    """
    if movement is Movement.EXTERNAL_ROTATION or fps < 2 * FINE_HZ:
        return 1
    return 2 if any(_is_short(each) for each in trials) else 1


def decimation_plan(
    trials: Sequence[TrialCandidate], movement: Movement, times: int = 1
) -> tuple[DecimationSpan, ...]:
    """Return which of their pictures the careful passes look at.

    Of a hold those of the usual rate, of a short one all. Of the rest half as many are enough, and
    of the ways up and down none, since places do not depend on the pace
    (:class:`measure.pose.network.PoseNetwork`). Of external rotation all are looked at: how far the
    person has turned is read from every one. Where no hold was seen it is looked for anew.

    Parameters
    ----------
    times
        How many times the usual rate the pictures come at; see :func:`fine_rate_factor`.
    """
    if movement is Movement.EXTERNAL_ROTATION:
        return ()
    holds: list[DecimationSpan] = []
    others: list[DecimationSpan] = []
    for trial in trials:
        start_s, end_s = window_of(trial, movement)
        if trial.hold_start_s is None or trial.hold_end_s is None:
            holds.append((start_s, end_s, times))
            continue
        every = 1 if _is_short(trial) else times
        holds.append((trial.hold_start_s, trial.hold_end_s, every))
        others.append((trial.rest_end_s + _NEAR_S, trial.hold_start_s, SKIP))
        others.append((trial.hold_end_s, end_s, SKIP))
        others.append((start_s, end_s, REST_EVERY * times))
    return (*holds, *others)


def _is_short(trial: TrialCandidate) -> bool:
    if trial.hold_start_s is None or trial.hold_end_s is None:
        return False
    return trial.hold_end_s - trial.hold_start_s < SHORT_HOLD_S


def recognised_view(
    track: Track, movement: Movement, side: Side, camera: CameraSetup = UNKNOWN_CAMERA
) -> View:
    """Return the accepted view that fits the shoulders' separation, else the preferred one."""
    views = MOVEMENTS[movement].views
    if len(views) == 1 or len(track) == 0:
        return views[0]
    posture = arm_keypoints(track, side, camera)
    everywhere = np.ones(len(track), dtype=bool)
    across = float(
        median_over(
            separation_share(posture, float(median_over(posture.trunk_px, everywhere))), everywhere
        )
    )
    for view in views:
        low, high = SEPARATION[view]
        if low <= across <= high:
            return view
    return views[0]


def _why_none(
    track: Track, movement: Movement, side: Side, view: View, result: Segmentation, setup: Setup
) -> GateResult:
    """Return why no trial was found: the person, the view, or the movement itself."""
    posture = arm_keypoints(track, side, setup.camera)
    seen = track.state == FrameState.SEEN
    verdict = person_gate(track)
    if not verdict.refused_for:
        verdict += upright_gate(posture, seen)
    if not verdict.refused_for:
        verdict += picture_gate(track, movement, side, seen)
    if not verdict.refused_for and movement is not Movement.EXTERNAL_ROTATION:
        verdict += view_gate(posture, movement, view, seen, seen)
    if verdict.refused_for:
        return verdict
    if result.moved and not result.neutral_seen:
        return verdict + refuse(Reason.NO_NEUTRAL)
    return verdict + refuse(Reason.NO_MOVE)
