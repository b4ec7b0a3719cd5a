"""Choice of a movement in one line: a row of buttons, or a menu where the row has no room."""

from collections.abc import Sequence

from PySide6.QtCore import QSize, Signal, Slot
from PySide6.QtWidgets import QPushButton, QSizePolicy, QWidget

from gui.text.wording import short_movement_name, tr
from gui.widgets.buttons import MenuButton
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import ArrangedWidget
from measure.domain.movements import Movement


class MovementChoice(ArrangedWidget):
    """Offers the movements that were measured; the row and the menu always show the same one."""

    #: Another movement is chosen.
    picked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._title = tr("movement")
        self.offered: tuple[Movement, ...] = ()
        self.row: ChoiceRow[Movement] = ChoiceRow([], short_movement_name, title=self._title)
        self.menu = MenuButton(self._title)
        self.menu.picked.connect(self._take_from_menu)
        for part in (self.row.row, self.menu):
            part.setParent(self)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def offer(self, movements: Sequence[Movement]) -> None:
        """Offer these movements; the chosen one stays if it is among them, else the first is."""
        before, self.offered = self.value, tuple(movements)
        self.row.row.hide()
        self.row.row.deleteLater()
        self.row = ChoiceRow(self.offered, short_movement_name, title=self._title)
        self.row.row.setParent(self)
        self.row.picked.connect(self._take_from_row)
        self.menu.offer(self.offered, short_movement_name)
        self.choose(before if before in self.offered else self.offered[0])
        self._arrange()

    @property
    def value(self) -> Movement | None:
        """The chosen movement, or None while none is offered."""
        chosen: Movement | None = self.menu.value
        return chosen

    def choose(self, movement: Movement) -> None:
        """Show a movement as chosen, without a signal."""
        self.row.choose(movement)
        self.menu.choose(movement)

    def button(self, movement: Movement) -> QPushButton:
        return self.row.button(movement)

    def sizeHint(self) -> QSize:
        return QSize(self.row.row.sizeHint().width(), self._high())

    def minimumSizeHint(self) -> QSize:
        return QSize(self.menu.minimumSizeHint().width(), self._high())

    def _arrange(self) -> None:
        wide = self.row.row.sizeHint().width()
        in_row = bool(self.offered) and wide <= self.width()
        self.row.row.setVisible(in_row)
        self.menu.setVisible(not in_row)
        self.row.row.setGeometry(0, 0, wide, self.height())
        least = self.menu.sizeHint().width()
        self.menu.setGeometry(0, 0, min(least, self.width()), self.height())

    def _high(self) -> int:
        return self.menu.sizeHint().height()

    @Slot(int)
    def _take_from_row(self, _place: int) -> None:
        chosen = self.row.value
        if chosen is not None:
            self.menu.choose(chosen)
            self.picked.emit()

    @Slot(object)
    def _take_from_menu(self, movement: Movement) -> None:
        self.row.choose(movement)
        self.picked.emit()
