"""PDF of a report: its HTML and diagrams with searchable text, own fonts, without a display."""

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
    QRect,
    QRectF,
    QSizeF,
    Qt,
)
from PySide6.QtGui import (
    QAbstractTextDocumentLayout,
    QColor,
    QFont,
    QGuiApplication,
    QPagedPaintDevice,
    QPageLayout,
    QPageSize,
    QPainter,
    QPdfWriter,
    QPyTextObject,
    QRawFont,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextFormat,
)
from PySide6.QtSvg import QSvgRenderer

from gui.style.fonts import add_bundled_fonts
from measure.report.svg import FONT, Diagram, Words, as_svg

#: Margin of the page and height of its foot, millimetres. [technical]
_MARGIN_MM, _FOOT_MM = 11.0, 9.0
#: Resolution of the PDF, dots per inch. [technical]
_RESOLUTION = 600
#: Sizes of the text and of the foot, points. [technical]
_TEXT_PT, _FOOT_PT = 8.0, 6.5
#: Placeholder of a diagram in the text until it is laid out; characters of the private use area,
#: which no text of a report contains.
_PLACE = "\ue000{}\ue001"
_PLACES = re.compile("\ue000(\\d+)\ue001")
#: Type of a diagram's text object, and the property with its number. [technical]
_DIAGRAM = int(QTextFormat.ObjectTypes.UserObject) + 1
_NUMBER = int(QTextFormat.Property.UserProperty) + 1


@dataclass(frozen=True, slots=True, kw_only=True)
class RenderedPdf:
    """A PDF in memory.

    Attributes
    ----------
    pages
        Number of pages.
    lacking
        Characters of the text that the report's font does not have; they may be missing in print.
    """

    content: bytes
    pages: int
    lacking: str


def make_pdf(html: Callable[[Callable[[Diagram], str]], str], title: str, foot: str) -> RenderedPdf:
    """Return a PDF of a report.

    Parameters
    ----------
    html
        Returns the report's HTML, given the function that makes a diagram's placeholder.
    foot
        A line for the foot of every page, before the page number.
    """
    _ready()
    text, diagrams = _laid_out(html)
    content = QByteArray()
    buffer = QBuffer(content)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setTitle(title)
    writer.setCreator("Thawline")
    writer.setResolution(_RESOLUTION)
    writer.setPageLayout(page_layout())
    pages = _print(writer, text, diagrams, foot)
    buffer.close()
    return RenderedPdf(content=bytes(content.data()), pages=pages, lacking=_lacking(text, diagrams))


def print_pages(
    device: QPagedPaintDevice, html: Callable[[Callable[[Diagram], str]], str], foot: str
) -> int:
    """Print a report, as :func:`make_pdf` lays it out, on a printer; return how many pages."""
    _ready()
    text, diagrams = _laid_out(html)
    return _print(device, text, diagrams, foot)


def page_layout(size: QPageSize.PageSizeId = QPageSize.PageSizeId.A4) -> QPageLayout:
    """Return the page layout of a report: portrait with narrow margins."""
    return QPageLayout(
        QPageSize(size),
        QPageLayout.Orientation.Portrait,
        QMarginsF(_MARGIN_MM, _MARGIN_MM, _MARGIN_MM, _MARGIN_MM - 2),
        QPageLayout.Unit.Millimeter,
    )


def _laid_out(
    html: Callable[[Callable[[Diagram], str]], str],
) -> tuple[str, list[Diagram]]:
    """Return a report's HTML with a placeholder for each diagram, and the diagrams."""
    diagrams: list[Diagram] = []

    def place(diagram: Diagram) -> str:
        diagrams.append(diagram)
        return _PLACE.format(len(diagrams) - 1)

    return html(place), diagrams


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
    """Start Qt without a display unless it runs; every machine prints with the same fonts."""
    own = None
    if QGuiApplication.instance() is None:
        own = QGuiApplication([sys.argv[0], "-platform", "offscreen"])
    add_bundled_fonts()
    return own


def _print(writer: QPagedPaintDevice, text: str, diagrams: Sequence[Diagram], foot: str) -> int:
    dots_per_point = writer.logicalDpiY() / 72
    page = QRectF(0, 0, writer.width(), writer.height())
    page.setHeight(page.height() - _FOOT_MM / 25.4 * writer.logicalDpiY())
    document = QTextDocument()
    document.documentLayout().setPaintDevice(writer)
    document.setDefaultFont(plain_font(_TEXT_PT))
    document.setDocumentMargin(0)
    document.setHtml(text)
    drawer = _DiagramTextObject(diagrams, dots_per_point, document)
    document.documentLayout().registerHandler(_DIAGRAM, drawer)
    _insert_diagrams(document)
    document.setPageSize(page.size())
    painter = QPainter(writer)
    pages = document.pageCount()
    for number in range(pages):
        if number:
            writer.newPage()
        painter.save()
        painter.translate(0, -number * page.height())
        shown = QRectF(0, number * page.height(), page.width(), page.height())
        # One point less, or the tips of the next page's first line would show at the foot.
        painter.setClipRect(shown.adjusted(0, 0, 0, -dots_per_point))
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


def _insert_diagrams(document: QTextDocument) -> None:
    """Replace the placeholders in the text by objects that are painted as diagrams."""
    plain = document.toPlainText()
    # From the end, so that the placeholders before keep their positions.
    for match in reversed(list(_PLACES.finditer(plain))):
        cursor = QTextCursor(document)
        cursor.setPosition(match.start())
        cursor.setPosition(match.end(), QTextCursor.MoveMode.KeepAnchor)
        shape = QTextCharFormat()
        shape.setObjectType(_DIAGRAM)
        shape.setProperty(_NUMBER, int(match[1]))
        cursor.insertText("\ufffc", shape)


class _DiagramTextObject(QPyTextObject):
    """Painter of the diagrams at their places in the text."""

    def __init__(
        self, diagrams: Sequence[Diagram], dots_per_point: float, parent: QTextDocument
    ) -> None:
        super().__init__(parent)
        self._diagrams, self._scale = diagrams, dots_per_point

    def intrinsicSize(self, document: Any, position: int, shape: QTextFormat) -> QSizeF:
        diagram = self._diagrams[shape.property(_NUMBER)]
        return QSizeF(diagram.width * self._scale, diagram.height * self._scale)

    def drawObject(
        self,
        painter: QPainter,
        place: QRectF | QRect,
        document: Any,
        position: int,
        shape: QTextFormat,
    ) -> None:
        svg = as_svg(self._diagrams[shape.property(_NUMBER)])
        QSvgRenderer(QByteArray(svg.encode("utf-8"))).render(painter, QRectF(place))


def _lacking(html: str, diagrams: Sequence[Diagram]) -> str:
    """Return the characters of the text that the report's font does not have, in their order."""
    font = QRawFont.fromFont(plain_font(_TEXT_PT))
    document = QTextDocument()
    document.setHtml(_PLACES.sub("", html))
    text = document.toPlainText() + "".join(
        mark.text for diagram in diagrams for mark in diagram.marks if isinstance(mark, Words)
    )
    return "".join(
        letter
        for letter in dict.fromkeys(text)
        if letter.isprintable() and not letter.isspace() and not font.supportsCharacter(ord(letter))
    )
