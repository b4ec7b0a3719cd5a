"""Frame quality: what spoils the frames of this moment, by the trial's own gates.

They are asked while there is still time to mend something; the refined trial is judged anew.
"""

import numpy as np

from measure.domain.landmarks import Side, arm
from measure.domain.reasons import Reason
from measure.domain.tracks import FrameState, Track
from measure.trials.movement_model import model_of
from measure.trials.scan import ScanResult

#: What counts as this moment, seconds. [project]
_MOMENT_S = 0.6
#: How many frames of rest the moment is compared with. [project]
_REST_FRAMES = 10

#: Reasons that say nothing about the moment.
_NOT_NOW = frozenset(
    {
        Reason.NO_FACING_STANCE,
        Reason.NO_ZERO_POSE,
        Reason.HAND_NOT_BEHIND,
        Reason.UNSTEADY_HOLD,
        Reason.PERSON_LOST,
    }
)


def recent_flags(scan: ScanResult) -> tuple[Reason, ...]:
    """Return what spoils the last frames of a scanned track, most important first."""
    model, fused = model_of(scan.task.movement), scan.fused
    track = fused.keypoints.track
    seen = track.state == FrameState.SEEN
    late = track.time_s >= track.time_s[-1] - _MOMENT_S
    if not np.any(seen & late):
        return ()
    centre, tolerance = model.segmentation.rest
    with np.errstate(invalid="ignore"):
        resting = seen & ~late & (np.abs(fused.value - centre) <= tolerance)
    resting[np.flatnonzero(resting)[:-_REST_FRAMES]] = False
    hold = late & seen
    if model.starts_facing:
        if fused.rotation_phases is None or not np.any(fused.rotation_phases.turned):
            return ()
    else:
        chosen = resting | hold
        fused, resting, hold = fused.frames(chosen), resting[chosen], late[chosen]
    result = model.gates(fused, scan.task, resting if np.any(resting) else hold, hold)
    flags = result.refused_for + result.notes
    return tuple(reason for reason in flags if reason not in _NOT_NOW)


def visibility_score(track: Track, side: Side) -> float | None:
    """Return the recent visibility of the measured arm, 0..1; None where unknown."""
    marks = [arm(side).shoulder, arm(side).elbow, arm(side).wrist, arm(side).hip]
    late = (track.time_s >= track.time_s[-1] - _MOMENT_S) & (track.state == FrameState.SEEN)
    visibility = np.minimum(track.visibility[late][:, marks], track.presence[late][:, marks])
    if visibility.size == 0 or not np.all(np.isfinite(visibility)):
        return None
    return float(np.min(np.median(visibility, axis=0)))
