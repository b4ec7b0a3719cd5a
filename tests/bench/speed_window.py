"""Part j: the window's start over an empty window, and to the first picture of its camera."""

import os
import resource
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from statistics import median

import sample_clips
from measure.system.paths import model_folder
from tests.bench.speed_effort import Effort
from tests.bench.speed_table import Row
from tests.support.virtual_screen import virtual_screen

_CLIP = Path(sample_clips.__file__).parent / "clips" / "flexion-left-full.mp4"
#: Starts of each kind in one round.
_STARTS = 5


def window_start(folder: Path, effort: Effort) -> Iterator[Row]:
    """Start an empty window, the window, and the window with a clip for a camera, in turns."""
    empty_s, page_s, picture_s, empty_cpu_s, page_cpu_s = [], [], [], [], []
    with virtual_screen() as display:
        for _ in range(_STARTS * effort.rounds):
            told_s = _times_s(folder, display, "empty")
            empty_s.append(told_s["page"])
            empty_cpu_s.append(told_s["cpu"])
            told_s = _times_s(folder, display, "window")
            page_s.append(told_s["page"])
            page_cpu_s.append(told_s["cpu"])
            told_s = _times_s(folder, display, "camera", str(_CLIP))
            picture_s.append(told_s["picture"] - told_s["page"])
    count = len(page_s)
    yield Row(
        mark="j1",
        what="the window's first page over an empty window: seconds from the order to the screen",
        goal="at most 1.5 s",
        measured=f"{median(page_s) / median(empty_s):.1f} times: {median(page_s):.2f} s over "
        f"{median(empty_s):.2f} s by the clock, {median(page_cpu_s):.2f} s over "
        f"{median(empty_cpu_s):.2f} s of the processor, closing included ({count} starts of each, "
        "the middle one)",
    )
    yield Row(
        mark="j2",
        what="from the first page to the first picture of the camera, by opening the set-up",
        goal="at most 3 s",
        measured=f"{median(picture_s):.2f} s, {median(picture_s) / median(empty_s):.1f} times an "
        f"empty window's start ({count} starts, the middle one)",
    )


def _times_s(folder: Path, display: str, *arguments: str) -> dict[str, float]:
    """Return when the program said each of its words, seconds from its start, and its effort."""
    settings = {
        **os.environ,
        "DISPLAY": display,
        "QT_QPA_PLATFORM": "xcb",
        "THAWLINE_DATA": str(folder / "data"),
        "THAWLINE_MODELS": str(model_folder()),
    }
    before, began = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    times_s = {}
    with subprocess.Popen(
        [sys.executable, "-m", "tests.bench.window_start", *arguments],
        env=settings,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        text=True,
    ) as program:
        assert program.stdout is not None
        for line in program.stdout:
            times_s[line.strip()] = time.perf_counter() - began
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    times_s["cpu"] = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return times_s
