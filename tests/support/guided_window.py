"""The real window led through a session by clips, as a person leads it; run by tests.

    python -m tests.support.guided_window [--movements flexion ...] [--model-quality full]
                                  [--clinic]
                                  [--pictures FOLDER] [--close-when-captured] CLIP...

Everything is real: the way in, the engine, its processes, the store in `THAWLINE_DATA`. A clip
for each movement and side in turn, the right one first. At the clinic's pace it is the first
movement only, one side after the other. Prints as JSON which pages came, how long the window's
thread was held up while measuring, how long it took from the first picture page to the summary,
and when the window was told to close.
Needs a display, or `QT_QPA_PLATFORM=offscreen`.
"""

import argparse
import json
import sys
import time
from pathlib import Path

from PySide6.QtCore import QObject, Qt, QTimer, Slot
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton, QWidget

from gui.app.main_window import MainWindow
from gui.pages.measuring.measure_page import MeasurePage
from gui.protocol.red_flags import ScreeningAnswer
from measure.cli.main import main as command_line
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.live.events import LiveEvent, LiveEventKind, LiveFrame, Phase

#: The window's thread is asked so often whether it is free.
_BEAT_MS = 10
#: Terms of the sum that tells the computer's pace.
_PACE_TERMS = 50_000
#: A person does something so often.
_ACT_MS = 200
#: A session that takes longer is broken off, seconds.
_LONGEST_S = 1500.0


class Heart(QObject):
    """Beats in the window's thread; late beats tell how long the thread was not free."""

    def __init__(self) -> None:
        super().__init__()
        self.counts = False
        self.longest_s = 0.0
        self.longest_work_s = 0.0
        #: How long the same small piece of work took at different moments, seconds.
        self.paces_s: list[float] = []
        self._timer = QTimer(self)
        self._timer.setTimerType(Qt.TimerType.PreciseTimer)
        self._timer.setInterval(_BEAT_MS)
        self._timer.timeout.connect(self.beat)
        self._last = (time.monotonic(), time.thread_time())
        self._timer.start()

    @Slot()
    def beat(self) -> None:
        now = (time.monotonic(), time.thread_time())
        if self.counts:
            self.longest_s = max(self.longest_s, now[0] - self._last[0])
            self.longest_work_s = max(self.longest_work_s, now[1] - self._last[1])
        self._last = now

    def take_pace(self) -> None:
        """Time a piece of work that is always the same, and leave it out of the window's work."""
        before = (time.monotonic(), time.thread_time())
        sum(range(_PACE_TERMS))
        self.paces_s.append(time.thread_time() - before[1])
        self._last = (
            self._last[0] + time.monotonic() - before[0],
            self._last[1] + self.paces_s[-1],
        )

    def leave_out(self) -> None:
        """Do not count what was done since the last beat: it was not the window's work."""
        self._last = (time.monotonic(), time.thread_time())


class Leader(QObject):
    """Looks at the page that is shown and does what a person would do."""

    def __init__(
        self,
        movements: tuple[Movement, ...],
        pictures: Path | None,
        *,
        clinic: bool,
        close_when_captured: bool,
    ) -> None:
        super().__init__()
        self.heart = Heart()
        self.pages: list[str] = []
        self.frames = 0
        self.closed_s = 0.0
        self.measured_s = 0.0
        self._measuring_since_s: float | None = None
        self._clinic = clinic
        self._close_when_captured = close_when_captured
        self._movements = movements
        self._pictures = pictures
        self._photographed: set[str] = set()
        self._window: MainWindow | None = None
        self._begun_s = time.monotonic()
        self._timer = QTimer(self)
        self._timer.setInterval(_ACT_MS)
        self._timer.timeout.connect(self.act)
        self._timer.start()

    @Slot()
    def act(self) -> None:
        window = self._window or self._found()
        if window is None:
            return
        if time.monotonic() - self._begun_s > _LONGEST_S:
            QApplication.exit(3)
            return
        measure = window.measure
        page = measure.shown
        name = type(page).__name__
        if not self.pages or self.pages[-1] != name:
            self.pages.append(name)
            self._photograph(f"{len(self.pages):02d}-{name}")
        self.heart.counts = page is measure.live
        if self.heart.counts:
            self.heart.take_pace()
        if page is measure.live and self._measuring_since_s is None:
            self._measuring_since_s = time.monotonic()
        self._do(measure, page)

    def _do(self, measure: MeasurePage, page: QWidget | None) -> None:
        if page is measure.start:
            if "SummaryPage" in self.pages:
                self._close()
                return
            self._begin(measure)
        elif page is measure.safety:
            given = measure.safety.answers
            rest = measure.safety.rest
            denied = given[ScreeningAnswer.NONE_FITS]
            self._click(rest if rest.isVisible() else denied)
        elif page is measure.before:
            QTest.keyClick(measure.before, Qt.Key.Key_1)
            self._click(measure.before.go)
        elif page is measure.pain:
            QTest.keyClick(measure.pain, Qt.Key.Key_2)
            self._click(measure.pain.done)
        elif page is measure.next:
            self._click(measure.next.go)
        elif page is measure.summary:
            self._go_on_from_summary(measure)

    def _begin(self, measure: MeasurePage) -> None:
        if self._clinic:
            measure.start.use_in_clinic()
            measure.start.prefer(self._movements[0], Side.RIGHT)
            self._click(measure.start.in_clinic.what.start)
            return
        measure.start.use_at_home()
        measure.start.at_home.choose.setChecked(True)
        for movement, tick in measure.start.at_home.tiles.boxes.items():
            tick.setChecked(movement in self._movements)
        self._click(measure.start.at_home.start)

    def _go_on_from_summary(self, measure: MeasurePage) -> None:
        """Finish; in a clinic only after the other side."""
        if self._clinic and self.pages.count("SummaryPage") == 1:
            self._click(measure.summary.next_side)
            return
        if self._measuring_since_s is not None:
            self.measured_s = time.monotonic() - self._measuring_since_s
        self._click(measure.summary.finish)

    def _close(self) -> None:
        self._timer.stop()
        self.heart.counts = False
        self.closed_s = time.monotonic()
        assert self._window is not None
        self._window.close()

    def _found(self) -> MainWindow | None:
        for widget in QApplication.topLevelWidgets():
            if isinstance(widget, MainWindow):
                self._window = widget
                widget.services.feed.framed.connect(self.take_frame)
                widget.services.feed.happened.connect(self.take_event)
                return widget
        return None

    @Slot(object)
    def take_frame(self, frame: LiveFrame) -> None:
        self.frames += 1
        if self._window is not None and self.heart.counts and frame.phase is Phase.HOLD:
            measuring = self._window.measure.measuring
            if measuring is not None:
                task = measuring.guide.task
                self._photograph(f"hold-{task.movement.value}-{task.side.value}")

    @Slot(object)
    def take_event(self, event: LiveEvent) -> None:
        if self._close_when_captured and event.kind is LiveEventKind.TRIAL_CAPTURED:
            QTimer.singleShot(0, self._close)

    def _photograph(self, name: str) -> None:
        if self._pictures is None or self._window is None or name in self._photographed:
            return
        self._photographed.add(name)
        self._pictures.mkdir(parents=True, exist_ok=True)
        self.heart.beat()
        self._window.grab().save(str(self._pictures / f"{name}.png"))
        self.heart.leave_out()

    @staticmethod
    def _click(one: QPushButton) -> None:
        QTest.mouseClick(one, Qt.MouseButton.LeftButton)


def main() -> int:
    parser = argparse.ArgumentParser()
    parser.add_argument("clips", nargs="+")
    parser.add_argument("--movements", nargs="+", default=["flexion"])
    parser.add_argument("--model-quality")
    parser.add_argument("--pictures", type=Path)
    parser.add_argument("--clinic", action="store_true")
    parser.add_argument("--close-when-captured", action="store_true")
    arguments = parser.parse_args()
    application = QApplication(["thawline"])
    leader = Leader(
        tuple(map(Movement, arguments.movements)),
        arguments.pictures,
        clinic=arguments.clinic,
        close_when_captured=arguments.close_when_captured,
    )
    quality = ["--model-quality", arguments.model_quality] if arguments.model_quality else []
    code = command_line(["app", *quality, "--source", *arguments.clips])
    told = {
        "platform": application.platformName(),
        "pages": leader.pages,
        "frames": leader.frames,
        "closed_s": leader.closed_s,
        "measured_s": leader.measured_s,
        "longest_ms": 1000 * leader.heart.longest_s,
        "longest_work_ms": 1000 * leader.heart.longest_work_s,
        "paces_s": leader.heart.paces_s,
    }
    print(json.dumps(told))
    return code


if __name__ == "__main__":
    sys.exit(main())
