"""A drawn room with a drawn person in it, as a camera's picture with its landmarks.

For screenshots and tests; nothing is measured in it.
"""

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QLinearGradient, QPainter, QPen

from gui.drawing.shown_movements import illustrated_angle_deg
from measure.domain.landmarks import LANDMARKS, FloatArray, Landmark, Side, arm
from measure.domain.movements import MOVEMENTS, Movement, Unit
from tests.support.gui.stage_figure import BodyFigure, Point2D, body_figure

WIDTH_PX, HEIGHT_PX = 1280, 720
#: Where the hips are, and how many pixels a body height has.
_HIPS, _BODY_PX = (640.0, 415.0), 560.0

_SKIN, _SHIRT, _SLEEVE, _TROUSERS = "#c99a78", "#53796a", "#466757", "#3f4a5a"


@lru_cache(maxsize=64)
def draw_person(
    movement: Movement, side: Side, value: float
) -> tuple[NDArray[np.uint8], FloatArray]:
    """Return a picture, shape (720, 1280, 3), and landmarks, shape (33, 2), pixels.

    Both are kept for the next time and cannot be written to.
    """
    whole = illustrated_angle_deg(movement) if MOVEMENTS[movement].unit is Unit.DEGREES else 0.6
    body = body_figure(movement, side, mirrored=False, share=value / whole)
    image = QImage(WIDTH_PX, HEIGHT_PX, QImage.Format.Format_RGB888)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    _room(painter)
    _person(painter, body)
    painter.end()
    rows = np.frombuffer(image.constBits(), dtype=np.uint8)
    picture = rows.reshape(HEIGHT_PX, image.bytesPerLine())[:, : WIDTH_PX * 3]
    whole_picture, points = picture.reshape(HEIGHT_PX, WIDTH_PX, 3).copy(), _landmarks(body, side)
    whole_picture.setflags(write=False)
    points.setflags(write=False)
    return whole_picture, points


def _at(point: Point2D) -> QPointF:
    return QPointF(_HIPS[0] + point[0] * _BODY_PX, _HIPS[1] + point[1] * _BODY_PX)


def _room(painter: QPainter) -> None:
    wall = QLinearGradient(0, 0, 0, HEIGHT_PX)
    wall.setColorAt(0, QColor("#d8d3c6"))
    wall.setColorAt(1, QColor("#bfb8a8"))
    painter.fillRect(0, 0, WIDTH_PX, HEIGHT_PX, wall)
    painter.fillRect(0, 660, WIDTH_PX, 60, QColor("#8b7a63"))
    painter.fillRect(QRectF(80, 90, 260, 300), QColor("#eef2f0"))
    painter.setPen(QPen(QColor("#9a9383"), 10))
    painter.drawRect(QRectF(80, 90, 260, 300))
    painter.drawLine(210, 90, 210, 390)
    painter.fillRect(QRectF(1010, 420, 190, 240), QColor("#7d8f7a"))


def _person(painter: QPainter, body: BodyFigure) -> None:
    for leg in body.legs:
        _stroke(painter, leg, _TROUSERS, 0.075)
    _stroke(painter, body.other_arm[:2], _SLEEVE, 0.055)
    _stroke(painter, body.other_arm[1:], _SKIN, 0.04)
    corners = (*body.shoulders, *reversed(body.hips))
    painter.setPen(_pen(_SHIRT, 0.07))
    painter.setBrush(QColor(_SHIRT))
    painter.drawPolygon([_at(corner) for corner in corners])
    _stroke(painter, (body.trunk[1], body.head), _SKIN, 0.05)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(_SKIN))
    painter.drawEllipse(_at(body.head), 0.062 * _BODY_PX, 0.078 * _BODY_PX)
    painter.setBrush(QColor("#4b3a2c"))
    painter.drawPie(
        QRectF(_at(body.head) + QPointF(-37, -46), _at(body.head) + QPointF(37, 40)), 0, 180 * 16
    )
    _stroke(painter, body.end_arm[:2], _SLEEVE, 0.055)
    _stroke(painter, body.end_arm[1:], _SKIN, 0.042)


def _pen(colour: str, thick: float) -> QPen:
    pen = QPen(QColor(colour), thick * _BODY_PX)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return pen


def _stroke(painter: QPainter, points: tuple[Point2D, ...], colour: str, thick: float) -> None:
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(_pen(colour, thick))
    painter.drawPolyline([_at(point) for point in points])


def _landmarks(body: BodyFigure, side: Side) -> FloatArray:
    """Return the landmarks that belong to the drawing; those of the face lie on the nose."""
    points = np.tile(_array(body.nose), (LANDMARKS, 1))
    for one, limb, place in ((side, body.end_arm, 0), (side.other, body.other_arm, 1)):
        marks, leg = arm(one), body.legs[place]
        points[marks.shoulder], points[marks.elbow] = _array(limb[0]), _array(limb[1])
        for mark in (marks.wrist, marks.thumb, marks.index, marks.pinky):
            points[mark] = _array(limb[2])
        points[marks.hip], points[marks.ear] = _array(body.hips[place]), _array(body.head)
        name = one.name
        points[Landmark[f"{name}_KNEE"]] = (_array(leg[0]) + _array(leg[1])) / 2
        for part in ("ANKLE", "HEEL"):
            points[Landmark[f"{name}_{part}"]] = _array(leg[1])
        points[Landmark[f"{name}_FOOT_INDEX"]] = _array(leg[2])
    return points


def _array(point: Point2D) -> FloatArray:
    place = _at(point)
    return np.array([place.x(), place.y()])
