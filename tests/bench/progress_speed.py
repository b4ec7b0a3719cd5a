"""What ten years of daily sessions of five people cost: opening, progress, report.

Part of ``python -m tests.bench.bench_progress --speed``.
"""

import os
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

import numpy as np

from measure.body import Side
from measure.history import History
from measure.movements import Movement
from measure.progress import progress_of
from measure.report import report_html
from measure.store import Store
from tests.progress_histories import day, history
from tests.record_samples import person

_Result = TypeVar("_Result")

_YEARS, _PEOPLE = 10, 5
_NAMES = ("Rosa", "Linden", "Sorrel", "Fennel", "Clover")
_TODAY = day(int(_YEARS * 365.25))


def time_ten_years() -> int:
    """Print the seconds that each step takes for one of the people; return the exit code."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "store.sqlite3"
        with Store.open(path) as store:
            for name in _NAMES[:_PEOPLE]:
                store.merge(_long_history(name))
        print(f"{_PEOPLE} people, {_YEARS} years of daily sessions, all movements on both sides;")
        print(f"store of {path.stat().st_size / 1e6:.0f} MB. Wall clock and processor seconds:\n")
        print("| step | wall | processor |\n|-|-|-|")
        known = _timed("open the store and read a person's history", lambda: _read(path))
        _timed("progress of every movement and side", lambda: progress_of(known, _TODAY))
        _timed("report as HTML, progress included", lambda: report_html(known, _TODAY))
        _timed("report as PDF, progress included", lambda: _pdf(known))
    return 0


def _long_history(name: str) -> History:
    random = np.random.default_rng(len(name))
    days = range(int(_YEARS * 365.25))
    return history(
        {
            (movement, side): [
                (number, float(random.normal(0.3 if reach else 90.0, 0.03 if reach else 4.0)))
                for number in days
            ]
            for movement in Movement
            for reach in [movement is Movement.HAND_BEHIND_BACK]
            for side in Side
        },
        who=person(name),
    )


def _read(path: Path) -> History:
    with Store.open(path) as store:
        return store.history(store.find_person(_NAMES[0]).id)


def _pdf(known: History) -> bytes:
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from gui.report_file import report_bytes

    return report_bytes(known, _TODAY, ".pdf")[0]


def _timed(name: str, step: Callable[[], _Result]) -> _Result:
    began_s, used_s = time.perf_counter(), time.process_time()
    result = step()
    wall_s, busy_s = time.perf_counter() - began_s, time.process_time() - used_s
    print(f"| {name} | {wall_s:.1f} | {busy_s:.1f} |", flush=True)
    return result
