"""Backup and restore from the window, on a real data folder; a restore can be undone."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QDialog, QFileDialog

from gui.pages.settings.backups import BackupPage
from gui.pages.settings.data_page import DataPage
from gui.session.repository import SessionRepository
from measure.storage.store import Store
from tests.support.gui.stage import WindowHarness


@pytest.fixture
def page(stage: WindowHarness, data_folder: Path) -> Iterator[BackupPage]:
    """The page of a window whose store is in the data folder."""
    repository = SessionRepository(Store.open)
    stage.services.keeper = repository
    stage.services.records.run(lambda: repository.add_person("Rowan"))
    stage.window.show_data(DataPage.BACKUP)
    stage.settle()
    yield stage.window.settings.backups
    stage.services.records.run(repository.close)
    stage.settle()


def names() -> list[str]:
    with Store.open() as store:
        return [person.pseudonym for person in store.people()]


def choose_file(monkeypatch: pytest.MonkeyPatch, path: Path) -> None:
    for name in ("getSaveFileName", "getOpenFileName"):
        monkeypatch.setattr(QFileDialog, name, lambda *_: (str(path), ""))


def test_a_backup_is_restored_and_the_restore_undone(
    stage: WindowHarness, page: BackupPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    copy = tmp_path / "copy.sqlite"
    choose_file(monkeypatch, copy)
    page.save.click()
    stage.settle()
    assert "It holds 1 person, " in page.outcome.text()
    assert copy.is_file()
    day = stage.services.today()
    assert stage.services.settings.latest_backup == ("copy.sqlite", day)
    assert page.latest.isVisible()
    assert "copy.sqlite" in page.latest.text()
    stage.services.records.run(lambda: stage.services.keeper.add_person("Hazel"))
    stage.settle()
    assert names() == ["Hazel", "Rowan"]
    # A backup may have been named without an ending: every file can be chosen.
    opened: list[tuple[object, ...]] = []
    monkeypatch.setattr(
        QFileDialog, "getOpenFileName", lambda *asked: (opened.append(asked), (str(copy), ""))[1]
    )
    page.restore.click()
    stage.settle()
    assert not any("*" in str(part) for part in opened[0][2:])
    (asked,) = [one for one in stage.window.findChildren(QDialog) if one.isVisible()]
    assert names() == ["Hazel", "Rowan"]
    asked.accept()
    stage.settle()
    assert names() == ["Rowan"]
    stage.window.messages.undo.click()
    stage.settle()
    assert names() == ["Hazel", "Rowan"]


def test_what_is_no_backup_changes_nothing(
    stage: WindowHarness, page: BackupPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "notes.sqlite").write_text("notes", encoding="utf-8")
    choose_file(monkeypatch, tmp_path / "notes.sqlite")
    page.restore.click()
    stage.settle()
    assert "notes.sqlite" in page.outcome.text()
    assert page.restore.isEnabled()
    assert not page.latest.isVisible()
    page.save.click()
    stage.settle()
    assert "exists already" in page.outcome.text()
    assert names() == ["Rowan"]
