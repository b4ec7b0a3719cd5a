"""Coarse scan: from the coarse pass's track to the trials and the spans that need fine passes."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import MOVEMENTS, Movement, View
from measure.domain.reasons import GateResult, Reason, refuse
from measure.domain.tracks import FrameState, Track
from measure.kinematics.angles import median_over
from measure.kinematics.fusion import FusedSeries, keypoints_of_passes
from measure.kinematics.keypoints import ArmKeypoints
from measure.trials.little_movement import little_trials
from measure.trials.movement_model import model_of
from measure.trials.quality_gates import (
    SEPARATION,
    person_gate,
    picture_gate,
    rate_gate,
    upright_gate,
    view_gate,
)
from measure.trials.segmentation import Segmentation, TrialCandidate, segment_trials
from measure.video.sampling import FINE_HZ, SKIP, DecimationSpan

#: Times closer than this, seconds, are of one frame. [project]
_NEAR_S = 1e-6
#: Rest before a trial that the fine passes also see, seconds. [project]
LEAD_S = 1.5
#: Of the rest before a trial the fine passes take every n-th of their frames. [project]
REST_EVERY = 2
#: A shorter hold, seconds, has fewer than six frames at the usual rate, and single frames scatter.
#: [project]
SHORT_HOLD_S = 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class ScanResult:
    """Trials of one movement in a coarse track.

    Attributes
    ----------
    task
        With the view that was given, or recognised.
    trials
        Candidates for the fine passes.
    windows
        Start and end in seconds for each trial.
    gate_result
        Why there are no candidates, when `trials` is empty.
    fused
        The coarse pass's values over the track's frames; all NaN where the track could not be
        read.
    """

    task: MeasurementTask
    trials: tuple[TrialCandidate, ...]
    windows: tuple[tuple[float, float], ...]
    gate_result: GateResult
    fused: FusedSeries

    @property
    def view(self) -> View:
        return self.task.known_view

    @property
    def guide(self) -> FloatArray:
        """Shape (n,): the coarse value over the track's frames."""
        return self.fused.value


def scan_for_trials(track: Track, task: MeasurementTask) -> ScanResult:
    """Return the trials in a coarse track, or why there are none."""
    model = model_of(task.movement)
    passes = keypoints_of_passes([track], task)
    keypoints = passes.median
    task = task.seen_from(task.view or recognised_view(keypoints, task.movement))
    unreadable = _unreadable(track, task)
    if unreadable.refused_for:
        nothing = np.full(len(track), np.nan)
        blank = FusedSeries(keypoints=keypoints, per_pass=nothing[None], value=nothing)
        return ScanResult(task=task, trials=(), windows=(), gate_result=unreadable, fused=blank)
    no_rest = np.zeros(len(track), dtype=bool)
    fused = model.estimate(passes, task, no_rest)
    segmentation = segment_trials(track.time_s, fused.value, model.segmentation)
    trials = segmentation.candidates
    if all(trial.hold_start_s is None for trial in trials) and person_gate(track).refused_for:
        trials = ()  # a person who walks off swings an arm; without a hold that is no trial
    why_none = GateResult() if trials else _why_none(keypoints, task, segmentation)
    # A hand behind the back stirs on its way down; that it was held there still counts.
    only_stirs = task.facts.behind_back and all(trial.hold_start_s is None for trial in trials)
    if why_none.refused_for in ((Reason.NO_MOVE,), (Reason.NO_NEUTRAL,)) or (trials and only_stirs):
        trials = little_trials(fused, task, model.segmentation) or trials
    return ScanResult(
        task=task,
        trials=trials,
        windows=tuple(window_of(trial, task.movement) for trial in trials),
        gate_result=GateResult() if trials else why_none,
        fused=fused,
    )


def _unreadable(track: Track, task: MeasurementTask) -> GateResult:
    """Return what makes a track unreadable as a whole."""
    if not np.any(track.state == FrameState.SEEN):
        return refuse(Reason.NOBODY)
    if task.view not in task.facts.views:
        return refuse(Reason.WRONG_VIEW)
    return rate_gate(track)


def window_of(trial: TrialCandidate, movement: Movement) -> tuple[float, float]:
    """Return the span of the fine passes, seconds: rest, move, hold.

    A movement that starts facing the camera needs that phase as well, from the source's start.
    """
    end = trial.end_s if trial.hold_end_s is None else min(trial.end_s, trial.hold_end_s + 0.4)
    if model_of(movement).starts_facing:
        return 0.0, end
    return max(trial.rest_start_s, trial.start_s - LEAD_S), end


def fine_rate_factor(trials: Sequence[TrialCandidate], movement: Movement, fps: float) -> int:
    """Return how many times their usual rate the fine passes need: 2 for a short hold, else 1.

    Parameters
    ----------
    fps
        Frames a second that the source has.
    """
    if model_of(movement).starts_facing or fps < 2 * FINE_HZ:
        return 1
    return 2 if any(_is_short(trial) for trial in trials) else 1


def decimation_plan(
    trials: Sequence[TrialCandidate], movement: Movement, times: int = 1
) -> tuple[DecimationSpan, ...]:
    """Return which frames of their rate the fine passes take.

    Of a hold those of the usual rate, of a short one all. Of the rest half as many are enough, and
    of the ways up and down none, since keypoints do not depend on the rate
    (:class:`measure.pose.network.PoseNetwork`). Of a movement that starts facing the camera half
    are enough too, on its ways as well: the turn is read from them. Where no hold was seen it is
    searched for anew.

    Parameters
    ----------
    times
        How many times the usual rate the frames come at; see :func:`fine_rate_factor`.
    """
    starts_facing = model_of(movement).starts_facing
    holds: list[DecimationSpan] = []
    others: list[DecimationSpan] = []
    for trial in trials:
        start_s, end_s = window_of(trial, movement)
        if trial.hold_start_s is None or trial.hold_end_s is None:
            holds.append((start_s, end_s, times))
            continue
        every = 1 if _is_short(trial) else times
        holds.append((trial.hold_start_s, trial.hold_end_s, every))
        if not starts_facing:
            others.append((trial.rest_end_s + _NEAR_S, trial.hold_start_s, SKIP))
            others.append((trial.hold_end_s, end_s, SKIP))
        others.append((start_s, end_s, REST_EVERY * times))
    return (*holds, *others)


def _is_short(trial: TrialCandidate) -> bool:
    if trial.hold_start_s is None or trial.hold_end_s is None:
        return False
    return trial.hold_end_s - trial.hold_start_s < SHORT_HOLD_S


def recognised_view(keypoints: ArmKeypoints, movement: Movement) -> View:
    """Return the accepted view that fits the shoulders' separation, else the preferred one."""
    views = MOVEMENTS[movement].views
    if len(views) == 1 or len(keypoints) == 0:
        return views[0]
    everywhere = np.ones(len(keypoints), dtype=bool)
    trunk_px = float(median_over(keypoints.trunk_px, everywhere))
    across = float(median_over(keypoints.separation_px / trunk_px, everywhere))
    for view in views:
        low, high = SEPARATION[view]
        if low <= across <= high:
            return view
    return views[0]


def _why_none(
    keypoints: ArmKeypoints, task: MeasurementTask, segmentation: Segmentation
) -> GateResult:
    """Return why no trial was found: the person, the view, or the movement itself."""
    track = keypoints.track
    seen = track.state == FrameState.SEEN
    result = person_gate(track)
    if not result.refused_for:
        result += upright_gate(keypoints, seen)
    if not result.refused_for:
        result += picture_gate(track, task, seen)
    if not result.refused_for and not model_of(task.movement).starts_facing:
        result += view_gate(keypoints, task, seen, seen)
    if result.refused_for:
        return result
    if segmentation.moved and not segmentation.neutral_seen:
        return result + refuse(Reason.NO_NEUTRAL)
    return result + refuse(Reason.NO_MOVE)
