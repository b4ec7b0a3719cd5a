"""The careful look: several passes over a trial's own frames become one trial's value."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from measure.domain.acquisition import CameraSetup, Setup
from measure.domain.landmarks import FloatArray, Side
from measure.domain.measurements import Trial
from measure.domain.movements import MOVEMENTS, Movement, Unit, View
from measure.domain.reasons import GateResult, Reason, note, refuse
from measure.domain.tracks import Track
from measure.kinematics.angles import mean_near_median
from measure.kinematics.camera_geometry import undistort_track
from measure.kinematics.fusion import FusedSeries, Mask, fuse_passes, median_track
from measure.kinematics.neutral_pose import Neutral, neutral_of
from measure.kinematics.uncertainty import half_width
from measure.trials.quality_gates import elevation_gates, value_gate
from measure.trials.rotation_reach_gates import reach_gates, rotation_gates
from measure.trials.scan import segmentation_params
from measure.trials.segmentation import TrialCandidate, segment_trials

#: Frames of a hold farther than this from its median are left out of its mean. Ours.
NEAR_MEDIAN = {Unit.DEGREES: 5.0, Unit.FRACTION: 0.04}
#: Passes whose hold means differ by more than this disagree, unless three of them lie within
#: the second figure. Ours, from the truth bench.
DISAGREE = {Unit.DEGREES: (7.0, 4.0), Unit.FRACTION: (0.10, 0.05)}
#: The same for external rotation, whose passes differ more.
DISAGREE_ROTATION = (16.0, 8.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class RefinedTrial:
    """A trial, with the series it was read from.

    Attributes
    ----------
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


def refine_trial(
    tracks: Sequence[Track],
    found: TrialCandidate,
    movement: Movement,
    side: Side,
    view: View,
    setup: Setup,
    quality: str,
) -> RefinedTrial:
    """Return the trial that careful passes over the same frames give, and how the person stood.

    Parameters
    ----------
    tracks
        One track a pass, all with the same frames, covering `found` from its rest to its hold.
    found
        The trial as the quick pass saw it; its hold is looked for anew.
    quality
        Name of the deciding model; with fewer or lesser passes the interval is wider.
    """
    settled = _refine(tracks, found, movement, side, view, setup, quality)
    return replace(settled, neutral=_neutral(tracks, found, setup.camera))


def _neutral(tracks: Sequence[Track], found: TrialCandidate, camera: CameraSetup) -> Neutral | None:
    rest = median_track(tracks).between(found.rest_start_s, found.rest_end_s)
    stood = neutral_of(rest if camera.lens is None else undistort_track(rest, camera.lens))
    return stood if isinstance(stood, Neutral) else None


def _refine(
    tracks: Sequence[Track],
    found: TrialCandidate,
    movement: Movement,
    side: Side,
    view: View,
    setup: Setup,
    quality: str,
) -> RefinedTrial:
    time_s = tracks[0].time_s
    rest = (time_s >= found.rest_start_s) & (time_s <= found.rest_end_s)
    fused = fuse_passes(tracks, movement, side, view, rest, setup)
    trial = _redetect_hold(fused, found, movement)
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
        verdict = refuse(Reason.PERSON_LOST if trial.gap else Reason.NO_HOLD)
        hold = (time_s >= trial.start_s) & (time_s <= trial.end_s)
        seen = _gates(tracks, fused, movement, side, view, rest, hold, setup.camera)
        verdict = seen + verdict
        return _refused(blank, verdict, fused)
    hold = (time_s >= trial.hold_start_s) & (time_s <= trial.hold_end_s)
    verdict = _gates(tracks, fused, movement, side, view, rest, hold, setup.camera)
    if trial.gap:
        verdict += refuse(Reason.PERSON_LOST)
    if not trial.steady:
        verdict += note(Reason.UNSTEADY_HOLD)
    unit = MOVEMENTS[movement].unit
    means = np.array([mean_near_median(row[hold], NEAR_MEDIAN[unit]) for row in fused.per_pass])
    value, spread = consensus(means, _tolerance(movement))
    if value is None:
        return _refused(blank, verdict + refuse(Reason.PASSES_DISAGREE), fused)
    change = _correction_deg(value, movement, setup)
    value += change
    verdict += value_gate(movement, value)
    if verdict.refused_for:
        return _refused(blank, verdict, fused, spread)
    half = half_width(movement, view, quality, spread, verdict.notes)
    vertical = fused.against_vertical
    return RefinedTrial(
        trial=replace(
            blank,
            value=value,
            low=value - half,
            high=value + half,
            flags=verdict.notes,
            spread=float(np.nanstd(fused.value[hold])),
        ),
        against_vertical=None
        if vertical is None
        else mean_near_median(vertical[hold], NEAR_MEDIAN[unit]) + change,
        spread=spread,
        fused=fused,
    )


def consensus(means: FloatArray, tolerance: tuple[float, float]) -> tuple[float | None, float]:
    """Return the value that the passes' means agree on, and how far they lie apart.

    The mean of all when they lie within the first figure; otherwise the mean of the three
    closest when those lie within the second; otherwise None.
    """
    known = np.sort(means[np.isfinite(means)])
    if len(known) == 0 or len(known) <= len(means) / 2:
        return None, math.inf
    spread = float(known[-1] - known[0])
    wide, narrow = tolerance
    if spread <= wide:
        return float(np.mean(known)), spread
    if len(known) >= 4:
        triples = known[2:] - known[:-2]
        best = int(np.argmin(triples))
        if triples[best] <= narrow:
            return float(np.mean(known[best : best + 3])), spread
    return None, spread


def _correction_deg(value_deg: float, movement: Movement, setup: Setup) -> float:
    """Return what the correction against a goniometer adds to an angle; 0 without one."""
    if setup.correction is None or MOVEMENTS[movement].unit is not Unit.DEGREES:
        return 0.0
    return setup.correction.corrected_deg(value_deg) - value_deg


def _tolerance(movement: Movement) -> tuple[float, float]:
    if movement is Movement.EXTERNAL_ROTATION:
        return DISAGREE_ROTATION
    return DISAGREE[MOVEMENTS[movement].unit]


def _redetect_hold(fused: FusedSeries, found: TrialCandidate, movement: Movement) -> TrialCandidate:
    """Return the trial as the careful series shows it, or as it was found when it does not.

    The hold of the quick pass is kept; only where it saw none is one looked for again.
    """
    if found.hold_start_s is not None:
        return found
    within = (fused.time_s >= found.rest_start_s - 0.5) & (fused.time_s <= found.end_s + 0.2)
    again = segment_trials(fused.time_s[within], fused.value[within], segmentation_params(movement))
    holding = [each for each in again.candidates if each.hold_start_s is not None]
    if not holding:
        return found
    return max(holding, key=lambda each: min(each.end_s, found.end_s) - each.start_s)


def _gates(
    tracks: Sequence[Track],
    fused: FusedSeries,
    movement: Movement,
    side: Side,
    view: View,
    rest: Mask,
    hold: Mask,
    camera: CameraSetup,
) -> GateResult:
    track = median_track(tracks)
    if movement is Movement.HAND_BEHIND_BACK:
        return reach_gates(track, side, view, fused.value, rest, hold, camera)
    if fused.rotation is not None and fused.rotation_phases is not None:
        facing = fused.rotation_phases.facing
        return rotation_gates(track, side, fused.rotation, facing, rest, hold, camera)
    return elevation_gates(track, side, movement, view, rest, hold, camera)


def _refused(
    blank: Trial, verdict: GateResult, fused: FusedSeries, spread: float = math.nan
) -> RefinedTrial:
    return RefinedTrial(
        trial=replace(
            blank, flags=verdict.refused_for + verdict.notes, refused_for=verdict.refused_for
        ),
        against_vertical=None,
        spread=spread,
        fused=fused,
    )
