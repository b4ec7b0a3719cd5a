"""What the readings of real people ought to reach, and what they reach.

The goals are the project's own.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from measure.domain.movements import Movement
from tests.bench.bench_real_figures import figures, mean_over_ranges
from tests.bench.bench_real_readings import ArmReading, ClipReading


@dataclass(frozen=True, slots=True, kw_only=True)
class Goal:
    """A goal and what was seen.

    Attributes
    ----------
    seen
        NaN where nothing was read.
    bounds
        (least, most): `seen` is to lie between them, both included.
    """

    name: str
    seen: float
    bounds: tuple[float, float]
    unit: str

    @property
    def reached(self) -> bool:
        low, high = self.bounds
        return low <= self.seen <= high


_UP_TO, _FROM = -np.inf, np.inf


def goals(arms: Sequence[ArmReading], clips: Sequence[ClipReading]) -> list[Goal]:
    """Return the goals over usable arms on the right person, and over clips."""
    accepted = [reading for reading in arms if reading.accepted]
    macro_error, macro_bias = mean_over_ranges(accepted)
    near = [
        reading
        for reading in accepted
        if reading.arm.task.movement is Movement.FLEXION and reading.arm.near
    ]
    clicked = [abs(clip.error_deg) for clip in clips if not clip.clip.trap]
    grave = sum(clip.caught for clip in clips if clip.clip.trap == "grave")
    everything = figures(accepted)
    if everything is None or everything.held is None or everything.half is None:
        return []
    return [
        _goal("bias", everything.bias.value, (-1.0, 1.0)),
        _goal("mean error", everything.mean_error.value, (_UP_TO, 3.5)),
        _goal("mean error, mean over the ranges", macro_error, (_UP_TO, 4.5)),
        _goal("size of the bias, mean over the ranges", macro_bias, (_UP_TO, 2.0)),
        _goal("mean error, flexion of the near arm", _mean_error(near), (_UP_TO, 6.0)),
        _goal("mean error, clicked clips", _finite_mean(clicked), (_UP_TO, 5.0)),
        _share("errors over 15°", everything.gross, (_UP_TO, 1.0)),
        _share("interval holds", everything.held.value, (92.0, 97.0)),
        _share("interval holds, from 30°", _held(accepted, 30.0), (92.0, _FROM)),
        _share("interval holds, from 60°", _held(accepted, 60.0), (88.0, _FROM)),
        _goal("mean half-width", everything.half, (_UP_TO, 10.0)),
        _share("usable arms read", len(accepted) / len(arms), (75.0, _FROM)),
        Goal(name="grave traps read", seen=grave, bounds=(_UP_TO, 0), unit=""),
    ]


def _goal(name: str, seen: float, bounds: tuple[float, float]) -> Goal:
    return Goal(name=name, seen=seen, bounds=bounds, unit="°")


def _share(name: str, share: float, bounds: tuple[float, float]) -> Goal:
    return Goal(name=name, seen=100.0 * share, bounds=bounds, unit=" %")


def _held(accepted: Sequence[ArmReading], from_deg: float) -> float:
    cell = figures([reading for reading in accepted if reading.arm.marked_deg >= from_deg])
    return float("nan") if cell is None or cell.held is None else cell.held.value


def _mean_error(accepted: Sequence[ArmReading]) -> float:
    cell = figures(accepted)
    return float("nan") if cell is None else cell.mean_error.value


def _finite_mean(values: Sequence[float]) -> float:
    finite = [value for value in values if np.isfinite(value)]
    return float(np.mean(finite)) if finite else float("nan")
