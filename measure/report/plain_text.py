"""A measurement in a line of plain text, for tables on a terminal."""

from collections.abc import Sequence

from measure.domain.measurements import Measurement, Status
from measure.domain.movements import Unit
from measure.domain.reasons import SENTENCES


def value_words(measurement: Measurement) -> str:
    """Return the value in whole degrees or hundredths, or the word "refused"."""
    if measurement.status is Status.REFUSED or measurement.value is None:
        return "refused"
    return number_words(measurement.value, measurement.unit)


def interval_words(measurement: Measurement) -> str:
    """Return the 95 % interval, or nothing for a refusal."""
    if measurement.low is None or measurement.high is None:
        return ""
    low = number_words(measurement.low, measurement.unit, mark=False)
    return f"{low} to {number_words(measurement.high, measurement.unit)}"


def number_words(value: float, unit: Unit, *, mark: bool = True) -> str:
    """Return whole degrees, or hundredths of a fraction: finer digits would be made up."""
    if unit is Unit.DEGREES:
        return f"{value:.0f}" + ("°" if mark else "")
    return f"{value:.2f}"


def reason_words(measurement: Measurement) -> str:
    """Return the codes of the reasons, separated by commas, and the reach's level."""
    parts = [str(reason) for reason in measurement.reasons]
    level = measurement.level
    if level is not None:
        parts.insert(0, f"{level.low} to {level.high}" if level.low != level.high else level.low)
    return ", ".join(parts)


def refusal_sentence(measurement: Measurement) -> str:
    """Return the first reason as a sentence, or nothing for a reading."""
    if measurement.status is Status.READING or not measurement.reasons:
        return ""
    return SENTENCES[measurement.reasons[0]]


def table(rows: Sequence[Sequence[str]], header: Sequence[str]) -> str:
    """Return rows as aligned columns under a header."""
    lines = [list(header), *[list(row) for row in rows]]
    widths = [max(len(line[column]) for line in lines) for column in range(len(header))]
    text = [
        "  ".join(cell.ljust(width) for cell, width in zip(line, widths, strict=True)).rstrip()
        for line in lines
    ]
    text.insert(1, "  ".join("-" * width for width in widths))
    return "\n".join(text)
