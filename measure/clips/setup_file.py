"""Set-up file: what calibration knows, for reading clips here or on another computer."""

import json
from pathlib import Path
from typing import Any

from measure.domain.acquisition import KnownSetup, check_known
from measure.errors import DataError, InputError
from measure.system.atomic_files import write_json
from measure.system.json_codec import from_data, to_data

WHAT, VERSION = "set-up", 1
#: Largest file, bytes; a full set-up takes about two thousand. [technical]
LARGEST_FILE_BYTES = 100_000


def write_setup(path: Path, setup: KnownSetup) -> None:
    """Write a set-up, whole or not at all.

    Raises
    ------
    DataError
        When the file cannot be written.
    """
    content: dict[str, Any] = to_data(setup)
    write_json(path, {"what": WHAT, "version": VERSION, **content})


def read_setup(path: Path) -> KnownSetup:
    """Return the set-up in a file.

    Raises
    ------
    InputError
        When there is no such file or it cannot be read.
    DataError
        When it is no set-up, is damaged, or holds what cannot be.
    """
    try:
        if not path.is_file():
            raise InputError(f"There is no file {path}. Check the name of the set-up file.")
        with path.open("rb") as file:
            content = file.read(LARGEST_FILE_BYTES + 1)
    except OSError as error:
        raise InputError(f"{path} cannot be read: {error.strerror or error}.") from error
    try:
        return _known(content)
    except DataError as error:
        raise DataError(
            f"{path} cannot be used as a set-up file: {str(error).rstrip('.')}."
        ) from None


def _known(content: bytes) -> KnownSetup:
    if len(content) > LARGEST_FILE_BYTES:
        raise DataError("it is far too large")
    try:
        data = json.loads(content.decode("utf-8-sig"))
    except (ValueError, RecursionError):
        raise DataError("it is not JSON, or is incomplete") from None
    if not isinstance(data, dict) or data.pop("what", None) != WHAT:
        raise DataError('its first field is to be "what": "set-up"')
    version = data.pop("version", None)
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        raise DataError("its version is missing")
    if version > VERSION:
        raise DataError("it was written by a newer Thawline. Update this one to use it")
    setup = from_data(KnownSetup, data, "")
    try:
        check_known(setup)
    except InputError as error:
        raise DataError(str(error)) from None
    return setup
