"""Sightings of people, and the paths they make through time. Who is who is decided elsewhere.

A path is kept only as long as it cannot belong to anybody else: where two people come so close
that a sighting could be either, both paths end and new, disputed ones begin.

Lengths are in trunk lengths (mid-shoulder to mid-hip) of the person concerned, about half a
metre. All limits are ours.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import numpy as np

from measure.body import FloatArray, Landmark, PoseFrame

#: A path that was not seen for longer has ended, seconds.
LONGEST_GAP_S = 0.6

#: How far a person's centre may seem to move at once, and how fast, in trunk lengths (a
#: second): noise of the landmarks, and a brisk walk.
_STEP = 0.35
_SPEED = 3.5

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

_SHOULDERS = [Landmark.LEFT_SHOULDER, Landmark.RIGHT_SHOULDER]
_HIPS = [Landmark.LEFT_HIP, Landmark.RIGHT_HIP]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Sighting:
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
        Shape (2,), the trunk's centre, pixels.
    trunk_px
        Length of the trunk, pixels.
    """

    frame: int
    who: int
    time_s: float
    points_px: FloatArray
    centre_px: FloatArray
    trunk_px: float


@dataclass(slots=True, kw_only=True, eq=False)
class Path:
    """Sightings that follow each other closely enough to be one person.

    Attributes
    ----------
    disputed
        True if at its start it could have continued more than one path, or was one of several
        that could have continued the same.
    """

    disputed: bool = False
    sightings: list[Sighting] = field(default_factory=list)

    @property
    def start_s(self) -> float:
        return self.sightings[0].time_s

    @property
    def end_s(self) -> float:
        return self.sightings[-1].time_s

    @property
    def is_established(self) -> bool:
        """Whether it lasted long enough to be more than a flicker."""
        return self.disputed or len(self.sightings) >= _ESTABLISHED

    def speed(self) -> float:
        """Return the recent speed, trunk lengths a second."""
        last = self.sightings[-1]
        for earlier in reversed(self.sightings[:-1]):
            span_s = last.time_s - earlier.time_s
            if span_s >= _SPEED_SPAN_S or earlier is self.sightings[0]:
                moved = np.linalg.norm(last.centre_px - earlier.centre_px) / last.trunk_px
                return float(moved / span_s)
        return 0.0


def sighting(frame: int, who: int, time_s: float, points_px: FloatArray) -> Sighting | None:
    """Return a skeleton as a sighting, or None if it has no trunk."""
    shoulder = points_px[_SHOULDERS].mean(axis=0)
    hip = points_px[_HIPS].mean(axis=0)
    trunk_px = float(np.hypot(*(shoulder - hip)))
    if not (np.isfinite(points_px).all() and trunk_px > 1.0):
        return None
    return Sighting(
        frame=frame,
        who=who,
        time_s=time_s,
        points_px=points_px,
        centre_px=(shoulder + hip) / 2,
        trunk_px=trunk_px,
    )


def distance(one: Sighting, other: Sighting) -> float:
    """Return the distance of two trunks' centres in trunk lengths (the longer of the two)."""
    apart = one.centre_px - other.centre_px
    return float(np.hypot(*apart)) / max(one.trunk_px, other.trunk_px)


def link(frames: Sequence[PoseFrame]) -> list[Path]:
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
        self.paths: list[Path] = []
        self._alive: list[Path] = []
        self._frames = 0

    def add(self, frame: PoseFrame) -> list[Sighting]:
        """Take the next frame; return what was seen in it, each person once."""
        self._alive = [path for path in self._alive if frame.time_s - path.end_s <= LONGEST_GAP_S]
        seen = _without_duplicates(list(_sightings(self._frames, frame)), self._alive)
        started = _continue(self._alive, seen)
        self.paths += started
        self._alive += started
        self._frames += 1
        return seen


def _sightings(number: int, frame: PoseFrame) -> Iterator[Sighting]:
    for who, points_px in enumerate(frame.points_px):
        one = sighting(number, who, frame.time_s, points_px)
        if one is not None:
            yield one


def _without_duplicates(seen: list[Sighting], alive: Sequence[Path]) -> list[Sighting]:
    """Keep, of skeletons that lie on each other, the one nearest to where somebody was."""

    def newness(one: Sighting) -> float:
        return min((_spread(one, path.sightings[-1]) for path in alive), default=0.0)

    kept: list[Sighting] = []
    for one in sorted(seen, key=newness):
        if all(_spread(one, other) > _DUPLICATE for other in kept):
            kept.append(one)
    return kept


def _spread(one: Sighting, other: Sighting) -> float:
    """Return the mean distance of corresponding shoulders and hips, in trunk lengths."""
    both = one.points_px[_SHOULDERS + _HIPS] - other.points_px[_SHOULDERS + _HIPS]
    apart = np.hypot(both[:, 0], both[:, 1]).mean()
    return float(apart) / max(one.trunk_px, other.trunk_px)


def _continue(alive: list[Path], seen: Sequence[Sighting]) -> list[Path]:
    """Let paths go on with the sightings; return the new ones, and take ended ones away."""
    pairs = sorted(
        (distance(path.sightings[-1], one), path_number, seen_number)
        for path_number, path in enumerate(alive)
        for seen_number, one in enumerate(seen)
        if _may_follow(path, one)
    )
    heir_of: dict[int, Path] = {}
    for _, path_number, seen_number in pairs:
        path = alive[path_number]
        if seen_number not in heir_of and path not in heir_of.values():
            heir_of[seen_number] = path
    disputed, ended = _disputes(alive, seen)
    started = []
    for number, one in enumerate(seen):
        heir = heir_of.get(number)
        if heir is not None and heir not in ended and number not in disputed:
            heir.sightings.append(one)
        else:
            started.append(Path(disputed=number in disputed, sightings=[one]))
    alive[:] = [path for path in alive if path not in ended]
    return started


def _disputes(alive: Sequence[Path], seen: Sequence[Sighting]) -> tuple[set[int], list[Path]]:
    """Return the numbers of the sightings that could be somebody else, and whose they were."""
    disputed: set[int] = set()
    ended: list[Path] = []
    for number, one in enumerate(seen):
        claims = [path for path in alive if path.is_established and _may_be(path, one)]
        if len(claims) > 1:
            disputed.add(number)
            ended += claims
    for path in alive:
        heirs = sorted(
            (distance(path.sightings[-1], one), number)
            for number, one in enumerate(seen)
            if _may_be(path, one)
        )
        if len(heirs) > 1 and heirs[1][0] - heirs[0][0] < _AS_NEAR:
            disputed |= {number for _, number in heirs}
            ended.append(path)
    return disputed, ended


def _may_follow(path: Path, one: Sighting) -> bool:
    """Tell whether a person of the path can have come where the sighting is."""
    last = path.sightings[-1]
    gap_s = one.time_s - last.time_s
    rescale = abs(float(np.log(one.trunk_px / last.trunk_px)))
    return (
        distance(last, one) <= _STEP + _SPEED * gap_s
        and rescale <= _RESCALE + _RESCALE_SPEED * gap_s
    )


def _may_be(path: Path, one: Sighting) -> bool:
    """Tell whether the sighting is so close that it may just as well be the path's person."""
    last = path.sightings[-1]
    reach = _APART + 1.5 * path.speed() * (one.time_s - last.time_s)
    return _may_follow(path, one) and distance(last, one) <= reach
