"""Export and import as the commands do it: no file is overwritten, nothing is lost."""

import json
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication, QFileDialog

from gui.app.application import configure_application
from gui.app.window_pages import MainPage
from gui.pages.settings.data_page import DataPage
from gui.pages.settings.transfer import TransferPage
from gui.style.palette import Scheme
from measure.export.formats import Format
from tests.support.gui.demo_history import demo_history
from tests.support.gui.screenshots import PERCENTS, SIZES
from tests.support.gui.stage import TODAY, WindowHarness


@pytest.fixture
def page(stage: WindowHarness) -> TransferPage:
    rowan = stage.store.people()[0]
    stage.store.merge(demo_history(rowan, TODAY, weeks=2))
    stage.window.show_data(DataPage.TRANSFER)
    stage.settle()
    return stage.window.settings.transfer


def choose_file(monkeypatch: pytest.MonkeyPatch, path: Path) -> None:
    for name in ("getSaveFileName", "getOpenFileName"):
        monkeypatch.setattr(QFileDialog, name, lambda *_: (str(path), ""))


@pytest.mark.parametrize("kind", list(Format))
def test_every_format_is_written(
    stage: WindowHarness,
    page: TransferPage,
    kind: Format,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    target = tmp_path / "rowan.file"
    choose_file(monkeypatch, target)
    page.kind.button(kind).click()
    assert page.decimal.isVisible() is (kind is Format.SPREADSHEET)
    page.to_file.click()
    stage.settle()
    stage.settle()
    assert target.stat().st_size > 500
    assert "Exported to rowan.file" in page.outcome.text()


def test_a_file_that_is_there_is_left_as_it_is(
    stage: WindowHarness, page: TransferPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "rowan.csv"
    target.write_text("mine", encoding="utf-8")
    choose_file(monkeypatch, target)
    page.to_file.click()
    stage.settle()
    stage.settle()
    assert target.read_text(encoding="utf-8") == "mine"
    assert "exists already" in page.outcome.text()


def test_an_export_is_imported_again(
    stage: WindowHarness, page: TransferPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    rowan = stage.store.people()[0]
    before = stage.store.history(rowan.id)
    choose_file(monkeypatch, tmp_path / "rowan.json")
    page.kind.button(Format.JSON).click()
    page.to_file.click()
    stage.settle()
    stage.settle()
    assert json.loads((tmp_path / "rowan.json").read_text(encoding="utf-8"))
    stage.store.delete_person(rowan.id)
    page.hide()
    page.show()
    stage.settle()
    assert not page.to_file.isEnabled()
    page.from_file.click()
    stage.settle()
    stage.settle()
    assert stage.store.history(rowan.id) == before
    assert "new person: Rowan" in page.outcome.text()
    assert page.person.value == rowan.id
    assert page.to_file.isEnabled()


def test_a_file_that_is_no_history_is_said(
    stage: WindowHarness, page: TransferPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "x.json").write_text("{}", encoding="utf-8")
    choose_file(monkeypatch, tmp_path / "x.json")
    page.from_file.click()
    stage.settle()
    assert page.outcome.text()
    assert len(stage.store.people()) == 1


@pytest.mark.parametrize("percent", PERCENTS)
def test_export_and_import_are_both_reached_without_scrolling(
    qapp: QApplication, percent: int
) -> None:
    configure_application(qapp)
    stage = WindowHarness(Scheme.LIGHT, percent, SIZES[0])
    stage.keeper.add_person("Rowan")
    stage.window.show_data(DataPage.TRANSFER)
    stage.settle()
    page = stage.window.settings.transfer
    for way in (page.to_file, page.from_file):
        assert way.visibleRegion().boundingRect() == way.rect()
    stage.close()


def test_leaving_leads_back_to_where_the_page_was_opened(stage: WindowHarness) -> None:
    window = stage.window
    window.go(MainPage.PROGRESS)
    window.show_data(DataPage.TRANSFER)
    stage.settle()
    window.settings.transfer.leave.click()
    stage.settle()
    assert window.progress.isVisible()
    window.show_settings()
    window.settings.settings.ways[DataPage.TRANSFER].click()
    stage.settle()
    window.settings.transfer.leave.click()
    assert window.settings.settings.isVisible()
