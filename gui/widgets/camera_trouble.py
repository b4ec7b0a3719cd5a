"""What stands where no picture comes: a camera, what to look at, and a way to try again."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QHideEvent, QPainter, QPen, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QFrame, QPushButton, QVBoxLayout

from gui.style.appearance import Appearance
from gui.style.measures import CARD_PADDING_PX, GAP_PX
from gui.text.session_wording import trouble_steps
from gui.widgets.layouts import clear_layout, column, row, widget_with
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.text import SignedLine, label
from measure.camera.faults import SourceFault

#: Width over height of the drawn camera with its foot. [technical]
_ASPECT = 0.9
#: Greatest height of the drawn camera, pixels. [technical]
_HIGHEST_PX = 300.0
#: Narrower than this the drawing has no room beside the steps, in widths of a digit. [technical]
_LEAST_DIGITS = 60


class CameraSign(PaintedWidget):
    """A camera that sees nothing."""

    def sizeHint(self) -> QSize:
        return QSize(160, 160)

    def minimumSizeHint(self) -> QSize:
        return QSize(96, 96)

    def paint(self, painter: QPainter) -> None:
        paint_camera_off(painter, self.appearance, QRectF(self.rect()))


def paint_camera_off(painter: QPainter, appearance: Appearance, place: QRectF) -> None:
    """Paint a crossed-out camera on its foot, in the middle of a place."""
    high = min(place.height(), place.width() / _ASPECT, _HIGHEST_PX)
    middle = place.center()
    painter.setPen(QPen(appearance.colour("quiet"), max(3.0, high * 0.022)))
    painter.setBrush(appearance.colour("sunken"))
    body = QRectF(0, 0, high * 0.8, high * 0.5)
    body.moveCenter(middle - QPointF(0, high * 0.16))
    foot = QRectF(0, 0, high * 0.42, high * 0.07)
    foot.moveCenter(middle + QPointF(0, high * 0.4))
    painter.drawLine(QPointF(middle.x(), body.bottom()), QPointF(middle.x(), foot.top()))
    painter.drawRoundedRect(foot, foot.height() / 2, foot.height() / 2)
    painter.drawRoundedRect(body, high * 0.1, high * 0.1)
    for radius, colour in ((0.16, "raised"), (0.075, "edge")):
        painter.setBrush(appearance.colour(colour))
        painter.drawEllipse(body.center(), high * radius, high * radius)
    pen = QPen(appearance.colour("hold"), max(6.0, high * 0.045))
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    painter.setPen(pen)
    across = QPointF(high * 0.36, high * 0.3)
    painter.drawLine(body.center() - across, body.center() + across)


class CameraTrouble(QFrame):
    """Steps against a trouble that the page's sentence names, and the button to try again.

    Parameters
    ----------
    retry
        The page's button to try again.
    kept
        What is said beneath the steps about what there is already; may be empty.
    """

    def __init__(self, appearance: Appearance, retry: QPushButton, *, kept: str = "") -> None:
        super().__init__()
        self.setProperty("role", "card")
        self.sign = CameraSign(appearance)
        self.details = label("", "quiet")
        self.kept = label(kept, "quiet")
        self._steps = QVBoxLayout()
        self._steps.setSpacing(2 * GAP_PX)
        words = column(
            2,
            self.details,
            self._steps,
            row((retry, 1), 1),
            self.kept,
            3,
            spacing=3 * GAP_PX,
        )
        padding = CARD_PADDING_PX
        row(
            (self.sign, 55),
            (widget_with(words), 45),
            on=self,
            margins=(padding,) * 4,
            spacing=padding,
        )
        self.say(SourceFault.OTHER, "")

    def minimumSizeHint(self) -> QSize:
        """Return the height that the words need at the present width; little while not shown."""
        least = super().minimumSizeHint()
        layout = self.layout()
        if self.isHidden() or layout is None:
            return QSize(least.width(), 0)
        return least.expandedTo(QSize(0, layout.minimumHeightForWidth(self.width())))

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.updateGeometry()

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self.updateGeometry()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.updateGeometry()
        digits = _LEAST_DIGITS * self.fontMetrics().horizontalAdvance("0")
        self.sign.setVisible(event.size().width() >= digits)

    def say(self, trouble: SourceFault, details: str) -> None:
        """Show the steps for a trouble; details are what its sentence leaves unsaid."""
        self.details.setText(details)
        self.details.setVisible(bool(details))
        self.kept.setVisible(bool(self.kept.text()))
        clear_layout(self._steps)
        for number, step in enumerate(trouble_steps(trouble), start=1):
            self._steps.addWidget(SignedLine(f"{number}.", step, "lead"))
