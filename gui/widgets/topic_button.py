"""A large link with a line that says what is behind it; several of them in columns."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRect, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPalette, QPen, QResizeEvent
from PySide6.QtWidgets import QGridLayout, QSizePolicy, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import CARD_PADDING_PX, GAP_PX
from gui.widgets.buttons import RingedButton
from gui.widgets.layouts import EDGE_BAR_PX, column, fill_edge_bar, row
from gui.widgets.text import label

#: Room inside above and beside the words, pixels. [technical]
_PADDING_PX = (GAP_PX + 4, CARD_PADDING_PX)
#: Half the sign that a topic leads on, pixels. [technical]
_SIGN_PX = 6
#: Space between two, pixels. [technical]
_BETWEEN_PX = 2 * GAP_PX
#: Least width of a column, in widths of a digit. [technical]
_LEAST_DIGITS = 34
#: Most columns that are read with ease. [technical]
_MOST_COLUMNS = 2


class TopicButton(RingedButton):
    """Leads to a page: its name, and beneath it what it holds.

    Parameters
    ----------
    urgent
        The appearance, where it may not wait: its edge is red where its words begin, and it has a
        line of its own.
    """

    def __init__(self, name: str, line: str, *, urgent: Appearance | None = None) -> None:
        super().__init__()
        self._appearance, self.urgent = urgent, urgent is not None
        self.setProperty("role", "topic")
        self.setAccessibleName(name)
        self.setAccessibleDescription(line)
        self.name, self.line = label(name, "strong"), label(line, "quiet")
        above, beside = _PADDING_PX
        words = column(self.name, self.line, 1, spacing=GAP_PX // 4)
        margins = (beside, above, beside + _SIGN_PX + GAP_PX, above)
        self._inside = row((words, 1), on=self, margins=margins)
        for member in self.findChildren(QWidget):
            member.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint also the sign that it leads on, at the line's end."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.palette().color(QPalette.ColorRole.PlaceholderText), 2))
        leads_left = self.layoutDirection() is Qt.LayoutDirection.RightToLeft
        if self._appearance is not None:
            self._paint_edge(painter, self._appearance, at_right=leads_left)
        edge = CARD_PADDING_PX if leads_left else self.width() - CARD_PADDING_PX
        tip = QPointF(edge, self.height() / 2)
        long = max(_SIGN_PX, self.name.fontMetrics().height() // 4)
        for side in (-long, long):
            painter.drawLine(tip, tip + QPointF(long if leads_left else -long, side))
        painter.end()

    def _paint_edge(self, painter: QPainter, appearance: Appearance, *, at_right: bool) -> None:
        """Paint the red edge."""
        begin = self.width() - EDGE_BAR_PX if at_right else 0
        bar = QRect(begin, 0, EDGE_BAR_PX, self.height())
        fill_edge_bar(painter, self.rect(), bar, appearance.colour("alarm"))

    def sizeHint(self) -> QSize:
        hint = self._inside.sizeHint()
        return QSize(hint.width(), self.heightForWidth(hint.width()))

    def minimumSizeHint(self) -> QSize:
        return self._inside.minimumSize()

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return self._inside.heightForWidth(width)


class TopicGrid(QWidget):
    """Topics in two columns, or in one where type is large."""

    def __init__(self, topics: Sequence[TopicButton]) -> None:
        super().__init__()
        self._topics = tuple(topics)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(_BETWEEN_PX)
        self._columns = 0
        self._arrange(0)

    def minimumSizeHint(self) -> QSize:
        """Return one column's width, and the height of the present lines."""
        widest = max(topic.minimumSizeHint().width() for topic in self._topics)
        return QSize(widest, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange(event.size().width())

    def _arrange(self, width: int) -> None:
        least = _LEAST_DIGITS * self.fontMetrics().horizontalAdvance("0")
        columns = min(_MOST_COLUMNS, max(1, width // least))
        if columns == self._columns:
            return
        self._columns = columns
        place = 0
        for topic in self._topics:
            wide = columns if topic.urgent else 1
            self._grid.addWidget(topic, place // columns, place % columns, 1, wide)
            place += wide
        for place in range(_MOST_COLUMNS):
            self._grid.setColumnStretch(place, 1 if place < columns else 0)
        self.updateGeometry()
