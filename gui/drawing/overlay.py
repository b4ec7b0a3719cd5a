"""Overlay: the line figure over a frame, of trunk, measured arm, their angle, and the other arm.

Drawn from the landmarks of exactly the frame underneath; no number is computed here.
"""

import math

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QPainter,
    QPainterPath,
    QPen,
    QRadialGradient,
)

from gui.drawing.transform import VideoTransform
from gui.style.appearance import Appearance
from measure.domain.landmarks import FloatArray, Landmark, Side, arm
from measure.domain.movements import MOVEMENTS, Family, Movement

#: The figure lies on frames of any brightness, so it has colours of its own with a dark rim.
_LINE, _RIM, _FAINT = QColor("#ffffff"), QColor(8, 18, 22, 170), QColor(255, 255, 255, 120)
_WEDGE, _ARM = QColor("#ffcf7a"), QColor("#7fd0ee")
#: Beside a line that is to be found without standing out.
_SOFT = QColor(8, 18, 22, 70)
#: Under words on the picture, and under those of what is amiss.
_PLATE, _AMISS_PLATE = QColor(8, 18, 22, 215), QColor("#8a4600")
#: A line of what is amiss, in the colour of its plate.
_AMISS = _AMISS_PLATE


#: From the nose to the top of the head, over the nose's height above the shoulders. [technical]
_CROWN = 0.9
#: Words on the picture are never higher than this part of it, or their plates wider than this share
#: of it, so that they stay beside the body. [technical]
_LEAST_LINES, _MOST_WIDE = 17, 0.43
#: Room on the plate beneath words, beside and above them, in heights of the type. [technical]
_BESIDE, _OVER = 0.5, 0.25
#: Where a head usually is, as a share of the picture's height. [technical]
_HEAD = 0.22


def paint_figure(
    painter: QPainter,
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
            _arc(painter, places[own.shoulder], down, places[own.elbow])
        case Family.REACH:
            _reach(painter, middle_hip, middle_shoulder, places[own.thumb], thick)
        case Family.ROTATION:
            pass  # about the upper arm, in no plane that the image shows: no arc is true
    _line(painter, [places[own.shoulder], places[own.elbow], places[own.wrist]], _ARM, thick * 1.9)


def head_share(points_px: FloatArray, height_px: int) -> float | None:
    """Return where the top of a head is, as a share of the picture's height; None where unseen."""
    shoulders = _middle(points_px, Landmark.LEFT_SHOULDER, Landmark.RIGHT_SHOULDER)
    nose = points_px[Landmark.NOSE]
    if not _all_seen(shoulders, nose):
        return None
    return float(nose[1] - _CROWN * (shoulders[1] - nose[1])) / height_px


def paint_framing(
    painter: QPainter,
    appearance: Appearance,
    picture: QRectF,
    words: tuple[str, str],
    head: float | None = None,
    amiss: int | None = None,
) -> None:
    """Draw where head and hips should lie, with a word on a dark plate before each line.

    Parameters
    ----------
    head
        Where the head is, as a share of the height; None draws where it may be.
    amiss
        Which of the two lines is not kept, 0 or 1: it stands out.
    """
    shares = (_HEAD if head is None else head, 0.74)
    font = appearance.font(_words_px(appearance, picture, words))
    for number, (share, word) in enumerate(zip(shares, words, strict=True)):
        y, wrong = picture.top() + picture.height() * share, number == amiss
        place = QPointF(picture.left() + picture.width() * 0.02, y)
        left = _plate(painter, font, place, word, _AMISS_PLATE if wrong else _PLATE)
        right = picture.right() - picture.width() * 0.06
        for colour, width in ((_LINE, 6), (_AMISS, 4)) if wrong else ((_SOFT, 4), (_LINE, 2)):
            painter.setPen(QPen(colour, width))
            painter.drawLine(QPointF(left, y), QPointF(right, y))


def _words_px(appearance: Appearance, picture: QRectF, words: tuple[str, str]) -> float:
    """Return the size of words on the picture, pixels: as all text, or larger on a large one."""
    em = 100
    metrics = QFontMetricsF(appearance.font(em))
    longest = max(map(metrics.horizontalAdvance, words)) / em + 2 * _BESIDE
    wanted = max(appearance.px(), picture.height() / 26)
    most = max(picture.height() / _LEAST_LINES, picture.width() * _MOST_WIDE / longest)
    return min(wanted, most)


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


def _arc(painter: QPainter, shoulder: FloatArray, down: FloatArray, elbow: FloatArray) -> None:
    """Draw the opening between trunk and upper arm as a soft wedge at the shoulder."""
    if not _all_seen(shoulder, down, elbow):
        return
    upper = elbow - shoulder
    start = math.degrees(math.atan2(-down[1], down[0]))
    span = math.degrees(math.atan2(-upper[1], upper[0])) - start
    span = (span + 180) % 360 - 180
    radius = float(np.hypot(*upper)) * 0.95
    box = QRectF(shoulder[0] - radius, shoulder[1] - radius, 2 * radius, 2 * radius)
    wedge = QPainterPath(QPointF(*shoulder))
    wedge.arcTo(box, start, span)
    wedge.closeSubpath()
    soft = QRadialGradient(QPointF(*shoulder), radius)
    for share, alpha in ((0.0, 60), (0.75, 120), (1.0, 165)):
        colour = QColor(_WEDGE)
        colour.setAlpha(alpha)
        soft.setColorAt(share, colour)
    painter.fillPath(wedge, soft)


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
    _line(painter, [foot - across, foot + across], _WEDGE, thick)


def _plate(painter: QPainter, font: QFont, place: QPointF, text: str, colour: QColor) -> float:
    """Write on a plate that begins at a place, in the middle of its height; return its end."""
    metrics, px = QFontMetricsF(font), font.pixelSize()
    wide = metrics.horizontalAdvance(text) + 2 * _BESIDE * px
    high = metrics.height() + 2 * _OVER * px
    plate = QRectF(place.x(), place.y() - high / 2, wide, high)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    painter.drawRoundedRect(plate, px / 3, px / 3)
    painter.setPen(_LINE)
    painter.setFont(font)
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, text)
    return plate.right()
