"""List of a clip's trials, each in or out; one that does not count says why."""

from PySide6.QtCore import QEvent, QObject, Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QPushButton, QVBoxLayout, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.finding_keywords import finding_keywords
from gui.text.wording import tr, trial_words, value_words
from gui.widgets.buttons import FlowRow, button
from gui.widgets.layouts import clear_layout, widget_with
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.measurements import Measurement, Trial
from measure.domain.movements import MOVEMENTS, Movement
from measure.progress.wording import number_words


class TrialList(QWidget):
    """A line for each trial, with a check box, which is dead where it does not count.

    Where there is little room the check boxes stand in a row, with the values alone.
    """

    #: tuple[bool, ...], one for each trial.
    accepted_changed = Signal(object)
    #: A trial to look at.
    trial_selected = Signal(object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._trials: tuple[Trial, ...] = ()
        #: The check box of each trial; None for one that was not measured.
        self.ticks: list[WrappingCheckBox | None] = []
        self._shown: tuple[Movement, Measurement | None] = (Movement.FLEXION, None)
        self._brief = False
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)

    def show_brief(self, brief: bool) -> None:
        """Show the trials in a row, or in lines with their ranges."""
        if brief is not self._brief:
            accepted = self.accepted
            self._brief = brief
            self.show_measurement(*self._shown, accepted)

    @property
    def accepted(self) -> tuple[bool, ...]:
        """For each trial whether it counts; one that was not measured stays beside them."""
        return tuple(tick is None or tick.isChecked() for tick in self.ticks)

    def show_measurement(
        self, movement: Movement, measurement: Measurement | None, accepted: tuple[bool, ...]
    ) -> None:
        """List the trials with what was accepted of them."""
        clear_layout(self._column)
        self.ticks = []
        self._shown = movement, measurement
        self._trials = measurement.trials if measurement else ()
        boxes = [
            self._box(number, trial, wanted)
            for number, (trial, wanted) in enumerate(
                zip(self._trials, accepted, strict=True), start=1
            )
        ]
        if self._brief and boxes:
            line = FlowRow(2 * GAP_PX, filling=False)
            line.offer(boxes)
            self._column.addWidget(line)
            return
        if boxes:
            self._column.addWidget(self._lines(boxes))

    def _box(self, number: int, trial: Trial, wanted: bool) -> WrappingCheckBox:
        """Return the check box of a trial."""
        box = WrappingCheckBox(self._appearance, self._words(number, trial, wanted))
        box.setEnabled(trial.scored)
        box.setChecked(trial.scored and wanted)
        box.toggled.connect(self._ticked)
        box.installEventFilter(self)
        self.ticks.append(box if trial.scored else None)
        box.setToolTip(tr("From {time} s").format(time=number_words(trial.start_s, 1, tr)))
        return box

    def _words(self, number: int, trial: Trial, wanted: bool) -> str:
        unit = MOVEMENTS[self._shown[0]].unit
        if self._brief:
            if not trial.scored or trial.value is None:
                return tr("{number}: not counted").format(number=number)
            return f"{number}: {value_words(trial.value, unit)}"
        words = trial_words(trial, unit)
        if trial.refused_for:
            keywords = finding_keywords(trial.refused_for, 0)
            words = tr("not counted ({reasons})").format(reasons=keywords)
        if trial.scored and not wanted:
            words = tr("{reading}, discarded by you").format(reading=words)
        return tr("Trial {number}: {words}").format(number=number, words=words)

    def _lines(self, boxes: list[WrappingCheckBox]) -> QWidget:
        """Return the check boxes with what shows each trial in the picture, in a column."""
        grid = QGridLayout()
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(3 * GAP_PX)
        grid.setVerticalSpacing(0)
        grid.setColumnStretch(2, 1)
        for line, (trial, box) in enumerate(zip(self._trials, boxes, strict=True)):
            grid.addWidget(box, line, 0)
            if trial.hold_start_s is not None:
                grid.addWidget(self._show_link(line + 1, trial), line, 1)
        return widget_with(grid)

    def _show_link(self, number: int, trial: Trial) -> QPushButton:
        show = button(tr("Show"), "line-link")
        show.setAccessibleName(tr("Show trial {number}").format(number=number))
        show.clicked.connect(lambda: self.trial_selected.emit(trial))
        return show

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep the space bar for a check box that has the focus; elsewhere it plays the clip."""
        if (
            isinstance(event, QKeyEvent)
            and event.type() is QEvent.Type.ShortcutOverride
            and event.key() == Qt.Key.Key_Space
        ):
            event.accept()
            return True
        return super().eventFilter(watched, event)

    @Slot()
    def _ticked(self) -> None:
        self.accepted_changed.emit(self.accepted)
        for number, (tick, trial) in enumerate(zip(self.ticks, self._trials, strict=True), start=1):
            if tick is not None and tick is self.sender():
                tick.setText(self._words(number, trial, tick.isChecked()))
                tick.setAccessibleName(tick.text())
                self.trial_selected.emit(trial)
