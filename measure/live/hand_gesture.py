"""Hand gesture: a hand raised above the head, the one gesture that is recognised."""

from collections import deque

import numpy as np

from measure.domain.landmarks import FloatArray, Landmark, Side, arm
from measure.tracking.online import SubjectPose

#: How long a hand has to stay up, seconds. [project]
RAISED_S = 0.9
#: Share of the frames that must show it up. [project]
_SHARE = 0.8

#: The wrist's height above the nose, in trunk lengths. [project]
_ABOVE = 0.25
#: Distance of the wrists, in trunk lengths: the network draws a hidden arm where the other one is.
#: [project]
_APART = 0.5
#: Least visibility, 0..1, of the raised wrist. [project]
_LEAST_VISIBILITY = 0.6


class RaisedHandDetector:
    """Notices a raised hand once each time it goes up."""

    def __init__(self) -> None:
        self._up: deque[tuple[float, Side | None]] = deque()
        self._reported: Side | None = None

    def raised(self, time_s: float, person: SubjectPose, hands: frozenset[Side]) -> Side | None:
        """Take the next frame; return a hand at the moment when it has been up long enough.

        Parameters
        ----------
        hands
            The hands that may give the sign now.
        """
        up = self._hand_up(person) if person.points_px is not None else None
        self._up.append((time_s, up))
        while self._up[0][0] < time_s - RAISED_S:
            self._up.popleft()
        if up is None and all(side is not self._reported for _, side in self._up):
            self._reported = None
        for side in hands:
            share = sum(raised is side for _, raised in self._up) / len(self._up)
            long_enough = time_s - self._up[0][0] >= 0.8 * RAISED_S
            if up is side and long_enough and share >= _SHARE and self._reported is not side:
                self._reported = side
                return side
        return None

    def _hand_up(self, person: SubjectPose) -> Side | None:
        """Return the one hand that is up, clearly visible and apart from the other one."""
        points, visible = person.points_px, person.visibility
        assert points is not None
        assert visible is not None
        left, right = arm(Side.LEFT), arm(Side.RIGHT)
        trunk_px = _distance(
            (points[left.shoulder] + points[right.shoulder]) / 2,
            (points[left.hip] + points[right.hip]) / 2,
        )
        raised = [
            side
            for side in Side
            if points[Landmark.NOSE, 1] - points[arm(side).wrist, 1] > _ABOVE * trunk_px
            and visible[arm(side).wrist] >= _LEAST_VISIBILITY
        ]
        apart = _distance(points[left.wrist], points[right.wrist]) > _APART * trunk_px
        return raised[0] if len(raised) == 1 and apart else None


def _distance(start: FloatArray, end: FloatArray) -> float:
    return float(np.hypot(*(start - end)))
