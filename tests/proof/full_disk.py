"""Commands and saving on a disk that is really full: a sentence, and nothing lost (Linux).

    python -m tests.proof.full_disk [--write]

A small disk in memory is mounted where only this process and its children see it. It holds the
store of the demo people and is filled until nothing or only a little is free; then every command
that writes is run, and measurements are saved until there is no room. Each must succeed whole or
end with a sentence and leave no half of a file; whoever was saved before must be there unchanged.
Once there is room again, saving goes on. Ends with 1 otherwise.
"""

import argparse
import contextlib
import io
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory

from measure.cli.main import main as thawline
from measure.domain.records import History
from measure.errors import MachineError
from measure.storage.store import Store
from tests.proof.page import Proof, finish
from tests.support import record_samples as sample

DISK_MB = 8
#: What is left free before a command is run, kilobytes.
FREE_KB = (0, 4, 16, 48, 128, 400, 1000)

#: Each with the file that it writes, if any; `{disk}` is the full one.
COMMANDS = (
    ("people add Yarrow-{number}", None),
    ("events demo-Clover add flare --day 2026-11-27", None),
    ("import {disk}/new.json", None),
    ("export demo-Bramble --format json --to {disk}/out.json", "out.json"),
    ("export demo-Bramble --format csv --to {disk}/out.csv", "out.csv"),
    ("export demo-Bramble --format fhir --to {disk}/fhir.json", "fhir.json"),
    ("report demo-Bramble --to {disk}/out.html", "out.html"),
    ("report demo-Bramble --to {disk}/out.pdf", "out.pdf"),
    ("backup {disk}/copy.sqlite", "copy.sqlite"),
    ("restore {disk}/good.sqlite", None),
    ("calibrate lens sheet {disk}/board.pdf", "board.pdf"),
)
#: Who is never changed by a command here.
UNTOUCHED = ("demo-Bramble", "demo-Marigold", "demo-Thistle")


@dataclass
class Tally:
    """What became of the commands."""

    done: int = 0
    answered: int = 0
    saved: int = 0
    faults: list[str] = field(default_factory=list)


def try_all(disk: Path) -> Tally:
    """Run every command with each amount of free room, and save until there is none."""
    store = disk / "data" / "sessions.sqlite"
    os.environ["THAWLINE_DATA"] = str(store.parent)
    _run("demo --story")
    _run("people add Nettle")
    _run(f"export Nettle --format json --to {disk}/new.json")
    _run("people delete Nettle --yes")
    _run(f"backup {disk}/good.sqlite")
    before, tally = _untouched(), Tally()
    for free_kb in FREE_KB:
        for number, (command, target) in enumerate(COMMANDS):
            words = command.format(disk=disk, number=f"{free_kb}-{number}")
            with _filled(disk, free_kb):
                code, said = _run(words)
            left = {path.name for path in disk.iterdir()} - {"data", "new.json", "good.sqlite"}
            _judge(f"{words} ({free_kb} KB free)", code, said, tally)
            if left != ({target} if target and not code else set()):
                tally.faults.append(f"{words} ({free_kb} KB free): left {sorted(left)}")
            for name in left:
                (disk / name).unlink()
            if _untouched() != before:
                tally.faults.append(f"{words} ({free_kb} KB free): somebody's history changed")
                return tally
    _save_until_full(disk, tally)
    return tally


def _judge(what: str, code: int, said: str, tally: Tally) -> None:
    tally.done += code == 0
    tally.answered += code != 0
    if code and ("error inside Thawline" in said or not re.search(r"^thawline: .*\.$", said, re.M)):
        tally.faults.append(f"{what}: no sentence: {said.strip()!r}")
    if code not in (0, 1, 2):
        tally.faults.append(f"{what}: ended with {code}: {said.strip()!r}")


def _save_until_full(disk: Path, tally: Tally) -> None:
    who = sample.person("Rosa")
    session = sample.session(who)
    with Store.open() as store:
        store.save_person(who)
        store.save_session(session)
        with _filled(disk, 2000), contextlib.suppress(MachineError):
            for count in range(10_000):
                store.save_measurement(sample.record(session, count))
                tally.saved += 1
        store.save_measurement(sample.record(session, 20_000))
    with Store.open() as store:
        found = len(store.measurements(who.id))
    if found != tally.saved + 1 or not 0 < tally.saved < 10_000:
        tally.faults.append(f"{tally.saved} measurements and one more were saved, {found} found")


def _untouched() -> list[History]:
    with Store.open() as store:
        people = [who for who in store.people() if who.pseudonym in UNTOUCHED]
        return [store.history(who.id) for who in people]


def _run(words: str) -> tuple[int, str]:
    said = io.StringIO()
    with contextlib.redirect_stderr(said), contextlib.redirect_stdout(io.StringIO()):
        try:
            code = thawline(words.split())
        except SystemExit as end:
            code = int(end.code or 0)
    return code, said.getvalue()


@contextlib.contextmanager
def _filled(disk: Path, free_kb: int) -> Iterator[None]:
    """Let so much be free on the disk, and all that was free before afterwards."""
    filler = disk / "data" / "filler"
    with filler.open("wb") as file:
        file.write(bytes(max(0, shutil.disk_usage(disk).free - free_kb * 1024)))
    try:
        yield
    finally:
        filler.unlink()


def on_a_small_disk() -> int:
    """Start this command again where a small disk is mounted, and return how it ended."""
    with TemporaryDirectory() as folder:
        mount = f'mount -t tmpfs -o size={DISK_MB}m none "$0" && exec "$@"'
        way = ["unshare", "--map-root-user", "--mount", "sh", "-c", mount, folder]
        again = [sys.executable, "-m", "tests.proof.full_disk", *sys.argv[1:]]
        done = subprocess.run([*way, *again, "--disk", folder], check=False)
        return done.returncode


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--write", action="store_true", help="write the row into the page")
    parser.add_argument("--disk", type=Path, help=argparse.SUPPRESS)
    arguments = parser.parse_args()
    if arguments.disk is None:
        return on_a_small_disk()
    tally = try_all(arguments.disk)
    proof = Proof(
        subject="full disk",
        counts=f"{tally.done + tally.answered} commands: {tally.done} done, {tally.answered} "
        f"answered in words; {tally.saved} measurements saved before it was full, all there",
        faults=tuple(tally.faults),
        command="python -m tests.proof.full_disk",
    )
    return finish((proof,), wanted=arguments.write)


if __name__ == "__main__":
    sys.exit(main())
