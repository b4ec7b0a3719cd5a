"""Clips read by a real local cluster of two worker processes, one of which is killed."""

import csv
import json
import os
import subprocess
import sys
import time
from pathlib import Path

import distributed
import pytest

from measure.batch.cluster_worker import SentClip, job_spec, mismatch, read_on_worker
from measure.cli.main import main
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ReadingSettings
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import MachineError
from tests.support import scripted_arm

ROOT = Path(__file__).resolve().parents[3]
PYTHON = [sys.executable, "-W", "ignore", "-m"]
CLIPS = 14
#: Long enough for a look that a worker is killed in the middle of one.
SLOW_S = 0.2


def started(words, **environment):
    return subprocess.Popen(
        [*PYTHON, *words],
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": str(ROOT), **environment},
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )


def until(happens, seconds=60):
    end = time.monotonic() + seconds
    while not happens():
        assert time.monotonic() < end, "it did not happen in time"
        time.sleep(0.05)


@pytest.fixture
def cluster(tmp_path):
    """The address of a scheduler, and how to start a worker of it."""
    file = tmp_path / "scheduler.json"
    words = ["--host", "127.0.0.1", "--port", "0", "--no-dashboard", "--scheduler-file", str(file)]
    running = [started(["distributed.cli.dask_scheduler", *words])]
    until(lambda: file.exists() and file.read_text().strip().endswith("}"))
    address = json.loads(file.read_text())["address"]

    def worker(**environment):
        words = [address, "--nthreads", "1", "--no-nanny", "--no-dashboard"]
        words += ["--local-directory", str(tmp_path), "--host", "127.0.0.1"]
        words += ["--preload", str(ROOT / "tests" / "support" / "cluster_script.py")]
        running.append(started(["distributed.cli.dask_worker", *words], **environment))
        return running[-1]

    yield address, worker
    for process in reversed(running):
        process.kill()
        process.wait()


@pytest.fixture
def manifest(tmp_path):
    rows = ["clip,movement,side"]
    for number in range(CLIPS):
        clip = tmp_path / f"{number:02d}.mp4"
        if number == 5:
            clip.write_text("broken", encoding="utf-8")
        else:
            scripted_arm.write_clip(clip, peak=50.0 + 5 * number, slow_s=SLOW_S)
        rows.append(f"{clip.name},flexion,left")
    rows.append("gone.mp4,flexion,left")
    (tmp_path / "clips.csv").write_text("\n".join(rows) + "\n", encoding="utf-8")
    return tmp_path / "clips.csv"


def replay(manifest, name, *more):
    outputs = [f"--results={manifest.parent / name}.jsonl", f"--csv={manifest.parent / name}.csv"]
    words = [
        "tests.support.replay_of_script",
        "replay",
        "--manifest",
        str(manifest),
        *outputs,
        *more,
    ]
    return subprocess.Popen(
        [*PYTHON, *words], cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    )


def done(running):
    out, err = running.communicate(timeout=120)
    return running.returncode, out, err


def all_there(address, count):
    with distributed.Client(address, set_as_default=False) as client:
        client.wait_for_workers(count, timeout=60)


@pytest.mark.timeout(300)
def test_a_lost_workers_clips_are_redone_and_numbers_are_those_of_one_computer(cluster, manifest):
    address, worker = cluster
    lost, _ = worker(), worker()
    all_there(address, 2)
    results = manifest.parent / "cluster.jsonl"
    running = replay(manifest, "cluster", "--cluster", address, "--send-clips")
    until(lambda: results.exists() and results.read_bytes().count(b"\n") >= 4)
    lost.kill()
    code, out, err = done(running)
    assert results.read_bytes().count(b"\n") == CLIPS + 1, err
    assert code == 2, err
    assert f"{CLIPS - 1} with a reading" in out
    assert "2 clips could not be read" in out

    here = done(replay(manifest, "here"))
    assert here[0] == 2
    there, own = table(manifest.parent / "cluster.csv"), table(manifest.parent / "here.csv")
    assert there == own
    assert sum(bool(row["value"]) for row in there) == CLIPS - 1


def table(path):
    """Rows without the words of errors, which tell where they happened."""
    with path.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    return [{**row, "error": bool(row["error"])} for row in rows]


@pytest.mark.timeout(180)
def test_another_version_on_a_worker_stops_everything_before_it_begins(cluster, manifest):
    address, worker = cluster
    code, _, err = done(replay(manifest, "nobody", "--cluster", address))
    assert code == 1
    assert "has no workers" in err
    worker(), worker(OTHER_NUMPY="1.0.0")
    all_there(address, 2)
    code, out, err = done(replay(manifest, "odd", "--cluster", address))
    assert code == 1
    assert "numpy 1.0.0 instead of" in err
    assert out == ""
    assert not (manifest.parent / "odd.jsonl").exists()


def test_without_a_cluster_the_address_is_named(monkeypatch, tmp_path, capsys):
    clip = scripted_arm.write_clip(tmp_path / "a.mp4")
    words = ["replay", str(clip), "--movement", "flexion", "--side", "left"]
    monkeypatch.setattr("measure.batch.dask_cluster.CONNECT_S", 0.5)
    monkeypatch.setattr(
        "measure.cli.replay.command.settings_of",
        lambda quality, own: ReadingSettings(models=scripted_arm.MODELS),
    )
    assert main([*words, "--cluster", "tcp://127.0.0.1:9"]) == 1
    assert "tcp://127.0.0.1:9" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "part"),
    [(["--cluster", "x", "--workers", "2"], "own workers"), (["--send-clips"], "--cluster")],
)
def test_options_that_do_not_go_together(words, part, capsys):
    assert main(["replay", "a.mp4", "--movement", "flexion", "--side", "left", *words]) == 2
    assert part in capsys.readouterr().err


def test_a_worker_says_what_is_wrong_with_it(monkeypatch):
    order = job_spec(ReadingSettings(models=scripted_arm.MODELS))
    monkeypatch.setattr("measure.batch.cluster_worker.models_of", lambda order: scripted_arm.MODELS)
    assert mismatch(order) == ""
    monkeypatch.setattr(
        "measure.batch.cluster_worker.software", lambda: {**order.software, "scipy": "0.1"}
    )
    assert mismatch(order).startswith("scipy 0.1 instead of")


def test_another_model_on_a_worker_is_wrong(monkeypatch, tmp_path):
    monkeypatch.setenv("THAWLINE_MODELS", str(tmp_path))
    order = job_spec(ReadingSettings(models=scripted_arm.MODELS))
    assert "thawline model" in mismatch(order)
    entry = ClipEntry(clip=tmp_path / "a.mp4", movement=Movement.FLEXION, side=Side.LEFT)
    outcome = read_on_worker(order, SentClip(number=3, entry=entry, sha256="", content=b""))
    assert outcome.number == 3
    assert isinstance(outcome.error, MachineError)


@pytest.mark.parametrize(
    ("content", "part"), [(None, "--send-clips"), ("other", "not the same file as")]
)
def test_a_path_that_is_not_the_same_everywhere(monkeypatch, tmp_path, content, part):
    monkeypatch.setattr("measure.batch.cluster_worker.models_of", lambda order: scripted_arm.MODELS)
    clip = tmp_path / "a.mp4"
    if content:
        clip.write_text(content, encoding="utf-8")
    entry = ClipEntry(clip=clip, movement=Movement.FLEXION, side=Side.LEFT)
    order = job_spec(ReadingSettings(models=scripted_arm.MODELS))
    outcome = read_on_worker(order, SentClip(number=0, entry=entry, sha256="0" * 64))
    assert isinstance(outcome.error, MachineError)
    assert part in str(outcome.error)
