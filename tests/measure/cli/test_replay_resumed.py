"""Hundreds of clips, some broken, killed twice and resumed: the same as one clean run."""

import csv
import os
import time
from pathlib import Path

import pytest

from tests.support.scripted_batch import (
    BROKEN_EVERY,
    finished,
    kill,
    start,
    times_read,
    write_manifest,
)

CLIPS = 300

pytestmark = [
    pytest.mark.timeout(600),
    pytest.mark.skipif(os.name == "nt", reason="not on this system: signals"),
]


@pytest.fixture(scope="module")
def manifest(tmp_path_factory):
    """A manifest of 300 clips of which every tenth is broken."""
    return write_manifest(tmp_path_factory.mktemp("allotment"), CLIPS)


def killed_after(lines, manifest, results):
    """Start, and kill without warning as soon as so many results are there."""
    running = start(manifest, results)
    until = time.monotonic() + 120
    while time.monotonic() < until and running.poll() is None:
        if results.exists() and results.read_bytes().count(b"\n") >= lines:
            break
        time.sleep(0.05)
    assert running.poll() is None, "it ended before it could be killed"
    kill(running)


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

    keys = times_read(results)
    assert len(keys) == CLIPS
    assert set(keys.values()) == {1}, "a clip was read again although its result was there"

    rows = list(csv.DictReader(files["t.csv"].decode().splitlines()))
    assert [Path(row["clip"]).name for row in rows] == [f"plot-{n:03d}.mp4" for n in range(CLIPS)]
    assert sum(row["status"] == "not read" for row in rows) == CLIPS // BROKEN_EVERY
    values = [float(row["value"]) for row in rows if row["status"] == "reading"]
    assert len(values) == CLIPS - CLIPS // BROKEN_EVERY
    assert values == sorted(values)
