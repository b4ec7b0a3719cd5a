"""Choice of an event's kind: three groups in columns of one width, as many as have room."""

from functools import partial

from PySide6.QtCore import QSize, Signal
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QLabel, QPushButton

from gui.style.measures import GAP_PX
from gui.text.wording import event_name, tr
from gui.widgets.buttons import WrappedButton
from gui.widgets.layouts import ArrangedWidget
from gui.widgets.text import label
from measure.domain.records import EventKind

#: Kinds of the three groups; the longest names stand in one line.
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


class EventKinds(ArrangedWidget):
    """One kind is chosen, or none."""

    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
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
        self._grid.setSpacing(GAP_PX)

    def _made(self, kind: EventKind, title: str) -> QPushButton:
        made = WrappedButton(event_name(kind))
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
        """Put the groups side by side where they have room, else one below the other."""
        most = len(self._groups)
        columns = next((n for n in range(most, 1, -1) if self._fits(n)), 1)
        if columns == self._columns:
            return
        self._columns = columns
        while self._grid.takeAt(0) is not None:
            pass
        line = 0
        for place, (heading, members) in enumerate(self._groups):
            if columns == most:
                self._place(heading, members, (0, place), columns=1)
            else:
                line += self._place(heading, members, (line, 0), columns=columns)
        for place in range(most):
            self._grid.setColumnStretch(place, place < columns)

    def _place(
        self, heading: QLabel, members: list[QPushButton], at: tuple[int, int], *, columns: int
    ) -> int:
        """Put a group under its heading, and return its number of lines; the last is full."""
        first, left = at
        heading.setContentsMargins(0, GAP_PX if first else 0, 0, 0)
        self._grid.addWidget(heading, first, left, 1, columns)
        for place, member in enumerate(members):
            below, aside = divmod(place, columns)
            wide = columns - aside if place == len(members) - 1 else 1
            self._grid.addWidget(member, first + 1 + below, left + aside, 1, wide)
        return 1 + -(-len(members) // columns)

    def _fits(self, columns: int) -> bool:
        return columns * (self._narrowest() + GAP_PX) - GAP_PX <= self.width()

    def _narrowest(self) -> int:
        """Return how wide a column must be at least, its words on two lines."""
        return max(button.minimumSizeHint().width() for button in self.buttons)

    def _clicked(self, kind: EventKind, _checked: bool = False) -> None:
        """Keep the kind that was pressed last; a second press takes it back."""
        self.choose(kind if self._by_kind[kind].isChecked() else None)
