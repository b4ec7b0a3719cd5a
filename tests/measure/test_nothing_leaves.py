"""Nothing leaves this computer: proven by the system's own record of connections."""

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests import pose_of_clip, real_model

LOOK = [sys.executable, pose_of_clip.__file__, real_model.CLIPS / "abduction-left-full.mp4", "2"]


def test_only_this_computers_closed_port_is_ever_called(tmp_path: Path) -> None:
    if shutil.which("strace") is None:
        pytest.skip("not on this system: the strace program")
    real_model.bundle()
    record = tmp_path / "calls"
    done = subprocess.run(
        ["strace", "-f", "-qq", "-e", "trace=connect,sendto,sendmsg", "-o", record, *LOOK],
        capture_output=True,
        text=True,
        timeout=110,
        check=False,
    )
    if "ptrace" in done.stderr.lower() or "operation not permitted" in done.stderr.lower():
        pytest.skip("not on this system: tracing of system calls")
    assert done.returncode == 0, done.stderr
    assert int(done.stdout) > 5
    calls = [line for line in record.read_text().splitlines() if "AF_INET" in line]
    foreign = [line for line in calls if not re.search(r'(127\.0\.0\.1|"::1")', line)]
    assert foreign == []
    ports = {port for line in calls for port in re.findall(r"htons\((\d+)\)", line)}
    assert ports <= {"9"}


def test_it_works_without_any_network() -> None:
    if shutil.which("unshare") is None:
        pytest.skip("not on this system: the unshare program")
    real_model.bundle()
    cut_off = ["unshare", "--map-root-user", "--net"]
    if subprocess.run([*cut_off, "true"], capture_output=True, check=False).returncode:
        pytest.skip("not on this system: network namespaces for everybody")
    done = subprocess.run(
        [*cut_off, *LOOK], capture_output=True, text=True, timeout=110, check=False
    )
    assert done.returncode == 0, done.stderr
    assert int(done.stdout) > 5
