"""The head of the window: five words, who is measured, and the menu, in one row."""

import sys

from PySide6.QtCore import QEvent, Qt, Signal, Slot
from PySide6.QtGui import QFont, QFontMetricsF, QKeySequence, QResizeEvent, QShortcut
from PySide6.QtWidgets import (
    QButtonGroup,
    QMainWindow,
    QMenu,
    QMenuBar,
    QPushButton,
    QSizePolicy,
    QSpacerItem,
    QStyleOptionButton,
    QWidget,
)

from gui.style.measures import BODY_PX, GAP_PX, HEAD, HEAD_GROWTH, LINE, MARGIN_PX
from gui.style.style_sheet import grown
from gui.text.wording import tr
from gui.widgets.buttons import ShortcutButton, button
from gui.widgets.layouts import column, row, separator, widget_with
from gui.widgets.text import ElidedLabel

#: Space between the words where there is room, pixels. [technical]
_GAP_PX = 3 * GAP_PX
#: Space between the words, their padding included, that is kept before their type is smaller,
#: pixels. [technical]
_LEAST_GAP_PX = 3 * GAP_PX
#: Room kept for the name of who is measured, in widths of a digit. [technical]
_NAME_DIGITS = 8
#: Size of type by which widths are measured, pixels. [technical]
_MEASURED_PX = 100


class _MenuWord(ShortcutButton):
    """Opens the menu; it stands on the line of the words beside it."""

    def __init__(self) -> None:
        super().__init__(tr("&Menu") + "  \u25be", "")
        self.setProperty("role", "word")
        self.setAccessibleName(tr("Menu"))

    def initStyleOption(self, option: QStyleOptionButton) -> None:
        """Keep the padding, which the style leaves out where it knows of a list."""
        super().initStyleOption(option)
        option.features &= ~QStyleOptionButton.ButtonFeature.HasMenu


class Head(QWidget):
    """Leads to the pages; it is one row at every text size, for its type grows less than others,
    and only as far as the words have room.

    Where the system has a menu bar of its own, the menus are there and not in the row.
    """

    #: The place of a word that was pressed.
    picked = Signal(int)

    def __init__(self, window: QMainWindow, words: tuple[str, ...]) -> None:
        super().__init__()
        self._size_px = 0
        self.words: list[QPushButton] = []
        self._group = group = QButtonGroup(self)
        for place, text in enumerate(words):
            word = button(text, "word", checkable=True)
            group.addButton(word, place)
            self.words.append(word)
        group.idClicked.connect(self.picked)
        self._who = ElidedLabel("who")
        self._who.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self._menu_button = _MenuWord()
        self._menu = QMenu(self._menu_button)
        self._menu_button.setMenu(self._menu)
        native = sys.platform == "darwin"
        if native:
            self._menu_button.hide()
        #: What the menus are added to.
        self.menus: QMenu | QMenuBar = window.menuBar() if native else self._menu
        # The keys of the menus belong to the window: they work while the row is out of sight.
        window.addAction(self._menu.menuAction())
        opens = QShortcut(QKeySequence("F10"), self)
        opens.activated.connect(self._open_menu)
        contents = row(margins=(MARGIN_PX, 0, MARGIN_PX, 0), spacing=0)
        for member in self.words:
            contents.addWidget(member)
            # Gives way where words are long and the window is narrow.
            policies = QSizePolicy.Policy
            contents.addSpacerItem(QSpacerItem(_GAP_PX, 0, policies.Maximum, policies.Minimum))
        contents.addWidget(self._who, 1)
        contents.addSpacing(_GAP_PX)
        contents.addWidget(self._menu_button)
        column(widget_with(contents), separator(), on=self, spacing=0)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.FontChange:
            self._fit()

    def _fit(self) -> None:
        """Set the words as large as the text size asks for and the width allows."""
        percent = round(100 * self.font().pixelSize() / BODY_PX)
        asked = grown(BODY_PX, HEAD_GROWTH, percent) * HEAD
        least = BODY_PX * HEAD
        size = int(max(least, min(asked, self._widest_type())))
        if size != self._size_px:
            self._size_px = size
            self.setStyleSheet(
                f'QPushButton[role="word"] {{ font-size: {size}px;'
                f" min-height: {round(size * LINE)}px; }}"
                f' QLabel[role="who"] {{ font-size: {size}px; }}'
            )

    def _widest_type(self) -> float:
        """Return the size of type at which the words fill the row, pixels."""
        bold = QFont(self.font())
        bold.setPixelSize(_MEASURED_PX)
        bold.setBold(True)
        width = QFontMetricsF(bold).horizontalAdvance
        shown = [*self.words, self._menu_button]
        words = sum(width(word.text().replace("&", "")) for word in shown)
        words += _NAME_DIGITS * width("0")
        room = self.width() - 2 * MARGIN_PX - (len(shown) + 1) * _LEAST_GAP_PX
        return room / words * _MEASURED_PX

    @Slot()
    def _open_menu(self) -> None:
        if self._menu_button.isVisible():
            self._menu_button.showMenu()

    def mark(self, place: int | None) -> None:
        """Mark the word of the page that is shown; the menu where it is None."""
        self._group.setExclusive(False)
        for other, word in enumerate(self.words):
            word.setChecked(other == place)
        self._group.setExclusive(True)
        # A button with a menu that could be checked would be so by opening it.
        self._menu_button.setProperty("here", place is None)
        self._menu_button.style().unpolish(self._menu_button)
        self._menu_button.style().polish(self._menu_button)

    def show_who(self, name: str) -> None:
        """Show whose records the pages show; empty for no one's."""
        self._who.say(name)
