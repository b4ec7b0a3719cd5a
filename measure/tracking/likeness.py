"""Whether a skeleton can be a person at all: size and proportions of what was found.

The network finds people in curtains and coats, and is as sure of them as of people (visibility
of 0.97 and more), so its confidences are not asked. One picture shortens limbs but never
lengthens them, so only upper limits make sense here. All limits are ours.
"""

import numpy as np

from measure.domain.landmarks import FloatArray, Landmark, Side, arm

#: Trunk length over the picture's longer side, least and most.
_TRUNK = (0.04, 0.9)

#: Longest apparent lengths over the trunk's; a trunk that leans towards the camera is short,
#: so they leave room.
_UPPER_ARM = 1.3
_FOREARM = 1.3
_SHOULDERS = 1.4
_HIPS = 1.1
_THIGH = 2.0
_HEAD = 1.3


def is_plausible_body(points_px: FloatArray, longest_side_px: float) -> bool:
    """Tell whether a skeleton's size and proportions are possible for a person.

    Parameters
    ----------
    points_px
        Shape (33, 2), pixels.
    longest_side_px
        Of the picture.
    """

    def length(one: Landmark, other: Landmark) -> float:
        return float(np.hypot(*(points_px[one] - points_px[other])))

    left, right = arm(Side.LEFT), arm(Side.RIGHT)
    shoulder = (points_px[left.shoulder] + points_px[right.shoulder]) / 2
    hip = (points_px[left.hip] + points_px[right.hip]) / 2
    trunk = float(np.hypot(*(shoulder - hip)))
    if not _TRUNK[0] <= trunk / longest_side_px <= _TRUNK[1]:
        return False
    arms_fit = all(
        length(each.shoulder, each.elbow) <= _UPPER_ARM * trunk
        and length(each.elbow, each.wrist) <= _FOREARM * trunk
        for each in (left, right)
    )
    return (
        arms_fit
        and length(left.shoulder, right.shoulder) <= _SHOULDERS * trunk
        and length(left.hip, right.hip) <= _HIPS * trunk
        and length(Landmark.LEFT_HIP, Landmark.LEFT_KNEE) <= _THIGH * trunk
        and length(Landmark.RIGHT_HIP, Landmark.RIGHT_KNEE) <= _THIGH * trunk
        and float(np.hypot(*(points_px[Landmark.NOSE] - shoulder))) <= _HEAD * trunk
    )
