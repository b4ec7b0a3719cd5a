"""`thawline app` as it is typed: a window opens, a second one is refused, closing ends it."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import QLockFile

from measure.cli.main import main

#: Runs the command line; a timer closes the window as a person would.
WINDOW = """
import sys
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from measure.cli.main import main
application = QApplication(["thawline"])
shown = []
def close():
    for window in application.topLevelWidgets():
        if window.isVisible():
            shown.append(window.windowTitle())
            window.close()
QTimer.singleShot(500, close)
code = main(["app", *sys.argv[1:]])
print(shown)
sys.exit(code)
"""


def opened(data: Path, *arguments: str) -> "subprocess.CompletedProcess[str]":
    settings = dict(os.environ, THAWLINE_DATA=str(data), QT_QPA_PLATFORM="offscreen")
    return subprocess.run(
        [sys.executable, "-c", WINDOW, *arguments],
        env=settings,
        capture_output=True,
        text=True,
        timeout=60,
    )


def test_the_window_opens_and_closes(tmp_path: Path) -> None:
    done = opened(tmp_path / "data")
    assert done.returncode == 0, done.stderr
    assert "Thawline" in done.stdout
    assert "Traceback" not in done.stderr


def test_a_second_window_is_refused(tmp_path: Path) -> None:
    held = QLockFile(str(tmp_path / "window.lock"))
    assert held.tryLock(100)
    try:
        done = opened(tmp_path)
    finally:
        held.unlock()
    assert done.returncode == 1
    assert "already open" in done.stderr


def test_a_clip_that_is_not_there(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["app", "--source", "gone.mp4"]) == 2
    assert "gone.mp4" in capsys.readouterr().err
