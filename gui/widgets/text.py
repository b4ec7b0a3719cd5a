"""Plain pieces of a page: labels, buttons and frames with a role of the style sheet."""

from PySide6.QtCore import QEvent, QObject, QSize, Qt
from PySide6.QtGui import QPaintEvent, QResizeEvent
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QLabel,
    QLayout,
    QPushButton,
    QScrollArea,
    QScrollBar,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)


def label(text: str, role: str = "") -> QLabel:
    """Return a wrapping label; roles: title, lead, quiet, small, alarm, or none."""
    made = QLabel(text)
    made.setProperty("role", role)
    made.setWordWrap(True)
    made.setTextFormat(Qt.TextFormat.PlainText)
    policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
    policy.setHeightForWidth(True)
    made.setSizePolicy(policy)
    return made


class ShortcutButton(QPushButton):
    """A button that tells its key beside its text where there is room for both."""

    def __init__(self, text: str, key: str) -> None:
        super().__init__(text)
        self._text, self._key = text, key
        self.say(text)

    def say(self, text: str) -> None:
        """Give the button another text."""
        self._text = text
        self.setAccessibleName(text)
        self.setAccessibleDescription(self._key)
        self._fit()

    def sizeHint(self) -> QSize:
        """Return the size of the text alone, so that the key never takes room from others."""
        hint = super().sizeHint()
        metrics = self.fontMetrics()
        spare = metrics.horizontalAdvance(self.text()) - metrics.horizontalAdvance(self._text)
        return QSize(hint.width() - spare, hint.height())

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        whole = f"{self._text}  \u00b7  {self._key}" if self._key else self._text
        room = self.fontMetrics().horizontalAdvance(whole) + 48 <= self.width()
        wanted = whole if room else self._text
        if wanted != self.text():
            self.setText(wanted)


def button(text: str, role: str = "", *, key: str = "", checkable: bool = False) -> ShortcutButton:
    """Return a button; roles: main, large, link, tile, word, or none."""
    made = ShortcutButton(text, key)
    made.setProperty("role", role)
    made.setCheckable(checkable)
    return made


def card(*contents: QWidget, role: str = "card", spacing: int = 8) -> QFrame:
    """Return a frame with the contents one below the other."""
    made = QFrame()
    made.setProperty("role", role)
    layout = QVBoxLayout(made)
    layout.setContentsMargins(20, 16, 20, 16)
    layout.setSpacing(spacing)
    for content in contents:
        layout.addWidget(content)
    return made


def separator() -> QFrame:
    made = QFrame()
    made.setProperty("role", "hair")
    made.setFixedHeight(1)
    return made


class _Bar(QScrollBar):
    """Takes its room always, and is seen only where there is something to scroll."""

    def paintEvent(self, event: QPaintEvent) -> None:
        if self.maximum() > self.minimum():
            super().paintEvent(event)


class _ScrollPage(QScrollArea):
    """Scrolls up and down, and hears at once when its page needs more room.

    The page is as wide with the bar as without: if a bar that comes made the page narrower, and
    a narrower page did without the bar, the two would chase each other until the stack is full.
    """

    def __init__(self, page: QWidget) -> None:
        super().__init__()
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBar(_Bar())
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        self._page = page
        self._least = QSize()
        self.setWidget(page)

    def minimumSizeHint(self) -> QSize:
        """Return no less width than the page needs: nothing scrolls from side to side."""
        least = super().minimumSizeHint()
        needed = self._page.minimumSizeHint().width() + self.verticalScrollBar().width()
        return QSize(max(least.width(), needed), least.height())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.LayoutRequest and watched is self._page:
            least = self.minimumSizeHint()
            if least != self._least:
                self._least = least
                self.updateGeometry()
            QApplication.postEvent(self, QEvent(QEvent.Type.LayoutRequest))
        return super().eventFilter(watched, event)


def scrollable(page: QWidget) -> QScrollArea:
    """Return the page in an area that scrolls when large type does not fit."""
    page.setObjectName("page")
    return _ScrollPage(page)


def clear_layout(layout: QLayout) -> None:
    """Take everything out of a layout, out of sight at once."""
    while (item := layout.takeAt(0)) is not None:
        widget = item.widget()
        if widget is not None:
            widget.hide()
            widget.deleteLater()
