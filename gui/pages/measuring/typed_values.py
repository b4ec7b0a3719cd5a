"""Fields for what a clinician measured by other means, beside the camera's results."""

from collections.abc import Mapping

from PySide6.QtCore import QEvent, QRegularExpression, Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent, QRegularExpressionValidator
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from gui.text.wording import task_title, tr, value_words
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

#: What may be typed: whole degrees or tenths, after a point or a comma. [technical]
_NUMBER = QRegularExpression(r"-?\d{0,3}([.,]\d?)?")


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
    """Passive and goniometer values of the movements of a session, in degrees."""

    #: Enter was pressed in the last field.
    completed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.fields: dict[tuple[Movement, Side, ClinicianMethod], QLineEdit] = {}
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)

    def offer(self, results: Mapping[tuple[Movement, Side], Measurement]) -> None:
        """Offer fields beside these results of the camera; what was typed before stays."""
        typed = {key: field.text() for key, field in self.fields.items()}
        clear_layout(self._grid)
        self.fields = {}
        titles = {
            ClinicianMethod.PASSIVE: tr("Passive"),
            ClinicianMethod.GONIOMETER: tr("Goniometer"),
        }
        for place, title in enumerate(titles.values()):
            self._grid.addWidget(label(title, "quiet"), 0, place + 1)
        in_order = [(movement, side) for movement in Movement for side in Side]
        for line, (movement, side) in enumerate(in_order, start=1):
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
                self.fields[movement, side, method] = field
        self._grid.setColumnStretch(0, 2)

    def begin(self) -> None:
        """Put the keyboard into the first field."""
        for field in list(self.fields.values())[:1]:
            field.setFocus()

    @Slot()
    def _go_on(self) -> None:
        """Lead from a field to the next one, and out of the last."""
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

    @property
    def values(self) -> tuple[ClinicianValue, ...]:
        """What was typed in; an unfinished number is left out."""
        return tuple(
            ClinicianValue(movement=movement, side=side, method=method, value_deg=value)
            for (movement, side, method), field in self.fields.items()
            if (value := _degrees(field.text())) is not None
        )


def _camera_words(measurement: Measurement) -> str:
    if measurement.value is None:
        return tr("not measured")
    return value_words(measurement.value, measurement.unit)


def _degrees(text: str) -> float | None:
    """Return a typed angle in degrees, with point or comma; None where there is none."""
    try:
        value = float(text.replace(",", "."))
    except ValueError:
        return None
    return value if LOWEST_DEG <= value <= HIGHEST_DEG else None
