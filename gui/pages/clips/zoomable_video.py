"""Picture of a clip that is zoomed with the wheel and moved by dragging."""

from dataclasses import replace

from PySide6.QtCore import QPointF, QRectF, Qt, Slot
from PySide6.QtGui import QMouseEvent, QPainter, QPainterPath, QWheelEvent

from gui.drawing.transform import VideoTransform
from gui.style.appearance import Appearance
from gui.style.measures import CARD_RADIUS_PX
from gui.text.wording import tr
from gui.widgets.video_view import VideoView

#: One step of zooming, and the most: what was filmed has no finer detail. [technical]
_STEP = 1.25
_MOST = 4.0
#: Width and height of a picture of most cameras. [technical]
_COMMON_SHAPE = (16, 9)


class ZoomableVideo(VideoView):
    """Keeps the place that the mouse points at where it is while the picture grows."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__(appearance, smooth=True)
        self._around = "sunken"
        self.zoom = 1.0
        self._middle = QPointF(0.5, 0.5)
        self._dragged: QPointF | None = None
        self.setAccessibleName(tr("picture of the clip"))

    @property
    def picture_shape(self) -> tuple[int, int]:
        """Width and height of the picture; a common camera's where there is none."""
        image = self._image
        return _COMMON_SHAPE if image is None else (image.width(), image.height())

    @Slot()
    def zoom_in(self) -> None:
        self._zoom_at(_STEP, QPointF(self.rect().center()))

    @Slot()
    def zoom_out(self) -> None:
        self._zoom_at(1 / _STEP, QPointF(self.rect().center()))

    @Slot()
    def show_whole(self) -> None:
        """Show the whole picture again."""
        self.zoom, self._middle = 1.0, QPointF(0.5, 0.5)
        self.update()

    def transform(self) -> VideoTransform | None:
        """Return how the present picture lies in the widget, zoomed and moved."""
        whole = super().transform()
        if whole is None or self.zoom == 1.0:
            return whole
        width, height = round(whole.width * self.zoom), round(whole.height * self.zoom)
        left = round(self.width() / 2 - self._middle.x() * width)
        top = round(self.height() / 2 - self._middle.y() * height)
        return replace(whole, width=width, height=height, left=left, top=top)

    def paint(self, painter: QPainter) -> None:
        """Paint the picture on a ground of its own, which fills the place."""
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour(self._around))
        corners = QPainterPath()
        corners.addRoundedRect(QRectF(self.rect()), CARD_RADIUS_PX, CARD_RADIUS_PX)
        painter.drawPath(corners)
        painter.setClipPath(corners)
        super().paint(painter)

    def _zoom_at(self, factor: float, place: QPointF) -> None:
        """Zoom about a place of the widget."""
        before = self.transform()
        if before is None:
            return
        share = QPointF(
            (place.x() - before.left) / before.width, (place.y() - before.top) / before.height
        )
        self.zoom = min(_MOST, max(1.0, self.zoom * factor))
        after = self.transform()
        if self.zoom == 1.0 or after is None:
            self.show_whole()
            return
        aside = place - QPointF(self.rect().center())
        self._move_to(
            QPointF(share.x() - aside.x() / after.width, share.y() - aside.y() / after.height)
        )

    def _move_to(self, middle: QPointF) -> None:
        """Put a place of the picture, as shares of its sides, into the middle of the widget."""
        self._middle = QPointF(min(1.0, max(0.0, middle.x())), min(1.0, max(0.0, middle.y())))
        self.update()

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.angleDelta().y():
            self._zoom_at(_STEP if event.angleDelta().y() > 0 else 1 / _STEP, event.position())
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if self.zoom > 1.0 and event.button() is Qt.MouseButton.LeftButton:
            self._dragged = event.position()
            self.setCursor(Qt.CursorShape.ClosedHandCursor)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        transform = self.transform()
        if self._dragged is None or transform is None:
            return
        moved, self._dragged = event.position() - self._dragged, event.position()
        self._move_to(
            self._middle - QPointF(moved.x() / transform.width, moved.y() / transform.height)
        )

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        self._dragged = None
        self.unsetCursor()

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        self.show_whole()
