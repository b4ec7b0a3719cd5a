"""Card of a session's results: both sides under one heading, their difference, the time before."""

from collections.abc import Mapping

from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from gui.drawing.reading_on_body import Reading
from gui.style.appearance import Appearance
from gui.text.result_wording import difference_words, last_time_words
from gui.text.wording import movement_name, notes_words, pain_sentence, side_title, tr
from gui.widgets.layouts import card, clear_layout, column, row, separator, widget_with
from gui.widgets.measurement_band import MeasurementBand, band_for_measurement
from gui.widgets.reading_figure import ReadingFigure
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.movements import Movement
from measure.domain.records import LimitingFactor, MeasurementRecord
from measure.domain.session_comparison import side_difference

#: Height of the reading drawn on a body, pixels. [technical]
_FIGURE_PX = 150

Task = tuple[Movement, Side]
Said = tuple[int | None, LimitingFactor | None]


class ResultCard(QWidget):
    """One block a movement; a side that was not measured today shows the time before."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.bands: list[MeasurementBand] = []
        self.differences: list[str] = []
        self._blocks = QVBoxLayout()
        self._blocks.setContentsMargins(0, 0, 0, 0)
        self._blocks.setSpacing(appearance.gap(2))
        column(card(self._blocks), on=self)

    def show_results(
        self,
        results: Mapping[Task, Measurement],
        before: Mapping[Task, MeasurementRecord],
        said: Mapping[Task, Said],
        messages: Mapping[Task, str],
    ) -> None:
        """Show what a session gave.

        Parameters
        ----------
        before
            The last reading of each movement and side before this session.
        said
            Pain and what ended the movement.
        messages
            What differs in the place where the person stood.
        """
        clear_layout(self._blocks)
        self.bands, self.differences = [], []
        movements = list(dict.fromkeys(movement for movement, _ in results))
        for place, movement in enumerate(movements):
            if place:
                self._blocks.addWidget(separator())
            sides = {side: results.get((movement, side)) for side in Side}
            left, right = sides[Side.LEFT], sides[Side.RIGHT]
            words = ""
            if left is not None and right is not None:
                words = difference_words(movement, side_difference(left, right))
            self.differences.append(words)
            title = row(
                (label(movement_name(movement), "title"), 1),
                (label(words[:1].upper() + words[1:], "strong"), 1),
                spacing=self._appearance.gap(4),
            )
            grid = QGridLayout()
            grid.setHorizontalSpacing(self._appearance.gap(4))
            for number, side in enumerate(Side):
                task = (movement, side)
                cell = self._cell(
                    task, sides[side], before.get(task), said.get(task), messages.get(task, "")
                )
                grid.addWidget(cell, 0, number)
                grid.setColumnStretch(number, 1)
            block = column(title, grid, spacing=self._appearance.gap(1))
            self._blocks.addWidget(widget_with(block))

    def _cell(
        self,
        task: Task,
        measurement: Measurement | None,
        before: MeasurementRecord | None,
        said: Said | None,
        message: str,
    ) -> QWidget:
        movement, side = task
        if measurement is None:
            lines = [side_title(side), tr("Not measured today.")]
            lines += [last_time_words(before)] if before is not None else []
            return widget_with(column(*(label(line, "quiet") for line in lines), 1, spacing=0))
        band = MeasurementBand(self._appearance, type_size=1.2)
        band.show_reading(movement, band_for_measurement(measurement), side_title(side))
        self.bands.append(band)
        pain = pain_sentence(*said) if said is not None else ""
        beside = last_time_words(before) + (f" {pain}." if pain else "")
        below = [label(words) for words in (notes_words(measurement), message) if words]
        figure = ReadingFigure(self._appearance)
        figure.setFixedHeight(_FIGURE_PX)
        figure.show_reading(
            Reading(
                movement=movement,
                side=side,
                value=measurement.value,
                low=measurement.low,
                high=measurement.high,
            )
        )
        words = column(band, label(beside, "quiet"), 1, spacing=0)
        shown = row((words, 6), (figure, 5), spacing=self._appearance.gap(1))
        return widget_with(column(shown, *below, 1, spacing=0))
