"""Rows of measurements, their trials, and the conditions that many of them share."""

import functools
import hashlib
import sqlite3
from collections import defaultdict
from typing import Any

from measure.domain.acquisition import Setup
from measure.domain.landmarks import Side
from measure.domain.measurements import LevelBand, Measurement, Provenance, Reference, Status, Trial
from measure.domain.movements import Movement, Unit, View
from measure.domain.reasons import Reason
from measure.domain.records import LimitingFactor, MeasurementRecord
from measure.errors import InputError
from measure.storage.columns import as_int, checked_row, conduct_of, moment_of, sanitized
from measure.system.json_codec import json_reader, to_json, utc_text

_MEASUREMENT = (
    "measurement.number, measurement.id, session.id, person.id, taken_utc, taken_offset_min, "
    "taken_zone, measurement.help, measurement.posture, pain_during, stopped_by, overridden, "
    "movement, side, view, reference, status, unit, value, low, high, best, against_vertical, "
    "level, reasons, source, conditions"
)
_FROM = (
    "FROM measurement JOIN session ON session.number = measurement.session "
    "JOIN person ON person.number = session.person "
)
_TRIAL = (
    "trial.measurement, trial.value, trial.low, trial.high, start_s, end_s, hold_start_s, "
    "hold_end_s, flags, refused_for, spread"
)
_COLUMNS = (
    "id", "session", "conditions", "taken_utc", "taken_offset_min", "taken_zone", "movement",
    "side", "view", "reference", "status", "unit", "value", "low", "high", "best",
    "against_vertical", "level", "reasons", "source", "help", "posture", "pain_during",
    "stopped_by", "overridden",
)  # fmt: skip
_UPSERT = (
    f"INSERT INTO measurement ({', '.join(_COLUMNS)}) "
    f"VALUES ({', '.join(':' + name for name in _COLUMNS)}) ON CONFLICT (id) DO UPDATE SET "
    + ", ".join(f"{name} = :{name}" for name in _COLUMNS if name not in ("id", "session"))
    + " WHERE session = :session RETURNING number"
)

_Row = tuple[Any, ...]

_read_reasons = json_reader(tuple[Reason, ...])
_read_texts = json_reader(dict[str, str])
_read_list = json_reader(tuple[str, ...])
_read_setup = json_reader(Setup)
_read_level = json_reader(LevelBand)


def measurements_of(
    connection: sqlite3.Connection,
    person_id: str,
    movement: Movement | None,
    side: Side | None,
    session_id: str | None,
) -> list[MeasurementRecord]:
    """Return a person's measurements by session, then by when they were finished."""
    where = "WHERE person.id = :person "
    if movement:
        where += "AND measurement.movement = :movement "
    if side:
        where += "AND measurement.side = :side "
    if session_id:
        where += "AND session.id = :session "
    chosen = {
        "person": person_id,
        "movement": movement.value if movement else None,
        "side": side.value if side else None,
        "session": session_id,
    }
    order = "ORDER BY started_utc, session.number, taken_utc, measurement.number"
    trials: dict[int, list[Trial]] = defaultdict(list)
    for row in connection.execute(
        f"SELECT {_TRIAL} {_FROM} JOIN trial ON trial.measurement = measurement.number {where} "
        "ORDER BY trial.measurement, trial.position",
        chosen,
    ):
        trials[row[0]].append(_trial(row))
    shared = _Shared(connection)
    rows = connection.execute(f"SELECT {_MEASUREMENT} {_FROM} {where} {order}", chosen)
    return [_record(row, tuple(trials.get(row[0], ())), shared) for row in rows]


def write_measurement(connection: sqlite3.Connection, record: MeasurementRecord) -> None:
    """Insert a measurement with its trials, or put it in the place of the one with its id.

    Raises
    ------
    InputError
        When its session is not in the store or belongs to someone else.
    """
    session = connection.execute(
        "SELECT session.number FROM session JOIN person ON person.number = session.person "
        "WHERE session.id = ? AND person.id = ?",
        (record.session_id, record.person_id),
    ).fetchone()
    if not session:
        raise InputError("The session of this measurement is no longer in the store.")
    measurement = sanitized(record.measurement)
    values = {
        "id": record.id,
        "session": session[0],
        "conditions": _conditions(connection, measurement.provenance),
        "taken_utc": utc_text(record.taken.utc),
        "taken_offset_min": record.taken.offset_min,
        "taken_zone": record.taken.zone,
        "help": record.conduct.help.value,
        "posture": record.conduct.posture.value,
        "pain_during": as_int(record.pain_during),
        "stopped_by": record.stopped_by.value if record.stopped_by else None,
        "overridden": to_json(record.overridden),
        "movement": measurement.movement.value,
        "side": measurement.side.value,
        "view": measurement.view.value,
        "reference": measurement.reference.value,
        "status": measurement.status.value,
        "unit": measurement.unit.value,
        "value": measurement.value,
        "low": measurement.low,
        "high": measurement.high,
        "best": measurement.best,
        "against_vertical": measurement.against_vertical,
        "level": to_json(measurement.level) if measurement.level else None,
        "reasons": to_json(measurement.reasons),
        "source": to_json(measurement.provenance.source),
    }
    row = connection.execute(_UPSERT, values).fetchone()
    if not row:
        raise InputError("A measurement cannot move from one session to another.")
    connection.execute("DELETE FROM trial WHERE measurement = ?", (row[0],))
    connection.executemany(
        "INSERT INTO trial (measurement, position, value, low, high, start_s, end_s, "
        "hold_start_s, hold_end_s, flags, refused_for, spread) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        [_trial_row(row[0], position, trial) for position, trial in enumerate(measurement.trials)],
    )


def write_pain_during(
    connection: sqlite3.Connection, session_id: str, measurement_id: str, pain: int | None
) -> None:
    """Change the pain during the movement of a measurement, if it is in this session."""
    connection.execute(
        "UPDATE measurement SET pain_during = ? WHERE id = ? "
        "AND session = (SELECT number FROM session WHERE id = ?)",
        (as_int(pain), measurement_id, session_id),
    )


def erase_measurement(connection: sqlite3.Connection, measurement_id: str) -> None:
    connection.execute("DELETE FROM measurement WHERE id = ?", (measurement_id,))


def _trial_row(measurement: int, position: int, trial: Trial) -> _Row:
    return (
        measurement,
        position,
        trial.value,
        trial.low,
        trial.high,
        float(trial.start_s),
        float(trial.end_s),
        trial.hold_start_s,
        trial.hold_end_s,
        to_json(trial.flags),
        to_json(trial.refused_for),
        trial.spread,
    )


def _conditions(connection: sqlite3.Connection, provenance: Provenance) -> int:
    """Return the key of the shared conditions, writing them when they are new."""
    values = (
        provenance.model,
        to_json(provenance.model_hashes),
        to_json(provenance.passes),
        to_json(provenance.software),
        to_json(provenance.setup),
    )
    digest = hashlib.sha256("\n".join(values).encode()).hexdigest()
    connection.execute(
        "INSERT INTO conditions (digest, model, model_hashes, passes, software, setup) "
        "VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (digest) DO NOTHING",
        (digest, *values),
    )
    row = connection.execute("SELECT number FROM conditions WHERE digest = ?", (digest,))
    return int(row.fetchone()[0])


def _trial(row: _Row) -> Trial:
    _, value, low, high, start_s, end_s, hold_start_s, hold_end_s, flags, refused, spread = (
        checked_row(row)
    )
    return Trial(
        value=value,
        low=low,
        high=high,
        start_s=start_s,
        end_s=end_s,
        hold_start_s=hold_start_s,
        hold_end_s=hold_end_s,
        flags=_read_reasons(flags),
        refused_for=_read_reasons(refused),
        spread=spread,
    )


class _Shared(dict[int, Provenance]):
    """Conditions by key, each read once; their `source` belongs to single measurements."""

    def __init__(self, connection: sqlite3.Connection) -> None:
        super().__init__()
        self._connection = connection

    def __missing__(self, number: int) -> Provenance:
        row = self._connection.execute(
            "SELECT model, model_hashes, passes, software, setup FROM conditions WHERE number = ?",
            (number,),
        ).fetchone()
        model, hashes, passes, software, setup = row
        self[number] = Provenance(
            model=model,
            model_hashes=_read_texts(hashes),
            passes=_read_list(passes),
            software=_read_texts(software),
            setup=_read_setup(setup),
        )
        return self[number]


def _record(row: _Row, trials: tuple[Trial, ...], shared: _Shared) -> MeasurementRecord:
    _, identifier, session, person, utc, offset_min, zone, *rest = checked_row(row)
    help_, posture, pain, stopped_by, overridden, *values = rest
    return MeasurementRecord(
        id=identifier,
        session_id=session,
        person_id=person,
        taken=moment_of(utc, offset_min, zone),
        conduct=conduct_of(help_, posture),
        pain_during=pain,
        stopped_by=LimitingFactor(stopped_by) if stopped_by else None,
        overridden=_read_reasons(overridden),
        measurement=_measurement(values, trials, shared),
    )


def _measurement(row: list[Any], trials: tuple[Trial, ...], shared: _Shared) -> Measurement:
    movement, side, view, reference, status, unit = _kind(*row[:6])
    value, low, high, best, against_vertical, level, reasons, source, conditions = row[6:]
    alike = shared[conditions]
    return Measurement(
        movement=movement,
        side=side,
        view=view,
        status=status,
        unit=unit,
        value=value,
        low=low,
        high=high,
        trials=trials,
        reasons=_read_reasons(reasons),
        provenance=Provenance(
            model=alike.model,
            model_hashes=alike.model_hashes,
            passes=alike.passes,
            software=alike.software,
            source=_read_texts(source),
            setup=alike.setup,
        ),
        best=best,
        against_vertical=against_vertical,
        reference=reference,
        level=_read_level(level) if level else None,
    )


@functools.lru_cache
def _kind(
    movement: str, side: str, view: str, reference: str, status: str, unit: str
) -> tuple[Movement, Side, View, Reference, Status, Unit]:
    """Return what six columns say; there are few such rows, and many readings of each."""
    return (
        Movement(movement),
        Side(side),
        View(view),
        Reference(reference),
        Status(status),
        Unit(unit),
    )
