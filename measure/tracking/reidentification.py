"""How a person is known again after a gap, an absence, or a meeting with somebody else.

By place and size only; whoever was in the picture together with the person is somebody else.
Lengths are in trunk lengths (mid-shoulder to mid-hip). All limits are ours.
"""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from measure.tracking.tracklets import LONGEST_GAP_S, Detection, Tracklet, distance

#: After a gap up to this, somebody at the last place is the same person without more ado.
_SHORT_GAP_S = 1.0
_SAME_PLACE = 0.6
_SAME_SIZE = 1.25

#: Standing means staying this close to one place for so long; the place is then a home.
_STANDING = 0.2
_STANDING_S = 1.0

#: After a longer gap the person counts as back after being so close to home for so long.
_BACK_HOME = 0.5
_BACK_HOME_S = 0.7

#: The same after somebody else came so close that the two could not be told apart: a slow
#: walker must not pass for the person.
_BACK_FROM_DISPUTE = 0.2
_BACK_FROM_DISPUTE_S = 1.0


def reidentify(own: Sequence[Detection], paths: Sequence[Tracklet]) -> tuple[Tracklet, int] | None:
    """Return the path on which the person is seen again, and the first sighting that counts.

    Whoever was in the picture together with the person is somebody else.
    """
    last = own[-1]
    later = [path for path in paths if path.start_s > last.time_s]
    home = _standing_place(own)
    for path in later:
        if _goes_on(path, last, later):
            return path, 0
        if home is not None:
            start = _back_home(path, home)
            if start is not None:
                return path, start
    return None


def _goes_on(path: Tracklet, last: Detection, later: Sequence[Tracklet]) -> bool:
    """Tell whether a path follows a short gap at the same place, and no other does."""

    def fits(other: Tracklet) -> bool:
        one = other.detections[0]
        return (
            one.time_s - last.time_s <= _SHORT_GAP_S
            and distance(one, last) <= _SAME_PLACE
            and _same_size(one, last)
        )

    steady = path.is_established and not path.disputed
    return steady and [other for other in later if fits(other)] == [path]


def _same_size(one: Detection, other: Detection) -> bool:
    return 1 / _SAME_SIZE <= one.trunk_px / other.trunk_px <= _SAME_SIZE


def _standing_place(own: Sequence[Detection]) -> Detection | None:
    """Return the last place where the person stood, as a sighting in the middle of it."""
    end = len(own)
    start = end
    while end > 0:
        while start > 0 and own[end - 1].time_s - own[start - 1].time_s <= _STANDING_S:
            start -= 1
        stand = own[start:end]
        if start == 0 and stand[-1].time_s - stand[0].time_s < 0.9 * _STANDING_S:
            return None
        x, y = np.median([one.centre_px for one in stand], axis=0).tolist()
        trunk_px = float(np.median([one.trunk_px for one in stand]))
        place = replace(stand[-1], centre_px=(x, y), trunk_px=trunk_px)
        if all(distance(one, place) <= _STANDING for one in stand):
            return place
        end -= 1
        start = min(start, end)
    return None


def _back_home(path: Tracklet, home: Detection) -> int | None:
    """Return the number of the sighting from which the path stays at home, if it does.

    A path that began in dispute counts only when the other has had time to show up elsewhere.
    """
    wait_s = path.start_s + LONGEST_GAP_S if path.disputed else path.start_s
    near = _BACK_FROM_DISPUTE if path.disputed else _BACK_HOME
    stay_s = _BACK_FROM_DISPUTE_S if path.disputed else _BACK_HOME_S
    start: int | None = None
    for number, one in enumerate(path.detections):
        if one.time_s < wait_s or distance(one, home) > near or not _same_size(one, home):
            start = None
        elif start is None:
            start = number
        elif one.time_s - path.detections[start].time_s >= stay_s:
            return start
    return None
