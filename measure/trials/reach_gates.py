"""Quality gates of the hand-behind-back reach: seen from behind or beside, the hand on the back."""

import numpy as np

from measure.domain.landmarks import arm
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import View
from measure.domain.reasons import GateResult, Reason, refuse
from measure.kinematics.angles import length, median_over, turn_deg
from measure.kinematics.fusion import FusedSeries, Mask
from measure.kinematics.keypoints import ArmKeypoints
from measure.kinematics.reach import sideways_of
from measure.trials.quality_gates import (
    by_threshold,
    merge_results,
    picture_gates,
    upright_gate,
    view_gate,
)

#: Lean of the trunk behind which a hand reaches up, degrees, that is noted, and refused. [project]
REACH_LEAN_NOTE_DEG, REACH_LEAN_REFUSE_DEG = 5.0, 12.0
#: A height behind the back that scatters more than this in the hold is no reading, as a
#: fraction of the trunk. [project]
REACH_WANDER = 0.05
#: Longest upper arm, seen from behind, over the trunk. [project]
REACH_UPPER_ARM = 0.9
#: Least visibility (0..1), seen from behind, of the elbow beside the back and of the hand on it.
#: Hands in front of the body are drawn onto the back with visibilities of 0.00 to 0.05. [project]
LEAST_ELBOW_VISIBILITY, LEAST_HAND_VISIBILITY = 0.3, 0.1
#: The thumb farther than this sideways from the middle of the hips, over the trunk, is beside the
#: body and not behind it. [project]
FAR_ASIDE = 0.45
#: An elbow straighter than this, degrees, with the thumb above a height, as a fraction of the
#: trunk: both arms are stretched backwards, the hand does not lie on the back. [project]
STRAIGHT_ELBOW_DEG, STRAIGHT_ABOVE = 155.0, 0.2


def reach_gates(fused: FusedSeries, task: MeasurementTask, rest: Mask, hold: Mask) -> GateResult:
    """Return all gates of the hand-behind-back reach for one trial."""
    keypoints = fused.keypoints
    result = picture_gates(keypoints.track, task, rest | hold)
    if Reason.NOBODY in result.refused_for:
        return result
    start, end = median_over(keypoints.trunk, rest), median_over(keypoints.trunk, hold)
    lean = abs(float(turn_deg(start, end)))
    upper_arm = length(keypoints.elbow - keypoints.shoulder) / keypoints.trunk_px
    wanders = bool(np.any(hold)) and float(np.nanstd(fused.value[hold])) > REACH_WANDER
    too_long = float(median_over(upper_arm, hold)) > REACH_UPPER_ARM
    view = view_gate(keypoints, task, rest, hold)
    behind = GateResult()
    if task.known_view is View.SIDE:
        behind = hand_beside_gate(keypoints, hold)
    elif Reason.FACING_CAMERA not in view.refused_for:
        behind = hand_gate(keypoints, hold, float(median_over(fused.value, hold)))
    return merge_results(
        (
            view,
            result,
            upright_gate(keypoints, rest | hold),
            behind,
            by_threshold(lean, REACH_LEAN_NOTE_DEG, REACH_LEAN_REFUSE_DEG, Reason.TRUNK_LEAN),
            refuse(Reason.UNSTEADY_HOLD) if wanders else GateResult(),
            refuse(Reason.LIMB_LENGTH) if too_long else GateResult(),
        )
    )


def hand_gate(keypoints: ArmKeypoints, hold: Mask, height: float) -> GateResult:
    """Check that the hand lies on the back; for a person seen from behind.

    Parameters
    ----------
    height
        Of the thumb in the hold, as a fraction of the trunk.
    """
    own, track = arm(keypoints.side), keypoints.track
    seen = np.minimum(track.visibility, track.presence)
    elbow_seen, hand_seen = (
        float(median_over(seen[:, mark], hold)) for mark in (own.elbow, own.wrist)
    )
    hidden = not (elbow_seen >= LEAST_ELBOW_VISIBILITY and hand_seen >= LEAST_HAND_VISIBILITY)
    beside = abs(float(median_over(sideways_of(keypoints), hold))) > FAR_ASIDE
    elbow = keypoints.elbow_deg
    straight = float(median_over(elbow, hold)) > STRAIGHT_ELBOW_DEG and height > STRAIGHT_ABOVE
    return refuse(Reason.HAND_NOT_BEHIND) if hidden or beside or straight else GateResult()


def hand_beside_gate(keypoints: ArmKeypoints, hold: Mask) -> GateResult:
    """Check that the hand is behind the trunk line; for a person seen from the side."""
    ears = (keypoints.ear + keypoints.other_ear) / 2
    forwards = np.sign(float(median_over((keypoints.nose - ears)[:, 0], hold)))
    ahead = forwards * float(median_over(sideways_of(keypoints), hold))
    return refuse(Reason.HAND_NOT_BEHIND) if ahead > 0 else GateResult()
