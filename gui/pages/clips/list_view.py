"""What a long list shows and in which order: all clips or those of one state, by a column."""

from collections.abc import Callable
from enum import Enum, auto
from typing import Any

from gui.pages.clips.clip_rows import ClipRow, Fact
from gui.text.wording import tr
from measure.domain.measurements import Status

#: Lists of fewer clips are seen at a glance: they need neither order nor choice. [project]
LEAST_CLIPS = 9


class ShownClips(Enum):
    """Which clips of the list are shown."""

    ALL = auto()
    OPEN = auto()
    WAITING = auto()
    NOT_READ = auto()
    NOT_MEASURED = auto()
    MEASURED = auto()

    @property
    def words(self) -> str:
        return {
            ShownClips.ALL: tr("All clips"),
            ShownClips.OPEN: tr("Movement or side missing"),
            ShownClips.WAITING: tr("Waiting"),
            ShownClips.NOT_READ: tr("Not read"),
            ShownClips.NOT_MEASURED: tr("Not measured"),
            ShownClips.MEASURED: tr("Measured"),
        }[self]

    def holds(self, row: ClipRow) -> bool:
        """Return whether a row is shown."""
        return self is ShownClips.ALL or self is _state_of(row)


def _state_of(row: ClipRow) -> ShownClips:
    if row.error is not None:
        return ShownClips.NOT_READ
    if row.measurement is not None:
        counts = row.counted is not None and row.counted.status is Status.READING
        return ShownClips.MEASURED if counts else ShownClips.NOT_MEASURED
    return ShownClips.OPEN if row.entry is None else ShownClips.WAITING


class Order(Enum):
    """By what the list is sorted."""

    URGENCY = auto()
    ADDED = auto()
    NAME = auto()
    MOVEMENT = auto()
    RESULT = auto()
    NOTES = auto()

    @property
    def words(self) -> str:
        return {
            Order.URGENCY: tr("What needs you first"),
            Order.ADDED: tr("As opened"),
            Order.NAME: tr("By name"),
            Order.MOVEMENT: tr("By movement"),
            Order.RESULT: tr("By result"),
            Order.NOTES: tr("By notes"),
        }[self]

    @property
    def key(self) -> Callable[[ClipRow], Any]:
        """What rows are compared by."""
        return {
            Order.URGENCY: lambda row: row.urgency,
            Order.ADDED: lambda row: row.number,
            Order.NAME: lambda row: row.clip.name.casefold(),
            Order.MOVEMENT: lambda row: row.task,
            Order.RESULT: _result_of,
            Order.NOTES: lambda row: row.text(Fact.REASONS),
        }[self]


def _result_of(row: ClipRow) -> tuple[bool, float]:
    """Return what orders results: readings from the smallest, then those without one."""
    value = None if row.counted is None else row.counted.value
    return (value is None, 0.0 if value is None else value)
