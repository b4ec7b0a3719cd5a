"""Work beside the window: in order, answered in the window's thread, never lost at closing."""

import sys
import threading
import time
from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gui.workers.worker_thread import BackgroundWorker
from measure.errors import DataError


@pytest.fixture
def worker(qapp: QApplication) -> Iterator[BackgroundWorker]:
    made = BackgroundWorker("tested")
    yield made
    made.close(2.0)


def test_jobs_run_elsewhere_in_order_and_are_answered_here(
    worker: BackgroundWorker, qtbot: QtBot
) -> None:
    seen: list[tuple[int, bool]] = []
    here = threading.get_ident()
    worked_in: set[int] = set()

    def job(number: int) -> int:
        worked_in.add(threading.get_ident())
        return number

    for number in range(20):
        worker.run(
            lambda number=number: job(number),  # type: ignore[misc]
            lambda answer: seen.append((answer, threading.get_ident() == here)),
        )
    qtbot.waitUntil(lambda: not worker.busy, timeout=3000)
    assert seen == [(number, True) for number in range(20)]
    assert len(worked_in) == 1
    assert here not in worked_in


def test_an_error_on_purpose_is_told_in_its_words(worker: BackgroundWorker, qtbot: QtBot) -> None:
    told: list[str] = []

    def fail() -> None:
        raise DataError("The store is damaged. Restore a backup.")

    worker.run(fail, failed=told.append)
    qtbot.waitUntil(lambda: bool(told), timeout=3000)
    assert told == ["The store is damaged. Restore a backup."]


def test_a_mistake_of_ours_also_reaches_the_crash_report(
    worker: BackgroundWorker, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    crashed: list[type[BaseException]] = []
    monkeypatch.setattr(sys, "excepthook", lambda kind, error, trace: crashed.append(kind))
    told: list[str] = []
    worker.run(lambda: 1 / 0, failed=told.append)
    qtbot.waitUntil(lambda: bool(crashed), timeout=3000)
    assert crashed == [ZeroDivisionError]
    assert told == ["division by zero"]


def test_closing_finishes_what_waits(qapp: QApplication) -> None:
    worker = BackgroundWorker("closing")
    done: list[int] = []
    for number in range(5):
        worker.run(lambda number=number: time.sleep(0.01) or number, done.append)  # type: ignore[misc]
    assert worker.close(3.0)
    assert done == [0, 1, 2, 3, 4]
    worker.run(lambda: 9, done.append)
    worker.collect()
    assert 9 not in done


def test_closing_does_not_wait_for_ever(qapp: QApplication) -> None:
    worker = BackgroundWorker("stuck")
    let_go = threading.Event()
    worker.run(lambda: let_go.wait(10))
    before = time.monotonic()
    assert not worker.close(0.1)
    assert time.monotonic() - before < 2.0
    let_go.set()
