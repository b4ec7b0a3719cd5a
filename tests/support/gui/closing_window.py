"""A window that measures by itself and is closed after a while; run by the closing tests.

Prints how many trials the engine had captured, and when the window was told to close, as JSON.
"""

import json
import sys
import time
from pathlib import Path

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication

from gui.app.application import configure_application
from gui.app.main_window import MainWindow
from gui.app.window_pages import MainPage
from gui.session.audio_cues import AudioCues
from gui.session.engine_feed import EngineBridge
from gui.session.repository import SessionRepository
from gui.session.services import Services
from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.workers.worker_thread import BackgroundWorker
from measure.domain.measurements import Measurement
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome
from measure.storage.store import Store
from tests.support.gui.measuring_steps import begin_single
from tests.support.gui.scripted_engine import PlayingEngine
from tests.support.gui.stage import DrawnThumbnails, read_drawn_clips


class _Counting(PlayingEngine):
    """Notes how many trials it captured, and closes as slowly as a real one."""

    captured = 0

    def capture(self, value: float) -> None:
        super().capture(value)
        _Counting.captured += 1

    def close(self, timeout_s: float) -> Measurement | None:
        time.sleep(min(0.2, timeout_s))
        return super().close(timeout_s)


def main(folder: Path, close_after_ms: int, page: int) -> int:
    application = QApplication([])
    configure_application(application)
    settings = WindowSettings(folder / "window.ini")
    appearance = Appearance()
    appearance.apply()
    keeper = SessionRepository(lambda: Store.open(folder / "sessions.sqlite"))
    records = BackgroundWorker("records")
    people: list[object] = []
    records.run(lambda: keeper.store.people() or keeper.add_person("Rowan"), people.append)
    while not people:
        application.processEvents()
    services = Services(
        appearance=appearance,
        settings=settings,
        feed=EngineBridge(lambda: _Counting(trial_s=0.25)),
        cues=AudioCues(tones=True, speech=True),
        keeper=keeper,
        records=records,
        slow_worker=BackgroundWorker("slow"),
        find_cameras=lambda: ("Desk Camera",),
        read_clips=read_drawn_clips,
        open_clip=lambda path: DrawnThumbnails(),
    )
    window = MainWindow(services)
    window.show()

    def begin() -> None:
        person = window.measure.people.person
        if person is None:
            QTimer.singleShot(10, begin)
            return
        window.measure.people.save_screening(ScreeningOccasion.BEFORE, ScreeningOutcome.CLEAR)
        window.go(page)
        if page == MainPage.MEASURE:
            begin_single(window.measure)
        elif page == MainPage.CLIPS:
            window.clips.open([Path("flexion-right.mp4")])
            QTimer.singleShot(100, window.clips.read_or_stop)

    QTimer.singleShot(0, begin)
    told: list[float] = []

    def close() -> None:
        told.append(time.monotonic())
        window.close()

    QTimer.singleShot(close_after_ms, close)
    code = application.exec()
    print(json.dumps({"captured": _Counting.captured, "told_s": told[0]}))
    return int(code)


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])))
