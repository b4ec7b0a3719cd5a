"""Pose workers killed or frozen while the window measures: no trial is lost (Linux).

    python -m tests.proof.strikes [--minutes 5] [--model-quality full] [--scripted] [--first SEED]
                                  [--only killed frozen] [--write]

The window measures as in `tests.soak.run`. At random moments one of its pose workers is killed,
or stopped so that it says nothing more: the live one, or the one that refines trials. Every trial
captured must be saved, the live worker must be replaced each time, and trials must be captured
after the last strike. Ends with 1 otherwise.
"""

import argparse
import os
import random
import signal
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from PySide6.QtCore import QTimer, Slot
from PySide6.QtWidgets import QApplication

from gui.app.application import configure_application
from gui.app.main_window import MainWindow
from measure.camera.faults import SourceFault
from measure.live.engine import LiveEngine
from measure.pose_models.catalogue import ModelQuality
from measure.system.paths import model_folder
from tests.proof.page import Proof, finish, typed_command
from tests.soak.run import Soak, saved_trials, soak
from tests.soak.usage import descendants

#: Each way to strike, with its subject on the page.
WAYS = {
    "killed": (signal.SIGKILL, "pose worker killed"),
    "frozen": (signal.SIGSTOP, "pose worker frozen"),
}
#: Time between two strikes, seconds: longer than a new worker needs to start on a busy computer.
BETWEEN_S = (15.0, 30.0)
#: Without strikes at the end, seconds: long enough for a trial.
QUIET_S = 30.0


class StruckSoak(Soak):
    """Measures on, while its workers are struck."""

    def __init__(self, window: MainWindow, seconds: float, sent: signal.Signals, seed: int) -> None:
        super().__init__(window, seconds)
        self.live_strikes = self.other_strikes = 0
        self.captured_at_strike = 0
        self._sent = sent
        self._chance = random.Random(seed)
        self._left_s = seconds
        self._strikes = QTimer(self, singleShot=True)
        self._strikes.timeout.connect(self.strike)
        self._wait()

    def _wait(self) -> None:
        wait_s = self._chance.uniform(*BETWEEN_S)
        self._left_s -= wait_s
        if self._left_s > QUIET_S:
            self._strikes.start(round(1000 * wait_s))

    @Slot()
    def strike(self) -> None:
        """Strike one of the workers, if there is any at present."""
        engine = self._window.services.feed.engine
        live = engine.process_id if isinstance(engine, LiveEngine) else None
        workers = [each for each in descendants(os.getpid()) if _is_worker(each)]
        if workers and live is not None:
            struck = self._chance.choice(workers)
            os.kill(struck, self._sent)
            self.live_strikes += struck == live
            self.other_strikes += struck != live
            self.captured_at_strike = len(self.captured)
        self._wait()


def _is_worker(number: int) -> bool:
    try:
        words = Path(f"/proc/{number}/cmdline").read_bytes().split(b"\0")
    except OSError:
        return False
    return any(word.endswith((b"worker", b"scripted_live")) for word in words)


def faults(done: StruckSoak, saved: int) -> list[str]:
    """Return what is not as it should be, in words."""
    found = []
    if saved != len(done.captured):
        found.append(f"{len(done.captured)} trials were captured and {saved} saved")
    if not done.live_strikes:
        found.append("no live worker was struck")
    if len(done.captured) <= done.captured_at_strike:
        found.append("no trial was captured after the last strike")
    if done.troubles[SourceFault.POSE_RESTARTING] < done.live_strikes:
        found.append(
            f"{done.live_strikes} live workers were struck and "
            f"{done.troubles[SourceFault.POSE_RESTARTING]} replaced"
        )
    if done.troubles[SourceFault.POSE_FAILED]:
        found.append("the window gave up")
    return found


def struck(arguments: argparse.Namespace, way: str) -> Proof:
    """Measure for so long under strikes of one sort."""
    sent, subject = WAYS[way]
    with TemporaryDirectory() as folder:
        os.environ["THAWLINE_DATA"] = folder
        done = soak(
            60.0 * arguments.minutes,
            arguments.model_quality,
            scripted=arguments.scripted,
            make=lambda window, seconds: StruckSoak(window, seconds, sent, arguments.first),
        )
        saved = saved_trials(Path(folder))
    counts = (
        f"{done.live_strikes} live workers and {done.other_strikes} that refine trials; "
        f"{len(done.captured)} trials captured, {saved} saved"
    )
    return Proof(
        subject=subject,
        counts=counts,
        faults=tuple(faults(done, saved)),
        command=typed_command("tests.proof.strikes"),
    )


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--minutes", type=float, default=5.0, help="for each way to strike")
    parser.add_argument("--model-quality", type=ModelQuality)
    parser.add_argument("--scripted", action="store_true", help="no network, five times as fast")
    parser.add_argument("--first", type=int, default=0, help="the seed of the random moments")
    parser.add_argument("--only", nargs="+", choices=WAYS, default=tuple(WAYS))
    parser.add_argument("--write", action="store_true", help="write the rows into the page")
    arguments = parser.parse_args()
    os.environ["THAWLINE_MODELS"] = str(model_folder())
    application = QApplication(["thawline"])
    configure_application(application)
    return max(finish((struck(arguments, way),), wanted=arguments.write) for way in arguments.only)


if __name__ == "__main__":
    sys.exit(main())
