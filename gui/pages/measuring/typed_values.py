"""Fields for what a clinician measured by other means, beside the camera's results."""

from collections.abc import Mapping

from PySide6.QtCore import QEvent, QRegularExpression, Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent, QRegularExpressionValidator
from PySide6.QtWidgets import QGridLayout, QLabel, QLineEdit, QWidget

from gui.text.wording import task_title, tr, value_words
from gui.widgets.announcement import announce
from gui.widgets.layouts import clear_layout
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.session_facts import (
    HIGHEST_DEG,
    LOWEST_DEG,
    ClinicianMethod,
    ClinicianValue,
)
from measure.progress.wording import number_words

#: What may be typed: whole degrees or tenths, after a point or a comma. [technical]
_NUMBER = QRegularExpression(r"-?\d{0,3}([.,]\d?)?")

#: How much less than the active value a passive one may be without a word, degrees: as much as a
#: goniometer errs. [project]
_LESS_DEG = 5.0


class _NumberField(QLineEdit):
    """A field in which Enter leads to the next one; on the page it would end the session."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.setValidator(QRegularExpressionValidator(_NUMBER, self))
        self.setPlaceholderText("\u00b0")

    def event(self, event: QEvent) -> bool:
        if (
            event.type() is QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        ):
            event.accept()
            return True
        return super().event(event)


class TypedValues(QWidget):
    """Active and passive values of the movements of a session, taken by hand, in degrees."""

    #: Enter was pressed in the last field.
    completed = Signal()
    #: A field was left, or Enter pressed in it.
    edited = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.fields: dict[tuple[Movement, Side, ClinicianMethod], QLineEdit] = {}
        #: What is wrong with the values of a line, beneath its fields.
        self.faults: dict[tuple[Movement, Side], QLabel] = {}
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)

    def offer(self, results: Mapping[tuple[Movement, Side], Measurement]) -> None:
        """Offer fields beside these results of the camera; what was typed before stays."""
        typed = {key: field.text() for key, field in self.fields.items()}
        clear_layout(self._grid)
        self.fields, self.faults = {}, {}
        titles = {
            ClinicianMethod.GONIOMETER: tr("Active, goniometer"),
            ClinicianMethod.PASSIVE: tr("Passive, goniometer"),
        }
        for place, title in enumerate(titles.values()):
            self._grid.addWidget(label(title, "quiet"), 0, place + 1)
        in_order = [(movement, side) for movement in Movement for side in Side]
        for number, (movement, side) in enumerate(in_order):
            line = 2 * number + 1
            if (movement, side) not in results or MOVEMENTS[movement].unit is not Unit.DEGREES:
                continue
            name = task_title(movement, side)
            measured = results[movement, side]
            words = tr("camera: {value}").format(value=_camera_words(measured))
            self._grid.addWidget(label(f"{name} ({words})"), line, 0)
            for place, (method, title) in enumerate(titles.items()):
                field = _NumberField(typed.get((movement, side, method), ""))
                field.setAccessibleName(f"{name}, {title}, " + tr("degrees"))
                self._grid.addWidget(field, line, place + 1)
                field.returnPressed.connect(self._go_on)
                field.editingFinished.connect(self._show_faults)
                field.editingFinished.connect(self.edited)
                self.fields[movement, side, method] = field
            fault = label("", "fault")
            self.faults[movement, side] = fault
            self._grid.addWidget(fault, line + 1, 1, 1, len(titles))
        self._grid.setColumnStretch(0, 2)
        self._show_faults()

    def begin(self) -> None:
        """Put the keyboard into the first field."""
        for field in list(self.fields.values())[:1]:
            field.setFocus()

    @Slot()
    def _show_faults(self) -> None:
        """Say beneath the fields of a line what is wrong with its values, or may be."""
        for task, fault in self.faults.items():
            here = {of[2]: field for of, field in self.fields.items() if of[:2] == task}
            doubt = tr("Passive is less than active. Is that right?") if _swapped(here) else ""
            fault.setText(_range_words() if any(map(_impossible, here.values())) else doubt)
            fault.setVisible(bool(fault.text()))
        for (movement, side, _), field in self.fields.items():
            words = self.faults[movement, side].text()
            said = _impossible(field) or words != _range_words()
            field.setAccessibleDescription(words if said else "")

    def holds_at_fault(self) -> bool:
        """Say what is wrong and lead to the first field whose value cannot be, if there is one."""
        self._show_faults()
        wrong = [field for field in self.fields.values() if _impossible(field)]
        for field in wrong[:1]:
            field.setFocus()
            field.selectAll()
            announce(field, field.accessibleDescription())
        return bool(wrong)

    @Slot()
    def _go_on(self) -> None:
        """Lead from a field to the next one, and out of the last; not past what cannot be."""
        if self.holds_at_fault():
            return
        fields, here = [*self.fields.values()], self.sender()
        places = [place for place, field in enumerate(fields) if field is here]
        following = fields[places[0] + 1 :]
        if following:
            following[0].setFocus()
        else:
            self.completed.emit()

    def clear(self) -> None:
        """Forget what was typed."""
        for field in self.fields.values():
            field.clear()
        self._show_faults()

    @property
    def values(self) -> tuple[ClinicianValue, ...]:
        """What was typed in; an unfinished number, or one that cannot be, is left out."""
        return tuple(
            ClinicianValue(movement=movement, side=side, method=method, value_deg=value)
            for (movement, side, method), field in self.fields.items()
            if (value := _degrees(field.text())) is not None
        )


def _camera_words(measurement: Measurement) -> str:
    if measurement.value is None:
        return tr("not measured")
    return value_words(measurement.value, measurement.unit)


def _range_words() -> str:
    low, high = (f"{number_words(end, 0, tr)}°" for end in (LOWEST_DEG, HIGHEST_DEG))
    return tr("Possible: {low} to {high}. Correct it or clear it.").format(low=low, high=high)


def _swapped(fields: Mapping[ClinicianMethod, QLineEdit]) -> bool:
    """Return whether the passive value is clearly less than the active one."""
    active, passive = (
        _degrees(fields[method].text())
        for method in (ClinicianMethod.GONIOMETER, ClinicianMethod.PASSIVE)
    )
    return active is not None and passive is not None and passive < active - _LESS_DEG


def _impossible(field: QLineEdit) -> bool:
    """Return whether something is typed that is no angle of a shoulder."""
    return bool(field.text().strip()) and _degrees(field.text()) is None


def _degrees(text: str) -> float | None:
    """Return a typed angle in degrees, with point or comma; None where there is none."""
    try:
        value = float(text.replace(",", "."))
    except ValueError:
        return None
    return value if LOWEST_DEG <= value <= HIGHEST_DEG else None
