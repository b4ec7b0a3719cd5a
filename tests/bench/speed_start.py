"""Part i: start of `thawline --help` over an interpreter that does nothing."""

import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from statistics import median

from tests.bench.speed_effort import Effort
from tests.bench.speed_table import Row

_HELP = "import sys; from measure.cli.main import main; sys.exit(main(['--help']))"
#: Starts of each kind in one round.
_STARTS = 7


def help_start(folder: Path, effort: Effort) -> Iterator[Row]:
    """Start the help and `python -c pass` in turns, and compare the middle times."""
    help_s, bare_s = [], []
    for _ in range(_STARTS * effort.rounds):
        bare_s.append(_start_s("pass"))
        help_s.append(_start_s(_HELP))
    yield Row(
        mark="i",
        what="`thawline --help` over an interpreter that does nothing: seconds to start and end",
        goal="at most 0.2 s",
        measured=f"{median(help_s) / median(bare_s):.1f} times: {median(help_s):.2f} s over "
        f"{median(bare_s):.3f} s ({len(help_s)} starts of each, the middle one)",
    )


def _start_s(code: str) -> float:
    began = time.perf_counter()
    subprocess.run([sys.executable, "-c", code], stdout=subprocess.DEVNULL, check=True)
    return time.perf_counter() - began
