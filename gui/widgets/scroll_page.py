"""A page that scrolls up and down when large type does not fit."""

from collections.abc import Callable, Iterable
from functools import partial

from PySide6.QtCore import QEvent, QObject, QPoint, QPointF, QRect, QSize, Qt, QTimer, Slot
from PySide6.QtGui import (
    QColor,
    QGuiApplication,
    QKeyEvent,
    QLinearGradient,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
    QShowEvent,
)
from PySide6.QtWidgets import (
    QAbstractScrollArea,
    QFrame,
    QLabel,
    QScrollArea,
    QScrollBar,
    QWidget,
)

from gui.style.measures import BAR_PX, CARD_PADDING_PX, CONTENT_PX, GAP_PX

#: The width of what may be as wide as the window; Qt's own, which it does not export. [technical]
_NO_LIMIT = 16_777_215
#: Height of the fading strip, pixels: about a line of text at 100 %. [technical]
STRIP_PX = 5 * GAP_PX
#: Share of the strip, from its upper edge, in which the ground comes to cover everything.
#: [technical]
_COVERED_FROM = 0.5
#: Half the width of the arrow's head, and its thickness, pixels. [technical]
_ARROW_PX, _LINE_PX = 7, 2
#: Pixels of an area that may lie below its edge without a word: empty margin. [technical]
_MARGIN_PX = 8
#: Most pixels of a line that are covered so that it is not cut: a larger part is worth seeing.
#: [technical]
_MOST_COVERED_PX = 25 * GAP_PX


class _Bar(QScrollBar):
    """Takes its room always, and is seen only where there is something to scroll."""

    def paintEvent(self, event: QPaintEvent) -> None:
        if self.maximum() > self.minimum():
            super().paintEvent(event)


class MoreBelow(QWidget):
    """A painted strip on a scroll area, seen while there is more below; no control, never read.

    Parameters
    ----------
    ground
        Colour into which what lies below fades, or None for the area's own.
    beside_px
        Room left free at both ends, where the area has round corners.
    covered_from
        Share of the strip from which on the ground covers everything.
    """

    def __init__(
        self,
        area: QAbstractScrollArea,
        ground: QColor | None = None,
        beside_px: int = 0,
        covered_from: float = _COVERED_FROM,
    ) -> None:
        super().__init__(area)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._area, self._bar = area, area.verticalScrollBar()
        self._ground, self._beside_px, self._covered_from = ground, beside_px, covered_from
        self._bar.valueChanged.connect(self.refresh)
        self._bar.rangeChanged.connect(self.refresh)
        area.viewport().installEventFilter(self)
        self.refresh()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.Resize, QEvent.Type.Move, QEvent.Type.Show):
            self.refresh()
        return super().eventFilter(watched, event)

    @Slot()
    def refresh(self) -> None:
        """Lie along the lower edge, or be gone where the end is seen."""
        seen = self._area.viewport().geometry()
        strip = seen.adjusted(self._beside_px, 0, -self._beside_px, 0)
        strip.setTop(self.top_in(seen))
        self.setGeometry(strip)
        self.setVisible(self._bar.maximum() - self._bar.value() > _MARGIN_PX)
        self.raise_()

    def top_in(self, seen: QRect) -> int:
        """Return where the strip begins on what is seen of the area, pixels."""
        return seen.bottom() + 1 - STRIP_PX

    def paintEvent(self, event: QPaintEvent) -> None:
        ground = self._ground or self._area.palette().color(QPalette.ColorRole.Window)
        clear = QColor(ground)
        clear.setAlphaF(0.0)
        fading = QLinearGradient(0, 0, 0, self.height())
        fading.setColorAt(0, clear)
        fading.setColorAt(self._covered_from, ground)
        fading.setColorAt(1, ground)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), fading)
        painter.setPen(
            QPen(self._area.palette().color(QPalette.ColorRole.PlaceholderText), _LINE_PX)
        )
        tip = QPointF(self.width() / 2, self.height() - _LINE_PX - 2)
        for side in (-_ARROW_PX, _ARROW_PX):
            painter.drawLine(tip, tip + QPointF(side, -_ARROW_PX))
        painter.end()


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
        self._least = QSize()
        self.setWidget(page)
        MoreBelow(self)

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


def scrollable(page: QWidget, *, wide: bool = False) -> QScrollArea:
    """Return the page in an area that scrolls when large type does not fit.

    The page is at most as wide as text is read with ease, in the middle; a wide one, of pictures,
    takes the whole width.
    """
    page.setObjectName("page")
    return _ScrollPage(page, _NO_LIMIT if wide else CONTENT_PX)


class _Cover(QWidget):
    """Covers the first line that the lower edge of an area would cut; no control, never read."""

    def __init__(self, area: QScrollArea, lines: Callable[[], Iterable[QWidget]]) -> None:
        super().__init__(area)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._area, self._lines = area, lines
        self._ground = QPalette.ColorRole.Window
        self._timer = QTimer(self, singleShot=True, interval=0)
        self._timer.timeout.connect(self._place)
        bar = area.verticalScrollBar()
        for changed in (bar.valueChanged, bar.rangeChanged):
            changed.connect(self._place_soon)
        for watched in (area.viewport(), area.widget()):
            assert watched is not None
            watched.installEventFilter(self)
        self.hide()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        kinds = QEvent.Type
        if event.type() in (kinds.Resize, kinds.LayoutRequest, kinds.Show):
            self._timer.start()
        return super().eventFilter(watched, event)

    @Slot()
    def _place_soon(self) -> None:
        self._timer.start()

    @Slot()
    def _place(self) -> None:
        seen, bar = self._area.viewport().geometry(), self._area.verticalScrollBar()
        self.hide()
        if bar.maximum() - bar.value() <= _MARGIN_PX:
            return
        for line in self._lines():
            top = line.mapTo(self._area, QPoint(0, 0)).y()
            near = seen.bottom() - _MOST_COVERED_PX < top < seen.bottom()
            if line.isVisible() and near and top + line.height() > seen.bottom() - STRIP_PX:
                covered = _outermost(line)
                place = covered.mapTo(self._area, QPoint(0, 0))
                high = seen.bottom() + 1 - place.y()
                self.setGeometry(place.x(), place.y(), covered.width(), high)
                roles = QPalette.ColorRole
                self._ground = roles.Base if _on_card(covered) else roles.Window
                self.show()
                return

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), QGuiApplication.palette().color(self._ground))
        painter.end()


def _outermost(line: QWidget) -> QWidget:
    """Return what a line is the first in, so that no empty card is left of it; or the line."""
    above = line.parentWidget()
    while above is not None and above.objectName() != "page" and line.y() <= CARD_PADDING_PX:
        line, above = above, above.parentWidget()
    return line


def _on_card(line: QWidget) -> bool:
    """Whether a part of a page stands on a card, not on the page's own ground."""
    above = line.parentWidget()
    while above is not None and above.objectName() != "page":
        if isinstance(above, QFrame) and str(above.property("role")).endswith("card"):
            return True
        above = above.parentWidget()
    return False


def keep_whole(page: QWidget, lines: Callable[[], Iterable[QWidget]]) -> None:
    """Let no line of a page be seen in part at the lower edge of its area: it is not seen yet.

    Parameters
    ----------
    page
        An area of :func:`scrollable`, or a widget with one inside.
    lines
        Returns the lines from top to bottom.
    """
    area = page if isinstance(page, QScrollArea) else page.findChild(_ScrollPage)
    assert area is not None
    _Cover(area, lines).lower()
    area.viewport().lower()


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
