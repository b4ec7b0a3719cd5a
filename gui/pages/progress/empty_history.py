"""Explanation of the progress page before there are readings."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPen
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.text import label

#: Middle and half-width of the drawn example, in per cent of its height. Made up. [technical]
_EXAMPLE = (
    (40, 14),
    (43, 10),
    (38, 12),
    (44, 9),
    (42, 13),
    (47, 9),
    (45, 10),
    (49, 8),
    (46, 12),
    (50, 9),
)


class _ExampleChart(PaintedWidget):
    """Ten upright bands in outline."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(tr("a made-up example of a curve"))

    def sizeHint(self) -> QSize:
        return QSize(400, 220)

    def minimumSizeHint(self) -> QSize:
        return QSize(200, 120)

    def paint(self, painter: QPainter) -> None:
        painter.setPen(QPen(self.appearance.colour("line"), 1))
        for quarter in range(5):
            y = round(self.height() * (0.1 + 0.2 * quarter))
            painter.drawLine(0, y, self.width(), y)
        step = self.width() / (len(_EXAMPLE) + 1)
        for place, (middle, half) in enumerate(_EXAMPLE):
            x = step * (place + 1)
            level = self.height() * (1 - middle / 100)
            reach = self.height() * half / 100
            band = QRectF(x - step * 0.16, level - reach, step * 0.32, 2 * reach)
            painter.setPen(QPen(self.appearance.colour("arm"), 1.4, Qt.PenStyle.DashLine))
            painter.setBrush(self.appearance.colour("arm", 0.28 - half / 60))
            painter.drawRoundedRect(band, 4, 4)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(self.appearance.colour("quiet"))
            painter.drawRoundedRect(QRectF(x - step * 0.2, level - 2, step * 0.4, 4), 2, 2)


class EmptyHistoryHint(QWidget):
    """Explains the page."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        layout = QVBoxLayout(self)
        layout.setSpacing(appearance.gap(2))
        layout.addWidget(label(tr("Here your readings will stand side by side."), "title"))
        layout.addWidget(
            label(
                tr(
                    "Each session adds a band. The band is where the true value probably lies; "
                    "the mark in it is the estimate. One reading can be off by several degrees, "
                    "so a single session says little."
                ),
                "lead",
            )
        )
        layout.addWidget(_ExampleChart(appearance), 1)
        layout.addWidget(label(tr("A made-up example."), "small"))
        layout.addWidget(
            label(
                tr(
                    "After four weeks and eight sessions it becomes possible to say "
                    "whether the shoulder moves more than before. Two or three sessions a week "
                    "are enough."
                ),
                "lead",
            )
        )
