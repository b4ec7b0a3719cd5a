"""Calibration files of earlier versions: taken into the store once, then set aside.

Before version 3 of the store, calibration kept five small JSON files beside it. A file that
cannot be read stays where it is, and its kind cannot be used until the file is gone; the other
files are taken in all the same. The files are not trusted: their size, every field and every
value are checked.
"""

import json
import os
import sqlite3
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from measure.domain.acquisition import LensProfile, check_profile
from measure.domain.calibration_records import (
    BodyRecord,
    CameraLevel,
    Placement,
    StoredCorrection,
    check_body,
    check_level,
    check_placement,
    check_stored_correction,
)
from measure.errors import DataError, InputError, MachineError, ThawlineError
from measure.message import TranslatableMessage, system_reason
from measure.storage import calibration_rows
from measure.system.clock import new_id
from measure.system.json_codec import from_data

#: Version of the files' format. [technical]
FILE_VERSION = 1
#: Largest file that is read, bytes; a full one needs a tenth of it. [technical]
LARGEST_FILE_BYTES = 2_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class CalibrationFile:
    """One kind of file.

    Attributes
    ----------
    name
        Of the file, without its ending, and of what it holds.
    kind, check
        Its records, and what raises InputError for an impossible one.
    most
        The most records that it can hold.
    write
        Writes a record into the store.
    """

    name: str
    kind: type[Any]
    check: Callable[[Any], None]
    most: int
    write: Callable[[sqlite3.Connection, Any], None]

    def path(self, folder: Path) -> Path:
        """Return where the file lies in a data folder."""
        return folder / f"{self.name}.json"


LENSES, LEVELS, BODIES = "lens-profiles", "levels", "bodies"
PLACEMENTS, CORRECTIONS = "placements", "corrections"

FILES = (
    CalibrationFile(
        name=LENSES,
        kind=LensProfile,
        check=check_profile,
        most=100,
        write=calibration_rows.write_lens,
    ),
    CalibrationFile(
        name=LEVELS,
        kind=CameraLevel,
        check=check_level,
        most=100,
        write=calibration_rows.write_level,
    ),
    CalibrationFile(
        name=BODIES,
        kind=BodyRecord,
        check=check_body,
        most=2000,
        write=calibration_rows.write_body,
    ),
    CalibrationFile(
        name=PLACEMENTS,
        kind=Placement,
        check=check_placement,
        most=2000,
        write=calibration_rows.write_placement,
    ),
    CalibrationFile(
        name=CORRECTIONS,
        kind=StoredCorrection,
        check=check_stored_correction,
        most=200,
        write=calibration_rows.write_correction,
    ),
)


def files_in(folder: Path) -> list[CalibrationFile]:
    """Return the kinds of which a file lies in a data folder."""
    return [file for file in FILES if file.path(folder).exists()]


def take_in(connection: sqlite3.Connection, folder: Path) -> dict[str, ThawlineError]:
    """Write the records of the files into the store, inside the caller's transaction.

    Records of people who are not in the store are passed over; the file that is set aside still
    holds them.

    Returns
    -------
    dict
        Why a file cannot be used, by its name.
    """
    people = {identifier for (identifier,) in connection.execute("SELECT id FROM person")}
    unusable: dict[str, ThawlineError] = {}
    for file in files_in(folder):
        try:
            records = read_file(file, file.path(folder))
        except ThawlineError as error:
            unusable[file.name] = error
            continue
        for record in records:
            if getattr(record, "person_id", None) in (None, *people):
                file.write(connection, record)
    return unusable


def set_aside(folder: Path, aside: Path, unusable: dict[str, ThawlineError]) -> None:
    """Move the files that were taken in to the folder `aside`, under names that are free.

    Raises
    ------
    OSError
        When the folder or a file refuses.
    """
    for file in files_in(folder):
        if file.name in unusable:
            continue
        aside.mkdir(mode=0o700, parents=True, exist_ok=True)
        target = aside / f"{file.name}.json"
        if target.exists():
            target = aside / f"{file.name}-{new_id()[:6]}.json"
        try:
            os.replace(file.path(folder), target)
        except FileNotFoundError:
            continue  # another program set it aside meanwhile


def read_file(file: CalibrationFile, path: Path) -> tuple[Any, ...]:
    """Return the records of a file, the oldest first.

    Raises
    ------
    DataError
        When it is not one of these files or is damaged; it is left as it is.
    MachineError
        When it cannot be read.
    """
    try:
        if not path.is_file():
            raise _unusable(path, TranslatableMessage("it is not a file"))
        with path.open("rb") as opened:
            content = opened.read(LARGEST_FILE_BYTES + 1)
    except OSError as error:
        raise MachineError(
            TranslatableMessage(
                "{path} cannot be read ({reason}). Check that you may open it.",
                {"path": str(path), "reason": system_reason(error)},
            )
        ) from error
    if len(content) > LARGEST_FILE_BYTES:
        raise _unusable(path, TranslatableMessage("it is far too large"))
    try:
        data = json.loads(content)
    except (ValueError, RecursionError):
        raise _unusable(path, TranslatableMessage("it is incomplete or damaged")) from None
    return _records(file, path, data)


def _records(file: CalibrationFile, path: Path, data: Any) -> tuple[Any, ...]:
    if not isinstance(data, dict) or data.get("what") != file.name:
        raise _unusable(path, TranslatableMessage("it is not a file of this kind"))
    version, items = data.get("version"), data.get("items")
    if not isinstance(version, int) or version < 1 or not isinstance(items, list):
        raise _unusable(path, TranslatableMessage("it is not a file of this kind"))
    if version > FILE_VERSION:
        raise DataError(
            TranslatableMessage(
                "{path} was written by a newer Thawline. Update this one to use it.",
                {"path": str(path)},
            )
        )
    if len(items) > file.most:
        raise _unusable(
            path,
            TranslatableMessage("it contains more than {most} entries", {"most": str(file.most)}),
        )
    try:
        records = tuple(
            from_data(file.kind, item, f"items[{place}]") for place, item in enumerate(items)
        )
        for record in records:
            file.check(record)
    except InputError as error:
        raise DataError(str(_unusable(path, str(error).rstrip(".")))) from None
    return records


def _unusable(path: Path, why: TranslatableMessage | str) -> DataError:
    return DataError(
        TranslatableMessage(
            "{path} cannot be used: {reason}. It was left as it is. Rename or delete it, "
            "then calibrate again.",
            {"path": str(path), "reason": why},
        )
    )
