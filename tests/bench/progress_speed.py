"""What ten years of daily sessions of five people cost: opening, progress, curves, report.

Part of ``python -m tests.bench.bench_progress --speed``.
"""

import os
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any, TypeVar

import numpy as np

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History
from measure.progress.overview import Progress, progress_of
from measure.report.page import report_html
from measure.storage.store import Store
from tests.support.progress_histories import day, history
from tests.support.record_samples import person, trial

_Result = TypeVar("_Result")

_YEARS = 10
_NAMES = ("Rosa", "Linden", "Sorrel", "Fennel", "Clover")
_MOVEMENTS = (Movement.FLEXION, Movement.ABDUCTION, Movement.EXTERNAL_ROTATION)
_DAYS = int(_YEARS * 365.25)
_TODAY = day(_DAYS)


def time_ten_years() -> int:
    """Print the seconds that each step takes for one of the people; return the exit code."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "store.sqlite3"
        with Store.open(path) as store:
            for name in _NAMES:
                store.merge(_long_history(name))
        print(
            f"{len(_NAMES)} people, {_YEARS} years of daily sessions, three movements on both "
            f"sides with three trials each; store of {path.stat().st_size / 1e6:.0f} MB.\n"
            "Seconds for one person, and how many times as long as a million steps of a plain "
            "loop took just before, which other computers can be held against:\n"
        )
        print("| step | seconds | of the processor | in plain loops |\n|-|-|-|-|")
        known = _timed("open the store and read the history", lambda: _read(path))
        found = _timed("progress of every movement and side", lambda: progress_of(known, _TODAY))
        _time_page(known, found)
        _timed("report as HTML, progress included", lambda: report_html(known, _TODAY))
        _timed("report as PDF, progress included", lambda: _pdf(known))
    return 0


def _long_history(name: str) -> History:
    random = np.random.default_rng(len(name))
    made = history(
        {
            (movement, side): [(number, float(random.normal(90.0, 4.0))) for number in range(_DAYS)]
            for movement in _MOVEMENTS
            for side in Side
        },
        who=person(name),
    )
    trials = (trial(), trial(), trial())
    return replace(
        made,
        measurements=tuple(
            replace(each, pain_during=k % 5, measurement=replace(each.measurement, trials=trials))
            for k, each in enumerate(made.measurements)
        ),
    )


def _read(path: Path) -> History:
    with Store.open(path) as store:
        return store.history(store.find_person(_NAMES[0]).id)


def _time_page(known: History, found: Progress) -> None:
    """Time the window's page of curves, and its list of every session."""
    from PySide6.QtWidgets import QApplication

    from gui.app.application import configure_application
    from gui.pages.progress.progress_page import ProgressPage
    from tests.support.gui.stage import WindowHarness

    application = QApplication.instance() or QApplication([])
    configure_application(application)
    stage = WindowHarness()
    page: Any = ProgressPage(stage.services)
    page.resize(1280, 800)

    def draw() -> None:
        page.show_history(known, found)
        page.grab()

    def turn_over() -> None:
        page.curves.movement.choose(_MOVEMENTS[1])
        page.curves.movement.picked.emit()
        page.grab()

    def list_all() -> None:
        page.show_details()
        page.grab()

    _timed("curves in the window", draw)
    _timed("curves of another movement", turn_over)
    _timed("every session in the window", list_all)
    page.deleteLater()
    stage.close()


def _pdf(known: History) -> bytes:
    from gui.report.files import report_bytes

    return report_bytes(known, _TODAY, ".pdf")[0]


def _timed(name: str, step: Callable[[], _Result]) -> _Result:
    loop_s = _plain_loop_s()
    began_s, used_s = time.perf_counter(), time.process_time()
    result = step()
    wall_s, busy_s = time.perf_counter() - began_s, time.process_time() - used_s
    print(f"| {name} | {wall_s:.1f} | {busy_s:.1f} | {busy_s / loop_s:.0f} |", flush=True)
    return result


def _plain_loop_s() -> float:
    """Return the processor seconds of a million steps of a plain loop: a yardstick."""
    used_s, total = time.process_time(), 0
    for number in range(1_000_000):
        total += number * number
    return time.process_time() - used_s
