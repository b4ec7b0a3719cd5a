"""Pages of help: each opens from the menu, its links stay in the package, nothing is called."""

from pathlib import Path

import pytest
from PySide6.QtCore import QUrl
from PySide6.QtGui import QAction, QDesktopServices
from PySide6.QtWidgets import QApplication, QTextBrowser

from gui.app.help_pages import HelpDialog, HelpPage, page_name
from tests.support.gui.stage import WindowHarness


@pytest.fixture
def opened(monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """The files that were handed to the computer's browser."""
    files: list[Path] = []
    monkeypatch.setattr(
        QDesktopServices, "openUrl", lambda url: files.append(Path(url.toLocalFile()))
    )
    return files


@pytest.mark.parametrize("page", list(HelpPage), ids=lambda page: page.value)
def test_every_page_opens_from_the_menu(
    page: HelpPage, stage: WindowHarness, opened: list[Path]
) -> None:
    actions = stage.window.findChildren(QAction)
    next(action for action in actions if action.text() == page_name(page)).trigger()
    stage.settle()
    dialog = QApplication.activeModalWidget()
    if page.path.suffix == ".html":
        assert opened == [page.path]
        assert dialog is None
        return
    assert isinstance(dialog, HelpDialog)
    assert dialog.path == page.path
    assert len(dialog.windowTitle()) > 5
    assert len(dialog.findChild(QTextBrowser).toPlainText()) > 1000
    dialog.close()


def test_every_file_of_help_for_people_has_an_entry() -> None:
    folder = HelpPage.WINDOW.path.parent
    pages = {path.name for path in folder.iterdir() if path.suffix in (".md", ".html")}
    assert pages == {page.value for page in HelpPage}


def test_links_lead_to_other_pages_and_back(stage: WindowHarness, opened: list[Path]) -> None:
    dialog = HelpDialog(HelpPage.WINDOW.path, stage.window)
    text = dialog.findChild(QTextBrowser)
    text.anchorClicked.emit(QUrl("../../measure/docs/accuracy.md"))
    assert dialog.path.name == "accuracy.md"
    assert "°" in text.toPlainText()
    text.backward()
    assert dialog.path == HelpPage.WINDOW.path
    text.anchorClicked.emit(QUrl("measure-at-home.html"))
    assert [path.name for path in opened] == ["measure-at-home.html"]


@pytest.mark.parametrize("link", ["http://127.0.0.1:9/page.md", "gone.md", "/etc"])
def test_links_that_lead_elsewhere_do_nothing(
    link: str, stage: WindowHarness, opened: list[Path]
) -> None:
    dialog = HelpDialog(HelpPage.WINDOW.path, stage.window)
    dialog.findChild(QTextBrowser).anchorClicked.emit(QUrl(link))
    assert dialog.path == HelpPage.WINDOW.path
    assert opened == []
