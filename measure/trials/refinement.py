"""Trial refinement: several inference passes over a trial's frames fused into its value.

The value comes with its interval, the reasons of the gates, and how the person stood.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import Trial
from measure.domain.movements import Unit
from measure.domain.reasons import GateResult, Reason, note, refuse
from measure.domain.standing_pose import Neutral
from measure.domain.tracks import Track
from measure.kinematics.angles import mean_near_median
from measure.kinematics.camera_geometry import undistort_track
from measure.kinematics.fusion import FusedSeries, Mask, keypoints_of_passes
from measure.kinematics.neutral_pose import neutral_of
from measure.kinematics.uncertainty import difficulty, half_width, too_wide
from measure.trials.movement_model import model_of
from measure.trials.quality_gates import value_gate
from measure.trials.segmentation import TrialCandidate, segment_trials

_NOTHING_SEEN = GateResult()


@dataclass(frozen=True, slots=True, kw_only=True)
class RefinedTrial:
    """A trial, with the series it was read from.

    Attributes
    ----------
    against_vertical
        The value against the image's vertical, or None where it has no meaning.
    spread
        How far the passes' hold means lie apart, in the movement's unit; 0 for one pass.
    neutral
        How the person stood before moving; None where that was not seen well enough.
    """

    trial: Trial
    against_vertical: float | None
    spread: float
    fused: FusedSeries
    neutral: Neutral | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldReading:
    """What the frames of one hold give.

    Attributes
    ----------
    value
        In the movement's unit, also where a gate refuses it; None where the passes disagree.
    against_vertical
        The value against the image's vertical, or None where it has no meaning.
    half_width
        Of the interval about the value; None for a refusal.
    spread
        How far the passes' means lie apart, in the movement's unit.
    result
        What the gates say.
    """

    value: float | None
    against_vertical: float | None
    half_width: float | None
    spread: float
    result: GateResult


def refine_trial(
    tracks: Sequence[Track], candidate: TrialCandidate, task: MeasurementTask, quality: str
) -> RefinedTrial:
    """Return the trial that fine passes over the same frames give, and how the person stood.

    Parameters
    ----------
    tracks
        One track for each pass, all with the same frames, covering `candidate` from its rest to
        its hold.
    candidate
        The trial as the coarse pass saw it.
    quality
        Name of the deciding model; with fewer or lesser passes the interval is wider.

    Raises
    ------
    ValueError
        When the passes do not cover the same frames.
    """
    passes = keypoints_of_passes(tracks, task)
    time_s = passes.median.time_s
    rest = (time_s >= candidate.rest_start_s) & (time_s <= candidate.rest_end_s)
    fused = model_of(task.movement).estimate(passes, task, rest)
    refined = _refine(fused, rest, candidate, task, quality)
    return replace(refined, neutral=_neutral(passes.median.track, candidate, task))


def _neutral(track: Track, candidate: TrialCandidate, task: MeasurementTask) -> Neutral | None:
    rest, lens = track.between(candidate.rest_start_s, candidate.rest_end_s), task.setup.camera.lens
    neutral = neutral_of(rest if lens is None else undistort_track(rest, lens))
    return neutral if isinstance(neutral, Neutral) else None


def _refine(
    fused: FusedSeries, rest: Mask, candidate: TrialCandidate, task: MeasurementTask, quality: str
) -> RefinedTrial:
    model, time_s = model_of(task.movement), fused.time_s
    trial = _redetect_hold(fused, candidate, task)
    blank = Trial(
        value=None,
        low=None,
        high=None,
        start_s=trial.start_s,
        end_s=trial.end_s,
        hold_start_s=trial.hold_start_s,
        hold_end_s=trial.hold_end_s,
    )
    if trial.hold_start_s is None or trial.hold_end_s is None:
        result = refuse(Reason.PERSON_LOST if trial.gap else Reason.NO_HOLD)
        hold = (time_s >= trial.start_s) & (time_s <= trial.end_s)
        return _refused(blank, model.gates(fused, task, rest, hold) + result, fused)
    hold = (time_s >= trial.hold_start_s) & (time_s <= trial.hold_end_s)
    seen = refuse(Reason.PERSON_LOST) if trial.gap else GateResult()
    if not trial.steady:
        seen += note(Reason.UNSTEADY_HOLD)
    if trial.little:
        seen += note(Reason.LITTLE_MOVEMENT)
    reading = read_hold(fused, task, rest, hold, quality, seen)
    value, half = reading.value, reading.half_width
    if value is None or half is None:
        return _refused(blank, reading.result, fused, reading.spread)
    return RefinedTrial(
        trial=replace(
            blank,
            value=value,
            low=value - half,
            high=value + half,
            flags=reading.result.notes,
            spread=float(np.nanstd(fused.value[hold])),
        ),
        against_vertical=reading.against_vertical,
        spread=reading.spread,
        fused=fused,
    )


def read_hold(
    fused: FusedSeries,
    task: MeasurementTask,
    rest: Mask,
    hold: Mask,
    quality: str,
    seen: GateResult = _NOTHING_SEEN,
) -> HoldReading:
    """Return the value of a hold, its interval and what the gates say.

    Parameters
    ----------
    rest, hold
        Shape (n,): the frames that the gates compare.
    quality
        Name of the deciding model.
    seen
        What was noticed before of the trial.
    """
    model = model_of(task.movement)
    result = model.gates(fused, task, rest, hold) + seen
    means = np.array(
        [mean_near_median(values[hold], model.near_median) for values in fused.per_pass]
    )
    value, spread = consensus(means, model.agreement)
    if value is None:
        return HoldReading(
            value=None,
            against_vertical=None,
            half_width=None,
            spread=math.nan,
            result=result + refuse(Reason.PASSES_DISAGREE),
        )
    change = _correction_deg(value, task)
    value += change
    result += value_gate(task.movement, value)
    hardness = difficulty(task.movement, task.known_view, value, spread, result.notes)
    half = half_width(task.movement, task.known_view, quality, hardness, task.setup)
    if not result.refused_for and too_wide(task.movement, half):
        result += refuse(Reason.TOO_UNCERTAIN)
    vertical = fused.against_vertical
    return HoldReading(
        value=value,
        against_vertical=None
        if vertical is None
        else mean_near_median(vertical[hold], model.near_median) + change,
        half_width=None if result.refused_for else half,
        spread=spread,
        result=result,
    )


def consensus(means: FloatArray, tolerance: float) -> tuple[float | None, float]:
    """Return the mean of the passes' means and how far they lie apart; None beyond a tolerance."""
    values = np.sort(means[np.isfinite(means)])
    if len(values) == 0 or len(values) <= len(means) / 2:
        return None, math.inf
    spread = float(values[-1] - values[0])
    return (float(np.mean(values)) if spread <= tolerance else None), spread


def _correction_deg(value_deg: float, task: MeasurementTask) -> float:
    """Return what the correction against a goniometer adds to an angle; 0 without one."""
    correction = task.setup.correction
    if correction is None or task.facts.unit is not Unit.DEGREES:
        return 0.0
    return correction.corrected_deg(value_deg) - value_deg


def _redetect_hold(
    fused: FusedSeries, candidate: TrialCandidate, task: MeasurementTask
) -> TrialCandidate:
    """Return the trial as the fine series shows it, or the candidate where that shows no hold.

    The hold of the coarse pass is kept; only where it saw none is one searched for again.
    """
    if candidate.hold_start_s is not None:
        return candidate
    start_s, end_s = candidate.rest_start_s - 0.5, candidate.end_s + 0.2
    within = (fused.time_s >= start_s) & (fused.time_s <= end_s)
    params = model_of(task.movement).segmentation
    again = segment_trials(fused.time_s[within], fused.value[within], params)
    holding = [trial for trial in again.candidates if trial.hold_start_s is not None]
    if not holding:
        return candidate
    return max(holding, key=lambda trial: min(trial.end_s, candidate.end_s) - trial.start_s)


def _refused(
    blank: Trial, result: GateResult, fused: FusedSeries, spread: float = math.nan
) -> RefinedTrial:
    return RefinedTrial(
        trial=replace(
            blank, flags=result.refused_for + result.notes, refused_for=result.refused_for
        ),
        against_vertical=None,
        spread=spread,
        fused=fused,
    )
