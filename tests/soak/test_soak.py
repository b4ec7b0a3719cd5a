"""A short soak with a scripted camera; `make soak` takes an hour and the real network."""

import json
import os
import re
import subprocess
import sys
from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest

from tests.soak.run import Soak, Tenth, faults
from tests.soak.usage import Usage

ROOT = Path(__file__).parents[2]

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="not on this system: /proc")

#: At five times the real speed this is a minute and a half of measuring, and the warming up.
MINUTES = 0.3


@pytest.mark.timeout(500)
def test_a_short_soak_saves_every_trial_and_grows_nowhere() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "tests.soak.run", "--scripted", "--minutes", str(MINUTES)],
        env={**os.environ, "QT_QPA_PLATFORM": "offscreen", "PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        timeout=450,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    assert "Traceback" not in done.stderr, done.stderr
    words = re.search(r"(\d+) trials captured, (\d+) saved", done.stdout.splitlines()[-1])
    assert words is not None
    assert int(words[1]) == int(words[2]) > 0


def run(*tenths: Tenth, captured: int = 2) -> Soak:
    """A soak that saw these tenths, each many times."""
    made = Soak.__new__(Soak)
    made.tenths = list(tenths)
    made.captured = {(0, number) for number in range(captured)}
    made.troubles = Counter()
    return made


def tenth(
    *,
    rest_mb: float = 200.0,
    work_mb: float = 380.0,
    handles: int = 29,
    threads: int = 30,
    busy: int = 50,
) -> Tenth:
    """A tenth of a hundred looks, in so many of which a trial was being settled."""
    at_rest = Usage(memory_mb=rest_mb, handles=handles, threads=20, processes=3)
    usages = [at_rest] * (100 - busy) + [
        replace(at_rest, memory_mb=work_mb, threads=threads)
    ] * busy
    return Tenth(usages=usages, frames=100, seconds=10.0)


def test_what_stays_as_it_was_is_no_fault() -> None:
    assert faults(run(*[tenth()] * 10), 2, rate_counts=True) == []


@pytest.mark.parametrize("busy", [10, 90])
def test_how_busy_a_process_was_is_no_growth(busy: int) -> None:
    tenths = [*[tenth()] * 9, tenth(busy=busy)]
    assert faults(run(*tenths), 2, rate_counts=True) == []


@pytest.mark.parametrize(
    ("last", "saved", "words"),
    [
        (tenth(), 1, "2 trials were captured and 1 saved"),
        (tenth(rest_mb=221.0), 2, "memory at rest grew by 21.0 MB"),
        (tenth(work_mb=401.0), 2, "memory at work grew by 21.0 MB"),
        (tenth(threads=34), 2, "threads at work became more"),
        (tenth(handles=40), 2, "handles grew by 11"),
        (replace(tenth(), frames=0), 2, "no pictures came"),
        (replace(tenth(), frames=79), 2, "pictures became rarer: 10.0 a second, then 7.9"),
    ],
)
def test_each_fault_is_found(last: Tenth, saved: int, words: str) -> None:
    told = faults(run(*[tenth()] * 9, last), saved, rate_counts=True)
    assert words in told[0]


#: In a small process of its own: a big one has room from before, and nothing need grow.
USAGE_TRIAL = """
import json, os, subprocess
from dataclasses import asdict
from tests.soak.usage import usage
before = usage()
held = bytearray(b"1") * 30_000_000
with open(os.devnull) as _, subprocess.Popen(["sleep", "60"]) as child:
    now = usage()
    child.kill()
print(json.dumps([asdict(before), asdict(now)]))
"""


def test_usage_sees_memory_handles_and_children() -> None:
    done = subprocess.run(
        [sys.executable, "-c", USAGE_TRIAL],
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        timeout=60,
        check=True,
    )
    before, now = (Usage(**told) for told in json.loads(done.stdout))
    assert 25 < now.memory_mb - before.memory_mb < 40
    assert now.processes == before.processes + 1
    assert now.handles > before.handles + 1
