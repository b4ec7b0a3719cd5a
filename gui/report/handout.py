"""Printed page of a home programme: drawings, doses, when to stop, and signs of danger."""

from collections.abc import Sequence

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPagedPaintDevice, QPainter, QPdfWriter, QPen

from gui.drawing.scene import paint_scene
from gui.drawing.shown_movements import shown_exercise
from gui.report.handout_words import HandoutEntry, HandoutWords
from gui.report.pdf import RESOLUTION, page_layout, plain_font, start_qt
from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from measure.domain.home_programme_records import PlannedExercise
from measure.domain.landmarks import Side

#: Type sizes, points: title, name of an exercise, running text, small print. [technical]
_TITLE_PT, _NAME_PT, _TEXT_PT, _SMALL_PT = 18.0, 12.5, 10.5, 8.5
#: Sizes of type tried, as shares, until the page holds everything. [technical]
_SHARES = (1.0, 0.93, 0.86, 0.8)
#: Width of a drawing, its least height, and distances, millimetres. [technical]
_FIGURE_MM, _ROW_MM, _GAP_MM = 42.0, 28.0, 3.0
#: What a row may be higher where there is room, millimetres. [technical]
_MORE_MM = 14.0
#: Most exercises that are to stand on one page. [project]
ONE_PAGE = 6

_WRAPPED = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
_INK, _LINE = QColor("black"), QColor("#9a9a9a")


def handout_pdf(words: HandoutWords) -> bytes:
    """Return the page as a PDF of A4."""
    start_qt()
    content = QByteArray()
    buffer = QBuffer(content)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setTitle(words.title)
    writer.setCreator("Thawline")
    writer.setResolution(RESOLUTION)
    writer.setPageLayout(page_layout())
    print_handout(writer, words)
    buffer.close()
    return bytes(content.data())


def print_handout(device: QPagedPaintDevice, words: HandoutWords) -> int:
    """Print the page on a device that has its paper set; return the number of pages."""
    start_qt()
    painter = QPainter(device)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    paper = _Paper(painter, device)
    pages = paper.pages_of(words)
    for number, entries in enumerate(pages):
        if number:
            device.newPage()
        paper.paint(words, entries)
    painter.end()
    return len(pages)


class _Paper:
    """Lays the page out in millimetres and paints it."""

    def __init__(self, painter: QPainter, device: QPagedPaintDevice) -> None:
        self._painter = painter
        self._colours = Appearance(Scheme.LIGHT)
        self._mm = device.logicalDpiY() / 25.4
        self._width, self._height = float(device.width()), float(device.height())
        self._share = 1.0

    def pages_of(self, words: HandoutWords) -> list[Sequence[HandoutEntry]]:
        """Return the entries of each page, with the type as large as one page allows."""
        for share in _SHARES:
            self._share = share
            pages = self._divided(words)
            if len(pages) == 1 or len(words.entries) > ONE_PAGE:
                break
        return pages

    def paint(self, words: HandoutWords, entries: Sequence[HandoutEntry]) -> None:
        """Paint one page."""
        y = self._head(words, paints=True)
        used = sum(self._entry_height(entry) for entry in entries)
        spare = self._height - self._foot_height(words) - y - used
        more = min(spare / max(1, len(entries)), _MORE_MM * self._mm)
        for entry in entries:
            height = self._entry_height(entry) + more
            self._entry(entry, y, height)
            y += height
        self._foot(words, self._height - self._foot_height(words))

    # -- how high things are --------------------------------------------------------------------

    def _divided(self, words: HandoutWords) -> list[Sequence[HandoutEntry]]:
        room = self._height - self._head(words, paints=False) - self._foot_height(words)
        pages: list[list[HandoutEntry]] = [[]]
        used = 0.0
        for entry in words.entries:
            needed = self._entry_height(entry)
            if pages[-1] and used + needed > room:
                pages.append([])
                used = 0.0
            pages[-1].append(entry)
            used += needed
        return [*pages]

    def _entry_height(self, entry: HandoutEntry) -> float:
        texts = sum(self._needed(text, font, self._beside) for text, font in self._lines(entry))
        return max(_ROW_MM * self._share * self._mm, texts) + self._gap

    def _lines(self, entry: HandoutEntry) -> list[tuple[str, QFont]]:
        lines = (
            (entry.name, self._font(_NAME_PT, bold=True)),
            (entry.dose, self._font(_TEXT_PT, bold=True)),
            (entry.how, self._font(_TEXT_PT)),
            (entry.note, self._font(_TEXT_PT)),
        )
        return [line for line in lines if line[0]]

    def _foot_height(self, words: HandoutWords) -> float:
        small, bold = self._font(_SMALL_PT), self._font(_SMALL_PT, bold=True)
        parts = [(words.notice, small)]
        for heading, signs in words.warnings:
            parts += [(heading, bold), (signs, small)]
        return sum(self._needed(text, font, self._width) for text, font in parts) + 2 * self._gap

    @property
    def _gap(self) -> float:
        return _GAP_MM * self._mm * self._share

    @property
    def _beside(self) -> float:
        """Width beside a drawing."""
        return self._width - _FIGURE_MM * self._mm - 2 * self._gap

    def _font(self, size_pt: float, *, bold: bool = False) -> QFont:
        return plain_font(size_pt * self._share, bold=bold)

    def _needed(self, text: str, font: QFont, width: float) -> float:
        self._painter.setFont(font)
        room = QRectF(0, 0, width, 1_000_000)
        return self._painter.boundingRect(room, _WRAPPED, text).height()

    # -- painting -------------------------------------------------------------------------------

    def _text(self, text: str, font: QFont, place: QPointF, width: float) -> float:
        """Paint a text and return where it ends."""
        height = self._needed(text, font, width)
        self._painter.setPen(_INK)
        self._painter.drawText(QRectF(place.x(), place.y(), width, height), _WRAPPED, text)
        return place.y() + height

    def _head(self, words: HandoutWords, *, paints: bool) -> float:
        """Paint, or only measure, what stands above the exercises; return where it ends."""
        y = 0.0
        for text, font in (
            (words.title, self._font(_TITLE_PT, bold=True)),
            (words.facts, self._font(_TEXT_PT)),
            (words.rule, self._font(_NAME_PT, bold=True)),
        ):
            if paints:
                self._text(text, font, QPointF(0, y), self._width)
            y += self._needed(text, font, self._width) + self._gap / 2
        return y + self._gap / 2

    def _entry(self, entry: HandoutEntry, top: float, height: float) -> None:
        self._rule(top)
        figure_px = _FIGURE_MM * self._mm
        tall = min(height, (_ROW_MM + _MORE_MM) * self._mm) - self._gap
        self._painter.save()
        self._draw(entry.planned, QRectF(0, top + self._gap / 2, figure_px, tall))
        self._painter.restore()
        y = top + self._gap / 2
        for text, font in self._lines(entry):
            y = self._text(text, font, QPointF(figure_px + 2 * self._gap, y), self._beside)

    def _draw(self, planned: PlannedExercise, place: QRectF) -> None:
        """Draw an exercise of the list: its end, with the start as a shade."""
        listed = planned.exercise.listed
        if listed is not None:
            side = planned.sides[0] if planned.sides else Side.RIGHT
            shown = shown_exercise(listed)
            paint_scene(self._painter, self._colours, place, shown, side, for_paper=True)

    def _foot(self, words: HandoutWords, top: float) -> None:
        self._rule(top)
        y = top + self._gap
        for heading, signs in words.warnings:
            y = self._text(heading, self._font(_SMALL_PT, bold=True), QPointF(0, y), self._width)
            y = self._text(signs, self._font(_SMALL_PT), QPointF(0, y), self._width)
        self._text(words.notice, self._font(_SMALL_PT), QPointF(0, y + self._gap / 2), self._width)

    def _rule(self, y: float) -> None:
        self._painter.setPen(QPen(_LINE, 0.2 * self._mm))
        self._painter.drawLine(QPointF(0, y), QPointF(self._width, y))
