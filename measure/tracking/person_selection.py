"""Person selection: who counts as a person at all, and which of several people is measured.

The network finds people in curtains and coats, and is as sure of them as of people (visibility
of 0.97 and more), so its confidences are not asked. An image shortens limbs but never
lengthens them, so only upper limits make sense. Lengths are in trunk lengths (mid-shoulder to
mid-hip).
"""

from collections.abc import Sequence

import numpy as np

from measure.domain.landmarks import FloatArray, Landmark, Side, arm
from measure.tracking.tracklets import Tracklet

#: Trunk length over the image's longer side, least and most. [project]
_TRUNK = (0.04, 0.9)
#: Longest apparent lengths over the trunk's; a trunk that leans towards the camera is short, so
#: they leave room. [project]
_UPPER_ARM = 1.3
_FOREARM = 1.3
_SHOULDERS = 1.4
_HIPS = 1.1
_THIGH = 2.0
_HEAD = 1.3
#: The person is chosen among those who appear in this time after the first one, seconds. [project]
CHOICE_S = 1.0
#: A tracklet of a person lasts at least this long, seconds. [project]
_SOLID_S = 0.5
#: A tracklet of a person has at least this many detections. [project]
_SOLID_FRAMES = 4
#: Share of a tracklet's detections that have a plausible body. [project]
_SOLID_SHARE = 0.6
#: Most detections of a tracklet whose body is judged, evenly chosen. [technical]
_MOST_JUDGED = 60
#: An appearance shorter than this, seconds, and than half of the longest, is brief. [project]
_LASTING_S = 2.0
#: How far from the middle a person still counts as central, as a share of the image's width.
#: [project]
_CENTRAL = 0.4


def is_plausible_body(points_px: FloatArray, longest_side_px: float) -> bool:
    """Tell whether a skeleton's size and proportions are possible for a person.

    Parameters
    ----------
    points_px
        Shape (33, 2), pixels.
    longest_side_px
        Of the image.
    """

    def length(start: Landmark, end: Landmark) -> float:
        return float(np.hypot(*(points_px[start] - points_px[end])))

    left, right = arm(Side.LEFT), arm(Side.RIGHT)
    shoulder = (points_px[left.shoulder] + points_px[right.shoulder]) / 2
    hip = (points_px[left.hip] + points_px[right.hip]) / 2
    trunk = float(np.hypot(*(shoulder - hip)))
    if not _TRUNK[0] <= trunk / longest_side_px <= _TRUNK[1]:
        return False
    arms_fit = all(
        length(marks.shoulder, marks.elbow) <= _UPPER_ARM * trunk
        and length(marks.elbow, marks.wrist) <= _FOREARM * trunk
        for marks in (left, right)
    )
    return (
        arms_fit
        and length(left.shoulder, right.shoulder) <= _SHOULDERS * trunk
        and length(left.hip, right.hip) <= _HIPS * trunk
        and length(Landmark.LEFT_HIP, Landmark.LEFT_KNEE) <= _THIGH * trunk
        and length(Landmark.RIGHT_HIP, Landmark.RIGHT_KNEE) <= _THIGH * trunk
        and float(np.hypot(*(points_px[Landmark.NOSE] - shoulder))) <= _HEAD * trunk
    )


def is_established_person(tracklet: Tracklet, size_px: FloatArray) -> bool:
    """Tell whether a tracklet lasted long enough, in a person's shape, to be a person."""
    detections = tracklet.detections
    if len(detections) < _SOLID_FRAMES or tracklet.end_s - tracklet.start_s < _SOLID_S:
        return False
    judged = detections[:: 1 + len(detections) // _MOST_JUDGED]
    longest_px = float(size_px.max())
    plausible = sum(is_plausible_body(detection.points_px, longest_px) for detection in judged)
    return plausible >= _SOLID_SHARE * len(judged)


def select_first_subject(people: Sequence[Tracklet], size_px: FloatArray) -> Tracklet | None:
    """Return the largest, most central and most lasting of those who appear first."""
    if not people:
        return None
    first_s = min(tracklet.start_s for tracklet in people)

    def weight(tracklet: Tracklet) -> float:
        end_s = tracklet.start_s + CHOICE_S
        early = [detection for detection in tracklet.detections if detection.time_s <= end_s]
        trunk_px = float(np.median([detection.trunk_px for detection in early]))
        across = (
            float(np.median([detection.centre_px[0] for detection in early])) / size_px[0] - 0.5
        )
        lasting = min(1.0, (tracklet.end_s - tracklet.start_s) / (2 * CHOICE_S))
        return trunk_px * lasting * float(np.exp(-((across / _CENTRAL) ** 2)))

    return max(
        (tracklet for tracklet in people if tracklet.start_s <= first_s + CHOICE_S), key=weight
    )


def select_subject(people: Sequence[Tracklet], size_px: FloatArray) -> Tracklet | None:
    """Return the first person of a whole recording, brief appearances before left aside.

    A person who films alone starts the recording close to the camera and then walks to the
    place; and in an empty room the network may see a person for a while.
    """
    longest_s = max((tracklet.end_s - tracklet.start_s for tracklet in people), default=0.0)
    lasting_s = min(_LASTING_S, longest_s / 2)
    return select_first_subject(
        [tracklet for tracklet in people if tracklet.end_s - tracklet.start_s >= lasting_s], size_px
    )
