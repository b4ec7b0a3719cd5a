"""A person's history as CSV, one row a trial: for programs and for spreadsheets.

A measurement without any trial gets one row too, so that no refusal is lost. For programs: UTF-8,
comma, decimal point, every value in full, the same on every computer. For spreadsheets: texts
that a spreadsheet would run or reinterpret are guarded, and numbers use the decimal sign that was
asked for, independent of this computer's settings.
"""

import csv
import datetime as dt
import functools
import io
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from measure.domain.acquisition import Setup
from measure.domain.measurements import Measurement, Trial
from measure.domain.movements import Unit
from measure.domain.records import History, MeasurementRecord, Person, SessionRecord
from measure.domain.session_facts import ClinicianMethod
from measure.system.json_codec import to_json, utc_text

#: Value of a cell; a time is local and has no zone.
Cell = str | bool | int | float | dt.datetime | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One trial with its session and person; `trial` and `number` are None where there is none."""

    person: Person
    session: SessionRecord
    record: MeasurementRecord
    number: int | None
    trial: Trial | None

    @property
    def measurement(self) -> Measurement:
        return self.record.measurement


#: Getter of a cell. Columns are getters by header, and headers end in the unit of their numbers.
Getter = Callable[[Row], Cell]


def rows_by_measurement(history: History) -> Iterator[list[Row]]:
    """Yield the rows of each measurement, by session, measurement and trial; at least one."""
    sessions = {session.id: session for session in history.sessions}
    for record in history.measurements:
        trials = record.measurement.trials
        numbered: list[tuple[int | None, Trial | None]] = [*enumerate(trials, start=1)]
        yield [
            Row(
                person=history.person,
                session=sessions[record.session_id],
                record=record,
                number=number,
                trial=trial,
            )
            for number, trial in numbered or [(None, None)]
        ]


def _angle_and_fraction(name: str, value: Callable[[Row], float | None]) -> dict[str, Getter]:
    """Return two columns, degrees and fraction, so that the unit stands in the header."""

    def only(unit: Unit) -> Getter:
        return lambda row: value(row) if row.measurement.unit is unit else None

    return {f"{name}_deg": only(Unit.DEGREES), f"{name}_fraction": only(Unit.FRACTION)}


def _trial_number(name: str) -> Callable[[Row], float | None]:
    return lambda row: getattr(row.trial, name) if row.trial else None


def _measured(name: str) -> Callable[[Row], float | None]:
    return lambda row: getattr(row.measurement, name)


def _typed_in(row: Row, method: ClinicianMethod) -> float | None:
    """Return what a clinician measured of the row's movement and side in the session, degrees."""
    key = row.measurement.movement, row.measurement.side, method
    return next((v.value_deg for v in row.session.clinician_values if v.key == key), None)


def _pairs(values: dict[str, str]) -> str:
    return "; ".join(f"{name}={value}" for name, value in sorted(values.items()))


@functools.lru_cache(maxsize=64)
def setup_text(setup: Setup) -> str:
    """Return a set-up as JSON; most measurements share a few set-ups."""
    return to_json(setup)


#: Columns that are equal in all rows of a measurement.
MEASUREMENT_COLUMNS: dict[str, Getter] = {
    "person": lambda row: row.person.pseudonym,
    "person_id": lambda row: row.person.id,
    "demo": lambda row: row.person.demo,
    "person_affected": lambda row: " ".join(row.person.affected),
    "person_dominant": lambda row: row.person.dominant,
    "person_since": lambda row: row.person.since,
    "person_onset": lambda row: row.person.onset,
    "person_age_band": lambda row: row.person.age_band,
    "person_diabetes": lambda row: row.person.diabetes,
    "person_thyroid": lambda row: row.person.thyroid,
    "session_id": lambda row: row.session.id,
    "session_started_utc": lambda row: utc_text(row.session.started.utc),
    "session_started_local": lambda row: row.session.started.local.replace(tzinfo=None),
    "session_offset_min": lambda row: row.session.started.offset_min,
    "session_zone": lambda row: row.session.started.zone,
    "session_finished": lambda row: row.session.finished,
    "session_duration_s": lambda row: row.session.duration_s,
    "pain_rest_0_10": lambda row: row.session.pain.rest,
    "pain_night_0_10": lambda row: row.session.pain.night,
    "pain_worst_24h_0_10": lambda row: row.session.pain.worst_24h,
    "exercise_timing": lambda row: timing.value if (timing := row.session.state.timing) else None,
    "pain_relief_4h": lambda row: row.session.state.pain_relief,
    "session_note": lambda row: row.session.note,
    "measurement_id": lambda row: row.record.id,
    "movement": lambda row: row.measurement.movement.value,
    "side": lambda row: row.measurement.side.value,
    "view": lambda row: row.measurement.view.value,
    "reference": lambda row: row.measurement.reference.value,
    "help": lambda row: row.record.conduct.help.value,
    "posture": lambda row: row.record.conduct.posture.value,
    "pain_during_0_10": lambda row: row.record.pain_during,
    "stopped_by": lambda row: row.record.stopped_by.value if row.record.stopped_by else None,
    "overridden": lambda row: " ".join(row.record.overridden),
    "status": lambda row: row.measurement.status.value,
    "reasons": lambda row: " ".join(row.measurement.reasons),
    **_angle_and_fraction("value", _measured("value")),
    **_angle_and_fraction("low", _measured("low")),
    **_angle_and_fraction("high", _measured("high")),
    **_angle_and_fraction("best", _measured("best")),
    **_angle_and_fraction("against_vertical", _measured("against_vertical")),
    "clinician_passive_deg": lambda row: _typed_in(row, ClinicianMethod.PASSIVE),
    "clinician_goniometer_deg": lambda row: _typed_in(row, ClinicianMethod.GONIOMETER),
    "level_low": lambda row: _level(row, "low"),
    "level_high": lambda row: _level(row, "high"),
    "level_band": lambda row: _level(row, "band"),
    "level_decided_by": lambda row: _level(row, "decided_by"),
    "model": lambda row: row.measurement.provenance.model,
    "model_sha256": lambda row: _pairs(row.measurement.provenance.model_hashes),
    "passes": lambda row: "; ".join(row.measurement.provenance.passes),
    "software": lambda row: _pairs(row.measurement.provenance.software),
    "source": lambda row: _pairs(row.measurement.provenance.source),
    "setup_json": lambda row: setup_text(row.measurement.provenance.setup),
}

TRIAL_COLUMNS: dict[str, Getter] = {
    "trial": lambda row: row.number,
    "trial_scored": lambda row: row.trial.scored if row.trial else None,
    **_angle_and_fraction("trial_value", _trial_number("value")),
    **_angle_and_fraction("trial_low", _trial_number("low")),
    **_angle_and_fraction("trial_high", _trial_number("high")),
    **_angle_and_fraction("trial_spread", _trial_number("spread")),
    "trial_start_s": _trial_number("start_s"),
    "trial_end_s": _trial_number("end_s"),
    "trial_hold_start_s": _trial_number("hold_start_s"),
    "trial_hold_end_s": _trial_number("hold_end_s"),
    "trial_flags": lambda row: " ".join(row.trial.flags) if row.trial else None,
    "trial_refused_for": lambda row: " ".join(row.trial.refused_for) if row.trial else None,
}

COLUMNS = MEASUREMENT_COLUMNS | TRIAL_COLUMNS


def _level(row: Row, name: str) -> str | None:
    level = row.measurement.level
    return getattr(level, name) if level else None


class DecimalSign(StrEnum):
    """Decimal sign that a spreadsheet expects."""

    COMMA = "comma"
    POINT = "point"


#: Beginnings of texts that may be run as a formula; full-width signs are taken for plain ones.
_FORMULA = re.compile(r"[=+\-@\uff1d\uff0b\uff0d\uff20\u2212\t\r\n]")
_NUMBER_LIKE = re.compile(r"[+-]?[\d.,'\u2019\s]+([eE][+-]?\d+)?\s*[%\u20ac$\u00a3]?")
_DATE_LIKE = re.compile(r"\d{1,4}\s*[-/.:]\s*\d{1,2}\b.*", re.DOTALL)
_MONTH = (
    r"(jan|ene|gen|sty|feb|fev|fév|lut|mar|mär|mrt|apr|avr|abr|kwi|may|mai|mag|mei|maj|jun|jui|"
    r"giu|cze|jul|lug|lip|aug|aou|aoû|ago|sie|sep|set|wrz|oct|okt|out|ott|paź|nov|nob|lis|dec|"
    r"dez|déc|dic|gru)\w*\.?"
)
_MONTH_LIKE = re.compile(
    rf"\d{{1,4}}\.?[\s\-/.]*{_MONTH}([\s\-/.,]*\d{{2,4}})?|{_MONTH}[\s\-/.]*\d{{1,4}}.*",
    re.IGNORECASE | re.DOTALL,
)
_TRUTH_LIKE = re.compile(r"true|false|wahr|falsch|vrai|faux", re.IGNORECASE)

#: Digits after the decimal sign in spreadsheets; programs get all of them. [technical]
_DIGITS = 4


def csv_for_programs(history: History) -> bytes:
    """Return the table as UTF-8 without mark, separated by commas, lines ended as RFC 4180 says."""
    return _table(history, ",", _for_program).encode("utf-8")


def csv_for_spreadsheets(history: History, sign: DecimalSign) -> bytes:
    """Return the table with a byte-order mark, so that accented names are read as such.

    Parameters
    ----------
    sign
        With a comma the columns are separated by semicolons, as spreadsheets expect there.
    """
    separator = ";" if sign is DecimalSign.COMMA else ","
    table = _table(history, separator, lambda value: _for_spreadsheet(value, sign))
    return table.encode("utf-8-sig")


@functools.lru_cache(maxsize=4096)
def guarded(text: str) -> str:
    """Return a text so that a spreadsheet does not reinterpret it.

    An apostrophe goes before what might be run as a formula, or read as a number, a date or a
    truth value: "=1+1", "3-4", "1/2", "MAR1", "12e5". Only for texts: a negative number in a
    column of numbers needs none.
    """
    inner = text.strip(" \u00a0\u3000\ufeff\u200b")
    suspicious = (
        _FORMULA.match(inner)
        or _NUMBER_LIKE.fullmatch(inner)
        or _DATE_LIKE.fullmatch(inner)
        or _MONTH_LIKE.fullmatch(inner)
        or _TRUTH_LIKE.fullmatch(inner)
    )
    return "'" + text if suspicious else text


def _table(history: History, separator: str, written: Callable[[Cell], str]) -> str:
    """Return the table, writing what the rows of a measurement share only once."""
    text = io.StringIO()
    writer = csv.writer(text, delimiter=separator)
    writer.writerow(COLUMNS)
    for rows in rows_by_measurement(history):
        shared = [written(getter(rows[0])) for getter in MEASUREMENT_COLUMNS.values()]
        for row in rows:
            own = [written(getter(row)) for getter in TRIAL_COLUMNS.values()]
            writer.writerow(shared + own)
    return text.getvalue()


def _for_program(value: Cell) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, dt.datetime):
        return value.strftime("%Y-%m-%d %H:%M:%S")
    return repr(value) if isinstance(value, float) else str(value)


def _for_spreadsheet(value: Cell, sign: DecimalSign) -> str:
    if isinstance(value, str):
        return guarded(value)
    if isinstance(value, float):
        text = repr(round(value, _DIGITS))
        return text.replace(".", ",") if sign is DecimalSign.COMMA else text
    return _for_program(value)
