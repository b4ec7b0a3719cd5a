"""What the window costs on top of looking: frames a second, age when painted, how long it blocks.

    python -m tests.bench.bench_window [--quality full heavy]

The real window with a live engine whose camera replays a clip from memory, on a screen that is
not there, beside the network alone in a bare loop. All figures are of one run. Nothing is kept.
"""

import argparse
import os
import statistics
import sys
import tempfile
import time
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QEventLoop, QObject, QTimer
from PySide6.QtWidgets import QApplication

from gui.app.application import build_services, configure_application
from gui.app.main_window import MainWindow
from gui.protocol.plan import MovementTask
from gui.session.engine_feed import EngineBridge
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome
from measure.live.engine import LiveEngine
from measure.live.events import LiveFrame
from measure.pose.ensemble import ModelSet
from measure.pose_models.bundles import load
from measure.pose_models.catalogue import ModelQuality
from measure.system.paths import data_folder, model_folder
from tests.bench.bench_live import CLIP, USUAL_FPS, Idle, bare_apart, used_s
from tests.support.guided_window import Heart
from tests.support.virtual_screen import virtual_screen

#: More trials than are made meanwhile.
ENDLESS = MovementTask(movement=Movement.FLEXION, side=Side.LEFT, trials=99, practice=0)


class Eye(QObject):
    """Notes when the picture of a new frame was painted, and how long the picture is in sight.

    After a trial a drawing of the result stands in the picture's place.
    """

    def __init__(self, window: MainWindow) -> None:
        super().__init__()
        self.ages_ms: list[float] = []
        self.frames, self.in_sight_s = 0, 0.0
        self._frame: LiveFrame | None = None
        self._video = window.measure.live.video
        self._last_s: float | None = None
        window.services.feed.framed.connect(self._take)
        self._video.installEventFilter(self)

    def begin(self) -> None:
        """Forget what was seen before."""
        self.ages_ms.clear()
        self.frames, self.in_sight_s, self._last_s = 0, 0.0, None

    def _take(self, frame: LiveFrame) -> None:
        now_s = time.monotonic()
        self.frames += 1
        if self._video.isVisible():
            self._frame = frame
            if self._last_s is not None:
                self.in_sight_s += now_s - self._last_s
        self._last_s = now_s if self._video.isVisible() else None

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        """After the painting of a frame, which this event asks for, note how old it is."""
        if event.type() is QEvent.Type.Paint and self._frame is not None:
            taken_s, self._frame = self._frame.time_s, None
            QTimer.singleShot(0, lambda: self.ages_ms.append(1000 * (time.monotonic() - taken_s)))
        return False


def run_for(seconds: float) -> None:
    loop = QEventLoop()
    QTimer.singleShot(round(1000 * seconds), loop.quit)
    loop.exec()


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """One run of the window.

    Attributes
    ----------
    rate
        Frames painted a second while the picture is in sight.
    age_ms
        Their median age when painted.
    longest_ms, longest_work_ms
        Longest time that the window's thread was not free, and its longest work in one go.
    inference_ms, window_ms
        Processor time of the live process and of the window's for each frame.
    """

    rate: float
    age_ms: float
    longest_ms: float
    longest_work_ms: float
    inference_ms: float
    window_ms: float


def measure(quality: ModelQuality, fps: float, seconds: float) -> Seen:
    """Open the window on replayed frames, measure for so long, and close it."""
    models = ModelSet(name=quality.value, bundles={quality: load(quality)})
    services = build_services(data_folder(), (), quality)
    services.cues.tones_wanted = services.cues.speech_wanted = False
    engine = LiveEngine(
        lambda: models,
        command=(sys.executable, "-m", "tests.bench.replay_camera", str(CLIP), str(fps)),
        make_process=lambda models: Idle(models.bundles),
        stall_s=5.0,
    )
    services.feed = EngineBridge(lambda: engine)
    window = MainWindow(services)
    window.show()
    run_for(0.5)
    if window.measure.people.person is None:
        window.measure.start.person_wanted.emit("Rowan")
    while window.measure.people.person is None:
        run_for(0.1)
    window.measure.people.save_screening(ScreeningOccasion.BEFORE, ScreeningOutcome.CLEAR)
    window.measure.start.clinic.emit(ENDLESS)
    eye, heart = Eye(window), Heart()
    while not eye.ages_ms:
        run_for(0.1)
    run_for(1.0)
    eye.begin()
    heart.counts = True
    assert engine.process_id is not None
    used_before_s, worked_s = used_s(engine.process_id), time.process_time()
    run_for(seconds)
    seen = Seen(
        rate=len(eye.ages_ms) / eye.in_sight_s,
        age_ms=statistics.median(eye.ages_ms),
        longest_ms=1000 * heart.longest_s,
        longest_work_ms=1000 * heart.longest_work_s,
        inference_ms=1000 * (used_s(engine.process_id) - used_before_s) / eye.frames,
        window_ms=1000 * (time.process_time() - worked_s) / eye.frames,
    )
    window.close()
    return seen


def compare(quality: ModelQuality, seconds: float, repeats: int) -> None:
    alone, fast, paced, usual = [], [], [], []
    for _ in range(repeats):
        alone.append(bare_apart(CLIP, quality, seconds))
        fps = alone[-1][0]
        fast.append(measure(quality, max(USUAL_FPS, 1.3 * fps), seconds))
        slow_fps = min(USUAL_FPS, 0.7 * fps)
        paced.append(bare_apart(CLIP, quality, seconds, slow_fps)[1])
        usual.append(measure(quality, slow_fps, seconds))
    middle, name = statistics.median, quality.value
    bare_fps, bare_ms = middle(rate for rate, *_ in alone), middle(paced)
    bare_used_ms, inference_ms = (
        middle(used for *_, used in alone),
        middle(each.inference_ms for each in fast),
    )
    window_fps, age_ms = middle(each.rate for each in fast), middle(each.age_ms for each in usual)
    print(
        f"{name}: bare loop {bare_fps:.1f} frames/s, painted in the window {window_fps:.1f}: "
        f"ratio {window_fps / bare_fps:.3f} (goal: at least 0.95)"
    )
    print(
        f"{name}: processor time a frame: bare loop {bare_used_ms:.1f} ms, live process "
        f"{inference_ms:.1f} ms: ratio {bare_used_ms / inference_ms:.3f}; the window's process "
        f"{middle(each.window_ms for each in fast):.1f} ms besides"
    )
    print(
        f"{name}: network {bare_ms:.1f} ms, from grab to painted {age_ms:.1f} ms: "
        f"{age_ms - bare_ms:.1f} ms more (goal: less than 20)"
    )
    print(
        f"{name}: the window's thread was not free for at most "
        f"{max(each.longest_ms for each in fast + usual):.0f} ms, worked in one go for at most "
        f"{max(each.longest_work_ms for each in fast + usual):.0f} ms (goal: 50)"
    )


def main() -> None:
    parser = argparse.ArgumentParser(description="The window's cost on top of looking.")
    parser.add_argument("--seconds", type=float, default=8.0)
    parser.add_argument("--repeats", type=int, default=3)
    parser.add_argument(
        "--quality",
        type=ModelQuality,
        nargs="+",
        default=[ModelQuality.FULL, ModelQuality.HEAVY],
    )
    arguments = parser.parse_args()
    with virtual_screen() as display, tempfile.TemporaryDirectory() as folder:
        os.environ.update(DISPLAY=display, QT_QPA_PLATFORM="xcb")
        os.environ.update(THAWLINE_MODELS=str(model_folder()), THAWLINE_DATA=folder)
        application = QApplication(["thawline"])
        configure_application(application)
        for quality in arguments.quality:
            compare(quality, arguments.seconds, arguments.repeats)


if __name__ == "__main__":
    main()
