"""A reading drawn on a small body: its interval as a band beside the person, at places people know.

An angle lies on an arc round the shoulder, from the hip over shoulder height to overhead; a
rotation on an arc seen from above, from straight ahead outwards; a reach on an upright line along
the back, from hip to shoulder blade. A narrow band is strong, a wide one pale, as everywhere.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPainterPath, QPen

from gui.drawing.interval_band import band_opacity
from gui.drawing.person import SHOULDER_UP, ArmAngles, Body, HandAt, Pose, across_sign, posed
from gui.drawing.person_painter import PersonPainter
from gui.drawing.scene import paint_floor
from gui.drawing.shown_movements import shown_movement
from gui.style.appearance import Appearance
from gui.text.wording import tr
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Direction, Family, Movement
from measure.domain.reading_scale import scale_of

#: The arc's inner radius, its width, and from where words begin, in body heights. [technical]
_INNER, _WIDE, _WORDS = 0.365, 0.07, 0.025
#: Most of the width that the names of places may take, their least distance from each other, in
#: heights of their type, and the space before them; else they are left out. [technical]
_WORDS_SHARE, _WORDS_APART, _WORDS_GAP = 0.45, 1.1, 0.5
#: Fewer names than these say nothing about the scale. [technical]
_FEWEST_WORDS = 2
#: From afar: names of the places nearest to the value, how far they keep from the hand, and how
#: much further out an arc lies so that the whole hand is seen, body heights; no line leads to a
#: name this near to the value, degrees. [technical]
_NEAREST, _WORDS_AFAR, _BEYOND_HAND, _NEAR_HAND_DEG = 2, 0.05, 0.085, 12
#: Up the body from mid-hip to C7, which is 1 on the scale of the reach. [technical]
_BACK_UP = 0.30


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A reading to be drawn: without an interval a guide, without a value a refusal."""

    movement: Movement
    side: Side
    value: float | None = None
    low: float | None = None
    high: float | None = None


def landmarks_of(movement: Movement, value: float | None = None) -> tuple[tuple[float, str], ...]:
    """Return the places that are named beside the body, with their values on the scale.

    Of two places of the back that are too near to each other, the one nearer to the value.
    """
    facts = MOVEMENTS[movement]
    match facts.family:
        case Family.ROTATION:
            return (0.0, tr("straight ahead")), (45.0, tr("halfway")), (90.0, tr("outwards"))
        case Family.REACH:
            places = (0.38, tr("waist")), (0.44, tr("lower ribs"))
            middle = min(places, key=lambda place: abs(place[0] - (value or 0.0)))
            return (0.0, tr("hip")), middle, (0.72, tr("shoulder blade"))
        case Family.ELEVATION:
            hip = (0.0, tr("hip"))
            if facts.direction is Direction.BACKWARDS:
                return hip, (45.0, tr("behind")), (90.0, tr("shoulder height"))
            return (
                hip,
                (90.0, tr("shoulder height")),
                (120.0, tr("head height")),
                (180.0, tr("overhead")),
            )


def paint_reading_on_body(
    painter: QPainter,
    appearance: Appearance,
    place: QRectF,
    reading: Reading,
    *,
    words_px: float,
    mirrored: bool | None = None,
    from_afar: bool = False,
    floor: bool = False,
) -> None:
    """Paint a reading on a body; words are of the size asked for, or left out for want of room.

    Parameters
    ----------
    mirrored
        As :func:`~gui.drawing.scene.paint_scene` has it.
    from_afar
        Whether only the places nearest to the value are named, with lines that lead to them.
    floor
        Whether the floor under the feet is seen, where feet are.
    """
    drawing = {Family.ELEVATION: _Arc, Family.ROTATION: _Plan, Family.REACH: _Reach}
    kind = drawing[MOVEMENTS[reading.movement].family]
    drawn = kind(painter, appearance, reading, words_px, mirrored)
    if from_afar:
        drawn.come_closer()
    drawn.on_floor = floor
    painter.save()
    painter.setClipRect(place)
    drawn.paint_in(place)
    painter.restore()


class _OnBody:
    """What the drawings share: the person in place, the arc or line, band, mark and words."""

    #: Room around the hips in body heights: above, below, and on the side without words.
    above, below, aside = 0.60, 0.57, 0.17
    #: The scale's distance from its centre, and the centre's from the middle of the body.
    inner, offset = _INNER, 0.0
    #: How far the names keep from the band, and how many of them say something.
    words_out, fewest = _WORDS, _FEWEST_WORDS

    def __init__(
        self,
        painter: QPainter,
        appearance: Appearance,
        reading: Reading,
        words_px: float,
        mirrored: bool | None,
    ) -> None:
        self.painter, self.appearance, self.reading = painter, appearance, reading
        self.shown = shown_movement(reading.movement)
        self.font = appearance.font(words_px)
        self.words_px = words_px
        self.words = landmarks_of(reading.movement, reading.value)
        #: Places whose names have room.
        self.named: frozenset[float] = frozenset()
        #: Whether the floor is seen.
        self.on_floor = False
        #: Whether lines lead from the scale to the names.
        self.leading = False
        out = 1.0 if reading.side is Side.LEFT else -1.0
        if mirrored is None:
            mirrored = self.shown.as_in_mirror
        #: 1 where the scale lies to the right of the body, else -1.
        self.to = across_sign(self.shown.start.turn * out, out) * (-1.0 if mirrored else 1.0)
        if MOVEMENTS[reading.movement].direction is Direction.BACKWARDS:
            self.to = -self.to
        self._mirrored = mirrored
        self.above = max(self.above, self.highest())

    def come_closer(self) -> None:
        """Show only what is read from afar."""
        self.leading = True
        self.words_out, self.fewest = _WORDS + _WORDS_AFAR, 1
        value = self.reading.value
        if value is not None:
            nearest = sorted(self.words, key=lambda named: abs(named[0] - value))[:_NEAREST]
            self.words = tuple(sorted(nearest))

    def paint_in(self, place: QRectF) -> None:
        """Paint in the middle of a place."""
        scale, wide = self._fitted(place)
        left = place.left() + (place.width() - wide) / 2
        x = left + scale * self.aside if self.to > 0 else left + wide - scale * self.aside
        spare = place.height() - scale * (self.above + self.below)
        hips = QPointF(x, place.top() + spare / 2 + self.above * scale)
        self.person = PersonPainter(
            self.painter, self.appearance, scale, hips, mirrored=self._mirrored
        )
        if self.on_floor:
            beside = min(x - place.left(), place.right() - x)
            self.floor(posed(self.pose(), self.reading.side), beside)
        self.paint()

    def floor(self, body: Body, beside_px: float) -> None:
        """Paint the floor under the feet, no wider than there is room to either side."""
        paint_floor(self.person, body, beside_px)

    def _beside(self) -> float:
        """Return the width without words, body heights."""
        return self.aside + self.offset + self.inner + _WIDE + self.words_out

    def _fitted(self, place: QRectF) -> tuple[float, float]:
        """Return the scale and the width of all; words that do not fit are let go."""
        metrics = QFontMetricsF(self.font)
        widths = {
            value: metrics.horizontalAdvance(word) + _WORDS_GAP * self.words_px
            for value, word in self.words
        }
        ends = self._ends(widths)
        high = place.height() / (self.above + self.below)
        scale = min(high, *((place.width() - px) / out for out, px in ends))
        wide = max(scale * out + px for out, px in ends)
        named = self._spaced(_WORDS_APART * metrics.height() / max(scale, 1e-6))
        names_px = wide - scale * self._beside()
        if names_px > _WORDS_SHARE * place.width() or len(named) < self.fewest:
            scale = min(high, place.width() / self._beside())
            return scale, scale * self._beside()
        self.named = frozenset(named)
        return scale, wide

    def _ends(self, widths: Mapping[float, float]) -> list[tuple[float, float]]:
        """Return where the drawing ends on the side of the scale: body heights, then pixels.

        Parameters
        ----------
        widths
            Of the names of places, pixels.
        """
        return [(self._beside(), max(widths.values()))]

    def _spaced(self, apart: float) -> list[float]:
        """Return the places, from below, whose names are so far apart, in body heights."""
        named: list[float] = []
        for value, _ in self.words:
            if not named or self.between(named[-1], value) >= apart:
                named.append(value)
        return named

    def between(self, lower: float, value: float) -> float:
        """Return how far the names of two values are from each other, body heights."""
        low, high = scale_of(self.reading.movement)
        return (value - lower) / (high - low) * self.length()

    def length(self) -> float:
        """Return the height over which the names of the whole scale are spread, body heights."""
        return 2 * (self.inner + _WIDE)

    def paint(self) -> None:
        """Paint body, scale, places, band and mark."""
        self.body()
        reading = self.reading
        low, high = scale_of(reading.movement)
        line = self._way(self.inner, low, high)
        self.painter.strokePath(line, self.pen("edge", 1.5, dashed=reading.value is None))
        for value, word in self.words:
            self.painter.setPen(self.pen("edge", 1.5))
            self.painter.drawLine(self.at(value, self.inner), self.at(value, self.inner + 0.03))
            if self.leading and value in self.named:
                self._lead(value)
            if value in self.named:
                self.word(value, word)
        if reading.low is not None and reading.high is not None:
            self._band(max(low, reading.low), min(high, reading.high))
        if reading.value is not None:
            self._mark(min(high, max(low, reading.value)), final=reading.low is not None)

    def body(self) -> None:
        """Paint the person with the arm where the value is, at rest without one."""
        self.person.paint(posed(self.pose(), self.reading.side))

    def _lead(self, value: float) -> None:
        """Draw a line from the scale to a name; at the mark of the value the name needs none."""
        reached = self.reading.value
        if reached is not None and abs(value - reached) < _NEAR_HAND_DEG:
            return
        start = self.at(value, self.inner + 0.03)
        end = self.at(value, self.inner + _WIDE + self.words_out)
        self.painter.drawLine(start, end)

    def highest(self) -> float:
        """Return how far above the hips the scale ends, body heights."""
        return 0.0

    def at(self, value: float, radius: float) -> QPointF:
        """Return a place beside the scale, at a distance from its centre in body heights."""
        raise NotImplementedError

    def pose(self) -> Pose:
        """Return how the person stands."""
        return self.shown.start

    def pen(self, colour: str, px: float, *, dashed: bool = False) -> QPen:
        pen = QPen(self.appearance.colour(colour), px)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        if dashed:
            pen.setDashPattern([3, 3])
        return pen

    def word(self, value: float, text: str) -> None:
        """Write a word beside the scale, away from the body."""
        metrics = QFontMetricsF(self.font)
        at = self.at(value, self.inner + _WIDE + self.words_out)
        gap = _WORDS_GAP * self.words_px
        left = at.x() + gap if self.to > 0 else at.x() - gap - metrics.horizontalAdvance(text)
        self.painter.setFont(QFont(self.font))
        self.painter.setPen(self.appearance.colour("quiet"))
        self.painter.drawText(QPointF(left, at.y() + metrics.capHeight() / 2), text)

    def _way(self, radius: float, low: float, high: float) -> QPainterPath:
        """Return the scale between two values at a distance from its centre."""
        start, end = scale_of(self.reading.movement)
        steps = max(2, round(abs(high - low) / (end - start) * 90))
        path = QPainterPath(self.at(low, radius))
        for step in range(1, steps + 1):
            path.lineTo(self.at(low + (high - low) * step / steps, radius))
        return path

    def _band(self, low: float, high: float) -> None:
        """Paint the interval."""
        ring = self._way(self.inner, low, high)
        ring.connectPath(self._way(self.inner + _WIDE, high, low))
        ring.closeSubpath()
        unit = MOVEMENTS[self.reading.movement].unit
        self.painter.fillPath(ring, self.appearance.colour("arm", band_opacity(low, high, unit)))
        self.painter.strokePath(ring, self.pen("arm", 1.5))

    def _mark(self, value: float, *, final: bool) -> None:
        """Paint the value: a bar across the band, or a hollow disc while it is a guide."""
        if final:
            start, end = self.at(value, self.inner - 0.018), self.at(value, self.inner + 0.088)
            for colour, px in (("raised", 7.0), ("ink", 4.0)):
                self.painter.setPen(self.pen(colour, px))
                self.painter.drawLine(start, end)
        else:
            self.painter.setPen(self.pen("hold", 2.5))
            self.painter.setBrush(self.appearance.colour("raised"))
            radius = self.person.px(0.022)
            self.painter.drawEllipse(self.at(value, self.inner + _WIDE / 2), radius, radius)


class _Arc(_OnBody):
    """An angle round the shoulder."""

    def come_closer(self) -> None:
        self.inner += _BEYOND_HAND
        self.above = max(self.above, self.highest())
        # A line leads to the height; its name is enough.
        brief = {90.0: tr("shoulder"), 120.0: tr("head")}
        self.words = tuple((value, brief.get(value, word)) for value, word in self.words)
        super().come_closer()

    def body(self) -> None:
        posed_body = posed(self.pose(), self.reading.side)
        self.person.paint(posed_body)
        self.centre = self.person.at(posed_body.arm[0])

    def highest(self) -> float:
        high = math.radians(scale_of(self.reading.movement)[1])
        return SHOULDER_UP + max(0.0, -math.cos(high)) * (self.inner + _WIDE + 2.5 * _WORDS)

    def between(self, lower: float, value: float) -> float:
        if not self.leading:
            return super().between(lower, value)
        radius = self.inner + _WIDE + self.words_out
        return abs(math.cos(math.radians(lower)) - math.cos(math.radians(value))) * radius

    def pose(self) -> Pose:
        value = 4.0 if self.reading.value is None else self.reading.value
        arm = self.shown.start.arm
        if isinstance(arm, ArmAngles):
            arm = replace(arm, raised=value, forearm_raised=value)
        return replace(self.shown.start, arm=arm)

    def at(self, value: float, radius: float) -> QPointF:
        angle = math.radians(value)
        across, down = self.to * math.sin(angle), math.cos(angle)
        if value == 0 and radius > self.inner + _WIDE:
            across += self.to * 0.16  # the word of the hip stands beside the leg
        return self.centre + QPointF(across, down) * self.person.px(radius)


class _Plan(_OnBody):
    """A rotation of the forearm, seen from above by somebody in front."""

    above, below, aside, inner, offset = 0.10, 0.38, 0.15, 0.235, 0.118

    def floor(self, body: Body, beside_px: float) -> None:
        """Paint nothing: no feet are seen from above."""

    def body(self) -> None:
        """Paint shoulders, head and the turned forearm."""
        person, value = self.person, self.reading.value or 0.0
        middle = person.at((0.0, 0.0, 0.0))
        self.centre = middle + QPointF(self.to * person.px(self.offset), 0.0)
        outline = self.pen("outline", person.px(0.012))
        self.painter.setPen(outline)
        self.painter.setBrush(self.appearance.colour("shirt"))
        self.painter.drawEllipse(middle, person.px(0.135), person.px(0.062))
        hand = self.at(value, 0.205)
        for start, end, px in ((0.0, 0.15, 0.052), (0.15, 0.19, 0.040)):
            pen = self.pen("arm", person.px(px))
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            self.painter.setPen(pen)
            self.painter.drawLine(self.at(value, start), self.at(value, end))
        self.painter.setPen(Qt.PenStyle.NoPen)
        self.painter.setBrush(self.appearance.colour("arm"))
        self.painter.drawEllipse(hand, person.px(0.020), person.px(0.020))
        self.painter.drawEllipse(self.centre, person.px(0.038), person.px(0.038))
        nose = middle + QPointF(0.0, person.px(0.062))
        self.painter.setPen(outline)
        self.painter.setBrush(self.appearance.colour("skin"))
        self.painter.drawEllipse(nose, person.px(0.012), person.px(0.014))
        self.painter.setBrush(self.appearance.colour("outline"))
        self.painter.drawEllipse(
            middle + QPointF(0.0, person.px(0.008)), person.px(0.05), person.px(0.058)
        )

    def _ends(self, widths: Mapping[float, float]) -> list[tuple[float, float]]:
        """Return where the scale and its names end: a name beneath the arm begins further in."""
        out = self.inner + _WIDE + self.words_out
        names = [
            (self.aside + self.offset + math.sin(math.radians(value)) * out, wide)
            for value, wide in widths.items()
        ]
        return [(self._beside(), 0.0), *names]

    def at(self, value: float, radius: float) -> QPointF:
        angle = math.radians(value)
        direction = QPointF(self.to * math.sin(angle), math.cos(angle))
        return self.centre + direction * self.person.px(radius)


class _Reach(_OnBody):
    """A thumb's height along the back, seen from behind."""

    inner = 0.20

    def length(self) -> float:
        start, end = scale_of(self.reading.movement)
        return (end - start) * _BACK_UP

    def pose(self) -> Pose:
        value = self.reading.value
        up = -0.02 if value is None else max(-0.03, min(0.26, value * _BACK_UP - 0.03))
        return replace(self.shown.start, arm=HandAt(-0.02, up, 0.10))

    def at(self, value: float, radius: float) -> QPointF:
        middle = self.person.at((0.0, value * _BACK_UP, 0.0))
        return middle + QPointF(self.to * self.person.px(radius), 0.0)
