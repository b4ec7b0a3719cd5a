"""In CI a skipped test fails the run unless its reason is an accepted one."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).parents[1]


def run_pytest(
    folder: Path, code: str, ci: str, options: tuple[str, ...]
) -> "subprocess.CompletedProcess[str]":
    shutil.copy(HERE / "conftest.py", folder / "conftest.py")
    (folder / "test_some.py").write_text(code)
    environment = {**os.environ, "CI": ci, "PYTHONPATH": str(HERE.parent)}
    environment["PYTEST_DISABLE_PLUGIN_AUTOLOAD"] = "1"
    return subprocess.run(
        [
            sys.executable,
            "-m",
            "pytest",
            "-q",
            "-p",
            "no:cacheprovider",
            "--rootdir=.",
            *options,
            ".",
        ],
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )


SKIPPING = "import pytest\ndef test_a(): pytest.skip({reason!r})\ndef test_b(): pass\n"
MODULE = "import pytest\npytest.importorskip('no_such_module_here')\ndef test_a(): pass\n"


@pytest.mark.parametrize("options", [(), ("-p", "xdist.plugin", "-n", "2")], ids=["one", "two"])
@pytest.mark.parametrize(
    ("code", "ci", "code_expected"),
    [
        (SKIPPING.format(reason="no idea why"), "1", 1),
        (SKIPPING.format(reason="no idea why"), "", 0),
        (SKIPPING.format(reason="needs the synth extra"), "1", 0),
        (MODULE, "true", 1),
        ("def test_a(): pass\n", "1", 0),
    ],
)
def test_a_skip_counts_in_ci(
    tmp_path: Path, code: str, ci: str, code_expected: int, options: tuple[str, ...]
) -> None:
    done = run_pytest(tmp_path, code, ci, options)
    # A module that is skipped as a whole leaves "no tests": pytest's own code 5, also a failure.
    assert (done.returncode != 0) == bool(code_expected), done.stdout
    if code_expected:
        assert "skipped for a reason that CI does not accept" in done.stdout
