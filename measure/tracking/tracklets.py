"""Tracklets: detections of people linked through time. Who is who is decided elsewhere.

A tracklet is kept only as long as it cannot belong to another person: where two people come so
close that a detection could be either, both tracklets end and new, disputed ones begin.

Lengths are in trunk lengths (mid-shoulder to mid-hip) of the person concerned, about half a
metre.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import combinations, islice

import numpy as np

from measure.domain.landmarks import FloatArray, Landmark
from measure.domain.tracks import PoseFrame

#: A tracklet without a detection for longer, seconds, has ended. [project]
LONGEST_GAP_S = 0.6

#: How far a person's centre may seem to move at once, in trunk lengths, and how fast, in trunk
#: lengths a second: noise of the landmarks, and a brisk walk. [project]
_STEP = 0.35
_SPEED = 3.5

#: However long the gap, a tracklet does not go on from farther away, in trunk lengths. [project]
_FARTHEST = 1.05

#: Most change of the trunk's apparent length at once, and a second, as a natural logarithm.
#: [project]
_RESCALE = 0.25
_RESCALE_SPEED = 1.0

#: Two people at rest can be distinguished from this distance on, in trunk lengths; more if one
#: is moving. [project]
_APART = 0.4

#: Of two skeletons near a tracklet's end, one has to be nearer by this much, in trunk lengths, to
#: continue it. [project]
_AS_NEAR = 0.25

#: Fewest detections after which a tracklet can claim others. [project]
_ESTABLISHED = 4

#: Two skeletons of one frame whose shoulders and hips are this close on average, in trunk lengths,
#: are one person; their limbs may differ. [project]
_DUPLICATE = 0.3

#: Span of time over which a tracklet's speed is taken, seconds. [project]
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
    """Detections that follow each other closely enough to be one person.

    Attributes
    ----------
    disputed
        True if at its start it could have continued more than one tracklet, or was one of several
        that could have continued the same.
    disputed_end
        True if it ended because its next detection could have been another person.
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


def backwards(tracklet: Tracklet) -> Tracklet:
    """Return the tracklet as it would be if time ran backwards; times are negative."""
    return Tracklet(
        disputed=tracklet.disputed_end,
        disputed_end=tracklet.disputed,
        detections=[
            replace(detection, time_s=-detection.time_s)
            for detection in reversed(tracklet.detections)
        ],
    )


def without_flickers(tracklet: Tracklet) -> Tracklet:
    """Return the tracklet without the loose ends that a false detection adds when a person left.

    A loose end is a few detections before the first, or after the last, long unbroken run.
    """
    runs: list[list[Detection]] = []
    for detection in tracklet.detections:
        if runs and detection.frame == runs[-1][-1].frame + 1:
            runs[-1].append(detection)
        else:
            runs.append([detection])
    long = [number for number, run in enumerate(runs) if len(run) >= _ESTABLISHED]
    if not long:
        return tracklet
    kept = [detection for run in runs[long[0] : long[-1] + 1] for detection in run]
    return replace(tracklet, detections=kept)


def detection_of(frame: int, who: int, time_s: float, points_px: FloatArray) -> Detection | None:
    """Return a skeleton as a detection, or None if it has no trunk."""
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


def distance(detection: Detection, other: Detection) -> float:
    """Return the distance of two trunks' centres in trunk lengths (the longer of the two)."""
    return math.dist(detection.centre_px, other.centre_px) / max(detection.trunk_px, other.trunk_px)


def link_detections(frames: Sequence[PoseFrame]) -> list[Tracklet]:
    """Return the tracklets of all people in the frames, in order of their start."""
    linker = Linker()
    for frame in frames:
        linker.add(frame)
    return linker.tracklets


class Linker:
    """Makes tracklets of the people in frames that come one after the other.

    Attributes
    ----------
    tracklets
        Of all people so far, in order of their start; those going on grow with every frame.
    """

    def __init__(self) -> None:
        self.tracklets: list[Tracklet] = []
        self._alive: list[Tracklet] = []
        self._frames = 0

    def add(self, frame: PoseFrame) -> list[Detection]:
        """Take the next frame; return its detections, each person once."""
        self._alive = [
            tracklet for tracklet in self._alive if frame.time_s - tracklet.end_s <= LONGEST_GAP_S
        ]
        detections = _without_duplicates(list(_detections_in(self._frames, frame)), self._alive)
        started = _continue(self._alive, detections)
        self.tracklets += started
        self._alive += started
        self._frames += 1
        return detections


def _detections_in(number: int, frame: PoseFrame) -> Iterator[Detection]:
    for who, points_px in enumerate(frame.points_px):
        detection = detection_of(number, who, frame.time_s, points_px)
        if detection is not None:
            yield detection


def _without_duplicates(detections: list[Detection], alive: Sequence[Tracklet]) -> list[Detection]:
    """Keep, of skeletons that lie on each other, the one nearest to where a person was."""
    if not any(_is_double(detection, other) for detection, other in combinations(detections, 2)):
        return detections

    def newness(detection: Detection) -> float:
        return min((_spread(detection, tracklet.detections[-1]) for tracklet in alive), default=0.0)

    kept: list[Detection] = []
    for detection in sorted(detections, key=newness):
        if not any(_is_double(detection, other) for other in kept):
            kept.append(detection)
    return kept


def _is_double(detection: Detection, other: Detection) -> bool:
    # The centres are never farther apart than the points are on average.
    return distance(detection, other) <= _DUPLICATE and _spread(detection, other) <= _DUPLICATE


def _spread(detection: Detection, other: Detection) -> float:
    """Return the mean distance of corresponding shoulders and hips, in trunk lengths."""
    both = detection.points_px[_TRUNK] - other.points_px[_TRUNK]
    apart = float(np.hypot(both[:, 0], both[:, 1]).mean())
    return apart / max(detection.trunk_px, other.trunk_px)


def _continue(alive: list[Tracklet], detections: Sequence[Detection]) -> list[Tracklet]:
    """Let tracklets go on with the detections; return the new ones, and take ended ones away."""
    pairs = sorted(
        (distance(tracklet.detections[-1], detection), tracklet_number, detection_number)
        for tracklet_number, tracklet in enumerate(alive)
        for detection_number, detection in enumerate(detections)
        if _may_follow(tracklet, detection)
    )
    heir_of: dict[int, Tracklet] = {}
    for _, tracklet_number, detection_number in pairs:
        tracklet = alive[tracklet_number]
        if detection_number not in heir_of and tracklet not in heir_of.values():
            heir_of[detection_number] = tracklet
    disputed, ended = _disputes(alive, detections)
    started = []
    for number, detection in enumerate(detections):
        heir = heir_of.get(number)
        if heir is not None and heir not in ended and number not in disputed:
            heir.detections.append(detection)
        else:
            started.append(Tracklet(disputed=number in disputed, detections=[detection]))
    for tracklet in ended:
        tracklet.disputed_end = True
    alive[:] = [tracklet for tracklet in alive if tracklet not in ended]
    return started


def _disputes(
    alive: Sequence[Tracklet], detections: Sequence[Detection]
) -> tuple[set[int], list[Tracklet]]:
    """Return the numbers of the detections that could be another person, and the tracklets."""
    disputed: set[int] = set()
    ended: list[Tracklet] = []
    for number, detection in enumerate(detections):
        claims = [
            tracklet
            for tracklet in alive
            if tracklet.is_established and _may_be(tracklet, detection)
        ]
        if len(claims) > 1:
            disputed.add(number)
            ended += claims
    for tracklet in alive:
        heirs = sorted(
            (distance(tracklet.detections[-1], detection), number)
            for number, detection in enumerate(detections)
            if _may_be(tracklet, detection)
        )
        if len(heirs) > 1 and heirs[1][0] - heirs[0][0] < _AS_NEAR:
            disputed |= {number for _, number in heirs}
            ended.append(tracklet)
    return disputed, ended


def _may_follow(tracklet: Tracklet, detection: Detection) -> bool:
    """Tell whether a person of the tracklet can have come where the detection is."""
    last = tracklet.detections[-1]
    gap_s = detection.time_s - last.time_s
    return distance(last, detection) <= min(_STEP + _SPEED * gap_s, _FARTHEST) and abs(
        math.log(detection.trunk_px / last.trunk_px)
    ) <= (_RESCALE + _RESCALE_SPEED * gap_s)


def _may_be(tracklet: Tracklet, detection: Detection) -> bool:
    """Tell whether the detection is so close that it may just as well be the tracklet's person."""
    if not _may_follow(tracklet, detection):
        return False
    last = tracklet.detections[-1]
    reach = _APART + 1.5 * tracklet.speed() * (detection.time_s - last.time_s)
    return distance(last, detection) <= reach
