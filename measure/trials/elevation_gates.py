"""Quality gates of elevations: a straight arm, raised in the plane that the camera sees."""

import numpy as np

from measure.domain.landmarks import arm
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import View
from measure.domain.reasons import GateResult, Reason, note, refuse
from measure.kinematics.angles import length, median_over, plane_from_pixels, turn_deg
from measure.kinematics.fusion import FusedSeries, Mask
from measure.kinematics.keypoints import ArmKeypoints
from measure.trials.quality_gates import (
    lean_gate,
    merge_results,
    picture_gates,
    upright_gate,
    view_gate,
)

#: Arm length in the hold over its length at rest: cos 15 and cos 30 degrees out of plane,
#: less the length's own error; and a length that cannot be. [project]
ARM_SHORT_NOTE, ARM_SHORT_REFUSE, ARM_LONG_REFUSE = 0.90, 0.80, 1.3
#: Elbow angle in the image, degrees, that is noted, and refused. Of the straight arms of real
#: people one in eight is seen below the first and one in thirty below the second; of arms bent by
#: 40 degrees and more six in ten are. [project]
ELBOW_NOTE_DEG, ELBOW_REFUSE_DEG = 150.0, 135.0
#: A forearm seen shorter than this beside the upper arm points towards the camera or away from it:
#: the elbow is bent where the picture cannot show it. [project]
SHORT_FOREARM = 0.5
#: A shoulder that rises towards the ear by more than this share of their distance, at 0 degrees
#: and for each degree of elevation: more than good raises of real and virtual people show.
#: [project]
SHRUG_SHARE, SHRUG_SHARE_A_DEGREE = 0.15, 0.002
#: The other arm counts as raised from this angle to the trunk on, degrees. [project]
OTHER_RAISED_DEG = 45.0
#: The nose's distance sideways from the middle of the shoulders, over their separation, of a trunk
#: that is turned: about 0.45 times the tangent of its turn. In broad people the separation alone
#: does not tell it. Of real people who face the camera one in fifty lies beyond; those turned by
#: 45 degrees and more whose shoulders pass, and who were read wrong, all do. [project]
NOSE_ASIDE = 0.45
#: The same for a raised arm, whose angle a turn changes more than that of a hanging one: about 40
#: degrees; and from which elevation on an arm is raised, degrees. [project]
NOSE_ASIDE_RAISED, RAISED_DEG = 0.4, 30.0
#: The same that is noted of a raised arm: about 30 degrees. [project]
NOSE_ASIDE_NOTE = 0.25
#: The shoulders' separation over the trunk below which that of a raised arm is noted as turned.
#: [project]
NARROW_SHOULDERS = 0.5


def elevation_gates(
    fused: FusedSeries, task: MeasurementTask, rest: Mask, hold: Mask
) -> GateResult:
    """Return all gates of an elevation for one trial."""
    keypoints = fused.keypoints
    result = picture_gates(keypoints.track, task, rest | hold)
    if Reason.NOBODY in result.refused_for:
        return result
    view = view_gate(keypoints, task, rest, hold)
    if Reason.FAR_ARM in view.refused_for:  # what hides it is the body
        result = result.without(Reason.HIDDEN)
    elevation_deg = float(median_over(fused.value, hold))
    return merge_results(
        (
            view,
            result,
            upright_gate(keypoints, rest | hold),
            square_gate(keypoints, task.known_view, rest, elevation_deg),
            lean_gate(keypoints, task.known_view, rest, hold),
            arm_gate(keypoints, rest, hold),
            shrug_gate(keypoints, rest, hold, elevation_deg),
            other_arm_gate(keypoints, task.known_view, hold),
        )
    )


def square_gate(
    keypoints: ArmKeypoints, view: View, rest: Mask, elevation_deg: float
) -> GateResult:
    """Check that chest or back was turned squarely to the camera; nothing in a side view."""
    if view is View.SIDE:
        return GateResult()
    aside = abs(float(median_over((keypoints.nose - keypoints.mid_shoulder)[:, 0], rest)))
    width = abs(float(median_over(keypoints.separation_px, rest)))
    raised = elevation_deg >= RAISED_DEG
    if aside > (NOSE_ASIDE_RAISED if raised else NOSE_ASIDE) * width:
        return refuse(Reason.TRUNK_OBLIQUE)
    narrow = abs(float(median_over(keypoints.separation, rest))) < NARROW_SHOULDERS
    turned = raised and (narrow or aside > NOSE_ASIDE_NOTE * width)
    return note(Reason.TRUNK_OBLIQUE) if turned else GateResult()


def arm_gate(keypoints: ArmKeypoints, rest: Mask, hold: Mask) -> GateResult:
    """Check a straight arm: bent elbow, out of plane (shortened), or changing its length."""
    elbow = float(median_over(keypoints.elbow_deg, hold))
    upper_arm = length(keypoints.elbow - keypoints.shoulder)
    forearm = length(keypoints.wrist - keypoints.elbow)
    foreshortened = float(median_over(forearm / upper_arm, hold)) < SHORT_FOREARM
    result = GateResult()
    if elbow < ELBOW_REFUSE_DEG:
        result += refuse(Reason.ELBOW_BENT)
    elif elbow < ELBOW_NOTE_DEG or foreshortened:
        result += note(Reason.ELBOW_BENT)
    arm_px = upper_arm + forearm
    ratio = float(median_over(arm_px, hold) / median_over(arm_px, rest))
    if ratio > ARM_LONG_REFUSE:
        result += refuse(Reason.LIMB_LENGTH)
    elif ratio < ARM_SHORT_REFUSE:
        result += refuse(Reason.OUT_OF_PLANE)
    elif ratio < ARM_SHORT_NOTE:
        result += note(Reason.OUT_OF_PLANE)
    return result


def shrug_gate(keypoints: ArmKeypoints, rest: Mask, hold: Mask, elevation_deg: float) -> GateResult:
    """Note a shoulder that rises towards the ear by more than the elevation brings with it."""
    gap = (keypoints.ear - keypoints.shoulder)[:, 1]
    before, after = float(median_over(gap, rest)), float(median_over(gap, hold))
    raised_deg = elevation_deg if elevation_deg > 0 else 0.0
    usual = SHRUG_SHARE + SHRUG_SHARE_A_DEGREE * raised_deg
    shrugged = before > 0 and (before - after) / before > usual
    return note(Reason.SHRUG) if shrugged else GateResult()


def other_arm_gate(keypoints: ArmKeypoints, view: View, hold: Mask) -> GateResult:
    """Note that the other arm is raised too; from the side it cannot be seen well enough."""
    if view is View.SIDE:
        return GateResult()
    other, points = arm(keypoints.side.other), keypoints.track.points_px
    upper_arm = plane_from_pixels(points[:, other.elbow] - points[:, other.shoulder])
    raised = np.abs(turn_deg(-keypoints.trunk, upper_arm))
    high = float(median_over(raised, hold)) > OTHER_RAISED_DEG
    return note(Reason.OTHER_ARM_RAISED) if high else GateResult()
