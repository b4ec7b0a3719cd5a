"""View of the camera's picture with the figure over it, mirrored if wanted."""

from dataclasses import replace

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QImage, QPainter, QPainterPath, QTransform
from PySide6.QtWidgets import QWidget

from gui.drawing.overlay import head_share, paint_figure, paint_framing
from gui.drawing.transform import VideoTransform
from gui.style.appearance import Appearance
from gui.style.measures import CARD_RADIUS_PX, TITLE
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import FloatArray, Side
from measure.domain.movements import Movement
from measure.live.events import LiveFrame


def image_of(frame: LiveFrame) -> QImage:
    """Return a picture of its own memory: the frame's may be used again."""
    height, width = frame.picture.shape[:2]
    stride = int(frame.picture.strides[0])
    lent = QImage(frame.picture.data, width, height, stride, QImage.Format.Format_RGB888)
    return lent.convertToFormat(QImage.Format.Format_RGB32)


class VideoView(PaintedWidget):
    """Shows one frame: its picture and, on top, its own landmarks.

    Parameters
    ----------
    smooth
        Scale with care, for stills; a live picture is scaled fast, to leave the time to the
        network that looks at it.
    at_left
        The picture begins at the upper left corner of its place instead of in the middle.
    """

    def __init__(
        self,
        appearance: Appearance,
        *,
        smooth: bool = False,
        at_left: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(appearance, parent)
        self._smooth, self._at_left = smooth, at_left
        self._scaled: QImage | None = None
        self._corners = (QRectF(), QPainterPath())
        self._image: QImage | None = None
        self._points: FloatArray | None = None
        self._movement: Movement | None = None
        self._side = Side.RIGHT
        self._mirrored = False
        self._framing = False
        #: Which line of the framing is not kept.
        self._amiss: int | None = None
        #: Colour of what lies around the picture.
        self._around = "ground"
        #: What stands where there is no picture.
        self.empty_text = tr("No picture yet")
        self.setAccessibleName(tr("camera picture"))

    def show_frame(self, frame: LiveFrame) -> None:
        """Draw this picture and the landmarks found in it."""
        self._image, self._scaled = image_of(frame), None
        self._points = frame.points_px
        self.update()

    def show_empty(self, text: str) -> None:
        """Draw no picture but say why."""
        self._image, self._points, self.empty_text = None, None, text
        self.update()

    def measure_arm(self, movement: Movement | None, side: Side) -> None:
        """Choose whose arm and which movement the figure shows; None draws no figure."""
        self._movement, self._side = movement, side
        self.update()

    def set_mirrored(self, mirrored: bool) -> None:
        self._mirrored, self._scaled = mirrored, None
        self.update()

    def set_around(self, colour: str) -> None:
        """Give what lies around the picture's round corners another colour."""
        self._around = colour
        self.update()

    def set_framing(self, framing: bool, amiss: int | None = None) -> None:
        """Draw or leave out where head (0) and hips (1) should be, one of them as amiss."""
        self._framing, self._amiss = framing, amiss
        self.update()

    def transform(self) -> VideoTransform | None:
        """Return how the present picture lies in the widget, or None without one."""
        if self._image is None:
            return None
        fitted = VideoTransform.fitted(
            (self._image.width(), self._image.height()),
            (self.width(), self.height()),
            mirrored=self._mirrored,
        )
        return replace(fitted, left=0, top=0) if self._at_left else fitted

    def sizeHint(self) -> QSize:
        return QSize(320, 200)

    def minimumSizeHint(self) -> QSize:
        return QSize(160, 120)

    def paint(self, painter: QPainter) -> None:
        transform = self.transform()
        if transform is None or self._image is None:
            self._paint_empty(painter)
        else:
            self._paint_picture(painter, transform, self._image)

    def _paint_picture(self, painter: QPainter, transform: VideoTransform, image: QImage) -> None:
        place = QRectF(transform.left, transform.top, transform.width, transform.height)
        painter.drawImage(place.topLeft(), self._fitted(image, place))
        if self._framing:
            head = None if self._points is None else head_share(self._points, image.height())
            words = (
                tr("head about here") if head is None else tr("head"),
                tr("hips above this line"),
            )
            paint_framing(painter, self.appearance, place, words, head, self._amiss)
        if self._points is not None and self._movement is not None:
            paint_figure(painter, self._points, transform, self._movement, self._side)
        painter.fillPath(self._outside(place), self.appearance.colour(self._around))

    def _fitted(self, image: QImage, place: QRectF) -> QImage:
        """Return the picture in the size it is drawn at, on this screen, mirrored if wanted."""
        size = (place.size() * self.devicePixelRatioF()).toSize()
        if self._scaled is None or self._scaled.size() != size:
            mode = Qt.TransformationMode
            scaled = image.scaled(
                size,
                Qt.AspectRatioMode.IgnoreAspectRatio,
                mode.SmoothTransformation if self._smooth else mode.FastTransformation,
            )
            mirror = QTransform().scale(-1, 1)
            self._scaled = scaled.transformed(mirror) if self._mirrored else scaled
            self._scaled.setDevicePixelRatio(self.devicePixelRatioF())
        return self._scaled

    def _outside(self, place: QRectF) -> QPainterPath:
        """Return what lies between the picture's rectangle and its rounded edge."""
        if self._corners[0] != place:
            edge, inside = QPainterPath(), QPainterPath()
            edge.addRect(place.adjusted(-1, -1, 1, 1))
            inside.addRoundedRect(place, CARD_RADIUS_PX, CARD_RADIUS_PX)
            self._corners = (place, edge.subtracted(inside))
        return self._corners[1]

    def _paint_empty(self, painter: QPainter) -> None:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour("sunken"))
        painter.drawRoundedRect(self.rect(), CARD_RADIUS_PX, CARD_RADIUS_PX)
        painter.setPen(self.appearance.colour("quiet"))
        painter.setFont(self.appearance.font(self.appearance.px(TITLE)))
        flags = int(Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap)
        painter.drawText(QRectF(self.rect()).adjusted(24, 24, -24, -24), flags, self.empty_text)
