"""The trials of a clip, each to be accepted or left out."""

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QVBoxLayout, QWidget

from gui.style.look import Look
from gui.text.words import tr
from gui.widgets.reading_band import ReadingBand, shown_trial
from gui.widgets.text import clear
from gui.widgets.tick import Tick
from measure.domain.measurements import Measurement, Trial
from measure.domain.movements import Movement


class TrialList(QWidget):
    """One band and one tick for each trial."""

    #: tuple[bool, ...], one for each trial.
    accepted_changed = Signal(object)
    #: A trial to look at.
    looked_at = Signal(object)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self._trials: tuple[Trial, ...] = ()
        self.ticks: list[Tick] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(look.gap(1))

    @property
    def accepted(self) -> tuple[bool, ...]:
        return tuple(tick.isChecked() for tick in self.ticks)

    def show_measurement(self, movement: Movement, measurement: Measurement | None) -> None:
        """List the trials; all that were scored are accepted."""
        clear(self._column)
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
        tick = Tick(
            self._look,
            tr("Trial {number}, from {time} s").format(number=number, time=round(trial.start_s, 1)),
        )
        tick.setChecked(True)
        tick.setEnabled(trial.scored)
        tick.toggled.connect(self._ticked)
        band = ReadingBand(self._look)
        band.show_reading(movement, shown_trial(trial, movement))
        self.ticks.append(tick)
        layout.addWidget(tick)
        layout.addWidget(band)
        return row

    @Slot()
    def _ticked(self) -> None:
        self.accepted_changed.emit(self.accepted)
        for tick, trial in zip(self.ticks, self._trials, strict=True):
            if tick is self.sender():
                self.looked_at.emit(trial)
