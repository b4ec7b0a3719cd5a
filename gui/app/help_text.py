"""A page of help as the window sets it: in the type of the dialogs, terms in place of tables."""

import re
from typing import Any

from PySide6.QtCore import QUrl, Signal
from PySide6.QtGui import (
    QFont,
    QFontInfo,
    QPalette,
    QResizeEvent,
    QTextBlock,
    QTextBlockFormat,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextFormat,
    QTextTable,
    QTextTableFormat,
)
from PySide6.QtWidgets import QApplication, QFrame, QTextBrowser, QWidget

from gui.style.measures import GAP_PX, TEXT_EDGE_PX
from gui.widgets.fold import MoreBelow
from gui.widgets.plain_dialog import DIALOG_BAR_PX
from gui.widgets.text import end_together

#: Rank of the heading that stands for the term of a list of terms. [technical]
_TERM = 4
#: Size of a heading of a section, relative to running text. [technical]
_HEADING = 1.17
#: Sizes of headings by rank, relative to running text. [technical]
_SIZES = {1: _HEADING, 2: _HEADING}
#: Space above and below a block by its heading's rank, 0 for running text, pixels. [technical]
_SPACES = {0: (0, 12), 1: (32, 6), 2: (32, 6), 3: (16, 4), _TERM: (4, 2)}
#: Space below an entry of a list, and within the cells of a table, pixels. [technical]
_BELOW_ENTRY_PX, _IN_CELL_PX = 6, 6
#: A table of Markdown with its head, the line below that, and its rows.
_TABLE = re.compile(r"^(\|.*\|)\n\|[-|: ]+\|\n((?:\|.*\|\n?)+)", re.MULTILINE)
#: Columns of a table that is read as terms and what is said of them. [technical]
_PAIR = 2
#: Letters from which a cell of a table of several columns holds a sentence. [technical]
_SENTENCE = 60
#: Most letters of terms, and of what is said of them, that stand side by side. [technical]
_SHORT = (20, 80)
#: Space above a table of terms, pixels. [technical]
_ABOVE_TERMS_PX = GAP_PX
#: Room at the right of the text, beside its bar, pixels. [technical]
TEXT_RIGHT_PX = 5 * GAP_PX


def heading_and_text(markdown: str) -> tuple[str, str]:
    """Return the heading of a page, and the rest with its tables of words as lists of terms."""
    heading, _, rest = markdown.partition("\n")
    return heading.lstrip("# ").strip(), _TABLE.sub(_terms, rest)


def _terms(table: re.Match[str]) -> str:
    """Return the rows of a table as terms, each with a sentence below; one of numbers stays."""
    head, *rows = [line.strip("| ").split(" | ") for line in (table[1], *table[2].splitlines())]
    if any(len(cells) != len(head) for cells in rows):
        return table[0]
    of_pairs = len(head) == _PAIR and all(" " in words for _, words in rows)
    if not of_pairs and max(len(cell) for cells in rows for cell in cells) < _SENTENCE:
        return table[0]
    if of_pairs and _are_short(rows):
        # A table without heads is one of terms and what is said of them.
        pairs = [(_sentence(term.replace("**", "")), _sentence(words, ".")) for term, words in rows]
        return "\n".join(["|  |  |", "|---|---|", *(f"| {a} | {b} |" for a, b in pairs)]) + "\n"
    lines = []
    for term, *said in rows:
        if len(said) > 1:
            said = [f"{name}: {words}" for name, words in zip(head[1:], said, strict=True)]
        title = _sentence(term.replace("**", ""))
        lines.append(f"{'#' * _TERM} {title}\n\n{_sentence('; '.join(said), '.')}\n")
    return "\n".join(lines)


def _are_short(rows: list[list[str]]) -> bool:
    """Return whether all terms and all that is said of them are short enough for two columns."""
    longest = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return all(long <= most for long, most in zip(longest, _SHORT, strict=True))


def _sentence(words: str, stop: str = "") -> str:
    """Return words that begin with a capital and end with a stop."""
    words = words.strip()
    return words[:1].upper() + words[1:] + (stop if words[-1:] not in ".!?" else "")


class HelpText(QTextBrowser):
    """Shows the text of a page in the window's own type; it scrolls by itself, beneath its title.

    The bar begins beside the title, as that of every other dialog does.
    """

    #: A link was followed; where it leads, as the page says it.
    followed = Signal(QUrl)

    def __init__(self, title: QWidget) -> None:
        super().__init__()
        self._title = title
        title.setParent(self)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setProperty("role", "text")
        self.setOpenLinks(False)
        self.anchorClicked.connect(self.followed)
        self.setViewportMargins(0, 0, TEXT_RIGHT_PX, 0)
        MoreBelow(self, QApplication.palette().color(QPalette.ColorRole.Window))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place_title()

    def _place_title(self) -> None:
        """Keep the title above the text, as high as its words need."""
        wide = max(0, self.width() - TEXT_EDGE_PX - DIALOG_BAR_PX)
        high = self._title.heightForWidth(wide) if self._title.hasHeightForWidth() else 0
        high = max(high, self._title.minimumSizeHint().height())
        self._title.setGeometry(TEXT_EDGE_PX, 0, wide, high)
        above = high + 2 * GAP_PX
        if self.viewportMargins().top() != above:
            self.setViewportMargins(0, above, TEXT_RIGHT_PX, 0)

    def show_text(self, markdown: str, name: str) -> None:
        """Show a text from its beginning; its name is for who hears it."""
        self.ensurePolished()
        self.setAccessibleName(name)
        self._place_title()
        self.setMarkdown(markdown)
        _dress(self.document(), QFontInfo(self.font()).pixelSize())
        self.verticalScrollBar().setValue(0)


def _dress(document: QTextDocument, body_px: int) -> None:
    """Give headings, paragraphs, lists and tables their type and their space."""
    document.setDocumentMargin(0)
    document.setIndentWidth(3 * GAP_PX)
    whole = QTextCursor(document)
    whole.beginEditBlock()
    for frame in document.rootFrame().childFrames():
        if isinstance(frame, QTextTable):
            shape = frame.format().toTableFormat()
            shape.setBorder(0)
            shape.setCellSpacing(0)
            shape.setCellPadding(_IN_CELL_PX)
            if not frame.cellAt(0, 0).firstCursorPosition().block().text():
                _dress_terms(frame, shape)
            frame.setFormat(shape)
    block = document.begin()
    while block.isValid():
        _space(block)
        _type(block, body_px)
        _end(block)
        block = block.next()
    whole.endEditBlock()


def _dress_terms(table: QTextTable, shape: QTextTableFormat) -> None:
    """Set the terms of a table without heads in bold, flush with the text around."""
    table.removeRows(0, 1)
    shape.setCellPadding(0)
    shape.setTopMargin(_ABOVE_TERMS_PX)
    shape.setHeaderRowCount(0)
    for line in range(table.rows()):
        for place in (0, 1):
            cell = table.cellAt(line, place)
            given = cell.format().toTableCellFormat()
            given.setBottomPadding(_BELOW_ENTRY_PX)
            if place == 0:
                given.setRightPadding(3 * GAP_PX)
            cell.setFormat(given)
        cursor = table.cellAt(line, 0).firstCursorPosition()
        cursor.movePosition(QTextCursor.MoveOperation.EndOfBlock, QTextCursor.MoveMode.KeepAnchor)
        bold = QTextCharFormat()
        bold.setFontWeight(QFont.Weight.Bold)
        cursor.mergeCharFormat(bold)


def _space(block: QTextBlock) -> None:
    cursor, shape = QTextCursor(block), QTextBlockFormat()
    above, below = _SPACES.get(block.blockFormat().headingLevel(), _SPACES[0])
    if cursor.currentTable() is not None:
        above = below = 0
    elif block.textList() is not None:
        below = _BELOW_ENTRY_PX
    shape.setTopMargin(0 if block.blockNumber() == 0 else above)
    shape.setBottomMargin(below)
    cursor.mergeBlockFormat(shape)


def _type(block: QTextBlock, body_px: int) -> None:
    """Set the text of a block in the document's typeface; lines of code keep their own."""
    level = block.blockFormat().headingLevel()
    if block.blockFormat().hasProperty(QTextFormat.Property.BlockCodeLanguage):
        return
    cursor = QTextCursor(block)
    for part in block.textFormats():
        if not part.format.isImageFormat():
            start = block.position() + part.start
            cursor.setPosition(start)
            cursor.setPosition(start + part.length, QTextCursor.MoveMode.KeepAnchor)
            shown = _plain(part.format)
            shown.setProperty(
                QTextFormat.Property.FontPixelSize, round(body_px * _SIZES.get(level, 1.0))
            )
            if level:
                shown.setFontWeight(QFont.Weight.Bold)
            cursor.setCharFormat(shown)


def _end(block: QTextBlock) -> None:
    """Keep the last words of a block together; lines of code keep their own."""
    if block.blockFormat().hasProperty(QTextFormat.Property.BlockCodeLanguage):
        return
    words = block.text()
    for place, (given, kept) in enumerate(zip(words, end_together(words), strict=True)):
        if given != kept:
            cursor = QTextCursor(block)
            cursor.setPosition(block.position() + place)
            cursor.setPosition(block.position() + place + 1, QTextCursor.MoveMode.KeepAnchor)
            cursor.insertText(kept, cursor.charFormat())


def _plain(given: Any) -> QTextCharFormat:
    """Return a format with what a text says by bold, slanted and linked words, and no more."""
    shown, palette = QTextCharFormat(), QApplication.palette()
    shown.setFontWeight(given.fontWeight())
    shown.setFontItalic(given.fontItalic())
    if given.isAnchor():
        shown.setAnchor(True)
        shown.setAnchorHref(given.anchorHref())
        shown.setFontUnderline(True)
        shown.setForeground(palette.link())
    elif given.fontFixedPitch():
        shown.setBackground(palette.alternateBase())
    return shown
