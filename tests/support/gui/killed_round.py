"""A round that is led on by a fast clock in a process of its own, to be killed.

    python killed_round.py FOLDER

Prints a line for every repetition that is in the store in FOLDER, and goes on until it is killed.
"""

import sys
from pathlib import Path

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from gui.app.application import configure_application
from gui.app.window_pages import MainPage
from measure.storage.store import Store
from tests.support.gui.stage import WindowHarness


def main(folder: Path) -> int:
    """Lead a round in a window until somebody ends this process."""
    application = QApplication(sys.argv[:1])
    configure_application(application)
    stage = WindowHarness(open_store=lambda: Store.open(folder / "sessions.sqlite"))
    stage.window.go(MainPage.EXERCISES)
    stage.settle()
    exercises = stage.window.exercises
    exercises.today.start.click()

    def say_saved() -> None:
        stage.services.records.run(lambda: print("saved", flush=True))

    exercises.rounds.round.progressed.connect(say_saved)
    timer = QTimer(interval=5)
    timer.timeout.connect(lambda: stage.pass_seconds(0.5))
    timer.start()
    return int(application.exec())


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
