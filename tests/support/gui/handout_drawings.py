"""Drawings for the printed pages: ``python -m tests.support.gui.handout_drawings FOLDER``.

They come from the same drawing code as the window's, so that paper and window show one person.
No drawing holds words; those stand on the page, where they can be translated.
"""

import argparse
import os
import re
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF
from PySide6.QtSvg import QSvgGenerator
from PySide6.QtWidgets import QApplication

from gui.app.application import configure_application
from gui.drawing.person import Pose, posed
from gui.drawing.person_painter import PersonPainter
from gui.drawing.scene import paint_scene
from gui.drawing.shown_movements import (
    Shown,
    facing_angle_deg,
    shown_movement,
)
from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from gui.widgets.figures.view_plan import ViewPlan
from measure.domain.landmarks import Side
from measure.domain.movements import Movement

#: The arm that the page shows; for the other one everything is turned about.
SHOWN_SIDE = Side.RIGHT

_STAND, _PLAN, _PLACE = QSize(240, 280), QSize(120, 130), QSize(560, 240)


def handout_drawings(
    appearance: Appearance,
) -> Iterator[tuple[str, QSize, Callable[[QPainter], None]]]:
    """Yield each drawing: its file's stem, its size, and what paints it."""
    for movement in Movement:
        shown = shown_movement(movement)
        yield f"stand-{movement.value}", _STAND, _painted(appearance, shown)
        plan = ViewPlan(appearance)
        plan.resize(_PLAN)
        turn_deg = facing_angle_deg(movement, SHOWN_SIDE)
        plan.show_turn(turn_deg, SHOWN_SIDE, mirrored=shown.as_in_mirror)
        yield f"above-{movement.value}", _PLAN, plan.paint
    yield "place", _PLACE, lambda painter: paint_place(painter, appearance)


def _painted(appearance: Appearance, shown: Shown) -> Callable[[QPainter], None]:
    place = QRectF(0, 0, _STAND.width(), _STAND.height())
    return lambda painter: paint_scene(
        painter, appearance, place, shown, SHOWN_SIDE, for_paper=True
    )


def paint_place(painter: QPainter, appearance: Appearance) -> None:
    """Paint a room from the side: a laptop on a table, what its camera sees, the person."""
    width, height = _PLACE.width(), _PLACE.height()
    floor = height - 14.0
    camera = QPointF(66, floor - 126)
    person_x, scale = width - 130.0, 200.0
    seen = QPolygonF([camera, QPointF(width - 10, 0), QPointF(width - 10, floor - 50)])
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(appearance.colour("hold", 0.10))
    painter.drawPolygon(seen)
    painter.setPen(QPen(appearance.colour("line"), 2))
    painter.drawLine(QPointF(10, floor), QPointF(width - 10, floor))
    _paint_laptop(painter, appearance, camera, floor)
    _paint_distance(painter, appearance, camera.x(), person_x - 16, floor - 24)
    standing = posed(Pose(turn=-90), Side.LEFT)
    hips = QPointF(person_x, floor + standing.floor * scale)
    PersonPainter(painter, appearance, scale, hips, merged=True).paint(standing)


def _paint_laptop(painter: QPainter, appearance: Appearance, camera: QPointF, floor: float) -> None:
    pen = QPen(appearance.colour("edge"), 5)
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    painter.setPen(pen)
    table = camera.y() + 44
    painter.drawLine(QPointF(20, table + 5), QPointF(124, table + 5))
    for x in (30.0, 114.0):
        painter.drawLine(QPointF(x, table + 5), QPointF(x, floor))
    painter.setPen(QPen(appearance.colour("ink"), 4))
    painter.drawLine(QPointF(camera.x() + 6, table), QPointF(camera.x() + 48, table))
    painter.drawLine(QPointF(camera.x() + 6, table), QPointF(camera.x() - 2, camera.y()))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(appearance.colour("hold"))
    painter.drawEllipse(camera, 5, 5)


def _paint_distance(
    painter: QPainter, appearance: Appearance, start: float, end: float, y: float
) -> None:
    painter.setPen(QPen(appearance.colour("ink"), 1.5))
    painter.drawLine(QPointF(start, y), QPointF(end, y))
    for x, way in ((start, 1), (end, -1)):
        painter.drawLine(QPointF(x, y), QPointF(x + 8 * way, y - 5))
        painter.drawLine(QPointF(x, y), QPointF(x + 8 * way, y + 5))


def write(folder: Path) -> int:
    """Write all drawings into a folder as SVG; return how many."""
    appearance = Appearance(Scheme.LIGHT)
    written = 0
    for stem, size, paint in handout_drawings(appearance):
        page = QSvgGenerator()
        page.setFileName(str(folder / f"{stem}.svg"))
        page.setSize(size)
        page.setViewBox(QRect(0, 0, size.width(), size.height()))
        page.setTitle(stem)
        painter = QPainter(page)
        try:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setClipRect(QRectF(0, 0, size.width(), size.height()))
            paint(painter)
        finally:
            painter.end()
        _shorten(folder / f"{stem}.svg")
        written += 1
    return written


def _shorten(file: Path) -> None:
    """Round places to a tenth of a unit, and leave out the fonts of drawings without words."""
    text = file.read_text(encoding="utf-8")
    text = re.sub(r"\n?font-family=[^>]*", "", text)
    text = re.sub(
        r'(?<!opacity=")(?<!\d)-?\d+\.\d{2,}', lambda number: f"{float(number[0]):.1f}", text
    )
    file.write_text(text, encoding="utf-8", newline="\n")


def main(arguments: list[str] | None = None) -> int:
    """Write all drawings into a folder."""
    parser = argparse.ArgumentParser(
        prog="python -m tests.support.gui.handout_drawings", description=__doc__
    )
    parser.add_argument("folder", type=Path)
    chosen = parser.parse_args(arguments)
    if "DISPLAY" not in os.environ and "WAYLAND_DISPLAY" not in os.environ:
        os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    chosen.folder.mkdir(parents=True, exist_ok=True)
    application = QApplication.instance() or QApplication(sys.argv[:1])
    configure_application(application)
    print(f"{write(chosen.folder)} drawings in {chosen.folder}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
