"""Cards of a session's results: both sides under one heading, their difference, the time before."""

import datetime as dt
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from gui.drawing.reading_on_body import Reading
from gui.protocol.plan import MovementTask
from gui.style.appearance import Appearance
from gui.style.measures import CARD_PADDING_PX, GAP_PX
from gui.text.result_wording import (
    by_hand_words,
    difference_words,
    last_time_words,
    value_and_range,
)
from gui.text.wording import measurement_words, movement_name, side_title, task_title, tr
from gui.widgets.buttons import WrappedButton
from gui.widgets.figures.position_figure import PositionView
from gui.widgets.figures.reading_figure import ReadingFigure
from gui.widgets.layouts import (
    Content,
    card,
    clear_layout,
    column,
    row,
    separator,
    widget_with,
)
from gui.widgets.side_by_side import LARGE_FROM_PERCENT
from gui.widgets.text import NumberLine, label
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Status
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.records import MeasurementRecord
from measure.domain.session_comparison import side_difference
from measure.domain.session_facts import ClinicianValue

#: Height of a body where there is one result, where there are two, and where there are more; its
#: width where there is room and where words are long, pixels. [technical]
_HIGH_PX, _WIDE_PX, _LEAST_PX = (256, 240, 208), 252, 130
#: Shares of a side's width that its body and its words take. [technical]
_FIGURE_PART, _WORDS_PART = 8, 12
#: The column between both sides in their grid; its row of words, with room above and below.
#: [technical]
_BETWEEN_COLUMN, _WORDS_ROW, _ROWS = 2, 1, 3

Task = tuple[Movement, Side]


@dataclass(frozen=True, slots=True)
class Said:
    """What else is said about a result: the pain, which may be nothing, and notes.

    Of a result without a reading also why, what to do about it, and what measures it once more
    where that is offered.
    """

    pain: str = ""
    notes: tuple[str, ...] = ()
    lacking: str = ""
    advice: str = ""
    again: MovementTask | None = None


class ResultCard(QWidget):
    """One card a movement; a side that was not measured today shows the time before.

    Parameters
    ----------
    next_side
        The button that measures the other side; it stands in that side's place.
    footnotes
        What else is said of the session, and the ways on: on the card of a movement that is alone.
    """

    #: Something without a reading is to be measured once more (MovementTask).
    again = Signal(object)

    def __init__(self, appearance: Appearance, next_side: QPushButton, footnotes: QWidget) -> None:
        super().__init__()
        self._appearance = appearance
        self._next_side, self._footnotes = next_side, footnotes
        for kept in (next_side, footnotes):
            kept.setParent(self)
        #: Today's results in words, as they stand on the card.
        self.readings: list[str] = []
        self.differences: list[str] = []
        #: What was measured by hand, beneath each result.
        self._by_hand: dict[Task, QLabel] = {}
        self._blocks = QVBoxLayout()
        self._blocks.setContentsMargins(0, 0, 0, 0)
        self._blocks.setSpacing(appearance.gap(2))
        column(self._blocks, on=self)

    def show_results(
        self,
        results: Mapping[Task, Measurement],
        before: Mapping[Task, MeasurementRecord],
        details: Mapping[Task, Said],
        wanted: Task | None = None,
        *,
        today: dt.date,
        repeated: Collection[Movement] = (),
    ) -> None:
        """Show what a session gave.

        Parameters
        ----------
        before
            The last reading of each movement and side before this session.
        wanted
            What may be measured next.
        today
            The local day: a reading of this day counts for the difference between the sides.
        repeated
            Movements of which a side was read more than once today: charts and the report have
            one value of such a day, and it may be another one than stands here.
        """
        # What is used again leaves before the cards go.
        self._blocks.removeWidget(self._footnotes)
        for kept in (self._next_side, self._footnotes):
            kept.setParent(self)
        clear_layout(self._blocks)
        self.readings, self.differences, self._by_hand = [], [], {}
        shown = _Results(results, before, details, wanted, today, repeated)
        movements = list(dict.fromkeys(movement for movement, _ in results))
        alone = len(movements) == 1
        for movement in movements:
            beneath = [self._footnotes] if alone else []
            self._blocks.addWidget(self._block(movement, shown, beneath))
        if not alone:
            self._blocks.addWidget(self._footnotes)
        self._footnotes.show()

    def show_by_hand(self, values: Sequence[ClinicianValue]) -> None:
        """Show values that were measured by hand beneath the results of their sides."""
        for (movement, side), words in self._by_hand.items():
            words.setText(by_hand_words(values, movement, side))
            words.setVisible(bool(words.text()))

    def _block(
        self, movement: Movement, shown: "_Results", footnotes: Sequence[QWidget]
    ) -> QWidget:
        """Return the card of one movement: heading, both sides, and beneath a line what is said."""
        gap = self._appearance.gap
        left, right = (shown.of_today((movement, side)) for side in Side)
        words = ""
        if left is not None and right is not None:
            words = difference_words(movement, side_difference(left, right))
        self.differences.append(words)
        compared = [label(words[:1].upper() + words[1:], "strong")] if words else []
        notes = _notes(movement, shown)
        quiet = column(*notes, *footnotes, spacing=GAP_PX // 2)
        space = gap(1.5 if self._large else 1)
        contents: list[Content] = [label(movement_name(movement), "title")]
        if self._large:
            # What follows from the numbers is seen before one scrolls.
            contents, compared = [*contents, *compared], []
        contents.append(self._sides(movement, shown))
        if compared or notes or footnotes:
            above = 0 if self._large else gap(1)
            said = column(*compared, quiet, spacing=gap(1))
            margins = (0, above, 0, 0)
            contents.append(column(separator(), said, margins=margins, spacing=gap(1.5)))
        return card(*contents, spacing=space)

    def _sides(self, movement: Movement, shown: "_Results") -> QGridLayout:
        """Return both sides: bodies beside numbers and what is said, then what measures a side.

        Words of both sides begin at one height; a button stands right under those it belongs to.
        """
        sides = QGridLayout()
        sides.setContentsMargins(0, 0, 0, 0)
        sides.setHorizontalSpacing(0)
        sides.setVerticalSpacing(0)
        sides.setRowStretch(0, 1)
        sides.setRowStretch(_ROWS - 1, 1)
        between = row(separator(upright=True), margins=(CARD_PADDING_PX, 0, CARD_PADDING_PX, 0))
        sides.addLayout(between, 0, _BETWEEN_COLUMN, _ROWS, 1)
        ways = [self._way((movement, side), shown) for side in Side]
        for side, first, way in zip(Side, (0, _BETWEEN_COLUMN + 1), ways, strict=True):
            words = self._words((movement, side), shown)
            words += way
            spacing = 0 if self._large else self._appearance.gap(0.5)
            said = widget_with(column(*words, 1, spacing=spacing))
            sides.addWidget(said, _WORDS_ROW, first + 1)
            sides.setColumnStretch(first + 1, _WORDS_PART)
            if not self._large:
                sides.addWidget(self._beside((movement, side), shown), 0, first, _ROWS, 1)
                sides.setColumnStretch(first, _FIGURE_PART)
        return sides

    def _beside(self, task: Task, shown: "_Results") -> QWidget:
        """Return the drawing that stands beside the words of a side."""
        figure = self._figure(task, shown)
        figure.setFixedHeight(_HIGH_PX[min(len(shown.results), len(_HIGH_PX)) - 1])
        figure.setMinimumWidth(_LEAST_PX)
        figure.setMaximumWidth(_WIDE_PX)
        return widget_with(row(figure, margins=(0, 0, self._appearance.gap(2), 0)))

    def _figure(self, task: Task, shown: "_Results") -> QWidget:
        """Return the reading on a body, or the movement with advice on it.

        A side that was not measured is drawn like the other one, and so in its scale.
        """
        movement, side = task
        advised = [arm for arm in Side if shown.details.get((movement, arm), Said()).advice]
        if side in advised or (advised and task not in shown.results):
            drawn = PositionView(self._appearance, still=True, close=True)
            drawn.show_movement(movement, side)
            return drawn
        read = shown.of_today(task)
        value, low, high = (read.value, read.low, read.high) if read else (None, None, None)
        figure = ReadingFigure(self._appearance, floor=True)
        figure.show_reading(Reading(movement=movement, side=side, value=value, low=low, high=high))
        return figure

    @property
    def _large(self) -> bool:
        """Whether the numbers take the room of the drawings."""
        return self._appearance.percent >= LARGE_FROM_PERCENT

    def _words(self, task: Task, shown: "_Results") -> list[Content]:
        """Return what is said of one side."""
        movement, side = task
        measurement, earlier = shown.results.get(task), shown.before.get(task)
        words: list[Content] = [label(side_title(side), "quiet")]
        last = []
        if earlier is not None:
            last = [label(last_time_words(earlier, shown.today), "quiet")]
        if measurement is None:
            measured = shown.of_today(task) is not None
            words += last if measured else [label(tr("Not measured today"), "title"), *last]
            return words
        self.readings.append(measurement_words(measurement))
        value, interval = value_and_range(measurement)
        degrees = measurement.value is not None and MOVEMENTS[movement].unit is Unit.DEGREES
        number = label(value, "number" if degrees else "title")
        ends = label(interval, "lead" if degrees else "quiet")
        if degrees:
            line = NumberLine(number, ends, spacing=self._appearance.gap(1.5))
            line.set_level(True)
            words.append(line)
        else:
            words += [number, ends] if interval else [number]
        said = shown.details.get(task, Said())
        by_hand = self._by_hand[task] = label("")
        by_hand.hide()
        words += [*self._why_lacking(measurement, said), by_hand]
        words += [label(said.pain)] if said.pain else []
        return words + last

    def _why_lacking(self, measurement: Measurement, said: Said) -> list[Content]:
        """Return why there is no reading, and what to do about it; the latter in large text."""
        if measurement.status is not Status.REFUSED:
            return []
        lines = [label(line) for line in (said.lacking, said.advice) if line]
        return list(lines[-1:] if self._large else lines)

    def _way(self, task: Task, shown: "_Results") -> list[QWidget]:
        """Return the button that measures one side, where that is offered."""
        if shown.wanted == task:
            return [self._below(self._next_side)]
        measurement, again = shown.results.get(task), shown.details.get(task, Said()).again
        if again is None or measurement is None or measurement.status is not Status.REFUSED:
            return []
        # Two buttons side by side have room in every language and text size.
        made = WrappedButton(tr("Measure again"))
        made.setProperty("role", "")
        title = task_title(again.movement, again.side)
        made.setAccessibleName(tr("Measure again: {task}").format(task=title))
        made.clicked.connect(partial(self._measure_again, again))
        return [self._below(made)]

    def _below(self, way: QPushButton) -> QWidget:
        """Return a button with some space above it, no wider than its words."""
        above = self._appearance.gap(1 if self._large else 1.5)
        return widget_with(row(way, 1, margins=(0, above, 0, 0)))

    def _measure_again(self, task: MovementTask, _checked: bool = False) -> None:
        self.again.emit(task)


def _notes(movement: Movement, shown: "_Results") -> list[QWidget]:
    """Return what is said of a movement and of its sides, quiet lines over the whole width."""
    lines: list[QWidget] = []
    if movement in shown.repeated:
        words_of_day = tr(
            "Measured more than once today. This page shows the latest reading of each side; "
            "charts and the report use the median of the day's readings."
        )
        lines.append(label(words_of_day, "quiet"))
    for side in Side:
        words = shown.details.get((movement, side), Said()).notes
        if any(words):
            lines.append(label(f"{side_title(side)}: {' '.join(words)}", "quiet"))
    return lines


@dataclass(frozen=True, slots=True)
class _Results:
    """What the card shows, as given to it."""

    results: Mapping[Task, Measurement]
    before: Mapping[Task, MeasurementRecord]
    details: Mapping[Task, Said]
    wanted: Task | None
    today: dt.date
    repeated: Collection[Movement]

    def of_today(self, task: Task) -> Measurement | None:
        """Return the result of this session, or else the reading of earlier that day."""
        record = self.before.get(task)
        earlier = record.measurement if record and record.taken.day == self.today else None
        return self.results.get(task, earlier)
