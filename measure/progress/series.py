"""Series of a person's measurements: what may share a curve, and where a curve breaks.

No statistics here: see :mod:`measure.progress.weekly_verdicts`.
"""

import bisect
import datetime as dt
import math
import statistics
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import FloatArray, IntArray, Side
from measure.domain.measurements import Measurement, Provenance, Status
from measure.domain.movements import Movement
from measure.domain.records import (
    EVENT_WORDS,
    AssessmentCondition,
    Event,
    EventKind,
    History,
    MeasurementRecord,
)
from measure.domain.session_facts import ExerciseTiming
from measure.domain.session_timing import timing_of
from measure.domain.setup_changes import StandingLog

#: Events that break a series, and whether a session on the same day comes after the break: on
#: the day of an injection or procedure people measure before it. A therapy, a medicine or other
#: exercises bend a line and break none. [project]
_BREAKING: Mapping[EventKind, bool] = {
    EventKind.INJECTION: False,
    EventKind.HYDRODILATATION: False,
    EventKind.MANIPULATION: False,
    EventKind.CAPSULAR_RELEASE: False,
    EventKind.PROCEDURE: False,
    EventKind.FLARE: True,
    EventKind.CAMERA_CHANGED: True,
    EventKind.MODEL_CHANGED: True,
}
_OF_THE_SETUP = (EventKind.CAMERA_CHANGED, EventKind.MODEL_CHANGED)

#: Names of the arrays of a series.
_ARRAYS = ("day", "value", "low", "high", "segment", "instrument", "practice")

#: Sessions at the start of a set-up, and after each change of it, in which people still learn what
#: is asked; they are shown and count neither for a line nor for a baseline. [project]
PRACTICE_SESSIONS = 2

INSTRUMENT_CHANGED = "way of measuring changed"


class _Kind(NamedTuple):
    """What the measurements of one series share."""

    movement: Movement
    conduct: AssessmentCondition
    side: Side
    after_exercises: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Break:
    """Break of a series: a day from which values start a new segment.

    Attributes
    ----------
    day
        The first local day of what follows.
    why
        In words.
    setup
        True for a change of the measuring set-up, after which values are not comparable with those
        before; False for something that happened to the shoulder.
    """

    day: dt.date
    why: str
    setup: bool


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Series:
    """Measurements of one movement on one side under one condition; n days, one value a day.

    Several measurements on one day count as one, by their medians: they share whatever was
    special about that day. Of two, the interval reaches to both.
    Arrays are read-only.

    Attributes
    ----------
    day
        Shape (n,), strictly increasing: local days as whole numbers, as
        :meth:`datetime.date.toordinal` counts them.
    value, low, high
        Shape (n,): value and 95 % interval of a single measurement, in the movement's unit.
    segment
        Shape (n,), from 0: days of one segment may share a trend line.
    instrument
        Shape (n,): days of one instrument are comparable in height; numbers hold for both
        sides.
    practice
        Shape (n,): True for the first PRACTICE_SESSIONS days of an instrument.
    breaks
        Breaks between the segments, the earliest first.
    after_exercises
        Whether these are the sessions after exercises; the others may lie before them, or it is
        not known.
    """

    movement: Movement
    side: Side
    conduct: AssessmentCondition
    day: FloatArray
    value: FloatArray
    low: FloatArray
    high: FloatArray
    segment: IntArray
    instrument: IntArray
    practice: NDArray[np.bool_]
    breaks: tuple[Break, ...] = ()
    after_exercises: bool = False

    def __post_init__(self) -> None:
        arrays = [getattr(self, name) for name in _ARRAYS]
        if any(array.shape != self.day.shape or array.ndim != 1 for array in arrays):
            raise ValueError("The arrays of a series differ in length.")
        if (np.diff(self.day) <= 0).any():
            raise ValueError("The days of a series do not increase.")
        for array in arrays:
            array.setflags(write=False)

    def __len__(self) -> int:
        return len(self.day)

    def date(self, index: int) -> dt.date:
        """Return the day at `index` as a date."""
        return dt.date.fromordinal(round(float(self.day[index])))

    def latest_segment(self) -> "Series":
        """Return the days since the last break."""
        return self.where(self.segment == self.segment[-1]) if len(self) else self

    def latest_instrument(self) -> "Series":
        """Return the latest days that are comparable in height with the last one."""
        if not len(self):
            return self
        changes = np.flatnonzero(np.diff(self.instrument))
        first = int(changes[-1]) + 1 if len(changes) else 0
        return self.where(np.arange(len(self)) >= first)

    def counted(self) -> "Series":
        """Return the days that count for lines and blocks: all but those of practice."""
        return self.where(~self.practice)

    def where(self, chosen: NDArray[np.bool_]) -> "Series":
        """Return a series of the chosen days only, with the breaks between them."""
        first, last = (self.day[chosen][[0, -1]]) if chosen.any() else (0.0, 0.0)
        return replace(
            self,
            **{name: getattr(self, name)[chosen] for name in _ARRAYS},
            breaks=tuple(item for item in self.breaks if first < item.day.toordinal() <= last),
        )


def all_series(history: History) -> tuple[Series, ...]:
    """Return the series that verdicts rest on: by movement, the most frequent condition, then side.

    Sessions after exercises are left out, as an arm goes further then. Only where there are more
    of them than of others are they the series.
    """
    chosen: dict[tuple[Movement, AssessmentCondition, Side], Series] = {}
    for series in series_by_timing(history):
        key = series.movement, series.conduct, series.side
        if key not in chosen or len(series) > len(chosen[key]):
            chosen[key] = series
    return tuple(chosen.values())


def series_by_timing(history: History) -> tuple[Series, ...]:
    """Return every series of a person; those after exercises follow their counterparts.

    Refused measurements have no value and are left out.
    """
    after = {
        session.id
        for session in history.sessions
        if timing_of(session, history.exercises_done) is ExerciseTiming.AFTER
    }
    groups: dict[_Kind, list[MeasurementRecord]] = defaultdict(list)
    for record in history.measurements:
        measurement = record.measurement
        if measurement.status is Status.READING and measurement.value is not None:
            kind = _Kind(
                measurement.movement, record.conduct, measurement.side, record.session_id in after
            )
            groups[kind].append(record)
    counts: dict[tuple[Movement, AssessmentCondition], int] = defaultdict(int)
    for kind, records in groups.items():
        counts[kind.movement, kind.conduct] += len(records)
    order = list(Movement)
    instruments: dict[tuple[object, ...], int] = {}
    return tuple(
        _series(kind, groups[kind], history, instruments)
        for kind in sorted(
            groups,
            key=lambda kind: (
                order.index(kind.movement),
                -counts[kind.movement, kind.conduct],
                kind.conduct.help,
                kind.conduct.posture,
                kind.side,
                kind.after_exercises,
            ),
        )
    )


def instrument_of(measurement: Measurement) -> tuple[object, ...]:
    """Return everything that must be equal for two measurements to be comparable in height.

    The instrument's signature, the reference of the angle, and the view.
    """
    signature = instrument_signature(measurement.provenance)
    return *signature, measurement.reference, measurement.view


def event_breaks(events: Iterable[Event], side: Side) -> tuple[Break, ...]:
    """Return the breaks that events make in the series of a side; the other side's make none.

    A change of the set-up breaks the series of both sides.
    """
    breaks = []
    for event in events:
        if event.kind not in _BREAKING:
            continue
        setup = event.kind in _OF_THE_SETUP
        if event.side is not None and event.side is not side and not setup:
            continue
        day = event.day if _BREAKING[event.kind] else event.day + dt.timedelta(days=1)
        breaks.append(Break(day=day, why=EVENT_WORDS[event.kind], setup=setup))
    return tuple(breaks)


def practice_days(instrument: IntArray) -> NDArray[np.bool_]:
    """Return which days, shape (n,), are among the first PRACTICE_SESSIONS of their instrument."""
    number = np.arange(len(instrument))
    begins = np.r_[True, np.diff(instrument) != 0][: len(instrument)]
    start = np.maximum.accumulate(np.where(begins, number, 0))
    practice: NDArray[np.bool_] = number - start < PRACTICE_SESSIONS
    return practice


def instrument_signature(made: Provenance) -> tuple[object, ...]:
    """Return the parts of a provenance that can change a measurement's height.

    The model, the camera with its lens, a correction, and the versions of the pose library and of
    the estimator. Only readings of a program too old to name its estimator tell it by the first two
    figures of the program's own version.
    """
    camera = made.setup.camera
    program = ".".join(made.software.get("thawline", "").split(".")[:2])
    return (
        made.model,
        tuple(sorted(made.model_hashes.items())),
        camera.name,
        camera.lens,
        made.setup.correction,
        made.software.get("mediapipe", ""),
        made.software.get("estimator", f"of {program}"),
    )


def _series(
    kind: _Kind,
    records: Iterable[MeasurementRecord],
    history: History,
    instruments: dict[tuple[object, ...], int],
) -> Series:
    setup_days = sorted(
        event.day.toordinal() for event in history.events if event.kind in _OF_THE_SETUP
    )
    days, numbers, values = _by_day(records, setup_days, instruments)
    breaks = _breaks(days, numbers, history.events, kind.side)
    starts = np.unique([item.day.toordinal() for item in breaks])
    return Series(
        movement=kind.movement,
        side=kind.side,
        conduct=kind.conduct,
        after_exercises=kind.after_exercises,
        day=days,
        value=values[:, 0].copy(),
        low=values[:, 1].copy(),
        high=values[:, 2].copy(),
        segment=np.searchsorted(starts, days, side="right").astype(np.int64),
        instrument=numbers,
        practice=practice_days(numbers),
        breaks=breaks,
    )


def _by_day(
    records: Iterable[MeasurementRecord],
    setup_days: Sequence[int],
    instruments: dict[tuple[object, ...], int],
) -> tuple[FloatArray, IntArray, FloatArray]:
    """Return days (n,), instrument numbers (n,), and value, low and high of each day (n, 3).

    Where one day has measurements of two instruments, those of the later one count. On
    `setup_days` a change of the set-up was noted, which makes another instrument. A set-up that is
    seen to differ from the instrument's first readings widens an interval by its likely effect.
    """
    numbers: dict[int, int] = {}
    readings: dict[int, list[tuple[float, float, float]]] = {}
    poses = StandingLog()
    for record in sorted(records, key=lambda record: record.taken.utc):
        measurement = record.measurement
        day = record.taken.day.toordinal()
        key = (instrument_of(measurement), bisect.bisect_right(setup_days, day))
        number = instruments.setdefault(key, len(instruments))
        if numbers.get(day) != number:
            numbers[day] = number
            readings[day] = []
        value = measurement.value
        assert value is not None
        low = value if measurement.low is None else measurement.low
        high = value if measurement.high is None else measurement.high
        # A set-up that changed makes the interval wider, not the value another one.
        effect = poses.effect_on(measurement, number)
        readings[day].append(
            (
                value,
                value - math.hypot(value - low, effect),
                value + math.hypot(high - value, effect),
            )
        )
    days = sorted(numbers)
    return (
        np.array(days, dtype=np.float64),
        np.array([numbers[day] for day in days], dtype=np.int64),
        np.array([_of_one_day(readings[day]) for day in days], dtype=np.float64).reshape(-1, 3),
    )


def _of_one_day(readings: Sequence[tuple[float, float, float]]) -> tuple[float, float, float]:
    """Return medians of value, low and high.

    The ends reach both middle values of an even number of readings: either of them may be right.
    """
    values, lows, highs = zip(*readings, strict=True)
    low = min(statistics.median(lows), statistics.median_low(values))
    high = max(statistics.median(highs), statistics.median_high(values))
    return statistics.median(values), low, high


def _breaks(
    days: FloatArray, numbers: IntArray, events: Iterable[Event], side: Side
) -> tuple[Break, ...]:
    """Return the breaks between the days of a series, the earliest first.

    Events outside its days, and those of the other side only, break nothing.
    """
    breaks = [
        item
        for item in event_breaks(events, side)
        if len(days) and days[0] < item.day.toordinal() <= days[-1]
    ]
    for k in np.flatnonzero(np.diff(numbers)):
        # A change that was noted between the two days has its own words.
        before, after = int(days[k]), int(days[k + 1])
        if not any(item.setup and before < item.day.toordinal() <= after for item in breaks):
            first = dt.date.fromordinal(after)
            breaks.append(Break(day=first, why=INSTRUMENT_CHANGED, setup=True))
    return tuple(sorted(breaks, key=lambda item: item.day))
