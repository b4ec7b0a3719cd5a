"""What stands where no picture comes: a camera, and what to do one step after the other."""

from PySide6.QtCore import QEvent, QObject, QPointF, QRectF, QSize, Qt, Slot
from PySide6.QtGui import QHideEvent, QPainter, QPen, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QFrame, QLabel, QVBoxLayout, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import CARD_PADDING_PX, CARD_RADIUS_PX, GAP_PX
from gui.text.session_wording import trouble_steps
from gui.text.wording import tr
from gui.widgets.buttons import give_role
from gui.widgets.camera_view import CameraView
from gui.widgets.layouts import ABOVE_GROUP, BELOW_GROUP, column, row, separator
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.text import Steps, label
from gui.widgets.video_view import VideoView
from measure.camera.faults import SourceFault

#: Width over height of the drawn camera with its foot. [technical]
_ASPECT = 0.9
#: Greatest height of the drawn camera, pixels. [technical]
_HIGHEST_PX = 460.0
#: Narrower than this the drawing has no room beside the steps, in widths of a digit. [technical]
_LEAST_DIGITS = 48
#: Height of the drawn camera as a share of the place of a picture, alone and above words.
#: [technical]
_HIGH, _HIGH_ABOVE_WORDS = 0.56, 0.45
#: Thickness of the line that crosses it, and of the ground beside that line, as shares of its
#: height. [technical]
_SLASH, _BESIDE_SLASH = 0.024, 0.02
#: Narrower than this there is no card about the steps, in widths of their digits, in a wide window
#: and in one narrower than that, pixels. [technical]
_CARD_DIGITS, _WIDE_PX = (18, 23), 1200
#: Roles of words that are read from afar, among them of what is wrong and what is right; a page
#: may give them its own size.
FAR, FAR_WRONG, FAR_RIGHT, FAR_STEP = "far", "far-wrong", "far-right", "far-step"
#: Role of the tick of what is as it should be.
FAR_GOOD = "far-good"


class CameraSign(PaintedWidget):
    """A camera that sees nothing."""

    def sizeHint(self) -> QSize:
        return QSize(160, 160)

    def minimumSizeHint(self) -> QSize:
        return QSize(96, 96)

    def paint(self, painter: QPainter) -> None:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour("sunken"))
        painter.drawRoundedRect(self.rect(), CARD_RADIUS_PX, CARD_RADIUS_PX)
        place = QRectF(0, 0, self.width(), self.height() * _HIGH)
        place.moveCenter(QRectF(self.rect()).center())
        paint_camera(painter, self.appearance, place)


def paint_camera(
    painter: QPainter, appearance: Appearance, place: QRectF, *, crossed: bool = True
) -> None:
    """Paint a camera on its foot, in the middle of a place; one that sees nothing is crossed."""
    high = min(place.height(), place.width() / _ASPECT, _HIGHEST_PX)
    middle = place.center()
    painter.setPen(QPen(appearance.colour("quiet"), max(1.5, high * 0.022)))
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
    if not crossed:
        return
    across = QPointF(high * 0.38, high * 0.32)
    slash = max(2.0, high * _SLASH)
    for colour, wide in (("sunken", slash + 2 * high * _BESIDE_SLASH), ("hold", slash)):
        pen = QPen(appearance.colour(colour), wide)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        painter.drawLine(body.center() - across, body.center() + across)


class _StepsCard(QFrame):
    """A card with words in its optical middle; where it would be narrow they stand without it."""

    def __init__(self, words: QVBoxLayout) -> None:
        super().__init__()
        self._words = words
        words.insertStretch(0, ABOVE_GROUP)
        self.setLayout(words)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        least = _CARD_DIGITS[self.window().width() < _WIDE_PX]
        type_of = self.findChild(QLabel) or self
        wide = event.size().width() >= least * type_of.fontMetrics().horizontalAdvance("0")
        give_role(self, "card" if wide else "")
        beside, above = (CARD_PADDING_PX, 2 * GAP_PX) if wide else (0, 0)
        self._words.setStretch(0, ABOVE_GROUP if wide else 0)
        self._words.setContentsMargins(beside, above, beside, above)


class CameraTrouble(QWidget):
    """Steps against a trouble that the page's sentence names, for somebody who stands far away.

    Parameters
    ----------
    kept
        What is said beneath the steps about what there is already.
    """

    def __init__(self, appearance: Appearance, *, kept: str) -> None:
        super().__init__()
        self.sign = CameraSign(appearance)
        self._steps = Steps(FAR_STEP, spacing=2 * GAP_PX)
        # What is said of what there is stands apart, at the foot of the card.
        said = self._steps, BELOW_GROUP, separator(), label(kept, FAR)
        words = _StepsCard(column(*said, spacing=2 * GAP_PX))
        self._halves = row(
            (self.sign, 1),
            (words, 1),
            on=self,
            margins=(0, 0, 0, GAP_PX),
            spacing=5 * GAP_PX,
        )
        self.say(SourceFault.OTHER)

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

    @Slot(int, int)
    def divide(self, drawing: int, steps: int) -> None:
        """Share the width as a picture and what stands beside it do."""
        for place, share in enumerate((drawing, steps)):
            self._halves.setStretch(place, share)

    def say(self, trouble: SourceFault) -> None:
        """Show the steps for a trouble."""
        self._steps.show_steps(_with_retry(trouble))


class CameraOff(PaintedWidget):
    """A camera crossed out, over the place of a picture that does not come."""

    def __init__(self, appearance: Appearance, video: VideoView) -> None:
        super().__init__(appearance, video)
        self._video = video
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        video.installEventFilter(self)
        self.hide()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.Resize:
            self.setGeometry(self._video.rect())
        return super().eventFilter(watched, event)

    def paint(self, painter: QPainter) -> None:
        place = QRectF(self.rect())
        # Above the middle where the details of the trouble stand in it.
        worded = bool(self._video.empty_text)
        high = (_HIGH_ABOVE_WORDS if worded else _HIGH) * place.height()
        top = (place.height() - high) / 2 - high * worded / 2
        paint_camera(painter, self.appearance, QRectF(0, top, place.width(), high))


class TroubleSteps(QWidget):
    """What to do about a camera that gives no picture, on a card beside its place."""

    def __init__(self, appearance: Appearance, camera: CameraView) -> None:
        super().__init__()
        self._camera, self._drawing = camera, CameraOff(appearance, camera.video)
        self._steps = Steps(FAR_STEP, spacing=2 * GAP_PX)
        column((_StepsCard(column(self._steps, BELOW_GROUP)), 1), on=self)
        camera.steps_beside = True
        camera.troubled.connect(self._show)
        self.hide()

    def _show(self, troubled: bool) -> None:
        self.setVisible(troubled)
        self._drawing.setVisible(troubled and self._camera.lacks_picture)
        trouble = self._camera.trouble
        if trouble is not None:
            self._steps.show_steps(_with_retry(trouble))


def _with_retry(trouble: SourceFault) -> tuple[str, ...]:
    """Return the steps against a trouble, of which the last is to try again."""
    return (*trouble_steps(trouble), tr("Then press Try again."))
