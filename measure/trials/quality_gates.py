"""Quality gates: conditions that a trial must meet, each with its reason.

Limits were set just above normal amounts (trunk motion in arm elevation: Crawford & Jull 1993,
Stewart 1995) or from the truth bench, and want a physiotherapist's judgement. A *refusal*
keeps the trial out of the value; a *note* is shown beside it.
"""

from collections.abc import Iterable

import numpy as np

from measure.domain.landmarks import Landmark, Side, arm
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import MOVEMENTS, Movement, View
from measure.domain.reasons import GateResult, Reason, note, refuse
from measure.domain.tracks import FrameState, Track
from measure.kinematics.angles import (
    corner_deg,
    direction_deg,
    length,
    median_over,
    turn_deg,
    wrap_deg,
)
from measure.kinematics.fusion import FusedSeries, Mask
from measure.kinematics.keypoints import ArmKeypoints
from measure.kinematics.rotation import Rotation

#: The shoulders' signed separation over the trunk, (low, high), by view; from the truth bench.
#: [project]
SEPARATION = {
    View.FRONT: (-1.1, -0.45),
    View.BACK: (0.3, 1.1),
    View.SIDE: (-0.42, 0.42),
    View.OBLIQUE: (-0.75, -0.2),
}
#: Share of the image's long side that a landmark must keep from the edge. [project]
EDGE_SHARE = 0.008
#: A landmark with a lower median visibility (0..1) is hidden. [project]
LEAST_VISIBILITY = 0.3
#: Share of the frames in which a state must occur to count. [project]
OFTEN = 0.25
#: Fewer frames a second than this cannot show a hold. [project]
LEAST_FRAME_RATE = 4.5
#: Trunk axis against the vertical beyond this, degrees: the image is turned. [project]
TURNED_DEG = 50.0
#: Forward or backward lean of the trunk, degrees, that is noted, and refused. [project]
LEAN_NOTE_DEG, LEAN_REFUSE_DEG = 6.0, 12.0
#: Sideways lean of the trunk, degrees, that is noted, and refused. [project]
SIDE_LEAN_NOTE_DEG, SIDE_LEAN_REFUSE_DEG = 5.0, 10.0
#: Lean of the trunk behind which a hand reaches up, degrees, that is noted, and refused. [project]
REACH_LEAN_NOTE_DEG, REACH_LEAN_REFUSE_DEG = 5.0, 12.0
#: Arm length in the hold over its length at rest: cos 15 and cos 30 degrees out of plane,
#: less the length's own error; and a length that cannot be. [project]
ARM_SHORT_NOTE, ARM_SHORT_REFUSE, ARM_LONG_REFUSE = 0.90, 0.80, 1.3
#: Elbow angle in the image, degrees. Below the first a reading of flexion errs by 5 degrees on
#: average, above it by 2 (virtual people): the elbow is bent or found beside its place. [project]
ELBOW_NOTE_DEG, ELBOW_REFUSE_DEG = 168.0, 145.0
#: A shoulder that rises towards the ear by more than this share of their distance. [project]
SHRUG_SHARE = 0.12
#: The trunk's turn at which external rotation can be solved well, degrees. [project]
TURN_USABLE_DEG = (30.0, 60.0)
#: The trunk's turn beyond which external rotation cannot be solved, degrees. [project]
TURN_POSSIBLE_DEG = (18.0, 72.0)
#: The upper arm against the trunk axis, degrees, that is noted, and refused. [project]
OFF_TRUNK_NOTE_DEG, OFF_TRUNK_REFUSE_DEG = 15.0, 30.0
#: Least visibility (0..1) of elbow and wrist in the hold: a forearm that points at the lens
#: is otherwise found on the shirt. [project]
LEAST_FOREARM_VISIBILITY = 0.5
#: A height behind the back that scatters more than this in the hold is no reading, as a
#: fraction of the trunk. [project]
REACH_WANDER = 0.05
#: Longest upper arm, seen from behind, over the trunk. [project]
REACH_UPPER_ARM = 0.9
#: Trunk turned after the zero pose: the change of the shoulders' width over the trunk that is
#: noted, and refused. [project]
TURN_NOTE, TURN_REFUSE = 0.09, 0.16


def by_threshold(value: float, note_at: float, refuse_at: float, reason: Reason) -> GateResult:
    """Return a note at `note_at` or more, a refusal at `refuse_at` or more; NaN gives none."""
    if value >= refuse_at:
        return refuse(reason)
    return note(reason) if value >= note_at else GateResult()


def merge_results(results: Iterable[GateResult]) -> GateResult:
    return sum(results, GateResult())


def needed_marks(task: MeasurementTask) -> tuple[Landmark, ...]:
    """Return the landmarks without which the movement cannot be read."""
    own, other = arm(task.side), arm(task.side.other)
    marks = (own.shoulder, other.shoulder, own.hip, other.hip, own.elbow, own.wrist)
    return (*marks, own.thumb) if task.facts.behind_back else marks


def person_gate(track: Track) -> GateResult:
    """Check that one and the same person was seen, in enough readable frames."""
    if len(track) == 0:
        return refuse(Reason.NOBODY)
    share = {state: float(np.mean(track.state == state)) for state in FrameState}
    result = GateResult()
    if share[FrameState.SEEN] == 0:
        return refuse(Reason.NOBODY)
    if share[FrameState.OTHER_PERSON] + share[FrameState.AMBIGUOUS] > OFTEN:
        result += refuse(Reason.OTHER_PERSON)
    if share[FrameState.NOBODY] > OFTEN:
        result += refuse(Reason.PERSON_LOST)
    if share[FrameState.UNREADABLE] > OFTEN:
        result += refuse(Reason.UNREADABLE_FRAMES)
    elif share[FrameState.UNREADABLE] > 0:
        result += note(Reason.UNREADABLE_FRAMES)
    if float(np.mean(track.people > 1)) > OFTEN:
        result += note(Reason.TWO_PEOPLE)
    return result


def rate_gate(track: Track) -> GateResult:
    """Check that the coarse pass had enough frames a second to see a hold."""
    steps = np.diff(track.time_s)
    slow = len(steps) > 0 and float(np.median(steps)) > 1 / LEAST_FRAME_RATE
    return refuse(Reason.LOW_FRAME_RATE) if slow else GateResult()


def picture_gate(track: Track, task: MeasurementTask, frames: Mask) -> GateResult:
    """Check that the needed landmarks are inside the image and not hidden in `frames`."""
    if not np.any(frames):
        return GateResult()
    marks = list(needed_marks(task))
    points = track.points_px[frames][:, marks]
    edge = EDGE_SHARE * max(track.width_px, track.height_px)
    inside = (
        (points[..., 0] >= edge)
        & (points[..., 0] <= track.width_px - 1 - edge)
        & (points[..., 1] >= edge)
        & (points[..., 1] <= track.height_px - 1 - edge)
    ) | np.isnan(points[..., 0])
    result = GateResult()
    if float(np.max(np.mean(~inside, axis=0))) > OFTEN:
        result += refuse(Reason.OUT_OF_PICTURE)
    other = arm(task.side.other)  # always hidden in a side view
    judged = [mark for mark in marks if mark not in (other.shoulder, other.hip)]
    visibility = np.minimum(track.visibility[frames][:, judged], track.presence[frames][:, judged])
    median = median_over(visibility, np.ones(len(visibility), dtype=bool))
    if not task.facts.behind_back and not bool(np.all(median >= LEAST_VISIBILITY)):
        result += refuse(Reason.HIDDEN)
    return result


def upright_gate(keypoints: ArmKeypoints, frames: Mask) -> GateResult:
    """Check that the head is above the hips: a turned picture still gives a confident pose."""
    up = median_over(direction_deg(keypoints.trunk), frames)
    head = median_over((keypoints.ear + keypoints.other_ear) / 2 - keypoints.mid_hip, frames)
    tilted = abs(float(wrap_deg(up - 90.0))) > TURNED_DEG
    return refuse(Reason.TURNED_PICTURE) if tilted or head[1] <= 0 else GateResult()


def view_gate(keypoints: ArmKeypoints, task: MeasurementTask, rest: Mask, hold: Mask) -> GateResult:
    """Check what the camera sees of the body, and that left and right were not exchanged."""
    view = task.known_view
    across = keypoints.separation_px / float(median_over(keypoints.trunk_px, rest))
    low, high = SEPARATION[view]
    at_rest = float(median_over(across, rest))
    result = GateResult()
    if not low <= at_rest <= high:
        wrong_way = view in (View.FRONT, View.BACK) and low <= -at_rest <= high
        if task.facts.behind_back and wrong_way:
            result += refuse(Reason.SIDES_EXCHANGED)
        else:
            result += refuse(Reason.WRONG_VIEW)
    else:
        during = float(median_over(across, hold))
        turned_round = {View.FRONT: during > high, View.BACK: during < low / 2}
        if turned_round.get(view, False):
            result += refuse(Reason.SIDES_EXCHANGED)
    if view is View.SIDE:
        result += _near_arm_gate(keypoints, rest)
    return result


def _near_arm_gate(keypoints: ArmKeypoints, rest: Mask) -> GateResult:
    """In a side view the nose points away from the far arm's side of the picture."""
    ears = (keypoints.ear + keypoints.other_ear) / 2
    forwards = float(median_over((keypoints.nose - ears)[:, 0] / keypoints.trunk_px, rest))
    near_sign = 1.0 if keypoints.side is Side.RIGHT else -1.0
    return refuse(Reason.FAR_ARM) if forwards * near_sign < 0 else GateResult()


def lean_gate(keypoints: ArmKeypoints, view: View, rest: Mask, hold: Mask) -> GateResult:
    """Check how far the trunk leaned between rest and hold."""
    start, end = median_over(keypoints.trunk, rest), median_over(keypoints.trunk, hold)
    lean = abs(float(turn_deg(start, end)))
    if view is View.SIDE:
        return by_threshold(lean, LEAN_NOTE_DEG, LEAN_REFUSE_DEG, Reason.TRUNK_LEAN)
    return by_threshold(lean, SIDE_LEAN_NOTE_DEG, SIDE_LEAN_REFUSE_DEG, Reason.TRUNK_LEAN)


def arm_gate(keypoints: ArmKeypoints, rest: Mask, hold: Mask) -> GateResult:
    """Check a straight arm: bent elbow, out of plane (shortened), or changing its length."""
    elbow = float(
        median_over(corner_deg(keypoints.shoulder, keypoints.elbow, keypoints.wrist), hold)
    )
    result = GateResult()
    if elbow < ELBOW_REFUSE_DEG:
        result += refuse(Reason.ELBOW_BENT)
    elif elbow < ELBOW_NOTE_DEG:
        result += note(Reason.ELBOW_BENT)
    arm_px = length(keypoints.elbow - keypoints.shoulder) + length(
        keypoints.wrist - keypoints.elbow
    )
    ratio = float(median_over(arm_px, hold) / median_over(arm_px, rest))
    if ratio > ARM_LONG_REFUSE:
        result += refuse(Reason.LIMB_LENGTH)
    elif ratio < ARM_SHORT_REFUSE:
        result += refuse(Reason.OUT_OF_PLANE)
    elif ratio < ARM_SHORT_NOTE:
        result += note(Reason.OUT_OF_PLANE)
    return result


def shrug_gate(keypoints: ArmKeypoints, rest: Mask, hold: Mask) -> GateResult:
    """Note a shoulder that rises towards the ear."""
    gap = (keypoints.ear - keypoints.shoulder)[:, 1]
    before, after = float(median_over(gap, rest)), float(median_over(gap, hold))
    shrugged = before > 0 and (before - after) / before > SHRUG_SHARE
    return note(Reason.SHRUG) if shrugged else GateResult()


def value_gate(movement: Movement, value: float) -> GateResult:
    """Check that the value can belong to a shoulder at all."""
    low, high = MOVEMENTS[movement].possible
    return GateResult() if low <= value <= high else refuse(Reason.IMPOSSIBLE_VALUE)


def elevation_gates(
    fused: FusedSeries, task: MeasurementTask, rest: Mask, hold: Mask
) -> GateResult:
    """Return all gates of an elevation for one trial."""
    keypoints = fused.keypoints
    result = _visibility_gates(keypoints.track, task, rest | hold)
    if Reason.NOBODY in result.refused_for:
        return result
    return merge_results(
        (
            result,
            upright_gate(keypoints, rest | hold),
            view_gate(keypoints, task, rest, hold),
            lean_gate(keypoints, task.known_view, rest, hold),
            arm_gate(keypoints, rest, hold),
            shrug_gate(keypoints, rest, hold),
        )
    )


def rotation_gates(fused: FusedSeries, task: MeasurementTask, zero: Mask, hold: Mask) -> GateResult:
    """Return all gates of external rotation for one trial; `fused` must hold its rotation."""
    keypoints, rotation, phases = fused.keypoints, fused.rotation, fused.rotation_phases
    assert rotation is not None
    assert phases is not None
    result = _visibility_gates(keypoints.track, task, zero | hold)
    if Reason.NOBODY in result.refused_for:
        return result
    return merge_results(
        (
            result,
            upright_gate(keypoints, zero | hold),
            view_gate(keypoints, task, zero, hold),
            _turn_gate(rotation, phases.facing),
            _forearm_gate(keypoints, hold),
            _side_gate(rotation, zero, hold),
            _trunk_turned_gate(keypoints, zero, hold),
            lean_gate(keypoints, View.FRONT, zero, hold),
        )
    )


def reach_gates(fused: FusedSeries, task: MeasurementTask, rest: Mask, hold: Mask) -> GateResult:
    """Return all gates of the hand-behind-back reach for one trial."""
    keypoints = fused.keypoints
    result = _visibility_gates(keypoints.track, task, rest | hold)
    if Reason.NOBODY in result.refused_for:
        return result
    start, end = median_over(keypoints.trunk, rest), median_over(keypoints.trunk, hold)
    lean = abs(float(turn_deg(start, end)))
    upper_arm = length(keypoints.elbow - keypoints.shoulder) / keypoints.trunk_px
    wanders = bool(np.any(hold)) and float(np.nanstd(fused.value[hold])) > REACH_WANDER
    too_long = float(median_over(upper_arm, hold)) > REACH_UPPER_ARM
    return merge_results(
        (
            result,
            upright_gate(keypoints, rest | hold),
            view_gate(keypoints, task, rest, hold),
            by_threshold(lean, REACH_LEAN_NOTE_DEG, REACH_LEAN_REFUSE_DEG, Reason.TRUNK_LEAN),
            refuse(Reason.UNSTEADY_HOLD) if wanders else GateResult(),
            refuse(Reason.LIMB_LENGTH) if too_long else GateResult(),
        )
    )


def _visibility_gates(track: Track, task: MeasurementTask, frames: Mask) -> GateResult:
    return person_gate(track) + picture_gate(track, task, frames)


def _turn_gate(rotation: Rotation, facing: Mask) -> GateResult:
    if not np.any(facing):
        return note(Reason.NO_FACING_STANCE)
    low, high = TURN_POSSIBLE_DEG
    if not low <= rotation.turn_deg <= high:
        return refuse(Reason.WRONG_VIEW)
    low, high = TURN_USABLE_DEG
    return GateResult() if low <= rotation.turn_deg <= high else note(Reason.WRONG_VIEW)


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
