"""A batch of scripted clips that is broken off and resumed, as a process of its own."""

import csv
import json
import os
import signal
import subprocess
import sys
from collections import Counter
from pathlib import Path

from tests.support import scripted_arm

ROOT = Path(__file__).resolve().parents[2]
#: Of so many clips one is broken.
BROKEN_EVERY = 10


def write_manifest(folder: Path, clips: int) -> Path:
    """Write so many clips, every tenth broken, and return the manifest that lists them."""
    with (folder / "clips.csv").open("w", encoding="utf-8", newline="") as file:
        rows = csv.writer(file)
        rows.writerow(("clip", "movement", "side"))
        for number in range(clips):
            clip = folder / f"plot-{number:03d}.mp4"
            if number % BROKEN_EVERY == 3:
                clip.write_bytes(b"\0broken %d" % number)
            else:
                scripted_arm.write_clip(clip, peak=40.0 + number / 4)
            rows.writerow((clip.name, "flexion", "left"))
    return folder / "clips.csv"


def start(manifest: Path, results: Path, *more: str) -> "subprocess.Popen[bytes]":
    """Start reading the batch with two workers, in a process group of its own."""
    words = ["replay", "--manifest", str(manifest), "--results", str(results), "--workers", "2"]
    return subprocess.Popen(
        [sys.executable, "-m", "tests.support.replay_of_script", *words, *more],
        cwd=ROOT,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        start_new_session=True,
    )


def kill(running: "subprocess.Popen[bytes]", *, with_workers: bool = False) -> None:
    """Kill the program without warning, alone or with its workers."""
    if with_workers:
        os.killpg(running.pid, signal.SIGKILL)
    else:
        running.send_signal(signal.SIGKILL)
    running.communicate()


def finished(manifest: Path, folder: Path) -> tuple[dict[str, bytes], str]:
    """Read what is left, and return both files and what the program said."""
    folder.mkdir(exist_ok=True)
    outputs = ("--csv", str(folder / "t.csv"), "--json", str(folder / "r.json"))
    running = start(manifest, folder / "results.jsonl", *outputs)
    _, said = running.communicate()
    assert running.returncode == 2, said
    return {name: (folder / name).read_bytes() for name in ("t.csv", "r.json")}, said.decode()


def times_read(results: Path) -> Counter[str]:
    """Return how often the results file holds each clip's key."""
    rows = results.read_text(encoding="utf-8").splitlines()
    return Counter(json.loads(row)["key"] for row in rows if row.endswith("}"))
