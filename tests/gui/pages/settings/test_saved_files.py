"""What is saved is listed as the command lists it."""

from pathlib import Path

from PySide6.QtWidgets import QLabel, QWidget

from gui.pages.settings.data_page import DataPage
from measure.storage.saved_files import DURATIONS
from measure.storage.store import Store
from tests.support.gui.stage import WindowHarness


def test_files_are_listed_with_what_they_are(stage: WindowHarness, data_folder: Path) -> None:
    Store.open().close()
    stage.window.show_data(DataPage.SAVED)
    stage.settle()
    page = stage.window.settings.saved
    texts = [words.text() for words in page.findChildren(QLabel) if words.isVisible()]
    assert str(data_folder) in [words.toolTip() for words in page.findChildren(QLabel)]
    assert texts.count("Can be read by: only you") == 1
    assert "People, bodies, places, sessions, notes, cameras" in texts
    assert any(line.toolTip() == "sessions.sqlite" for line in page.findChildren(QWidget))
    lines = [line for line in page.findChildren(QWidget) if line.toolTip() and line.layout()]
    durations = {words[:1].upper() + words[1:] for words in DURATIONS}
    for line in lines:
        _what, kept, _size = (words.text() for words in line.findChildren(QLabel))
        assert kept in durations, line.toolTip()
    assert texts.count("Until you delete these people") == 1
