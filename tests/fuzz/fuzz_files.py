"""Damaged files of every kind that this program reads: used, or answered in plain words.

What is readable in spite of its damage is used further: histories are kept, exported, judged
and reported. No traceback, no hang, nothing else in the folder changed.
"""

import datetime as dt
import hashlib
import io
import random
import shutil
import sqlite3
import time
import zipfile
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np

from calibration.agreement.pairs_table import read_pairs
from calibration.agreement.report import format_studies
from calibration.statistics.bland_altman import Pairing
from gui.session.settings import WindowSettings
from measure.clips.inputs import read_manifest
from measure.domain.records import History
from measure.errors import ClipError, ThawlineError
from measure.export.formats import Format, export
from measure.export.history_json import history_json, read_history
from measure.pose_models.bundles import own_bundle
from measure.pose_models.catalogue import ModelQuality
from measure.progress.overview import progress_of
from measure.report.page import report_html
from measure.storage.backup import inspect, restore
from measure.storage.calibration_files import FILES, CalibrationFile, take_in
from measure.storage.store import Store
from measure.video.container import check_clip
from tests.fuzz.bounds import most_memory_mb
from tests.fuzz.damage import damaged
from tests.fuzz.kept_files import results_file, setup_file, use_results, use_setup
from tests.fuzz.kept_tracks import kept_tracks, use_tracks
from tests.fuzz.values import HOSTILE_TEXTS, hostile_json, hostile_table
from tests.support import record_samples as sample
from tests.support.fake_packages import BUNDLES

#: No file may take longer, seconds.
LONGEST_S = 20.0

#: Letters of an answer: ten remarks about a table have 2,000.
LONGEST_LETTERS = 2500

#: No file may take more memory than was ever taken before it, megabytes (where that is told).
MOST_MORE_MB = 200.0

TODAY = dt.date(2026, 11, 25)

_CALIBRATION_FILES = Path(__file__).parents[1] / "measure/storage/golden/calibration-of-version-1"


@dataclass
class Tally:
    """What became of the files."""

    tried: int = 0
    used: int = 0
    sentences: int = 0
    slowest_s: float = 0.0
    slowest: str = ""
    largest_mb: float = 0.0
    faults: list[str] = field(default_factory=list)


@dataclass(frozen=True)
class Kind:
    """A kind of file: a good one, how it is damaged, and what reads it."""

    name: str
    good: Callable[[], bytes]
    damage: Callable[[bytes, int], bytes]
    use: Callable[[Path], object]


def _bytes_or(structured: Callable[[bytes, random.Random], bytes]) -> Callable[[bytes, int], bytes]:
    """Return a way to damage that works on bytes for every third seed, else on values."""

    def damage(data: bytes, seed: int) -> bytes:
        return damaged(data, seed) if seed % 3 == 0 else structured(data, random.Random(seed))

    return damage


# -- tables ---------------------------------------------------------------------------------------


def _manifest() -> bytes:
    rows = ["clip,movement,side,view,reference"]
    rows += [f"clips/raise {n}.mp4,flexion,left,side,{100 + n}" for n in range(4)]
    return "\n".join(rows).encode()


def _use_manifest(path: Path) -> None:
    for entry in read_manifest(path):
        try:
            check_clip(entry.clip)
        except ClipError as error:
            if is_sentence(error):
                continue
            raise AssertionError(f"no sentence: {str(error)[:300]}") from None
        raise AssertionError(f"{entry.clip} passed for a clip")


def _pairs() -> bytes:
    chance = random.Random(1)
    rows = ["person,movement,side,camera_deg,goniometer_deg,repeat,tester"]
    for n in range(24):
        true = 60 + 4 * n
        rows.append(
            f"P{n % 12},abduction,{('left', 'right')[n % 2]},{true + chance.gauss(0, 4):.1f},"
            f"{true + chance.gauss(0, 2):.1f},,Wren"
        )
    return "\n".join(rows).encode()


def _use_pairs(path: Path) -> None:
    format_studies(read_pairs(path), Pairing.SAME_MOVE, "study")


# -- histories ------------------------------------------------------------------------------------


@cache
def _history() -> History:
    who = sample.person()
    first, second = sample.session(who, 1), sample.session(who, 2)
    return History(
        person=who,
        sessions=(first, second),
        measurements=(
            sample.record(first),
            sample.record(first, 2, sample.REACH),
            sample.record(second, 1, sample.REFUSAL),
        ),
        events=(sample.event(who),),
        plans=(sample.plan(who),),
        exercises_done=(sample.exercise_log(who),),
    )


def _exported() -> bytes:
    return history_json(_history(), sample.FixedClock().now(), "0.1.0")


def _use_history(history: History) -> None:
    now = sample.FixedClock("2026-11-25T08:00:00+00:00").now()
    for kind in Format:
        export(history, kind, now)
    report_html(history, TODAY)
    progress_of(history, TODAY)


def _use_export(path: Path) -> None:
    history = read_history(path)
    with Store.open(path.parent / "kept" / "sessions.sqlite") as store:
        _use_history(store.history(store.merge(history).person.id))


@cache
def _store() -> bytes:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "sessions.sqlite"
        with Store.open(path) as store:
            store.merge(_history())
        return path.read_bytes()


def _hostile_store(data: bytes, chance: random.Random) -> bytes:
    """Return the store with hostile texts and numbers where its tables take them."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "sessions.sqlite"
        path.write_bytes(data)
        connection = sqlite3.connect(path, isolation_level=None)
        try:
            connection.execute("PRAGMA ignore_check_constraints = ON")
            tables = [row[0] for row in connection.execute("SELECT name FROM sqlite_schema")]
            for _ in range(chance.choice((1, 2, 6))):
                _change_a_value(connection, chance.choice(tables), chance)
        finally:
            connection.close()
        return path.read_bytes()


def _change_a_value(connection: sqlite3.Connection, table: str, chance: random.Random) -> None:
    try:
        rows = connection.execute(f'SELECT name FROM pragma_table_info("{table}")').fetchall()
        column = chance.choice(rows)[0]
        value = chance.choice((*HOSTILE_TEXTS, -1, 2**62, 1e300, None, "[]", "{}", "[" * 3000))
        if chance.random() < 0.15:
            connection.execute(f'DELETE FROM "{table}" WHERE rowid % 2')
        else:
            connection.execute(f'UPDATE "{table}" SET "{column}" = ?', (value,))
    except (sqlite3.Error, IndexError, UnicodeEncodeError):
        return  # the tables do not take it: so it cannot be met


def _use_store(path: Path) -> None:
    faults = []
    jobs: tuple[Callable[[], object], ...] = (
        lambda: inspect(path),
        lambda: restore(path, path.parent / "restored" / "sessions.sqlite", sample.FixedClock()),
        lambda: _read_store(path.parent / "copy" / "sessions.sqlite"),
    )
    (path.parent / "copy").mkdir()
    shutil.copy(path, path.parent / "copy" / "sessions.sqlite")
    for job in jobs:
        try:
            job()
        except ThawlineError as error:
            faults.append(error)
    if faults:
        raise faults[0]


def _read_store(path: Path) -> None:
    with Store.open(path) as store:
        for who in store.people():
            _use_history(store.history(who.id))
        for who in store.people():
            store.delete_person(who.id)


# -- what calibration keeps -----------------------------------------------------------------------


def _calibration_file(file: CalibrationFile) -> Callable[[], bytes]:
    return cache(file.path(_CALIBRATION_FILES).read_bytes)


def _use_calibration_file(file: CalibrationFile) -> Callable[[Path], None]:
    """Take the file into a store; what cannot be used is left as it is."""

    def use(path: Path) -> None:
        content = path.read_bytes()
        with TemporaryDirectory() as folder, Store.in_memory() as store:
            file.path(Path(folder)).write_bytes(content)
            store.save_person(sample.person())
            unusable = take_in(store._connection, Path(folder))
            assert file.path(Path(folder)).read_bytes() == content
            store.history(sample.person().id)
            if unusable:
                raise unusable[file.name]

    return use


def _hostile_lines(data: bytes, chance: random.Random) -> bytes:
    """Return lines of JSON, some of them changed, cut, doubled or exchanged."""
    lines = data.splitlines(keepends=True)
    for _ in range(chance.choice((1, 2, 3))):
        place = chance.randrange(len(lines))
        kind = chance.randrange(4)
        if kind == 0:
            lines[place] = lines[place][: chance.randrange(len(lines[place]))]
        elif kind == 1:
            lines.insert(place, chance.choice(lines))
        else:
            lines[place] = hostile_json(data.splitlines()[0], chance) + b"\n"
    return b"".join(lines)


# -- arrays, bundles, settings --------------------------------------------------------------------


def _hostile_arrays(data: bytes, chance: random.Random) -> bytes:
    """Return the arrays with lying shapes, other kinds, other names, or what they say changed."""
    changed = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as before, zipfile.ZipFile(changed, "w") as after:
        chosen = chance.choice(before.namelist())
        for name in before.namelist():
            content = before.read(name)
            if name == "said.npy" and (chosen == name or chance.random() < 0.5):
                said = bytes(np.load(io.BytesIO(content)))
                content = _as_npy(np.frombuffer(hostile_json(said, chance), dtype=np.uint8))
            elif name == chosen:
                content = _hostile_array(content, chance)
            if content is not None:
                after.writestr(name, content, chance.choice((0, zipfile.ZIP_DEFLATED)))
    return changed.getvalue()


def _hostile_array(content: bytes, chance: random.Random) -> bytes | None:
    kind = chance.randrange(5)
    if kind == 0:
        return None
    if kind == 1:
        return _as_npy(np.full((3, 2), chance.choice((np.nan, np.inf, -1e308, 0.0))))
    if kind == 2:
        return damaged(content, chance.randrange(1 << 30))
    header_end = 10 + int.from_bytes(content[8:10], "little")
    header = content[10:header_end].decode("latin-1")
    start = header.index("'shape': (") + len("'shape': (")
    shape = chance.choice(("10000000000,", "-1,", "3, 10000000", "", "2**40,", "1, 1, 1, 1"))
    lied = header[:start] + shape + header[header.index(")", start) :]
    if kind == 3:
        lied = lied.replace("<f8", chance.choice(("|O", "<U9", "<c16", "|V0", "<f4")))
    lied = lied.rstrip("\n ") + "\n"
    return content[:8] + len(lied).to_bytes(2, "little") + lied.encode() + content[header_end:]


def _as_npy(array: np.ndarray) -> bytes:
    file = io.BytesIO()
    np.save(file, array, allow_pickle=False)
    return file.getvalue()


def _bundle() -> bytes:
    return BUNDLES[ModelQuality.FULL]


def _hostile_zip(data: bytes, chance: random.Random) -> bytes:
    """Return the bundle with absurd numbers in the headers of its entries and its index."""
    changed = bytearray(data)
    for _ in range(chance.choice((1, 2, 4))):
        mark = chance.choice((b"PK\x01\x02", b"PK\x03\x04", b"PK\x05\x06"))
        places = [n for n in range(len(changed) - 4) if changed[n : n + 4] == mark]
        place = chance.choice(places) + chance.randrange(4, 46) if places else 0
        width = chance.choice((1, 2, 4))
        number = chance.choice((0, 1, 8, 9, 12, 14, 97, 0x2041, 0xFFFF, 0xFFFFFFFF, 0x7FFFFFFF))
        changed[place : place + width] = (number % (1 << 8 * width)).to_bytes(width, "little")
    return bytes(changed)


@cache
def _settings() -> bytes:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "window.ini"
        settings = WindowSettings(path)
        for name in _SETTINGS:
            if getattr(type(settings), name).fset is not None:
                setattr(settings, name, getattr(settings, name))
        settings.save()
        return path.read_bytes()


_SETTINGS = sorted(
    name for name, value in vars(WindowSettings).items() if isinstance(value, property)
)


def _hostile_settings(data: bytes, chance: random.Random) -> bytes:
    lines = data.decode().splitlines()
    for _ in range(chance.choice((1, 3, 9))):
        place = chance.randrange(len(lines))
        hostile = (*HOSTILE_TEXTS, "@Variant(\\0\\0\\0\\x7f)", "@Invalid()", "@ByteArray(\\xff)")
        lines[place] = lines[place].split("=")[0] + "=" + chance.choice(hostile)
    return "\n".join(lines).encode("utf-8", "replace")


def _use_settings(path: Path) -> None:
    copy = path.with_name("copy.ini")
    shutil.copy(path, copy)
    settings = WindowSettings(copy)
    for name in _SETTINGS:
        getattr(settings, name)


# -- all of them ----------------------------------------------------------------------------------

KINDS = (
    Kind("manifest", _manifest, _bytes_or(hostile_table), _use_manifest),
    Kind("export", _exported, _bytes_or(hostile_json), _use_export),
    Kind("store", _store, _bytes_or(_hostile_store), _use_store),
    *(
        Kind(
            file.name,
            _calibration_file(file),
            _bytes_or(hostile_json),
            _use_calibration_file(file),
        )
        for file in FILES
    ),
    Kind("set-up", setup_file, _bytes_or(hostile_json), use_setup),
    Kind("results", results_file, _bytes_or(_hostile_lines), use_results),
    Kind("pairs", _pairs, _bytes_or(hostile_table), _use_pairs),
    Kind("bundle", _bundle, _bytes_or(_hostile_zip), own_bundle),
    Kind("tracks", cache(kept_tracks), _bytes_or(_hostile_arrays), use_tracks),
    Kind("settings", _settings, _bytes_or(_hostile_settings), _use_settings),
)


def fuzz(folder: Path, first: int, count: int) -> Tally:
    """Use damaged files one after the other; `THAWLINE_DATA` must be a folder for this."""
    tally = Tally()
    for seed in range(first, first + count):
        kind = KINDS[seed % len(KINDS)]
        place = folder / str(seed)
        place.mkdir()
        path = place / f"file of {kind.name}"
        path.write_bytes(kind.damage(kind.good(), seed // len(KINDS)))
        bystander = place / "bystander.csv"
        bystander.write_text("beans")
        _try(kind, path, f"{seed} ({kind.name})", tally)
        if bystander.read_text() != "beans" or list(place.glob(".*")):
            tally.faults.append(f"{seed} ({kind.name}): something else in the folder was changed")
        shutil.rmtree(place)
    return tally


def is_sentence(error: ThawlineError) -> bool:
    """Whether an answer is neither too short nor too long to read, and steers no terminal."""
    text = str(error)
    return 20 <= len(text) <= LONGEST_LETTERS and all(
        letter.isprintable() or letter == "\n" for letter in text
    )


def _try(kind: Kind, path: Path, name: str, tally: Tally) -> None:
    tally.tried += 1
    before = hashlib.sha256(path.read_bytes()).digest()
    began_s = time.monotonic()
    try:
        kind.use(path)
    except ThawlineError as error:
        tally.sentences += 1
        if not is_sentence(error):
            tally.faults.append(f"{name}: no sentence: {str(error)[:300]!r}")
    except BaseException as error:  # noqa: BLE001 - this is what is looked for
        tally.faults.append(f"{name}: {type(error).__name__}: {str(error)[:300]}")
    else:
        tally.used += 1
    took_s = time.monotonic() - began_s
    largest_mb = most_memory_mb()
    if largest_mb > tally.largest_mb + MOST_MORE_MB and tally.tried > len(KINDS):
        tally.faults.append(f"{name}: took {largest_mb - tally.largest_mb:.0f} MB")
    tally.largest_mb = largest_mb
    if took_s > tally.slowest_s:
        tally.slowest_s, tally.slowest = took_s, name
    if took_s > LONGEST_S:
        tally.faults.append(f"{name}: took {took_s:.0f} s")
    if hashlib.sha256(path.read_bytes()).digest() != before:
        tally.faults.append(f"{name}: the file was changed")
