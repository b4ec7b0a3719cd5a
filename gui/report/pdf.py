"""A report's HTML and pictures as a PDF: searchable text, own fonts, no display needed."""

import re
import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from PySide6.QtCore import (
    QBuffer,
    QByteArray,
    QIODevice,
    QMarginsF,
    QPointF,
    QRect,
    QRectF,
    QSizeF,
    Qt,
)
from PySide6.QtGui import (
    QAbstractTextDocumentLayout,
    QBrush,
    QColor,
    QFont,
    QGuiApplication,
    QPagedPaintDevice,
    QPageLayout,
    QPageSize,
    QPainter,
    QPdfWriter,
    QPen,
    QPyTextObject,
    QRawFont,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextFormat,
)

from gui.style.fonts import add_bundled_fonts
from measure.report.svg import FONT, Box, Diagram, Dot, Line, Mark, Words

_MARGIN_MM = 11.0
_FOOT_MM = 9.0
_RESOLUTION = 600
_TEXT_PT = 8.0
_FOOT_PT = 6.5
#: What stands for a picture until the text is laid out; no text of a report can hold it, as
#: escaping leaves no such character.
_PLACE = "\ue000{}\ue001"
_PLACES = re.compile("\ue000(\\d+)\ue001")
_PICTURE = int(QTextFormat.ObjectTypes.UserObject) + 1
_NUMBER = int(QTextFormat.Property.UserProperty) + 1


@dataclass(frozen=True, slots=True, kw_only=True)
class RenderedPdf:
    """A PDF in memory.

    Attributes
    ----------
    pages
        How many pages it has.
    lacking
        Characters of the text that the report's font has not; they may be missing in print.
    """

    content: bytes
    pages: int
    lacking: str


def make_pdf(html: Callable[[Callable[[Diagram], str]], str], title: str, foot: str) -> RenderedPdf:
    """Return a PDF of a report.

    Parameters
    ----------
    html
        Given what stands for a picture, returns the report's HTML.
    foot
        A line for the foot of every page, before the page number.
    """
    _ready()
    text, pictures = _laid_out(html)
    content = QByteArray()
    buffer = QBuffer(content)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setTitle(title)
    writer.setCreator("Thawline")
    writer.setResolution(_RESOLUTION)
    writer.setPageLayout(page_layout())
    pages = _print(writer, text, pictures, foot)
    buffer.close()
    return RenderedPdf(content=bytes(content.data()), pages=pages, lacking=_lacking(text, pictures))


def print_pages(
    device: QPagedPaintDevice, html: Callable[[Callable[[Diagram], str]], str], foot: str
) -> int:
    """Print a report, as :func:`make_pdf` lays it out, on a printer; return how many pages."""
    _ready()
    text, pictures = _laid_out(html)
    return _print(device, text, pictures, foot)


def page_layout(size: QPageSize.PageSizeId = QPageSize.PageSizeId.A4) -> QPageLayout:
    """Return the page of a report: upright, with narrow margins."""
    return QPageLayout(
        QPageSize(size),
        QPageLayout.Orientation.Portrait,
        QMarginsF(_MARGIN_MM, _MARGIN_MM, _MARGIN_MM, _MARGIN_MM - 2),
        QPageLayout.Unit.Millimeter,
    )


def _laid_out(
    html: Callable[[Callable[[Diagram], str]], str],
) -> tuple[str, list[Diagram]]:
    """Return a report's HTML with a mark where each picture goes, and the pictures."""
    pictures: list[Diagram] = []

    def place(picture: Diagram) -> str:
        pictures.append(picture)
        return _PLACE.format(len(pictures) - 1)

    return html(place), pictures


def plain_font(size_pt: float, *, bold: bool = False) -> QFont:
    """Return the report's font without ligatures: with them a search for "flexion" fails."""
    font = QFont(FONT)
    font.setPointSizeF(size_pt)
    font.setBold(bold)
    for feature in ("liga", "clig"):
        font.setFeature(QFont.Tag.fromString(feature), 0)
    return font


@cache
def _ready() -> QGuiApplication | None:
    """Start Qt without a display where nobody has; every machine prints with the same fonts."""
    own = None
    if QGuiApplication.instance() is None:
        own = QGuiApplication([sys.argv[0], "-platform", "offscreen"])
    add_bundled_fonts()
    return own


def _print(writer: QPagedPaintDevice, text: str, pictures: Sequence[Diagram], foot: str) -> int:
    dots_a_point = writer.logicalDpiY() / 72
    page = QRectF(0, 0, writer.width(), writer.height())
    page.setHeight(page.height() - _FOOT_MM / 25.4 * writer.logicalDpiY())
    document = QTextDocument()
    document.documentLayout().setPaintDevice(writer)
    document.setDefaultFont(plain_font(_TEXT_PT))
    document.setDocumentMargin(0)
    document.setHtml(text)
    drawer = _PictureTextObject(pictures, dots_a_point, document)
    document.documentLayout().registerHandler(_PICTURE, drawer)
    _put_pictures(document)
    document.setPageSize(page.size())
    painter = QPainter(writer)
    pages = document.pageCount()
    for number in range(pages):
        if number:
            writer.newPage()
        painter.save()
        painter.translate(0, -number * page.height())
        shown = QRectF(0, number * page.height(), page.width(), page.height())
        # A point less, or the tips of the next page's first line would show at the foot.
        painter.setClipRect(shown.adjusted(0, 0, 0, -dots_a_point))
        context = QAbstractTextDocumentLayout.PaintContext()
        context.clip = shown
        context.palette.setColor(context.palette.ColorRole.Text, QColor("black"))
        document.documentLayout().draw(painter, context)
        painter.restore()
        painter.setFont(plain_font(_FOOT_PT))
        below = QRectF(0, page.height(), page.width(), writer.height() - page.height())
        painter.drawText(below, Qt.AlignmentFlag.AlignBottom, foot)
        painter.drawText(
            below,
            Qt.AlignmentFlag.AlignBottom | Qt.AlignmentFlag.AlignRight,
            f"page {number + 1} of {pages}",
        )
    painter.end()
    return pages


def _put_pictures(document: QTextDocument) -> None:
    """Replace the places in the text by objects that the drawer paints."""
    plain = document.toPlainText()
    # From the end, so that the places before keep their positions.
    for found in reversed(list(_PLACES.finditer(plain))):
        cursor = QTextCursor(document)
        cursor.setPosition(found.start())
        cursor.setPosition(found.end(), QTextCursor.MoveMode.KeepAnchor)
        shape = QTextCharFormat()
        shape.setObjectType(_PICTURE)
        shape.setProperty(_NUMBER, int(found[1]))
        cursor.insertText("\ufffc", shape)


class _PictureTextObject(QPyTextObject):
    """Paints pictures where the text has a place for them."""

    def __init__(
        self, pictures: Sequence[Diagram], dots_a_point: float, parent: QTextDocument
    ) -> None:
        super().__init__(parent)
        self._pictures, self._scale = pictures, dots_a_point

    def intrinsicSize(self, document: Any, position: int, shape: QTextFormat) -> QSizeF:
        picture = self._pictures[shape.property(_NUMBER)]
        return QSizeF(picture.width * self._scale, picture.height * self._scale)

    def drawObject(
        self,
        painter: QPainter,
        place: QRectF | QRect,
        document: Any,
        position: int,
        shape: QTextFormat,
    ) -> None:
        painter.save()
        painter.translate(QRectF(place).topLeft())
        painter.scale(self._scale, self._scale)
        for mark in self._pictures[shape.property(_NUMBER)].marks:
            paint_mark(painter, mark, self._scale)
        painter.restore()


def paint_mark(painter: QPainter, mark: Mark, dots_a_point: float) -> None:
    """Paint one mark with a painter whose unit is a point."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    match mark:
        case Line():
            painter.setPen(_pen(mark.shade, mark.width, mark.dashed))
            painter.drawLine(QPointF(mark.x1, mark.y1), QPointF(mark.x2, mark.y2))
        case Box():
            if mark.edge is None:
                painter.setPen(Qt.PenStyle.NoPen)
            else:
                painter.setPen(_pen(mark.edge, 0.5, mark.dashed))
            if mark.fill is not None:
                painter.setBrush(QBrush(_grey(mark.fill)))
            painter.drawRect(QRectF(mark.x, mark.y, mark.width, mark.height))
        case Dot():
            painter.setPen(_pen(0.0, 0.5, False))
            painter.setBrush(QBrush(_grey(0.0 if mark.filled else 1.0)))
            half = mark.size / 2
            place = QRectF(mark.x - half, mark.y - half, mark.size, mark.size)
            if mark.square:
                painter.drawRect(place)
            else:
                painter.drawEllipse(place)
        case Words():
            _paint_words(painter, mark, dots_a_point)


def _paint_words(painter: QPainter, words: Words, dots_a_point: float) -> None:
    # The font counts in the device's dots, the picture in points.
    painter.save()
    painter.translate(words.x, words.y)
    painter.scale(1 / dots_a_point, 1 / dots_a_point)
    painter.setPen(QColor("black"))
    painter.setFont(plain_font(words.size, bold=words.bold))
    wide = painter.fontMetrics().horizontalAdvance(words.text)
    share = {"start": 0.0, "middle": 0.5, "end": 1.0}[words.anchor]
    painter.drawText(QPointF(-wide * share, 0), words.text)
    painter.restore()


def _pen(shade: float, width: float, dashed: bool) -> QPen:
    pen = QPen(_grey(shade), width)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    if dashed:
        pen.setDashPattern([2 / width, 1.5 / width])
    return pen


def _grey(shade: float) -> QColor:
    return QColor.fromRgbF(shade, shade, shade)


def _lacking(html: str, pictures: Sequence[Diagram]) -> str:
    """Return the characters that the report's font has not, in the order of the text."""
    font = QRawFont.fromFont(plain_font(_TEXT_PT))
    document = QTextDocument()
    document.setHtml(_PLACES.sub("", html))
    text = document.toPlainText() + "".join(
        mark.text for picture in pictures for mark in picture.marks if isinstance(mark, Words)
    )
    return "".join(
        each
        for each in dict.fromkeys(text)
        if each.isprintable() and not each.isspace() and not font.supportsCharacter(ord(each))
    )
