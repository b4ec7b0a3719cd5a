"""Hundreds of clips, a tenth of them broken: one clean run against one killed twice and resumed."""

import json
import os
import random
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

from tests.bench.speed_clips import small_clips
from tests.bench.speed_effort import Effort
from tests.bench.speed_table import Row

#: Every so-manyth clip is broken.
_BROKEN_EVERY = 10
#: Shares of the lines after which the run is killed.
_KILLED_AFTER = (1 / 3, 2 / 3)
_LONGEST_S = 3600.0


def killed_twice(folder: Path, effort: Effort) -> Iterator[Row]:
    """The same clips through the command twice; its table and its results have to be the same."""
    manifest = study(folder / "study", effort.resumed)
    clean = _run(manifest, "clean", [])
    broken_off = _run(manifest, "resumed", [round(effort.resumed * each) for each in _KILLED_AFTER])
    same = {
        "table": clean.with_suffix(".csv").read_bytes()
        == broken_off.with_suffix(".csv").read_bytes(),
        "results": _lines(clean) == _lines(broken_off),
    }
    if not all(same.values()):
        raise RuntimeError(f"a run that was broken off gave something else: {same}")
    whole = _lines(broken_off)
    kinds = [json.loads(line) for line in whole]
    failed = sum(kind.get("error") is not None for kind in kinds)
    yield Row(
        mark="h",
        what=f"{effort.resumed} clips, a tenth broken: killed twice and resumed, against one run",
        goal="the same",
        measured=f"the same table byte for byte and the same {len(whole)} results, each once "
        f"({failed} could not be read; two workers, lite model)",
    )


def study(folder: Path, count: int) -> Path:
    """Return the manifest of so many clips of different content, a tenth of them broken."""
    folder.mkdir()
    sources = small_clips(folder)
    rows = ["clip,movement,side"]
    chance = random.Random(3)
    for number in range(count):
        entry = sources[number % len(sources)]
        clip = folder / f"bed-{number:03d}.mp4"
        command = ["ffmpeg", "-nostdin", "-loglevel", "error", "-i", str(entry.clip), "-c", "copy"]
        subprocess.run([*command, "-metadata", f"comment={number}", str(clip)], check=True)
        if number % _BROKEN_EVERY == _BROKEN_EVERY - 1:
            whole = clip.read_bytes()
            clip.write_bytes(chance.choice([b"", whole[: len(whole) // 3], chance.randbytes(4000)]))
        rows.append(f"{clip.name},{entry.movement.value},{entry.side.value}")
    manifest = folder / "study.csv"
    manifest.write_text("\n".join(rows) + "\n", encoding="utf-8")
    return manifest


def _run(manifest: Path, name: str, killed_after: list[int]) -> Path:
    """Run the command to its end, killed before as often as told; return its results' file."""
    results = manifest.with_name(f"{name}.jsonl")
    command = [sys.executable, "-m", "measure.cli.main", "replay", "--manifest", str(manifest)]
    command += ["--results", str(results), "--csv", str(results.with_suffix(".csv"))]
    command += ["--workers", "2", "--model-quality", "lite"]
    for lines in killed_after:
        run = subprocess.Popen(command, stdout=subprocess.DEVNULL, start_new_session=True)
        until = time.monotonic() + _LONGEST_S
        while not results.exists() or results.read_bytes().count(b"\n") < lines:
            if run.poll() is not None or time.monotonic() > until:
                raise RuntimeError("the run ended before it could be killed")
            time.sleep(0.05)
        os.killpg(run.pid, signal.SIGKILL)
        run.wait()
    done = subprocess.run(command, stdout=subprocess.DEVNULL, check=False)
    if done.returncode != 2:  # some clips could not be read
        raise RuntimeError(f"the run ended with {done.returncode}")
    return results


def _lines(results: Path) -> list[bytes]:
    """Return the whole lines of a results' file, sorted: they come in the order of finishing."""
    lines = []
    for line in results.read_bytes().splitlines():
        try:
            json.loads(line)
        except ValueError:
            continue  # half a line, left by a kill
        lines.append(line)
    return sorted(lines)
