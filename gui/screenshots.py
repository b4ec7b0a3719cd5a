"""Pictures of every page and state: ``python -m gui.screenshots FOLDER``.

A scripted engine stands for the camera and a memory for the store, so the pictures are the same
everywhere. Besides each picture there is one a quarter as large: what cannot be read there is
too small from three metres.
"""

import argparse
import datetime as dt
import math
import os
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

import numpy as np
from PySide6.QtCore import QElapsedTimer, QEventLoop, Qt
from PySide6.QtWidgets import QApplication

from gui.application import prepare
from gui.background import Background
from gui.clip_reading import accepted_measurement
from gui.cues import Cues
from gui.drawn_person import HEIGHT_PX, WIDTH_PX, drawn_picture
from gui.engine import ClipCurve, ClipReading
from gui.feed import EngineFeed
from gui.look import Look
from gui.main_window import MainWindow
from gui.memory_keeper import MemoryKeeper, garden_history
from gui.safety import Answer, Check
from gui.scripted_engine import ScriptedEngine
from gui.services import Services
from gui.settings import WindowSettings
from gui.theme import Scheme
from measure.body import LANDMARKS, Side, Track
from measure.live_events import EventKind, Phase, SetupHint, Trouble
from measure.movements import Movement
from measure.reasons import Reason
from measure.records import StoppedBy

TODAY = dt.date(2026, 11, 25)


class _Stage:
    """A window with a scripted engine, and the means to play a state and take its picture."""

    def __init__(self, folder: Path, scheme: Scheme, percent: int, size: tuple[int, int]) -> None:
        self._folder, self._suffix = folder, f"{scheme.value}-{percent}"
        self._home = tempfile.TemporaryDirectory()
        self.engine = ScriptedEngine()
        self.keeper = MemoryKeeper()
        look = Look(scheme, percent)
        look.apply()
        self.services = Services(
            look=look,
            settings=WindowSettings(Path(self._home.name) / "window.ini"),
            feed=EngineFeed(self._make_engine),
            cues=Cues(tones=False, speech=False),
            keeper=self.keeper,
            records=Background("records"),
            slow=Background("slow"),
            find_cameras=lambda: ("Integrated Webcam", "Desk Camera HD"),
            read_clip=read_drawn_clip,
            open_clip=lambda path: DrawnPictures(),
            combine_trials=accepted_measurement,
            today=lambda: TODAY,
        )
        self.services.settings.affected = Side.LEFT
        self.window = MainWindow(self.services)
        self.window.resize(*size)
        self.window.show()
        self.settle()

    def _make_engine(self) -> ScriptedEngine:
        self.engine = ScriptedEngine()
        return self.engine

    def settle(self, wait_ms: int = 80) -> None:
        """Let everything that is under way arrive."""
        timer = QElapsedTimer()
        timer.start()
        loop = QEventLoop()
        while timer.elapsed() < wait_ms or self.services.records.busy or self.services.slow.busy:
            loop.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 10)

    def shoot(self, name: str) -> None:
        """Write the picture and its quarter."""
        self.settle()
        picture = self.window.grab()
        picture.save(str(self._folder / f"{name}-{self._suffix}.png"))
        quarter = picture.scaled(
            picture.width() // 4,
            picture.height() // 4,
            Qt.AspectRatioMode.KeepAspectRatio,
            Qt.TransformationMode.SmoothTransformation,
        )
        small = self._folder / "quarter"
        small.mkdir(exist_ok=True)
        quarter.save(str(small / f"{name}-{self._suffix}.png"))

    def close(self) -> None:
        self.window.close()
        self._home.cleanup()


class DrawnPictures:
    """A drawn clip of nine seconds: three times the arm up and down."""

    duration_s = 9.0

    def at(self, time_s: float) -> np.ndarray[tuple[int, ...], np.dtype[np.uint8]]:
        return drawn_picture(Movement.FLEXION, Side.RIGHT, drawn_value(time_s))[0]


def drawn_value(time_s: float) -> float:
    """Return the drawn clip's angle: rest, up, hold, down, three seconds each time."""
    share = time_s % 3.0
    return 118.0 * float(np.interp(share, [0, 0.5, 1.1, 2.1, 2.7, 3.0], [0, 0, 1, 1, 0, 0]))


def read_drawn_clip(
    path: Path, movement: Movement, side: Side, progress: Callable[[float], bool]
) -> ClipReading:
    """Return a reading of the drawn clip."""
    progress(1.0)
    engine = ScriptedEngine()
    engine.movement, engine.side = movement, side
    engine.choose(movement, side, 3, 0, WindowSettings(Path(os.devnull)).conduct)
    for value, reasons in ((117.0, ()), (119.0, ()), (118.0, (Reason.TRUNK_LEAN,))):
        engine.capture(value)
        engine.settle(reasons)
    measurement = engine.measurement()
    if measurement is None:
        raise ValueError("the drawn clip has trials")
    time_s = np.arange(0, 9, 1 / 7.5)
    values = np.array([drawn_value(each) for each in time_s])
    points = np.stack([drawn_picture(movement, side, each)[1] for each in values])
    n = len(time_s)
    track = Track(
        time_s=time_s,
        points_px=points,
        visibility=np.ones((n, LANDMARKS)),
        presence=np.ones((n, LANDMARKS)),
        state=np.zeros(n, dtype=np.int64),
        people=np.ones(n, dtype=np.int64),
        width_px=WIDTH_PX,
        height_px=HEIGHT_PX,
    )
    shaken = values + np.array([0.8 * math.sin(7 * each) for each in time_s])
    return ClipReading(
        measurement=measurement,
        curve=ClipCurve(time_s=track.time_s, value=shaken),
        track=track,
    )


def _start(stage: _Stage) -> Iterator[str]:
    yield "measure-start"
    page = stage.window.measure
    page.start.home_button.click()
    stage.settle()
    yield "safety-about"
    page.safety.give(Answer.READ)
    yield "safety-emergency"
    page.safety.give(Answer.ONE_FITS)
    yield "safety-get-help"
    page.safety.ask(Check.FIRST)
    page.safety.give(Answer.READ)
    page.safety.give(Answer.NONE_FITS)
    yield "safety-soon"
    page.safety.give(Answer.NONE_FITS)
    yield "safety-clinician"
    page.safety.give(Answer.ONE_FITS)
    yield "safety-ask-first"
    page.safety.ask(Check.FIRST)
    for answer in (Answer.READ, Answer.NONE_FITS, Answer.NONE_FITS, Answer.NONE_FITS):
        page.safety.give(answer)
    yield "measure-before"


def _live(stage: _Stage) -> Iterator[str]:
    page = stage.window.measure
    page.before.now.choose(2)
    page.before.go.click()
    stage.settle()
    stage.engine.show(Phase.LOOKING_FOR_PERSON, hints=(SetupHint.STEP_BACK,), seen=False)
    yield "live-looking"
    stage.engine.show(Phase.WAIT_NEUTRAL, 2.0)
    yield "live-neutral"
    stage.engine.show(Phase.MOVE, 74.0)
    yield "live-move"
    stage.engine.show(Phase.HOLD, 118.0, hold_share=0.62)
    yield "live-hold"
    stage.engine.capture(118.0)
    stage.engine.show(Phase.SETTLING, 20.0)
    stage.settle()
    stage.engine.settle()
    stage.engine.capture(119.0)
    stage.settle()
    yield "live-settling"
    stage.engine.settle()
    stage.settle()
    stage.engine.capture(117.0)
    stage.settle()
    stage.engine.settle((Reason.ELBOW_BENT,))
    yield "live-refused"
    stage.engine.pause()
    yield "live-paused"
    stage.engine.resume()
    stage.engine.happen(EventKind.TROUBLE, trouble=Trouble.CAMERA_UNPLUGGED)
    yield "live-trouble"
    stage.engine.happen(EventKind.RECOVERED)
    stage.engine.capture(121.0)
    stage.settle()
    stage.engine.settle()
    stage.settle()
    stage.engine.capture(120.0)
    stage.settle()
    stage.engine.settle()
    yield "pain"
    page.pain.pain.choose(3)
    page.pain.reason.choose(StoppedBy.STIFFNESS)
    yield "pain-answered"
    page.pain.done.click()
    yield "next"
    page.next.go.click()
    stage.engine.show(Phase.HOLD, 84.0, hold_share=0.3, reasons=(Reason.SHRUG,))
    yield "live-left"
    for value in (84.0, 83.0, 85.0, 84.0):
        stage.engine.capture(value)
        stage.settle(30)
        stage.engine.settle()
        stage.settle(30)
    page.pain.pain.choose(7)
    page.pain.done.click()
    stage.settle()
    page.safety.give(Answer.NONE_FITS)
    page.safety.give(Answer.NONE_FITS)
    yield "safety-after-pain"
    page.safety.cleared.emit()
    stage.settle()
    page.next.go.click()
    stage.engine.show(Phase.MOVE, 61.0)
    yield "live-abduction"
    page.live.stop.click()
    stage.settle()
    page.next.finish.click()
    yield "summary"
    page.summary.finish.click()
    stage.settle()


def _reach(stage: _Stage) -> Iterator[str]:
    page = stage.window.measure
    page.start.prefer(Movement.HAND_BEHIND_BACK, Side.LEFT)
    page.start.clinic_button.click()
    stage.settle()
    stage.engine.show(Phase.WAIT_NEUTRAL, 0.0)
    yield "live-back-turned"
    for value in (0.42, 0.44):
        stage.engine.capture(value)
        stage.settle(30)
        stage.engine.settle()
        stage.settle(30)
    yield "pain-reach"
    page.pain.done.click()
    yield "summary-clinic"
    page.summary.finish.click()
    stage.settle()
    page.start.prefer(Movement.EXTERNAL_ROTATION, Side.RIGHT)
    page.start.clinic_button.click()
    stage.settle()
    yield "live-rotation"
    page.live.stop.click()
    stage.settle()
    page.summary.finish.click()


def _others(stage: _Stage) -> Iterator[str]:
    window = stage.window
    stage.keeper.clear()
    window.go(1)
    yield "progress-empty"
    person = window.measure.person
    if person is not None:
        stage.keeper.put(garden_history(person, TODAY, weeks=2))
        window.progress.reload()
        yield "progress-early"
        stage.keeper.put(garden_history(person, TODAY, weeks=20))
        window.progress.reload()
    yield "progress"
    window.progress.show_details()
    yield "progress-sessions"
    window.go(2)
    yield "clips-empty"
    window.clips.open([Path("bed-three-flexion-right.mp4"), Path("bed-four-abduction-left.mp4")])
    stage.settle()
    window.clips.read.click()
    stage.settle(250)
    yield "clips-read"
    if window.clips.trials.ticks:
        window.clips.trials.ticks[1].setChecked(False)
    yield "clips-discarded"
    window.go(3)
    stage.settle()
    stage.engine.show(Phase.LOOKING_FOR_PERSON, 10.0, hints=(SetupHint.RAISE_SCREEN,))
    stage.settle(600)
    stage.engine.show(Phase.LOOKING_FOR_PERSON, 10.0, hints=(SetupHint.RAISE_SCREEN,))
    yield "setup-hint"
    stage.settle(600)
    stage.engine.show(Phase.LOOKING_FOR_PERSON, 10.0)
    window.setup.refresh()
    yield "setup-good"
    window.setup.hand.click()
    yield "setup-hand"
    stage.engine.happen(EventKind.HAND_RAISED, side=Side.LEFT)
    stage.engine.happen(EventKind.TROUBLE, trouble=Trouble.CAMERA_BUSY)
    yield "setup-trouble"


def take(folder: Path, scheme: Scheme, percent: int, size: tuple[int, int]) -> int:
    """Write the pictures of one look; return how many."""
    stage = _Stage(folder, scheme, percent, size)
    taken = 0
    for part in (_start, _live, _reach, _others):
        for name in part(stage):
            stage.shoot(name)
            taken += 1
    stage.close()
    return taken


def main(arguments: list[str] | None = None) -> int:
    """Write all pictures into a folder."""
    parser = argparse.ArgumentParser(prog="python -m gui.screenshots", description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--only", choices=["light", "dark", "large"], action="append")
    chosen = parser.parse_args(arguments)
    if "DISPLAY" not in os.environ and "WAYLAND_DISPLAY" not in os.environ:
        os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    chosen.folder.mkdir(parents=True, exist_ok=True)
    application = QApplication.instance() or QApplication(sys.argv[:1])
    prepare(application)
    looks = {
        "light": (Scheme.LIGHT, 100, (1280, 800)),
        "dark": (Scheme.DARK, 100, (1280, 800)),
        "large": (Scheme.LIGHT, 200, (1280, 800)),
    }
    for name, look in looks.items():
        if not chosen.only or name in chosen.only:
            print(f"{name}: {take(chosen.folder, *look)} pictures")
    return 0


if __name__ == "__main__":
    sys.exit(main())
