"""The lower edge of what scrolls: what goes on below it fades out, beneath a sign that it does.

It begins to fade in a gap between what is shown, if one is near; what comes next is seen faintly,
and a card goes on beneath its last line.
"""

from collections.abc import Iterator

from PySide6.QtCore import QEvent, QMargins, QObject, QPoint, QPointF, QRect, Qt, Slot
from PySide6.QtGui import (
    QColor,
    QLinearGradient,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
    QRegion,
    QTextDocument,
)
from PySide6.QtWidgets import (
    QAbstractScrollArea,
    QApplication,
    QFrame,
    QLabel,
    QScrollArea,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from gui.style.measures import GAP_PX

#: How far above the edge a gap is looked for, pixels. [technical]
REACH_PX = 16 * GAP_PX
#: Height above the edge that nothing is read in, and the part of it with the sign itself, pixels.
#: [technical]
SOLID_PX, _SIGN_PX = 20, 10
#: Height in which contents without a gap fade, and the least and greatest of a fade in a gap,
#: pixels. [technical]
_FADE_PX, _LEAST_FADE_PX, _MOST_FADE_PX = 28, 16, 20
#: How much of a fade between two things that touch lies on the second, pixels. [technical]
_BELOW_NARROW_PX = 5
#: Height above the edge in which what has no gap fades out, pixels. [technical]
STRIP_PX = SOLID_PX + _FADE_PX
#: Most of the height above the strip for the sake of a gap, in which what comes next is faint,
#: pixels. [technical]
_MOST_FAINT_PX = 9 * GAP_PX
#: The same where an item of two lines in the largest text shall fade as a whole, pixels.
#: [technical]
_WHOLE_ITEM_PX = 13 * GAP_PX
#: Least height in which what comes next is seen faintly, pixels, or if that is less in heights of
#: a line: less would show the edge of it. [technical]
_LEAST_FAINT_PX, _LEAST_FAINT_LINE = 3 * GAP_PX, 0.6
#: How much the ground covers of what comes next, where that begins. [technical]
_FAINT = 0.4
#: Edge of a card that stays, pixels: as wide as the widest. [technical]
_RIM_PX = 3
#: What is lower is a line across, and lines of words stand apart by it above and below, pixels.
#: [technical]
_HAIR_PX, _LEADING_PX = 3, 2
#: Height above the edge where what must be read should not lie, pixels. [technical]
FADED_PX = 3 * GAP_PX
#: How much of it the ground covers, at shares of the fade from its upper edge. [technical]
_COVERED = ((0.0, 0.0), (0.35, 0.15), (0.7, 0.65), (1.0, 1.0))
#: Cards on the ground of fields. [technical]
_RAISED_ROLES = ("card", "notice-card", "lacking-card", "alarm-card")
#: Half the width of the arrow's head, its height, and its thickness, pixels. [technical]
_ARROW_PX, _ARROW_HIGH_PX, _LINE_PX = 13, 8, 3
#: Pixels of an area that may lie below its edge without a word: empty margin. [technical]
_MARGIN_PX = 8
#: Least margins above and below a page, and least space within it, pixels. [technical]
_LEAST_ROOM_PX = GAP_PX


#: Upper and lower edge of something shown, pixels.
Span = tuple[int, int]


class MoreBelow(QWidget):
    """A painted strip on a scroll area, seen while there is more below; no control, never read.

    Nothing is cut at the edge: it fades into the ground around, so that it is seen to go on.

    Parameters
    ----------
    ground
        Colour into which what lies below fades, or the area's own of a role.
    beside_px
        Room left free at both ends, where the area has round corners.
    """

    def __init__(
        self,
        area: QAbstractScrollArea,
        ground: QColor | QPalette.ColorRole = QPalette.ColorRole.Window,
        beside_px: int = 0,
    ) -> None:
        super().__init__(area)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._area, self._bar = area, area.verticalScrollBar()
        self._ground, self._beside = ground, (beside_px, beside_px)
        self._through, self._one_line = False, False
        self._most_faint = _MOST_FAINT_PX
        self._bar.valueChanged.connect(self.refresh)
        self._bar.rangeChanged.connect(self.refresh)
        area.viewport().installEventFilter(self)
        self.refresh()

    def stand_on(self, ground: QPalette.ColorRole, right_px: int) -> None:
        """Fade into what an area that shows through stands on, with room free at its right end."""
        self._ground, self._beside, self._through = ground, (0, right_px), True
        self.refresh()

    def keep_items_whole(self) -> None:
        """Fade nothing in the middle of an item of a list, if that has no more than two lines.

        Of the next one its first line alone is seen, faintly.
        """
        self._most_faint, self._one_line = _WHOLE_ITEM_PX, True
        self.refresh()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.Resize, QEvent.Type.Move, QEvent.Type.Show):
            self.refresh()
        return super().eventFilter(watched, event)

    @Slot()
    def refresh(self) -> None:
        """Lie along the lower edge, or be gone where the end is seen."""
        strip = self._area.viewport().geometry()
        left, right = self._beside
        strip.adjust(left, strip.height() - REACH_PX, -right, 0)
        self.setGeometry(strip)
        self.setVisible(self._bar.maximum() - self._bar.value() > _MARGIN_PX)
        self.raise_()

    def paintEvent(self, event: QPaintEvent) -> None:
        ground = self._ground
        if isinstance(ground, QPalette.ColorRole):
            # An area that shows through has no colour of its own.
            palette = QApplication.palette() if self._through else self._area.palette()
            ground = palette.color(ground)
        tip = QPointF(self.width() / 2, self.height() - _LINE_PX - 2)
        above = self._area.viewport().height() - self.height()
        first, last = (place - above for place in self.fade)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        beside, raised = QRegion(self.rect()), QApplication.palette().base().color()
        line = self._area.fontMetrics().lineSpacing()
        least = min(_LEAST_FAINT_PX, round(_LEAST_FAINT_LINE * line))
        faint = (least, line if self._one_line else REACH_PX)
        for card in self._cards(first, last):
            beside -= card
            inside = card.adjusted(_RIM_PX, 0, -_RIM_PX, 0)
            _cover(painter, inside, (first, last), raised, faint)
            # The card itself goes on, fainter and fainter, down to the edge.
            _cover(painter, card, (first, card.bottom()), ground, faint)
        painter.setClipRegion(beside)
        _cover(painter, self.rect(), (first, last), ground, faint)
        painter.setClipping(False)
        pen = QPen(self._area.palette().color(QPalette.ColorRole.WindowText), _LINE_PX)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        for side in (-_ARROW_PX, _ARROW_PX):
            painter.drawLine(tip, tip + QPointF(side, -_ARROW_HIGH_PX))
        painter.end()

    @property
    def fade(self) -> Span:
        """Where what goes on below begins to fade and where it is gone, pixels of the viewport."""
        viewport = self._area.viewport()
        page = self._area.widget() if isinstance(self._area, QScrollArea) else None
        if page is not None:
            return fade_span(page, viewport, self._most_faint)
        if isinstance(self._area, QTextBrowser):
            above = self._bar.value() + viewport.height() - REACH_PX
            lines = text_spans(self._area.document(), (above, above + REACH_PX))
            spans = [(top - self._bar.value(), low - self._bar.value()) for top, low in lines]
        else:
            spans = getattr(self._area, "fold_spans", list)()
        return faded(spans, viewport.height())

    def _cards(self, first: int, last: int) -> list[QRect]:
        """Return the parts of this strip in which a card goes on below the fade."""
        page = self._area.widget() if isinstance(self._area, QScrollArea) else None
        above = self._area.viewport().height() - self.height()
        cards = [] if page is None else cards_over(page, self._area.viewport(), above + last)
        left = self.mapFrom(self._area, self._area.viewport().pos()).x()
        return [QRect(left + at.x(), first, at.width(), self.height() - first) for at in cards]


class Padding:
    """Takes empty room out of a page that would scroll for the sake of that room alone."""

    def __init__(self, page: QWidget) -> None:
        self._page, self._layout = page, page.layout()
        margins = self._layout.contentsMargins() if self._layout is not None else QMargins()
        self._above, self._below = margins.top(), margins.bottom()
        self._between = self._layout.spacing() if self._layout is not None else 0
        #: What is taken out now: of both margins, and of each space between two contents.
        self._taken, self._taken_between = 0, 0

    def fit(self, room: int) -> None:
        """Take out what the page is higher than the room, if so little is missing, else nothing."""
        layout, page = self._layout, self._page
        if not isinstance(layout, QVBoxLayout):
            return
        contents = (layout.itemAt(place) for place in range(layout.count()))
        spaces = max(0, sum(item is not None and not item.isEmpty() for item in contents) - 1)
        needed = layout.totalHeightForWidth(page.width()) if layout.hasHeightForWidth() else 0
        over = needed + self._taken + spaces * self._taken_between - room
        margins = max(0, self._above + self._below - 2 * _LEAST_ROOM_PX)
        between = max(0, self._between - _LEAST_ROOM_PX)
        taken, per_space = 0, 0
        if 0 < over <= margins + spaces * between:
            taken = min(over, margins)
            per_space = -(-(over - taken) // spaces) if over > taken else 0
        if (taken, per_space) == (self._taken, self._taken_between):
            return
        self._taken, self._taken_between = taken, per_space
        beside = layout.contentsMargins()
        below = min(taken, max(0, self._below - _LEAST_ROOM_PX))
        beside.setTop(self._above - (taken - below))
        beside.setBottom(self._below - below)
        layout.setContentsMargins(beside)
        layout.setSpacing(self._between - per_space)


def fade_span(page: QWidget, viewport: QWidget, most_faint: int = _MOST_FAINT_PX) -> Span:
    """Return where a page begins to fade and where it is gone, pixels of the viewport."""
    edge = viewport.height()
    spans = sorted(_spans(page, viewport, edge - REACH_PX, edge))
    return faded(spans, edge, most_faint)


def cards_over(page: QWidget, viewport: QWidget, place: int) -> list[QRect]:
    """Return the cards of a page that reach from above a height of the viewport to its edge."""
    cards: list[QRect] = []
    for frame in page.findChildren(QFrame):
        top = frame.mapTo(viewport, QPoint(0, 0))
        low = top.y() + frame.height()
        if not frame.isVisible() or top.y() >= place or low < viewport.height():
            continue
        if str(frame.property("role")) in _RAISED_ROLES:
            cards.append(QRect(top, frame.size()))
    return cards


def text_spans(document: QTextDocument, within: Span) -> list[Span]:
    """Return the edges of the lines of a text that lie between two heights of it, pixels."""
    lines: list[Span] = []
    block = document.begin()
    while block.isValid():
        place = document.documentLayout().blockBoundingRect(block)
        if place.bottom() > within[0] and place.top() < within[1]:
            for number in range(block.layout().lineCount()):
                line = block.layout().lineAt(number).rect().translated(0, place.top())
                if line.bottom() > within[0] and line.top() < within[1]:
                    lines.append((round(line.top()) + _LEADING_PX, round(line.bottom())))
        block = block.next()
    return sorted(lines)


def _cover(painter: QPainter, place: QRect, fade: Span, ground: QColor, faint: Span) -> None:
    """Paint a ground over a place, more and more of it within the fade, beneath that all of it.

    Where the fade ends so many pixels above the lower end of the place, what comes next is seen
    faintly: the least of it that is, and the most.
    """
    first, last = fade
    end, covered = place.bottom() + 1 - SOLID_PX, list(_COVERED)
    if end - last >= faint[0]:
        end = min(end, last + faint[1])
        covered = [(0.0, 0.0), ((last - first) / (end - first), _FAINT), (1.0, 1.0)]
        last = end
    fading = QLinearGradient(0, first, 0, last)
    for share, much in covered:
        shade = QColor(ground)
        shade.setAlphaF(much)
        fading.setColorAt(share, shade)
    painter.fillRect(QRect(place.x(), first, place.width(), last - first), fading)
    painter.fillRect(QRect(place.x(), last, place.width(), place.bottom() + 1 - last), ground)


def faded(spans: list[Span], edge: int, most_faint: int = _MOST_FAINT_PX) -> Span:
    """Return where contents fade of which these, sorted by their upper edges, lie near the edge.

    Parameters
    ----------
    most_faint
        How far above the strip a gap may be.
    """
    usual = (edge - STRIP_PX, edge - SOLID_PX)
    # Between things if possible, else between lines of one.
    for least in (GAP_PX, 0):
        fade = _fade_among(spans, (edge, most_faint), least)
        if fade is not None:
            return fade
    return usual


def _fade_among(spans: list[Span], room: tuple[int, int], least: int) -> Span | None:
    """Return the fade in the lowest gap of at least so many pixels, or None where none is near."""
    edge, _ = room
    above: int | None = None
    for top, bottom in _bands(spans, least):
        if bottom > edge - SOLID_PX:
            return _in_gap(above, top, room)
        above = bottom
    return None if above is None else _in_gap(above, edge, room)


def _in_gap(above: int | None, below: int, room: tuple[int, int]) -> Span | None:
    """Return the fade between the end of one thing and the beginning of the next, if near."""
    edge, most_faint = room
    if below < edge - SOLID_PX - most_faint:
        return None
    if above is not None and below - above < GAP_PX:
        # Too narrow for a fade: it lies on either side, the greater part above.
        last = (above + below) // 2 + _BELOW_NARROW_PX
        return last - _LEAST_FADE_PX, last
    wide = _FADE_PX if below >= edge - SOLID_PX else _MOST_FADE_PX
    last = min(below, edge - SOLID_PX)
    first = last - wide if above is None else max(above, last - wide)
    return first, min(max(last, first + GAP_PX), edge - _SIGN_PX)


def _bands(spans: list[Span], least: int) -> Iterator[Span]:
    """Give what is less than that apart as one, from above."""
    band: Span | None = None
    for top, bottom in spans:
        if band is not None and top < band[1] + least:
            band = band[0], max(band[1], bottom)
            continue
        if band is not None:
            yield band
        band = top, bottom
    if band is not None:
        yield band


def _spans(shown: QWidget, viewport: QWidget, first: int, last: int) -> Iterator[Span]:
    """Give the edges of all that is shown between two heights of the viewport."""
    for child in shown.children():
        if not isinstance(child, QWidget) or not child.isVisible() or child.isWindow():
            continue
        top = child.mapTo(viewport, QPoint(0, 0)).y()
        bottom = top + child.height()
        if bottom <= first or top >= last or child.height() <= _HAIR_PX:
            continue
        framed = isinstance(child, QFrame) and "card" in str(child.property("role"))
        if framed and top > first:
            # A card begins with its edge, and its padding is no gap.
            yield top, bottom
            continue
        if framed and bottom < last:
            yield bottom - _HAIR_PX, bottom
        lines = getattr(child, "fold_spans", None)
        if lines is not None:
            yield from ((top + low, top + high) for low, high in lines())
        elif isinstance(child, QLabel):
            yield from _lines(child, top)
        elif any(isinstance(inner, QWidget) and inner.isVisible() for inner in child.children()):
            yield from _spans(child, viewport, first, last)
        elif type(child) not in (QWidget, QFrame):
            yield top, bottom


def _lines(words: QLabel, top: int) -> Iterator[Span]:
    """Give the edges of the lines of a text."""
    room = words.contentsRect()
    count = max(1, round(room.height() / words.fontMetrics().lineSpacing())) if words.text() else 0
    for number in range(count):
        begin = top + room.top() + room.height() * number // count
        end = top + room.top() + room.height() * (number + 1) // count
        yield begin + _LEADING_PX, end - _LEADING_PX
