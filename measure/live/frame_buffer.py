"""Frame buffer: observations and frames of the trial that is going on, for its fine passes.

Bounded by time and by memory. Everything is dropped when the trial has been captured.
"""

from dataclasses import dataclass, replace

import numpy as np

from measure.domain.landmarks import LANDMARKS
from measure.domain.tracks import FrameState, Track
from measure.pose.jobs import KeptPicture
from measure.tracking.online import SubjectPose
from measure.video.frame import PixelArray

#: Longest trial that is kept, seconds. [project]
LONGEST_S = 40.0
#: Most bytes of frames that are kept. [technical]
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
        Width and height of the full-size frame.
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
        """Time from which on no frame was dropped."""
        return self._whole_from_s

    @property
    def retains(self) -> bool:
        """Whether something is carried over."""
        return bool(self._retained_observations)

    def add_observation(self, time_s: float, person: SubjectPose) -> None:
        """Keep what the coarse pass saw."""
        self._observations.append(_Observation(time_s=time_s, person=person))
        if time_s - self._observations[0].time_s > LONGEST_S:
            del self._observations[0]

    def add_picture(self, rgb: PixelArray, index: int, time_s: float) -> None:
        """Keep a frame at the fine passes' rate."""
        self._pictures.append(KeptPicture(rgb=rgb, index=index, time_s=time_s, window=1))
        most = max(2, MOST_BYTES // rgb.nbytes)
        while len(self._pictures) > most or time_s - self._pictures[0].time_s > LONGEST_S:
            self._drop_first_picture()

    def forget_before(self, time_s: float) -> None:
        """Drop observations and frames before a time; what is carried over stays."""
        self._observations = [
            observation for observation in self._observations if observation.time_s >= time_s
        ]
        self.forget_pictures_before(time_s)

    def forget_pictures_before(self, time_s: float) -> None:
        """Drop frames only; the observations stay."""
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
            replace(picture, window=0)
            for picture in self._pictures
            if start_s <= picture.time_s <= end_s
        ] or self._retained_pictures

    def drop_retained(self) -> None:
        """Drop what was carried over."""
        self._retained_observations, self._retained_pictures = [], []

    def track(self, *, with_retained: bool = True) -> Track:
        """Return the observations as a track."""
        observations = (
            [*self._retained_observations, *self._observations]
            if with_retained
            else self._observations
        )
        people = [observation.person for observation in observations]
        n = len(observations)
        points = [_NOWHERE if person.points_px is None else person.points_px for person in people]
        visible = [
            _UNKNOWN if person.visibility is None else person.visibility for person in people
        ]
        present = [_UNKNOWN if person.presence is None else person.presence for person in people]
        return Track(
            time_s=np.array([observation.time_s for observation in observations], dtype=np.float64),
            points_px=np.array(points, dtype=np.float64).reshape(n, LANDMARKS, 2),
            visibility=np.array(visible, dtype=np.float64).reshape(n, LANDMARKS),
            presence=np.array(present, dtype=np.float64).reshape(n, LANDMARKS),
            state=np.array([int(person.state) for person in people], dtype=np.int64),
            people=np.array([person.people for person in people], dtype=np.int64),
            width_px=self.size_px[0],
            height_px=self.size_px[1],
        )

    def pictures(self, start_s: float, end_s: float) -> tuple[KeptPicture, ...]:
        """Return what is carried over, and the frames with start_s <= time <= end_s."""
        near = 1e-6
        return (
            *self._retained_pictures,
            *(
                picture
                for picture in self._pictures
                if start_s - near <= picture.time_s <= end_s + near
            ),
        )

    def seen_lately(self, span_s: float) -> bool:
        """Tell whether the person was seen in most observations of the last seconds."""
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
