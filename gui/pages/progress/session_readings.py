"""Readings of one session as a table: a line for each movement, a column for each arm."""

import re
from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QRectF, QSize, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QGridLayout,
    QStyle,
    QStyleOptionButton,
    QWidget,
)

from gui.drawing.pair_words import bold, first_width, paint_pair, pair_width, parted
from gui.style.appearance import Appearance
from gui.text.wording import measurement_words, side_title, task_title, tr, trial_words
from gui.widgets.buttons import ShortcutButton
from gui.widgets.layouts import column, widget_with
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Status, Trial
from measure.domain.movements import Movement
from measure.domain.records import MeasurementRecord
from measure.progress.sentences import short_name
from measure.progress.wording import number_words

#: How far the words of a cell lie from its left edge, and space between two cells, pixels.
#: [technical]
_INDENT_PX, _BETWEEN_PX = 6, 4
#: Text sizes between which the name of a movement may need two lines, for the days stand beside,
#: per cent. [technical]
_TWO_LINES_PERCENTS = (110, 130)
#: Shares of the width for which trial it is, and for what was read. [technical]
_TRIAL_SHARES = (9, 4)


class ReadingButton(ShortcutButton):
    """A reading to press: its value, in bold once it is chosen, and its range.

    Values and words begin at one edge.
    """

    def __init__(self, appearance: Appearance, words: str) -> None:
        # A button asks for its size while it is made.
        self._appearance = appearance
        super().__init__(words, "")
        self.setCheckable(True)
        self.setProperty("role", "cell")

    def initStyleOption(self, option: QStyleOptionButton) -> None:
        """Leave the words out: they are painted here, in two weights."""
        super().initStyleOption(option)
        option.text = ""

    def sizeHint(self) -> QSize:
        self.ensurePolished()
        words, hint = self.text(), super().sizeHint()
        fonts = bold(self.font()), self.font()
        needed = pair_width(parted(words), fonts, first_width([parted(words)], fonts[0]))
        more = round(needed - self.fontMetrics().horizontalAdvance(words)) + 1
        return QSize(hint.width() + more, hint.height())

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        option = QStyleOptionButton()
        self.initStyleOption(option)
        inside = self.style().subElementRect(QStyle.SubElement.SE_PushButtonContents, option, self)
        font = bold(self.font()) if self.isChecked() else self.font()
        painter = QPainter(self)
        painter.setPen(self._appearance.colour("ink"))
        paint_pair(
            painter,
            QRectF(inside),
            parted(self.text()),
            (font, self.font()),
            first_width([parted(self.text())], font),
        )
        painter.end()


class SessionReadings(QWidget):
    """Every reading of a session at once, of which one is chosen: the first to begin with."""

    #: A MeasurementRecord.
    picked = Signal(object)

    def __init__(self, appearance: Appearance, records: Sequence[MeasurementRecord]) -> None:
        super().__init__()
        self._group = QButtonGroup(self)
        self._appearance = appearance
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setVerticalSpacing(0)
        self._grid.setHorizontalSpacing(_BETWEEN_PX)
        self._beneath_head = (
            appearance.gap(0.5) if appearance.percent <= _TWO_LINES_PERCENTS[1] else 0
        )
        self.records = in_order(records)
        self._buttons = [self._button(record) for record in self.records]
        self._fill_columns()

    def choose(self, record: MeasurementRecord) -> None:
        """Show a reading as chosen, without a signal."""
        self._buttons[self.records.index(record)].setChecked(True)

    def _button(self, record: MeasurementRecord) -> ReadingButton:
        measurement = record.measurement
        made = ReadingButton(self._appearance, reading_words(measurement))
        name = task_title(measurement.movement, measurement.side)
        made.setAccessibleName(
            tr("{task}: {reading}").format(task=name, reading=reading_words(measurement))
        )
        made.clicked.connect(partial(self._pick, record))
        self._group.addButton(made)
        return made

    def _pick(self, record: MeasurementRecord, _checked: bool = False) -> None:
        self.picked.emit(record)

    def _fill_columns(self) -> None:
        percent, (low, high) = self._appearance.percent, _TWO_LINES_PERCENTS
        tasks = [(item.measurement.movement, item.measurement.side) for item in self.records]
        sides = [side for side in Side if any(its is side for _, its in tasks)]
        for place, side in enumerate(sides, start=1):
            head = label(side_title(side), "quiet")
            head.setContentsMargins(_INDENT_PX, 0, 0, self._beneath_head)
            self._grid.addWidget(head, 0, place)
        for number, movement in enumerate(dict.fromkeys(movement for movement, _ in tasks), 1):
            name = label(short_name(movement, tr))
            # Rows of one line each, where there is the width for it.
            name.setWordWrap(low < percent <= high)
            self._grid.addWidget(name, number, 0)
            for place, side in enumerate(sides, start=1):
                cell = [
                    made
                    for made, task in zip(self._buttons, tasks, strict=True)
                    if task == (movement, side)
                ]
                self._grid.addLayout(column(*cell, spacing=0), number, place)
        for place in range(len(sides) + 1):
            self._grid.setColumnStretch(place, 1)


def trials_read(measurement: Measurement, appearance: Appearance, *, beside: bool) -> QWidget:
    """Return a line for each trial: from which seconds it was read, and what was read.

    Parameters
    ----------
    beside
        Whether what was read stands in a column of its own; else it follows in the line.
    """
    grid = QGridLayout()
    grid.setContentsMargins(0, 0, 0, 0)
    grid.setHorizontalSpacing(appearance.gap(2))
    grid.setVerticalSpacing(appearance.gap(1))
    if beside:
        for place, share in enumerate(_TRIAL_SHARES):
            grid.setColumnStretch(place, share)
    for number, trial in enumerate(measurement.trials, start=1):
        title = trial_title(number, trial)
        read = whole_reading(trial_words(trial, measurement.unit))
        if beside:
            grid.addWidget(label(title), number, 0)
            grid.addWidget(label(read), number, 1)
        else:
            grid.addWidget(label(f"{title}: {read}"), number, 0)
    return widget_with(grid)


def in_order(records: Sequence[MeasurementRecord]) -> list[MeasurementRecord]:
    """Return measurements by movement, the left side first."""
    order = list(Movement)
    return sorted(
        records,
        key=lambda record: (order.index(record.measurement.movement), record.measurement.side),
    )


def reading_words(measurement: Measurement) -> str:
    """Return a reading with its range, of the reach the levels alone, or that there is none."""
    if measurement.status is not Status.READING:
        return tr("no result")
    if measurement.level is not None:
        level = measurement.level
        return tr("{low} to {high}").format(low=tr(level.low), high=tr(level.high))
    return measurement_words(measurement)


def whole_reading(words: str) -> str:
    """Return words in which no line breaks inside a value with its brackets."""
    return re.sub(r"\S+ \([^()]*\)", lambda bracket: bracket[0].replace(" ", "\u00a0"), words)


def trial_title(number: int, trial: Trial) -> str:
    """Return which seconds of the camera's pictures, or of the clip, a trial was read from."""
    if trial.hold_start_s is None or trial.hold_end_s is None:
        words = tr("Trial {number}, from {start} to {end} s, no hold")
        start_s, end_s = trial.start_s, trial.end_s
    else:
        words = tr("Trial {number}, held from {start} to {end} s")
        start_s, end_s = trial.hold_start_s, trial.hold_end_s
    return words.format(
        number=number, start=number_words(start_s, 1, tr), end=number_words(end_s, 1, tr)
    )
