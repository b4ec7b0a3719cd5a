"""Column values: measurements in plain numbers, and no gap without a reason."""

import dataclasses
import functools
import math
from typing import Any

from measure.domain.measurements import Measurement, Status, Trial
from measure.domain.reasons import Reason
from measure.domain.records import AssessmentCondition, Assistance, BodyPosition
from measure.errors import InputError
from measure.system.clock import Timestamp
from measure.system.json_codec import utc_from_text


def sanitized(measurement: Measurement) -> Measurement:
    """Return the measurement in plain Python numbers, None for what is not finite.

    A reading whose value or interval is no finite number is none: it is kept as a refusal for
    an impossible value, never as a gap without a reason. The same holds for its trials.

    Raises
    ------
    InputError
        When it is refused and says not why.
    """
    value, low, high = finite(measurement.value), finite(measurement.low), finite(measurement.high)
    status, reasons = measurement.status, measurement.reasons
    if status is Status.READING and (value is None or low is None or high is None):
        status, reasons = Status.REFUSED, _with_impossible(reasons)
        value = low = high = None
    if status is Status.REFUSED and not reasons:
        raise InputError("A refused measurement says why; this one gives no reason.")
    return dataclasses.replace(
        measurement,
        status=status,
        reasons=reasons,
        value=value,
        low=low,
        high=high,
        best=finite(measurement.best),
        against_vertical=finite(measurement.against_vertical),
        trials=tuple(_storable_trial(trial) for trial in measurement.trials),
    )


def finite(number: float | None) -> float | None:
    """Return any kind of number as a Python float, or None where it is missing or not finite."""
    if number is None or not math.isfinite(number):
        return None
    return float(number)


def checked_row(row: tuple[Any, ...]) -> tuple[Any, ...]:
    """Return a row of the store.

    Raises
    ------
    ValueError
        When it holds an infinite number: that was not written by us.
    """
    if math.inf in row or -math.inf in row:
        raise ValueError("a number in it is infinite")
    return row


def _storable_trial(trial: Trial) -> Trial:
    value, flags, refused_for = finite(trial.value), trial.flags, trial.refused_for
    if value is None and not refused_for:
        flags, refused_for = _with_impossible(flags), _with_impossible(refused_for)
    return dataclasses.replace(
        trial,
        value=value,
        low=finite(trial.low),
        high=finite(trial.high),
        spread=finite(trial.spread),
        start_s=float(trial.start_s),
        end_s=float(trial.end_s),
        hold_start_s=finite(trial.hold_start_s),
        hold_end_s=finite(trial.hold_end_s),
        flags=flags,
        refused_for=refused_for,
    )


def _with_impossible(reasons: tuple[Reason, ...]) -> tuple[Reason, ...]:
    rest = (reason for reason in reasons if reason is not Reason.IMPOSSIBLE_VALUE)
    return (Reason.IMPOSSIBLE_VALUE, *rest)


def as_int(number: int | None) -> int | None:
    """Return a Python integer for any kind of integer, numpy's included."""
    return None if number is None else int(number)


@functools.lru_cache
def conduct_of(help_: str, posture: str) -> AssessmentCondition:
    """Return the conduct of two columns."""
    return AssessmentCondition(help=Assistance(help_), posture=BodyPosition(posture))


def moment_of(utc: str, offset_min: int, zone: str) -> Timestamp:
    """Return the moment of three columns."""
    return Timestamp(utc=utc_from_text(utc), offset_min=offset_min, zone=zone)
