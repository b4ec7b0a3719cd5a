"""List of the days of sessions on a card: whole rows of it alone, as high as fill the card."""

from PySide6.QtCore import QRectF, QSize, Qt, Slot
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QListWidget, QWidget

from gui.style.focus_ring import paint_ring, shows_ring
from gui.style.measures import GAP_PX


class SessionList(QListWidget):
    """A calm list whose bar shows that it goes on.

    Its ring is seen only where the keyboard is in use.
    """

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("role", "open")
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if shows_ring(self):
            painter = QPainter(self.viewport())
            paint_ring(painter, QRectF(self.viewport().rect()))
            painter.end()


class SessionsCard(QWidget):
    """Card of a list that shows whole rows of it alone, with the same room on every side."""

    def __init__(self, listed: QListWidget) -> None:
        super().__init__()
        self._list = listed
        self._card = QFrame(self)
        self._card.setProperty("role", "card")
        listed.setParent(self)
        listed.model().rowsInserted.connect(self._fit)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def needed_px(self) -> int:
        """Return the width in which no row is cut short, with room for the bar beside them."""
        listed = self._list
        # A height that a row was given hides how wide it would be.
        for place in range(listed.count()):
            listed.item(place).setSizeHint(QSize())
        listed.ensurePolished()
        bar_px = listed.verticalScrollBar().sizeHint().width()
        rows_px = listed.sizeHintForColumn(0)
        self._fit()
        return rows_px + bar_px + 2 * listed.frameWidth() + 2 * GAP_PX

    @Slot()
    def _fit(self) -> None:
        listed, frame = self._list, 2 * self._list.frameWidth()
        items = [listed.item(place) for place in range(listed.count())]
        for item in items:
            item.setSizeHint(QSize())
        high, room = listed.sizeHintForRow(0), self.height() - 2 * GAP_PX - frame
        whole = max(1, room // high) if high > 0 else 0
        if whole < len(items):
            high = max(high, room // whole)
        for item in items:
            item.setSizeHint(QSize(0, high))
        self._card.setGeometry(self.rect())
        within = self.width() - 2 * GAP_PX
        listed.setGeometry(GAP_PX, GAP_PX, within, min(whole, len(items)) * high + frame)
