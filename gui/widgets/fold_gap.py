"""Where a page may fade out at its lower edge: in a gap between what it shows, if one is near."""

from collections.abc import Iterator

from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QFrame, QLabel, QWidget

from gui.style.measures import GAP_PX

#: How far above the edge a gap is looked for, pixels. [technical]
REACH_PX = 9 * GAP_PX
#: Height above the edge that nothing is read in, and the part of it with the sign itself, pixels.
#: [technical]
SOLID_PX, _SIGN_PX = 20, 10
#: Height in which contents without a gap fade, and the least and greatest of a fade in a gap,
#: pixels. [technical]
_FADE_PX, _LEAST_FADE_PX, _MOST_FADE_PX = 28, 16, 20
#: Height above the edge in which what has no gap fades out, pixels. [technical]
STRIP_PX = SOLID_PX + _FADE_PX
#: What is lower is a line across, and lines of words stand apart by it above and below, pixels.
#: [technical]
_HAIR_PX, _LEADING_PX = 3, 2

#: Upper and lower edge of something shown, pixels.
Span = tuple[int, int]


def fade_span(page: QWidget, viewport: QWidget) -> Span:
    """Return where a page begins to fade and where it is gone, pixels of the viewport."""
    edge = viewport.height()
    spans = sorted(_spans(page, viewport, edge - REACH_PX, edge))
    return faded(spans, edge)


def faded(spans: list[Span], edge: int) -> Span:
    """Return where contents fade of which these, sorted by their upper edges, lie near the edge."""
    usual = (edge - STRIP_PX, edge - SOLID_PX)
    # Between things if possible, else between lines of one.
    return _fade_among(spans, edge, GAP_PX) or _fade_among(spans, edge, 0) or usual


def _fade_among(spans: list[Span], edge: int, least: int) -> Span | None:
    """Return the fade in the lowest gap of at least so many pixels, or None where none is near."""
    above: int | None = None
    for top, bottom in _bands(spans, least):
        if bottom > edge - SOLID_PX:
            return _in_gap(above, top, edge)
        above = bottom
    return None if above is None else _in_gap(above, edge, edge)


def _in_gap(above: int | None, below: int, edge: int) -> Span | None:
    """Return the fade between the end of one thing and the beginning of the next, if near."""
    if below < edge - REACH_PX:
        return None
    if above is not None and below - above < GAP_PX:
        # Too narrow for a fade: half of it lies on either side.
        first = (above + below - _LEAST_FADE_PX) // 2
        return first, first + _LEAST_FADE_PX
    wide = _FADE_PX if below >= edge - SOLID_PX else _MOST_FADE_PX
    last = min(below, edge - SOLID_PX)
    first = last - wide if above is None else max(above, last - wide)
    return first, min(max(last, first + _LEAST_FADE_PX), edge - _SIGN_PX)


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
