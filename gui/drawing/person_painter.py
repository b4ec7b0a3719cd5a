"""Painter of the drawn person: a calm figure with clothes and hands, the measured arm in blue.

Shapes that belong together are outlined first and filled after, so that only their common edge is
seen. It paints on a window, on paper and into SVG alike.
"""

import math
from collections.abc import Sequence
from itertools import pairwise

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPen

from gui.drawing.person import SHOULDER_UP, Body, Point3D, minus, plus, times
from gui.style.appearance import Appearance

#: Half widths of limbs along their length, in body heights. [technical]
_ARM_HALF = (0.0335, 0.0255, 0.0172)
_SLEEVE_HALF = (0.0345, 0.0315)
_LEG_HALF = (0.05, 0.034, 0.035, 0.0235)
#: Sections of the trunk: how high, half as wide, half as deep, in body heights. [technical]
_TRUNK = (
    (-0.055, 0.062, 0.052),
    (-0.01, 0.086, 0.064),
    (0.05, 0.080, 0.058),
    (0.115, 0.073, 0.052),
    (0.19, 0.088, 0.062),
    (0.245, 0.097, 0.060),
    (0.281, 0.086, 0.046),
    (0.308, 0.042, 0.033),
)
#: How many of those sections, from below, the trousers cover. [technical]
_TROUSERS = 3
#: Facing more than the first, and with less depth than the second, an arm lies beside the trunk,
#: and one edge runs round both. [technical]
_BESIDE_FACING, _BESIDE_DEPTH = 0.6, 0.05
#: Half the width of the outline, in body heights. [technical]
_OUTLINE = 0.0065
#: Places in a line across a shape at which its joining is checked, and how far within they lie,
#: pixels. [technical]
_PLACES, _NEAR_PX = 6, 0.5


class PersonPainter:
    """Puts a posed body on a painter.

    Parameters
    ----------
    scale
        Pixels of a body height.
    hips
        Where the middle of the hips of a standing person lies.
    mirrored
        Whether left and right are exchanged, as in a mirror.
    from_above_deg
        How far the drawing looks down.
    merged
        Whether shapes are joined first: slower, and a far smaller drawing for paper and SVG.
    """

    def __init__(
        self,
        painter: QPainter,
        appearance: Appearance,
        scale: float,
        hips: QPointF,
        *,
        mirrored: bool = False,
        from_above_deg: float = 0.0,
        merged: bool = False,
    ) -> None:
        self.painter, self._appearance = painter, appearance
        self._scale, self._hips = scale, hips
        self._merged = merged
        self._flip = -1.0 if mirrored else 1.0
        down = math.radians(from_above_deg)
        #: Cosine and sine of how far the drawing looks down.
        self.from_above = (math.cos(down), math.sin(down))

    def at(self, place: Point3D) -> QPointF:
        """Return where a place of the room lies on the painter."""
        across, up, nearer = place
        y = -up * self.from_above[0] + nearer * self.from_above[1]
        return self._hips + QPointF(self._flip * across, y) * self._scale

    def px(self, part: float) -> float:
        """Return a length in body heights as pixels."""
        return part * self._scale

    def colour(self, name: str, opacity: float = 1.0) -> QColor:
        return self._appearance.colour(name, opacity)

    def paint(self, body: Body, *, other: bool = False, own: bool = True) -> None:
        """Paint the whole person, what is far away first.

        Parameters
        ----------
        other, own
            Whether the other arm, and the one that is posed, have the colour of a measured arm.
        """
        self._legs(body)
        arms = [(body.other_arm, other), (body.arm, own)]
        beside = [arm for arm, measured in arms if not measured and _is_beside(arm, body)]
        parts = [(_nearness(arm[1:]) + 0.01 * measured, arm, measured) for arm, measured in arms]
        for depth, arm, measured in sorted(parts, key=lambda part: part[0]):
            if depth < 0 and arm not in beside:
                self._arm(arm, measured=measured)
        self._trunk(body, beside)
        for depth, arm, measured in sorted(parts, key=lambda part: part[0]):
            if depth >= 0 or arm in beside:
                self._arm(arm, measured=measured, sleeve=arm not in beside)

    def faint_arm(self, arm: tuple[Point3D, Point3D, Point3D]) -> None:
        """Paint where the measured arm was or will be, as a shade."""
        shade = QPainterPath()
        for shape in [*self._limb(arm, _ARM_HALF), *self._hand(arm)]:
            shade = shade.united(shape)
        self.painter.fillPath(shade, self.colour("arm", 0.16))

    def _arm(
        self, arm: tuple[Point3D, Point3D, Point3D], *, measured: bool, sleeve: bool = True
    ) -> None:
        shapes = [*self._limb(arm, _ARM_HALF), *self._hand(arm)]
        if measured:
            self._put([(shape, "arm") for shape in shapes], "arm")
            return
        if not sleeve:
            cuff = _cuff(arm)
            shapes = [*self._limb((cuff, *arm[1:]), (0.03, *_ARM_HALF[1:])), *self._hand(arm)]
        self._put([(shape, "skin") for shape in shapes], "outline")
        if sleeve:
            self._put([(shape, "shirt") for shape in self._sleeve(arm)], "outline")
        else:
            for shape in self._sleeve(arm):
                self.painter.fillPath(shape, self.colour("shirt"))

    def _sleeve(self, arm: tuple[Point3D, Point3D, Point3D]) -> list[QPainterPath]:
        return self._limb((arm[0], _cuff(arm)), _SLEEVE_HALF)

    def _legs(self, body: Body) -> None:
        """Paint shoes, then both legs and the seat of the trousers with one edge."""
        legs = sorted(body.legs, key=_nearness)
        trousers = []
        for hip, knee, ankle, toes in legs:
            heel = plus(ankle, (0.0, -0.012, 0.0))
            shoes = self._limb((heel, toes), (0.0215, 0.0175))
            self._put([(shape, "outline") for shape in shoes], "outline")
            calf = plus(knee, times(minus(ankle, knee), 0.3))
            trousers += self._limb((hip, knee, calf, ankle), _LEG_HALF)
        seat = self._section_path(body, _TRUNK[:_TROUSERS])
        self._put([(shape, "trousers") for shape in [*trousers, seat]], "outline")

    def _trunk(self, body: Body, beside: Sequence[tuple[Point3D, Point3D, Point3D]]) -> None:
        """Paint neck, shirt and head."""
        neck = self._limb((body.trunk[1], body.head), (0.032, 0.028))
        self._put([(shape, "skin") for shape in neck], "outline")
        shirt = [self._section_path(body, _TRUNK[_TROUSERS - 1 :])]
        for arm in beside:
            shirt += self._sleeve(arm)
        self._put([(shape, "shirt") for shape in shirt], "outline")
        self._head(body)

    def _head(self, body: Body) -> None:
        """Paint the head; hair and nose show where it looks."""
        turn = math.radians(body.turn_deg)
        forwards = math.sin(turn) * self._flip
        facing = math.cos(turn)
        middle = self.at(body.head)
        wide = self.px(math.hypot(0.047 * facing, 0.057 * forwards))
        high = self.px(0.066)
        head = _ellipse(middle, wide, high)
        if facing > -0.5:
            nose = _ellipse(
                middle + QPointF(forwards * wide * 0.98, high * 0.14),
                self.px(0.011),
                self.px(0.012),
            )
            parts = [(nose, "skin")] if abs(forwards) > 0.4 else []
            self._put([*parts, (head, "skin")], "outline")
            face = middle + QPointF(forwards * wide * 0.42, high * 0.34)
            hair = head.subtracted(_ellipse(face, wide * 1.02, high * 0.98))
            self.painter.fillPath(hair, self.colour("outline"))
        else:
            self._put([(head, "outline")], "outline")

    def _section_path(
        self, body: Body, sections: Sequence[tuple[float, float, float]]
    ) -> QPainterPath:
        """Return the outline through sections of the trunk, smooth, as seen from here."""
        hips, shoulders = body.trunk
        axis = times(minus(shoulders, hips), 1 / SHOULDER_UP)
        ahead = self.at(plus(hips, axis)) - self.at(hips)
        size = math.hypot(ahead.x(), ahead.y()) or 1.0
        across = QPointF(-ahead.y(), ahead.x()) / size
        turn = math.radians(body.turn_deg)
        left, right = [], []
        for up, wide, deep in sections:
            half = self.px(math.hypot(wide * math.cos(turn), deep * math.sin(turn)))
            middle = self.at(plus(hips, times(axis, up)))
            left.append(middle + across * half)
            right.append(middle - across * half)
        return _smooth([*left, *reversed(right)])

    def _limb(self, places: Sequence[Point3D], halves: Sequence[float]) -> list[QPainterPath]:
        """Return the parts of a limb that tapers from place to place."""
        seen = [self.at(place) for place in places]
        widths = [self.px(half) for half in halves]
        parts: list[QPainterPath] = []
        for (start, end), (first, last) in zip(pairwise(seen), pairwise(widths), strict=True):
            parts += _taper(start, end, first, last)
        return parts

    def _hand(self, arm: tuple[Point3D, Point3D, Point3D]) -> list[QPainterPath]:
        """Return a hand that goes on in the forearm's direction, with its thumb."""
        _, elbow, wrist = arm
        ahead = minus(wrist, elbow)
        palm, tips = plus(wrist, times(ahead, 0.16)), plus(wrist, times(ahead, 0.42))
        parts = self._limb((wrist, palm, tips), (0.0165, 0.0195, 0.0135))
        start, end = self.at(wrist), self.at(tips)
        way = end - start
        across = QPointF(way.y(), -way.x())
        if across.y() > 0:
            across = -across
        thumb = start + way * 0.66 + across * 0.40
        return parts + _taper(start + way * 0.2, thumb, self.px(0.010), self.px(0.0072))

    def _put(self, shapes: Sequence[tuple[QPainterPath, str]], rim: str) -> None:
        """Paint shapes with one common edge."""
        pen = QPen(self.colour(rim), 2 * self.px(_OUTLINE))
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        if self._merged:
            shapes = _merged(shapes)
        for shape, _ in shapes:
            self.painter.strokePath(shape, pen)
        for shape, name in shapes:
            self.painter.fillPath(shape, QBrush(self.colour(name)))


def _merged(shapes: Sequence[tuple[QPainterPath, str]]) -> list[tuple[QPainterPath, str]]:
    """Return the shapes of each colour as one, without what lies inside it."""
    whole: dict[str, QPainterPath] = {}
    apart: list[tuple[QPainterPath, str]] = []
    inside: dict[str, list[QPointF]] = {}
    for shape, name in shapes:
        joined = whole.get(name, QPainterPath()).united(shape)
        places = inside.get(name, []) + _places_inside(shape)
        # Where edges all but touch, parts may be lost.
        if all(map(joined.contains, places)):
            whole[name], inside[name] = joined, places
        else:
            apart.append((shape, name))
    return [*((shape, name) for name, shape in whole.items()), *apart]


def _places_inside(shape: QPainterPath) -> list[QPointF]:
    """Return places well inside a shape."""
    around = shape.boundingRect()
    grid = (
        QPointF(
            around.left() + around.width() * across / _PLACES,
            around.top() + around.height() * down / _PLACES,
        )
        for across in range(1, _PLACES)
        for down in range(1, _PLACES)
    )
    near = [QPointF(dx, dy) for dx in (-_NEAR_PX, _NEAR_PX) for dy in (-_NEAR_PX, _NEAR_PX)]
    return [place for place in grid if all(shape.contains(place + step) for step in near)]


def _nearness(places: Sequence[Point3D]) -> float:
    return sum(place[2] for place in places) / len(places)


def _ellipse(middle: QPointF, wide: float, high: float) -> QPainterPath:
    path = QPainterPath()
    path.addEllipse(middle, wide, high)
    return path


def _is_beside(arm: tuple[Point3D, Point3D, Point3D], body: Body) -> bool:
    facing = abs(math.cos(math.radians(body.turn_deg)))
    return facing > _BESIDE_FACING and abs(arm[1][2] - arm[0][2]) < _BESIDE_DEPTH


def _cuff(arm: tuple[Point3D, Point3D, Point3D]) -> Point3D:
    """Return where a short sleeve ends."""
    return plus(arm[0], times(minus(arm[1], arm[0]), 0.6))


def _taper(start: QPointF, end: QPointF, first: float, last: float) -> list[QPainterPath]:
    """Return two discs and what lies between them."""
    parts = [_ellipse(start, first, first), _ellipse(end, last, last)]
    way = end - start
    far = math.hypot(way.x(), way.y())
    if far > abs(first - last):
        lean = math.acos((first - last) / far)
        base = math.atan2(way.y(), way.x())
        rays = [
            QPointF(math.cos(base + sign * lean), math.sin(base + sign * lean)) for sign in (1, -1)
        ]
        between = QPainterPath(start + rays[0] * first)
        for corner in (end + rays[0] * last, end + rays[1] * last, start + rays[1] * first):
            between.lineTo(corner)
        between.closeSubpath()
        parts.append(between)
    return parts


def _smooth(points: Sequence[QPointF]) -> QPainterPath:
    """Return a closed smooth curve through points (Catmull and Rom's, as cubics)."""
    n = len(points)
    path = QPainterPath(points[0])
    for k in range(n):
        before, here, there, after = (points[(k + j) % n] for j in (-1, 0, 1, 2))
        path.cubicTo(here + (there - before) / 6, there - (after - here) / 6, there)
    path.closeSubpath()
    return path
