"""The person lock: one person out of all that the network sees, followed all the way.

The network's list has no fixed order, reports one person twice at times, goes over to somebody
else when the first leaves, and finds people in curtains. Here one person is chosen and followed
by place and size; where that leaves doubt the frame is marked, never guessed. Arrays only.

Lengths are in trunk lengths (mid-shoulder to mid-hip). All limits are ours.
"""

from collections.abc import Mapping, Sequence

import numpy as np

from measure.domain.landmarks import LANDMARKS
from measure.domain.tracks import FrameState, PoseFrame, Track
from measure.tracking.person_selection import is_established_person, select_subject
from measure.tracking.reidentification import reidentify
from measure.tracking.tracklets import (
    LONGEST_GAP_S,
    Detection,
    Tracklet,
    backwards,
    distance,
    link_detections,
    sighting,
    without_flickers,
)

#: Farther from the place of another pass's person it is somebody else.
_LIKE_PLACE = 0.6

#: Of two skeletons near the place of another pass's person, the nearer is taken if so much is
#: between them.
_CLEARLY_NEARER = 0.3


def track_subject(
    frames: Sequence[PoseFrame], *, width_px: int, height_px: int, reference: Track | None = None
) -> Track:
    """Follow one person through the frames.

    Parameters
    ----------
    frames
        In order of time, of one source and one pass.
    width_px, height_px
        Size of the upright picture that their pixels belong to.
    like
        A track of the same source, made from another pass: its person is followed instead of
        choosing one.

    Returns
    -------
    Track
        With one entry for each frame given.
    """
    picture = np.array([width_px, height_px], dtype=np.float64)
    paths = [without_flickers(path) for path in link_detections(frames)]
    people = [path for path in paths if is_established_person(path, picture)]
    if reference is not None:
        labels = _labels_by_reference(paths, reference)
    else:
        labels = _labels(paths, people, select_subject(people, picture))
    return _track(frames, labels, people, width_px, height_px)


def _labels(
    paths: Sequence[Tracklet], people: Sequence[Tracklet], main: Tracklet | None
) -> dict[Detection, FrameState]:
    """Return what each sighting is; those that are nobody in particular are left out."""
    labels: dict[Detection, FrameState] = {}
    for path in paths:
        if path.disputed or path.disputed_end:
            labels.update(dict.fromkeys(path.detections, FrameState.AMBIGUOUS))
        elif path in people:
            labels.update(dict.fromkeys(path.detections, FrameState.OTHER_PERSON))
    if main is not None:
        labels.update(_sure_of(main))
        labels.update(_onwards(main, paths))
        there_and_back = {backwards(path): path for path in paths}
        back = {path: mirrored for mirrored, path in there_and_back.items()}
        before = sorted(there_and_back, key=lambda path: path.start_s)
        originals = {
            turned: one
            for mirrored, path in there_and_back.items()
            for turned, one in zip(mirrored.detections, reversed(path.detections), strict=True)
        }
        earlier = _onwards(back[main], before)
        labels.update({originals[one]: label for one, label in earlier.items()})
    return labels


def _sure_of(main: Tracklet) -> dict[Detection, FrameState]:
    """Return what the sightings of the chosen path are; after a dispute the first are unsure."""
    sure_s = main.start_s + LONGEST_GAP_S if main.disputed else main.start_s
    return {
        one: FrameState.SEEN if one.time_s >= sure_s else FrameState.AMBIGUOUS
        for one in main.detections
    }


def _onwards(main: Tracklet, paths: Sequence[Tracklet]) -> dict[Detection, FrameState]:
    """Return what the sightings on the later paths of a person are."""
    labels: dict[Detection, FrameState] = {}
    own = list(main.detections)
    while (present := reidentify(own, paths)) is not None:
        path, start = present
        labels.update(dict.fromkeys(path.detections[:start], FrameState.AMBIGUOUS))
        labels.update(dict.fromkeys(path.detections[start:], FrameState.SEEN))
        own += path.detections[start:]
    return labels


def _labels_by_reference(
    paths: Sequence[Tracklet], reference: Track
) -> dict[Detection, FrameState]:
    """Return what each sighting is by comparison with another track of the same source."""
    labels: dict[Detection, FrameState] = {}
    known = np.flatnonzero(reference.state == FrameState.SEEN)
    places = [
        sighting(int(n), 0, float(reference.time_s[n]), np.array(reference.points_px[n]))
        for n in known
    ]
    times_s = reference.time_s[known]
    fitting: dict[int, list[tuple[float, Detection]]] = {}
    for one in (each for path in paths for each in path.detections):
        labels[one] = FrameState.OTHER_PERSON
        if not len(times_s):
            continue
        nearest = int(np.argmin(np.abs(times_s - one.time_s)))
        place = places[nearest]
        near = place is not None and abs(times_s[nearest] - one.time_s) <= LONGEST_GAP_S
        if place is not None and near and distance(one, place) <= _LIKE_PLACE:
            fitting.setdefault(one.frame, []).append((distance(one, place), one))
    for rivals in fitting.values():
        rivals.sort(key=lambda rival: rival[0])
        sure = len(rivals) == 1 or rivals[1][0] - rivals[0][0] > _CLEARLY_NEARER
        labels[rivals[0][1]] = FrameState.SEEN if sure else FrameState.AMBIGUOUS
    return labels


def _track(
    frames: Sequence[PoseFrame],
    labels: Mapping[Detection, FrameState],
    people: Sequence[Tracklet],
    width_px: int,
    height_px: int,
) -> Track:
    n = len(frames)
    state = np.full(n, FrameState.NOBODY, dtype=np.int64)
    for one, label in labels.items():
        if _CLAIM[label] > _CLAIM[FrameState(state[one.frame])]:
            state[one.frame] = label
    points_px = np.full((n, LANDMARKS, 2), np.nan)
    visibility = np.full((n, LANDMARKS), np.nan)
    presence = np.full((n, LANDMARKS), np.nan)
    counted = {one for path in people for one in path.detections} | labels.keys()
    in_view = np.bincount([one.frame for one in counted], minlength=n)[:n]
    for one, label in labels.items():
        if label is FrameState.SEEN:
            points_px[one.frame] = one.points_px
            visibility[one.frame] = frames[one.frame].visibility[one.who]
            presence[one.frame] = frames[one.frame].presence[one.who]
    state[[not frame.readable for frame in frames]] = FrameState.UNREADABLE
    return Track(
        time_s=np.array([frame.time_s for frame in frames], dtype=np.float64),
        points_px=points_px,
        visibility=visibility,
        presence=presence,
        state=state,
        people=in_view.astype(np.int64),
        width_px=width_px,
        height_px=height_px,
    )


#: Which label a frame with several gets: the largest.
_CLAIM: Mapping[FrameState, int] = {
    FrameState.NOBODY: 0,
    FrameState.UNREADABLE: 0,
    FrameState.OTHER_PERSON: 1,
    FrameState.AMBIGUOUS: 2,
    FrameState.SEEN: 3,
}
