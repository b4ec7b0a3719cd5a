"""Hundreds of clips, some broken, killed twice and resumed: the same as one clean run."""

import csv
import json
import os
import signal
import subprocess
import sys
import time
from collections import Counter
from pathlib import Path

import pytest

from tests.support import scripted_arm

ROOT = Path(__file__).resolve().parents[3]
CLIPS = 300

pytestmark = [
    pytest.mark.timeout(600),
    pytest.mark.skipif(os.name == "nt", reason="not on this system: signals"),
]


@pytest.fixture(scope="module")
def manifest(tmp_path_factory):
    """A manifest of 300 clips of which every tenth is broken."""
    folder = tmp_path_factory.mktemp("allotment")
    with (folder / "clips.csv").open("w", encoding="utf-8", newline="") as file:
        rows = csv.writer(file)
        rows.writerow(("clip", "movement", "side"))
        for number in range(CLIPS):
            clip = folder / f"plot-{number:03d}.mp4"
            if number % 10 == 3:
                clip.write_bytes(b"\0broken %d" % number)
            else:
                scripted_arm.write_clip(clip, peak=40.0 + number / 4)
            rows.writerow((clip.name, "flexion", "left"))
    return folder / "clips.csv"


def start(manifest, results, *more):
    words = ["replay", "--manifest", str(manifest), "--results", str(results), "--workers", "2"]
    return subprocess.Popen(
        [sys.executable, "-m", "tests.support.replay_of_script", *words, *more],
        cwd=ROOT,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.PIPE,
        start_new_session=True,
    )


def killed_after(lines, manifest, results):
    """Start, and kill without warning as soon as so many results are there."""
    running = start(manifest, results)
    until = time.monotonic() + 120
    while time.monotonic() < until and running.poll() is None:
        if results.exists() and results.read_bytes().count(b"\n") >= lines:
            break
        time.sleep(0.05)
    assert running.poll() is None, "it ended before it could be killed"
    running.send_signal(signal.SIGKILL)
    running.communicate()


def finished(manifest, folder):
    folder.mkdir(exist_ok=True)
    outputs = ("--csv", str(folder / "t.csv"), "--json", str(folder / "r.json"))
    running = start(manifest, folder / "results.jsonl", *outputs)
    _, said = running.communicate()
    assert running.returncode == 2, said
    return {name: (folder / name).read_bytes() for name in ("t.csv", "r.json")}, said.decode()


def test_killed_twice_and_resumed_is_the_same_as_one_clean_run(manifest, tmp_path):
    broken_off = tmp_path / "broken-off"
    broken_off.mkdir()
    results = broken_off / "results.jsonl"
    killed_after(60, manifest, results)
    whole = results.read_bytes()
    # A power cut may leave half a line behind.
    results.write_bytes(whole[: whole.rindex(b"\n", 0, -1) + 40])
    before = results.read_bytes().count(b"\n")
    assert 50 < before < CLIPS
    killed_after(before + 100, manifest, results)
    files, said = finished(manifest, broken_off)
    assert "1 incomplete line" in said
    clean, _ = finished(manifest, tmp_path / "clean")
    assert files == clean

    keys = Counter()
    for row in results.read_text(encoding="utf-8").splitlines():
        if row.endswith("}"):
            keys[json.loads(row)["key"]] += 1
    assert len(keys) == CLIPS
    assert set(keys.values()) == {1}, "a clip was read again although its result was there"

    rows = list(csv.DictReader(files["t.csv"].decode().splitlines()))
    assert [Path(row["clip"]).name for row in rows] == [f"plot-{n:03d}.mp4" for n in range(CLIPS)]
    assert sum(row["status"] == "not read" for row in rows) == CLIPS // 10
    values = [float(row["value"]) for row in rows if row["status"] == "reading"]
    assert len(values) == CLIPS - CLIPS // 10
    assert values == sorted(values)
