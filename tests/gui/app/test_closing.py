"""The window can be closed at any moment: it ends in time, and nothing captured is lost."""

import json
import os
import random
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from measure.storage.store import Store

SCRIPT = Path(__file__).parents[2] / "support" / "gui" / "closing_window.py"
ROOT = Path(__file__).parents[3]
CLOSINGS = 20
#: Longest time from the order to close to the end of the process.
LONGEST_S = 5.0


def close_once(folder: Path, after_ms: int, page: int) -> tuple[int, float, int]:
    """Return exit code, seconds from the order to close to the end, and trials captured."""
    folder.mkdir()
    done = subprocess.run(
        [sys.executable, str(SCRIPT), str(folder), str(after_ms), str(page)],
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen", "PYTHONPATH": str(ROOT)},
        cwd=folder,
        capture_output=True,
        text=True,
        timeout=120,
    )
    ended_s = time.monotonic()
    assert "Traceback" not in done.stderr, done.stderr
    assert "Destroyed while thread" not in done.stderr, done.stderr
    assert done.stdout, f"exit code {done.returncode}\n{done.stderr}"
    told = json.loads(done.stdout.splitlines()[-1])
    return done.returncode, ended_s - told["told_s"], told["captured"]


def trials_kept(folder: Path) -> int:
    with Store.open(folder / "sessions.sqlite") as store:
        (person,) = store.people()
        return sum(len(each.measurement.trials) for each in store.measurements(person.id))


@pytest.mark.timeout(900)
def test_twenty_closings_at_random_moments_end_in_time_and_lose_nothing(tmp_path: Path) -> None:
    chance = random.Random(11)
    moments = [
        (tmp_path / str(number), chance.randrange(0, 1800), chance.choice((0, 0, 0, 1, 2, 3, 4)))
        for number in range(CLOSINGS)
    ]
    with ThreadPoolExecutor(2) as two:
        results = list(two.map(lambda each: close_once(*each), moments))
    captured_at_all = 0
    for (folder, after_ms, page), (code, took_s, captured) in zip(moments, results, strict=True):
        told = f"after {after_ms} ms on page {page}"
        assert code == 0, told
        assert took_s < LONGEST_S, told
        assert trials_kept(folder) == captured, told
        captured_at_all += captured
    assert captured_at_all > 0
