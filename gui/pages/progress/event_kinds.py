"""Choice of an event's kind: one of three groups, and its kinds in columns of one width."""

from functools import partial

from PySide6.QtCore import QRect, QRectF, QSize, Qt, Signal, Slot
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QPushButton, QSizePolicy, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import event_name, tr
from gui.widgets.buttons import WrappedButton
from gui.widgets.layouts import ArrangedWidget, mirrored
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
#: Space after the ring, and between two names one below the other, in heights of the text.
#: [technical]
_AFTER_RING, _STEP = 0.5, 0.1
#: Room between the ring of the keyboard and the name in it, pixels. [technical]
_FOCUS_PX = 6
#: Space between two columns, pixels. [technical]
_BETWEEN_PX = 2 * GAP_PX
#: Space beneath the groups, pixels. [technical]
_BENEATH_PX = 3 * GAP_PX // 2


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

    def ring_place(self) -> QRectF:
        """Return where the ring of the keyboard is: around the name."""
        left = self._appearance.px(_RING + _AFTER_RING) - _FOCUS_PX
        return QRectF(mirrored(self, self.rect().adjusted(left, 0, 0, 0)))

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        wide = round(self._appearance.px(_RING))
        # It stands in line with the first line of the name.
        lines = self.text().count("\n") + 1
        above = (self.height() - lines * self.fontMetrics().lineSpacing()) / 2
        middle = above + self.fontMetrics().height() / 2
        square = QRect(0, round(middle - wide / 2), wide, wide)
        ring = QRectF(mirrored(self, square))
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
    """One kind is chosen, or none: first its group, then the kind in it."""

    changed = Signal()

    def __init__(self, appearance: Appearance) -> None:
        super().__init__()
        self._appearance = appearance
        groups = (
            (tr("Treatment"), TREATMENTS),
            (tr("Course and care"), CHANGES),
            (tr("Other changes"), OTHERS),
        )
        self._heads = QButtonGroup(self)
        # In a group the arrow keys lead from one to the next; an exclusive one could not be empty.
        self._together = QButtonGroup(self)
        self._together.setExclusive(False)
        self._by_kind: dict[EventKind, QPushButton] = {}
        self._groups = [
            (self._head(title), [self._made(kind, title) for kind in kinds])
            for title, kinds in groups
        ]
        self._heads.buttonClicked.connect(self._open)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.begin_anew()

    def _head(self, title: str) -> QPushButton:
        """Return the button that opens a group."""
        made = WrappedButton(title)
        made.setParent(self)
        made.setProperty("role", "word")
        made.setCheckable(True)
        self._heads.addButton(made)
        return made

    def _made(self, kind: EventKind, title: str) -> QPushButton:
        made = _KindButton(self._appearance, kind)
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

    @property
    def heads(self) -> list[QPushButton]:
        """The buttons that open the groups."""
        return [head for head, _ in self._groups]

    def button(self, kind: EventKind) -> QPushButton:
        return self._by_kind[kind]

    def begin_anew(self) -> None:
        """Choose nothing, with the first group open."""
        self._show_group(self.heads[0])
        self.choose(None)

    def choose(self, chosen: EventKind | None) -> None:
        """Choose a kind, its group open, or none."""
        for kind, made in self._by_kind.items():
            made.setChecked(kind is chosen)
        for head, members in self._groups:
            if chosen is not None and self._by_kind[chosen] in members:
                self._show_group(head)
        self.changed.emit()

    @Slot(QAbstractButton)
    def _open(self, head: QAbstractButton) -> None:
        """Open a group; what was chosen in another one, and is seen no more, is taken back."""
        self._show_group(head)
        if any(made.isChecked() and made.isHidden() for made in self.buttons):
            self.choose(None)

    def _show_group(self, opened: QAbstractButton) -> None:
        opened.setChecked(True)
        for head, members in self._groups:
            for member in members:
                member.setVisible(head is opened)

    def sizeHint(self) -> QSize:
        columns = len(self._groups)
        wide = columns * self._narrowest() + _BETWEEN_PX * (columns - 1)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        """Return the width of one column, and the height of a line: the width decides on more."""
        head = max(head.minimumSizeHint().width() for head in self.heads)
        wide = len(self.heads) * (head + _BETWEEN_PX) - _BETWEEN_PX
        return QSize(max(self._narrowest(), wide), self.buttons[0].minimumSizeHint().height())

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return max(place.bottom() + 1 for _, place in self._places(width))

    def _arrange(self) -> None:
        for member, place in self._places(self.width()):
            member.setGeometry(mirrored(self, place))

    def _places(self, width: int) -> list[tuple[QWidget, QRect]]:
        """Return where the groups' buttons and their kinds are in this width.

        The groups stand side by side. Beneath them all groups have the same place, of as many
        columns as have room. In every column the next name follows the one above at the same
        distance, whether its neighbours take one line or two.
        """
        heads, columns = self.heads, self._columns(width)
        across, wide = _column(width, len(heads)), _column(width, columns)
        high = max(head.heightForWidth(across) for head in heads)
        places: list[tuple[QWidget, QRect]] = [
            (head, QRect(_left(width, len(heads), number), 0, across, high))
            for number, head in enumerate(heads)
        ]
        step = round(self._appearance.px(_STEP))
        for _, members in self._groups:
            ends = [high + _BENEATH_PX] * columns
            for number, member in enumerate(members):
                aside = number % columns
                place = QRect(
                    _left(width, columns, aside), ends[aside], wide, member.heightForWidth(wide)
                )
                places.append((member, place))
                ends[aside] += place.height() + step
        return places

    def _columns(self, width: int) -> int:
        """Return how many columns have room in this width."""
        most = len(self._groups)
        return next((n for n in range(most, 1, -1) if self._narrowest() <= _column(width, n)), 1)

    def _narrowest(self) -> int:
        """Return how wide a column must be at least, its words on two lines."""
        return max(button.minimumSizeHint().width() for button in self.buttons)

    def _clicked(self, kind: EventKind, _checked: bool = False) -> None:
        """Keep the kind that was pressed last; a second press takes it back."""
        self.choose(kind if self._by_kind[kind].isChecked() else None)


def _column(width: int, columns: int) -> int:
    """Return the width of one of this many columns, pixels."""
    return (width - _BETWEEN_PX * (columns - 1)) // columns


def _left(width: int, columns: int, number: int) -> int:
    """Return where a column begins, pixels."""
    return round(number * (width + _BETWEEN_PX) / columns)
