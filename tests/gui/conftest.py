"""A window on a stage: scripted engine, store in memory, own settings file."""

import gc
from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gui.app.application import prepare
from gui.protocol.red_flags import Answer
from gui.workers.garbage_collection import Collector
from measure.domain.landmarks import Side
from tests.support.gui.stage import TODAY, Stage


@pytest.fixture(scope="session")
def qapp_cls() -> type[QApplication]:
    return QApplication


@pytest.fixture(scope="module", autouse=True)
def collected_here() -> Iterator[None]:
    """After a file of tests nothing of Qt is left for a thread of other tests to take away."""
    yield
    application = QApplication.instance()
    collector = None if application is None else application.findChild(Collector)
    if collector is not None:
        collector.stop()
    else:
        gc.collect()


@pytest.fixture
def stage(qapp: QApplication, qtbot: QtBot) -> Iterator[Stage]:
    """A stage whose person has answered the safety questions today."""
    prepare(qapp)
    made = Stage()
    person = made.keeper.add_person("Rowan", Side.LEFT)
    made.services.settings.set_last_check(person.id, TODAY)
    made.window.measure.load_people()
    made.settle()
    yield made
    made.close()


@pytest.fixture
def new_stage(qapp: QApplication, qtbot: QtBot) -> Iterator[Stage]:
    """A stage on its very first start."""
    prepare(qapp)
    made = Stage()
    yield made
    made.close()


@pytest.fixture
def press(stage: Stage, qtbot: QtBot) -> Callable[..., None]:
    """Press a key where the keyboard is, and let what follows arrive."""

    def pressed(key: Qt.Key, text: str = "") -> None:
        target = QApplication.focusWidget() or stage.window
        if text:
            qtbot.keyClicks(target, text)
        else:
            qtbot.keyClick(target, key)
        stage.settle()

    return pressed


@pytest.fixture
def none_fits() -> tuple[Answer, ...]:
    """The answers that lead through the first check."""
    return (Answer.READ, Answer.NONE_FITS, Answer.NONE_FITS, Answer.NONE_FITS)
