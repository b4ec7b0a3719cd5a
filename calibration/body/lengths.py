"""Body lengths relative to the trunk, from two poses before the camera or a tape measure.

The poses: a neutral pose facing the camera, and the arms out to the sides like a T or as far as
is comfortable. A limb never appears longer in an image than it is, so of the two poses the longer
value counts.
"""

import math
from dataclasses import dataclass

import numpy as np

from measure.domain.acquisition import POSSIBLE, BodySetup, is_possible
from measure.domain.landmarks import FloatArray, Side, arm
from measure.domain.standing_pose import Neutral
from measure.domain.tracks import FrameState, Track
from measure.errors import InputError
from measure.kinematics.angles import length
from measure.kinematics.neutral_pose import FACING_WIDTH, neutral_of

#: Largest difference of left and right arm, as a share; more means that one was turned to the
#: lens. [project]
MOST_SIDE_DIFFERENCE = 0.15
#: Angle from hanging from which an arm counts as out to the side, degrees. [project]
LEAST_RAISE_DEG = 25.0
#: Error of an arm's length, share, 95 of 100, as the network's points lie beside the joints: on
#: the front and back views among the sample clips the upper arm came out up to 5 % short, the
#: forearm up to 8 % off either way. [project]
POINT_ERROR = 0.08
#: Range of a typed trunk, centimetres. [project]
TRUNK_CM = (25.0, 80.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class BodyLengths:
    """Body lengths with their error.

    Attributes
    ----------
    body
        The lengths; None where not found.
    share_error
        Half of the 95 % interval as a share of each length, for the least certain length.
    notes
        Remarks on the result, in words.
    """

    body: BodySetup
    share_error: float
    notes: tuple[str, ...] = ()


def lengths_from_poses(neutral: Track, raised: Track | None = None) -> BodyLengths | str:
    """Return arm lengths and shoulder width from poses facing the camera, or why not.

    Parameters
    ----------
    neutral
        Standing still, arms hanging.
    raised
        The same person, arms out to the sides; None when that is not comfortable. Without it
        the lengths are less certain.
    """
    standing = neutral_of(neutral)
    if isinstance(standing, str):
        return standing
    if standing.width_over_trunk < FACING_WIDTH:
        return "The person is not facing the camera. Face it squarely, with your arms hanging."
    notes = []
    tracks = [neutral]
    if raised is not None:
        reached = _raise_deg(raised)
        if reached >= LEAST_RAISE_DEG:
            tracks.append(raised)
        else:
            notes.append("The arms were not seen out to the side; only the hanging arms count.")
    else:
        notes.append("From hanging arms only, which often point a little towards the camera.")
    limbs = {}
    for name, ends in (("upper_arm", ("shoulder", "elbow")), ("forearm", ("elbow", "wrist"))):
        sides = [_limb(tracks, side, ends, standing) for side in Side]
        if not all(map(math.isfinite, sides)):
            notes.append(f"The {name.replace('_', ' ')}s were not both seen.")
            continue
        if abs(sides[0] - sides[1]) > MOST_SIDE_DIFFERENCE * max(sides):
            return (
                f"Left and right {name.replace('_', ' ')} seem to differ by more than "
                f"{MOST_SIDE_DIFFERENCE:.0%}. Keep both arms flat to the sides, facing the camera."
            )
        limbs[name] = float(np.mean(sides))
    lengths = {**limbs, "shoulder_width": standing.width_over_trunk}
    impossible = [name for name, value in lengths.items() if not is_possible(name, value)]
    if impossible:
        return (
            f"The {impossible[0].replace('_', ' ')} measured is not possible. Wear close-fitting "
            "clothes and try again in good light."
        )
    return BodyLengths(
        body=BodySetup(**lengths),
        share_error=POINT_ERROR if len(tracks) == 2 else 2 * POINT_ERROR,
        notes=tuple(notes),
    )


def lengths_from_tape(
    *,
    trunk_cm: float,
    upper_arm_cm: float | None = None,
    forearm_cm: float | None = None,
    shoulder_width_cm: float | None = None,
) -> BodyLengths:
    """Return lengths typed from a tape measure, centimetres.

    Trunk: upright height between the bony points at the side of the hip (greater trochanter)
    and at the tip of the shoulder (acromion). Upper arm: tip of the shoulder to the outer bony
    point of the elbow. Forearm: from there to the bony point at the wrist's little-finger side.
    Shoulder width: between the tips of the shoulders.

    Raises
    ------
    InputError
        For an impossible length.
    """
    if not TRUNK_CM[0] <= trunk_cm <= TRUNK_CM[1]:
        raise InputError(
            f"A trunk of {trunk_cm:g} cm is not possible. Measure from hip to shoulder."
        )
    typed = {
        "upper_arm": upper_arm_cm,
        "forearm": forearm_cm,
        "shoulder_width": shoulder_width_cm,
    }
    lengths = {
        name: length_cm / trunk_cm for name, length_cm in typed.items() if length_cm is not None
    }
    for name, value in lengths.items():
        if not is_possible(name, value):
            low, high = POSSIBLE[name]
            raise InputError(
                f"With a trunk of {trunk_cm:g} cm the {name.replace('_', ' ')} must be between "
                f"{low * trunk_cm:.0f} and {high * trunk_cm:.0f} cm. Measure again."
            )
    if not lengths:
        raise InputError("Give at least one length besides the trunk.")
    return BodyLengths(body=BodySetup(**lengths), share_error=POINT_ERROR)


def _seen(track: Track) -> Track:
    return track.frames(track.state == FrameState.SEEN)


def _limb(tracks: list[Track], side: Side, ends: tuple[str, str], standing: Neutral) -> float:
    """Return a limb's length over the trunk's: the longer of the poses' medians.

    The trunk is that of the same frames where it is seen, as the person may have stepped
    between the poses.
    """
    marks = arm(side)
    medians = []
    for track in tracks:
        seen = _seen(track)
        first = seen.points_px[:, getattr(marks, ends[0])]
        second = seen.points_px[:, getattr(marks, ends[1])]
        shares = length(second - first) / _trunk_px(seen, standing)
        shares = shares[np.isfinite(shares)]
        if len(shares):
            medians.append(float(np.median(shares)))
    return max(medians, default=math.nan)


def _trunk_px(seen: Track, standing: Neutral) -> FloatArray:
    left, right = arm(Side.LEFT), arm(Side.RIGHT)
    points = seen.points_px
    shoulders = (points[:, left.shoulder] + points[:, right.shoulder]) / 2
    hips = (points[:, left.hip] + points[:, right.hip]) / 2
    trunk = length(shoulders - hips)
    return np.where(np.isfinite(trunk), trunk, standing.trunk_px)


def _raise_deg(track: Track) -> float:
    """Return the median angle of the arms from hanging, the smaller of both; NaN when not seen."""
    seen = _seen(track)
    angles = []
    for side in Side:
        marks = arm(side)
        along = seen.points_px[:, marks.elbow] - seen.points_px[:, marks.shoulder]
        angle = np.degrees(np.arctan2(np.abs(along[:, 0]), along[:, 1]))
        angle = angle[np.isfinite(angle)]
        angles.append(float(np.median(angle)) if len(angle) else math.nan)
    return min(angles) if all(map(math.isfinite, angles)) else math.nan
