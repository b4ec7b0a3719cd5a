"""The lower edge of what scrolls: a sign that there is more, and nothing cut in the middle."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QMargins, QObject, QPoint, QPointF, QRect, Qt, QTimer, Slot
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
    QAbstractButton,
    QAbstractScrollArea,
    QAbstractSlider,
    QComboBox,
    QLabel,
    QLineEdit,
    QScrollArea,
    QTextEdit,
    QVBoxLayout,
    QWidget,
)
from shiboken6 import isValid

from gui.style.measures import GAP_PX
from gui.widgets.painted_widget import PaintedWidget

#: Height of the fading strip, pixels: room for the arrow. [technical]
STRIP_PX = 2 * GAP_PX
#: Share of the strip, from its upper edge, in which the ground comes to cover everything.
#: [technical]
_COVERED_FROM = 0.5
#: Half the width of the arrow's head, its height, and its thickness, pixels. [technical]
_ARROW_PX, _ARROW_HIGH_PX, _LINE_PX = 14, 9, 3
#: Pixels of an area that may lie below its edge without a word: empty margin. [technical]
_MARGIN_PX = 8
#: Most pixels above the edge that are left empty so that nothing is cut. [technical]
_MOST_COVERED_PX = 20 * GAP_PX
#: Most lines that are left out so that no sentence ends in its middle, and in an item of a list.
#: [technical]
_MOST_LINES, _MOST_OF_ITEM = 1.75, 2.25
#: Where a line may end so that its sentence is whole.
_SENTENCE_ENDS = (".", "?", "!", ".)")
#: Height from which a drawing may be cut: a part of it is worth seeing. [technical]
_LEAST_PICTURE_PX = 8 * GAP_PX
#: Rounding of the height of lines, pixels. [technical]
_ROUNDED_PX = 1
#: Least margins above and below a page, and least space within it, pixels. [technical]
_LEAST_ROOM_PX = GAP_PX
#: What is seen of a widget of which nothing is to be seen.
_NOWHERE = QRect(-1, -1, 1, 1)
#: Lines of a text higher than this, in sizes of running text, are drawings, which may be cut.
#: [technical]
_HIGHEST_LINE = 2.5
#: Share of the strip beneath the last whole line of a text in which it fades. [technical]
_FADE = 0.02
#: What is seen whole or not at all, though it may have widgets inside.
_WHOLE = (QAbstractButton, QAbstractScrollArea, QComboBox, QAbstractSlider, QLineEdit)


class MoreBelow(QWidget):
    """A painted strip on a scroll area, seen while there is more below; no control, never read.

    Parameters
    ----------
    ground
        Colour into which what lies below fades, or None for the area's own.
    beside_px
        Room left free at both ends, where the area has round corners.
    covered_from
        Share of the strip from which on the ground covers everything.
    """

    def __init__(
        self,
        area: QAbstractScrollArea,
        ground: QColor | None = None,
        beside_px: int = 0,
        covered_from: float = _COVERED_FROM,
    ) -> None:
        super().__init__(area)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self._area, self._bar = area, area.verticalScrollBar()
        self._ground, self._beside_px, self._covered_from = ground, beside_px, covered_from
        self._clear_px = 0
        self._bar.valueChanged.connect(self.refresh)
        self._bar.rangeChanged.connect(self.refresh)
        area.viewport().installEventFilter(self)
        self.refresh()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.Resize, QEvent.Type.Move, QEvent.Type.Show):
            self.refresh()
        return super().eventFilter(watched, event)

    @Slot()
    def refresh(self) -> None:
        """Lie along the lower edge, or be gone where the end is seen."""
        seen = self._area.viewport().geometry()
        strip = seen.adjusted(self._beside_px, 0, -self._beside_px, 0)
        strip.setTop(self.top_in(seen))
        self.setGeometry(strip)
        self.setVisible(self._bar.maximum() - self._bar.value() > _MARGIN_PX)
        self.raise_()

    def top_in(self, seen: QRect) -> int:
        """Return where the strip begins on what is seen of the area, pixels."""
        return seen.bottom() + 1 - STRIP_PX

    def leave_clear(self, clear_px: int) -> None:
        """Cover nothing in the upper part of the strip, so many pixels high."""
        if clear_px != self._clear_px:
            self._clear_px = clear_px
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        ground = self._ground or self._area.palette().color(QPalette.ColorRole.Window)
        clear = QColor(ground)
        clear.setAlphaF(0.0)
        fading = QLinearGradient(0, self._clear_px, 0, self.height())
        fading.setColorAt(0, clear)
        fading.setColorAt(self._covered_from, ground)
        fading.setColorAt(1, ground)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect().adjusted(0, self._clear_px, 0, 0), fading)
        pen = QPen(self._area.palette().color(QPalette.ColorRole.WindowText), _LINE_PX)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        tip = QPointF(self.width() / 2, self.height() - _LINE_PX - 1)
        for side in (-_ARROW_PX, _ARROW_PX):
            painter.drawLine(tip, tip + QPointF(side, -_ARROW_HIGH_PX))
        painter.end()


class WholeLines(MoreBelow):
    """Hides a line of a text that the lower edge would cut, whatever is scrolled to."""

    def __init__(self, view: QTextEdit, ground: QColor | None = None, beside_px: int = 0) -> None:
        self._view = view
        super().__init__(view, ground, beside_px, covered_from=_FADE)

    def top_in(self, seen: QRect) -> int:
        scrolled = self._view.verticalScrollBar().value()
        usual = super().top_in(seen)
        end = self._end_of_line(usual - seen.top() + scrolled)
        return max(seen.top(), min(usual, round(end) - scrolled + seen.top()))

    def _end_of_line(self, y: float) -> float:
        """Return the lowest place down to `y` at which no line of text is cut, in the document."""
        while True:
            inside = y - _ROUNDED_PX, y + _ROUNDED_PX
            cut = [top for top, end in self._lines() if top < inside[0] and inside[1] < end]
            if not cut:
                return y
            y = min(cut)

    def _lines(self) -> Iterator[tuple[float, float]]:
        """Yield top and bottom of every line of text, in the document."""
        document = self._view.document()
        highest = _HIGHEST_LINE * document.defaultFont().pixelSize()
        block = document.begin()
        while block.isValid():
            layout = block.layout()
            above = document.documentLayout().blockBoundingRect(block).top()
            above -= layout.boundingRect().top()
            heads = block.blockFormat().headingLevel() > 0
            for number in range(layout.lineCount()):
                line = layout.lineAt(number)
                if line.height() <= highest:
                    top = above + line.y()
                    # A heading is seen with a line of what it heads.
                    yield top, top + line.height() * (2 if heads else 1)
            block = block.next()


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


@dataclass(frozen=True, slots=True)
class _Part:
    """A text or a control of a page, and where it lies on it, pixels; a text has lines."""

    widget: QWidget
    top: int
    bottom: int
    first_line: float = 0.0
    line_px: float = 0.0

    @property
    def hair(self) -> bool:
        """Whether it only parts what is above it from what is below."""
        return str(self.widget.property("role")) == "hair"

    def end_above(self, place: float) -> float:
        """Return the lowest end of whole lines down to a place, or the top of what has none.

        The sentence that would go on below the place is left out where it has just begun.
        """
        if not self.top < place < self.bottom:
            return place
        lines = int((place - self.first_line + _ROUNDED_PX) // self.line_px) if self.line_px else 0
        end = self._end_of(lines)
        if lines > 0 and place - end >= _ROUNDED_PX and isinstance(self.widget, QLabel):
            whole = self._end_of(_lines_of_sentences(self.widget, lines))
            above = self.widget.parentWidget()
            item = above is not None and above.property("item")
            most = (_MOST_OF_ITEM if item else _MOST_LINES) * self.line_px
            end = whole if place - whole <= most else end
        return end

    def seen_to(self, end: float) -> float:
        """Return the lowest place of it that is seen where the page is seen to an end."""
        return min(self.bottom, self.end_above(end))

    def _end_of(self, lines: int) -> float:
        return self.first_line + lines * self.line_px if lines > 0 else self.top


#: A card, and the parts that stand on it.
_Card = tuple[QWidget, list[_Part]]


class Fold(QObject):
    """Lets no line and no control of a page be seen in part at the lower edge of its area.

    What the edge would cut is masked, so that the ground around it is seen instead. Things side by
    side end at one height where that leaves no great gap. Where more than a line would be empty,
    the beginning of a card is seen, and what has room beside the sign.
    """

    def __init__(self, area: QScrollArea, page: QWidget, sign: MoreBelow) -> None:
        super().__init__(area)
        self._area, self._page, self._sign = area, page, sign
        self._masked: list[QWidget] = []
        self._timer = QTimer(self, singleShot=True, interval=0)
        self._timer.timeout.connect(self._place)
        bar = area.verticalScrollBar()
        bar.valueChanged.connect(self._place)
        bar.rangeChanged.connect(self._place_soon)
        for watched in (area.viewport(), page):
            watched.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        kinds = QEvent.Type
        if event.type() in (kinds.Resize, kinds.LayoutRequest, kinds.Show):
            self._timer.start()
        return super().eventFilter(watched, event)

    @Slot()
    def _place_soon(self) -> None:
        self._timer.start()

    @Slot()
    def _place(self) -> None:
        for widget in filter(isValid, self._masked):
            widget.clearMask()
        self._masked.clear()
        bar = self._area.verticalScrollBar()
        if bar.maximum() - bar.value() <= _MARGIN_PX:
            return
        low = bar.value() + self._area.viewport().height()
        edge = low - STRIP_PX
        parts, cards = self._parts(edge - _MOST_COVERED_PX, low)
        end = _end_of_all(parts, edge)
        empty = edge - _seen_to(parts, end) > max((part.line_px for part in parts), default=0)
        if empty:
            end = self._end_beside_sign(parts, end, low)
        self._sign.leave_clear(max(0, round(end) - edge))
        for part in parts:
            if part.bottom > end:
                self._mask(part.widget, part.end_above(end) - part.top)
        seen = _seen_to([part for part in parts if not part.hair], end)
        for part in parts:
            if part.hair and seen < part.top < end:
                self._mask(part.widget, 0)
        for card, inside in cards:
            if inside and all(part.top >= end for part in inside) and not empty:
                self._mask(card, 0)

    def _end_beside_sign(self, parts: Sequence[_Part], end: float, low: int) -> float:
        """Return the lowest end to which nothing lies where the sign is, or the present one."""
        further = _end_of_all(parts, low - _MARGIN_PX // 2)
        middle, aside = self._page.width() / 2, _ARROW_PX + GAP_PX
        for part in parts:
            left = part.widget.mapTo(self._page, QPoint(0, 0)).x()
            right = left + _width_seen(part.widget)
            beside = part.hair or left >= middle + aside or right <= middle - aside
            if not beside and part.top < further and part.seen_to(further) > low - STRIP_PX:
                return end
        return max(end, further)

    def _mask(self, widget: QWidget, high: float) -> None:
        """Show a widget down to a height; a mask of nothing would be no mask."""
        seen = QRect(0, 0, widget.width(), int(high)) if high > 0 else _NOWHERE
        widget.setMask(QRegion(seen))
        self._masked.append(widget)

    def _parts(self, high: float, low: int) -> tuple[list[_Part], list[_Card]]:
        """Return what lies between two heights, and the cards that begin there with theirs."""
        parts: list[_Part] = []
        cards: list[_Card] = []
        inside = [child for child in self._page.children() if isinstance(child, QWidget)]
        while inside:
            widget = inside.pop()
            top = widget.mapTo(self._page, QPoint(0, 0)).y()
            if not widget.isVisible() or top >= low or top + widget.height() <= high:
                continue
            children = [child for child in widget.children() if isinstance(child, QWidget)]
            if not children or isinstance(widget, _WHOLE):
                if (top > high and not _is_picture(widget)) or isinstance(widget, QLabel):
                    parts.append(_part(widget, top))
                continue
            inside += children
            if top > high and str(widget.property("role")).endswith("card"):
                cards.append((widget, []))
        for card, of_card in cards:
            of_card += [part for part in parts if card.isAncestorOf(part.widget)]
        return parts, cards


def _is_picture(widget: QWidget) -> bool:
    """Whether something painted is so high that a part of it is worth seeing."""
    return isinstance(widget, PaintedWidget) and widget.height() > _LEAST_PICTURE_PX


def _part(widget: QWidget, top: int) -> _Part:
    bottom = top + widget.height()
    framed = widget.property("role") == "key"
    if not isinstance(widget, QLabel) or not widget.text() or framed:
        return _Part(widget, top, bottom)
    line_px = widget.fontMetrics().lineSpacing()
    room = widget.contentsRect()
    needed = widget.heightForWidth(widget.width()) if widget.wordWrap() else line_px
    spare = max(0, widget.height() - needed)
    align = widget.alignment()
    above = 0.0
    if align & Qt.AlignmentFlag.AlignVCenter:
        above = spare / 2
    elif align & Qt.AlignmentFlag.AlignBottom:
        above = spare
    return _Part(widget, top, bottom, top + room.top() + above, line_px)


def _end_of_all(parts: Sequence[_Part], edge: float) -> float:
    """Return the lowest place down to the edge that cuts no part, or the edge if it is far."""
    end, before = edge, edge + 1
    while end < before:
        before = end
        end = min((part.end_above(end) for part in parts), default=end)
    return end if edge - end <= _MOST_COVERED_PX else edge


def _seen_to(parts: Sequence[_Part], end: float) -> float:
    """Return the lowest place that is seen of any part, where the page is seen to an end."""
    return max((part.seen_to(end) for part in parts if part.top < end), default=end)


def _width_seen(widget: QWidget) -> float:
    """Return how wide a widget is, or the one line of text on it, pixels."""
    to_the_left = Qt.AlignmentFlag.AlignLeft
    if not isinstance(widget, QLabel) or not (widget.text() and widget.alignment() & to_the_left):
        return widget.width()
    words = widget.fontMetrics().horizontalAdvance(widget.text())
    return min(widget.width(), words)


def _lines_of_sentences(shown: QLabel, lines: int) -> int:
    """Return how many of the first lines of a text hold whole sentences; all of its lines do."""
    document = QTextDocument()
    document.setDocumentMargin(0)
    document.setDefaultFont(shown.font())
    if shown.textFormat() is Qt.TextFormat.RichText:
        document.setHtml(shown.text())
    else:
        document.setPlainText(shown.text())
    document.setTextWidth(shown.contentsRect().width())
    words = _lines_of(document)
    while 0 < lines < len(words) and not words[lines - 1].rstrip().endswith(_SENTENCE_ENDS):
        lines -= 1
    return lines


def _lines_of(document: QTextDocument) -> list[str]:
    """Return what stands on each line of a text."""
    document.size()  # lays it out
    lines = []
    block = document.begin()
    while block.isValid():
        layout = block.layout()
        for number in range(layout.lineCount()):
            line = layout.lineAt(number)
            lines.append(block.text()[line.textStart() : line.textStart() + line.textLength()])
        block = block.next()
    return lines
