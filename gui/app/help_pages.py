"""Help pages: the pages of ``gui/help``, read in the window or handed to the browser to print.

They lie in the installed package, so they open without a network.
"""

from enum import Enum
from importlib.resources import files
from pathlib import Path

from PySide6.QtCore import QUrl, Slot
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QDialog, QTextBrowser, QWidget

from gui.text.wording import tr
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.layouts import column


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
        self.resize(820, 640)
        self._text = QTextBrowser()
        self._text.setOpenLinks(False)
        self._text.anchorClicked.connect(self._follow)
        self._back = button(tr("Back"))
        self._back.clicked.connect(self._text.backward)
        self._text.backwardAvailable.connect(self._back.setEnabled)
        self._back.setEnabled(False)
        close = button(tr("Close"), "main")
        close.clicked.connect(self.accept)
        buttons = ButtonRow([self._back, close], wide=True)
        column(self._text, buttons, on=self, margins=(24, 24, 24, 24), spacing=16)
        self._show(path)

    @property
    def path(self) -> Path:
        """The page that is shown."""
        return Path(self._text.source().toLocalFile())

    @Slot(QUrl)
    def _follow(self, link: QUrl) -> None:
        target = self._text.source().resolved(link)
        path = Path(target.toLocalFile())
        if target.isLocalFile() and path.is_file() and not _open_in_browser(path):
            self._show(path)

    def _show(self, path: Path) -> None:
        self._text.setSource(QUrl.fromLocalFile(str(path)))
        self.setWindowTitle(self._text.toPlainText().split("\n", 1)[0])
