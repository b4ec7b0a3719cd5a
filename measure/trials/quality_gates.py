"""Conditions that a trial must meet, each with its reason. Limits here are ours.

They were set just above normal amounts (trunk motion in arm elevation: Crawford & Jull 1993,
Stewart 1995) or from the truth bench, and want a physiotherapist's judgement. A *refusal*
keeps the trial out of the value; a *note* is shown beside it.
"""

from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray

from measure.domain.acquisition import UNKNOWN_CAMERA, CameraSetup
from measure.domain.landmarks import FloatArray, Landmark, Side, arm
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
from measure.kinematics.keypoints import ArmKeypoints, arm_keypoints

Mask = NDArray[np.bool_]

#: Shoulders' signed separation over trunk, (low, high), by view. From the truth bench.
SEPARATION = {
    View.FRONT: (-1.1, -0.45),
    View.BACK: (0.3, 1.1),
    View.SIDE: (-0.42, 0.42),
    View.OBLIQUE: (-0.75, -0.2),
}
#: Share of the picture's long side that a landmark must keep from the edge.
EDGE_SHARE = 0.008
#: A landmark seen less surely than this, in the median, is hidden.
LEAST_VISIBILITY = 0.3
#: Share of frames in which a state must occur to count.
OFTEN = 0.25
#: Fewer pictures a second than this cannot show a hold.
LEAST_FRAME_RATE = 4.5
#: Trunk axis against the vertical beyond this: the picture is turned.
TURNED_DEG = 50.0
LEAN_NOTE_DEG, LEAN_REFUSE_DEG = 6.0, 12.0
SIDE_LEAN_NOTE_DEG, SIDE_LEAN_REFUSE_DEG = 5.0, 10.0
#: Arm length in the hold over its length at rest: cos 15 and cos 30 degrees out of plane,
#: less the length's own error.
ARM_SHORT_NOTE, ARM_SHORT_REFUSE, ARM_LONG_REFUSE = 0.90, 0.80, 1.3
#: Elbow angle in the picture. Below the first a reading of flexion errs by 5° on average, above it
#: by 2° (virtual people): the elbow is bent, or seen beside its place, and nothing tells which.
ELBOW_NOTE_DEG, ELBOW_REFUSE_DEG = 168.0, 145.0


def by_threshold(value: float, note_at: float, refuse_at: float, reason: Reason) -> GateResult:
    """Return a note at `note_at` or more, a refusal at `refuse_at` or more; NaN gives none."""
    if value >= refuse_at:
        return refuse(reason)
    return note(reason) if value >= note_at else GateResult()


def merge_results(verdicts: Iterable[GateResult]) -> GateResult:
    return sum(verdicts, GateResult())


def needed_marks(movement: Movement, side: Side) -> tuple[Landmark, ...]:
    """Return the landmarks without which the movement cannot be read."""
    own, other = arm(side), arm(side.other)
    marks = (own.shoulder, other.shoulder, own.hip, other.hip, own.elbow, own.wrist)
    return (*marks, own.thumb) if movement is Movement.HAND_BEHIND_BACK else marks


def person_gate(track: Track) -> GateResult:
    """Check that one and the same person was seen, in enough readable frames."""
    if len(track) == 0:
        return refuse(Reason.NOBODY)
    share = {state: float(np.mean(track.state == state)) for state in FrameState}
    verdict = GateResult()
    if share[FrameState.SEEN] == 0:
        return refuse(Reason.NOBODY)
    if share[FrameState.OTHER_PERSON] + share[FrameState.AMBIGUOUS] > OFTEN:
        verdict += refuse(Reason.OTHER_PERSON)
    if share[FrameState.NOBODY] > OFTEN:
        verdict += refuse(Reason.PERSON_LOST)
    if share[FrameState.UNREADABLE] > OFTEN:
        verdict += refuse(Reason.UNREADABLE_FRAMES)
    elif share[FrameState.UNREADABLE] > 0:
        verdict += note(Reason.UNREADABLE_FRAMES)
    if float(np.mean(track.people > 1)) > OFTEN:
        verdict += note(Reason.TWO_PEOPLE)
    return verdict


def rate_gate(track: Track) -> GateResult:
    """Check that the quick pass had enough pictures a second to see a hold."""
    steps = np.diff(track.time_s)
    slow = len(steps) > 0 and float(np.median(steps)) > 1 / LEAST_FRAME_RATE
    return refuse(Reason.LOW_FRAME_RATE) if slow else GateResult()


def picture_gate(track: Track, movement: Movement, side: Side, frames: Mask) -> GateResult:
    """Check that the needed landmarks are inside the picture and not hidden in `frames`."""
    if not np.any(frames):
        return GateResult()
    marks = list(needed_marks(movement, side))
    points = track.points_px[frames][:, marks]
    edge = EDGE_SHARE * max(track.width_px, track.height_px)
    inside = (
        (points[..., 0] >= edge)
        & (points[..., 0] <= track.width_px - 1 - edge)
        & (points[..., 1] >= edge)
        & (points[..., 1] <= track.height_px - 1 - edge)
    ) | np.isnan(points[..., 0])
    verdict = GateResult()
    if float(np.max(np.mean(~inside, axis=0))) > OFTEN:
        verdict += refuse(Reason.OUT_OF_PICTURE)
    exempt = {arm(side.other).shoulder, arm(side.other).hip}  # the far side is always hidden
    seen = [mark for mark in marks if mark not in exempt]
    sure = np.minimum(track.visibility[frames][:, seen], track.presence[frames][:, seen])
    middle_sure = median_over(sure, np.ones(len(sure), dtype=bool))
    if movement is not Movement.HAND_BEHIND_BACK and not bool(
        np.all(middle_sure >= LEAST_VISIBILITY)
    ):
        verdict += refuse(Reason.HIDDEN)
    return verdict


def upright_gate(posture: ArmKeypoints, frames: Mask) -> GateResult:
    """Check that the head is above the hips: a turned picture still gives a confident pose."""
    up = median_over(direction_deg(posture.trunk), frames)
    head = median_over((posture.ear + posture.other_ear) / 2 - posture.mid_hip, frames)
    tilted = abs(float(wrap_deg(up - 90.0))) > TURNED_DEG
    return refuse(Reason.TURNED_PICTURE) if tilted or head[1] <= 0 else GateResult()


def separation_share(posture: ArmKeypoints, trunk_px: float) -> FloatArray:
    """Return the shoulders' signed separation over a trunk length, shape (n,)."""
    return posture.separation_px / trunk_px


def view_gate(
    posture: ArmKeypoints, movement: Movement, view: View, rest: Mask, hold: Mask
) -> GateResult:
    """Check what the camera sees of the body, and that left and right were not exchanged."""
    trunk_px = float(median_over(posture.trunk_px, rest))
    across = separation_share(posture, trunk_px)
    low, high = SEPARATION[view]
    at_rest = float(median_over(across, rest))
    verdict = GateResult()
    if not low <= at_rest <= high:
        wrong_way = view in (View.FRONT, View.BACK) and low <= -at_rest <= high
        if movement is Movement.HAND_BEHIND_BACK and wrong_way:
            verdict += refuse(Reason.SIDES_EXCHANGED)
        else:
            verdict += refuse(Reason.WRONG_VIEW)
    else:
        during = float(median_over(across, hold))
        turned_round = {View.FRONT: during > high, View.BACK: during < low / 2}
        if turned_round.get(view, False):
            verdict += refuse(Reason.SIDES_EXCHANGED)
    if view is View.SIDE:
        verdict += _near_arm_gate(posture, rest)
    return verdict


def _near_arm_gate(posture: ArmKeypoints, rest: Mask) -> GateResult:
    """In a side view the nose points away from the far arm's side of the picture."""
    ears = (posture.ear + posture.other_ear) / 2
    forwards = float(median_over((posture.nose - ears)[:, 0] / posture.trunk_px, rest))
    near_sign = 1.0 if posture.side is Side.RIGHT else -1.0
    return refuse(Reason.FAR_ARM) if forwards * near_sign < 0 else GateResult()


def lean_gate(posture: ArmKeypoints, view: View, rest: Mask, hold: Mask) -> GateResult:
    """Check how far the trunk leaned between rest and hold."""
    start, end = median_over(posture.trunk, rest), median_over(posture.trunk, hold)
    lean = abs(float(turn_deg(start, end)))
    if view is View.SIDE:
        return by_threshold(lean, LEAN_NOTE_DEG, LEAN_REFUSE_DEG, Reason.TRUNK_LEAN)
    return by_threshold(lean, SIDE_LEAN_NOTE_DEG, SIDE_LEAN_REFUSE_DEG, Reason.TRUNK_LEAN)


def arm_gate(posture: ArmKeypoints, rest: Mask, hold: Mask) -> GateResult:
    """Check a straight arm: bent elbow, out of plane (shortened), or changing its length."""
    elbow = float(median_over(corner_deg(posture.shoulder, posture.elbow, posture.wrist), hold))
    verdict = GateResult()
    if elbow < ELBOW_REFUSE_DEG:
        verdict += refuse(Reason.ELBOW_BENT)
    elif elbow < ELBOW_NOTE_DEG:
        verdict += note(Reason.ELBOW_BENT)
    arm_px = length(posture.elbow - posture.shoulder) + length(posture.wrist - posture.elbow)
    ratio = float(median_over(arm_px, hold) / median_over(arm_px, rest))
    if ratio > ARM_LONG_REFUSE:
        verdict += refuse(Reason.LIMB_LENGTH)
    elif ratio < ARM_SHORT_REFUSE:
        verdict += refuse(Reason.OUT_OF_PLANE)
    elif ratio < ARM_SHORT_NOTE:
        verdict += note(Reason.OUT_OF_PLANE)
    return verdict


def shrug_gate(posture: ArmKeypoints, rest: Mask, hold: Mask) -> GateResult:
    """Note a shoulder that rises towards the ear by more than an eighth of its distance."""
    gap = (posture.ear - posture.shoulder)[:, 1]
    before, after = float(median_over(gap, rest)), float(median_over(gap, hold))
    return note(Reason.SHRUG) if before > 0 and (before - after) / before > 0.12 else GateResult()


def value_gate(movement: Movement, value: float) -> GateResult:
    """Check that the value can belong to a shoulder at all."""
    low, high = MOVEMENTS[movement].possible
    return GateResult() if low <= value <= high else refuse(Reason.IMPOSSIBLE_VALUE)


def elevation_gates(
    track: Track,
    side: Side,
    movement: Movement,
    view: View,
    rest: Mask,
    hold: Mask,
    camera: CameraSetup = UNKNOWN_CAMERA,
) -> GateResult:
    """Return all gates of flexion, extension or abduction for one trial.

    Parameters
    ----------
    track
        In pixels of the real picture, whose rim counts.
    """
    posture = arm_keypoints(track, side, camera)
    verdict = person_gate(track) + picture_gate(track, movement, side, hold | rest)
    if Reason.NOBODY in verdict.refused_for:
        return verdict
    return merge_results(
        (
            verdict,
            upright_gate(posture, rest | hold),
            view_gate(posture, movement, view, rest, hold),
            lean_gate(posture, view, rest, hold),
            arm_gate(posture, rest, hold),
            shrug_gate(posture, rest, hold),
        )
    )
