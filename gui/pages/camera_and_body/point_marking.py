"""Still picture in which points are marked, by mouse or keyboard."""

from dataclasses import replace

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QImage, QKeyEvent, QMouseEvent, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QWidget

from gui.drawing.transform import VideoTransform
from gui.style.appearance import Appearance
from gui.style.measures import CARD_RADIUS_PX
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget

#: How far an arrow key moves the cross, in pixels of the picture; with Shift one. [technical]
_STEP_PX = 10
#: Radius of a mark, pixels of the window. [technical]
_MARK_PX = 8
_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}


class PointMarkingView(PaintedWidget):
    """Takes marks in pixels of the picture, which stands at the left and is never mirrored.

    Arrow keys move the cross, Space or Enter marks, Backspace takes the last mark back.
    """

    #: The marks are others.
    changed = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self.marks_px: list[tuple[float, float]] = []
        self._image: QImage | None = None
        self._cross = (0.0, 0.0)
        self._most = 0
        self._in_pairs = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(tr("picture to mark"))
        self.setAccessibleDescription(
            tr("Arrow keys move the cross, Space marks, Backspace removes the last mark.")
        )

    def show_picture(self, image: QImage, *, most: int, in_pairs: bool) -> None:
        """Show a picture without marks.

        Parameters
        ----------
        most
            Number of marks that are taken.
        in_pairs
            Whether each second mark ends a line that the one before began.
        """
        self._image, self._most, self._in_pairs = image, most, in_pairs
        self._cross = (image.width() / 2, image.height() / 2)
        self.clear()

    def mark(self, place_px: tuple[float, float]) -> None:
        """Mark a place, unless there are enough marks or it lies outside the picture."""
        image = self._image
        if image is None or len(self.marks_px) >= self._most:
            return
        x, y = place_px
        if -0.5 <= x <= image.width() - 0.5 and -0.5 <= y <= image.height() - 0.5:
            self.marks_px.append((x, y))
            self._cross = (x, y)
            self.changed.emit()
            self.update()

    def take_back(self) -> None:
        """Undo the last mark."""
        if self.marks_px:
            self.marks_px.pop()
            self.changed.emit()
            self.update()

    def clear(self) -> None:
        """Take all marks back."""
        self.marks_px = []
        self.changed.emit()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(320, 200)

    def minimumSizeHint(self) -> QSize:
        return QSize(160, 120)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        transform = self.transform()
        if transform is not None and event.button() is Qt.MouseButton.LeftButton:
            self.setFocus(Qt.FocusReason.MouseFocusReason)
            place = event.position()
            self.mark(
                (
                    (place.x() - transform.left) / transform.width * transform.width_px - 0.5,
                    (place.y() - transform.top) / transform.height * transform.height_px - 0.5,
                )
            )

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        if key in _ARROWS and self._image is not None:
            fine = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self._move_cross(_ARROWS[key], 1 if fine else _STEP_PX)
        elif key in (Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.mark(self._cross)
        elif key in (Qt.Key.Key_Backspace, Qt.Key.Key_Delete):
            self.take_back()
        else:
            super().keyPressEvent(event)

    def _move_cross(self, way: tuple[int, int], step: int) -> None:
        assert self._image is not None
        last = self._image.width() - 1, self._image.height() - 1
        x, y = (
            min(max(place + step * part, 0.0), end)
            for place, part, end in zip(self._cross, way, last, strict=True)
        )
        self._cross = (x, y)
        self.update()

    def transform(self) -> VideoTransform | None:
        """Return how the picture lies in the widget, or None without one."""
        if self._image is None:
            return None
        size = (self._image.width(), self._image.height())
        fitted = VideoTransform.fitted(size, (self.width(), self.height()))
        return replace(fitted, left=0)

    def paint(self, painter: QPainter) -> None:
        transform = self.transform()
        if transform is None or self._image is None:
            return
        place = QRectF(transform.left, transform.top, transform.width, transform.height)
        corners = QPainterPath()
        corners.addRoundedRect(place, CARD_RADIUS_PX, CARD_RADIUS_PX)
        painter.save()
        painter.setClipPath(corners)
        painter.drawImage(place, self._image)
        painter.restore()
        marked = [self._point(transform, mark) for mark in self.marks_px]
        # As in the drawing beside it; a rim of the other brightness is seen on any picture.
        for colour, width in (("raised", 8.0), ("arm", 4.0)):
            painter.setPen(QPen(self.appearance.colour(colour), width))
            if self._in_pairs:
                for top, bottom in zip(marked[::2], marked[1::2], strict=False):
                    painter.drawLine(top, bottom)
            for point in marked:
                painter.drawEllipse(point, _MARK_PX, _MARK_PX)
            if self.hasFocus():
                cross = self._point(transform, self._cross)
                for across, down in ((14, 0), (0, 14)):
                    way = QPointF(across, down)
                    painter.drawLine(cross - way, cross + way)
        if self.hasFocus():
            painter.setPen(QPen(self.appearance.colour("arm"), 3))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(place.adjusted(1, 1, -1, -1), CARD_RADIUS_PX, CARD_RADIUS_PX)

    @staticmethod
    def _point(transform: VideoTransform, place_px: tuple[float, float]) -> QPointF:
        x, y = transform.points(np.array(place_px))
        return QPointF(float(x), float(y))
