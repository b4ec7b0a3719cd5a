"""Two rounds of exercises a day, day after day, in the real window: nothing is lost, nothing grows.

    python -m tests.soak.rounds [--minutes 20] [--write]

The round's clock runs as fast as the window follows, and after each second round the next morning
comes; the store is a real one on the disk. Every repetition that the window counted must be in the
store, and the program may not hold more memory, handles or threads in the last tenth of the time
than in the second one. Ends with 1 otherwise.
"""

import argparse
import datetime as dt
import os
import sys
import time
from pathlib import Path
from tempfile import TemporaryDirectory

from PySide6.QtWidgets import QApplication

from gui.app.application import configure_application
from gui.app.window_pages import MainPage
from measure.storage.store import Store
from tests.proof.page import Proof, finish, typed_command
from tests.soak.run import MOST_GROWTH_MB, MOST_MORE_HANDLES, TENTHS, Tenth
from tests.soak.usage import usage
from tests.support.gui.round_process import REPETITIONS, begin_store
from tests.support.gui.stage import WindowHarness
from tests.support.record_samples import FixedClock, person

ROUNDS_A_DAY = 2
#: A round of ten repetitions is over within this, seconds of its own clock.
LONGEST_ROUND_S = 600.0


class DailyRounds:
    """Leads rounds in a window, and counts."""

    def __init__(self, folder: Path) -> None:
        begin_store(folder)
        self.clock = FixedClock("2026-02-01T07:00:00+00:00", offset_min=60)
        self.stage = WindowHarness(
            open_store=lambda: Store.open(folder / "sessions.sqlite", clock=self.clock)
        )
        self.rounds = self.repetitions = 0
        self.tenths = [Tenth() for _ in range(TENTHS)]
        self.stage.window.go(MainPage.EXERCISES)
        self.stage.settle()
        self.stage.window.exercises.rounds.round.progressed.connect(self._count)

    def _count(self) -> None:
        self.repetitions += 1

    def lead(self, seconds: float) -> None:
        """Lead rounds for so long; the last one is ended."""
        began_s = time.monotonic()
        while (passed_s := time.monotonic() - began_s) < seconds:
            self._lead_one()
            tenth = self.tenths[min(int(TENTHS * passed_s / seconds), TENTHS - 1)]
            tenth.usages.append(usage())

    def _lead_one(self) -> None:
        exercises = self.stage.window.exercises
        exercises.today.start.click()
        self.stage.settle()
        passed_s = 0.0
        while exercises.leading and passed_s < LONGEST_ROUND_S:
            self.stage.pass_seconds(1.0)
            passed_s += 1.0
            QApplication.processEvents()
        self.stage.settle()
        exercises.rounds.rating.keep.click()
        self.rounds += 1
        is_evening = self.rounds % ROUNDS_A_DAY == 0
        self.clock.utc += dt.timedelta(hours=14 if is_evening else 10)
        self.stage.settle()
        exercises.show_today()
        self.stage.settle()


def saved_repetitions(folder: Path) -> int:
    """Return how many repetitions the store holds; a whole dose is kept as None."""
    with Store.open(folder / "sessions.sqlite") as store:
        logs = store.exercises_done(person("Rosa").id)
    return sum(log.repetitions or REPETITIONS for log in logs)


def faults(done: DailyRounds, saved: int) -> list[str]:
    """Return what is not as it should be, in words."""
    # In the first tenth pages are made that are kept from then on.
    early, late = done.tenths[1], done.tenths[-1]
    found = []
    if saved != done.repetitions or not saved:
        found.append(f"{done.repetitions} repetitions were counted and {saved} saved")
    if saved != done.rounds * 2 * REPETITIONS:
        found.append(f"{done.rounds} rounds were led with {saved} repetitions")
    growth_mb = late.median("memory_mb") - early.median("memory_mb")
    if growth_mb > MOST_GROWTH_MB:
        found.append(f"memory grew by {growth_mb:.1f} MB")
    for what in ("handles", "threads"):
        more = late.median(what) - early.median(what)
        if more > MOST_MORE_HANDLES:
            found.append(f"{what} grew by {more:.0f}")
    return found


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--minutes", type=float, default=20.0)
    parser.add_argument("--write", action="store_true", help="write the row into the page")
    arguments = parser.parse_args()
    with TemporaryDirectory() as folder:
        os.environ["THAWLINE_DATA"] = folder
        configure_application(QApplication(["thawline"]))
        done = DailyRounds(Path(folder))
        done.lead(60.0 * arguments.minutes)
        done.stage.close()
        saved = saved_repetitions(Path(folder))
    growth_mb = done.tenths[-1].median("memory_mb") - done.tenths[1].median("memory_mb")
    proof = Proof(
        subject="daily rounds on and on",
        counts=f"{done.rounds} rounds on {done.rounds // ROUNDS_A_DAY} days, "
        f"{done.repetitions} repetitions led, {saved} saved; memory {growth_mb:+.0f} MB",
        faults=tuple(faults(done, saved)),
        command=typed_command("tests.soak.rounds"),
    )
    return finish((proof,), wanted=arguments.write)


if __name__ == "__main__":
    sys.exit(main())
