"""Card of a session's results: both sides under one heading, their difference, the time before."""

from collections.abc import Mapping

from PySide6.QtWidgets import QVBoxLayout, QWidget

from gui.drawing.reading_on_body import Reading
from gui.style.appearance import Appearance
from gui.text.result_wording import difference_words, last_time_words, value_and_range
from gui.text.wording import measurement_words, movement_name, side_title, tr
from gui.widgets.layouts import card, clear_layout, column, row, separator, widget_with
from gui.widgets.reading_figure import ReadingFigure
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.records import MeasurementRecord
from measure.domain.session_comparison import side_difference

#: Width and height of the reading drawn on a body, pixels. [technical]
_FIGURE_PX = (260, 264)
#: From this text size on the numbers take the room of the drawing. [technical]
_WORDS_ONLY_PERCENT = 150

Task = tuple[Movement, Side]


class ResultCard(QWidget):
    """One block a movement; a side that was not measured today shows the time before."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._mirrored = False
        #: Today's results in words, as they stand on the card.
        self.readings: list[str] = []
        self.differences: list[str] = []
        self._blocks = QVBoxLayout()
        self._blocks.setContentsMargins(0, 0, 0, 0)
        self._blocks.setSpacing(appearance.gap(2))
        column(card(self._blocks), on=self)

    def set_mirrored(self, mirrored: bool) -> None:
        """Let drawings face as those of the live page, from the next results on."""
        self._mirrored = mirrored

    def show_results(
        self,
        results: Mapping[Task, Measurement],
        before: Mapping[Task, MeasurementRecord],
        details: Mapping[Task, tuple[str, ...]],
    ) -> None:
        """Show what a session gave.

        Parameters
        ----------
        before
            The last reading of each movement and side before this session.
        details
            What else is said about a result: first the pain, which may be nothing, then notes and
            where the person stood.
        """
        clear_layout(self._blocks)
        self.readings, self.differences = [], []
        movements = list(dict.fromkeys(movement for movement, _ in results))
        for place, movement in enumerate(movements):
            if place:
                self._blocks.addWidget(separator())
            sides = {side: results.get((movement, side)) for side in Side}
            self._blocks.addWidget(self._block(movement, sides, before, details))
        if not any((movement, side) in before for movement in movements for side in Side):
            first = tr("These are the first results, so there is nothing to compare them with yet.")
            self._blocks.addWidget(label(first, "quiet"))

    def _block(
        self,
        movement: Movement,
        sides: Mapping[Side, Measurement | None],
        before: Mapping[Task, MeasurementRecord],
        details: Mapping[Task, tuple[str, ...]],
    ) -> QWidget:
        """Return one movement: heading, difference, and the sides that were measured."""
        gap = self._appearance.gap
        left, right = sides[Side.LEFT], sides[Side.RIGHT]
        words = ""
        if left is not None and right is not None:
            words = difference_words(movement, side_difference(left, right))
        self.differences.append(words)
        lines: list[QWidget] = [label(movement_name(movement), "title")]
        if words:
            lines.append(label(words[:1].upper() + words[1:], "strong"))
        cells: list[tuple[QWidget, int]] = []
        others = []
        for side, measurement in sides.items():
            task = (movement, side)
            if measurement is None:
                others.append(label(_not_today(side, before.get(task)), "quiet"))
                continue
            cell = self._cell(task, measurement, before.get(task), details.get(task, ()))
            cells.append((cell, 1))
        shown = row(*cells, spacing=gap(4))
        return widget_with(column(*lines, shown, *others, spacing=gap(1)))

    def _cell(
        self,
        task: Task,
        measurement: Measurement,
        before: MeasurementRecord | None,
        details: tuple[str, ...],
    ) -> QWidget:
        """Return one side: the body, the number, its range, and what else is said."""
        movement, side = task
        self.readings.append(measurement_words(measurement))
        value, interval = value_and_range(measurement)
        degrees = measurement.value is not None and MOVEMENTS[movement].unit is Unit.DEGREES
        words = [label(side_title(side), "quiet"), label(value, "display" if degrees else "title")]
        words += [label(interval, "strong")] if interval else []
        pain, *notes = details or ("",)
        words += [label(pain)] if pain else []
        words += [label(last_time_words(before), "quiet")] if before is not None else []
        below = [label(line, "quiet") for line in notes]
        if self._appearance.percent >= _WORDS_ONLY_PERCENT:
            return widget_with(column(*words, *below, 1, spacing=0))
        figure = ReadingFigure(self._appearance)
        figure.setFixedSize(*_FIGURE_PX)
        figure.show_reading(
            Reading(
                movement=movement,
                side=side,
                value=measurement.value,
                low=measurement.low,
                high=measurement.high,
            ),
            mirrored=self._mirrored,
        )
        said = column(1, *words, 1, spacing=0)
        shown = row(column(figure, 1), (said, 1), spacing=self._appearance.gap(2))
        return widget_with(column(shown, *below, 1, spacing=0))


def _not_today(side: Side, before: MeasurementRecord | None) -> str:
    """Return that a side was not measured, and what it read the last time."""
    parts = [tr("{side}: not measured today.").format(side=side_title(side))]
    parts += [last_time_words(before)] if before is not None else []
    return " ".join(parts)
