"""The report is read, and seen page by page, before it is written or printed."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QTextBlock, QTextDocument
from PySide6.QtWidgets import QFileDialog, QWidget
from pytestqt.qtbot import QtBot

from gui.app.window_pages import MainPage
from gui.pages.report.preview import PaperSheet, RenderedPage, ReportPreviewPage
from gui.style.measures import GAP_PX
from measure.domain.records import Person
from tests.support.gui.demo_history import demo_history
from tests.support.gui.stage import TODAY, WindowHarness


def test_the_report_is_read_in_the_text_size_of_the_settings(stage: WindowHarness) -> None:
    rowan = stage.store.people()[0]
    stage.store.merge(demo_history(rowan, TODAY, weeks=12))
    stage.window.show_report()
    stage.settle()
    stage.settle()
    page = stage.window.report
    assert len(page.sheets) == 1
    assert not page.reading.isVisible()
    page.other_kind.click()
    stage.settle()
    stage.settle()
    assert page.reading.isVisible()
    assert page.write.isEnabled()
    said = page.reading.toPlainText()
    assert said.startswith("Left shoulder: ")
    for words in ("Rowan", "not a medical device", "First and last readings", "Flexion"):
        assert words in said
    assert "\ue000" not in said
    document = page.reading.document()
    sizes = {text_px(block) for block in blocks_of(document)}
    assert min(sizes) == stage.services.appearance.px()
    assert document.idealWidth() <= page.reading.viewport().width()
    stage.services.appearance.choose(percent=200)
    stage.settle()
    stage.settle()
    document = page.reading.document()
    assert min(text_px(block) for block in blocks_of(document)) == stage.services.appearance.px()
    assert document.idealWidth() <= page.reading.viewport().width()


def blocks_of(document: QTextDocument) -> Iterator[QTextBlock]:
    """Yield the paragraphs of a document that have words."""
    block = document.begin()
    while block.isValid():
        if block.text().strip(" \ufffc\u2028"):
            yield block
        block = block.next()


def text_px(block: QTextBlock) -> int:
    return min(form.format.font().pixelSize() for form in block.textFormats())


def test_every_page_is_shown_with_its_words(
    stage: WindowHarness, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    rowan = stage.store.people()[0]
    stage.store.merge(demo_history(rowan, TODAY, weeks=12))
    stage.window.go(MainPage.PROGRESS)
    stage.window.show_report()
    stage.settle()
    stage.settle()
    page = stage.window.report
    assert not page.reading.isVisible()
    assert len(page.sheets) >= 1
    assert page.sheets[0].accessibleName() == f"Page 1 of {len(page.sheets)}"
    assert "Rowan" in page.sheets[0].accessibleDescription()
    assert page.sheets[0].height() > page.sheets[0].width()
    picture = page.sheets[0].grab().toImage().scaled(100, 140)
    shades = {picture.pixelColor(x, y).lightness() // 64 for x in range(100) for y in range(140)}
    assert len(shades) > 1
    target = tmp_path / "rowan.pdf"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(target), ""))
    page.write.click()
    stage.settle()
    stage.settle()
    assert target.read_bytes().startswith(b"%PDF")
    qtbot.keyClick(page, Qt.Key.Key_Escape)
    assert stage.window.progress.isVisible()


def test_without_anybody_there_is_nothing_to_write(new_stage: WindowHarness) -> None:
    new_stage.window.show_report()
    new_stage.settle()
    page = new_stage.window.report
    assert "No one has been measured" in page.state.text()
    assert not page.write.isEnabled()


def shown_report(stage: WindowHarness) -> ReportPreviewPage:
    stage.window.show_report()
    stage.settle()
    stage.settle()
    return stage.window.report


def shown_at(part: QWidget, page: QWidget) -> QRect:
    """Return where a part stands on a page."""
    return QRect(part.mapTo(page, QPoint(0, 0)), part.size())


@pytest.mark.parametrize("percent", [100, 200])
def test_form_and_sheet_stand_apart_from_title_and_foot(stage: WindowHarness, percent: int) -> None:
    stage.services.appearance.choose(percent=percent)
    page = shown_report(stage)
    title, foot = (shown_at(part, page) for part in (page.other_kind, page.leave))
    sheet = shown_at(page._sheet if percent == 200 else page._paper, page)
    for part in (sheet, shown_at(page.form, page)) if percent == 100 else (sheet,):
        assert part.top() - title.bottom() > 2 * GAP_PX
        assert foot.top() - part.bottom() > 2 * GAP_PX
    if percent == 100:
        assert shown_at(page.form, page).right() + 2 * GAP_PX < sheet.left()


def test_the_click_that_ends_the_typing_of_a_question_saves_the_report(
    stage: WindowHarness, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    stage.store.merge(demo_history(stage.store.people()[0], TODAY, weeks=4))
    page = shown_report(stage)
    target = tmp_path / "rowan.html"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(target), ""))
    qtbot.keyClicks(page.form.question, "May I dig again?")
    # The field is left between the press and the release of the mouse.
    qtbot.mousePress(page.write, Qt.MouseButton.LeftButton)
    page.form.question.editingFinished.emit()
    qtbot.mouseRelease(page.write, Qt.MouseButton.LeftButton)
    stage.settle()
    stage.settle()
    assert "May I dig again?" in target.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("kind", "ending", "start"),
    [("HTML (*.html)", ".html", b"<!DOCTYPE"), ("PDF (*.pdf)", ".pdf", b"%PDF")],
)
def test_a_name_without_an_ending_gets_that_of_the_kind_chosen(
    stage: WindowHarness,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    kind: str,
    ending: str,
    start: bytes,
) -> None:
    stage.store.merge(demo_history(stage.store.people()[0], TODAY, weeks=4))
    page = shown_report(stage)
    name = str(tmp_path / "rowan 25.11")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (name, kind))
    page.write.click()
    stage.settle()
    stage.settle()
    assert (tmp_path / f"rowan 25.11{ending}").read_bytes().startswith(start)


def test_a_question_is_its_persons_and_stays_when_the_page_is_left(
    stage: WindowHarness, qtbot: QtBot
) -> None:
    rowan = stage.store.people()[0]
    stage.store.merge(demo_history(rowan, TODAY, weeks=4))
    page = shown_report(stage)
    qtbot.keyClicks(page.form.question, "May I dig again?")
    stage.window.go(MainPage.PROGRESS)
    stage.window.reports.person = Person(id="f" * 32, pseudonym="Fern")
    assert not shown_report(stage).form.question.text()
    stage.window.reports.person = rowan
    assert shown_report(stage).form.question.text() == "May I dig again?"
    # Another language builds the window anew.
    again = ReportPreviewPage(stage.services)
    again.show_report(rowan)
    assert again.form.choices.question == "May I dig again?"
    stage.settle()


def test_a_page_says_where_its_lines_are_so_that_none_is_cut(qtbot: QtBot) -> None:
    picture = QImage(200, 300, QImage.Format.Format_RGB32)
    picture.fill(Qt.GlobalColor.white)
    painter = QPainter(picture)
    painter.fillRect(20, 100, 160, 60, QColor("#f5f5f5"))
    for top in (40, 120):
        painter.fillRect(30, top, 100, 20, Qt.GlobalColor.black)
    painter.end()
    sheet = PaperSheet(RenderedPage(picture, "two lines"))
    qtbot.addWidget(sheet)
    sheet.show()
    sheet.resize(100, 10)
    assert sheet.height() == 150
    assert sheet.fold_spans() == [(20, 31), (60, 71)]
