"""Choice of an event's kind, in three groups that stand side by side where there is room."""

from PySide6.QtCore import QEvent, QSize, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QPushButton, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import event_name, tr
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import column, row, widget_with
from gui.widgets.text import label
from measure.domain.records import OFFERED_EVENTS, EventKind

#: Kinds of the three groups.
TREATMENTS = (
    EventKind.INJECTION,
    EventKind.HYDRODILATATION,
    EventKind.MANIPULATION,
    EventKind.CAPSULAR_RELEASE,
    EventKind.PROCEDURE,
)
CHANGES = (
    EventKind.FLARE,
    EventKind.CLINIC_VISIT,
    EventKind.THERAPY_BEGAN,
    EventKind.THERAPY_ENDED,
    EventKind.PROGRAMME_CHANGED,
    EventKind.MEDICINE_CHANGED,
)
OTHERS = tuple(kind for kind in OFFERED_EVENTS if kind not in (*TREATMENTS, *CHANGES))


class EventKinds(QWidget):
    """One kind is chosen, or none.

    Parameters
    ----------
    beneath
        What stands beneath the last group, the shortest.
    """

    def __init__(self, appearance: Appearance, beneath: QWidget) -> None:
        super().__init__()
        groups = (
            (tr("Treatment"), TREATMENTS),
            (tr("Course and care"), CHANGES),
            (tr("Measuring and other"), OTHERS),
        )
        self._choices = [
            ChoiceRow(list(kinds), event_name, columns=2, may_be_empty=True, title=title)
            for title, kinds in groups
        ]
        self._columns = []
        for (title, _), choice in zip(groups, self._choices, strict=True):
            choice.row.picked.connect(self._leave_the_others)
            parts = [label(title, "quiet"), choice.row]
            if choice is self._choices[-1]:
                parts.append(beneath)
            shown = column(*parts, 1, spacing=appearance.gap(0.75))
            self._columns.append(widget_with(shown))
        self._line = row(*((part, 1) for part in self._columns), on=self, spacing=appearance.gap(2))

    @property
    def value(self) -> EventKind | None:
        return next((choice.value for choice in self._choices if choice.value), None)

    @property
    def buttons(self) -> list[QPushButton]:
        return [button for choice in self._choices for button in choice.row.buttons]

    def choose(self, kind: EventKind | None) -> None:
        for choice in self._choices:
            choice.choose(kind)

    def button(self, kind: EventKind) -> QPushButton:
        return self.buttons[[*TREATMENTS, *CHANGES, *OTHERS].index(kind)]

    def minimumSizeHint(self) -> QSize:
        """Return the width of the groups one below the other: they need no more."""
        wide = max(part.minimumSizeHint().width() for part in self._columns)
        return QSize(wide, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()

    def event(self, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.LayoutRequest, QEvent.Type.Show):
            self._arrange()
        return super().event(event)

    def _arrange(self) -> None:
        gaps = self._line.spacing() * (len(self._columns) - 1)
        needed = sum(part.minimumSizeHint().width() for part in self._columns)
        beside = needed + gaps <= self.width()
        directions = QBoxLayout.Direction
        self._line.setDirection(directions.LeftToRight if beside else directions.TopToBottom)

    @Slot()
    def _leave_the_others(self) -> None:
        """Keep the kind that was chosen last."""
        chosen = self.sender()
        for choice in self._choices:
            if choice.row is not chosen:
                choice.choose(None)
