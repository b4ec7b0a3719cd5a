"""Every dialog in both languages, at every text size: nothing is cut, its way out is seen."""

import pytest
from PySide6.QtWidgets import QApplication, QLabel

from gui.app.about import about_dialog
from gui.app.application import configure_application
from gui.style.palette import Scheme
from measure.system.versions import software
from tests.support.fitting import hidden_main_buttons, misfits
from tests.support.gui.dialogs import dialogs
from tests.support.gui.screenshots import LANGUAGES, PERCENTS, SIZES, language_in_force
from tests.support.gui.stage import WindowHarness


@pytest.mark.parametrize("percent", PERCENTS)
@pytest.mark.parametrize("language", LANGUAGES)
def test_every_dialog_fits(qapp: QApplication, language: str, percent: int) -> None:
    configure_application(qapp)
    wrong: list[str] = []
    names: list[str] = []
    with language_in_force(qapp, language):
        stage = WindowHarness(Scheme.LIGHT, percent, SIZES[0])
        stage.keeper.add_person("Rowan")
        stage.window.measure.people.load()
        stage.settle()
        for name, shown in dialogs(stage):
            names.append(name)
            wrong += [f"{name}: {what}" for what in misfits(shown)]
            wrong += [f"{name}: {what}" for what in hidden_main_buttons(shown)]
            (room, needed) = (stage.window.size(), shown.size())
            assert needed.width() <= room.width(), name
            assert needed.height() <= room.height(), name
        stage.close()
    assert names == ["about", "keys", "crash", "help", "delete", "person", "restore", "session"]
    assert not wrong, "\n".join(wrong)


def test_every_version_that_makes_a_number_is_named(stage: WindowHarness) -> None:
    said = " ".join(words.text() for words in about_dialog(stage.window).findChildren(QLabel))
    for name, version in software().items():
        assert version in said, name
