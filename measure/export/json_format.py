"""The JSON of one person's whole history: made here, read by measure.export.history_json.

The format is described field by field in measure/docs/json-export.md.
"""

import json
from typing import Any

from measure.domain.history import History
from measure.system.clock import Timestamp
from measure.system.json_codec import to_data

FORMAT = "thawline-history"
#: Rises when a reader of the former version would misread a file.
SCHEMA = 1

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

    Ten times faster than indenting everything, and still good to look through.
    """
    members = []
    for name, value in content.items():
        if isinstance(value, list) and value:
            inner = ",\n".join(_compact(each) for each in value)
            members.append(f"{_compact(name)}: [\n{inner}\n]")
        else:
            members.append(f"{_compact(name)}: {_compact(value)}")
    return ("{\n" + ",\n".join(members) + "\n}\n").encode("utf-8")


def _compact(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, allow_nan=False)
