"""The frames of the trial that is going on: what the quick look saw, and pictures to look at again.

Bounded by time and by memory. Everything is dropped when the trial has been settled.
"""

from dataclasses import dataclass, replace

import numpy as np

from measure.domain.landmarks import LANDMARKS
from measure.domain.tracks import FrameState, Track
from measure.pose.jobs import KeptPicture
from measure.tracking.online import SubjectPose
from measure.video.frame import PixelArray

#: What is kept of one trial at most: seconds, and bytes of pictures. Ours.
LONGEST_S = 40.0
MOST_BYTES = 400 << 20

_UNKNOWN = np.full(LANDMARKS, np.nan)
_NOWHERE = np.full((LANDMARKS, 2), np.nan)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Observation:
    time_s: float
    person: SubjectPose


class FrameBuffer:
    """Frames of one source and one size, in order of time.

    Parameters
    ----------
    size_px
        Width and height of the full-size picture.
    """

    def __init__(self, size_px: tuple[int, int]) -> None:
        self.size_px = size_px
        self._observations: list[_Observation] = []
        self._pictures: list[KeptPicture] = []
        self._retained_observations: list[_Observation] = []
        self._retained_pictures: list[KeptPicture] = []
        self._whole_from_s = -np.inf

    @property
    def whole_from_s(self) -> float:
        """Time from which on no picture was dropped."""
        return self._whole_from_s

    @property
    def retains(self) -> bool:
        """Whether something is carried over."""
        return bool(self._retained_observations)

    def add_observation(self, time_s: float, person: SubjectPose) -> None:
        """Keep what the quick pass saw."""
        self._observations.append(_Observation(time_s=time_s, person=person))
        if time_s - self._observations[0].time_s > LONGEST_S:
            del self._observations[0]

    def add_picture(self, rgb: PixelArray, index: int, time_s: float) -> None:
        """Keep a picture of the careful passes' grid."""
        self._pictures.append(KeptPicture(rgb=rgb, index=index, time_s=time_s, window=1))
        most = max(2, MOST_BYTES // rgb.nbytes)
        while len(self._pictures) > most or time_s - self._pictures[0].time_s > LONGEST_S:
            self._drop_first_picture()

    def forget_before(self, time_s: float) -> None:
        """Drop looks and pictures before a time; what is carried over stays."""
        self._observations = [
            observation for observation in self._observations if observation.time_s >= time_s
        ]
        self.forget_pictures_before(time_s)

    def forget_pictures_before(self, time_s: float) -> None:
        """Drop pictures only; the looks stay."""
        while self._pictures and self._pictures[0].time_s < time_s:
            self._drop_first_picture()

    def retain(self, start_s: float, end_s: float) -> None:
        """Keep what lies in a span of time in front of whatever follows, in place of before."""
        self._retained_observations = [
            observation
            for observation in self._observations
            if start_s <= observation.time_s <= end_s
        ] or self._retained_observations
        self._retained_pictures = [
            replace(each, window=0) for each in self._pictures if start_s <= each.time_s <= end_s
        ] or self._retained_pictures

    def drop_retained(self) -> None:
        """Drop what was carried over."""
        self._retained_observations, self._retained_pictures = [], []

    def track(self, *, with_retained: bool = True) -> Track:
        """Return the looks as a track."""
        observations = (
            [*self._retained_observations, *self._observations]
            if with_retained
            else self._observations
        )
        people = [observation.person for observation in observations]
        n = len(observations)
        points = [_NOWHERE if each.points_px is None else each.points_px for each in people]
        visible = [_UNKNOWN if each.visibility is None else each.visibility for each in people]
        present = [_UNKNOWN if each.presence is None else each.presence for each in people]
        return Track(
            time_s=np.array([observation.time_s for observation in observations], dtype=np.float64),
            points_px=np.array(points, dtype=np.float64).reshape(n, LANDMARKS, 2),
            visibility=np.array(visible, dtype=np.float64).reshape(n, LANDMARKS),
            presence=np.array(present, dtype=np.float64).reshape(n, LANDMARKS),
            state=np.array([int(each.state) for each in people], dtype=np.int64),
            people=np.array([each.people for each in people], dtype=np.int64),
            width_px=self.size_px[0],
            height_px=self.size_px[1],
        )

    def pictures(self, start_s: float, end_s: float) -> tuple[KeptPicture, ...]:
        """Return what is carried over, and the pictures with start_s <= time <= end_s."""
        near = 1e-6
        return (
            *self._retained_pictures,
            *(each for each in self._pictures if start_s - near <= each.time_s <= end_s + near),
        )

    def seen_lately(self, span_s: float) -> bool:
        """Tell whether the person was seen in most looks of the last so many seconds."""
        if not self._observations:
            return False
        since_s = self._observations[-1].time_s - span_s
        late = [
            observation.person.state
            for observation in self._observations
            if observation.time_s >= since_s
        ]
        return sum(state is FrameState.SEEN for state in late) >= len(late) / 2

    def _drop_first_picture(self) -> None:
        self._whole_from_s = self._pictures[0].time_s + 1e-9
        del self._pictures[0]
