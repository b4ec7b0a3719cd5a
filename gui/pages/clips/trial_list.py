"""List of a clip's trials, each in or out; one that does not count says why beside it."""

from PySide6.QtCore import QEvent, QObject, Qt, Signal, Slot
from PySide6.QtGui import QFontMetrics, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QVBoxLayout, QWidget

from gui.pages.clips.clip_rows import begun
from gui.pages.clips.measurement_band import ASIDE_PX
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.finding_keywords import finding_keywords
from gui.text.wording import tr, trial_words, value_words
from gui.widgets.buttons import button
from gui.widgets.layouts import FlowRow, clear_layout, separator, widget_with
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.measurements import Measurement, Trial
from measure.domain.movements import MOVEMENTS, Movement
from measure.progress.wording import number_words

#: Room between check boxes in a row, pixels. [technical]
_APART_PX = 2 * GAP_PX
#: Shares of the width that check box, note and link of a line take of what is left. [technical]
_SHARES = (2, 3, 0)


class TrialList(QWidget):
    """A line for each trial, with a check box, which is dead where it does not count.

    Where there is little room the check boxes stand in a row, with value or reason alone; without
    the reasons where the row has no room for them.
    """

    #: tuple[bool, ...], one for each trial.
    accepted_changed = Signal(object)
    #: A trial to look at.
    trial_selected = Signal(object)
    #: The reasons have come to stand in the row, or gone from it.
    reasons_fitted = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._trials: tuple[Trial, ...] = ()
        #: The check box of each trial; None for one that was not measured.
        self.ticks: list[WrappingCheckBox | None] = []
        #: What stands beside each line.
        self._notes: list[QLabel] = []
        self._shown: tuple[Movement, Measurement | None] = (Movement.FLEXION, None)
        self._brief, self._with_reasons = False, True
        self._boxes: list[WrappingCheckBox] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(ASIDE_PX, 0, 0, 0)
        self._column.setSpacing(0)

    def show_brief(self, brief: bool) -> None:
        """Show the trials in a row, or in lines with their ranges."""
        if brief is not self._brief:
            accepted = self.accepted
            self._brief = brief
            self.show_measurement(*self._shown, accepted)
        else:
            self._fit_reasons()

    @property
    def says_reasons(self) -> bool:
        """Whether each trial that does not count says why."""
        return self._with_reasons or not self._brief

    @property
    def accepted(self) -> tuple[bool, ...]:
        """For each trial whether it counts; one that was not measured stays beside them."""
        return tuple(tick is None or tick.isChecked() for tick in self.ticks)

    def show_measurement(
        self, movement: Movement, measurement: Measurement | None, accepted: tuple[bool, ...]
    ) -> None:
        """List the trials with what was accepted of them."""
        clear_layout(self._column)
        self.ticks, self._notes = [], []
        self._shown = movement, measurement
        self._trials = measurement.trials if measurement else ()
        boxes = self._boxes = [
            self._box(number, trial, wanted)
            for number, (trial, wanted) in enumerate(
                zip(self._trials, accepted, strict=True), start=1
            )
        ]
        if self._brief and boxes:
            if self._has_room is not self._with_reasons:
                self._with_reasons = not self._with_reasons
                for number, (trial, box) in enumerate(zip(self._trials, boxes, strict=True), 1):
                    box.setText(self._words(number, trial))
            line = FlowRow(_APART_PX, filling=False)
            line.offer(boxes)
            self._column.addWidget(line)
            return
        if boxes:
            self._column.addWidget(self._lines(boxes, accepted))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit_reasons()

    def _fit_reasons(self) -> None:
        """Show the reasons in the row where it has room for them, and only there."""
        if self._brief and self._boxes and self._has_room is not self._with_reasons:
            self.show_measurement(*self._shown, self.accepted)
            self.reasons_fitted.emit()

    @property
    def _has_room(self) -> bool:
        """Whether the check boxes stand in one row with all their reasons."""
        wide = 0
        for number, (trial, box) in enumerate(zip(self._trials, self._boxes, strict=True), 1):
            box.ensurePolished()
            words = QFontMetrics(box.font()).horizontalAdvance
            more = words(self._brief_words(number, trial)) - words(box.text())
            wide += box.sizeHint().width() + more + _APART_PX
        return wide - _APART_PX <= self.width() - ASIDE_PX

    def _box(self, number: int, trial: Trial, wanted: bool) -> WrappingCheckBox:
        """Return the check box of a trial."""
        box = WrappingCheckBox(self._appearance, self._words(number, trial))
        box.setAccessibleName(self._whole_words(number, trial, wanted))
        box.setEnabled(trial.scored)
        box.setChecked(trial.scored and wanted)
        box.toggled.connect(self._ticked)
        box.installEventFilter(self)
        self.ticks.append(box if trial.scored else None)
        box.setToolTip(tr("From {time} s").format(time=number_words(trial.start_s, 1, tr)))
        return box

    def _words(self, number: int, trial: Trial) -> str:
        """Return what a check box says; why a trial does not count stands beside it, or in it."""
        if self._brief and (trial.scored or self._with_reasons):
            return self._brief_words(number, trial)
        if self._brief:
            return tr("{number}: not counted").format(number=number)
        unit = MOVEMENTS[self._shown[0]].unit
        words = tr("not counted") if trial.refused_for else trial_words(trial, unit)
        return tr("Trial {number}: {words}").format(number=number, words=words)

    def _brief_words(self, number: int, trial: Trial) -> str:
        """Return value or reason of a trial."""
        if trial.value is not None and trial.scored:
            return f"{number}: {value_words(trial.value, MOVEMENTS[self._shown[0]].unit)}"
        if trial.refused_for:
            return f"{number}: {finding_keywords(trial.refused_for, 0)}"
        return tr("{number}: not counted").format(number=number)

    def _whole_words(self, number: int, trial: Trial, wanted: bool) -> str:
        """Return all that is to be said of a trial, for who hears it alone."""
        words = trial_words(trial, MOVEMENTS[self._shown[0]].unit)
        if trial.refused_for:
            keywords = finding_keywords(trial.refused_for, 0)
            words = tr("not counted ({reasons})").format(reasons=keywords)
        if trial.scored and not wanted:
            words = tr("{reading}, discarded by you").format(reading=words)
        return tr("Trial {number}: {words}").format(number=number, words=words)

    def _lines(self, boxes: list[WrappingCheckBox], accepted: tuple[bool, ...]) -> QWidget:
        """Return a line for each trial: its check box, a note, what shows it in the picture."""
        grid = QGridLayout()
        grid.setContentsMargins(0, 0, ASIDE_PX, 0)
        grid.setHorizontalSpacing(3 * GAP_PX)
        grid.setVerticalSpacing(GAP_PX // 2)
        for place, share in enumerate(_SHARES):
            grid.setColumnStretch(place, share)
        for line, (trial, wanted, box) in enumerate(
            zip(self._trials, accepted, boxes, strict=True)
        ):
            if line:
                grid.addWidget(separator(), 2 * line - 1, 0, 1, 3)
            note = label(_note(trial, wanted), "quiet")
            self._notes.append(note)
            grid.addWidget(box, 2 * line, 0)
            grid.addWidget(note, 2 * line, 1)
            if trial.hold_start_s is not None:
                grid.addWidget(self._show_link(line + 1, trial), 2 * line, 2)
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
        for place, (tick, trial) in enumerate(zip(self.ticks, self._trials, strict=True)):
            if tick is not None and tick is self.sender():
                wanted = tick.isChecked()
                tick.setAccessibleName(self._whole_words(place + 1, trial, wanted))
                for note in self._notes[place : place + 1]:
                    note.setText(_note(trial, wanted))
                self.trial_selected.emit(trial)


def _note(trial: Trial, wanted: bool) -> str:
    """Return why a trial does not count, or nothing where it does."""
    if trial.scored:
        return "" if wanted else tr("Discarded by you")
    return begun(finding_keywords(trial.refused_for, 0))
