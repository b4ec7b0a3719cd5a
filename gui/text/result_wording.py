"""Wording of a session's results: differences, the time before, a line to copy."""

import datetime as dt
from collections.abc import Mapping, Sequence

from gui.text.finding_keywords import finding_keywords
from gui.text.wording import (
    conduct_sentence,
    finding_words,
    likely_place,
    measurement_words,
    movement_name,
    notes_words,
    range_words,
    side_name,
    tr,
    value_words,
)
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.records import AssessmentCondition, MeasurementRecord
from measure.domain.session_comparison import SideDifference, side_difference
from measure.domain.session_facts import ClinicianValue
from measure.progress.dates import date_words
from measure.progress.wording import number_words
from measure.report.caveats import NOTICE
from measure.report.own_words import METHOD_WORDS


def difference_words(movement: Movement, difference: SideDifference | None) -> str:
    """Return for example "left 42° less than right (31 to 53)", or nothing."""
    if difference is None:
        return ""
    unit = MOVEMENTS[movement].unit
    if difference.low <= 0:
        return tr("no clear difference between the sides ({value}, at most {most})").format(
            value=value_words(difference.shown, unit), most=value_words(difference.high, unit)
        )
    return tr("{side} arm: {value} less than the other ({range})").format(
        side=side_name(difference.less),
        value=value_words(difference.shown, unit),
        range=range_words(difference.low, difference.high, unit),
    )


def value_and_range(measurement: Measurement) -> tuple[str, str]:
    """Return a reading to be set large, and its range; of a reach the likeliest place."""
    if measurement.value is None or measurement.low is None or measurement.high is None:
        return tr("No reading"), ""
    if measurement.level is None:
        unit = measurement.unit
        interval = range_words(measurement.low, measurement.high, unit)
        if unit is Unit.DEGREES:
            # It stands alone, so that its ends need their sign.
            low, high = (value_words(end, unit) for end in (measurement.low, measurement.high))
            interval = tr("{low} to {high}").format(low=low, high=high)
        return value_words(measurement.value, unit), interval
    level = measurement.level
    place = likely_place(level.band)
    interval = tr("levels {low} to {high}").format(low=tr(level.low), high=tr(level.high))
    return place[:1].upper() + place[1:], interval


def short_reason(measurement: Measurement) -> str:
    """Return what refused most trials in a few words, without advice; nothing for a reading."""
    scored = sum(trial.scored for trial in measurement.trials)
    words = finding_keywords(measurement.refused_for[:1], scored)
    return f"{words[:1].upper()}{words[1:]}." if words else ""


def result_notes(measurement: Measurement, planned: int) -> str:
    """Return the notes of a result, no heading; as many trials as were planned are not too few."""
    scored = sum(trial.scored for trial in measurement.trials)
    return notes_words(measurement, few_trials=scored < planned, headed=False)


def last_time_words(record: MeasurementRecord, today: dt.date) -> str:
    """Return the reading of the time before with its day, or that it was earlier today."""
    if record.taken.day == today:
        return tr("Earlier today: {words}").format(words=measurement_words(record.measurement))
    return tr("Last time, {day}: {words}").format(
        day=date_words(record.taken.day, tr), words=measurement_words(record.measurement)
    )


def line_of_results(
    name: str,
    day: dt.date,
    conduct: AssessmentCondition,
    results: Mapping[tuple[Movement, Side], Measurement],
    asked: Mapping[tuple[Movement, Side], str],
    typed: Sequence[ClinicianValue] = (),
) -> str:
    """Return a session's results as one line of text, for a patient file.

    Parameters
    ----------
    asked
        What was answered about pain and what ended a movement, or when it was measured, in words.
    typed
        What was measured by other means and typed in.
    """
    parts = []
    for movement in dict.fromkeys(movement for movement, _ in results):
        sides = {side: results[movement, side] for side in Side if (movement, side) in results}
        words = [
            _side_in_line(side, measurement, asked.get((movement, side), ""), typed)
            for side, measurement in sides.items()
        ]
        if len(sides) == 2:
            words.append(
                difference_words(movement, side_difference(sides[Side.LEFT], sides[Side.RIGHT]))
            )
        line = "; ".join(part for part in words if part)
        parts.append(f"{movement_name(movement)}: {line}.")
    head = f"{name}, {date_words(day, tr)}. {conduct_sentence(conduct)}."
    if any(result.low is not None for result in results.values()):
        parts.append(tr("Ranges in brackets are 95 % ranges."))
    return " ".join([head, *parts, tr(NOTICE)])


def _side_in_line(
    side: Side, measurement: Measurement, asked: str, typed: Sequence[ClinicianValue]
) -> str:
    """Return what a line says of one side: the reading or the main reason, and all beside it."""
    counted = ""
    words = tr("{side} {words}").format(side=side_name(side), words=measurement_words(measurement))
    if measurement.refused_for:
        reason = finding_words(measurement.refused_for)
        words = tr("{side} not measured: {reason}").format(
            side=side_name(side), reason=reason[:1].lower() + reason[1:]
        )
    elif scored := sum(trial.scored for trial in measurement.trials):
        counted = tr("{count} trials counted").format(count=scored)
        if scored == 1:
            counted = tr("1 trial counted")
    by_hand = by_hand_words(typed, measurement.movement, side)
    by_hand = by_hand[:1].lower() + by_hand[1:]
    asked = asked[:1].lower() + asked[1:]
    return ", ".join(part.rstrip(".") for part in (words, counted, by_hand, asked) if part)


def by_hand_words(typed: Sequence[ClinicianValue], movement: Movement, side: Side) -> str:
    """Return for example "By hand: active 112°, passive 84°", or nothing."""
    values = {
        value.method: tr(METHOD_WORDS[value.method]).format(
            value=number_words(value.value_deg, 0 if value.value_deg.is_integer() else 1, tr)
        )
        for value in typed
        if (value.movement, value.side) == (movement, side)
    }
    words = ", ".join(values[method] for method in METHOD_WORDS if method in values)
    return tr("By hand: {values}").format(values=words) if words else ""
