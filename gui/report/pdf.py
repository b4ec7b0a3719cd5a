"""PDF of a report: its HTML and diagrams with searchable text, own fonts, without a display."""

import sys
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

from PySide6.QtCore import (
    QBuffer,
    QByteArray,
    QEventLoop,
    QIODevice,
    QMarginsF,
    QRectF,
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
    QRawFont,
    QTextDocument,
    QTextDocumentFragment,
    QTextFormat,
)
from shiboken6 import delete

from gui.report.diagrams import PlacedDiagrams, without_places
from gui.style.fonts import add_bundled_fonts, add_typeface
from measure.report.choices import TALLEST_PLOT
from measure.report.svg import FONT, SPARE_FONT, Draw

#: Margin of the page and height of its foot, millimetres. [technical]
_MARGIN_MM, _FOOT_MM = 11.0, 9.0
#: Resolution of the PDF, dots per inch. [technical]
RESOLUTION = 600
#: Heights of the plots that are tried until the first page holds all that belongs on it, points.
#: [technical]
_PLOT_HEIGHTS = (TALLEST_PLOT, 62.0, 52.0, 44.0, 38.0, 34.0, 30.0, 27.0)
#: Sizes of the text and of the foot, points. [technical]
_TEXT_PT, _FOOT_PT = 8.0, 8.0
#: Width that is left for the page number, points. [technical]
_NUMBER_PT = 62.0


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


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedReport:
    """What is to be printed.

    Attributes
    ----------
    html
        Returns the report's HTML, given the function that makes a diagram's placeholder, and the
        height of the plots.
    foot
        A line for the foot of every page, before the page number.
    page_words
        Template of the page number.
    """

    html: Callable[[Draw, float], str]
    foot: str
    page_words: str = "page {page} of {pages}"
    landscape: bool = False


def make_pdf(report: PrintedReport, title: str) -> RenderedPdf:
    """Return a PDF of a report."""
    start_qt()
    content = QByteArray()
    buffer = QBuffer(content)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setTitle(title)
    writer.setCreator("Thawline")
    writer.setResolution(RESOLUTION)
    writer.setPageLayout(page_layout(landscape=report.landscape))
    layout = _Layout.fitting(report, writer)
    try:
        pages, lacking = layout.print(report), layout.lacking()
    finally:
        layout.drop()
    buffer.close()
    return RenderedPdf(content=bytes(content.data()), pages=pages, lacking=lacking)


def print_pages(device: QPagedPaintDevice, report: PrintedReport) -> int:
    """Print a report, as :func:`make_pdf` lays it out, on a printer; return how many pages."""
    start_qt()
    layout = _Layout.fitting(report, device)
    try:
        return layout.print(report)
    finally:
        layout.drop()


def page_layout(
    size: QPageSize.PageSizeId = QPageSize.PageSizeId.A4, *, landscape: bool = False
) -> QPageLayout:
    """Return the page layout of a report, with narrow margins."""
    orientations = QPageLayout.Orientation
    return QPageLayout(
        QPageSize(size),
        orientations.Landscape if landscape else orientations.Portrait,
        QMarginsF(_MARGIN_MM, _MARGIN_MM, _MARGIN_MM, _MARGIN_MM - 2),
        QPageLayout.Unit.Millimeter,
    )


def plain_font(size_pt: float, *, bold: bool = False) -> QFont:
    """Return the report's font without ligatures: with them a search for "flexion" fails."""
    font = QFont([FONT, SPARE_FONT])
    font.setPointSizeF(size_pt)
    font.setBold(bold)
    for feature in ("liga", "clig"):
        font.setFeature(QFont.Tag.fromString(feature), 0)
    return font


def start_qt() -> None:
    """Start Qt without a display unless it runs; every machine prints with the same fonts.

    A text document starts timers while it is laid out, and a thread that Qt did not start handles
    none until it had an event loop.
    """
    _application()
    QEventLoop()


@cache
def _application() -> QGuiApplication | None:
    own = None
    if QGuiApplication.instance() is None:
        own = QGuiApplication([sys.argv[0], "-platform", "offscreen"])
    add_bundled_fonts()
    add_typeface()
    return own


class _Layout:
    """A report laid out for the paper of a device."""

    def __init__(
        self, html: Callable[[Draw, float], str], plot_height: float, device: QPagedPaintDevice
    ) -> None:
        self._diagrams = PlacedDiagrams()
        self._text = html(self._diagrams.place, plot_height)
        self._device = device
        self._dots_per_point = device.logicalDpiY() / 72
        self._page = QRectF(0, 0, device.width(), device.height())
        self._page.setHeight(device.height() - _FOOT_MM / 25.4 * device.logicalDpiY())
        self._document = QTextDocument()
        layout = self._document.documentLayout()
        layout.setPaintDevice(device)
        self._document.setDefaultFont(plain_font(_TEXT_PT))
        self._document.setDocumentMargin(0)
        self._document.setHtml(self._text)
        self._diagrams.draw_in(self._document, lambda _: self._dots_per_point)
        self._document.setPageSize(self._page.size())

    @classmethod
    def fitting(cls, report: PrintedReport, device: QPagedPaintDevice) -> "_Layout":
        """Return the layout with the tallest plots whose first part fits one page."""
        for plot_height in _PLOT_HEIGHTS[:-1]:
            layout = cls(report.html, plot_height, device)
            if layout.first_part_fits():
                return layout
            layout.drop()
        return cls(report.html, _PLOT_HEIGHTS[-1], device)

    def drop(self) -> None:
        """Delete the document now: it has timers, which only the thread that made it may end."""
        delete(self._document)

    def first_part_fits(self) -> bool:
        """Return whether what comes before a forced page break fits the first page."""
        block = self._document.begin()
        always = QTextFormat.PageBreakFlag.PageBreak_AlwaysBefore
        while block.isValid():
            if block.blockFormat().pageBreakPolicy() & always:
                top = self._document.documentLayout().blockBoundingRect(block).top()
                return top < 1.5 * self._page.height()
            block = block.next()
        return self._document.pageCount() == 1

    def print(self, report: PrintedReport) -> int:
        """Print all pages; return their number."""
        painter = QPainter(self._device)
        page, pages = self._page, self._document.pageCount()
        for number in range(pages):
            if number:
                self._device.newPage()
            painter.save()
            painter.translate(0, -number * page.height())
            shown = QRectF(0, number * page.height(), page.width(), page.height())
            # One point less, or the tips of the next page's first line would show at the foot.
            painter.setClipRect(shown.adjusted(0, 0, 0, -self._dots_per_point))
            context = QAbstractTextDocumentLayout.PaintContext()
            context.clip = shown
            context.palette.setColor(context.palette.ColorRole.Text, QColor("black"))
            self._document.documentLayout().draw(painter, context)
            painter.restore()
            painter.setFont(plain_font(_FOOT_PT))
            below = QRectF(0, page.height(), page.width(), self._device.height() - page.height())
            foot = Qt.AlignmentFlag.AlignBottom
            beside = below.adjusted(0, 0, -_NUMBER_PT * self._dots_per_point, 0)
            painter.drawText(beside, foot | Qt.TextFlag.TextWordWrap, report.foot)
            number_words = report.page_words.format(page=number + 1, pages=pages)
            painter.drawText(below, foot | Qt.AlignmentFlag.AlignRight, number_words)
        painter.end()
        return pages

    def lacking(self) -> str:
        """Return the characters of the text that no font of the report has, in their order."""
        fonts = [QRawFont.fromFont(QFont(family)) for family in (FONT, SPARE_FONT)]
        text = QTextDocumentFragment.fromHtml(without_places(self._text)).toPlainText()
        text += self._diagrams.words()
        return "".join(
            letter
            for letter in dict.fromkeys(text)
            if letter.isprintable()
            and not letter.isspace()
            and not any(font.supportsCharacter(ord(letter)) for font in fonts)
        )
