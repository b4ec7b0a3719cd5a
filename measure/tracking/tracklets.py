"""Sightings of people, and the paths they make through time. Who is who is decided elsewhere.

A path is kept only as long as it cannot belong to anybody else: where two people come so close
that a sighting could be either, both paths end and new, disputed ones begin.

Lengths are in trunk lengths (mid-shoulder to mid-hip) of the person concerned, about half a
metre. All limits are ours.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import combinations, islice

import numpy as np

from measure.domain.landmarks import FloatArray, Landmark
from measure.domain.tracks import PoseFrame

#: A path that was not seen for longer has ended, seconds.
LONGEST_GAP_S = 0.6

#: How far a person's centre may seem to move at once, and how fast, in trunk lengths (a
#: second): noise of the landmarks, and a brisk walk.
_STEP = 0.35
_SPEED = 3.5

#: However long it was not seen, a path does not go on from farther away.
_FARTHEST = 1.05

#: Most change of the trunk's apparent length at once, and a second, as a natural logarithm.
_RESCALE = 0.25
_RESCALE_SPEED = 1.0

#: Two people at rest can be told apart from this distance on; more if one is moving.
_APART = 0.4

#: Of two skeletons near a path's end, one has to be nearer by so much to be its heir.
_AS_NEAR = 0.25

#: Sightings after which a path can lay claim to others.
_ESTABLISHED = 4

#: Two skeletons of one picture whose shoulders and hips are this close on average are one
#: person; their limbs may differ.
_DUPLICATE = 0.3

#: Span of time over which a path's speed is taken, seconds.
_SPEED_SPAN_S = 0.4

#: Shoulders, then hips.
_TRUNK = [
    Landmark.LEFT_SHOULDER,
    Landmark.RIGHT_SHOULDER,
    Landmark.LEFT_HIP,
    Landmark.RIGHT_HIP,
]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Detection:
    """One skeleton in one frame.

    Attributes
    ----------
    frame
        Number of the frame in the sequence given.
    who
        Its place in the frame's list.
    points_px
        Shape (33, 2), pixels.
    centre_px
        The trunk's centre, x and y in pixels.
    trunk_px
        Length of the trunk, pixels.

    Plain numbers where they are compared all the time: that is several times as fast.
    """

    frame: int
    who: int
    time_s: float
    points_px: FloatArray
    centre_px: tuple[float, float]
    trunk_px: float


@dataclass(slots=True, kw_only=True, eq=False)
class Tracklet:
    """Sightings that follow each other closely enough to be one person.

    Attributes
    ----------
    disputed
        True if at its start it could have continued more than one path, or was one of several
        that could have continued the same.
    disputed_end
        True if it ended because its next sighting could have been somebody else.
    """

    disputed: bool = False
    disputed_end: bool = False
    detections: list[Detection] = field(default_factory=list)

    @property
    def start_s(self) -> float:
        return self.detections[0].time_s

    @property
    def end_s(self) -> float:
        return self.detections[-1].time_s

    @property
    def is_established(self) -> bool:
        """Whether it lasted long enough to be more than a flicker."""
        return self.disputed or len(self.detections) >= _ESTABLISHED

    def speed(self) -> float:
        """Return the recent speed, trunk lengths a second."""
        last = self.detections[-1]
        for earlier in islice(reversed(self.detections), 1, None):
            span_s = last.time_s - earlier.time_s
            if span_s >= _SPEED_SPAN_S or earlier is self.detections[0]:
                return math.dist(last.centre_px, earlier.centre_px) / last.trunk_px / span_s
        return 0.0


def backwards(path: Tracklet) -> Tracklet:
    """Return the path as it would be if time ran backwards; times are negative."""
    return Tracklet(
        disputed=path.disputed_end,
        disputed_end=path.disputed,
        detections=[replace(one, time_s=-one.time_s) for one in reversed(path.detections)],
    )


def without_flickers(path: Tracklet) -> Tracklet:
    """Return the path without the loose ends that a ghost gives it when somebody left.

    A loose end is a few sightings before the first, or after the last, long unbroken run.
    """
    runs: list[list[Detection]] = []
    for one in path.detections:
        if runs and one.frame == runs[-1][-1].frame + 1:
            runs[-1].append(one)
        else:
            runs.append([one])
    long = [number for number, run in enumerate(runs) if len(run) >= _ESTABLISHED]
    if not long:
        return path
    kept = [one for run in runs[long[0] : long[-1] + 1] for one in run]
    return replace(path, detections=kept)


def sighting(frame: int, who: int, time_s: float, points_px: FloatArray) -> Detection | None:
    """Return a skeleton as a sighting, or None if it has no trunk."""
    (x1, y1), (x2, y2), (x3, y3), (x4, y4) = points_px[_TRUNK].tolist()
    shoulder, hip = ((x1 + x2) / 2, (y1 + y2) / 2), ((x3 + x4) / 2, (y3 + y4) / 2)
    trunk_px = math.dist(shoulder, hip)
    if not (np.isfinite(points_px).all() and trunk_px > 1.0):
        return None
    return Detection(
        frame=frame,
        who=who,
        time_s=time_s,
        points_px=points_px,
        centre_px=((shoulder[0] + hip[0]) / 2, (shoulder[1] + hip[1]) / 2),
        trunk_px=trunk_px,
    )


def distance(one: Detection, other: Detection) -> float:
    """Return the distance of two trunks' centres in trunk lengths (the longer of the two)."""
    return math.dist(one.centre_px, other.centre_px) / max(one.trunk_px, other.trunk_px)


def link_detections(frames: Sequence[PoseFrame]) -> list[Tracklet]:
    """Return the paths of all people in the frames, in order of their start."""
    linker = Linker()
    for frame in frames:
        linker.add(frame)
    return linker.paths


class Linker:
    """Makes paths of the people in frames that come one after the other.

    Attributes
    ----------
    paths
        Of all people so far, in order of their start; those going on grow with every frame.
    """

    def __init__(self) -> None:
        self.paths: list[Tracklet] = []
        self._alive: list[Tracklet] = []
        self._frames = 0

    def add(self, frame: PoseFrame) -> list[Detection]:
        """Take the next frame; return what was seen in it, each person once."""
        self._alive = [path for path in self._alive if frame.time_s - path.end_s <= LONGEST_GAP_S]
        seen = _without_duplicates(list(_sightings(self._frames, frame)), self._alive)
        started = _continue(self._alive, seen)
        self.paths += started
        self._alive += started
        self._frames += 1
        return seen


def _sightings(number: int, frame: PoseFrame) -> Iterator[Detection]:
    for who, points_px in enumerate(frame.points_px):
        one = sighting(number, who, frame.time_s, points_px)
        if one is not None:
            yield one


def _without_duplicates(seen: list[Detection], alive: Sequence[Tracklet]) -> list[Detection]:
    """Keep, of skeletons that lie on each other, the one nearest to where somebody was."""
    if not any(_is_double(one, other) for one, other in combinations(seen, 2)):
        return seen

    def newness(one: Detection) -> float:
        return min((_spread(one, path.detections[-1]) for path in alive), default=0.0)

    kept: list[Detection] = []
    for one in sorted(seen, key=newness):
        if not any(_is_double(one, other) for other in kept):
            kept.append(one)
    return kept


def _is_double(one: Detection, other: Detection) -> bool:
    # The centres are never farther apart than the points are on average.
    return distance(one, other) <= _DUPLICATE and _spread(one, other) <= _DUPLICATE


def _spread(one: Detection, other: Detection) -> float:
    """Return the mean distance of corresponding shoulders and hips, in trunk lengths."""
    both = one.points_px[_TRUNK] - other.points_px[_TRUNK]
    apart = float(np.hypot(both[:, 0], both[:, 1]).mean())
    return apart / max(one.trunk_px, other.trunk_px)


def _continue(alive: list[Tracklet], seen: Sequence[Detection]) -> list[Tracklet]:
    """Let paths go on with the sightings; return the new ones, and take ended ones away."""
    pairs = sorted(
        (distance(path.detections[-1], one), path_number, seen_number)
        for path_number, path in enumerate(alive)
        for seen_number, one in enumerate(seen)
        if _may_follow(path, one)
    )
    heir_of: dict[int, Tracklet] = {}
    for _, path_number, seen_number in pairs:
        path = alive[path_number]
        if seen_number not in heir_of and path not in heir_of.values():
            heir_of[seen_number] = path
    disputed, ended = _disputes(alive, seen)
    started = []
    for number, one in enumerate(seen):
        heir = heir_of.get(number)
        if heir is not None and heir not in ended and number not in disputed:
            heir.detections.append(one)
        else:
            started.append(Tracklet(disputed=number in disputed, detections=[one]))
    for path in ended:
        path.disputed_end = True
    alive[:] = [path for path in alive if path not in ended]
    return started


def _disputes(
    alive: Sequence[Tracklet], seen: Sequence[Detection]
) -> tuple[set[int], list[Tracklet]]:
    """Return the numbers of the sightings that could be somebody else, and whose they were."""
    disputed: set[int] = set()
    ended: list[Tracklet] = []
    for number, one in enumerate(seen):
        claims = [path for path in alive if path.is_established and _may_be(path, one)]
        if len(claims) > 1:
            disputed.add(number)
            ended += claims
    for path in alive:
        heirs = sorted(
            (distance(path.detections[-1], one), number)
            for number, one in enumerate(seen)
            if _may_be(path, one)
        )
        if len(heirs) > 1 and heirs[1][0] - heirs[0][0] < _AS_NEAR:
            disputed |= {number for _, number in heirs}
            ended.append(path)
    return disputed, ended


def _may_follow(path: Tracklet, one: Detection) -> bool:
    """Tell whether a person of the path can have come where the sighting is."""
    last = path.detections[-1]
    gap_s = one.time_s - last.time_s
    return distance(last, one) <= min(_STEP + _SPEED * gap_s, _FARTHEST) and abs(
        math.log(one.trunk_px / last.trunk_px)
    ) <= (_RESCALE + _RESCALE_SPEED * gap_s)


def _may_be(path: Tracklet, one: Detection) -> bool:
    """Tell whether the sighting is so close that it may just as well be the path's person."""
    if not _may_follow(path, one):
        return False
    last = path.detections[-1]
    reach = _APART + 1.5 * path.speed() * (one.time_s - last.time_s)
    return distance(last, one) <= reach
