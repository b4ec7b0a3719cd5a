"""What every part of the store shares: one connection, and errors in plain words."""

import contextlib
from collections.abc import Iterator
from pathlib import Path
from types import TracebackType
from typing import Self

from measure.errors import InputError, in_short
from measure.storage.connection import Opened, transaction
from measure.storage.errors import damaged, in_plain_words, vanished
from measure.storage.location import file_identity
from measure.system.clock import Clock, Timestamp


class OpenStore:
    """An open file with a connection; it belongs to the thread that opened it.

    Attributes
    ----------
    path
        Its file.
    warnings
        What to tell the person about the place where it is kept, in plain words.
    """

    def __init__(self, opened: Opened, path: Path, clock: Clock) -> None:
        self.path = path
        self.warnings = opened.warnings
        self._connection = opened.connection
        self._unusable = opened.unusable
        self._file = file_identity(path)
        self._clock = clock
        self._began_s: dict[str, float] = {}

    def close(self) -> None:
        """Close the store; closing twice does no harm."""
        with in_plain_words(self.path):
            self._connection.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def now(self) -> Timestamp:
        """Return the present moment by the store's clock."""
        return self._clock.now()

    @contextlib.contextmanager
    def _reading(self, *files: str) -> Iterator[None]:
        """Read; raise the error of a calibration file among `files` that cannot be used."""
        self._require_taken_in(files)
        try:
            with in_plain_words(self.path):
                yield
        except (ValueError, TypeError, InputError) as error:
            # An unknown word of an enumeration or an impossible number: this program writes none.
            raise damaged(self.path, in_short(error)) from error

    @contextlib.contextmanager
    def _writing(self, *files: str) -> Iterator[None]:
        """Write in one transaction; `files` as for reading."""
        self._require_taken_in(files)
        with in_plain_words(self.path), transaction(self._connection):
            yield
        # A file that was deleted or moved while it is open takes everything and keeps nothing.
        if file_identity(self.path) != self._file:
            raise vanished(self.path)

    def _require_taken_in(self, files: tuple[str, ...]) -> None:
        for name in files:
            if name in self._unusable:
                raise self._unusable[name]
