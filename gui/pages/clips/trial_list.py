"""List of a clip's trials, each to be accepted or left out."""

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QVBoxLayout, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.layouts import clear_layout
from gui.widgets.measurement_band import MeasurementBand, band_for_trial
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.measurements import Measurement, Trial
from measure.domain.movements import Movement
from measure.progress.wording import number_words


class TrialList(QWidget):
    """One band and one check box for each trial."""

    #: tuple[bool, ...], one for each trial.
    accepted_changed = Signal(object)
    #: A trial to look at.
    trial_selected = Signal(object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._trials: tuple[Trial, ...] = ()
        self.ticks: list[WrappingCheckBox] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(appearance.gap(1))

    @property
    def accepted(self) -> tuple[bool, ...]:
        return tuple(tick.isChecked() for tick in self.ticks)

    def show_measurement(self, movement: Movement, measurement: Measurement | None) -> None:
        """List the trials; all that were scored are accepted."""
        clear_layout(self._column)
        self.ticks = []
        self._trials = measurement.trials if measurement else ()
        for number, trial in enumerate(self._trials, start=1):
            self._column.addWidget(self._row(number, trial, movement))
        self._column.addStretch(1)

    def _row(self, number: int, trial: Trial, movement: Movement) -> QWidget:
        row = QWidget()
        layout = QVBoxLayout(row)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        tick = WrappingCheckBox(
            self._appearance,
            tr("Trial {number}, from {time} s").format(
                number=number, time=number_words(trial.start_s, 1, tr)
            ),
        )
        tick.setChecked(True)
        tick.setEnabled(trial.scored)
        tick.toggled.connect(self._ticked)
        band = MeasurementBand(self._appearance)
        band.show_reading(movement, band_for_trial(trial, movement))
        self.ticks.append(tick)
        layout.addWidget(tick)
        layout.addWidget(band)
        return row

    @Slot()
    def _ticked(self) -> None:
        self.accepted_changed.emit(self.accepted)
        for tick, trial in zip(self.ticks, self._trials, strict=True):
            if tick is self.sender():
                self.trial_selected.emit(trial)
