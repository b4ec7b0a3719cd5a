"""Choice of an event's kind: three groups in columns of one width, as many as have room."""

from PySide6.QtCore import QEvent, QSize, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QPushButton, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import event_name, tr
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import column, row, widget_with
from gui.widgets.text import label
from measure.domain.landmarks import Side
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
)
OTHERS = tuple(kind for kind in OFFERED_EVENTS if kind not in (*TREATMENTS, *CHANGES))


class EventKinds(QWidget):
    """One kind is chosen, or none; beneath the groups a row of their columns asks for the side."""

    def __init__(self, appearance: Appearance, side: ChoiceRow[Side | None]) -> None:
        super().__init__()
        groups = (
            (tr("Treatment"), TREATMENTS),
            (tr("Course and care"), CHANGES),
            (tr("Medicine, measuring, other"), OTHERS),
        )
        self._choices = [
            ChoiceRow(list(kinds), event_name, even=True, may_be_empty=True, title=title)
            for title, kinds in groups
        ]
        self._side, self._columns = side, 0
        self._groups = [
            widget_with(column(label(title, "quiet"), choice.row, 1, spacing=GAP_PX // 2))
            for (title, _), choice in zip(groups, self._choices, strict=True)
        ]
        for choice in self._choices:
            choice.row.picked.connect(self._leave_the_others)
        self._line = row(*((group, 1) for group in self._groups), spacing=GAP_PX)
        column(self._line, side.row, on=self, spacing=appearance.gap(2))

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
        """Return the width of one column: it needs no more."""
        return QSize(self._narrowest(), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()

    def event(self, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.LayoutRequest, QEvent.Type.Show):
            self._arrange()
        return super().event(event)

    def _arrange(self) -> None:
        """Put the groups side by side where every word has room, else one below the other."""
        widest = max(button.sizeHint().width() for button in self.buttons)
        three = len(self._groups)
        if self._fits(three, widest):
            columns = three
        else:
            columns = 2 if self._fits(2, self._narrowest()) else 1
        if columns == self._columns:
            return
        self._columns = columns
        beside = columns == three
        directions = QBoxLayout.Direction
        self._line.setDirection(directions.LeftToRight if beside else directions.TopToBottom)
        for choice in self._choices:
            choice.row.limit(1 if beside else columns)
        self._side.row.limit(columns)

    def _fits(self, columns: int, widest: int) -> bool:
        return columns * (widest + GAP_PX) - GAP_PX <= self.width()

    def _narrowest(self) -> int:
        """Return how wide a column must be at least, its words on two lines."""
        return max(button.minimumSizeHint().width() for button in self.buttons)

    @Slot()
    def _leave_the_others(self) -> None:
        """Keep the kind that was chosen last."""
        chosen = self.sender()
        for choice in self._choices:
            if choice.row is not chosen:
                choice.choose(None)
