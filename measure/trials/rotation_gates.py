"""Quality gates of external rotation: the phases, the turn, the square elbow, the zero pose."""

import numpy as np

from measure.domain.landmarks import arm
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import View
from measure.domain.reasons import GateResult, Reason, refuse
from measure.kinematics.angles import median_over
from measure.kinematics.fusion import FusedSeries, Mask
from measure.kinematics.keypoints import ArmKeypoints
from measure.kinematics.rotation import Rotation, elbow_angle_deg
from measure.trials.quality_gates import (
    by_threshold,
    lean_gate,
    merge_results,
    picture_gates,
    upright_gate,
    view_gate,
)

#: The trunk's turn, degrees, at which external rotation can be solved: 30 to 60, and what the
#: shoulders' width errs by. [project]
TURN_USABLE_DEG = (25.0, 65.0)
#: Angle of the elbow, degrees: 70 to 110, and what it errs by. [project]
SQUARE_ELBOW_DEG = (65.0, 115.0)
#: The forearm's direction in the zero pose against straight ahead of the chest, degrees, negative
#: across the belly. A very stiff shoulder may stay behind straight ahead. [project]
ZERO_POSE_DEG = (-32.0, 28.0)
#: The upper arm against the trunk axis, degrees, that is noted, and refused. [project]
OFF_TRUNK_NOTE_DEG, OFF_TRUNK_REFUSE_DEG = 15.0, 30.0
#: Least visibility (0..1) of elbow and wrist in the hold: a forearm that points at the lens
#: is otherwise found on the shirt. [project]
LEAST_FOREARM_VISIBILITY = 0.5
#: Trunk turned after the zero pose: the change of the shoulders' width over the trunk that is
#: noted, and refused. [project]
TURN_NOTE, TURN_REFUSE = 0.09, 0.16


def rotation_gates(fused: FusedSeries, task: MeasurementTask, zero: Mask, hold: Mask) -> GateResult:
    """Return all gates of external rotation for one trial; `fused` must hold its rotation."""
    keypoints, rotation, phases = fused.keypoints, fused.rotation, fused.rotation_phases
    assert rotation is not None
    assert phases is not None
    result = picture_gates(keypoints.track, task, zero | hold)
    if Reason.NOBODY in result.refused_for:
        return result
    return merge_results(
        (
            result,
            upright_gate(keypoints, zero | hold),
            view_gate(keypoints, task, zero, hold),
            turn_gate(rotation, phases.facing),
            zero_pose_gate(rotation, zero & phases.turned),
            square_elbow_gate(keypoints, zero | hold, hold),
            _forearm_gate(keypoints, hold),
            _side_gate(rotation, zero, hold),
            _trunk_turned_gate(keypoints, zero, hold),
            lean_gate(keypoints, View.FRONT, zero, hold),
        )
    )


def turn_gate(rotation: Rotation, facing: Mask) -> GateResult:
    """Check that the person first faced the camera, and how far the trunk then turned."""
    if not np.any(facing):
        return refuse(Reason.NO_FACING_STANCE)
    low, high = TURN_USABLE_DEG
    return GateResult() if low <= rotation.turn_deg <= high else refuse(Reason.WRONG_TURN)


def zero_pose_gate(rotation: Rotation, zero: Mask) -> GateResult:
    """Check that the forearm began straight ahead of the chest; nothing without a known turn."""
    ahead = float(median_over(rotation.azimuth_deg, zero)) + rotation.turn_deg
    low, high = ZERO_POSE_DEG
    return refuse(Reason.NO_ZERO_POSE) if ahead < low or ahead > high else GateResult()


def square_elbow_gate(keypoints: ArmKeypoints, *phases: Mask) -> GateResult:
    """Check that the elbow is bent to about a right angle in the middle of each of the phases."""
    elbow = elbow_angle_deg(keypoints)
    angles = [float(median_over(elbow, frames)) for frames in phases]
    low, high = SQUARE_ELBOW_DEG
    wrong = any(angle < low or angle > high for angle in angles)
    return refuse(Reason.ELBOW_NOT_SQUARE) if wrong else GateResult()


def _forearm_gate(keypoints: ArmKeypoints, hold: Mask) -> GateResult:
    marks = [arm(keypoints.side).elbow, arm(keypoints.side).wrist]
    visibility = median_over(keypoints.track.visibility[:, marks], hold)
    hidden = float(np.min(visibility)) < LEAST_FOREARM_VISIBILITY
    return refuse(Reason.HIDDEN) if hidden else GateResult()


def _side_gate(rotation: Rotation, zero: Mask, hold: Mask) -> GateResult:
    moved = abs(
        float(median_over(rotation.lean_deg, hold)) - float(median_over(rotation.lean_deg, zero))
    )
    return by_threshold(moved, OFF_TRUNK_NOTE_DEG, OFF_TRUNK_REFUSE_DEG, Reason.ELBOW_OFF_TRUNK)


def _trunk_turned_gate(keypoints: ArmKeypoints, zero: Mask, hold: Mask) -> GateResult:
    width = np.abs(keypoints.separation)
    change = abs(float(median_over(width, hold)) - float(median_over(width, zero)))
    return by_threshold(change, TURN_NOTE, TURN_REFUSE, Reason.TRUNK_TURNED)
