"""Offline tracking: one person out of all that the network sees, followed through a recording.

The network's list has no fixed order, reports one person twice at times, goes over to another
person when the first leaves, and finds people in curtains. Here one person is selected and
followed by place and size; where that leaves doubt the frame is marked, never guessed. Arrays
only.

Lengths are in trunk lengths (mid-shoulder to mid-hip).
"""

from collections.abc import Mapping, Sequence
from itertools import chain

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
    detection_of,
    distance,
    link_detections,
    without_flickers,
)

#: Farther from the place of the reference's person, in trunk lengths, it is another person.
#: [project]
_LIKE_PLACE = 0.6

#: Of two skeletons near the place of the reference's person, the nearer is taken if the other is
#: farther by this much, in trunk lengths. [project]
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
        Size of the upright frame that their pixels belong to.
    reference
        A track of the same source, made from another pass: its person is followed instead of
        choosing one.

    Returns
    -------
    Track
        With one entry for each frame given.
    """
    size_px = np.array([width_px, height_px], dtype=np.float64)
    tracklets = [without_flickers(tracklet) for tracklet in link_detections(frames)]
    people = [tracklet for tracklet in tracklets if is_established_person(tracklet, size_px)]
    if reference is not None:
        labels = _labels_by_reference(tracklets, reference)
    else:
        labels = _labels(tracklets, people, select_subject(people, size_px))
    return _track(frames, labels, people, width_px, height_px)


def _labels(
    tracklets: Sequence[Tracklet], people: Sequence[Tracklet], main: Tracklet | None
) -> dict[Detection, FrameState]:
    """Return what each detection is; those that are no established person are left out."""
    labels: dict[Detection, FrameState] = {}
    for tracklet in tracklets:
        if tracklet.disputed or tracklet.disputed_end:
            labels.update(dict.fromkeys(tracklet.detections, FrameState.AMBIGUOUS))
        elif tracklet in people:
            labels.update(dict.fromkeys(tracklet.detections, FrameState.OTHER_PERSON))
    if main is not None:
        labels.update(_sure_of(main))
        labels.update(_onwards(main, tracklets))
        there_and_back = {backwards(tracklet): tracklet for tracklet in tracklets}
        back = {tracklet: mirrored for mirrored, tracklet in there_and_back.items()}
        before = sorted(there_and_back, key=lambda tracklet: tracklet.start_s)
        originals = {
            turned: detection
            for mirrored, tracklet in there_and_back.items()
            for turned, detection in zip(
                mirrored.detections, reversed(tracklet.detections), strict=True
            )
        }
        earlier = _onwards(back[main], before)
        labels.update({originals[detection]: label for detection, label in earlier.items()})
    return labels


def _sure_of(main: Tracklet) -> dict[Detection, FrameState]:
    """Return what the subject's detections are; after a dispute the first are ambiguous."""
    sure_s = main.start_s + LONGEST_GAP_S if main.disputed else main.start_s
    return {
        detection: FrameState.SEEN if detection.time_s >= sure_s else FrameState.AMBIGUOUS
        for detection in main.detections
    }


def _onwards(main: Tracklet, tracklets: Sequence[Tracklet]) -> dict[Detection, FrameState]:
    """Return what the detections on the later tracklets of a person are."""
    labels: dict[Detection, FrameState] = {}
    own = list(main.detections)
    while (present := reidentify(own, tracklets)) is not None:
        tracklet, start = present
        labels.update(dict.fromkeys(tracklet.detections[:start], FrameState.AMBIGUOUS))
        labels.update(dict.fromkeys(tracklet.detections[start:], FrameState.SEEN))
        own += tracklet.detections[start:]
    return labels


def _labels_by_reference(
    tracklets: Sequence[Tracklet], reference: Track
) -> dict[Detection, FrameState]:
    """Return what each detection is by comparison with another track of the same source."""
    labels: dict[Detection, FrameState] = {}
    seen = np.flatnonzero(reference.state == FrameState.SEEN)
    places = [
        detection_of(int(n), 0, float(reference.time_s[n]), np.array(reference.points_px[n]))
        for n in seen
    ]
    times_s = reference.time_s[seen]
    fitting: dict[int, list[tuple[float, Detection]]] = {}
    for detection in chain.from_iterable(tracklet.detections for tracklet in tracklets):
        labels[detection] = FrameState.OTHER_PERSON
        if not len(times_s):
            continue
        nearest = int(np.argmin(np.abs(times_s - detection.time_s)))
        place = places[nearest]
        near = place is not None and abs(times_s[nearest] - detection.time_s) <= LONGEST_GAP_S
        if place is not None and near and distance(detection, place) <= _LIKE_PLACE:
            fitting.setdefault(detection.frame, []).append((distance(detection, place), detection))
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
    for detection, label in labels.items():
        if _CLAIM[label] > _CLAIM[FrameState(state[detection.frame])]:
            state[detection.frame] = label
    points_px = np.full((n, LANDMARKS, 2), np.nan)
    visibility = np.full((n, LANDMARKS), np.nan)
    presence = np.full((n, LANDMARKS), np.nan)
    counted = {
        detection for tracklet in people for detection in tracklet.detections
    } | labels.keys()
    in_view = np.bincount([detection.frame for detection in counted], minlength=n)[:n]
    for detection, label in labels.items():
        if label is FrameState.SEEN:
            points_px[detection.frame] = detection.points_px
            visibility[detection.frame] = frames[detection.frame].visibility[detection.who]
            presence[detection.frame] = frames[detection.frame].presence[detection.who]
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


#: Precedence of labels: a frame with several gets the largest. [technical]
_CLAIM: Mapping[FrameState, int] = {
    FrameState.NOBODY: 0,
    FrameState.UNREADABLE: 0,
    FrameState.OTHER_PERSON: 1,
    FrameState.AMBIGUOUS: 2,
    FrameState.SEEN: 3,
}
