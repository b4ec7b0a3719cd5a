"""Frame sampling: times that increase, a regular rate, spans of time and decimation in them."""

import math
from collections.abc import Sequence

#: Longest step forward that is believed at once, seconds. [project]
_LONGEST_STEP_S = 60.0

#: Frames in a row, each later than the one before but none where expected, that are a new start of
#: the times; fewer are strays left by damage. [project]
_NEW_START = 3


class RateSampler:
    """Choice of the frames nearest to a regular grid of times, by their own times.

    Parameters
    ----------
    rate_hz
        Grid points a second, from time 0; None chooses every frame.
    """

    def __init__(self, rate_hz: float | None) -> None:
        if rate_hz is not None and not rate_hz > 0:
            raise ValueError(f"rate_hz must be above 0, not {rate_hz}")
        self._rate_hz = rate_hz
        self._next_point = 0
        self._last_s = -math.inf

    def chooses(self, time_s: float) -> bool:
        """Return whether the frame at this time is the one for the next grid point.

        It is if its time is past the point, or nearer before it than the next frame will be
        after it, assuming an equal step. Of two frames equally near the later is chosen.
        """
        if self._rate_hz is None:
            return True
        step_s = min(time_s - self._last_s, 1 / self._rate_hz)  # a pause is no usual step
        first = not math.isfinite(self._last_s)
        self._last_s = time_s
        reach_s = time_s if first else time_s + step_s / 2 - 1e-4
        if reach_s < self._next_point / self._rate_hz:
            return False
        self._next_point = math.floor(reach_s * self._rate_hz + 1e-9) + 1
        return True


#: Start and end of a span of time, seconds, and its step: every step-th frame in it is taken.
DecimationSpan = tuple[float, float, int]
#: Step of a span of which no frame is taken. [technical]
SKIP = 0


class Decimator:
    """Choice of every n-th frame within spans of time.

    Parameters
    ----------
    decimation
        The first span that contains a frame decides; outside of all spans every frame is taken.
    """

    def __init__(self, decimation: Sequence[DecimationSpan]) -> None:
        self._spans = decimation
        self._stretch: int | None = None
        self._passed_over = 0

    def takes(self, time_s: float, stretch: int = 0) -> bool:
        """Return whether the next frame is taken; the first of each stretch always is."""
        steps = (step for start, end, step in self._spans if start <= time_s <= end)
        step = next(steps, 1)
        due = step != SKIP and self._passed_over + 1 >= step
        taken = due or stretch != self._stretch
        self._stretch = stretch
        self._passed_over = 0 if taken else self._passed_over + 1
        return taken


def merged(spans: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    """Return spans of time in order, with touching ones joined.

    Raises
    ------
    ValueError
        A span ends before it starts or is not finite.
    """
    result: list[tuple[float, float]] = []
    for start, end in sorted(spans):
        if not (math.isfinite(start) and math.isfinite(end) and start <= end):
            raise ValueError(f"a span of time must end after its start: ({start}, {end})")
        if result and start <= result[-1][1]:
            result[-1] = (result[-1][0], max(end, result[-1][1]))
        else:
            result.append((start, end))
    return tuple(result)


class MonotonicTimeline:
    """Times of a source, shifted to start at 0 and to increase always.

    Attributes
    ----------
    last_s
        The last time accepted.
    repeats
        Frames in a row that were not accepted.
    restarts
        New starts of the times so far; the parts are joined.
    """

    def __init__(self) -> None:
        self.last_s = -math.inf
        self.repeats = 0
        self.restarts = 0
        self._shift_s = 0.0
        self._strays_s: list[float] = []

    def accept(self, raw_s: float, interval_s: float) -> float | None:
        """Return the time of the next frame, or None if the frame cannot be used.

        Parameters
        ----------
        raw_s
            Time that the source gives, seconds.
        interval_s
            Usual time from frame to frame, put between the parts at a new start.
        """
        if not math.isfinite(raw_s):
            self.repeats += 1
            return None
        first = self.last_s == -math.inf
        if first:
            self._shift_s = -raw_s
        time_s = raw_s + self._shift_s
        if not first and not 1e-6 < time_s - self.last_s <= _LONGEST_STEP_S:
            if not self._strays_s or not 1e-6 < time_s - self._strays_s[-1] <= _LONGEST_STEP_S:
                self._strays_s.clear()
            self._strays_s.append(time_s)
            if len(self._strays_s) < _NEW_START:
                self.repeats += 1
                return None
            self.restarts += 1
            self._shift_s += self.last_s + interval_s - time_s
            time_s = self.last_s + interval_s
        self._strays_s.clear()
        self.repeats = 0
        self.last_s = time_s
        return time_s


#: Frames a second of the coarse pass: a hold of a second then has six. [project]
COARSE_HZ = 6.0


#: Frames a second of the fine passes. A still arm is misplaced by bias, not by noise (frames of one
#: hold differ by tenths of a degree), so more frames would only cost time. [project]
FINE_HZ = 4.0
