"""Stores and exports with random damage: read, or answered in plain words; never a traceback."""

import random
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from measure.domain.records import History
from measure.errors import ThawlineError
from measure.export.history_json import history_from_json, history_json
from measure.storage.backup import inspect, restore
from measure.storage.store import Store
from tests.support import record_samples as sample
from tests.support.record_samples import FixedClock

GOLDEN = Path(__file__).parent / "golden" / "sessions-of-version-1.sqlite"
STORES, FILES = 120, 1000


def _cut(data: bytearray, chance: random.Random) -> None:
    del data[chance.randrange(len(data)) :]


def _bytes(data: bytearray, chance: random.Random) -> None:
    for _ in range(chance.randrange(1, 20)):
        data[chance.randrange(len(data))] = chance.randrange(256)


def _header(data: bytearray, chance: random.Random) -> None:
    data[chance.randrange(100)] = chance.randrange(256)


def _splice(data: bytearray, chance: random.Random) -> None:
    start, other = chance.randrange(len(data)), chance.randrange(len(data))
    length = chance.randrange(1, 3000)
    data[start : start + length] = data[other : other + length]


def _page(data: bytearray, chance: random.Random) -> None:
    start = chance.randrange(len(data)) // 1024 * 1024
    data[start : start + 1024] = chance.randbytes(1024)


DAMAGES: tuple[Callable[[bytearray, random.Random], None], ...] = (
    _cut,
    _bytes,
    _header,
    _splice,
    _page,
)


def _damaged(data: bytes, seed: int, count: int) -> Iterator[bytes]:
    chance = random.Random(seed)
    for number in range(count):
        changed = bytearray(data)
        DAMAGES[number % len(DAMAGES)](changed, chance)
        yield bytes(changed)


def _read(path: Path) -> None:
    with Store.open(path) as store:
        for who in store.people():
            store.history(who.id)
        for who in store.people():
            store.delete_person(who.id)


@pytest.mark.parametrize("seed", [1, 2])
def test_damaged_stores(seed: int, tmp_path: Path) -> None:
    current = tmp_path / "sessions.sqlite"
    with Store.open(current) as store:
        who = sample.person()
        session = sample.session(who)
        store.merge(
            History(person=who, sessions=(session,), measurements=(sample.record(session),))
        )
    data = GOLDEN.read_bytes() if seed == 1 else current.read_bytes()
    answered = 0
    for number, changed in enumerate(_damaged(data, seed, STORES // 2)):
        folder = tmp_path / str(number)
        folder.mkdir()
        copy = folder / "copy.sqlite"
        copy.write_bytes(changed)
        jobs: tuple[Callable[[], object], ...] = (
            lambda copy=copy: inspect(copy),
            lambda copy=copy, folder=folder: restore(
                copy, folder / "restored" / "sessions.sqlite", FixedClock()
            ),
            lambda copy=copy: _read(copy),
        )
        for job in jobs:
            try:
                job()
            except ThawlineError as error:
                answered += bool(str(error))
        assert not list(folder.glob(".*"))
        restored = folder / "restored"
        assert not restored.exists() or not list(restored.glob(".*"))
    assert answered > STORES // 2


def test_damaged_exports() -> None:
    who = sample.person()
    session = sample.session(who)
    history = History(person=who, sessions=(session,), measurements=(sample.record(session),))
    data = history_json(history, FixedClock().now(), "0.1.0")
    answered = 0
    for changed in _damaged(data, 3, FILES):
        try:
            history_from_json(changed)
        except ThawlineError as error:
            answered += bool(str(error))
    assert answered > FILES // 2
