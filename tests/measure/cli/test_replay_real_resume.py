"""The real network's run over a folder, killed twice without warning: the end is that of a clean
run, and nothing is read twice.
"""

import json
import os
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

CLIPS = Path(__file__).resolve().parents[3] / "sample_clips" / "clips"
#: Read in this order, which is that of the names, after the broken one.
NAMES = ("flexion-left-full", "flexion-left-restricted")
COMMAND = [
    sys.executable,
    "-c",
    "import sys; from measure.cli.main import main; sys.exit(main())",
]

pytestmark = [
    pytest.mark.timeout(600),
    pytest.mark.skipif(os.name == "nt", reason="not on this system: signals"),
]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with two clips of one movement and a broken one."""
    made = tmp_path_factory.mktemp("clips")
    for name in NAMES:
        shutil.copyfile(CLIPS / f"{name}.mp4", made / f"{name}.mp4")
    whole = (CLIPS / f"{NAMES[0]}.mp4").read_bytes()
    (made / "broken.mp4").write_bytes(whole[:300])
    return made


def start(folder: Path, out: Path) -> subprocess.Popen[bytes]:
    words = ["replay", str(folder), "--movement", "flexion", "--side", "left", "--workers", "1"]
    words += ["--model-quality", "lite", "--results", str(out / "results.jsonl")]
    words += ["--csv", str(out / "table.csv"), "--json", str(out / "all.json")]
    return subprocess.Popen(
        [*COMMAND, *words, "--keep-tracks", str(out / "tracks")],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        start_new_session=True,
    )


def lines(out: Path) -> list[bytes]:
    results = out / "results.jsonl"
    return results.read_bytes().splitlines(keepends=True) if results.exists() else []


def killed_after(count: int, folder: Path, out: Path) -> None:
    running = start(folder, out)
    until = time.monotonic() + 200
    while len(lines(out)) < count and running.poll() is None and time.monotonic() < until:
        time.sleep(0.02)
    assert running.poll() is None, "it ended before it could be killed"
    os.killpg(running.pid, signal.SIGKILL)
    running.wait()


def finished(folder: Path, out: Path) -> dict[str, bytes]:
    running = start(folder, out)
    assert running.wait() == 2  # one clip cannot be read
    return {name: (out / name).read_bytes() for name in ("table.csv", "all.json")}


def test_killed_twice_and_resumed_is_a_clean_run(folder: Path, tmp_path: Path) -> None:
    broken_off, clean = tmp_path / "broken-off", tmp_path / "clean"
    broken_off.mkdir()
    clean.mkdir()
    killed_after(1, folder, broken_off)  # in the middle of a clip
    killed_after(2, folder, broken_off)
    assert finished(folder, broken_off) == finished(folder, clean)

    said = [json.loads(line) for line in lines(broken_off)]
    assert len({each["key"] for each in said}) == len(said) == len(NAMES) + 1
    assert sum(each["error"] is not None for each in said) == 1
    assert sum((each["measurement"] or {}).get("value") is not None for each in said) == 2
    kept = sorted(path.name for path in (broken_off / "tracks").glob("*.npz"))
    assert kept == sorted(path.name for path in (clean / "tracks").glob("*.npz"))
    assert len(kept) == len(NAMES)
