"""Sentence of a page, in the largest type that fits."""

from collections.abc import Sequence
from math import ceil

from PySide6.QtCore import QEvent, QObject, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPainterPath, QResizeEvent, QShowEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import BODY_PX, DISPLAY, DISPLAY_GROWTH, GAP_PX
from gui.style.style_sheet import grown
from gui.widgets.announcement import announce
from gui.widgets.painted_widget import PaintedWidget

#: Never smaller than this share of the window's height, to be read from three metres. [technical]
LEAST_SHARE = 1 / 15
#: Nor larger than this, so that short sentences do not shout. [technical]
MOST_SHARE = 1 / 11
#: How closely the lines of a sentence are made alike in length, pixels. [technical]
_BALANCED_PX = 4.0
#: Thickness of the bar before a sentence that is marked, and the room it takes, pixels. [technical]
_BAR_PX, _BAR_ROOM_PX = GAP_PX, 3 * GAP_PX


class FittedSentence(PaintedWidget):
    """Wraps and sizes a sentence so that it fills its space; at least LEAST_SHARE high.

    Parameters
    ----------
    lines
        Lines of the least type that always have room; part of one lets a single line be larger.
    quiet, plain
        Set in regular type and in the least size; a quiet one steps back.
    heading
        In the size of a page's heading, or a fifteenth of the window high where it fits in its
        lines: for pages that are read from the chair too.
    upright
        Whether it stands in the middle of its space, at its upper or at its lower edge.
    """

    def __init__(
        self,
        appearance: Appearance,
        *,
        lines: float = 2,
        quiet: bool = False,
        plain: bool = False,
        heading: bool = False,
        upright: Qt.AlignmentFlag = Qt.AlignmentFlag.AlignVCenter,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(appearance, parent)
        self._lines, self._regular, self._heading = lines, quiet or plain, heading
        self._faint = quiet
        self._upright = upright
        self._expected: tuple[str, ...] = ()
        #: Whether a bar at its beginning says that something is amiss.
        self.marked = False
        self._strong = False
        #: Words at the end that are set in regular type, in the same size.
        self._lighter = ""
        if self._regular:
            self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._text = ""
        self.setAccessibleName("")

    @property
    def text(self) -> str:
        return self._text

    def set_lines(self, lines: float) -> None:
        """Have room for another number of lines."""
        if lines != self._lines:
            self._lines = lines
            self.updateGeometry()

    def expect(self, texts: Sequence[str]) -> None:
        """Have room for any of these from now on, so that nothing moves when one is said."""
        if tuple(texts) != self._expected:
            self._expected = tuple(texts)
            self.updateGeometry()

    def has_room_for(self, lines: Sequence[str], *, times: float = 1.0) -> bool:
        """Return whether none of these lines would break, in bold type of times the least size."""
        metrics = QFontMetricsF(self.appearance.font(times * self._least_px(), bold=True))
        return all(metrics.horizontalAdvance(line) <= self.width() for line in lines)

    def say(
        self, text: str, *, marked: bool = False, strong: bool = False, lighter: str = ""
    ) -> None:
        """Show another sentence; a marked one has a bar before it, and is strong in any case.

        What is lighter at its end is set in regular type of the same size, where it has a line's
        end or a line to itself.
        """
        strong = strong or marked
        self._lighter = lighter if lighter and text.endswith(lighter) else ""
        if (text, marked, strong) != (self._text, self.marked, self._strong):
            self._text, self.marked, self._strong = text, marked, strong
            self.setAccessibleName(text)
            announce(self, text)
            self.updateGeometry()
            self.update()

    def sizeHint(self) -> QSize:
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        """Return some lines of the least type, or as many as the sentences need.

        A heading has room for its largest type.
        """
        font = self._font(self._least_px())
        roomy = self._font(self._most_px()) if self._heading else font
        lines = self._lines * QFontMetricsF(roomy).lineSpacing()
        texts = (self._text, *self._expected)
        needed = max(self._needed(font, text).height() for text in texts)
        return QSize(200, ceil(max(lines, needed)))

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.window().installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Need another height in a window of another height."""
        if event.type() is QEvent.Type.Resize and watched is self.window():
            self.updateGeometry()
        return super().eventFilter(watched, event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.updateGeometry()

    def fitted_font(self) -> QFont:
        """Return the largest font between the two shares in which the sentence fits."""
        least = self._least_px()
        for px in range(self._most_px(), least, -1):
            font = self._font(px)
            if self._fits(font):
                return font
        return self._font(least)

    def paint(self, painter: QPainter) -> None:
        painter.setFont(self.fitted_font())
        steps_back = self._faint and not self._strong
        painter.setPen(self.appearance.colour("quiet" if steps_back else "ink"))
        place = QRectF(self.rect())
        if self.marked:
            self._paint_bar(painter, place)
            place.setLeft(_BAR_ROOM_PX)
        if not self._paint_lighter(painter, place):
            place.setWidth(self._balanced_width(painter.font(), place.width()))
            painter.drawText(place, self._flags(), self._text)

    def _paint_lighter(self, painter: QPainter, place: QRectF) -> bool:
        """Paint a sentence with its end in regular type; return whether it could be."""
        strong = self._text.removesuffix(self._lighter)
        metrics = QFontMetricsF(painter.font())
        lines = strong.count("\n") + 1
        whole = metrics.boundingRect(place, self._flags(), self._text)
        if not self._lighter or whole.height() > lines * metrics.lineSpacing() + 1:
            return False
        first = QPointF(place.left(), whole.top() + metrics.ascent())
        painter.drawText(first, strong.rstrip("\n"))
        aside = QPointF(metrics.horizontalAdvance(strong), 0)
        painter.setFont(self.appearance.font(painter.font().pixelSize()))
        beneath = QPointF(0, metrics.lineSpacing())
        painter.drawText(first + (beneath if lines > 1 else aside), self._lighter)
        return True

    def _balanced_width(self, font: QFont, most: float) -> float:
        """Return the least width in which the sentence has no more lines than in the most."""
        metrics = QFontMetricsF(font)

        def needed(width: float) -> QRectF:
            return metrics.boundingRect(QRectF(0, 0, width, 100_000), self._flags(), self._text)

        allowed = needed(most)
        if allowed.height() < 1.5 * metrics.lineSpacing():
            return most
        low, high = most / 2, most
        while high - low > _BALANCED_PX:
            middle = (low + high) / 2
            tried = needed(middle)
            fits = tried.height() <= allowed.height() and tried.width() <= middle
            low, high = (low, middle) if fits else (middle, high)
        return high

    def _paint_bar(self, painter: QPainter, place: QRectF) -> None:
        text = QRectF(place.adjusted(_BAR_ROOM_PX, 0, 0, 0))
        lines = QFontMetricsF(painter.font()).boundingRect(text, self._flags(), self._text)
        bar = QRectF(0, lines.top(), _BAR_PX, lines.height())
        rounded = QPainterPath()
        rounded.addRoundedRect(bar, _BAR_PX / 2, _BAR_PX / 2)
        painter.fillPath(rounded, self.appearance.colour("hold"))

    def _font(self, px: int) -> QFont:
        return self.appearance.font(px, bold=self._strong or not self._regular)

    def _fits(self, font: QFont) -> bool:
        needed = self._needed(font, self._text)
        return needed.height() <= self.height() and needed.width() <= self.width()

    def _needed(self, font: QFont, text: str) -> QRectF:
        room = self.width() - (_BAR_ROOM_PX if self.marked else 0)
        return QFontMetricsF(font).boundingRect(QRectF(0, 0, room, 100_000), self._flags(), text)

    def _least_px(self) -> int:
        if self._heading:
            return round(grown(BODY_PX * DISPLAY, DISPLAY_GROWTH, self.appearance.percent))
        return ceil(self.window().height() * LEAST_SHARE)

    def _most_px(self) -> int:
        if self._regular:
            return self._least_px()
        share = LEAST_SHARE if self._heading else MOST_SHARE
        return max(self._least_px(), round(self.window().height() * share))

    def _flags(self) -> int:
        return int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | self._upright)
