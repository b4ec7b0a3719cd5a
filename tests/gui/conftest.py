"""A window on a stage: scripted engine, store in memory, own settings file."""

import gc
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from gui.app.application import configure_application
from gui.protocol.red_flags import ScreeningAnswer
from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from gui.workers.garbage_collection import GuiThreadGarbageCollection
from measure.domain.landmarks import Side
from measure.storage.store import Store
from tests.support.gui.measuring_steps import screening_today
from tests.support.gui.stage import WindowHarness

Place = Callable[[QWidget, tuple[int, int]], QWidget]


@pytest.fixture(scope="session")
def qapp_cls() -> type[QApplication]:
    return QApplication


@pytest.fixture(scope="module", autouse=True)
def collected_here() -> Iterator[None]:
    """After a file of tests nothing of Qt is left for a thread of other tests to take away."""
    yield
    application = QApplication.instance()
    collector = None if application is None else application.findChild(GuiThreadGarbageCollection)
    if collector is not None:
        collector.stop()
    else:
        gc.collect()


@pytest.fixture
def appearance(qapp: QApplication) -> Appearance:
    made = Appearance(Scheme.LIGHT)
    made.apply()
    return made


@pytest.fixture
def stage(qapp: QApplication, qtbot: QtBot) -> Iterator[WindowHarness]:
    """A stage whose person has answered the safety questions today."""
    configure_application(qapp)
    made = WindowHarness()
    person = made.keeper.add_person("Rowan", (Side.LEFT,))
    made.store.save_screening(screening_today(person))
    made.window.measure.start.use_at_home()
    made.window.measure.people.load()
    made.settle()
    yield made
    made.close()


@pytest.fixture
def stored_stage(stage: WindowHarness, data_folder: Path) -> WindowHarness:
    """A stage whose person is in the store of an own data folder too, as calibration needs it."""
    with Store.open() as store:
        for person in stage.store.people():
            store.save_person(person)
    return stage


@pytest.fixture
def new_stage(qapp: QApplication, qtbot: QtBot) -> Iterator[WindowHarness]:
    """A stage on its very first start."""
    configure_application(qapp)
    made = WindowHarness()
    yield made
    made.close()


@pytest.fixture
def press(stage: WindowHarness, qtbot: QtBot) -> Callable[..., None]:
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
def none_fits() -> tuple[ScreeningAnswer, ...]:
    """The answers that lead through the first check."""
    return (
        ScreeningAnswer.NONE_FITS,
        ScreeningAnswer.NONE_FITS,
        ScreeningAnswer.NONE_FITS,
    )


@pytest.fixture
def placed(qtbot: QtBot) -> Place:
    """Put a widget into a window of a size and show it; the windows live as long as the test."""
    windows = []

    def place(widget: QWidget, size: tuple[int, int]) -> QWidget:
        window = QWidget()
        layout = QVBoxLayout(window)
        layout.addWidget(widget)
        layout.addStretch(1)
        window.resize(*size)
        qtbot.addWidget(window)
        window.show()
        qtbot.waitExposed(window)
        windows.append(window)
        return window

    return place
