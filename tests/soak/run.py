"""`make soak`: the real window measures for an hour; every trial captured must be saved.

    python -m tests.soak.run [--minutes 60] [--model-quality full] [--scripted] [--write]

A clip with three raises is played at real speed, over and over, as if it were the camera; a
person asks for one movement of three trials after the other. With `--scripted` a scripted camera
and no network take their place, five times as fast as real, so that a minute shows what it can.
Everything else is real: window, engine, processes, store. The time begins after the first
measurement. Prints figures for each tenth of it; ends with 1 where a trial was lost, memory
grew, handles rose or pictures became rarer.

A process that settles a trial holds 180 MB and 10 threads more than one at rest, so that a middle
value would tell how busy it was: what is held at rest and at work is compared, each with its own.
"""

import argparse
import os
import statistics
import sys
import time
from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TypeVar, cast

from PySide6.QtCore import QObject, Qt, QTimer, Slot
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from gui.app.application import build_services, configure_application
from gui.app.main_window import MainWindow
from gui.protocol.plan import MovementTask
from gui.session.clip_reader import local_models
from gui.session.engine_feed import EngineBridge
from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome
from measure.domain.tracks import PoseFrame
from measure.live.engine import LiveEngine
from measure.live.events import LiveEvent, LiveEventKind, LiveFrame
from measure.pose.ensemble import ModelSet
from measure.pose.jobs import InferencePass, PictureJob
from measure.pose.supervisor import PoseProcess
from measure.pose_models.catalogue import ModelQuality
from measure.storage.store import Store
from measure.system.paths import data_folder, model_folder
from tests.proof.page import Proof, finish, typed_command
from tests.soak.usage import Usage, usage
from tests.support.live_figures import empty_bundle
from tests.support.real_model import clip
from tests.support.scripted_live import ScriptedPose

#: What may be, from the first measurement on.
MOST_GROWTH_MB = 20.0
MOST_MORE_HANDLES = 3
#: The last tenths must bring this share of the pictures of the first.
LEAST_RATE = 0.8

TENTHS = 10

#: Shares of the looks: nearly the least and nearly the most that was held.
AT_REST, AT_WORK = 0.05, 0.95
TASK = MovementTask(movement=Movement.FLEXION, side=Side.RIGHT, trials=3, practice=0)
#: More than are measured in any hour.
TASKS = (TASK,) * 500

_ACT_MS = 100
_SAMPLE_INTERVAL_MS = 1000
#: A trial that was captured is settled and saved within this, seconds.
_LAST_S = 60.0


@dataclass
class Tenth:
    """What was seen in a tenth of the time."""

    usages: list[Usage] = field(default_factory=list)
    frames: int = 0
    seconds: float = 0.0
    captured: int = 0

    @property
    def fps(self) -> float:
        """Pictures shown a second while measuring."""
        return self.frames / self.seconds if self.seconds else 0.0

    def median(self, what: str) -> float:
        return statistics.median(getattr(each, what) for each in self.usages)

    def held(self, what: str, share: float) -> float:
        """What so large a share of the looks found no more of."""
        found: list[float] = sorted(getattr(each, what) for each in self.usages)
        return found[round(share * (len(found) - 1))]


class Soak(QObject):
    """Leads the window from movement to movement, and counts."""

    def __init__(self, window: MainWindow, seconds: float) -> None:
        super().__init__()
        self.tenths = [Tenth() for _ in range(TENTHS)]
        self.warm_up = Tenth()
        self.captured: set[tuple[int, int]] = set()
        self.discarded = 0
        self.troubles: Counter[SourceFault | None] = Counter()
        self.measurements = 0
        self._window = window
        self._seconds = seconds
        self._began_s: float | None = None
        self._sampled_s = time.monotonic()
        self._finished_s: float | None = None
        window.services.feed.framed.connect(self.take_frame)
        window.services.feed.happened.connect(self.take_event)
        self._timers = [
            self._every(_ACT_MS, self.act),
            self._every(_SAMPLE_INTERVAL_MS, self.sample_usage),
        ]

    def _every(self, milliseconds: int, what: Callable[[], None]) -> QTimer:
        timer = QTimer(self)
        timer.setTimerType(Qt.TimerType.PreciseTimer)
        timer.timeout.connect(what)
        timer.start(milliseconds)
        return timer

    @property
    def _tenth(self) -> Tenth:
        if self._began_s is None:
            return self.warm_up
        passed = (time.monotonic() - self._began_s) / self._seconds
        return self.tenths[min(int(TENTHS * passed), TENTHS - 1)]

    @property
    def _is_over(self) -> bool:
        return self._began_s is not None and time.monotonic() - self._began_s > self._seconds

    @Slot(object)
    def take_frame(self, _frame: LiveFrame) -> None:
        self._tenth.frames += 1

    @Slot(object)
    def take_event(self, event: LiveEvent) -> None:
        if event.kind is LiveEventKind.TRIAL_CAPTURED and event.trial_id is not None:
            self.captured.add((self.measurements, event.trial_id))
            self._tenth.captured += 1
        elif event.kind is LiveEventKind.TROUBLE:
            self.troubles[event.trouble] += 1
        elif event.kind is LiveEventKind.MEASUREMENT_DONE:
            self.measurements += 1
            self._began_s = self._began_s or time.monotonic()

    @Slot()
    def sample_usage(self) -> None:
        now_s = time.monotonic()
        if self._window.measure.live.isVisible():
            self._tenth.seconds += now_s - self._sampled_s
        self._sampled_s = now_s
        if not self._is_over:
            self._tenth.usages.append(usage())

    @Slot()
    def act(self) -> None:
        """Do what a person would do on the page that is shown."""
        measure = self._window.measure
        if measure.before.isVisible():
            QTest.keyClick(measure.before, Qt.Key.Key_1)
            measure.before.go.click()
        elif measure.pain.isVisible():
            QTest.keyClick(measure.pain, Qt.Key.Key_2)
            QTest.keyClick(measure.pain, Qt.Key.Key_Return)
        elif measure.next.isVisible():
            (measure.next.finish if self._is_over else measure.next.go).click()
        elif measure.summary.isVisible():
            measure.summary.finish.click()
        elif measure.start.isVisible() and self._is_over:
            self._window.close()
        elif measure.live.isVisible() and self._is_over and measure.measuring is not None:
            if self._finished_s is None:
                self._finished_s = time.monotonic()
                measure.measuring.stop_movement()
            elif time.monotonic() - self._finished_s > _LAST_S:
                self._window.close()


#: What leads the window.
Led = TypeVar("Led", bound=Soak)


class Forgetful(ScriptedPose):
    """Keeps none of the pictures that it was given."""

    def run_pictures(self, job: PictureJob) -> Mapping[InferencePass, tuple[PoseFrame, ...]]:
        found = super().run_pictures(job)
        self.jobs.clear()
        return found


def engine(quality: ModelQuality | None, scripted: Path | None) -> LiveEngine:
    """Return an engine on a clip that never ends, or on the scripted camera."""
    if scripted is None:
        return LiveEngine(lambda: local_models(quality), loop_clips=True)
    bundles = {each: empty_bundle(each) for each in (ModelQuality.FULL, ModelQuality.HEAVY)}
    return LiveEngine(
        lambda: ModelSet(name="heavy", bundles=bundles),
        command=(
            sys.executable,
            "-m",
            "tests.support.scripted_live",
            "good",
            str(scripted / "mark"),
        ),
        # What answers as a process of poses does.
        make_process=lambda models: cast(PoseProcess, Forgetful()),
        stall_s=20.0,
    )


def soak(
    seconds: float,
    quality: ModelQuality | None,
    *,
    scripted: bool,
    make: Callable[[MainWindow, float], Led],
) -> Led:
    """Let the window measure for so long; what it kept is in the data folder."""
    folder = data_folder()
    clips = () if scripted else (clip("flexion-right-three-repeats"),)
    services = build_services(folder, clips, quality)
    services.cues.tones_wanted = services.cues.speech_wanted = False
    services.feed = EngineBridge(lambda: engine(quality, folder if scripted else None))
    window = MainWindow(services)
    window.show()
    window.measure.start.person_wanted.emit("Yarrow")
    until_s = time.monotonic() + 30.0
    while window.measure.people.person is None and time.monotonic() < until_s:
        QApplication.processEvents()
    person = window.measure.people.person
    assert person is not None
    window.measure.people.save_screening(ScreeningOccasion.BEFORE, ScreeningOutcome.CLEAR)
    made = make(window, seconds)
    window.measure.start.home.emit(TASKS)
    QApplication.exec()
    return made


def saved_trials(folder: Path) -> int:
    with Store.open(folder / "sessions.sqlite") as store:
        return sum(
            len(record.measurement.trials)
            for person in store.people()
            for record in store.measurements(person.id)
        )


def growth_mb(done: Soak, share: float) -> float:
    """Return how much more the last tenth held than the first, megabytes."""
    return done.tenths[-1].held("memory_mb", share) - done.tenths[0].held("memory_mb", share)


def growth_text(done: Soak) -> str:
    """Return the growth of memory at rest and at work, in words."""
    at_rest, at_work = growth_mb(done, AT_REST), growth_mb(done, AT_WORK)
    return f"memory {at_rest:+.0f} MB at rest, {at_work:+.0f} MB at work"


def faults(done: Soak, saved: int, *, rate_counts: bool) -> list[str]:
    """Return what is not as it should be, in words."""
    early, late = done.tenths[0], done.tenths[-1]
    captured = len(done.captured)
    more = late.median("handles") - early.median("handles")
    found = []
    if saved != captured or not captured:
        found.append(f"{captured} trials were captured and {saved} saved")
    for when, share in (("at rest", AT_REST), ("at work", AT_WORK)):
        if growth_mb(done, share) > MOST_GROWTH_MB:
            found.append(f"memory {when} grew by {growth_mb(done, share):.1f} MB")
        if late.held("threads", share) - early.held("threads", share) > MOST_MORE_HANDLES:
            found.append(f"threads {when} became more")
    if more > MOST_MORE_HANDLES:
        found.append(f"handles grew by {more:.0f}")
    if not late.frames:
        found.append("no pictures came at the end")
    elif rate_counts and late.fps < LEAST_RATE * early.fps:
        found.append(f"pictures became rarer: {early.fps:.1f} a second, then {late.fps:.1f}")
    if done.troubles:
        found.append(f"troubles: {dict(done.troubles)}")
    return found


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--minutes", type=float, default=60.0)
    parser.add_argument("--model-quality", type=ModelQuality)
    parser.add_argument("--scripted", action="store_true")
    parser.add_argument("--write", action="store_true", help="write the row into the page")
    arguments = parser.parse_args()
    os.environ["THAWLINE_MODELS"] = str(model_folder())
    with TemporaryDirectory() as folder:
        os.environ["THAWLINE_DATA"] = folder
        configure_application(QApplication(["thawline"]))
        done = soak(
            60.0 * arguments.minutes,
            arguments.model_quality,
            scripted=arguments.scripted,
            make=Soak,
        )
        saved = saved_trials(Path(folder))
    print("tenth  pictures/s  trials  MB at rest  MB at work  handles  threads  processes")
    for number, tenth in enumerate(done.tenths, 1):
        print(
            f"{number:5}  {tenth.fps:10.1f}  {tenth.captured:6}  "
            f"{tenth.held('memory_mb', AT_REST):10.1f}  {tenth.held('memory_mb', AT_WORK):10.1f}  "
            f"{tenth.median('handles'):7.0f}  "
            f"{tenth.median('threads'):7.0f}  {tenth.median('processes'):9.0f}"
        )
    proof = Proof(
        subject="measuring on and on",
        counts=f"{len(done.captured)} trials captured, {saved} saved, in {done.measurements} "
        f"measurements; {growth_text(done)}; {sum(done.troubles.values())} restarts",
        faults=tuple(faults(done, saved, rate_counts=not arguments.scripted)),
        command=typed_command("tests.soak.run"),
    )
    return finish((proof,), wanted=arguments.write)


if __name__ == "__main__":
    sys.exit(main())
