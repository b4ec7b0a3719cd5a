"""The JSON of one person's whole history: made here, read by measure.import_json.

The format is described field by field in docs/json-export.md.
"""

import json

from measure.history import History
from measure.moments import Moment
from measure.plain_data import to_plain

FORMAT = "thawline-history"
#: Rises when a reader of the former version would misread a file.
SCHEMA = 1

NOTICE = (
    "Estimates of one camera, not a diagnosis and not from a medical device. "
    "Every value belongs with its interval and its reasons."
)


def history_json(history: History, written: Moment, software: str) -> bytes:
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
        "written": to_plain(written),
        "software": software,
        "notice": NOTICE,
    }
    text = json.dumps(head | to_plain(history), ensure_ascii=False, allow_nan=False, indent=1)
    return (text + "\n").encode("utf-8")
