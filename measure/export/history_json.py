"""A person's whole history as JSON: written for exports, read back without trusting the file.

The reader checks size, nesting, every field and every reference. The format is described field
by field in measure/docs/json-export.md.
"""

import json
from pathlib import Path
from typing import Any, NoReturn

from measure.domain.records import History
from measure.errors import DataError, InputError, quoting
from measure.export.history_schema import SCHEMA, upgraded
from measure.message import TranslatableMessage, system_reason
from measure.system.clock import Timestamp
from measure.system.json_codec import from_data, to_data

FORMAT = "thawline-history"
#: Largest file that is read, bytes; ten years of daily sessions with six measurements each need
#: less than half of it. [technical]
LARGEST_FILE_BYTES = 192 * 1024 * 1024
#: Most objects and lists, and most items in them, that the parser may have to make. [technical]
MOST_CONTAINERS, MOST_ITEMS = 3_000_000, 16_000_000

_HEAD = {"format": str, "schema": int, "written": Timestamp, "software": str, "notice": str}

NOTICE = (
    "Estimates of one camera, not a diagnosis and not from a medical device. "
    "Every value belongs with its interval and its reasons."
)


def history_json(history: History, written: Timestamp, software: str) -> bytes:
    """Return a history as UTF-8 JSON.

    Parameters
    ----------
    written
        The present moment.
    software
        Version of this program.
    """
    head = {
        "format": FORMAT,
        "schema": SCHEMA,
        "written": to_data(written),
        "software": software,
        "notice": NOTICE,
    }
    return json_by_line(head | to_data(history))


def json_by_line(content: dict[str, Any]) -> bytes:
    """Return an object as UTF-8 JSON, each member and each item of a list on a line of its own.

    Ten times faster than indenting everything, and still readable.
    """
    members = []
    for name, value in content.items():
        if isinstance(value, list) and value:
            inner = ",\n".join(_compact(item) for item in value)
            members.append(f"{_compact(name)}: [\n{inner}\n]")
        else:
            members.append(f"{_compact(name)}: {_compact(value)}")
    return ("{\n" + ",\n".join(members) + "\n}\n").encode("utf-8")


def _compact(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)


def read_history(path: Path) -> History:
    """Return the history in a file that `thawline export --format json` wrote.

    Raises
    ------
    InputError
        When there is no such file, or it cannot be read.
    DataError
        When it is no history, is damaged, or is too large to be one.
    """
    try:
        if not path.is_file():
            raise InputError(TranslatableMessage("There is no file {path}.", {"path": str(path)}))
        with path.open("rb") as file:
            larger = path.stat().st_size > LARGEST_FILE_BYTES
            data = b"" if larger else file.read(LARGEST_FILE_BYTES + 1)
    except OSError as error:
        raise InputError(
            TranslatableMessage(
                "{path} cannot be read: {reason}.",
                {"path": str(path), "reason": system_reason(error)},
            )
        ) from error
    try:
        if larger:
            raise _too_large()
        return history_from_json(data)
    except DataError as error:
        raise DataError(
            quoting(
                TranslatableMessage(
                    "{path} cannot be imported. {error} Nothing was changed. Choose a file that "
                    "`thawline export --format json` wrote.",
                    {"path": str(path), "error": error.message},
                ),
                error,
            )
        ) from None


def history_from_json(data: bytes) -> History:
    """Return the history in `data`, UTF-8 with or without a byte-order mark.

    Raises
    ------
    DataError
        Saying what is wrong and where.
    """
    _check_bounds(data)
    try:
        content = json.loads(data.decode("utf-8-sig"), parse_constant=_no_number)
    except UnicodeDecodeError:
        raise DataError(TranslatableMessage("It is not UTF-8 text.")) from None
    except RecursionError:
        raise DataError(TranslatableMessage("It is nested too deeply for a history.")) from None
    except DataError:
        raise
    except ValueError as error:
        raise DataError(
            TranslatableMessage(
                "It is not JSON, or is incomplete: {detail}.", {"detail": str(error)}
            )
        ) from None
    return from_data(History, _without_head(content))


def _without_head(content: Any) -> dict[str, Any]:
    """Check the file's head and return the rest."""
    if not isinstance(content, dict) or content.get("format") != FORMAT:
        raise DataError(
            TranslatableMessage(
                "It is JSON, but not a history. Name a file made with: thawline export "
                "PERSON --format json"
            )
        )
    schema = content.get("schema")
    if not isinstance(schema, int) or isinstance(schema, bool) or schema < 1:
        raise DataError(TranslatableMessage("It does not say which version of the format it has."))
    if schema > SCHEMA:
        raise DataError(
            TranslatableMessage(
                "It was written by a later version of Thawline (format {version}; this version "
                "reads up to {newest}). Update Thawline.",
                {"version": str(schema), "newest": str(SCHEMA)},
            )
        )
    for name, kind in _HEAD.items():
        if name not in content:
            raise DataError(
                TranslatableMessage("The field {name} is missing.", {"name": repr(name)})
            )
        if kind is Timestamp:
            from_data(Timestamp, content[name], name)
        elif not isinstance(content[name], kind):
            raise DataError(
                TranslatableMessage(
                    "The field {name} has unexpected contents.", {"name": repr(name)}
                )
            )
    rest = {name: value for name, value in content.items() if name not in _HEAD}
    return upgraded(rest, schema)


def _check_bounds(data: bytes) -> None:
    """Refuse what would need far more memory than any history, before it is parsed."""
    if len(data) > LARGEST_FILE_BYTES:
        raise _too_large()
    if data.count(b"{") + data.count(b"[") > MOST_CONTAINERS or data.count(b",") > MOST_ITEMS:
        raise DataError(TranslatableMessage("It contains more records than any history can."))


def _too_large() -> DataError:
    return DataError(
        TranslatableMessage(
            "It is larger than any history can be ({megabytes} MB).",
            {"megabytes": str(LARGEST_FILE_BYTES // 1024**2)},
        )
    )


def _no_number(word: str) -> NoReturn:
    raise DataError(
        TranslatableMessage("It contains {word}, which is not a number in JSON.", {"word": word})
    )
