"""Who counts as a person at all, and which of several people is measured.

Lengths are in trunk lengths (mid-shoulder to mid-hip). All limits are ours.
"""

from collections.abc import Sequence

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.tracking.likeness import is_plausible_body
from measure.tracking.tracklets import Tracklet

#: The person is chosen among those who appear in the first second of anybody.
CHOICE_S = 1.0

#: Somebody has to be seen for so long, and in so many frames, to count as a person.
_SOLID_S = 0.5
_SOLID_FRAMES = 4
_SOLID_SHARE = 0.6

#: Sightings of a path that are looked at closely, evenly chosen.
_MOST_JUDGED = 60

#: An appearance shorter than this, and than half of the longest, is brief.
_LASTING_S = 2.0

#: How far from the middle somebody still counts as central, as a share of the picture's width.
_CENTRAL = 0.4


def is_established_person(path: Tracklet, picture: FloatArray) -> bool:
    """Tell whether a path lasted long enough, in a person's shape, to be a person."""
    seen = path.detections
    if len(seen) < _SOLID_FRAMES or path.end_s - path.start_s < _SOLID_S:
        return False
    some = seen[:: 1 + len(seen) // _MOST_JUDGED]
    like = sum(is_plausible_body(one.points_px, float(picture.max())) for one in some)
    return like >= _SOLID_SHARE * len(some)


def select_first_subject(people: Sequence[Tracklet], picture: FloatArray) -> Tracklet | None:
    """Return the largest, most central and most lasting of those who appear first."""
    if not people:
        return None
    first_s = min(path.start_s for path in people)

    def weight(path: Tracklet) -> float:
        early = [one for one in path.detections if one.time_s <= path.start_s + CHOICE_S]
        trunk_px = float(np.median([one.trunk_px for one in early]))
        across = float(np.median([one.centre_px[0] for one in early])) / picture[0] - 0.5
        lasting = min(1.0, (path.end_s - path.start_s) / (2 * CHOICE_S))
        return trunk_px * lasting * float(np.exp(-((across / _CENTRAL) ** 2)))

    return max((path for path in people if path.start_s <= first_s + CHOICE_S), key=weight)


def select_subject(people: Sequence[Tracklet], picture: FloatArray) -> Tracklet | None:
    """Return the first person of a whole recording, brief appearances before left aside.

    Who films herself alone starts the recording close to the camera and then walks to her
    place; and an empty room may show a ghost for a while.
    """
    longest_s = max((path.end_s - path.start_s for path in people), default=0.0)
    lasting_s = min(_LASTING_S, longest_s / 2)
    return select_first_subject(
        [path for path in people if path.end_s - path.start_s >= lasting_s], picture
    )
