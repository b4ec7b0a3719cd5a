"""The person lock: one person out of all that the network sees, followed all the way.

The network's list has no fixed order, reports one person twice at times, goes over to somebody
else when the first leaves, and finds people in curtains. Here one person is chosen and followed
by place and size; where that leaves doubt the frame is marked, never guessed. Arrays only.

Lengths are in trunk lengths (mid-shoulder to mid-hip). All limits are ours.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace

import numpy as np

from measure.body import LANDMARKS, FloatArray, FrameState, PoseFrame, Track
from measure.person_likeness import is_person_like
from measure.person_paths import LONGEST_GAP_S, Path, Sighting, distance, link, sighting

#: The person is chosen among those who appear in the first second of anybody.
CHOICE_S = 1.0

#: Somebody has to be seen for so long, and in so many frames, to count as a person.
_SOLID_S = 0.5
_SOLID_FRAMES = 4
_SOLID_SHARE = 0.6

#: How far from the middle somebody still counts as central, as a share of the picture's width.
_CENTRAL = 0.4

#: Of two skeletons near the place of another pass's person, the nearer is taken if so much is
#: between them.
_CLEARLY_NEARER = 0.3

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


def follow_person(
    frames: Sequence[PoseFrame], *, width_px: int, height_px: int, like: Track | None = None
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
    paths = link(frames)
    people = [path for path in paths if is_solid(path, picture)]
    if like is not None:
        labels = _labels_like(paths, like)
    else:
        labels = _labels(paths, people, first_person(people, picture))
    return _track(frames, labels, people, width_px, height_px)


def is_solid(path: Path, picture: FloatArray) -> bool:
    """Tell whether a path lasted long enough, in a person's shape, to be a person."""
    seen = path.sightings
    if len(seen) < _SOLID_FRAMES or path.end_s - path.start_s < _SOLID_S:
        return False
    like = sum(is_person_like(one.points_px, float(picture.max())) for one in seen)
    return like >= _SOLID_SHARE * len(seen)


def first_person(people: Sequence[Path], picture: FloatArray) -> Path | None:
    """Return the largest, most central and most lasting of those who appear first."""
    if not people:
        return None
    first_s = min(path.start_s for path in people)

    def weight(path: Path) -> float:
        early = [one for one in path.sightings if one.time_s <= path.start_s + CHOICE_S]
        trunk_px = float(np.median([one.trunk_px for one in early]))
        across = float(np.median([one.centre_px[0] for one in early])) / picture[0] - 0.5
        lasting = min(1.0, (path.end_s - path.start_s) / (2 * CHOICE_S))
        return trunk_px * lasting * float(np.exp(-((across / _CENTRAL) ** 2)))

    return max((path for path in people if path.start_s <= first_s + CHOICE_S), key=weight)


def _labels(
    paths: Sequence[Path], people: Sequence[Path], first: Path | None
) -> dict[Sighting, FrameState]:
    """Return what each sighting is; those that are nobody in particular are left out."""
    labels: dict[Sighting, FrameState] = {}
    for path in paths:
        if path.disputed:
            labels.update(dict.fromkeys(path.sightings, FrameState.UNSURE_WHO))
        elif path in people:
            labels.update(dict.fromkeys(path.sightings, FrameState.OTHER_PERSON))
    own: list[Sighting] = []
    present: tuple[Path, int] | None = (first, 0) if first is not None else None
    while present is not None:
        path, start = present
        labels.update(dict.fromkeys(path.sightings[:start], FrameState.UNSURE_WHO))
        labels.update(dict.fromkeys(path.sightings[start:], FrameState.SEEN))
        own += path.sightings[start:]
        present = following(own, paths)
    return labels


def following(own: Sequence[Sighting], paths: Sequence[Path]) -> tuple[Path, int] | None:
    """Return the path on which the person is seen again, and the first sighting that counts.

    Whoever was in the picture together with the person is somebody else.
    """
    last = own[-1]
    later = [path for path in paths if path.start_s > last.time_s]
    home = _home(own)
    for path in later:
        if _goes_on(path, last, later):
            return path, 0
        if home is not None:
            start = _back_home(path, home)
            if start is not None:
                return path, start
    return None


def _goes_on(path: Path, last: Sighting, later: Sequence[Path]) -> bool:
    """Tell whether a path follows a short gap at the same place, and no other does."""

    def fits(other: Path) -> bool:
        one = other.sightings[0]
        return (
            one.time_s - last.time_s <= _SHORT_GAP_S
            and distance(one, last) <= _SAME_PLACE
            and _same_size(one, last)
        )

    return not path.disputed and [other for other in later if fits(other)] == [path]


def _same_size(one: Sighting, other: Sighting) -> bool:
    return 1 / _SAME_SIZE <= one.trunk_px / other.trunk_px <= _SAME_SIZE


def _home(own: Sequence[Sighting]) -> Sighting | None:
    """Return the last place where the person stood, as a sighting in the middle of it."""
    end = len(own)
    start = end
    while end > 0:
        while start > 0 and own[end - 1].time_s - own[start - 1].time_s <= _STANDING_S:
            start -= 1
        stand = own[start:end]
        if start == 0 and stand[-1].time_s - stand[0].time_s < 0.9 * _STANDING_S:
            return None
        middle = np.median([one.centre_px for one in stand], axis=0)
        trunk_px = float(np.median([one.trunk_px for one in stand]))
        place = replace(stand[-1], centre_px=middle, trunk_px=trunk_px)
        if all(distance(one, place) <= _STANDING for one in stand):
            return place
        end -= 1
        start = min(start, end)
    return None


def _back_home(path: Path, home: Sighting) -> int | None:
    """Return the number of the sighting from which the path stays at home, if it does.

    A path that began in dispute counts only when the other has had time to show up elsewhere.
    """
    wait_s = path.start_s + LONGEST_GAP_S if path.disputed else path.start_s
    near = _BACK_FROM_DISPUTE if path.disputed else _BACK_HOME
    stay_s = _BACK_FROM_DISPUTE_S if path.disputed else _BACK_HOME_S
    start: int | None = None
    for number, one in enumerate(path.sightings):
        if one.time_s < wait_s or distance(one, home) > near or not _same_size(one, home):
            start = None
        elif start is None:
            start = number
        elif one.time_s - path.sightings[start].time_s >= stay_s:
            return start
    return None


def _labels_like(paths: Sequence[Path], like: Track) -> dict[Sighting, FrameState]:
    """Return what each sighting is by comparison with another track of the same source."""
    labels: dict[Sighting, FrameState] = {}
    known = np.flatnonzero(like.state == FrameState.SEEN)
    places = [
        sighting(int(n), 0, float(like.time_s[n]), np.array(like.points_px[n])) for n in known
    ]
    times_s = like.time_s[known]
    fitting: dict[int, list[tuple[float, Sighting]]] = {}
    for one in (each for path in paths for each in path.sightings):
        labels[one] = FrameState.OTHER_PERSON
        if not len(times_s):
            continue
        nearest = int(np.argmin(np.abs(times_s - one.time_s)))
        place = places[nearest]
        near = place is not None and abs(times_s[nearest] - one.time_s) <= LONGEST_GAP_S
        if place is not None and near and distance(one, place) <= _SAME_PLACE:
            fitting.setdefault(one.frame, []).append((distance(one, place), one))
    for rivals in fitting.values():
        rivals.sort(key=lambda rival: rival[0])
        sure = len(rivals) == 1 or rivals[1][0] - rivals[0][0] > _CLEARLY_NEARER
        labels[rivals[0][1]] = FrameState.SEEN if sure else FrameState.UNSURE_WHO
    return labels


def _track(
    frames: Sequence[PoseFrame],
    labels: Mapping[Sighting, FrameState],
    people: Sequence[Path],
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
    counted = {one for path in people for one in path.sightings} | labels.keys()
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
    FrameState.UNSURE_WHO: 2,
    FrameState.SEEN: 3,
}
