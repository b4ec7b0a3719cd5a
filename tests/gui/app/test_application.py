"""What is seen to before the window opens: variables of another Qt, the lock, the folder."""

import os
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from gui.app.application import (
    acquire_instance_lock,
    make_settings_private,
    unset_inherited_environment,
)
from measure.cli.main import main
from measure.errors import MachineError


def test_variables_of_another_qt_are_dropped_and_ones_own_stay(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("QT_QPA_PLATFORM_PLUGIN_PATH", "/somewhere/cv2/qt/plugins")
    monkeypatch.setenv("QT_QPA_FONTDIR", "/usr/share/fonts/own")
    unset_inherited_environment()
    assert "QT_QPA_PLATFORM_PLUGIN_PATH" not in os.environ
    assert os.environ["QT_QPA_FONTDIR"] == "/usr/share/fonts/own"


def test_a_second_window_on_the_same_folder_is_not_opened(tmp_path: Path) -> None:
    first = acquire_instance_lock(tmp_path / "data")
    assert first is not None
    assert acquire_instance_lock(tmp_path / "data") is None
    first.unlock()
    again = acquire_instance_lock(tmp_path / "data")
    assert again is not None
    again.unlock()


_HOLD = """
import sys, time
from pathlib import Path
from gui.app.application import acquire_instance_lock
held = acquire_instance_lock(Path(sys.argv[1]))
assert held is not None
print("held", flush=True)
time.sleep(60)
"""


def test_the_lock_of_a_killed_window_does_not_keep_the_next_one_out(tmp_path: Path) -> None:
    with subprocess.Popen(
        [sys.executable, "-c", _HOLD, str(tmp_path)],
        stdout=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": str(Path(__file__).parents[3])},
    ) as window:
        assert window.stdout is not None
        assert window.stdout.readline() == "held\n"
        assert acquire_instance_lock(tmp_path) is None
        window.kill()
        window.wait()
    held = acquire_instance_lock(tmp_path)
    assert held is not None
    held.unlock()


def test_a_folder_of_our_own_is_closed_to_others_and_a_chosen_one_is_left(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    if os.name != "posix":
        pytest.skip("not on this system: rights of files")
    chosen = tmp_path / "chosen"
    chosen.mkdir(mode=0o755)
    monkeypatch.setenv("THAWLINE_DATA", str(chosen))
    for folder, mode in ((tmp_path / "new", 0o700), (chosen, 0o755)):
        held = acquire_instance_lock(folder)
        assert held is not None
        held.unlock()
        assert stat.S_IMODE(folder.stat().st_mode) == mode


@pytest.mark.skipif(os.name != "posix", reason="not on this system: rights of files")
def test_the_settings_can_be_read_by_their_owner_only(tmp_path: Path) -> None:
    path = tmp_path / "window.ini"
    for _ in range(2):
        settings = make_settings_private(path)
        settings.text_percent = 150
        settings.save()
        assert "150" in path.read_text()
        assert stat.S_IMODE(path.stat().st_mode) == 0o600
        path.chmod(0o644)


def test_a_folder_that_is_a_file_is_told(tmp_path: Path) -> None:
    (tmp_path / "data").write_text("beans")
    with pytest.raises(MachineError, match=r"cannot be used .*THAWLINE_DATA"):
        acquire_instance_lock(tmp_path / "data" / "inside")
    with pytest.raises(MachineError, match=r"cannot be used .*THAWLINE_DATA"):
        acquire_instance_lock(tmp_path / "data")
    assert (tmp_path / "data").read_text() == "beans"


@pytest.mark.usefixtures("qapp")
def test_the_command_says_why_no_window_opens(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "data").write_text("beans")
    monkeypatch.setenv("THAWLINE_DATA", str(tmp_path / "data"))
    shown = []
    monkeypatch.setattr("PySide6.QtWidgets.QDialog.exec", lambda dialog: shown.append(dialog))
    assert main(["app"]) == 1
    assert "cannot be used" in capsys.readouterr().err
    assert len(shown) == 1
