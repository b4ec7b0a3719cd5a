"""Rows of calibration: lenses, levels and corrections of cameras; bodies and places of people.

A record takes the place of the one with the same key and becomes the newest of its kind. What is
read is checked like what is written, since these numbers decide about measurements.
"""

import sqlite3
from collections.abc import Callable, Sequence
from typing import Any, TypeVar

from measure.domain.acquisition import LensProfile, check_profile
from measure.domain.calibration_records import (
    BodyRecord,
    CameraLevel,
    Placement,
    StoredCorrection,
    StoredStudy,
    check_body,
    check_level,
    check_placement,
    check_stored_correction,
    check_stored_study,
)
from measure.storage.person_rows import person_number
from measure.system.json_codec import from_data, json_reader, to_data, to_json

Record = TypeVar("Record")

_LENGTHS = ("upper_arm", "forearm", "shoulder_width", "c7_height", "iliac_spines")
_LENGTHS_ORIGIN = ("lengths_from", "lengths_day", "marks_day")
_CORRECTION = (
    "bias_deg", "gain", "centre_deg", "pairs", "study", "lowest_deg", "highest_deg",
)  # fmt: skip
_STUDY = ("sd_deg", "bias_deg", "bias_half_deg", "pairs", "people", "study")
_LENS = (
    "camera_name", "width_px", "height_px", "focal_px", "centre_px", "distortion",
    "reprojection_px", "views",
)  # fmt: skip
_LENS_ARRAYS = ("focal_px", "centre_px", "distortion")
_LEVEL = ("camera_name", "roll_deg", "half_deg", "day", "fixed")
_PLACEMENT = (
    "movement", "side", "camera_name", "width_px", "height_px", "trunk_px", "width_over_trunk",
    "lean_deg", "shoulder_width", "roll_deg", "taken",
)  # fmt: skip
_PLACEMENT_KEY = ("person", "movement", "side", "camera_name", "width_px", "height_px")

_read_numbers = json_reader(tuple[float, ...])


def lenses(connection: sqlite3.Connection) -> list[LensProfile]:
    """Return all lens profiles, the newest last."""
    profiles = []
    for data in _rows(connection, _LENS, "FROM lens ORDER BY number"):
        arrays = {name: list(_read_numbers(data[name])) for name in _LENS_ARRAYS}
        profiles.append(_checked(LensProfile, data | arrays, check_profile))
    return profiles


def write_lens(connection: sqlite3.Connection, profile: LensProfile) -> None:
    check_profile(profile)
    arrays = {name: to_json(getattr(profile, name)) for name in _LENS_ARRAYS}
    _put(connection, "lens", to_data(profile) | arrays, ("camera_name", "width_px", "height_px"))


def erase_lenses(connection: sqlite3.Connection, camera_name: str) -> int:
    """Delete a camera's lens profiles; return how many there were."""
    return connection.execute("DELETE FROM lens WHERE camera_name = ?", (camera_name,)).rowcount


def levels(connection: sqlite3.Connection) -> list[CameraLevel]:
    """Return the levels of all cameras, the newest last."""
    return [
        _checked(CameraLevel, data | {"fixed": bool(data["fixed"])}, check_level)
        for data in _rows(connection, _LEVEL, "FROM camera_level ORDER BY number")
    ]


def write_level(connection: sqlite3.Connection, level: CameraLevel) -> None:
    check_level(level)
    _put(connection, "camera_level", to_data(level), ("camera_name",))


def corrections(connection: sqlite3.Connection) -> list[StoredCorrection]:
    """Return the corrections of all cameras, switched on or off, the newest last."""
    columns = ("camera_name", "movement", "switched_on", *_CORRECTION)
    return [
        _checked(
            StoredCorrection,
            {
                "camera_name": data["camera_name"],
                "movement": data["movement"],
                "correction": {name: data[name] for name in _CORRECTION},
                "switched_on": bool(data["switched_on"]),
            },
            check_stored_correction,
        )
        for data in _rows(connection, columns, "FROM correction ORDER BY number")
    ]


def write_correction(connection: sqlite3.Connection, stored: StoredCorrection) -> None:
    check_stored_correction(stored)
    data = to_data(stored)
    values = data.pop("correction") | data
    _put(connection, "correction", values, ("camera_name", "movement"))


def studies(connection: sqlite3.Connection) -> list[StoredStudy]:
    """Return the agreement studies of all cameras, the newest last."""
    columns = ("camera_name", "movement", *_STUDY)
    return [
        _checked(
            StoredStudy,
            {
                "camera_name": data["camera_name"],
                "movement": data["movement"],
                "error": {name: data[name] for name in _STUDY},
            },
            check_stored_study,
        )
        for data in _rows(connection, columns, "FROM agreement_study ORDER BY number")
    ]


def write_study(connection: sqlite3.Connection, stored: StoredStudy) -> None:
    check_stored_study(stored)
    data = to_data(stored)
    values = data.pop("error") | data
    _put(connection, "agreement_study", values, ("camera_name", "movement"))


def body_of(connection: sqlite3.Connection, person_id: str) -> BodyRecord | None:
    """Return what is kept of a person's body, or None."""
    rows = _rows(
        connection,
        (*_LENGTHS, *_LENGTHS_ORIGIN),
        "FROM body JOIN person ON person.number = body.person WHERE person.id = ?",
        (person_id,),
    )
    for data in rows:
        record = {
            "person_id": person_id,
            "body": {name: data[name] for name in _LENGTHS},
            **{name: data[name] for name in _LENGTHS_ORIGIN},
        }
        return _checked(BodyRecord, record, check_body)
    return None


def write_body(connection: sqlite3.Connection, record: BodyRecord) -> None:
    check_body(record)
    data = to_data(record)
    values = data.pop("body") | {name: data[name] for name in _LENGTHS_ORIGIN}
    values["person"] = person_number(connection, record.person_id)
    _put(connection, "body", values, ("person",))


def placements_of(connection: sqlite3.Connection, person_id: str) -> list[Placement]:
    """Return where a person stood, the newest last."""
    rows = _rows(
        connection,
        _PLACEMENT,
        "FROM placement JOIN person ON person.number = placement.person WHERE person.id = ? "
        "ORDER BY placement.number",
        (person_id,),
    )
    return [_checked(Placement, data | {"person_id": person_id}, check_placement) for data in rows]


def write_placement(connection: sqlite3.Connection, placement: Placement) -> None:
    check_placement(placement)
    values = to_data(placement)
    del values["person_id"]
    values["person"] = person_number(connection, placement.person_id)
    _put(connection, "placement", values, _PLACEMENT_KEY)


def erase_placements(connection: sqlite3.Connection, person_id: str) -> int:
    """Delete a person's places; return how many there were."""
    return connection.execute(
        "DELETE FROM placement WHERE person = (SELECT number FROM person WHERE id = ?)",
        (person_id,),
    ).rowcount


def _rows(
    connection: sqlite3.Connection,
    columns: Sequence[str],
    source: str,
    parameters: tuple[Any, ...] = (),
) -> list[dict[str, Any]]:
    rows = connection.execute(f"SELECT {', '.join(columns)} {source}", parameters)
    return [dict(zip(columns, row, strict=True)) for row in rows]


def _checked(kind: type[Record], data: dict[str, Any], check: Callable[[Record], None]) -> Record:
    record = from_data(kind, data)
    check(record)
    return record


def _put(
    connection: sqlite3.Connection, table: str, values: dict[str, Any], key: tuple[str, ...]
) -> None:
    """Insert a row as the newest, in place of the one with the same key; NULL equals NULL."""
    same = " AND ".join(f"{name} IS :{name}" for name in key)
    connection.execute(f"DELETE FROM {table} WHERE {same}", values)
    names = ", ".join(values)
    places = ", ".join(f":{name}" for name in values)
    connection.execute(f"INSERT INTO {table} ({names}) VALUES ({places})", values)
