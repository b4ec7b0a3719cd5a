"""Choice of an event's kind: three lists in columns of one width, as many as have room."""

from functools import partial

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QLabel, QPushButton

from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import event_name, tr
from gui.widgets.buttons import WrappedButton
from gui.widgets.layouts import ArrangedWidget
from gui.widgets.text import label
from measure.domain.records import EventKind

#: Kinds of the three groups; names that may take two lines stand in one line of their columns.
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
    EventKind.PROGRAMME_CHANGED,
    EventKind.THERAPY_BEGAN,
    EventKind.THERAPY_ENDED,
)
OTHERS = (
    EventKind.MEDICINE_CHANGED,
    EventKind.MODEL_CHANGED,
    EventKind.CAMERA_CHANGED,
    EventKind.OTHER,
)

#: Size of the ring before a name, in heights of the text, and of the dot in it, in its own size.
#: [technical]
_RING, _DOT = 1.2, 0.44
#: Room beside the ring, pixels. [technical]
_BESIDE_PX = 3
#: Space between two columns, pixels. [technical]
_BETWEEN_PX = 2 * GAP_PX


class _KindButton(WrappedButton):
    """A line of a list: a ring, with a dot in it once it is chosen, and a name."""

    def __init__(self, appearance: Appearance, kind: EventKind) -> None:
        self._brief = _brief_name(kind)
        super().__init__(event_name(kind))
        self._appearance = appearance
        self.setProperty("role", "choice")

    def _text_in(self, width: int) -> str:
        """Return the name, in fewer words where it would take two lines."""
        brief = self._size(self._text).width() > width >= self._size(self._brief).width()
        return self._brief if brief else super()._text_in(width)

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        wide = self._appearance.px(_RING)
        ring = QRectF(_BESIDE_PX, (self.height() - wide) / 2, wide, wide)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        chosen = self.isChecked()
        painter.setPen(QPen(self._appearance.colour("arm" if chosen else "edge"), 2))
        painter.setBrush(self._appearance.colour("raised"))
        painter.drawEllipse(ring.adjusted(1, 1, -1, -1))
        if chosen:
            within = wide * (1 - _DOT) / 2
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(self._appearance.colour("arm"))
            painter.drawEllipse(ring.adjusted(within, within, -within, -within))
        painter.end()


def _brief_name(kind: EventKind) -> str:
    """Return a name in few words, for under the heading of its group."""
    return {
        EventKind.MEDICINE_CHANGED: tr("Medicine"),
        EventKind.MODEL_CHANGED: tr("Body tracking"),
        EventKind.CAMERA_CHANGED: tr("Camera"),
    }.get(kind, event_name(kind))


class EventKinds(ArrangedWidget):
    """One kind is chosen, or none."""

    changed = Signal()

    def __init__(self, appearance: Appearance) -> None:
        super().__init__()
        self._appearance = appearance
        groups = (
            (tr("Treatment"), TREATMENTS),
            (tr("Course and care"), CHANGES),
            (tr("Other changes"), OTHERS),
        )
        # In a group the arrow keys lead from one to the next; an exclusive one could not be empty.
        self._together = QButtonGroup(self)
        self._together.setExclusive(False)
        self._by_kind: dict[EventKind, QPushButton] = {}
        self._groups = [
            (label(title, "strong"), [self._made(kind, title) for kind in kinds])
            for title, kinds in groups
        ]
        self._columns = 0
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(_BETWEEN_PX)
        self._grid.setVerticalSpacing(0)

    def _made(self, kind: EventKind, title: str) -> QPushButton:
        made = _KindButton(self._appearance, kind)
        # It is placed later, when the widths are known, and has its turn for Tab from the start.
        made.setParent(self)
        made.setCheckable(True)
        made.setAccessibleName(f"{title}: {event_name(kind)}")
        made.clicked.connect(partial(self._clicked, kind))
        self._together.addButton(made)
        self._by_kind[kind] = made
        return made

    @property
    def value(self) -> EventKind | None:
        return next((kind for kind, made in self._by_kind.items() if made.isChecked()), None)

    @property
    def buttons(self) -> list[QPushButton]:
        return list(self._by_kind.values())

    def button(self, kind: EventKind) -> QPushButton:
        return self._by_kind[kind]

    def choose(self, chosen: EventKind | None) -> None:
        for kind, made in self._by_kind.items():
            made.setChecked(kind is chosen)
        self.changed.emit()

    def minimumSizeHint(self) -> QSize:
        """Return the width of one column: it needs no more."""
        return QSize(self._narrowest(), super().minimumSizeHint().height())

    def _arrange(self) -> None:
        """Put as many groups side by side as have room, the others below them.

        A group below two others has their columns for its own names.
        """
        most = len(self._groups)
        columns = next((n for n in range(most, 1, -1) if self._fits(n)), 1)
        if columns == self._columns:
            return
        self._columns = columns
        while self._grid.takeAt(0) is not None:
            pass
        line = 0
        for place, (heading, members) in enumerate(self._groups):
            beside = place < columns
            if beside:
                below = self._place(heading, members, (0, place), columns=1)
                line = max(line, below)
            else:
                line += self._place(heading, members, (line, 0), columns=columns)
        for place in range(most):
            self._grid.setColumnStretch(place, place < columns)

    def _place(
        self, heading: QLabel, members: list[QPushButton], at: tuple[int, int], *, columns: int
    ) -> int:
        """Put a group under its heading, and return its number of lines."""
        first, left = at
        heading.setContentsMargins(0, 2 * GAP_PX if first else 0, 0, GAP_PX // 2)
        self._grid.addWidget(heading, first, left, 1, columns)
        for place, member in enumerate(members):
            below, aside = divmod(place, columns)
            self._grid.addWidget(member, first + 1 + below, left + aside)
        return 1 + -(-len(members) // columns)

    def _fits(self, columns: int) -> bool:
        return self._narrowest() <= self._column(columns)

    def _column(self, columns: int) -> int:
        """Return the width of one of this many columns, pixels."""
        return (self.width() - _BETWEEN_PX * (columns - 1)) // columns

    def _narrowest(self) -> int:
        """Return how wide a column must be at least, its words on two lines."""
        return max(button.minimumSizeHint().width() for button in self.buttons)

    def _clicked(self, kind: EventKind, _checked: bool = False) -> None:
        """Keep the kind that was pressed last; a second press takes it back."""
        self.choose(kind if self._by_kind[kind].isChecked() else None)
