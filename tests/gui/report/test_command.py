"""`thawline report`: no display needed, and who is known."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from measure.cli.main import main
from measure.demo.story import story_histories
from measure.storage.store import Store
from tests.support.record_samples import moment

NOW = moment("2026-11-25T09:00:00+00:00", 60)


@pytest.mark.parametrize("ending", [".html", ".pdf", ".PDF"])
def test_the_command_needs_no_display(data_folder: Path, tmp_path: Path, ending: str) -> None:
    with Store.open() as store:
        for records in story_histories(NOW)[3:]:
            store.merge(records)
    target = tmp_path / f"Clover{ending}"
    without = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")
    variables = {name: value for name, value in os.environ.items() if name not in without}
    command = "import sys; from measure.cli.main import main; sys.exit(main())"
    done = subprocess.run(
        [sys.executable, "-c", command, "report", "demo-Clover", "--to", target],
        env=variables,
        capture_output=True,
        text=True,
        timeout=100,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert f"{target} is written. It holds demo data." in done.stdout
    beginning = b"%PDF" if ending.lower() == ".pdf" else b"<!DOCTYPE html>"
    assert target.read_bytes().startswith(beginning)


def test_the_command_knows_who_is_there(
    data_folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["report", "Nobody", "--to", str(tmp_path / "x.html")]) == 2
    assert "There is no one called 'Nobody'" in capsys.readouterr().err
