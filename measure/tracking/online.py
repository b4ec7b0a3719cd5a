"""The person lock while frames come one by one; see :mod:`measure.tracking.offline` for its rules.

The rules and limits are those of clips. What differs: nobody knows yet what follows, so the
first second goes by the best guess, and what was doubtful when it came stays doubtful. And
whoever stands before a camera walks off and comes back to another place: somebody who comes
alone, after nobody was there for a while, is the person to be measured.
"""

from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.tracks import FrameState, PoseFrame
from measure.tracking.person_selection import (
    CHOICE_S,
    is_established_person,
    is_plausible_body,
    select_first_subject,
)
from measure.tracking.reidentification import reidentify
from measure.tracking.tracklets import LONGEST_GAP_S, Detection, Linker, Tracklet

#: Sightings older than this are forgotten, seconds; the place where somebody stood is younger.
_REMEMBERED_S = 20.0

#: Away for longer, and whoever comes next is measured. Ours.
_GIVEN_UP_S = 120.0

#: Nobody there for so long, and somebody who then comes alone and stays so long is measured.
_EMPTY_S = 3.0
_ALONE_S = 1.5

#: Who was there for less, before anybody was measured, was on the way to the place.
_BRIEF_S = 2.0

#: A path of this length that is no person will not become one.
_JUDGED_S = 2.0

#: Somebody is looked for anew no more often than this, seconds.
_EVERY_S = 0.12


@dataclass(frozen=True, slots=True, kw_only=True)
class SubjectPose:
    """The locked person in one frame.

    Attributes
    ----------
    state
        As in a track.
    points_px
        Shape (33, 2), or None where the person was not seen.
    visibility, presence
        Shape (33,), or None likewise.
    people
        How many people were in the frame.
    """

    state: FrameState
    people: int
    points_px: FloatArray | None = None
    visibility: FloatArray | None = None
    presence: FloatArray | None = None


class OnlineTracker:
    """Follows one person through frames of one size.

    Parameters
    ----------
    width_px, height_px
        Size of the upright picture.
    """

    def __init__(self, width_px: int, height_px: int) -> None:
        self._picture = np.array([width_px, height_px], dtype=np.float64)
        self._linker = Linker()
        self._solid: set[int] = set()
        self._flimsy: set[int] = set()
        self._own: list[Detection] = []
        self._path: Tracklet | None = None
        self._last_match_s = -np.inf

    def add(self, frame: PoseFrame) -> SubjectPose:
        """Take the next frame."""
        seen = self._linker.add(frame)
        if not frame.readable:
            return SubjectPose(state=FrameState.UNREADABLE, people=0)
        here = {id(path.detections[-1]): path for path in self._linker.paths}
        paths = [here[id(one)] for one in seen if id(one) in here]
        one = self._go_on(frame.time_s) if self._own else self._choose(paths, frame.time_s)
        people = sum(self._counts(path) for path in paths)
        self._forget(frame.time_s)
        if one is None or one.time_s != frame.time_s:
            return SubjectPose(state=self._state_without(paths), people=people)
        return SubjectPose(
            state=FrameState.SEEN,
            people=max(1, people),
            points_px=one.points_px,
            visibility=frame.visibility[one.who],
            presence=frame.presence[one.who],
        )

    def _choose(self, paths: list[Tracklet], now_s: float) -> Detection | None:
        """Lock the first person as soon as that can be judged; until then guess."""
        people = [path for path in self._linker.paths if self._counts(path)]
        if people and now_s - min(path.start_s for path in people) >= CHOICE_S:
            self._path = select_first_subject(people, self._picture)
            assert self._path is not None
            self._own = list(self._path.detections)
            return self._own[-1]
        likely = [path for path in paths if self._may_count(path)]
        lasting = [path for path in likely if len(path.detections) > 1]
        guess = select_first_subject(lasting, self._picture) or max(likely, key=_size, default=None)
        return None if guess is None else guess.detections[-1]

    def _go_on(self, now_s: float) -> Detection | None:
        """Return the person's sighting in this frame, on the same path or a following one."""
        assert self._path is not None
        last = self._path.detections[-1]
        if last is not self._own[-1]:
            self._own.append(last)
            return last
        if now_s - self._last_match_s >= _EVERY_S:
            self._last_match_s = now_s
            found = reidentify(self._own, self._linker.paths)
            if found is None and self._may_choose_anew(last, now_s):
                self._own, self._path = [], None
                self._linker.paths[:] = [
                    path
                    for path in self._linker.paths
                    if path.end_s > max(last.time_s, now_s - LONGEST_GAP_S)
                ]
                return self._choose(self._here(now_s), now_s)
            if found is not None:
                self._path, start = found
                self._own += self._path.detections[start:]
                return self._own[-1]
        return None

    def _may_choose_anew(self, last: Detection, now_s: float) -> bool:
        """Tell whether the person has gone so that somebody else may be measured."""
        gone_s = now_s - last.time_s
        brief = last.time_s - self._own[0].time_s < _BRIEF_S
        if gone_s > _GIVEN_UP_S or (brief and gone_s > LONGEST_GAP_S):
            return True
        here = [path for path in self._here(now_s) if self._counts(path)]
        alone = len(here) == 1 and not here[0].disputed
        if alone and here[0].start_s - last.time_s > _EMPTY_S:
            return now_s - here[0].start_s >= _ALONE_S
        return False

    def _here(self, now_s: float) -> list[Tracklet]:
        return [path for path in self._linker.paths if path.end_s == now_s]

    def _state_without(self, paths: list[Tracklet]) -> FrameState:
        if any(path.disputed for path in paths):
            return FrameState.AMBIGUOUS
        if any(self._counts(path) for path in paths):
            return FrameState.OTHER_PERSON
        return FrameState.NOBODY

    def _counts(self, path: Tracklet) -> bool:
        """Tell whether a path is a person, judged while it is young."""
        name = id(path)
        if name in self._solid:
            return True
        if name in self._flimsy:
            return False
        if is_established_person(path, self._picture):
            self._solid.add(name)
            return True
        if path.end_s - path.start_s > _JUDGED_S:
            self._flimsy.add(name)
        return False

    def _may_count(self, path: Tracklet) -> bool:
        shape = path.detections[-1].points_px
        return id(path) not in self._flimsy and is_plausible_body(shape, float(self._picture.max()))

    def _forget(self, now_s: float) -> None:
        """Drop what is too old to matter, so that hours of frames take no more room.

        Paths that were there together with the person stay known as somebody else's.
        """
        since_s = (self._own[-1].time_s if self._own else now_s) - _REMEMBERED_S
        if self._own and self._own[0].time_s < since_s - _REMEMBERED_S:
            self._own = [one for one in self._own if one.time_s >= since_s]
        kept = []
        for path in self._linker.paths:
            if path.end_s < since_s and path is not self._path:
                self._solid.discard(id(path))
                self._flimsy.discard(id(path))
                continue
            if path.detections[0].time_s < since_s - _REMEMBERED_S:
                path.detections[:] = [one for one in path.detections if one.time_s >= since_s]
            kept.append(path)
        self._linker.paths[:] = kept


def _size(path: Tracklet) -> float:
    return path.detections[-1].trunk_px
