"""Nothing leaves this computer: proven by the system's own record of connections."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.support import pose_of_clip, real_model
from tests.support.system_calls import CLOSED_PORT, traced, written_for_good

CLIP = real_model.CLIPS / "abduction-left-full.mp4"
POSE_COMMAND = [sys.executable, pose_of_clip.__file__, CLIP, "2"]


def test_only_this_computers_closed_port_is_ever_called(tmp_path: Path) -> None:
    """A reading by `thawline replay`, with every file that can be asked for."""
    real_model.bundle()
    asked, data = tmp_path / "asked", tmp_path / "data"
    asked.mkdir()
    calls = traced(
        [
            *(sys.executable, "-m", "measure.cli.main", "replay", CLIP),
            *("--movement", "abduction", "--side", "left", "--model-quality", "lite"),
            *("--json", asked / "all.json", "--track", asked / "track.csv"),
        ],
        tmp_path / "calls",
        more={"THAWLINE_DATA": str(data)},
    )
    calls.assert_nothing_left(ports=(CLOSED_PORT,))
    assert "abduction" in calls.output
    assert {path.name for path in asked.iterdir()} == {"all.json", "track.csv"}
    kept = written_for_good(calls, asked)
    assert kept == {str(data / "logs" / "pose.log")}
    log = (data / "logs" / "pose.log").read_text(errors="replace")
    assert CLIP.stem not in log
    assert "abduction" not in log


def test_it_works_without_any_network() -> None:
    if shutil.which("unshare") is None:
        pytest.skip("not on this system: the unshare program")
    real_model.bundle()
    cut_off = ["unshare", "--map-root-user", "--net"]
    if subprocess.run([*cut_off, "true"], capture_output=True, check=False).returncode:
        pytest.skip("not on this system: network namespaces for everybody")
    done = subprocess.run(
        [*cut_off, *POSE_COMMAND], capture_output=True, text=True, timeout=110, check=False
    )
    assert done.returncode == 0, done.stderr
    assert int(done.stdout) > 5
