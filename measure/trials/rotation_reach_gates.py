"""Gates of external rotation and of the hand-behind-back reach.

See :mod:`measure.trials.quality_gates` for those of elevations.
"""

import numpy as np

from measure.domain.acquisition import UNKNOWN_CAMERA, CameraSetup
from measure.domain.landmarks import FloatArray, Side, arm
from measure.domain.movements import Movement, View
from measure.domain.reasons import GateResult, Reason, note, refuse
from measure.domain.tracks import Track
from measure.kinematics.angles import length, median_over, turn_deg
from measure.kinematics.keypoints import ArmKeypoints, arm_keypoints
from measure.kinematics.rotation import Rotation
from measure.trials.quality_gates import (
    Mask,
    by_threshold,
    lean_gate,
    merge_results,
    person_gate,
    picture_gate,
    upright_gate,
    view_gate,
)

#: The trunk's turn at which the solve is usable, and beyond which it is not, degrees. Ours.
TURN_USABLE_DEG, TURN_POSSIBLE_DEG = (30.0, 60.0), (18.0, 72.0)
#: The upper arm against the trunk axis, degrees. Ours.
OFF_TRUNK_NOTE_DEG, OFF_TRUNK_REFUSE_DEG = 15.0, 30.0
#: Elbow and wrist must be seen at least so surely in the hold: a forearm pointing at the lens
#: is otherwise found on the shirt. Ours.
LEAST_FOREARM_VISIBILITY = 0.5
#: A height behind the back that wanders more than this in the hold is no reading. Ours.
REACH_WANDER = 0.05
#: Trunk turned after the zero pose, as a change of the shoulders' width over trunk. Ours.
TURN_NOTE, TURN_REFUSE = 0.09, 0.16


def rotation_gates(
    track: Track,
    side: Side,
    rotation: Rotation,
    facing: Mask,
    zero: Mask,
    hold: Mask,
    camera: CameraSetup = UNKNOWN_CAMERA,
) -> GateResult:
    """Return all gates of external rotation for one trial."""
    posture = arm_keypoints(track, side, camera)
    verdict = person_gate(track) + picture_gate(
        track, Movement.EXTERNAL_ROTATION, side, hold | zero
    )
    if Reason.NOBODY in verdict.refused_for:
        return verdict
    return merge_results(
        (
            verdict,
            upright_gate(posture, zero | hold),
            view_gate(posture, Movement.EXTERNAL_ROTATION, View.OBLIQUE, zero, hold),
            _turn_gate(rotation, facing),
            _forearm_gate(track, side, hold),
            _side_gate(rotation, zero, hold),
            _trunk_turned_gate(posture, zero, hold),
            lean_gate(posture, View.FRONT, zero, hold),
        )
    )


def _turn_gate(rotation: Rotation, facing: Mask) -> GateResult:
    if not np.any(facing):
        return note(Reason.NO_FACING_STANCE)
    low, high = TURN_POSSIBLE_DEG
    if not low <= rotation.turn_deg <= high:
        return refuse(Reason.WRONG_VIEW)
    low, high = TURN_USABLE_DEG
    return GateResult() if low <= rotation.turn_deg <= high else note(Reason.WRONG_VIEW)


def _forearm_gate(track: Track, side: Side, hold: Mask) -> GateResult:
    marks = [arm(side).elbow, arm(side).wrist]
    seen = median_over(track.visibility[:, marks], hold)
    return refuse(Reason.HIDDEN) if float(np.min(seen)) < LEAST_FOREARM_VISIBILITY else GateResult()


def _side_gate(rotation: Rotation, zero: Mask, hold: Mask) -> GateResult:
    moved = abs(
        float(median_over(rotation.lean_deg, hold)) - float(median_over(rotation.lean_deg, zero))
    )
    return by_threshold(moved, OFF_TRUNK_NOTE_DEG, OFF_TRUNK_REFUSE_DEG, Reason.ELBOW_OFF_TRUNK)


def _trunk_turned_gate(posture: ArmKeypoints, zero: Mask, hold: Mask) -> GateResult:
    width = np.abs(posture.separation_px) / posture.trunk_px
    change = abs(float(median_over(width, hold)) - float(median_over(width, zero)))
    return by_threshold(change, TURN_NOTE, TURN_REFUSE, Reason.TRUNK_TURNED)


def reach_gates(
    track: Track,
    side: Side,
    view: View,
    heights: FloatArray,
    rest: Mask,
    hold: Mask,
    camera: CameraSetup = UNKNOWN_CAMERA,
) -> GateResult:
    """Return all gates of the hand-behind-back reach for one trial.

    Parameters
    ----------
    heights
        Shape (n,): thumb height on the trunk line, frame by frame.
    """
    posture = arm_keypoints(track, side, camera)
    verdict = person_gate(track) + picture_gate(track, Movement.HAND_BEHIND_BACK, side, hold | rest)
    if Reason.NOBODY in verdict.refused_for:
        return verdict
    lean = abs(float(turn_deg(median_over(posture.trunk, rest), median_over(posture.trunk, hold))))
    limb = length(posture.elbow - posture.shoulder) / posture.trunk_px
    wander = float(np.nanstd(heights[hold])) if np.any(hold) else float("nan")
    return merge_results(
        (
            verdict,
            upright_gate(posture, rest | hold),
            view_gate(posture, Movement.HAND_BEHIND_BACK, view, rest, hold),
            by_threshold(lean, 5.0, 12.0, Reason.TRUNK_LEAN),
            refuse(Reason.UNSTEADY_HOLD) if wander > REACH_WANDER else GateResult(),
            refuse(Reason.LIMB_LENGTH) if float(median_over(limb, hold)) > 0.9 else GateResult(),
        )
    )
