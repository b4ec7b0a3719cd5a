"""Programs killed at random moments of saving, of a round and of a batch: nothing is lost.

    python -m tests.proof.kills [--times 50] [--first SEED] [--only saving round batch] [--write]

Saving: half die inside SQLite after a random count of its steps, half from outside while
measurements are saved without end. Round: a window leads one and is killed while it starts or
leads. Batch: `thawline replay` on hundreds of scripted clips is killed again and again, alone or
with its workers, and resumed. After each death the store or the results file must open and hold
all that was said to be saved; a batch must end as a clean run does. Ends with 1 otherwise.
"""

import argparse
import os
import random
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.proof.page import ROOT, Proof, finish, typed_command
from tests.support import scripted_batch, store_killer
from tests.support.gui import round_process

CLIPS = 300
#: Longest wait after the first sign of work, seconds: a round of ten repetitions takes less.
LONGEST_WAIT_S = 2.0
#: One in so many dies while it still starts.
STARTING_EVERY = 5
#: Longest time that a start may take on a busy computer, seconds.
LONGEST_START_S = 120.0


def killed_while_saving(times: int, seed: int) -> tuple[str, list[str]]:
    """Save measurements until dying; return what was counted, and what is wrong."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "sessions.sqlite"
        done = subprocess.run(
            [sys.executable, store_killer.__file__, "save", str(path), str(seed), str(times)],
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            capture_output=True,
            text=True,
            check=False,
        )
    lines = done.stdout.splitlines()
    faults = [line for line in lines if not line.startswith("ok ")]
    if len(lines) != times or done.stderr:
        faults.append(f"{len(lines)} deaths of {times}: {done.stderr}")
    saved = lines[-1].split()[-1] if lines else "0"
    return f"{len(lines)} kills, {saved} measurements saved, all whole", faults


def killed_rounds(times: int, seed: int) -> tuple[str, list[str]]:
    """Lead rounds until they are killed; return what was counted, and what is wrong."""
    chance, faults, repetitions, early = random.Random(seed), [], 0, 0
    for number in range(times):
        with TemporaryDirectory() as folder:
            place = Path(folder)
            round_process.begin_store(place)
            child = round_process.start_round(place)
            assert child.stdout is not None
            told = 0
            if number % STARTING_EVERY:
                told = child.stdout.readline().count("saved")
            time.sleep(chance.uniform(0.0, LONGEST_WAIT_S))
            child.kill()
            told += child.stdout.read().count("saved\n")
            child.wait()
            child.stdout.close()
            faults += [f"round {number}: {each}" for each in round_process.lost(place, told)]
        repetitions += told
        early += told == 0
    return f"{times} kills, {early} before a repetition, {repetitions} repetitions saved", faults


def killed_batches(times: int, seed: int) -> tuple[str, list[str]]:
    """Kill and resume batches; return what was counted, and what is wrong."""
    chance, faults, kills, batches = random.Random(seed), [], 0, 0
    with TemporaryDirectory() as folder:
        place = Path(folder)
        manifest = scripted_batch.write_manifest(place, CLIPS)
        clean, _ = scripted_batch.finished(manifest, place / "clean")
        while kills < times:
            batches += 1
            broken_off = place / f"broken-off-{batches}"
            broken_off.mkdir()
            for wrong in _killed_again_and_again(manifest, broken_off, times - kills, chance):
                kills += 1
                faults += [f"kill {kills}: {each}" for each in wrong]
            files, _ = scripted_batch.finished(manifest, broken_off)
            if files != clean:
                faults.append(f"batch {batches}: another result than that of a clean run")
            counted = scripted_batch.times_read(broken_off / "results.jsonl")
            if len(counted) != CLIPS or set(counted.values()) != {1}:
                faults.append(f"batch {batches}: {len(counted)} clips, not each read once")
    return f"{kills} kills of {batches} batches of {CLIPS} clips, each ended as a clean run", faults


def _killed_again_and_again(
    manifest: Path, folder: Path, times: int, chance: random.Random
) -> Iterator[list[str]]:
    """Yield for each kill what is wrong, until all clips are read or so many kills were made."""
    results = folder / "results.jsonl"
    for number in range(times):
        before = results.read_bytes() if results.exists() else b""
        whole = before[: before.rfind(b"\n") + 1]
        running = scripted_batch.start(manifest, results)
        if number % STARTING_EVERY:
            _wait_for_more(results, len(before), running)
        time.sleep(chance.uniform(0.0, LONGEST_WAIT_S / 4))
        if running.poll() is not None:
            running.communicate()
            return
        scripted_batch.kill(running, with_workers=number % 2 == 0)
        after = results.read_bytes() if results.exists() else b""
        yield [] if after.startswith(whole) else ["results that were there are gone"]


def _wait_for_more(results: Path, size: int, running: "subprocess.Popen[bytes]") -> None:
    until_s = time.monotonic() + LONGEST_START_S
    while running.poll() is None and time.monotonic() < until_s:
        if results.exists() and results.stat().st_size > size:
            return
        time.sleep(0.01)


#: Each with its subject on the page.
KINDS: dict[str, tuple[str, Callable[[int, int], tuple[str, list[str]]]]] = {
    "saving": ("killed while saving", killed_while_saving),
    "round": ("killed during a round", killed_rounds),
    "batch": ("killed during a batch", killed_batches),
}


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--times", type=int, default=50)
    parser.add_argument("--first", type=int, default=0, help="the seed of the random moments")
    parser.add_argument("--only", nargs="+", choices=KINDS, default=tuple(KINDS))
    parser.add_argument("--write", action="store_true", help="write the rows into the page")
    arguments = parser.parse_args()
    code = 0
    for kind in arguments.only:
        subject, run = KINDS[kind]
        counts, faults = run(arguments.times, arguments.first)
        proof = Proof(
            subject=subject,
            counts=counts,
            faults=tuple(faults),
            command=typed_command("tests.proof.kills"),
        )
        code |= finish((proof,), wanted=arguments.write)
    return code


if __name__ == "__main__":
    sys.exit(main())
