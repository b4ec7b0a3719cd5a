"""A drawn scene: the person in a pose, the things beside, the way of the arm.

For the window, for paper and for SVG alike; it fills a rectangle of any size.
"""

import math
from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import NamedTuple

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from gui.drawing.person import (
    HANGING,
    HEAD_UP,
    Body,
    Point3D,
    Pose,
    across_sign,
    between,
    length,
    minus,
    plus,
    posed,
    times,
)
from gui.drawing.person_painter import PersonPainter
from gui.drawing.shown_movements import Prop, PropKind, Shown
from gui.style.appearance import Appearance
from measure.domain.landmarks import Side

#: Room around the hips, in body heights: above, below, to either side. [technical]
_ABOVE, _BELOW, _ASIDE = 0.57, 0.57, 0.54
#: Half the width of the shade that somebody stands on, and half its height seen from the front,
#: body heights; how much nearer its middle is than that of the hips. [technical]
_FLOOR_ASIDE, _FLOOR_FLAT, _FLOOR_NEARER = 0.30, 0.026, 0.06
#: How deep it is seen from above, as a share of its width. [technical]
_FLOOR_DEEP = 0.68
#: Radius of a ring around a shoulder, body heights. [technical]
_RING = 0.065
#: Close up: half the width of who stands, from the hips to below the floor, and the hand beyond the
#: wrist, in body heights; moments of a motion that are looked at. [technical]
_STANDS_ASIDE, _STANDS_BELOW, _HAND, _MOMENTS = 0.19, 0.54, 0.12, 12
#: From the middle of the head to above the crown, and to either side; half the foot of a post, in
#: body heights. [technical]
_CROWN_ABOVE, _HEAD_ASIDE, _FOOT = 0.092, 0.08, 0.07
#: Radius of the dot at a joint that is followed, and the line between joints, body heights.
#: [technical]
_JOINT, _BETWEEN_JOINTS = 0.015, 0.008
#: A handle nearer than this hides the person, body heights. [technical]
_NEAR = 0.15
#: Ring that says that the arm goes round: how far beneath the wrist, its points' length, half its
#: width and height, body heights; where it begins and how far it goes, degrees; how its points
#: spread, radians. [technical]
_SWING_BELOW, _BARB_LONG, _SWING_RING = 0.075, 0.03, (0.13, 0.042)
_SWING_FROM_DEG, _SWING_DEG, _BARB = -60, 300, 0.6
#: Arc that says which way the body turns: its radius, how far it lies above the middle of the head,
#: body heights; how flat it is, and how far it goes to either side, degrees. [technical]
_TURN_RADIUS, _TURN_ABOVE, _TURN_FLAT, _TURN_DEG = 0.13, 0.09, 0.5, 60
#: Places along that arc. [technical]
_TURN_PLACES = 24
#: Close up: how high the arc above the head reaches above its middle, body heights. [technical]
_ARC_ABOVE = 0.135
#: Close up: what things need beside the person, above and below the hips, body heights. [technical]
_PROP_ROOM = {
    PropKind.TABLE: (0.52, 0.0, 0.0),
    PropKind.WALL: (0.36, 0.57, 0.0),
}


def paint_scene(
    painter: QPainter,
    appearance: Appearance,
    place: QRectF,
    shown: Shown,
    side: Side,
    *,
    time_s: float | None = None,
    mirrored: bool | None = None,
    close: bool = False,
    most_px: float = math.inf,
    at_rest: bool = False,
    for_paper: bool = False,
) -> None:
    """Paint a movement or exercise into a rectangle.

    Parameters
    ----------
    time_s
        Moment of the loop, seconds; None paints its end with its start as a shade, as on paper
        and for people who want no motion.
    mirrored
        Whether left and right are exchanged, as in a mirror; None where no camera's picture is
        beside it: as :attr:`Shown.as_in_mirror` has it.
    close
        Whether the whole motion fills the place, instead of standing in the scale of all others.
    most_px
        Close up: the most that a body height may take, pixels; see :func:`close_scale`.
    at_rest
        Whether nothing is to be done now: no arrow says which way to turn, and a hand that held a
        handle hangs beside the body.
    for_paper
        Whether shapes are joined first: a far smaller drawing for paper and SVG, in ten times the
        time.
    """
    still = time_s is None
    if mirrored is None:
        mirrored = shown.as_in_mirror
    scale, hips = _fitted(place)
    if close:
        scale, hips = _filled(place, shown, side, mirrored=mirrored, most_px=most_px)
    person = PersonPainter(
        painter,
        appearance,
        scale,
        hips,
        mirrored=mirrored,
        from_above_deg=shown.from_above_deg,
        merged=for_paper,
    )
    moment = shown.end if still and not shown.swinging else shown.pose_at(time_s or 0.0)
    if at_rest and any(prop.kind is PropKind.HANDLE for prop in shown.props):
        moment = replace(shown.start, arm=HANGING)
    body, rest = posed(moment, side), posed(shown.start, side)
    sign = across_sign(body.turn_deg, 1.0 if side is Side.LEFT else -1.0)
    paint_floor(person, body)
    in_front = [_in_front(prop, let_go=at_rest) for prop in shown.props]
    for prop, hides in zip(shown.props, in_front, strict=True):
        if not hides:
            _prop(person, prop, body, sign)
    if shown.with_wedge:
        _wedge(person, rest, body)
    if still and not shown.swinging and not shown.props:
        person.faint_arm(rest.arm)
    person.paint(body)
    for prop, hides in zip(shown.props, in_front, strict=True):
        if hides:
            _prop(person, prop, body, sign)
    if shown.swinging and not at_rest:
        _swing(person, rest)
    if shown.turning and not at_rest:
        _turning(person, shown, side)


def paint_standing(
    painter: QPainter,
    appearance: Appearance,
    place: QRectF,
    sides: Collection[Side],
    *,
    asked: bool = False,
    tracked: bool = False,
    floor: bool = True,
) -> None:
    """Paint somebody as in a mirror, arms hanging, those of some sides in the measured colour.

    Parameters
    ----------
    asked
        Whether it is asked which shoulder is meant: then both are ringed.
    tracked
        Whether the joints that a camera's picture is searched for are marked.
    floor
        Whether the floor under the feet is seen.
    """
    scale, hips = _fitted(place, _FLOOR_ASIDE)
    person = PersonPainter(painter, appearance, scale, hips, mirrored=True)
    body = posed(Pose(), Side.LEFT)
    if floor:
        paint_floor(person, body)
    person.paint(body, other=Side.RIGHT in sides, own=Side.LEFT in sides)
    if asked:
        painter.setPen(_line_pen(person, colour="arm"))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for shoulder, *_ in (body.arm, body.other_arm):
            painter.drawEllipse(person.at(shoulder), person.px(_RING), person.px(_RING))
    if tracked:
        _joints(person, body)


def _fitted(place: QRectF, aside: float = _ASIDE) -> tuple[float, QPointF]:
    """Return the pixels of a body height, and where the hips are, in a rectangle."""
    scale = min(place.height() / (_ABOVE + _BELOW), place.width() / (2 * aside))
    spare = place.height() - scale * (_ABOVE + _BELOW)
    return scale, QPointF(place.center().x(), place.top() + spare / 2 + _ABOVE * scale)


def _filled(
    place: QRectF, shown: Shown, side: Side, *, mirrored: bool, most_px: float
) -> tuple[float, QPointF]:
    """Return what `_fitted` does, for a motion that is as large as it has room.

    Who moves stands in the middle, so that words beneath are centred on the feet; with things
    beside, both stand there together.
    """
    reach = _reach(shown, side)
    before, after = (reach.right, reach.left) if mirrored else (reach.left, reach.right)
    high = reach.above + reach.below
    scale = min(close_scale(place.size(), shown, side), most_px)
    top = place.top() + place.height() - scale * high
    across = place.center().x() + scale * (before - after) / 2
    return scale, QPointF(across, top + reach.above * scale)


def close_scale(size: QSizeF, shown: Shown, side: Side) -> float:
    """Return how many pixels a body height takes where a motion fills a place of this size."""
    reach = _reach(shown, side)
    high, wide = reach.above + reach.below, reach.left + reach.right
    return min(size.height() / high, size.width() / wide)


def close_height(shown: Shown, side: Side) -> float:
    """Return how high a motion is with the things that belong to it, in body heights."""
    reach = _reach(shown, side)
    return reach.above + reach.below


def close_width(shown: Shown, side: Side, high: float) -> float:
    """Return how wide a motion that is drawn close up can use a place of a height."""
    reach = _reach(shown, side)
    aside = max(2 * _FLOOR_ASIDE, reach.left + reach.right)
    return aside * high / (reach.above + reach.below)


class _Extent(NamedTuple):
    """How far a motion reaches from the middle of the hips, in body heights."""

    left: float
    right: float
    above: float
    below: float


def _reach(shown: Shown, side: Side) -> _Extent:
    """Return how far a motion reaches with the things that belong to it."""
    moments = (shown.round_s * part / _MOMENTS for part in range(_MOMENTS))
    bodies = [posed(shown.pose_at(moment), side) for moment in moments]
    joints = [joint for body in bodies for joint in (*body.arm, *body.other_arm)]
    crown = max(body.head[1] for body in bodies) + _CROWN_ABOVE
    above, below = max(crown, max(up for _, up, _ in joints) + _HAND), _STANDS_BELOW
    down = math.radians(shown.from_above_deg)
    if shown.turning:
        above = max(above, HEAD_UP * math.cos(down) + _ARC_ABOVE)
    deep = _FLOOR_NEARER + _FLOOR_ASIDE * _FLOOR_DEEP
    below = max(below, -bodies[0].floor * math.cos(down) + deep * math.sin(down))
    if not shown.props:
        aside = max(_STANDS_ASIDE, max(abs(across) for across, _, _ in joints) + _HAND)
        return _Extent(aside, aside, above, below)
    sign = across_sign(bodies[0].turn_deg, 1.0 if side is Side.LEFT else -1.0)
    across = [body.head[0] + out for body in bodies for out in (-_HEAD_ASIDE, _HEAD_ASIDE)]
    across += [hand for body in bodies for arm in (body.arm, body.other_arm) for hand in _ends(arm)]
    across += [-_FLOOR_ASIDE, _FLOOR_ASIDE]
    for prop in shown.props:
        beside, over, under = _PROP_ROOM.get(prop.kind, (0.0, 0.0, 0.0))
        across += (
            [sign * beside] if beside else [sign * prop.across + end for end in (-_FOOT, _FOOT)]
        )
        above, below = max(above, over), max(below, under)
    return _Extent(-min(across), max(across), above, below)


def _ends(arm: tuple[Point3D, Point3D, Point3D]) -> tuple[float, float]:
    """Return how far across a wrist and the tips of its fingers are."""
    _, elbow, wrist = arm
    forearm = minus(wrist, elbow)
    tips = plus(wrist, times(forearm, _HAND / max(length(forearm), _HAND)))
    return wrist[0], tips[0]


def _line_pen(person: PersonPainter, wide: float = 0.011, colour: str = "edge") -> QPen:
    pen = QPen(person.colour(colour), max(1.5, person.px(wide)))
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return pen


def _stroke(person: PersonPainter, places: list[Point3D], pen: QPen) -> None:
    path = QPainterPath(person.at(places[0]))
    for place in places[1:]:
        path.lineTo(person.at(place))
    person.painter.strokePath(path, pen)


def paint_floor(person: PersonPainter, body: Body, most_px: float = math.inf) -> None:
    """Paint a soft shade where the person stands.

    Parameters
    ----------
    most_px
        How far it may reach to either side.
    """
    across, (_, down) = body.trunk[0][0], person.from_above
    middle = person.at((across, body.floor, _FLOOR_NEARER))
    aside = min(person.px(_FLOOR_ASIDE), most_px)
    high = max(person.px(_FLOOR_FLAT), aside * _FLOOR_DEEP * down)
    person.painter.setPen(Qt.PenStyle.NoPen)
    person.painter.setBrush(person.colour("line", 0.7))
    person.painter.drawEllipse(middle, aside, high)


def _joints(person: PersonPainter, body: Body) -> None:
    """Paint a dot at each joint, and lines between those that a bone joins."""
    arms, legs = (body.arm, body.other_arm), [leg[:3] for leg in body.legs]
    sides = [(arm[0], leg[0]) for arm, leg in zip(arms, legs, strict=True)]
    across = [tuple(limb[0] for limb in limbs) for limbs in (arms, legs)]
    pen = _line_pen(person, _BETWEEN_JOINTS, "arm")
    for places in (*arms, *legs, *sides, *across):
        _stroke(person, list(places), pen)
    person.painter.setPen(Qt.PenStyle.NoPen)
    person.painter.setBrush(person.colour("arm"))
    for place in (body.head, *(joint for limb in (*arms, *legs) for joint in limb)):
        person.painter.drawEllipse(person.at(place), person.px(_JOINT), person.px(_JOINT))


def _wedge(person: PersonPainter, rest: Body, body: Body) -> None:
    """Paint the opening between the arm at rest and the arm now."""
    shoulder = person.at(body.arm[0])
    hand, down = person.at(body.arm[2]) - shoulder, person.at(rest.arm[2]) - shoulder
    start = math.degrees(math.atan2(-down.y(), down.x()))
    span = math.degrees(math.atan2(-hand.y(), hand.x())) - start
    span = (span + 180) % 360 - 180
    radius = person.px(0.25)
    box = QRectF(shoulder.x() - radius, shoulder.y() - radius, 2 * radius, 2 * radius)
    path = QPainterPath(shoulder)
    path.arcTo(box, start, span)
    path.closeSubpath()
    person.painter.fillPath(path, person.colour("arm", 0.13))


def _in_front(prop: Prop, *, let_go: bool) -> bool:
    """Tell whether a thing hides the person, not the person it; a handle let go hides no arm."""
    near = prop.kind is PropKind.HANDLE and prop.nearer > _NEAR and not let_go
    return near or prop.kind in (PropKind.TOWEL, PropKind.CLOTH)


def _swing(person: PersonPainter, rest: Body) -> None:
    """Paint beneath the hanging hand that it goes round: a flat ring with a point at its end."""
    across, up, nearer = rest.arm[2]
    middle = person.at((across, up - _SWING_BELOW, nearer))
    wide, high = (person.px(part) for part in _SWING_RING)
    places = [
        middle + QPointF(math.cos(turn) * wide, math.sin(turn) * high)
        for turn in (
            math.radians(_SWING_FROM_DEG + _SWING_DEG * place / _TURN_PLACES)
            for place in range(_TURN_PLACES + 1)
        )
    ]
    _arrow(person, places)


def _turning(person: PersonPainter, shown: Shown, side: Side) -> None:
    """Paint above the head which way the body turns: an arc with a point at its end."""
    middle = posed(between(shown.start, shown.end, 0.5), side)
    out = 1.0 if side is Side.LEFT else -1.0
    span = math.copysign(_TURN_DEG, out * (shown.end.turn - shown.start.turn))
    turns = [
        math.radians(middle.turn_deg + span * (2 * place / _TURN_PLACES - 1))
        for place in range(_TURN_PLACES + 1)
    ]
    nearest = max(map(math.cos, turns))
    across, up, nearer = middle.head
    places = []
    for turn in turns:
        beside = person.at((across + _TURN_RADIUS * math.sin(turn), up, nearer))
        deep = _TURN_RADIUS * _TURN_FLAT * (math.cos(turn) - nearest)
        places.append(beside + QPointF(0, person.px(deep - _TURN_ABOVE)))
    _arrow(person, places)


def _arrow(person: PersonPainter, places: Sequence[QPointF]) -> None:
    """Paint a line through places with a point at its end."""
    path = QPainterPath(places[0])
    for place in places[1:]:
        path.lineTo(place)
    tip, before = places[-1], places[-2]
    back = math.atan2(before.y() - tip.y(), before.x() - tip.x())
    for aside in (-_BARB, _BARB):
        path.moveTo(tip)
        barb = QPointF(math.cos(back + aside), math.sin(back + aside))
        path.lineTo(tip + barb * person.px(_BARB_LONG))
    person.painter.strokePath(path, _line_pen(person, 0.012, "arm"))


def _prop(person: PersonPainter, prop: Prop, body: Body, sign: float) -> None:
    match prop.kind:
        case PropKind.TABLE:
            _table(person, prop, body.floor, sign)
        case PropKind.STOOL:
            seat = -0.09
            pen = _line_pen(person, 0.016)
            _stroke(person, [(-0.10, seat, 0.0), (0.10, seat, 0.0)], pen)
            for foot in (-0.085, 0.085):
                _stroke(
                    person, [(foot * 0.8, seat, 0.0), (foot, body.floor, 0.0)], _line_pen(person)
                )
        case PropKind.WALL:
            x = sign * prop.across
            _stroke(person, [(x, 0.55, 0.0), (x, body.floor, 0.0)], _line_pen(person, 0.014))
        case PropKind.HANDLE:
            _handle(person, prop, body.floor, sign)
        case PropKind.TOWEL:
            _towel(person, body)
        case PropKind.CLOTH:
            wrist = body.arm[2]
            tips = (wrist[0] + sign * 0.06, prop.up + 0.008, wrist[2])
            back = (wrist[0] - sign * 0.01, prop.up + 0.008, wrist[2])
            _stroke(person, [back, tips], _line_pen(person, 0.016, "hold"))


def _table(person: PersonPainter, prop: Prop, floor: float, sign: float) -> None:
    near, far = sign * prop.across, sign * 0.49
    _stroke(person, [(near, prop.up, 0.0), (far, prop.up, 0.0)], _line_pen(person, 0.016))
    for share in (0.12, 0.92):
        x = near + (far - near) * share
        _stroke(person, [(x, prop.up, 0.0), (x, floor, 0.0)], _line_pen(person))


def _handle(person: PersonPainter, prop: Prop, floor: float, sign: float) -> None:
    """Paint a post with a grip, on a foot."""
    x = sign * prop.across
    _stroke(person, [(x, 0.3, prop.nearer), (x, floor, prop.nearer)], _line_pen(person, 0.018))
    foot = [(x + aside, floor, prop.nearer) for aside in (-0.05, 0.05)]
    _stroke(person, foot, _line_pen(person, 0.022))
    grip = [(x, prop.up + 0.045, prop.nearer), (x, prop.up - 0.045, prop.nearer)]
    _stroke(person, grip, _line_pen(person, 0.030, "hold"))


def _towel(person: PersonPainter, body: Body) -> None:
    """Paint a towel from the upper hand over the shoulder down to the lower one."""
    upper, over, lower = body.other_arm[2], body.other_arm[0], body.arm[2]
    over = (over[0] * 0.6, over[1] + 0.05, 0.07)
    path = QPainterPath(person.at(upper))
    path.quadTo(person.at(over), person.at((lower[0], lower[1] + 0.02, 0.1)))
    person.painter.strokePath(path, _line_pen(person, 0.026, "hold"))
