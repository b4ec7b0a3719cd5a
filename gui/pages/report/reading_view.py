"""The report to read in the window: the text size of the settings, tables that fit."""

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QColor, QFont, QTextDocument
from PySide6.QtWidgets import QFrame, QTextBrowser, QWidget

from gui.report.diagrams import PlacedDiagrams
from gui.style.fonts import column_font
from gui.text.wording import tr
from gui.widgets.fold import MoreBelow
from measure.report.svg import Diagram

#: Size of the running text of a diagram, points. [technical]
_DIAGRAM_PT = 8.0
#: Space around the text, pixels. [technical]
_MARGIN_PX = 24.0
#: Lines higher than this, in sizes of running text, are drawings, which may be cut. [technical]
_HIGHEST_LINE = 2.5
#: Share of the strip beneath the last whole line in which it fades. [technical]
_FADE = 0.02
#: Space beneath the last whole line, pixels. [technical]
_BENEATH_PX = 4.0


class _WholeLines(MoreBelow):
    """Hides a line that the lower edge would cut, whatever is scrolled to."""

    def __init__(self, view: "ReadingView") -> None:
        self._view = view
        beside = round(_MARGIN_PX / 2)
        super().__init__(view, QColor(Qt.GlobalColor.white), beside, covered_from=_FADE)

    def top_in(self, seen: QRect) -> int:
        scrolled = self._view.verticalScrollBar().value()
        usual = super().top_in(seen)
        end = self._view.end_of_line(usual - seen.top() + scrolled)
        return max(seen.top(), min(usual, round(end) - scrolled + seen.top()))


class ReadingView(QTextBrowser):
    """Shows a report as one text that is as wide as its place; it scrolls by itself."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setProperty("role", "paper")
        self.setOpenLinks(False)
        self.setAccessibleName(tr("Report"))
        self._shown: QTextDocument | None = None
        self._text_px = 0.0
        _WholeLines(self)

    def show_report(self, html: str, diagrams: PlacedDiagrams, text_px: float) -> None:
        """Show a report whose diagrams are placed in its HTML.

        Parameters
        ----------
        text_px
            Size of running text; diagrams are as much larger as it, where there is room.
        """
        self._text_px = text_px
        document = QTextDocument(self)
        font = QFont(column_font())
        font.setPixelSize(round(text_px))
        document.setDefaultFont(font)
        document.setDocumentMargin(_MARGIN_PX)
        document.setHtml(html)

        def scale(diagram: Diagram) -> float:
            room = self.viewport().width() - 3 * _MARGIN_PX
            return min(text_px / _DIAGRAM_PT, max(room, 1.0) / diagram.width)

        diagrams.draw_in(document, scale)
        self.setDocument(document)
        if self._shown is not None:
            self._shown.deleteLater()
        self._shown = document

    def end_of_line(self, y: float) -> float:
        """Return the lowest place down to `y` at which no line of text is cut, in the document."""
        while True:
            cut = [top for top, bottom in self._lines() if top < y < bottom]
            if not cut:
                return y
            y = min(cut)

    def _lines(self) -> list[tuple[float, float]]:
        """Return top and bottom of every line of text, in the document."""
        document, lines = self.document(), []
        block = document.begin()
        while block.isValid():
            layout = block.layout()
            above = document.documentLayout().blockBoundingRect(block).top()
            above -= layout.boundingRect().top()
            for number in range(layout.lineCount()):
                line = layout.lineAt(number)
                if line.height() <= _HIGHEST_LINE * self._text_px:
                    top = above + line.y()
                    lines.append((top, top + line.height() + _BENEATH_PX))
            block = block.next()
        return lines
