"""Re-identification: the same person after a gap, an absence, or a meeting with another one.

By place and size only; everyone who was in view together with the person is another person.
Lengths are in trunk lengths (mid-shoulder to mid-hip).
"""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from measure.tracking.tracklets import LONGEST_GAP_S, Detection, Tracklet, distance

#: After a gap up to this, seconds, a person at the last place is the same one. [project]
_SHORT_GAP_S = 1.0
#: Two detections closer than this, in trunk lengths, are at the same place. [project]
_SAME_PLACE = 0.6
#: Largest ratio of two trunk lengths of the same person. [project]
_SAME_SIZE = 1.25

#: Standing means staying this close to one place, in trunk lengths. [project]
_STANDING = 0.2
#: How long, seconds, a person has to stay there; it is then the standing place. [project]
_STANDING_S = 1.0

#: After a longer gap the person counts as back this close to the standing place, in trunk lengths.
#: [project]
_BACK_HOME = 0.5
#: How long, seconds, the person has to stay there. [project]
_BACK_HOME_S = 0.7

#: The same after a dispute, in trunk lengths: a slow walker must not pass for the person. [project]
_BACK_FROM_DISPUTE = 0.2
#: How long, seconds, the person has to stay there after a dispute. [project]
_BACK_FROM_DISPUTE_S = 1.0


def reidentify(
    own: Sequence[Detection], tracklets: Sequence[Tracklet]
) -> tuple[Tracklet, int] | None:
    """Return the tracklet on which the person is seen again, and the first detection that counts.

    Everyone who was in view together with the person is another person.
    """
    last = own[-1]
    later = [tracklet for tracklet in tracklets if tracklet.start_s > last.time_s]
    home = _standing_place(own)
    for tracklet in later:
        if _goes_on(tracklet, last, later):
            return tracklet, 0
        if home is not None:
            start = _back_home(tracklet, home)
            if start is not None:
                return tracklet, start
    return None


def _goes_on(tracklet: Tracklet, last: Detection, later: Sequence[Tracklet]) -> bool:
    """Tell whether a tracklet follows a short gap at the same place, and no other does."""

    def fits(other: Tracklet) -> bool:
        detection = other.detections[0]
        return (
            detection.time_s - last.time_s <= _SHORT_GAP_S
            and distance(detection, last) <= _SAME_PLACE
            and _same_size(detection, last)
        )

    steady = tracklet.is_established and not tracklet.disputed
    return steady and [other for other in later if fits(other)] == [tracklet]


def _same_size(detection: Detection, other: Detection) -> bool:
    return 1 / _SAME_SIZE <= detection.trunk_px / other.trunk_px <= _SAME_SIZE


def _standing_place(own: Sequence[Detection]) -> Detection | None:
    """Return the last place where the person stood, as a detection in the middle of it."""
    end = len(own)
    start = end
    while end > 0:
        while start > 0 and own[end - 1].time_s - own[start - 1].time_s <= _STANDING_S:
            start -= 1
        stand = own[start:end]
        if start == 0 and stand[-1].time_s - stand[0].time_s < 0.9 * _STANDING_S:
            return None
        x, y = np.median([detection.centre_px for detection in stand], axis=0).tolist()
        trunk_px = float(np.median([detection.trunk_px for detection in stand]))
        place = replace(stand[-1], centre_px=(x, y), trunk_px=trunk_px)
        if all(distance(detection, place) <= _STANDING for detection in stand):
            return place
        end -= 1
        start = min(start, end)
    return None


def _back_home(tracklet: Tracklet, home: Detection) -> int | None:
    """Return the number of the detection from which the tracklet stays at home, if it does.

    A tracklet that began in dispute counts only when the other has had time to show up elsewhere.
    """
    wait_s = tracklet.start_s + LONGEST_GAP_S if tracklet.disputed else tracklet.start_s
    near = _BACK_FROM_DISPUTE if tracklet.disputed else _BACK_HOME
    stay_s = _BACK_FROM_DISPUTE_S if tracklet.disputed else _BACK_HOME_S
    start: int | None = None
    for number, detection in enumerate(tracklet.detections):
        if (
            detection.time_s < wait_s
            or distance(detection, home) > near
            or not _same_size(detection, home)
        ):
            start = None
        elif start is None:
            start = number
        elif detection.time_s - tracklet.detections[start].time_s >= stay_s:
            return start
    return None
