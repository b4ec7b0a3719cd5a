"""Online tracking: one person followed while frames come one by one.

The rules and limits are those of clips (:mod:`measure.tracking.offline`). What differs: the
future is unknown, so the first second goes by the best guess, and what was doubtful when it came
stays doubtful. And a person before a camera walks off and comes back to another place: one who
comes alone, after the view was empty for a while, is the person to be measured.
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

#: Detections older than this, seconds, are forgotten; the standing place is younger. [project]
_REMEMBERED_S = 20.0

#: Once the person is away for longer, seconds, the next one is measured. [project]
_GIVEN_UP_S = 120.0

#: After an empty view of this length, seconds, a person who comes alone may be measured. [project]
_EMPTY_S = 3.0
#: How long, seconds, such a person has to stay alone. [project]
_ALONE_S = 1.5

#: A first appearance shorter than this, seconds, is a person on the way to the place. [project]
_BRIEF_S = 2.0

#: A tracklet of this length, seconds, that is no person will not become one. [project]
_JUDGED_S = 2.0

#: The person is searched for again no more often than this, seconds. [technical]
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
        Size of the upright frame.
    """

    def __init__(self, width_px: int, height_px: int) -> None:
        self._size_px = np.array([width_px, height_px], dtype=np.float64)
        self._linker = Linker()
        self._established: set[int] = set()
        self._dismissed: set[int] = set()
        self._own: list[Detection] = []
        self._tracklet: Tracklet | None = None
        self._last_match_s = -np.inf

    def add(self, frame: PoseFrame) -> SubjectPose:
        """Take the next frame."""
        detections = self._linker.add(frame)
        if not frame.readable:
            return SubjectPose(state=FrameState.UNREADABLE, people=0)
        here = {id(tracklet.detections[-1]): tracklet for tracklet in self._linker.tracklets}
        tracklets = [here[id(detection)] for detection in detections if id(detection) in here]
        detection = (
            self._go_on(frame.time_s) if self._own else self._choose(tracklets, frame.time_s)
        )
        people = sum(self._counts(tracklet) for tracklet in tracklets)
        self._forget(frame.time_s)
        if detection is None or detection.time_s != frame.time_s:
            return SubjectPose(state=self._state_without(tracklets), people=people)
        return SubjectPose(
            state=FrameState.SEEN,
            people=max(1, people),
            points_px=detection.points_px,
            visibility=frame.visibility[detection.who],
            presence=frame.presence[detection.who],
        )

    def _choose(self, tracklets: list[Tracklet], now_s: float) -> Detection | None:
        """Lock the first person as soon as that can be judged; until then guess."""
        people = [tracklet for tracklet in self._linker.tracklets if self._counts(tracklet)]
        if people and now_s - min(tracklet.start_s for tracklet in people) >= CHOICE_S:
            self._tracklet = select_first_subject(people, self._size_px)
            assert self._tracklet is not None
            self._own = list(self._tracklet.detections)
            return self._own[-1]
        likely = [tracklet for tracklet in tracklets if self._may_count(tracklet)]
        lasting = [tracklet for tracklet in likely if len(tracklet.detections) > 1]
        guess = select_first_subject(lasting, self._size_px) or max(likely, key=_size, default=None)
        return None if guess is None else guess.detections[-1]

    def _go_on(self, now_s: float) -> Detection | None:
        """Return the person's detection in this frame, on the same tracklet or a following one."""
        assert self._tracklet is not None
        last = self._tracklet.detections[-1]
        if last is not self._own[-1]:
            self._own.append(last)
            return last
        if now_s - self._last_match_s >= _EVERY_S:
            self._last_match_s = now_s
            match = reidentify(self._own, self._linker.tracklets)
            if match is None and self._may_choose_anew(last, now_s):
                self._own, self._tracklet = [], None
                self._linker.tracklets[:] = [
                    tracklet
                    for tracklet in self._linker.tracklets
                    if tracklet.end_s > max(last.time_s, now_s - LONGEST_GAP_S)
                ]
                return self._choose(self._here(now_s), now_s)
            if match is not None:
                self._tracklet, start = match
                self._own += self._tracklet.detections[start:]
                return self._own[-1]
        return None

    def _may_choose_anew(self, last: Detection, now_s: float) -> bool:
        """Tell whether the person has gone so that another one may be measured."""
        gone_s = now_s - last.time_s
        brief = last.time_s - self._own[0].time_s < _BRIEF_S
        if gone_s > _GIVEN_UP_S or (brief and gone_s > LONGEST_GAP_S):
            return True
        here = [tracklet for tracklet in self._here(now_s) if self._counts(tracklet)]
        alone = len(here) == 1 and not here[0].disputed
        if alone and here[0].start_s - last.time_s > _EMPTY_S:
            return now_s - here[0].start_s >= _ALONE_S
        return False

    def _here(self, now_s: float) -> list[Tracklet]:
        return [tracklet for tracklet in self._linker.tracklets if tracklet.end_s == now_s]

    def _state_without(self, tracklets: list[Tracklet]) -> FrameState:
        if any(tracklet.disputed for tracklet in tracklets):
            return FrameState.AMBIGUOUS
        if any(self._counts(tracklet) for tracklet in tracklets):
            return FrameState.OTHER_PERSON
        return FrameState.NOBODY

    def _counts(self, tracklet: Tracklet) -> bool:
        """Tell whether a tracklet is a person, judged while it is young."""
        name = id(tracklet)
        if name in self._established:
            return True
        if name in self._dismissed:
            return False
        if is_established_person(tracklet, self._size_px):
            self._established.add(name)
            return True
        if tracklet.end_s - tracklet.start_s > _JUDGED_S:
            self._dismissed.add(name)
        return False

    def _may_count(self, tracklet: Tracklet) -> bool:
        shape = tracklet.detections[-1].points_px
        return id(tracklet) not in self._dismissed and is_plausible_body(
            shape, float(self._size_px.max())
        )

    def _forget(self, now_s: float) -> None:
        """Drop what is too old to matter, so that hours of frames take no more room.

        Tracklets that were there together with the person stay marked as those of another person.
        """
        since_s = (self._own[-1].time_s if self._own else now_s) - _REMEMBERED_S
        if self._own and self._own[0].time_s < since_s - _REMEMBERED_S:
            self._own = [detection for detection in self._own if detection.time_s >= since_s]
        kept = []
        for tracklet in self._linker.tracklets:
            if tracklet.end_s < since_s and tracklet is not self._tracklet:
                self._established.discard(id(tracklet))
                self._dismissed.discard(id(tracklet))
                continue
            if tracklet.detections[0].time_s < since_s - _REMEMBERED_S:
                tracklet.detections[:] = [
                    detection for detection in tracklet.detections if detection.time_s >= since_s
                ]
            kept.append(tracklet)
        self._linker.tracklets[:] = kept


def _size(tracklet: Tracklet) -> float:
    return tracklet.detections[-1].trunk_px
