"""A source of frames that follows a script: what a decoder may do, without a clip."""

from collections.abc import Iterable, Iterator
from typing import Any

import numpy as np
from numpy.typing import NDArray

from measure.video.source import SourceFacts

#: A step of the script: a time, or None for a frame that cannot be decoded.
Step = float | None


class ScriptedSource:
    """Frames at the times of a script; frame n is grey of brightness 10 + n % 200.

    Parameters
    ----------
    script
        May be endless. When it ends, every further grab fails.
    brightness
        One value for all frames instead.
    """

    def __init__(
        self,
        script: Iterable[Step],
        *,
        stated_frames: int | None = None,
        stated_fps: float | None = 30.0,
        size: tuple[int, int] = (64, 48),
        brightness: int | None = None,
        times_known: bool = True,
    ) -> None:
        self._script: Iterator[Step] = iter(script)
        self._time_s = 0.0
        self._number = -1
        self._size = size
        self._brightness = brightness
        self.grabs = 0
        self.retrieved: list[int] = []
        self.closed = False
        self.facts = SourceFacts(
            width_px=size[0],
            height_px=size[1],
            stated_fps=stated_fps,
            stated_frames=stated_frames,
            backend="script",
            times_known=times_known,
        )

    def grab(self) -> bool:
        self.grabs += 1
        step = next(self._script, None)
        if step is None:
            return False
        self._number += 1
        self._time_s = step
        return True

    def time_s(self) -> float:
        return self._time_s

    def retrieve(self) -> NDArray[Any] | None:
        self.retrieved.append(self._number)
        grey = 10 + self._number % 200 if self._brightness is None else self._brightness
        return np.full((self._size[1], self._size[0], 3), grey, dtype=np.uint8)

    def close(self) -> None:
        self.closed = True
