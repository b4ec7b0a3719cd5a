"""Overlay: the line figure over a frame, of trunk, measured arm, their angle, and the other arm.

Drawn from the landmarks of exactly the frame underneath; no number is computed here.
"""

import math

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPainterPath, QPen

from gui.drawing.transform import VideoTransform
from gui.style.appearance import Appearance
from gui.text.wording import side_name
from measure.domain.landmarks import FloatArray, Landmark, Side, arm
from measure.domain.movements import MOVEMENTS, Family, Movement

#: The figure lies on frames of any brightness, so it has colours of its own with a dark rim.
_LINE, _RIM, _FAINT = QColor("#ffffff"), QColor(8, 18, 22, 190), QColor(255, 255, 255, 150)


def paint_figure(
    painter: QPainter,
    appearance: Appearance,
    points_px: FloatArray,
    transform: VideoTransform,
    movement: Movement,
    side: Side,
) -> None:
    """Draw the figure of one frame.

    Parameters
    ----------
    points_px
        Shape (33, 2), pixels of the frame; parts with a missing point are left out.
    """
    places = transform.points(points_px)
    own, other = arm(side), arm(side.other)
    middle_hip = _middle(places, Landmark.LEFT_HIP, Landmark.RIGHT_HIP)
    middle_shoulder = _middle(places, Landmark.LEFT_SHOULDER, Landmark.RIGHT_SHOULDER)
    thick = max(3.0, transform.height / 110)
    lit = QColor(appearance.palette.arm if appearance.dark else "#7fd0ee")

    _line(
        painter,
        [places[other.shoulder], places[other.elbow], places[other.wrist]],
        _FAINT,
        thick * 0.6,
    )
    _line(painter, [middle_hip, middle_shoulder], _LINE, thick * 0.8)
    match MOVEMENTS[movement].family:
        case Family.ELEVATION:
            down = middle_hip - middle_shoulder
            _arc(painter, places[own.shoulder], down, places[own.elbow], thick)
        case Family.REACH:
            _reach(painter, middle_hip, middle_shoulder, places[own.thumb], thick)
        case Family.ROTATION:
            pass  # about the upper arm, in no plane that the image shows: no arc is true
    _line(painter, [places[own.shoulder], places[own.elbow], places[own.wrist]], lit, thick * 1.4)
    for place in (places[own.shoulder], places[own.elbow], places[own.wrist]):
        _dot(painter, place, thick)
    _name(painter, appearance, places[own.shoulder], side, transform)


def paint_framing(
    painter: QPainter, appearance: Appearance, picture: QRectF, words: tuple[str, str]
) -> None:
    """Draw where head and hips should lie, with a word at each line."""
    pen = QPen(_LINE, 2, Qt.PenStyle.DashLine)
    for share, word in zip((0.22, 0.74), words, strict=True):
        y = picture.top() + picture.height() * share
        left, right = (
            picture.left() + picture.width() * 0.2,
            picture.right() - picture.width() * 0.2,
        )
        painter.setPen(QPen(_RIM, 5))
        painter.drawLine(QPointF(left, y), QPointF(right, y))
        painter.setPen(pen)
        painter.drawLine(QPointF(left, y), QPointF(right, y))
        _words(
            painter,
            appearance.font(max(14, picture.height() / 26), bold=True),
            QPointF(left, y - 8),
            word,
        )


def _middle(places: FloatArray, first: Landmark, other: Landmark) -> FloatArray:
    return np.asarray((places[first] + places[other]) / 2)


def _all_seen(*places: FloatArray) -> bool:
    return all(bool(np.isfinite(place).all()) for place in places)


def _line(painter: QPainter, places: list[FloatArray], colour: QColor, thick: float) -> None:
    if not _all_seen(*places):
        return
    path = QPainterPath(QPointF(*places[0]))
    for place in places[1:]:
        path.lineTo(QPointF(*place))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for shade, width in ((_RIM, thick + 4), (colour, thick)):
        pen = QPen(shade, width)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        painter.setPen(pen)
        painter.drawPath(path)


def _arc(
    painter: QPainter, shoulder: FloatArray, down: FloatArray, elbow: FloatArray, thick: float
) -> None:
    """Draw the opening between the trunk's line, moved to the shoulder, and the upper arm."""
    if not _all_seen(shoulder, down, elbow):
        return
    upper = elbow - shoulder
    start = math.degrees(math.atan2(-down[1], down[0]))
    span = math.degrees(math.atan2(-upper[1], upper[0])) - start
    span = (span + 180) % 360 - 180
    radius = float(np.hypot(*upper)) * 0.8
    box = QRectF(shoulder[0] - radius, shoulder[1] - radius, 2 * radius, 2 * radius)
    fill = QColor(_LINE)
    fill.setAlpha(70)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(fill)
    painter.drawPie(box, round(start * 16), round(span * 16))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for shade, width in ((_RIM, thick + 3), (QColor("#ffcf7a"), thick * 0.8)):
        painter.setPen(QPen(shade, width))
        painter.drawArc(box, round(start * 16), round(span * 16))


def _reach(
    painter: QPainter, hip: FloatArray, shoulder: FloatArray, thumb: FloatArray, thick: float
) -> None:
    """Draw the thumb's height as a short level mark across the trunk's line."""
    if not _all_seen(hip, shoulder, thumb):
        return
    axis = shoulder - hip
    length = float(np.hypot(*axis))
    if length == 0:
        return
    axis = axis / length
    foot = hip + axis * float(np.dot(thumb - hip, axis))
    across = np.array([-axis[1], axis[0]]) * length * 0.18
    _line(painter, [foot - across, foot + across], QColor("#ffcf7a"), thick)


def _dot(painter: QPainter, place: FloatArray, thick: float) -> None:
    if _all_seen(place):
        painter.setPen(QPen(_RIM, 2))
        painter.setBrush(_LINE)
        painter.drawEllipse(QPointF(*place), thick * 1.3, thick * 1.3)


def _name(
    painter: QPainter,
    appearance: Appearance,
    shoulder: FloatArray,
    side: Side,
    transform: VideoTransform,
) -> None:
    """Write which arm it is beside the shoulder; after mirroring, so that it reads."""
    if _all_seen(shoulder):
        font = appearance.font(max(15, transform.height / 22), bold=True)
        _words(painter, font, QPointF(shoulder[0] + 14, shoulder[1] - 14), side_name(side))


def _words(painter: QPainter, font: QFont, place: QPointF, text: str) -> None:
    path = QPainterPath()
    path.addText(place, font, text)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(_RIM, 4))
    painter.drawPath(path)
    painter.fillPath(path, _LINE)
