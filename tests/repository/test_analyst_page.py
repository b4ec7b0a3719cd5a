"""The commands of the analyst's page, run in their order with a scripted arm for the networks."""

import csv
import json
import re
import shlex
import subprocess
import sys
from pathlib import Path

import distributed
import numpy as np
import pytest

from measure.batch import cluster_worker
from measure.batch.summary import COLUMNS
from measure.cli.main import main
from measure.clips.setup_file import write_setup
from measure.domain.acquisition import CameraSetup, KnownSetup, MovementCorrection
from measure.domain.movements import Movement
from measure.pose.jobs import WARMUP_RUNS
from measure.trials.scan import REST_EVERY, SHORT_HOLD_S
from measure.video.sampling import COARSE_HZ, FINE_HZ
from tests.support import cluster_script, replay_of_script, scripted_arm
from tests.support.setup_samples import sample_correction

PAGE = Path(__file__).parents[2] / "measure/docs/analyst.md"
TEXT = PAGE.read_text(encoding="utf-8")
SHOWN = re.findall(r"^ {4}((?:thawline|dask) .+)$", TEXT, re.MULTILINE)
REPLAYS = [line for line in SHOWN if line.startswith("thawline replay")]
CLUSTER = "tcp://10.0.0.5:8786"
PEOPLE = ("bramble", "marigold", "sorrel", "tansy", "yarrow", "clover", "borage", "fennel")


@pytest.fixture
def study(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A working folder with clips, a manifest with references, and a set-up."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "clips" / "april").mkdir(parents=True)
    rows = ["clip,movement,side,view,reference,person"]
    spread = np.random.default_rng(5).normal(0.0, 3.0, len(PEOPLE))
    for number, (person, off) in enumerate(zip(PEOPLE, spread, strict=True)):
        peak = 80.0 + 9 * number
        clip = scripted_arm.write_clip(tmp_path / "clips" / "april" / f"{person}.mp4", peak=peak)
        rows.append(f"{clip.relative_to(tmp_path)},flexion,left,,{peak + off:.1f},{person}")
    (tmp_path / "study.csv").write_text("\n".join(rows) + "\n", encoding="utf-8")
    correction = sample_correction(
        study="two gardeners, one goniometer", lowest_deg=20.0, highest_deg=170.0
    )
    known = KnownSetup(
        camera=CameraSetup(name="Garden laptop"),
        corrections=(MovementCorrection(movement=Movement.FLEXION, correction=correction),),
    )
    write_setup(tmp_path / "bramble.json", known)
    return tmp_path


@pytest.fixture
def address(monkeypatch: pytest.MonkeyPatch):
    """The address of a cluster of one worker in this process."""
    for name in ("models_of", "PoseProcess"):  # put back afterwards
        monkeypatch.setattr(cluster_worker, name, getattr(cluster_worker, name))
    cluster_script.dask_setup(None)
    with distributed.LocalCluster(
        n_workers=1,
        threads_per_worker=1,
        processes=False,
        dashboard_address="127.0.0.1:0",  # without one it takes port 8787, and warns if it is taken
        protocol="tcp",
    ) as cluster:
        yield cluster.scheduler_address


@pytest.mark.timeout(300)
def test_every_command_does_what_the_page_says(
    study: Path, address: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    replay_of_script.put_in_place(monkeypatch)
    assert sum(CLUSTER in line for line in REPLAYS) == 2
    for line in REPLAYS:
        words = shlex.split(line)[1:]
        if CLUSTER in words:  # or nothing would be left to read
            (study / "study.jsonl").unlink()
        said = [address if word == CLUSTER else word for word in words]
        assert main(said) == 0, (line, capsys.readouterr().err)
        for option, kind in (("--csv", "file"), ("--results", "file"), ("--keep-tracks", "dir")):
            if option in words:
                made = study / words[words.index(option) + 1]
                assert made.is_dir() if kind == "dir" else made.is_file(), line

    assert rows("again.csv") == rows("table.csv")
    shifts = {b - a for a, b in zip(rows("table.csv"), rows("corrected.csv"), strict=True)}
    assert len(rows("table.csv")) == len(PEOPLE)
    assert max(shifts) - min(shifts) < 1e-9
    assert abs(np.mean(list(shifts))) == pytest.approx(4.0)
    assert max(abs(a - b) for a, b in zip(rows("every.csv"), rows("spring.csv"), strict=True)) < 0.5
    assert {path.suffix for path in (study / "motion").iterdir()} == {".c3d", ".trc"}
    assert {path.suffix for path in (study / "agreement").iterdir()} == {".json", ".png"}
    lines = (study / "study.jsonl").read_text(encoding="utf-8").splitlines()
    assert len({json.loads(line)["key"] for line in lines}) == len(lines) == len(PEOPLE)


def rows(name: str) -> list[float]:
    with Path(name).open(encoding="utf-8", newline="") as file:
        found = sorted(csv.DictReader(file), key=lambda row: Path(row["clip"]).name)
    return [float(row["value"]) for row in found]


@pytest.mark.parametrize("line", [line for line in SHOWN if line.startswith("dask ")])
def test_the_cluster_knows_its_commands(line: str) -> None:
    words = line.split()
    module = f"distributed.cli.dask_{words[1]}"
    command = [sys.executable, "-W", "ignore", "-m", module, "--help"]
    asked = subprocess.run(command, capture_output=True, text=True, check=True)
    assert all(word in asked.stdout for word in words if word.startswith("--"))


def test_columns_and_rates_are_those_of_the_code() -> None:
    told = TEXT[TEXT.index("Columns of the table:") : TEXT.index("At the end the counts")]
    assert set(re.findall(r"`([a-z_]+)`", told)) == set(COLUMNS)
    assert f"{COARSE_HZ:g} pictures a second of the whole clip" in TEXT
    words = " ".join(TEXT.split())
    assert f"{FINE_HZ:g} pictures a second of each hold" in words
    assert REST_EVERY == 2
    assert "half as many of the rest" in words
    assert f"hold shorter than {SHORT_HOLD_S:g} s" in words
    assert WARMUP_RUNS == 3
    assert "first after a pause, three times" in words
