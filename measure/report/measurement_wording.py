"""Wording of a measurement in a line of plain text: value, interval, reasons, level."""

from collections.abc import Iterable

from measure.domain.measurements import BASIS_SENTENCES, IntervalBasis, Measurement, Status
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reasons import SENTENCES
from measure.progress.wording import Translate, english


def value_text(measurement: Measurement) -> str:
    """Return the value in whole degrees or hundredths, or the word "refused"."""
    if measurement.status is Status.REFUSED or measurement.value is None:
        return "refused"
    return number_text(measurement.value, measurement.unit)


def interval_text(measurement: Measurement) -> str:
    """Return the 95 % interval, or nothing for a refusal."""
    if measurement.low is None or measurement.high is None:
        return ""
    low = number_text(measurement.low, measurement.unit, mark=False)
    return f"{low} to {number_text(measurement.high, measurement.unit)}"


def number_text(value: float, unit: Unit, *, mark: bool = True) -> str:
    """Return whole degrees, or hundredths of a fraction; finer digits would not be significant."""
    if unit is Unit.DEGREES:
        return f"{value:.0f}" + ("°" if mark else "")
    return f"{value:.2f}"


def reason_codes(measurement: Measurement) -> str:
    """Return the codes of the reasons, separated by commas, and the reach's level."""
    parts = [str(reason) for reason in measurement.reasons]
    level = measurement.level
    if level is not None:
        parts.insert(0, f"{level.low} to {level.high}" if level.low != level.high else level.low)
    return ", ".join(parts)


def refusal_sentences(measurement: Measurement, tr: Translate = english) -> str:
    """Return every reason of a refusal as a sentence, or nothing for a reading."""
    return " ".join(tr(SENTENCES[reason]) for reason in measurement.refused_for)


def reason_legend(measurements: Iterable[Measurement]) -> list[str]:
    """Return a line for each reason that occurs: its code, and its sentence."""
    reasons = dict.fromkeys(reason for measured in measurements for reason in measured.reasons)
    return [f"{reason}: {SENTENCES[reason]}" for reason in reasons]


def basis_sentences(measurements: Iterable[Measurement], tr: Translate = english) -> list[str]:
    """Return on what the intervals of readings rest, each basis with the movements it holds for."""
    movements: dict[IntervalBasis, set[Movement]] = {}
    for measurement in measurements:
        if measurement.interval_basis is not None:
            movements.setdefault(measurement.interval_basis, set()).add(measurement.movement)
    return [
        ", ".join(tr(MOVEMENTS[movement].name) for movement in Movement if movement in held)
        + f": {tr(sentence)}"
        for basis, sentence in BASIS_SENTENCES.items()
        if (held := movements.get(basis))
    ]
