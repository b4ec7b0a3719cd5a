"""List of a clip's trials, each in or out; one that was not measured says why."""

from PySide6.QtCore import QEvent, QObject, Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import tr, trial_words
from gui.widgets.buttons import button
from gui.widgets.layouts import clear_layout, row, widget_with
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.measurements import Measurement, Trial
from measure.domain.movements import MOVEMENTS, Movement
from measure.progress.wording import number_words


class TrialList(QWidget):
    """A line for each trial, with a check box, which is dead where it was not measured."""

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
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)

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
        self._trials = measurement.trials if measurement else ()
        for number, (trial, wanted) in enumerate(zip(self._trials, accepted, strict=True), start=1):
            self._add(number, trial, movement, wanted)

    def _add(self, number: int, trial: Trial, movement: Movement, wanted: bool) -> None:
        words = tr("Trial {number}: {words}").format(
            number=number, words=trial_words(trial, MOVEMENTS[movement].unit)
        )
        shown = WrappingCheckBox(self._appearance, words)
        shown.setEnabled(trial.scored)
        shown.setChecked(trial.scored and wanted)
        shown.toggled.connect(self._ticked)
        shown.installEventFilter(self)
        self.ticks.append(shown if trial.scored else None)
        shown.setToolTip(tr("From {time} s").format(time=number_words(trial.start_s, 1, tr)))
        if trial.hold_start_s is None:
            self._column.addWidget(shown)
            return
        show = button(tr("Show"), "line-link")
        show.setAccessibleName(tr("Show trial {number}").format(number=number))
        show.clicked.connect(lambda: self.trial_selected.emit(trial))
        self._column.addWidget(widget_with(row((shown, 1), show, spacing=GAP_PX)))

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
        for tick, trial in zip(self.ticks, self._trials, strict=True):
            if tick is self.sender():
                self.trial_selected.emit(trial)
