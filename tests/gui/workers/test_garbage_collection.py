"""Rubbish is collected in the window's thread alone."""

import gc
import threading
import weakref
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QObject
from PySide6.QtWidgets import QApplication

from gui.app.application import configure_application
from gui.workers.garbage_collection import GuiThreadGarbageCollection
from gui.workers.worker_thread import BackgroundWorker


@pytest.fixture
def collector(qapp: QApplication) -> Iterator[GuiThreadGarbageCollection]:
    configure_application(qapp)
    found = qapp.findChild(GuiThreadGarbageCollection)
    assert isinstance(found, GuiThreadGarbageCollection)
    yield found
    found.stop()


class Circle(QObject):
    """Refers to itself, so that only the collector can take it away."""

    def __init__(self) -> None:
        super().__init__()
        self.itself = self


def test_a_worker_never_takes_away_what_belongs_to_qt(
    collector: GuiThreadGarbageCollection, qapp: QApplication
) -> None:
    where: list[threading.Thread] = []
    held = Circle()
    weakref.finalize(held, lambda: where.append(threading.current_thread()))
    del held
    worker = BackgroundWorker("worker")
    # Far more than makes Python collect by itself.
    worker.run(lambda: [[number] for number in range(200_000)])
    assert worker.close(30)
    assert where == []
    collector.collect_due()
    gc.collect()
    assert where == [threading.main_thread()]


def test_it_collects_when_it_is_due_and_only_then(collector: GuiThreadGarbageCollection) -> None:
    gc.collect()
    held = weakref.ref(Circle())
    collector.collect_due()
    assert held() is not None
    kept = [[number] for number in range(2 * gc.get_threshold()[0])]
    collector.collect_due()
    assert held() is None
    assert kept


def test_preparing_twice_makes_one(
    collector: GuiThreadGarbageCollection, qapp: QApplication
) -> None:
    configure_application(qapp)
    assert qapp.findChildren(GuiThreadGarbageCollection) == [collector]
    assert not gc.isenabled()


def test_stopped_it_leaves_collecting_to_python(qapp: QApplication) -> None:
    configure_application(qapp)
    found = qapp.findChild(GuiThreadGarbageCollection)
    assert isinstance(found, GuiThreadGarbageCollection)
    found.stop()
    assert gc.isenabled()
    assert qapp.findChild(GuiThreadGarbageCollection) is None
