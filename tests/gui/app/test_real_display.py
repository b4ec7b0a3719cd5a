"""The window on a display of its own, not the stand-in that the other tests use."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

SCRIPT = Path(__file__).parents[2] / "support" / "gui" / "closing_window.py"
ROOT = Path(__file__).parents[3]


def test_the_window_opens_measures_and_closes_on_a_display(tmp_path: Path) -> None:
    if shutil.which("xvfb-run") is None:
        pytest.skip("not on this system: the xvfb-run program")
    folder = tmp_path / "data"
    folder.mkdir()
    without = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM", "XDG_RUNTIME_DIR")
    done = subprocess.run(
        ["xvfb-run", "-a", sys.executable, str(SCRIPT), str(folder), "2500", "0"],
        env={
            **{name: value for name, value in os.environ.items() if name not in without},
            "QT_QPA_PLATFORM": "xcb",
            "PYTHONPATH": str(ROOT),
            "XDG_RUNTIME_DIR": str(tmp_path),
        },
        capture_output=True,
        text=True,
        timeout=100,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert "Traceback" not in done.stderr
    assert json.loads(done.stdout.splitlines()[-1])["captured"] >= 1
