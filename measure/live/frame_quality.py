"""What spoils the frames of this moment: the trial's own gates, on the last second.

They are asked while there is still time to mend something; the settled trial is judged anew.
"""

import numpy as np

from measure.domain.acquisition import Setup
from measure.domain.landmarks import FloatArray, Side, arm
from measure.domain.movements import Movement, View
from measure.domain.reasons import GateResult, Reason
from measure.domain.tracks import FrameState, Track
from measure.kinematics.fusion import fuse_passes
from measure.trials.quality_gates import Mask, elevation_gates
from measure.trials.rotation_reach_gates import reach_gates, rotation_gates
from measure.trials.segmentation import SegmentationParams

#: What counts as this moment, seconds, and how many frames of rest are compared with. Ours.
_MOMENT_S = 0.6
_REST_FRAMES = 10

#: Reasons that say nothing about the moment.
_NOT_NOW = frozenset({Reason.NO_FACING_STANCE, Reason.UNSTEADY_HOLD, Reason.PERSON_LOST})


def recent_flags(
    track: Track,
    guide: FloatArray,
    steps: SegmentationParams,
    movement: Movement,
    side: Side,
    view: View,
    setup: Setup,
) -> tuple[Reason, ...]:
    """Return what spoils the last frames of a track, most important first.

    Parameters
    ----------
    guide
        Shape (n,): the quick value over the track's frames.
    """
    seen = track.state == FrameState.SEEN
    late = track.time_s >= track.time_s[-1] - _MOMENT_S
    if not np.any(seen & late):
        return ()
    centre, tolerance = steps.rest
    with np.errstate(invalid="ignore"):
        resting = seen & ~late & (np.abs(guide - centre) <= tolerance)
    resting[np.flatnonzero(resting)[:-_REST_FRAMES]] = False
    if movement is Movement.EXTERNAL_ROTATION:
        verdict = _rotation_doubts(track, side, resting, late & seen, setup)
    else:
        chosen = resting | (late & seen)
        few = track.frames(chosen)
        hold = late[chosen]
        rest = resting[chosen] if np.any(resting) else hold
        if movement is Movement.HAND_BEHIND_BACK:
            verdict = reach_gates(few, side, view, guide[chosen], rest, hold, setup.camera)
        else:
            verdict = elevation_gates(few, side, movement, view, rest, hold, setup.camera)
    found = verdict.refused_for + verdict.notes
    return tuple(reason for reason in found if reason not in _NOT_NOW)


def _rotation_doubts(
    track: Track, side: Side, resting: Mask, late: Mask, setup: Setup
) -> GateResult:
    none = np.zeros(len(track), dtype=bool)
    combined = fuse_passes([track], Movement.EXTERNAL_ROTATION, side, View.OBLIQUE, none, setup)
    if (
        combined.rotation is None
        or combined.rotation_phases is None
        or not np.any(combined.rotation_phases.turned)
    ):
        return GateResult()
    rest = resting if np.any(resting) else late
    facing = combined.rotation_phases.facing
    return rotation_gates(track, side, combined.rotation, facing, rest, late, setup.camera)


def visibility_score(track: Track, side: Side) -> float | None:
    """Return how surely the measured arm was seen of late, 0..1; None where unknown."""
    marks = [arm(side).shoulder, arm(side).elbow, arm(side).wrist, arm(side).hip]
    late = (track.time_s >= track.time_s[-1] - _MOMENT_S) & (track.state == FrameState.SEEN)
    sure = np.minimum(track.visibility[late][:, marks], track.presence[late][:, marks])
    if sure.size == 0 or not np.all(np.isfinite(sure)):
        return None
    return float(np.min(np.median(sure, axis=0)))
