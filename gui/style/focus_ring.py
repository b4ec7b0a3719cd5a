"""The ring around what has the keyboard: an outline with a gap, unlike the filling of a choice.

It is shown from the first key on and goes with the mouse, so that a page opened with the mouse
does not look as if one of its answers were chosen.
"""

from functools import cache

from PySide6.QtCore import QEvent, QObject, QRectF, Qt, Slot
from PySide6.QtGui import QColor, QGuiApplication, QKeyEvent, QPainter, QPalette, QPen, QWindow
from PySide6.QtWidgets import QApplication, QWidget

from gui.style.measures import BUTTON_RADIUS_PX

#: Width of the ring, and of the ring with the gap inside it, pixels. [technical]
_RING_PX = 3
INSET_PX = 5
#: Opacity of the ground behind a link that has the keyboard, of 255. [technical]
_LINK_GROUND = 28
_MODIFIERS = (Qt.Key.Key_Shift, Qt.Key.Key_Control, Qt.Key.Key_Alt, Qt.Key.Key_Meta)


class _LastInput(QObject):
    """Knows whether a key was pressed last, or the mouse."""

    def __init__(self) -> None:
        application = QApplication.instance()
        super().__init__(application)
        self.by_keyboard = False
        if isinstance(application, QGuiApplication):
            # Windows see every key and press before widgets do, and little besides.
            application.focusWindowChanged.connect(self._watch)
        self._watch(QGuiApplication.focusWindow())

    @Slot(QWindow)
    def _watch(self, window: QWindow | None) -> None:
        if window is not None:
            window.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        kinds = QEvent.Type
        if event.type() is kinds.KeyPress and isinstance(event, QKeyEvent):
            if event.key() not in _MODIFIERS:
                self._note(True)
        elif event.type() in (kinds.MouseButtonPress, kinds.TouchBegin):
            self._note(False)
        return False

    def _note(self, by_keyboard: bool) -> None:
        focused = QApplication.focusWidget()
        if by_keyboard is not self.by_keyboard and focused is not None:
            focused.update()
        self.by_keyboard = by_keyboard


@cache
def _last_input() -> _LastInput:
    return _LastInput()


def shows_ring(widget: QWidget) -> bool:
    """Return whether a widget has the focus of a keyboard that is in use."""
    return _last_input().by_keyboard and widget.hasFocus()


def paint_ring(painter: QPainter, place: QRectF) -> None:
    """Paint the ring just inside a place, in the colour of text."""
    half = _RING_PX / 2
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(QApplication.palette().color(QPalette.ColorRole.WindowText), _RING_PX))
    painter.drawRoundedRect(
        place.adjusted(half, half, -half, -half), BUTTON_RADIUS_PX, BUTTON_RADIUS_PX
    )


def paint_link_focus(painter: QPainter, place: QRectF) -> None:
    """Paint a ground and a bar beneath a link, which has no room for a ring beside its text."""
    ink = QApplication.palette().color(QPalette.ColorRole.WindowText)
    ground = QColor(ink)
    ground.setAlpha(_LINK_GROUND)
    painter.fillRect(place, ground)
    painter.fillRect(place.adjusted(0, place.height() - _RING_PX, 0, 0), ink)
