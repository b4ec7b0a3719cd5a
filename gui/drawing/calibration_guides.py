"""Drawings that say what is to be shown, marked or measured: board, upright edge, back, lengths.

What is to be marked has a number, which stands in the words beside the drawing too.
"""

from enum import Enum, auto

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen

from calibration.lens.board import MARKER_MM, SQUARE_MM, SQUARES
from gui.drawing.person import (
    SHOULDER_OUT,
    SHOULDER_UP,
    ArmAngles,
    Point3D,
    Pose,
    plus,
    posed,
)
from gui.drawing.person_painter import PersonPainter
from gui.style.appearance import Appearance
from measure.domain.landmarks import Side

#: Margin of the printed sheet about its board, in sides of a square. [technical]
_PAPER = 0.7
#: Width of a door as a share of its height; of a post, and of the floor to either side, as shares
#: of the door's. [technical]
_DOOR, _POST, _FLOOR = 0.76, 0.1, 0.7
#: Top and bottom of the person in the drawings of the lengths and of the back, in body
#: heights above the hips. [technical]
_PERSON, _TRUNK = (0.49, -0.16), (0.43, -0.06)
#: Where neck and dimples lie on a back, in body heights: up, and to either side. [technical]
_NECK_UP, _DIMPLES_UP, _DIMPLE_OUT = 0.297, 0.022, 0.032
#: How far beside the middle the numbers of a back stand, in body heights. [technical]
_NUMBER_OUT = 0.25
#: Greatest radius of a mark, thickness of a measured line and of what leads to its number, pixels.
#: [technical]
_MARK_PX, _LINE_PX, _LEADER_PX = 9.0, 4.0, 1.5
#: How far a measured line lies beside its limb, and half the length of its ends, in body heights.
#: [technical]
_BESIDE, _END = 0.055, 0.02
#: Most height of the drawing of the lengths as a share of its width, which the numbers need.
#: [technical]
_LENGTHS_HIGH = 0.95
#: How far the measured arm is held from the body, degrees. [technical]
_AWAY_DEG = 28
#: Most size of the number of a length, pixels: a larger one would hide what it names. [technical]
_MOST_TYPE_PX = 24
#: Least size of the number of a mark, pixels, and its most as a share of the height. [technical]
_NUMBER_PX, _NUMBER_SHARE = 30, 0.2
#: Space between a number and a door, pixels, and half the width of a digit, relative to its type.
#: [technical]
_NUMBER_GAP_PX, _HALF_DIGIT = 10.0, 0.3


class Guide(Enum):
    """What a drawing shows."""

    BOARD = auto()
    UPRIGHT = auto()
    BACK = auto()
    LENGTHS = auto()


def paint_marking_guide(
    painter: QPainter, appearance: Appearance, place: QRectF, guide: Guide
) -> None:
    """Paint a drawing in the middle of a rectangle."""
    match guide:
        case Guide.BOARD:
            _board(painter, place)
        case Guide.UPRIGHT:
            _upright(painter, appearance, place)
        case Guide.BACK:
            _back(painter, appearance, place)
        case Guide.LENGTHS:
            _lengths(painter, appearance, place)


def _board(painter: QPainter, place: QRectF) -> None:
    """Paint the printed sheet: black squares, and a marker in each white one."""
    across, down = SQUARES
    side = min(place.width() / (across + 2 * _PAPER), place.height() / (down + 2 * _PAPER))
    sheet = QRectF(0, 0, side * (across + 2 * _PAPER), side * (down + 2 * _PAPER))
    sheet.moveCenter(place.center())
    painter.setPen(QPen(Qt.GlobalColor.gray, 1))
    painter.setBrush(Qt.GlobalColor.white)
    painter.drawRect(sheet)
    marker, cell = side * MARKER_MM / SQUARE_MM, side * MARKER_MM / SQUARE_MM / 3
    for row in range(down):
        for column in range(across):
            square = QRectF(
                sheet.left() + side * (_PAPER + column),
                sheet.top() + side * (_PAPER + row),
                side,
                side,
            )
            if (row + column) % 2 == 0:
                painter.fillRect(square, Qt.GlobalColor.black)
                continue
            inner = QRectF(0, 0, marker, marker)
            inner.moveCenter(square.center())
            painter.fillRect(inner, Qt.GlobalColor.black)
            corner = QRectF(0, 0, cell, cell)
            corner.moveCenter(
                square.center() + QPointF(cell / 2 * (-1) ** row, cell / 2 * (-1) ** (column // 2))
            )
            painter.fillRect(corner, Qt.GlobalColor.white)


def _upright(painter: QPainter, appearance: Appearance, place: QRectF) -> None:
    """Paint a door, its edge marked at the upper and at the lower end."""
    high = place.height() - 2 * _MARK_PX
    door = QRectF(0, 0, high * _DOOR, high)
    door.moveCenter(place.center())
    post = door.width() * _POST
    painter.setPen(QPen(appearance.colour("edge"), 2))
    painter.setBrush(appearance.colour("raised"))
    painter.drawRect(door)
    inner = door.adjusted(post, post, -post, 0)
    painter.setBrush(appearance.colour("sunken"))
    painter.drawRect(inner)
    knob = QPointF(inner.right() - post, inner.center().y())
    painter.setBrush(appearance.colour("edge"))
    painter.drawEllipse(knob, post / 3, post / 3)
    aside = door.width() * _FLOOR
    floor = QLineF(door.left() - aside, door.bottom(), door.right() + aside, door.bottom())
    painter.drawLine(floor)
    ends = inner.topLeft(), inner.bottomLeft()
    painter.setPen(QPen(appearance.colour("arm"), _LINE_PX))
    painter.drawLine(*ends)
    px = _number_px(appearance, place)
    beside = QPointF(max(post, _MARK_PX) + _NUMBER_GAP_PX + px * _HALF_DIGIT, 0)
    for number, (end, up) in enumerate(zip(ends, (0.0, px * 0.6), strict=True), start=1):
        _mark(painter, appearance, end, _MARK_PX)
        _number(painter, appearance, end - beside - QPointF(0, up), px, number)


def _mark(painter: QPainter, appearance: Appearance, middle: QPointF, radius_px: float) -> None:
    """Paint a ring, as a mark in the picture has it."""
    painter.setBrush(appearance.colour("raised"))
    painter.setPen(QPen(appearance.colour("arm"), _LINE_PX))
    painter.drawEllipse(middle, radius_px, radius_px)


def _number_px(appearance: Appearance, place: QRectF) -> float:
    """Return the size of the number of a mark, as large as the words beside have it, pixels."""
    return min(max(appearance.px(), _NUMBER_PX), _NUMBER_SHARE * place.height())


def _number(
    painter: QPainter, appearance: Appearance, middle: QPointF, px: float, number: int
) -> None:
    font = appearance.font(px, bold=True)
    metrics = QFontMetricsF(font)
    room = QRectF(0, 0, 2 * metrics.height(), metrics.height())
    room.moveCenter(middle)
    painter.setFont(font)
    painter.setPen(appearance.colour("ink"))
    painter.drawText(room, int(Qt.AlignmentFlag.AlignCenter), str(number))


def _person(
    painter: QPainter, appearance: Appearance, place: QRectF, part: tuple[float, float]
) -> PersonPainter:
    """Return a painter of a part of a person, which fills a rectangle's height."""
    top, bottom = part
    scale = place.height() / (top - bottom)
    hips = QPointF(place.center().x(), place.top() + top * scale)
    return PersonPainter(painter, appearance, scale, hips)


def _back(painter: QPainter, appearance: Appearance, place: QRectF) -> None:
    """Paint somebody from behind, with the neck and the two dimples marked."""
    painter.save()
    painter.setClipRect(place)
    person = _person(painter, appearance, place, _TRUNK)
    person.paint(posed(Pose(turn=180), Side.LEFT), own=False)
    painter.restore()
    marks = (
        ((0.0, _NECK_UP, 0.0), (_NUMBER_OUT, _NECK_UP, 0.0)),
        ((-_DIMPLE_OUT, _DIMPLES_UP, 0.0), (-_NUMBER_OUT, _DIMPLES_UP, 0.0)),
        ((_DIMPLE_OUT, _DIMPLES_UP, 0.0), (_NUMBER_OUT, _DIMPLES_UP, 0.0)),
    )
    px = _number_px(appearance, place)
    radius = min(_MARK_PX, person.px(_DIMPLE_OUT) - _LINE_PX / 2)
    for number, (mark, beside) in enumerate(marks, start=1):
        middle, end = person.at(mark), person.at(beside)
        painter.setPen(QPen(appearance.colour("ink"), _LEADER_PX))
        painter.drawLine(middle, middle + (end - middle) * 0.85)
        _mark(painter, appearance, middle, radius)
        _number(painter, appearance, end + (end - middle) * 0.08, px, number)


def _lengths(painter: QPainter, appearance: Appearance, place: QRectF) -> None:
    """Paint somebody from the front, with a numbered line along each length."""
    place = QRectF(place)
    place.setTop(max(place.top(), place.bottom() - _LENGTHS_HIGH * place.width()))
    painter.save()
    painter.setClipRect(place)
    person = _person(painter, appearance, place, _PERSON)
    away = ArmAngles(_AWAY_DEG, 90, _AWAY_DEG, 90)
    body = posed(Pose(arm=away), Side.LEFT)
    person.paint(body, own=False)
    painter.restore()
    shoulder, elbow, wrist = body.arm
    aside = (0.88 * _BESIDE, 0.47 * _BESIDE, 0.0)
    trunk_out = -SHOULDER_OUT - 2.2 * _BESIDE
    lines: tuple[tuple[Point3D, Point3D, Point3D], ...] = (
        ((trunk_out, SHOULDER_UP, 0.0), (trunk_out, 0.0, 0.0), (-1.0, 0.0, 0.0)),
        (plus(shoulder, aside), plus(elbow, aside), (1.0, 0.5, 0.0)),
        (plus(elbow, aside), plus(wrist, aside), (1.0, 0.5, 0.0)),
        ((-SHOULDER_OUT, SHOULDER_UP, 0.0), (SHOULDER_OUT, SHOULDER_UP, 0.0), (0.0, -1.0, 0.0)),
    )
    for number, (start, end, way) in enumerate(lines, start=1):
        _length(painter, appearance, person, (start, end), way, number)


def _length(
    painter: QPainter,
    appearance: Appearance,
    person: PersonPainter,
    ends: tuple[Point3D, Point3D],
    way: Point3D,
    number: int,
) -> None:
    """Paint a line with a stroke at both ends, and its number to one side."""
    line = QLineF(person.at(ends[0]), person.at(ends[1]))
    across = line.normalVector().unitVector()
    half = QPointF(across.dx(), across.dy()) * person.px(_END)
    for colour, wide in (("raised", 2 * _LINE_PX), ("arm", _LINE_PX)):
        painter.setPen(QPen(appearance.colour(colour), wide))
        painter.drawLine(line)
        for end in (line.p1(), line.p2()):
            painter.drawLine(end - half, end + half)
    aside = QPointF(way[0], -way[1]) * _MOST_TYPE_PX
    px = min(appearance.px(), _MOST_TYPE_PX)
    _number(painter, appearance, line.center() + aside, px, number)
