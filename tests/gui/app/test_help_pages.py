"""Pages of help: each opens from the menu, its links stay in the package, nothing is called."""

from pathlib import Path

import pytest
from PySide6.QtCore import QUrl
from PySide6.QtGui import QAction, QDesktopServices, QFont, QTextFormat, QTextTable
from PySide6.QtWidgets import QApplication, QTextBrowser

from gui.app.help_pages import HelpDialog, HelpPage, page_name, page_title
from gui.app.help_text import heading_and_text
from gui.style.measures import BODY_PX
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
    assert dialog.windowTitle() == dialog.title.text() == page_title(page)
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
    assert dialog.title.text() == "How far to trust a reading"
    assert not dialog.back.isHidden()
    dialog.back.click()
    assert dialog.path == HelpPage.WINDOW.path
    assert dialog.back.isHidden()
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


@pytest.mark.parametrize(
    "page", [page for page in HelpPage if page.path.suffix == ".md"], ids=lambda page: page.value
)
def test_a_page_begins_for_a_patient_and_is_called_what_the_list_calls_it(page: HelpPage) -> None:
    heading, text = heading_and_text(page.path.read_text(encoding="utf-8"))
    assert heading == page_title(page)
    first = text.split(".", 1)[0]
    assert "`" not in first
    assert len(first) > 20


@pytest.mark.parametrize(
    "page", [page for page in HelpPage if page.path.suffix == ".md"], ids=lambda page: page.value
)
def test_a_page_is_set_in_the_windows_own_type(page: HelpPage, stage: WindowHarness) -> None:
    dialog = HelpDialog(page.path, stage.window)
    document = dialog.findChild(QTextBrowser).document()
    sizes, block = set(), document.begin()
    while block.isValid():
        for part in block.textFormats():
            assert not part.format.fontFixedPitch(), block.text()
            assert not part.format.hasProperty(QTextFormat.Property.FontSizeAdjustment)
            sizes.add(part.format.property(QTextFormat.Property.FontPixelSize))
        block = block.next()
    assert min(sizes) == BODY_PX
    assert max(sizes) <= BODY_PX * 1.2
    tables = [one for one in document.rootFrame().childFrames() if isinstance(one, QTextTable)]
    for table in tables:
        lines = [
            [
                table.cellAt(line, place).firstCursorPosition().block()
                for place in range(table.columns())
            ]
            for line in range(table.rows())
        ]
        # One of two columns has no heads: terms in bold, and short sentences beside them.
        for term, said in lines if table.columns() == 2 else ():
            assert term.text()
            assert said.text().endswith(".")
            (part,) = term.textFormats()
            assert part.format.fontWeight() == QFont.Weight.Bold
    assert all(table.format().toTableFormat().border() == 0 for table in tables)


def test_a_table_of_terms_is_read_as_sentences() -> None:
    page = "# Words\n\n| word | meaning |\n|---|---|\n| **one note**, low | {said} |\n\nEnd."
    heading, text = heading_and_text(page.format(said=20 * "you may move " + "on"))
    assert heading == "Words"
    long = 20 * "you may move "
    assert " ".join(text.split()) == f"#### One note, low Y{long[1:]}on. End."
    _, short = heading_and_text(page.format(said="you may move"))
    assert short.split("\n")[1:4] == ["|  |  |", "|---|---|", "| One note, low | You may move. |"]
    numbers = "# Figures\n\n| week | degrees |\n|---|---|\n| 1 | 5 |\n"
    assert "| 1 | 5 |" in heading_and_text(numbers)[1]


def test_back_leads_to_where_one_was(stage: WindowHarness) -> None:
    dialog = HelpDialog(HelpPage.WINDOW.path, stage.window)
    dialog.open()
    stage.settle()
    bar = dialog.text.verticalScrollBar()
    assert bar.maximum() > 400
    bar.setValue(250)
    dialog.text.anchorClicked.emit(QUrl("progress.md"))
    stage.settle()
    assert bar.value() == 0
    dialog.back.click()
    stage.settle()
    assert bar.value() == 250
    dialog.close()
