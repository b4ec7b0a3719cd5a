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
from measure.domain.reasons import Reason, Verdict, note, refuse
from measure.domain.tracks import FrameState, Track
from measure.kinematics.angles import corner_deg, direction_deg, length, middle, turn_deg, wrap_deg
from measure.kinematics.keypoints import Posture, posture_of

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


def graded(value: float, note_at: float, refuse_at: float, reason: Reason) -> Verdict:
    """Return a note at `note_at` or more, a refusal at `refuse_at` or more; NaN gives none."""
    if value >= refuse_at:
        return refuse(reason)
    return note(reason) if value >= note_at else Verdict()


def total(verdicts: Iterable[Verdict]) -> Verdict:
    return sum(verdicts, Verdict())


def needed_marks(movement: Movement, side: Side) -> tuple[Landmark, ...]:
    """Return the landmarks without which the movement cannot be read."""
    own, other = arm(side), arm(side.other)
    marks = (own.shoulder, other.shoulder, own.hip, other.hip, own.elbow, own.wrist)
    return (*marks, own.thumb) if movement is Movement.HAND_BEHIND_BACK else marks


def person_gate(track: Track) -> Verdict:
    """Check that one and the same person was seen, in enough readable frames."""
    if len(track) == 0:
        return refuse(Reason.NOBODY)
    share = {state: float(np.mean(track.state == state)) for state in FrameState}
    verdict = Verdict()
    if share[FrameState.SEEN] == 0:
        return refuse(Reason.NOBODY)
    if share[FrameState.OTHER_PERSON] + share[FrameState.UNSURE_WHO] > OFTEN:
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


def rate_gate(track: Track) -> Verdict:
    """Check that the quick pass had enough pictures a second to see a hold."""
    steps = np.diff(track.time_s)
    slow = len(steps) > 0 and float(np.median(steps)) > 1 / LEAST_FRAME_RATE
    return refuse(Reason.LOW_FRAME_RATE) if slow else Verdict()


def picture_gate(track: Track, movement: Movement, side: Side, frames: Mask) -> Verdict:
    """Check that the needed landmarks are inside the picture and not hidden in `frames`."""
    if not np.any(frames):
        return Verdict()
    marks = list(needed_marks(movement, side))
    points = track.points_px[frames][:, marks]
    edge = EDGE_SHARE * max(track.width_px, track.height_px)
    inside = (
        (points[..., 0] >= edge)
        & (points[..., 0] <= track.width_px - 1 - edge)
        & (points[..., 1] >= edge)
        & (points[..., 1] <= track.height_px - 1 - edge)
    ) | np.isnan(points[..., 0])
    verdict = Verdict()
    if float(np.max(np.mean(~inside, axis=0))) > OFTEN:
        verdict += refuse(Reason.OUT_OF_PICTURE)
    exempt = {arm(side.other).shoulder, arm(side.other).hip}  # the far side is always hidden
    seen = [mark for mark in marks if mark not in exempt]
    sure = np.minimum(track.visibility[frames][:, seen], track.presence[frames][:, seen])
    middle_sure = middle(sure, np.ones(len(sure), dtype=bool))
    if movement is not Movement.HAND_BEHIND_BACK and not bool(
        np.all(middle_sure >= LEAST_VISIBILITY)
    ):
        verdict += refuse(Reason.HIDDEN)
    return verdict


def upright_gate(posture: Posture, frames: Mask) -> Verdict:
    """Check that the head is above the hips: a turned picture still gives a confident pose."""
    up = middle(direction_deg(posture.trunk), frames)
    head = middle((posture.ear + posture.other_ear) / 2 - posture.mid_hip, frames)
    tilted = abs(float(wrap_deg(up - 90.0))) > TURNED_DEG
    return refuse(Reason.TURNED_PICTURE) if tilted or head[1] <= 0 else Verdict()


def separation_share(posture: Posture, trunk_px: float) -> FloatArray:
    """Return the shoulders' signed separation over a trunk length, shape (n,)."""
    return posture.separation_px / trunk_px


def view_gate(posture: Posture, movement: Movement, view: View, rest: Mask, hold: Mask) -> Verdict:
    """Check what the camera sees of the body, and that left and right were not exchanged."""
    trunk_px = float(middle(posture.trunk_px, rest))
    across = separation_share(posture, trunk_px)
    low, high = SEPARATION[view]
    at_rest = float(middle(across, rest))
    verdict = Verdict()
    if not low <= at_rest <= high:
        wrong_way = view in (View.FRONT, View.BACK) and low <= -at_rest <= high
        if movement is Movement.HAND_BEHIND_BACK and wrong_way:
            verdict += refuse(Reason.SIDES_EXCHANGED)
        else:
            verdict += refuse(Reason.WRONG_VIEW)
    else:
        during = float(middle(across, hold))
        turned_round = {View.FRONT: during > high, View.BACK: during < low / 2}
        if turned_round.get(view, False):
            verdict += refuse(Reason.SIDES_EXCHANGED)
    if view is View.SIDE:
        verdict += _near_arm_gate(posture, rest)
    return verdict


def _near_arm_gate(posture: Posture, rest: Mask) -> Verdict:
    """In a side view the nose points away from the far arm's side of the picture."""
    ears = (posture.ear + posture.other_ear) / 2
    forwards = float(middle((posture.nose - ears)[:, 0] / posture.trunk_px, rest))
    near_sign = 1.0 if posture.side is Side.RIGHT else -1.0
    return refuse(Reason.FAR_ARM) if forwards * near_sign < 0 else Verdict()


def lean_gate(posture: Posture, view: View, rest: Mask, hold: Mask) -> Verdict:
    """Check how far the trunk leaned between rest and hold."""
    start, end = middle(posture.trunk, rest), middle(posture.trunk, hold)
    lean = abs(float(turn_deg(start, end)))
    if view is View.SIDE:
        return graded(lean, LEAN_NOTE_DEG, LEAN_REFUSE_DEG, Reason.TRUNK_LEAN)
    return graded(lean, SIDE_LEAN_NOTE_DEG, SIDE_LEAN_REFUSE_DEG, Reason.TRUNK_LEAN)


def arm_gate(posture: Posture, rest: Mask, hold: Mask) -> Verdict:
    """Check a straight arm: bent elbow, out of plane (shortened), or changing its length."""
    elbow = float(middle(corner_deg(posture.shoulder, posture.elbow, posture.wrist), hold))
    verdict = Verdict()
    if elbow < ELBOW_REFUSE_DEG:
        verdict += refuse(Reason.ELBOW_BENT)
    elif elbow < ELBOW_NOTE_DEG:
        verdict += note(Reason.ELBOW_BENT)
    arm_px = length(posture.elbow - posture.shoulder) + length(posture.wrist - posture.elbow)
    ratio = float(middle(arm_px, hold) / middle(arm_px, rest))
    if ratio > ARM_LONG_REFUSE:
        verdict += refuse(Reason.LIMB_LENGTH)
    elif ratio < ARM_SHORT_REFUSE:
        verdict += refuse(Reason.OUT_OF_PLANE)
    elif ratio < ARM_SHORT_NOTE:
        verdict += note(Reason.OUT_OF_PLANE)
    return verdict


def shrug_gate(posture: Posture, rest: Mask, hold: Mask) -> Verdict:
    """Note a shoulder that rises towards the ear by more than an eighth of its distance."""
    gap = (posture.ear - posture.shoulder)[:, 1]
    before, after = float(middle(gap, rest)), float(middle(gap, hold))
    return note(Reason.SHRUG) if before > 0 and (before - after) / before > 0.12 else Verdict()


def value_gate(movement: Movement, value: float) -> Verdict:
    """Check that the value can belong to a shoulder at all."""
    low, high = MOVEMENTS[movement].possible
    return Verdict() if low <= value <= high else refuse(Reason.IMPOSSIBLE_VALUE)


def elevation_gates(
    track: Track,
    side: Side,
    movement: Movement,
    view: View,
    rest: Mask,
    hold: Mask,
    camera: CameraSetup = UNKNOWN_CAMERA,
) -> Verdict:
    """Return all gates of flexion, extension or abduction for one trial.

    Parameters
    ----------
    track
        In pixels of the real picture, whose rim counts.
    """
    posture = posture_of(track, side, camera)
    verdict = person_gate(track) + picture_gate(track, movement, side, hold | rest)
    if Reason.NOBODY in verdict.refused_for:
        return verdict
    return total(
        (
            verdict,
            upright_gate(posture, rest | hold),
            view_gate(posture, movement, view, rest, hold),
            lean_gate(posture, view, rest, hold),
            arm_gate(posture, rest, hold),
            shrug_gate(posture, rest, hold),
        )
    )
