"""Buttons and rows of buttons: key beside the text, shortened name, menu, lines that break."""

from collections.abc import Callable, Sequence
from functools import partial
from typing import Any

from PySide6.QtCore import QDeadlineTimer, QEvent, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFont,
    QFontMetrics,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPaintEvent,
    QResizeEvent,
    QShortcut,
)
from PySide6.QtWidgets import (
    QAbstractButton,
    QMenu,
    QPushButton,
    QSizePolicy,
    QStyle,
    QStyleOptionButton,
    QStylePainter,
    QWidget,
)

from gui.style.focus_ring import INSET_PX, paint_link_focus, paint_ring, shows_ring
from gui.style.measures import CONTENT_PX
from gui.widgets.layouts import ArrangedWidget

#: Space between the buttons of a ButtonRow, and between its lines, pixels. [technical]
BUTTON_GAP_PX = 16
_LINE_GAP_PX = 8
#: Room that padding and the gap after the icon need beside a shortened name, pixels. [technical]
_AROUND_ICON_PX = 52
#: Least room for a shortened name, pixels. [technical]
_LEAST_NAME_PX = 40
#: How long a button is held back: nobody takes in its words sooner, milliseconds. [project]
HELD_BACK_MS = 1000
#: Says that a button opens a list.
_ARROW = "\u25be"
#: Roles of buttons that look like links: flush with the text around them.
_LINKS = ("link", "line-link")


class RingedButton(QPushButton):
    """A button that draws back from its edge to leave room for the ring."""

    def paintEvent(self, event: QPaintEvent) -> None:
        if not shows_ring(self):
            super().paintEvent(event)
            return
        option = QStyleOptionButton()
        self.initStyleOption(option)
        option.state &= ~QStyle.StateFlag.State_HasFocus
        painter = QStylePainter(self)
        if self.property("role") in _LINKS:
            paint_link_focus(painter, QRectF(self.rect()))
            painter.drawControl(QStyle.ControlElement.CE_PushButton, option)
        else:
            # Only the ground draws back: a word keeps the room that it has without the ring.
            words = QStyleOptionButton(option)
            inside = QStyle.SubElement.SE_PushButtonContents
            words.rect = self.style().subElementRect(inside, option, self)
            option.rect = option.rect.adjusted(INSET_PX, INSET_PX, -INSET_PX, -INSET_PX)
            painter.drawControl(QStyle.ControlElement.CE_PushButtonBevel, option)
            painter.drawControl(QStyle.ControlElement.CE_PushButtonLabel, words)
            paint_ring(painter, self.ring_place())
        painter.end()

    def ring_place(self) -> QRectF:
        """Return where the ring of the keyboard is."""
        return QRectF(self.rect())


class ShortcutButton(RingedButton):
    """A button that shows its key beside its text where there is room for both.

    The second click of a double click presses it only if the first one did: it may have been meant
    for the button that stood in its place before. So may what presses a button that is held back.
    """

    #: The button that the mouse pressed last.
    _last_pressed: "ShortcutButton | None" = None

    def __init__(self, text: str, key: str) -> None:
        super().__init__(text)
        self._text, self._key = text, key
        self._held = QDeadlineTimer(0)
        self.say(text)

    def hold_back(self) -> None:
        """Let mouse and keyboard not press it for a moment: it has just come to where it is."""
        self._held.setRemainingTime(HELD_BACK_MS)

    def say(self, text: str, key: str | None = None) -> None:
        """Give the button another text, and another key unless it keeps its own."""
        self._text = text
        self._key = self._key if key is None else key
        self.setAccessibleName(text)
        self.setAccessibleDescription(self._key)
        self._fit()

    def sizeHint(self) -> QSize:
        """Return the size of the text alone, so that the key never takes room from others."""
        hint = super().sizeHint()
        bold_word = self.property("role") == "word"
        shown = self.text()
        if shown == self._text and not bold_word:
            return hint
        wide = self.fontMetrics().horizontalAdvance
        needed = wide(self._text)
        if bold_word:
            # It is bold while its page is shown, and must not be cut then.
            bold = QFont(self.font())
            bold.setBold(True)
            needed = QFontMetrics(bold).horizontalAdvance(self._text)
        return QSize(hint.width() + needed - wide(shown), hint.height())

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        held = not self._held.hasExpired()
        ShortcutButton._last_pressed = None if held else self
        if not held:
            super().mousePressEvent(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        if ShortcutButton._last_pressed is self:
            super().mouseDoubleClickEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter press it like Space, where Enter does nothing else on the page."""
        enters = (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if event.key() in (*enters, Qt.Key.Key_Space) and not self._held.hasExpired():
            return
        if event.key() in enters and not event.isAutoRepeat():
            self.click()
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.EnabledChange:
            self._fit()

    def whole_width(self) -> int:
        """Return the width that text and key need together."""
        wide = self.fontMetrics().horizontalAdvance
        return self.sizeHint().width() + wide(self._whole()) - wide(self._text)

    def _whole(self) -> str:
        """Return text and key; a button that cannot be pressed names no key."""
        named = self._key and self.isEnabled()
        return f"{self._text}  \u00b7  {self._key}" if named else self._text

    def _fit(self) -> None:
        wanted = self._whole() if self.whole_width() <= self.width() else self._text
        if wanted != self.text():
            self.setText(wanted)


class WrappedButton(ShortcutButton):
    """A button for a column: its text goes on in a second line where it is too long."""

    def __init__(self, text: str) -> None:
        super().__init__(text, "")
        self.setProperty("role", "narrow")
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def sizeHint(self) -> QSize:
        return self._size(self._text)

    def minimumSizeHint(self) -> QSize:
        """Return the width of two lines, and the height of one: the width decides on more."""
        return QSize(self._size(_in_two_lines(self._text)).width(), self.sizeHint().height())

    def heightForWidth(self, width: int) -> int:
        return self._size(self._text_in(width)).height()

    def _size(self, text: str) -> QSize:
        """Return the size with another text than the present one."""
        measure, plain = self.fontMetrics().size, Qt.TextFlag.TextShowMnemonic
        return QPushButton.sizeHint(self) + measure(plain, text) - measure(plain, self.text())

    def _text_in(self, width: int) -> str:
        fits = self._size(self._text).width() <= width
        return self._text if fits else _in_two_lines(self._text)

    def _fit(self) -> None:
        wanted = self._text_in(self.width())
        if wanted != self.text():
            self.setText(wanted)


def _in_two_lines(text: str) -> str:
    """Return a text broken at the space nearest to its middle, if it has one."""
    spaces = [place for place, sign in enumerate(text) if sign == " "]
    if not spaces:
        return text
    middle = min(spaces, key=lambda place: abs(2 * place + 1 - len(text)))
    return f"{text[:middle]}\n{text[middle + 1 :]}"


def button(text: str, role: str = "", *, key: str = "", checkable: bool = False) -> ShortcutButton:
    """Return a button; roles: main, large, link, tile, word, or none."""
    made = ShortcutButton(text, key)
    made.setProperty("role", role)
    made.setCheckable(checkable)
    return made


def give_role(target: QWidget, role: str) -> None:
    """Give a button or a label another role of the style sheet."""
    if target.property("role") != role:
        target.setProperty("role", role)
        target.style().unpolish(target)
        target.style().polish(target)


def bind_keys(page: QWidget, target: QAbstractButton, *keys: str) -> None:
    """Let keys press a button; they work on its page only, and beat a focused button."""
    for key in keys:
        shortcut = QShortcut(QKeySequence(key), page)
        shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        shortcut.setAutoRepeat(False)
        shortcut.activated.connect(target.click)


def _paint_at_end(on: QPushButton, sign: str) -> None:
    """Paint a sign at the end of a button's line."""
    beside = _AROUND_ICON_PX // 2
    painter = QStylePainter(on)
    painter.setPen(on.palette().buttonText().color())
    at = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
    painter.drawText(on.rect().adjusted(beside, 0, -beside, 0), int(at), sign)
    painter.end()


class ElidedButton(ShortcutButton):
    """Shows an icon and a name of any length; its tool tip is the whole.

    Where the longest name has no room beside an icon, names stand alone, and one is shortened only
    where even then it does not fit. The chosen one has a tick at its end.
    """

    def __init__(self, name: str) -> None:
        self._whole_icon, self._longest = QSize(0, 0), name
        super().__init__(name, "")
        self.setProperty("role", "tile")
        self.setCheckable(True)
        self.setToolTip(name)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)

    def sizeHint(self) -> QSize:
        return super().sizeHint() + QSize(self._tick_room(), 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self.isChecked():
            _paint_at_end(self, "\u2713")

    def _tick_room(self) -> int:
        return self.fontMetrics().height()

    def set_thumbnail_size(self, size: QSize, longest: str) -> None:
        """Give the icon this size where the longest name of all tiles has room beside it."""
        self._whole_icon, self._longest = size, longest
        self._fit()

    def _fit(self) -> None:
        whole, icon = self.width() - _AROUND_ICON_PX, self._whole_icon.width()
        whole -= self._tick_room()
        beside = self.fontMetrics().horizontalAdvance(self._longest) <= whole - icon
        self.setIconSize(self._whole_icon if beside else QSize(0, 0))
        room = max(_LEAST_NAME_PX, whole - icon if beside else whole)
        wanted = self.fontMetrics().elidedText(self._text, Qt.TextElideMode.ElideMiddle, room)
        if wanted != self.text():
            self.setText(wanted)


class MenuButton(RingedButton):
    """Opens a short list and shows the value chosen from it; a value is any object.

    As a `field` of a form it has its text where fields to type into have it, the arrow at its end.
    """

    picked = Signal(object)

    def __init__(self, title: str, parent: QWidget | None = None, *, field: bool = False) -> None:
        super().__init__(parent)
        self._field = field
        self.setProperty("role", "field" if field else "")
        self._title = title
        self.setAccessibleName(title)
        self.values: tuple[Any, ...] = ()
        #: The chosen value, or None when there is nothing to choose from.
        self.value: Any = None
        self._words: Callable[[Any], str] = str
        self.setMenu(QMenu(self))

    def offer(self, values: Sequence[Any], words: Callable[[Any], str]) -> None:
        """Offer other values; the first is chosen."""
        self.values, self._words = tuple(values), words
        self.menu().clear()
        for value in self.values:
            self.menu().addAction(words(value)).triggered.connect(partial(self._pick, value))
        self.choose(self.values[0] if self.values else None)

    def name(self, title: str) -> None:
        """Say what is chosen here, for who hears it."""
        self._title = title
        self.choose(self.value)

    def choose(self, value: Any) -> None:
        """Show a value as chosen, without a signal."""
        offered = value in self.values
        self.value = value if offered else None
        text = self._words(value) if offered else ""
        self.setText(text if self._field else f"{text}  {_ARROW}")
        self.setAccessibleName(f"{self._title}: {text}")

    def initStyleOption(self, option: QStyleOptionButton) -> None:
        """Keep the padding, which the style leaves out where it knows of a list."""
        super().initStyleOption(option)
        if self._field:
            option.features &= ~QStyleOptionButton.ButtonFeature.HasMenu

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self._field:
            _paint_at_end(self, _ARROW)

    def _pick(self, value: Any, _checked: bool = False) -> None:
        self.choose(value)
        self.picked.emit(value)


class ButtonRow(ArrangedWidget):
    """Buttons as wide as their words: the main one at the line's end, the others at its beginning.

    Buttons that do not fit into one line go on in the next; keys are shown where all have room.
    The row is as wide as the content of a page, or as its place if it is `wide`;
    buttons are so many pixels `apart`.
    """

    def __init__(
        self,
        buttons: Sequence[QPushButton],
        parent: QWidget | None = None,
        *,
        wide: bool = False,
        apart: int = BUTTON_GAP_PX,
    ) -> None:
        super().__init__(parent)
        self._apart = apart
        self._wide_row = wide
        self.buttons = tuple(buttons)
        for member in self.buttons:
            member.setParent(self)
        self._height = 0
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        """Return the width of one line, and the height of the present lines."""
        return QSize(self._wide(self._widths(with_keys=True)), self._lines_height())

    def minimumSizeHint(self) -> QSize:
        """Return one button's width, and the height of the present lines."""
        return QSize(max(self._widths(), default=0), self._lines_height())

    def _arrange(self) -> None:
        room, widths = self._room(), self._widths_here()
        high, top = self._button_height(), 0
        for line in self._lines(widths):
            left = (self.width() - room) // 2
            right = left + room
            for member, wide in line:
                if not self._at_end(member):
                    self._put(member, left, top, wide, high)
                    left += wide + self._apart
            for member, wide in reversed(line):
                if self._at_end(member):
                    right -= wide
                    self._put(member, right, top, wide, high)
                    right -= self._apart
            top += high + _LINE_GAP_PX
        if self._lines_height() != self._height:
            self._height = self._lines_height()
            self.updateGeometry()

    @staticmethod
    def _at_end(member: QPushButton) -> bool:
        """Whether a button stands at its line's end: the main one, and one that will be it."""
        return member.property("role") == "main" or bool(member.property("leads_on"))

    def _widths_here(self) -> list[int]:
        """Return the widths of the buttons, with their keys where all have room."""
        widths = self._widths(with_keys=True)
        return widths if self._wide(widths) <= self._room() else self._widths()

    def _put(self, member: QPushButton, left: int, top: int, wide: int, high: int) -> None:
        place = QRect(left, top, wide, high)
        member.setGeometry(QStyle.visualRect(self.layoutDirection(), self.rect(), place))

    def _lines(self, widths: list[int]) -> list[list[tuple[QPushButton, int]]]:
        """Return buttons and their widths, line by line."""
        lines: list[list[tuple[QPushButton, int]]] = [[]]
        used = 0
        for member, wide in zip(self._shown(), widths, strict=True):
            if lines[-1] and used + wide > self._room():
                lines.append([])
                used = 0
            lines[-1].append((member, min(wide, self._room())))
            used += wide + self._apart
        return lines

    def _lines_height(self) -> int:
        widths = self._widths()
        number = len(self._lines(widths)) if widths else 0
        return max(0, number * (self._button_height() + _LINE_GAP_PX) - _LINE_GAP_PX)

    def _room(self) -> int:
        """Return the width for the buttons, in the middle of a wider row."""
        return self.width() if self._wide_row else min(self.width(), CONTENT_PX)

    def _shown(self) -> list[QPushButton]:
        return [member for member in self.buttons if member.isVisibleTo(self)]

    def _widths(self, *, with_keys: bool = False) -> list[int]:
        return [
            member.whole_width()
            if with_keys and isinstance(member, ShortcutButton)
            else member.minimumSizeHint().width()
            for member in self._shown()
        ]

    def _button_height(self) -> int:
        return max((member.sizeHint().height() for member in self._shown()), default=0)

    def _wide(self, widths: list[int]) -> int:
        return sum(widths) + self._apart * max(0, len(widths) - 1)
