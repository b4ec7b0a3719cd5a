"""How long a store of many years takes: to open, to read, to export.

    python -m tests.bench.bench_store --people 5 --years 10

Prints processor seconds, so that other programs on the computer do not count.
"""

import argparse
import dataclasses
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History
from measure.export.formats import Format, export
from measure.export.history_json import history_from_json
from measure.storage.backup import backup
from measure.storage.store import Store
from tests.support import record_samples as sample

MOVEMENTS = (Movement.FLEXION, Movement.ABDUCTION, Movement.EXTERNAL_ROTATION)


def daily_history(name: str, days: int) -> History:
    """Return a person with a session on each of `days` days, six measurements in each."""
    who = sample.person(name)
    sessions = tuple(sample.session(who, day) for day in range(days))
    measured = []
    for day, session in enumerate(sessions):
        source = sample.PROVENANCE.source | {"frames": f"{day} of {days}"}
        provenance = dataclasses.replace(sample.PROVENANCE, source=source)
        for number, (movement, side) in enumerate(
            (movement, side) for movement in MOVEMENTS for side in Side
        ):
            found = sample.measurement(movement=movement, side=side, provenance=provenance)
            measured.append(sample.record(session, number, found))
    return History(person=who, sessions=sessions, measurements=tuple(measured))


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--people", type=int, default=5)
    parser.add_argument("--years", type=float, default=10)
    chosen = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        measure(Path(folder), chosen.people, round(chosen.years * 365))


def measure(folder: Path, people: int, days: int) -> None:
    """Fill a store and print what each thing done with it takes."""
    path = folder / "sessions.sqlite"
    with Store.open(path) as store:
        for number in range(people):
            history = daily_history(f"Person {number}", days)
            _timed(f"save {history.person.pseudonym}", lambda history=history: store.merge(history))
    print(f"{path.stat().st_size / 1e6:.1f} MB, {people} people, {days} sessions each")
    store = _timed("open", lambda: Store.open(path))
    with store:
        who = _timed("people", store.people)[0]
        _timed("sessions of one", lambda: store.sessions(who.id))
        _timed(
            "one curve of one",
            lambda: store.measurements(who.id, movement=Movement.FLEXION, side=Side.LEFT),
        )
        history = _timed("everything of one", lambda: store.history(who.id))
        for kind in Format:
            made = _timed(f"export {kind}", lambda kind=kind: _export(store, history, kind))
            print(f"{'':20} {len(made) / 1e6:8.1f} MB")
            if kind is Format.JSON:
                _timed("import json", lambda made=made: history_from_json(made))
    _timed("backup", lambda: backup(path, folder / "copy.sqlite"))


def _export(store: Store, history: History, kind: Format) -> bytes:
    return export(history, kind, store.now())


def _timed(name: str, do: Callable[[], Any]) -> Any:
    before = time.process_time()
    result = do()
    print(f"{name:20} {time.process_time() - before:8.2f} s", flush=True)
    return result


if __name__ == "__main__":
    main()
