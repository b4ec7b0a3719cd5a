"""Readings of one session beside each other: a line for each movement, a column for each arm."""

from collections.abc import Sequence

from PySide6.QtWidgets import QGridLayout, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import measurement_words, side_title, task_title, tr
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Status
from measure.domain.movements import Movement
from measure.progress.sentences import short_name


class SessionReadings(QWidget):
    """Every reading of a session at once; trials and conditions stand elsewhere.

    Parameters
    ----------
    beside
        Whether both arms have room beside each other; else each reading has a line of its own.
    """

    def __init__(
        self, appearance: Appearance, measurements: Sequence[Measurement], *, beside: bool
    ) -> None:
        super().__init__()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(appearance.gap(2))
        self._grid.setVerticalSpacing(appearance.gap(1))
        order = list(Movement)
        measured = sorted(measurements, key=lambda item: (order.index(item.movement), item.side))
        if beside:
            self._fill_columns(measured)
        else:
            self._fill_lines(measured)

    def _fill_columns(self, measured: Sequence[Measurement]) -> None:
        sides = [side for side in Side if any(item.side is side for item in measured)]
        for column, side in enumerate(sides, start=1):
            self._grid.addWidget(label(side_title(side), "quiet"), 0, column)
        for row, movement in enumerate(dict.fromkeys(item.movement for item in measured), start=1):
            self._grid.addWidget(label(short_name(movement, tr)), row, 0)
            for column, side in enumerate(sides, start=1):
                words = [
                    reading_words(item)
                    for item in measured
                    if (item.movement, item.side) == (movement, side)
                ]
                self._grid.addWidget(label("\n".join(words), "strong"), row, column)

    def _fill_lines(self, measured: Sequence[Measurement]) -> None:
        for row, item in enumerate(measured):
            self._grid.addWidget(label(task_title(item.movement, item.side)), row, 0)
            reading = label(reading_words(item), "strong")
            reading.setWordWrap(False)
            self._grid.addWidget(reading, row, 1)
        self._grid.setColumnStretch(0, 1)


def reading_words(measurement: Measurement) -> str:
    """Return a reading with its range, of the reach the levels alone, or that there is none."""
    if measurement.status is not Status.READING:
        return tr("no result")
    if measurement.level is not None:
        level = measurement.level
        return tr("{low} to {high}").format(low=tr(level.low), high=tr(level.high))
    return measurement_words(measurement)
