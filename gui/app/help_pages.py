"""Help pages: the pages of ``gui/help``, read in the window or handed to the browser to print.

They lie in the installed package, so they open without a network.
"""

from enum import Enum
from importlib.resources import files
from pathlib import Path

from PySide6.QtCore import Qt, QUrl, Slot
from PySide6.QtGui import QDesktopServices, QKeyEvent
from PySide6.QtWidgets import QAbstractSlider, QDialog, QWidget

from gui.app.help_text import TEXT_RIGHT_PX, HelpText, heading_and_text
from gui.style.measures import CONTENT_PX, GAP_PX, TEXT_EDGE_PX
from gui.text.wording import tr
from gui.widgets.buttons import ButtonRow, bind_keys, button
from gui.widgets.layouts import column, row, separator
from gui.widgets.plain_dialog import DIALOG_BAR_PX, DIALOG_MARGIN_PX
from gui.widgets.text import label

#: Width of a page of text, in widths of a digit: lines that are read with ease. [technical]
_DIGITS = 56


class HelpPage(Enum):
    """A page for people; its value is the file in ``gui/help``."""

    WHEN_TO_CALL = "when-to-call.md"
    WINDOW = "window.md"
    AT_HOME = "measure-at-home.html"
    TRUST = "trust.md"
    PROGRESS = "progress.md"
    WHAT_IS_KEPT = "what-is-kept.md"
    CLINIC_CARD = "clinic-card.html"

    @property
    def path(self) -> Path:
        return Path(str(files("gui"))) / "help" / self.value


def page_name(page: HelpPage) -> str:
    """Return the words of a page's entry in the menu."""
    return {
        HelpPage.WINDOW: tr("Th&e window, page by page"),
        HelpPage.AT_HOME: tr("&Measuring at home, to print"),
        HelpPage.WHEN_TO_CALL: tr("When to call a &clinician"),
        HelpPage.TRUST: tr("How far to &trust a number"),
        HelpPage.PROGRESS: tr("How &progress is judged"),
        HelpPage.WHAT_IS_KEPT: tr("What &is saved, and where"),
        HelpPage.CLINIC_CARD: tr("Card &for clinicians, to print"),
    }[page]


def page_title(page: HelpPage) -> str:
    """Return a page's name without the mark of its key in the menu."""
    return page_name(page).replace("&", "")


def page_line(page: HelpPage) -> str:
    """Return what a page answers."""
    return {
        HelpPage.WINDOW: tr("What each page is for, and what its buttons do."),
        HelpPage.AT_HOME: tr("Where to stand and how to move, on one sheet."),
        HelpPage.WHEN_TO_CALL: tr("Signs that a clinician should look at soon, or at once."),
        HelpPage.TRUST: tr("What a range means, and which trials count."),
        HelpPage.PROGRESS: tr("When a difference is called a change."),
        HelpPage.WHAT_IS_KEPT: tr("Which files there are, and how to delete them."),
        HelpPage.CLINIC_CARD: tr("A measurement within a visit, on one card."),
    }[page]


def open_page(page: HelpPage, parent: QWidget) -> None:
    """Show a page: printed ones in the computer's browser, the others in a dialog."""
    if not _open_in_browser(page.path):
        HelpDialog(page.path, parent).open()


def _open_in_browser(path: Path) -> bool:
    is_printed = path.suffix == ".html"
    if is_printed:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(path)))
    return is_printed


class HelpDialog(QDialog):
    """A page of text; its links lead to other pages of the package and nowhere else."""

    def __init__(self, path: Path, parent: QWidget) -> None:
        super().__init__(parent)
        #: The page that is shown.
        self.path = path
        #: Pages that a link has led away from, and how far each was scrolled.
        self._left: list[tuple[Path, int]] = []
        self.title = label("", "display")
        self.text = HelpText(self.title)
        self.text.followed.connect(self.follow)
        self.back = button(tr("Back"))
        self.back.clicked.connect(self._go_back)
        bind_keys(self, self.back, "Alt+Left")
        close = button(tr("Close"), "main")
        close.clicked.connect(self.accept)
        self._lay_out(ButtonRow([self.back, close], wide=True), parent)
        self._show(path)
        close.setFocus()

    def _lay_out(self, buttons: ButtonRow, parent: QWidget) -> None:
        """Set title, text and buttons one below the other, as high as the window allows."""
        margin = DIALOG_MARGIN_PX
        beside = (margin - TEXT_EDGE_PX, margin, margin - DIALOG_BAR_PX, 0)
        column(
            (column((self.text, 1), margins=beside), 1),
            separator(),
            row(buttons, margins=(margin, 2 * GAP_PX, margin, margin - GAP_PX)),
            on=self,
            spacing=0,
        )
        self.ensurePolished()
        room = parent.window().size()
        wide = _DIGITS * self.fontMetrics().horizontalAdvance("0")
        wide = min(wide + TEXT_RIGHT_PX, CONTENT_PX, room.width() - 4 * margin)
        self.resize(wide + 2 * margin, room.height() - 2 * margin)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let the text scroll whatever has the keyboard."""
        actions, keys = QAbstractSlider.SliderAction, Qt.Key
        turns = {
            keys.Key_PageUp: actions.SliderPageStepSub,
            keys.Key_PageDown: actions.SliderPageStepAdd,
            keys.Key_Home: actions.SliderToMinimum,
            keys.Key_End: actions.SliderToMaximum,
        }
        if event.key() in turns:
            self.text.verticalScrollBar().triggerAction(turns[Qt.Key(event.key())])
        else:
            super().keyPressEvent(event)

    @Slot(QUrl)
    def follow(self, link: QUrl) -> None:
        """Show where a link of the page leads, if that is a file of the package."""
        target = QUrl.fromLocalFile(str(self.path)).resolved(link)
        path = Path(target.toLocalFile())
        if target.isLocalFile() and path.is_file() and not _open_in_browser(path):
            self._left.append((self.path, self.text.verticalScrollBar().value()))
            self._show(path)

    @Slot()
    def _go_back(self) -> None:
        """Show the page before, where it was left."""
        if self._left:
            path, scrolled = self._left.pop()
            self._show(path)
            self.text.verticalScrollBar().setValue(scrolled)

    def _show(self, path: Path) -> None:
        self.path = path
        heading, text = heading_and_text(path.read_text(encoding="utf-8"))
        title = next((page_title(page) for page in HelpPage if page.path == path), heading)
        self.title.setText(title)
        self.setWindowTitle(title)
        self.text.show_text(text, title)
        self.back.setVisible(bool(self._left))
