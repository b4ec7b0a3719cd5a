"""What is done with the chosen rows: movement and side, opening, removing; laid into the table."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import QBoxLayout, QSizePolicy, QWidget

from gui.style.measures import GAP_PX
from gui.text.wording import movement_name, side_title, tr
from gui.widgets.buttons import MenuButton, button
from gui.widgets.layouts import row, widget_with
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.movements import Movement

#: Space between the two links, and between the choices and the links beside them, pixels.
#: [technical]
_LINKS_GAP_PX = 3 * GAP_PX


def movement_menu(name: str) -> MenuButton:
    """Return a button that offers every movement, and none as long as it is not known."""
    made = MenuButton(name)
    made.offer([None, *Movement], _movement_words)
    return made


def side_menu(name: str) -> MenuButton:
    """Return a button that offers both sides, and none as long as it is not known."""
    made = MenuButton(name)
    made.offer([None, *Side], _side_words)
    return made


def _movement_words(movement: Movement | None) -> str:
    return tr("Movement") if movement is None else movement_name(movement)


def _side_words(side: Side | None) -> str:
    return tr("Side") if side is None else side_title(side)


def _widest(menu: MenuButton, words: Callable[[Any], str]) -> int:
    """Return the width that a menu needs, whichever of its values is chosen."""
    metrics = menu.fontMetrics()
    frame = menu.sizeHint().width() - metrics.horizontalAdvance(menu.text())
    offered = (f"{words(value)}  \u25be" for value in menu.values)
    return frame + max(map(metrics.horizontalAdvance, offered))


class RowTools:
    """The tools of the row that is opened, placed by the table that they lie in."""

    def __init__(self) -> None:
        self.movement = movement_menu(tr("Movement of the selected clips"))
        self.side = side_menu(tr("Side of the selected clips"))
        self.open_clip = button(tr("Open"), "line-link", key=tr("Enter"))
        self.open_clip.setAccessibleName(tr("Open the selected clip"))
        self.remove = button(tr("Remove"), "line-link", key=tr("Delete"))
        self.remove.setAccessibleName(tr("Remove the selected clips from the list"))
        #: What the choices of the opened row apply to, or why its clip has no reading.
        self.note = label("", "small")
        self._both = row(self.movement, self.side, 1, spacing=GAP_PX)
        self._choices = widget_with(self._both)
        self._links = widget_with(row(self.open_clip, self.remove, 1, spacing=_LINKS_GAP_PX))
        for part in (self._choices, self._links):
            part.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def lie_in(self, table: QWidget) -> None:
        """Become parts of a table's content."""
        for part in (self._choices, self._links, self.note):
            part.setParent(table)
            part.hide()

    def widest_choice(self) -> int:
        """Return the width that the movement needs, or the side, whichever are chosen."""
        return max(
            _widest(self.movement, _movement_words),
            _widest(self.side, _side_words),
        )

    def stack_in(self, width: int | None) -> None:
        """Let the side stand beneath the movement where a width is too small for both."""
        directions = QBoxLayout.Direction
        across = self.movement.sizeHint().width() + GAP_PX + self.side.sizeHint().width()
        stacked = width is not None and across > width
        self._both.setDirection(directions.TopToBottom if stacked else directions.LeftToRight)
        side = Qt.AlignmentFlag.AlignLeft if stacked else Qt.AlignmentFlag(0)
        for choice in (self.movement, self.side):
            self._both.setAlignment(choice, side)

    @property
    def choices_height(self) -> int:
        return self._choices.sizeHint().height()

    @property
    def choices_width(self) -> int:
        return self._choices.sizeHint().width()

    @property
    def links_height(self) -> int:
        return self._links.sizeHint().height()

    @property
    def links_width(self) -> int:
        return self._links.sizeHint().width()

    @property
    def row_width(self) -> int:
        """Width of choices and links in a row."""
        return self.choices_width + _LINKS_GAP_PX + self.links_width

    def note_height(self, width: int) -> int:
        """Return the height of the note with the gap above it; 0 without one."""
        return self.note.heightForWidth(width) + GAP_PX if self.note.text() else 0

    def place_in_row(self, place: QRect, links: QPoint) -> None:
        """Lay the choices into a line, the note beneath it, and the links at the row's end."""
        self._put(place.topLeft(), place.width())
        beside = place.left() + self._choices.width() + _LINKS_GAP_PX
        corner = QPoint(max(beside, links.x()), links.y())
        self._links.setGeometry(QRect(corner, self._links.sizeHint()))

    def place_in_columns(self, choices: QPoint, width: int, links: QPoint) -> None:
        """Lay the choices into one column, with the note beneath, and the links into another."""
        self._put(choices, width)
        self._links.setGeometry(QRect(links, self._links.sizeHint()))

    def _put(self, corner: QPoint, width: int) -> None:
        choices = self._choices.sizeHint()
        self._choices.setGeometry(QRect(corner, choices))
        top = corner.y() + choices.height() + GAP_PX
        self.note.setGeometry(corner.x(), top, width, self.note.heightForWidth(width))

    def show(self, shown: bool) -> None:
        for part in (self._choices, self._links):
            part.setVisible(shown)
        self.note.setVisible(shown and bool(self.note.text()))
