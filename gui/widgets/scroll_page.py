"""A page that scrolls up and down when large type does not fit."""

from functools import partial

from PySide6.QtCore import QEvent, QObject, QPoint, QSize, Qt, QTimer
from PySide6.QtGui import QKeyEvent, QPaintEvent, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QFrame, QLabel, QScrollArea, QScrollBar, QWidget

from gui.style.measures import BAR_PX, CONTENT_PX, GAP_PX
from gui.widgets.fold import MoreBelow, Padding

#: The width of what may be as wide as the window; Qt's own, which it does not export. [technical]
_NO_LIMIT = 16_777_215


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

    def __init__(self, page: QWidget, widest_px: int) -> None:
        super().__init__()
        self.setAlignment(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop)
        page.setMaximumWidth(widest_px)
        if widest_px < _NO_LIMIT:
            # As much room on the other side of the bar, so that the middle is the window's middle.
            self.setViewportMargins(BAR_PX, 0, 0, 0)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBar(_Bar())
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)
        self._page = page
        self._padding = Padding(page)
        self._least = QSize()
        self.setWidget(page)
        MoreBelow(self)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._padding.fit(self.viewport().height())

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._ask_for_layout()
        self._choose_focus()

    def _ask_for_layout(self) -> None:
        """Let Qt post a request to lay this area out: of two it deletes one, which must be its own.

        A request that was made here and posted left a freed object in Python's hands.
        """
        self.viewport().updateGeometry()

    def _choose_focus(self) -> None:
        """Be a stop of the Tab key only where nothing inside is one: then the keys scroll here."""
        inside = self._page.findChildren(QWidget)
        stops = any(
            child.focusPolicy() & Qt.FocusPolicy.TabFocus and child.isVisibleTo(self._page)
            for child in inside
        )
        words = [child.text() for child in inside if isinstance(child, QLabel)]
        words += [child.accessibleName() for child in inside]
        if not self.accessibleName():
            self.setAccessibleName(next(filter(None, words), ""))
        policies = Qt.FocusPolicy
        useful = self.accessibleName() and not stops
        self.setFocusPolicy(policies.StrongFocus if useful else policies.NoFocus)

    def minimumSizeHint(self) -> QSize:
        """Return no less width than the page needs: nothing scrolls from side to side."""
        least = super().minimumSizeHint()
        beside = self.viewportMargins()
        needed = self._page.minimumSizeHint().width() + BAR_PX + beside.left() + beside.right()
        return QSize(max(least.width(), needed), least.height())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.LayoutRequest and watched is self._page:
            least = self.minimumSizeHint()
            if least != self._least:
                self._least = least
                self.updateGeometry()
            self._padding.fit(self.viewport().height())
            self._ask_for_layout()
            self._choose_focus()
        elif isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress:
            return self._turn(event.key())
        return super().eventFilter(watched, event)

    def show_at_top(self, shown: QWidget) -> None:
        """Scroll so that a widget of the page begins at the upper edge."""
        top = shown.mapTo(self._page, QPoint(0, 0)).y() - 2 * GAP_PX
        self.verticalScrollBar().setValue(top)

    def _turn(self, key: int) -> bool:
        """Scroll by a page for a key pressed beside the page; return whether it was one."""
        actions = QScrollBar.SliderAction
        turns = {
            Qt.Key.Key_PageUp: actions.SliderPageStepSub,
            Qt.Key.Key_PageDown: actions.SliderPageStepAdd,
        }
        if key not in turns:
            return False
        self.verticalScrollBar().triggerAction(turns[Qt.Key(key)])
        return True


def scrollable(page: QWidget, *, wide: bool = False, widest_px: int = CONTENT_PX) -> QScrollArea:
    """Return the page in an area that scrolls when large type does not fit.

    The page is at most as wide as text is read with ease, in the middle; a wide one, of pictures,
    takes the whole width.
    """
    page.setObjectName("page")
    return _ScrollPage(page, _NO_LIMIT if wide else widest_px)


def bring_into_view(shown: QWidget) -> None:
    """Scroll the page that a widget is on to it, once it has been laid out."""
    QTimer.singleShot(0, shown, partial(_bring_into_view, shown))


def bring_to_top(shown: QWidget) -> None:
    """Scroll the page so that a widget begins at its upper edge, once it has been laid out."""
    QTimer.singleShot(0, shown, partial(_bring_to_top, shown))


def _bring_to_top(shown: QWidget) -> None:
    above = shown.parentWidget()
    while above is not None:
        if isinstance(above, _ScrollPage):
            above.show_at_top(shown)
        above = above.parentWidget()


def _bring_into_view(shown: QWidget) -> None:
    above = shown.parentWidget()
    while above is not None:
        if isinstance(above, QScrollArea):
            above.ensureWidgetVisible(shown)
        above = above.parentWidget()


def back_to_top(shown: QWidget) -> None:
    """Scroll the page that a widget is on to its beginning."""
    above = shown.parentWidget()
    while above is not None:
        if isinstance(above, QScrollArea):
            above.verticalScrollBar().setValue(0)
        above = above.parentWidget()
