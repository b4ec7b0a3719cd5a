"""A shelf of things that calibration found out: a small JSON file of ours in the data folder.

Written whole or not at all, closed to others, versioned, bounded, and read as if somebody
hostile had written it. What lies on a shelf is said by its users, such as
:mod:`calibration.repository.lenses`.
"""

import json
import os
from collections.abc import Callable, Hashable
from pathlib import Path
from typing import Any, Generic, TypeVar

from measure.errors import DataError, InputError, MachineError
from measure.system.clock import new_id
from measure.system.json_codec import from_data, to_data
from measure.system.paths import data_folder, make_private

VERSION = 1
#: A full shelf needs a tenth of this. Ours.
LARGEST_FILE_BYTES = 2_000_000

T = TypeVar("T")


class JsonRepository(Generic[T]):
    """Things of one kind, each under its own key; the one put there last is the newest.

    Parameters
    ----------
    name
        Of the file, without its ending, and of what it holds.
    kind
        A dataclass of plain values.
    key
        What tells two things apart.
    check
        Raises InputError for a value that makes no sense.
    most
        Things kept; beyond it the oldest goes.
    """

    def __init__(
        self,
        name: str,
        kind: type[T],
        *,
        key: Callable[[T], Hashable],
        check: Callable[[T], None],
        most: int = 500,
    ) -> None:
        self._name = name
        self._kind = kind
        self._key = key
        self._check = check
        self._most = most

    @property
    def path(self) -> Path:
        return data_folder() / f"{self._name}.json"

    def all(self) -> tuple[T, ...]:
        """Return everything on the shelf, the oldest first; nothing where there is no file.

        Raises
        ------
        DataError
            When the file is not one of ours or is damaged; it is left as it is.
        MachineError
            When it cannot be read.
        """
        path = self.path
        try:
            if not path.exists():
                return ()
            if not path.is_file():
                raise self._unusable("it is no file")
            with path.open("rb") as file:
                content = file.read(LARGEST_FILE_BYTES + 1)
        except OSError as error:
            raise MachineError(
                f"{path} cannot be read ({error.strerror or error}). Check that you may open it."
            ) from error
        if len(content) > LARGEST_FILE_BYTES:
            raise self._unusable("it is far too large")
        try:
            data = json.loads(content)
        except (ValueError, RecursionError):
            raise self._unusable("it is cut off or damaged") from None
        return self._items(data)

    def get(self, key: Hashable) -> T | None:
        """Return the thing with that key, or None."""
        return next((each for each in self.all() if self._key(each) == key), None)

    def put(self, thing: T) -> None:
        """Keep a thing in place of any with the same key.

        Raises
        ------
        InputError
            When the value makes no sense.
        DataError, MachineError
            When the file there cannot be used or the new one not be written; the file is then
            as it was.
        """
        self._check(thing)
        others = [each for each in self.all() if self._key(each) != self._key(thing)]
        self._write([*others, thing][-self._most :])

    def remove(self, chosen: Callable[[T], bool]) -> int:
        """Take the chosen things off the shelf; return how many there were."""
        before = self.all()
        left = [each for each in before if not chosen(each)]
        if len(left) < len(before):
            self._write(left)
        return len(before) - len(left)

    def _items(self, data: Any) -> tuple[T, ...]:
        if not isinstance(data, dict) or data.get("what") != self._name:
            raise self._unusable("it is no file of this kind")
        version, items = data.get("version"), data.get("items")
        if not isinstance(version, int) or version < 1 or not isinstance(items, list):
            raise self._unusable("it is no file of this kind")
        if version > VERSION:
            raise DataError(
                f"{self.path} was written by a newer Thawline. Update this one to use it."
            )
        if len(items) > self._most:
            raise self._unusable(f"it holds more than {self._most} entries")
        try:
            found = tuple(
                from_data(self._kind, each, f"items[{place}]") for place, each in enumerate(items)
            )
            for each in found:
                self._check(each)
        except InputError as error:
            raise self._unusable(str(error).rstrip(".")) from None
        return found

    def _write(self, things: list[T]) -> None:
        path = self.path
        content = {"what": self._name, "version": VERSION, "items": to_data(things)}
        part = path.with_name(f".{new_id()}.part")
        try:
            make_private(path.parent)
            flags = os.O_CREAT | os.O_EXCL | os.O_WRONLY
            with os.fdopen(os.open(part, flags, 0o600), "w", encoding="utf-8") as file:
                json.dump(content, file, ensure_ascii=False, indent=1)
                file.flush()
                os.fsync(file.fileno())
            part.replace(path)
        except OSError as error:
            raise MachineError(
                f"{path} could not be written ({error.strerror or error}). What was there before "
                "is unchanged. Check the disk's room and rights."
            ) from error
        finally:
            _remove_quietly(part)

    def _unusable(self, why: str) -> DataError:
        return DataError(
            f"{self.path} cannot be used: {why}. It was left as it is. Rename or delete it, "
            "then calibrate again."
        )


def _remove_quietly(part: Path) -> None:
    try:
        part.unlink(missing_ok=True)
    except OSError:  # the folder itself is gone or closed: nothing is left to remove
        return
