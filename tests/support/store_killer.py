"""Programs that are killed while they work on a store; run as a process of its own.

    python store_killer.py WHAT PATH SEED TIMES

One process loads everything once and forks a child for each death, so that fifty deaths cost
no fifty starts. Half the children die inside SQLite, after a random count of its steps; the
others are killed from outside at a random time. After each death the store is opened and
checked. Prints one line a death: how many measurements are there, or what is wrong.
"""

import os
import random
import shutil
import signal
import sqlite3
import sys
import time
from collections.abc import Callable
from pathlib import Path

from measure.storage.store import Store
from tests.support import record_samples as sample

GOLDEN = Path(__file__).parents[1] / "measure/storage/golden/sessions-of-version-1.sqlite"


def main() -> None:
    what, path, seed, times = sys.argv[1], Path(sys.argv[2]), int(sys.argv[3]), int(sys.argv[4])
    chance = random.Random(seed)
    for number in range(times):
        print(ROUNDS[what](path, number, chance), flush=True)


def save(path: Path, number: int, chance: random.Random) -> str:
    """Save measurements without end until dying; each told one must be there, whole."""
    who = sample.person("Rosa")
    session = sample.session(who, number)
    with Store.open(path) as store:
        before = len(store.measurements(who.id)) if store.people() else 0

    def work(told: int) -> None:
        with Store.open(path) as store:
            _die_inside(store, chance, number, most=4000)
            store.save_person(who)
            store.save_session(session)
            for count in range(1, 10_000):
                store.save_measurement(sample.record(session, count))
                os.write(told, b".")

    told = _killed(work, chance, number, once_told=True)
    with Store.open(path) as store:
        found = store.measurements(who.id)
        whole = all(len(each.measurement.trials) == 4 for each in found)
    # One more may have been saved than was told of.
    if not whole or not before + told <= len(found) <= before + told + 1:
        return f"wrong: {before} before, {told} told, {len(found)} found, whole: {whole}"
    return f"ok {len(found)}"


def update(path: Path, number: int, chance: random.Random) -> str:
    """Bring a store of version 1 up to date until dying; nothing may be lost."""
    for each in path.parent.iterdir():
        each.unlink() if each.is_file() else shutil.rmtree(each)
    shutil.copy(GOLDEN, path)

    def work(told: int) -> None:
        connect = sqlite3.connect
        steps = chance.randrange(20_000)

        def connect_mortally(*arguments: object, **names: object) -> sqlite3.Connection:
            connection = connect(*arguments, **names)
            if number % 2 == 0:
                _die_after(connection, steps)
            return connection

        sqlite3.connect = connect_mortally
        Store.open(path).close()

    _killed(work, chance, number)
    with Store.open(path) as store:
        found = sum(len(store.measurements(who.id)) for who in store.people())
    return "ok 12" if found == 12 else f"wrong: {found} found"


def delete(path: Path, number: int, chance: random.Random) -> str:
    """Delete one of two people until dying; the other stays whole."""
    rosa, emil = sample.person("Rosa"), sample.person("Emil")
    with Store.open(path) as store:
        for who in (rosa, emil):
            store.save_person(who)
            session = sample.session(who, 1)
            store.save_session(session)
            for count in range(10):
                store.save_measurement(sample.record(session, count))

    def work(told: int) -> None:
        with Store.open(path) as store:
            _die_inside(store, chance, number, most=8000)
            store.delete_person(rosa.id)

    _killed(work, chance, number)
    with Store.open(path) as store:
        counts = {who.pseudonym: len(store.measurements(who.id)) for who in store.people()}
    return f"ok {len(counts)}" if counts in ({"Emil": 10}, {"Emil": 10, "Rosa": 10}) else "wrong"


def write(path: Path, number: int, chance: random.Random) -> str:
    """Save 100 sessions, as one of two programs."""
    who = sample.person("Rosa")
    with Store.open(path) as store:
        for _ in range(100):
            session = store.start_session(who.id, note=f"from {os.getpid()}")
            store.save_measurement(sample.record(session))
            store.finish_session(session.id)
    return "ok 100"


def _killed(
    work: Callable[[int], None], chance: random.Random, number: int, *, once_told: bool = False
) -> int:
    """Run `work` in a child until it dies; return how many records it told of.

    Parameters
    ----------
    once_told
        True to wait for the first record before a death from outside.
    """
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reading)
        try:
            work(writing)
        finally:
            os._exit(0)
    os.close(writing)
    told = b""
    if number % 2:
        if once_told:
            told = os.read(reading, 1)
        time.sleep(chance.uniform(0.0, 0.04))
        os.kill(child, signal.SIGKILL)
    while more := os.read(reading, 65536):
        told += more
    os.close(reading)
    os.waitpid(child, 0)
    return len(told)


def _die_inside(store: Store, chance: random.Random, number: int, most: int) -> None:
    if number % 2 == 0:
        _die_after(store._connection, chance.randrange(most))


def _die_after(connection: sqlite3.Connection, steps: int) -> None:
    """Kill this process after a count of SQLite's own steps."""
    left = [steps]

    def step() -> int:
        left[0] -= 1
        if left[0] < 0:
            os.kill(os.getpid(), signal.SIGKILL)
        return 0

    connection.set_progress_handler(step, 1)


ROUNDS = {"save": save, "update": update, "delete": delete, "write": write}

if __name__ == "__main__":
    main()
