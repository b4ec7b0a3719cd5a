"""A desktop bundle does what the installed program does; run by ``make bundle-test``.

`THAWLINE_BUNDLE` names the folder that ``make bundle`` made.
"""

import json
import os
import re
import subprocess
import sys
import tomllib
from collections.abc import Mapping
from pathlib import Path

import pytest

from tests.support import real_model
from tests.support.every_command import orders
from tests.support.system_calls import CLOSED_PORT, traced
from tests.support.virtual_screen import can_be_made, virtual_screen

pytestmark = pytest.mark.timeout(900)

ROOT = Path(__file__).parents[3]
CLIP = real_model.clip("flexion-left-full")
#: Longest time of a command on a busy computer, seconds.
LONGEST_S = 800
#: The whole folder, mebibytes.
LARGEST_MIB = 700
_VOICES = """
import json, os
os.environ["QT_QPA_PLATFORM"] = "offscreen"
from PySide6.QtWidgets import QApplication
application = QApplication([])
from PySide6.QtMultimedia import QMediaDevices
from PySide6.QtTextToSpeech import QTextToSpeech
from gui.session.audio_cues import AudioCues
cues = AudioCues(tones=True, speech=True)
outputs = [device.description() for device in QMediaDevices.audioOutputs()]
engines = sorted(QTextToSpeech.availableEngines())
print(json.dumps({"engines": engines, "outputs": outputs}))
"""
#: Leads the bundle's own window through a session; only the leader comes from outside.
LEADING = f"""
import sys
sys.path.append({str(ROOT)!r})
from tests.support.guided_window import main
import gui.app.main_window
assert "_internal" in gui.app.main_window.__file__, gui.app.main_window.__file__
sys.exit(main())
"""


@pytest.fixture(scope="module")
def program() -> Path:
    """The bundle's program, on Linux or Windows."""
    folder = os.environ.get("THAWLINE_BUNDLE")
    if not folder:
        pytest.skip("data not here: THAWLINE_BUNDLE names no bundle (make bundle-test builds one)")
    return Path(folder).absolute() / ("thawline.exe" if sys.platform == "win32" else "thawline")


def environment(data: Path, **more: str) -> Mapping[str, str]:
    """Return the variables of somebody who has nothing but the bundle."""
    kept = ("HOME", "LANG", "PATH", "SYSTEMROOT", "TEMP", "TMP", "TMPDIR", "USERPROFILE")
    own = {name: os.environ[name] for name in kept if name in os.environ}
    return {**own, "THAWLINE_DATA": str(data), **more}


def run(program: Path, data: Path, *arguments: str) -> "subprocess.CompletedProcess[str]":
    return subprocess.run(
        [program, *arguments],
        env=environment(data),
        cwd=data.parent,
        capture_output=True,
        text=True,
        timeout=LONGEST_S,
        check=False,
    )


def test_every_command_is_inside(program: Path, tmp_path: Path) -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    shown = run(program, tmp_path / "data", "--help")
    assert shown.returncode == 0, shown.stderr
    for command in project["entry-points"]["thawline.commands"]:
        assert re.search(rf"^    {command}\s", shown.stdout, re.MULTILINE), command
    version = run(program, tmp_path / "data", "--version")
    assert version.stdout.split() == ["thawline", project["version"]]


def test_model_and_packages_are_inside(program: Path, tmp_path: Path) -> None:
    told = run(program, tmp_path / "data", "check").stdout.splitlines()
    lacking = [line for line in told if line.startswith("MISSING")]
    assert [line for line in lacking if "Display" not in line and "Camera" not in line] == []
    for quality in ("full", "heavy", "lite"):
        kept = f"'{quality}': {program.parent / '_internal' / 'models'}"
        assert any(kept in line and ", verified" in line for line in told), quality
    assert any(line.startswith("ok") and "pose library" in line for line in told)


def test_the_pages_of_help_are_inside(program: Path) -> None:
    inside = program.parent / "_internal"
    for folder in ("gui/help", "gui/help/pictures", "measure/docs"):
        ours = {path.name for path in (ROOT / folder).iterdir() if path.is_file()}
        assert ours <= {path.name for path in (inside / folder).iterdir()}


def test_it_is_not_larger_than_it_has_to_be(program: Path) -> None:
    size = sum(file.lstat().st_size for file in program.parent.rglob("*"))
    assert size / (1 << 20) < LARGEST_MIB


@pytest.mark.skipif(sys.platform != "linux", reason="not on this system: ldd")
def test_every_library_finds_what_it_needs(program: Path) -> None:
    """But for speech, which asks the computer's own speech service, where there is one."""
    inside = program.parent / "_internal"
    missing = set()
    for file in inside.rglob("*.so*"):
        found = subprocess.run(
            ["ldd", file],
            env={**os.environ, "LD_LIBRARY_PATH": str(inside)},
            capture_output=True,
            text=True,
            check=False,
        )
        said = found.stdout + found.stderr
        missing |= set(re.findall(r"(\S+) => not found", said))
        assert "error while loading" not in said, (file, said)
    assert missing <= {"libspeechd.so.2"}


@pytest.mark.parametrize("link", [False, True])
def test_no_link_leads_nowhere(program: Path, link: bool) -> None:
    files = [file for file in program.parent.rglob("*") if file.is_symlink() == link]
    assert all(file.exists() for file in files)


def test_every_command_does_its_work(program: Path, tmp_path: Path) -> None:
    """Reports, exports, copies and calibration, in the order in which each has what it needs."""
    folder = tmp_path / "asked-for"
    folder.mkdir()
    for arguments in orders(folder):
        done = run(program, tmp_path / "data", *arguments)
        assert done.returncode == 0, (arguments, done.stderr)
        assert "Traceback" not in done.stderr, (arguments, done.stderr)
    assert (folder / "report.pdf").read_bytes().startswith(b"%PDF")
    assert {file.suffix for file in folder.iterdir()} >= {".pdf", ".html", ".json", ".csv"}


def test_the_sample_clips_are_read_as_their_truth_is_known(program: Path, tmp_path: Path) -> None:
    done = run(program, tmp_path / "data", "demo", "--to", str(tmp_path / "demo"))
    assert done.returncode == 0, done.stderr
    assert {"results.json"} <= {file.name for file in (tmp_path / "demo").iterdir()}


def test_an_agreement_study_is_drawn_and_motion_files_are_written(
    program: Path, tmp_path: Path
) -> None:
    pairs = "person,movement,side,camera_deg,goniometer_deg\n" + "".join(
        f"P{n},flexion,left,{100 + 3 * n},{101 + 3 * n - n % 3}\n" for n in range(12)
    )
    (tmp_path / "pairs.csv").write_text(pairs)
    for ending, start in (("png", b"\x89PNG"), ("pdf", b"%PDF"), ("svg", b"<?xml")):
        plot = tmp_path / f"plot.{ending}"
        words = ["agreement", str(tmp_path / "pairs.csv"), "--plot", str(plot)]
        done = run(program, tmp_path / "data", *words)
        assert done.returncode == 0, done.stderr
        assert plot.read_bytes().startswith(start)
    sheet = run(
        program,
        tmp_path / "data",
        "-c",
        "import ezc3d; print(ezc3d.c3d()['header']['points']['size'])",
    )
    assert sheet.stdout.strip() == "0", sheet.stderr


def test_sound_and_speech_are_those_of_the_computer(program: Path, tmp_path: Path) -> None:
    """What answers in the installed program answers in the bundle."""
    bundled = run(program, tmp_path / "data", "-c", _VOICES)
    installed = subprocess.run(
        [sys.executable, "-c", _VOICES], capture_output=True, text=True, timeout=100, check=True
    )
    assert bundled.returncode == 0, bundled.stderr
    assert bundled.stdout == installed.stdout
    assert json.loads(bundled.stdout)["engines"]


def test_nothing_tells_where_it_was_built(program: Path) -> None:
    written = [file for file in program.parent.rglob("*-info/**/*") if file.is_file()]
    assert any(file.name == "METADATA" for file in written)
    for file in written:
        assert str(ROOT).encode() not in file.read_bytes(), file


def test_a_clip_reads_as_in_the_installed_program(program: Path, tmp_path: Path) -> None:
    arguments = ["replay", str(CLIP), "--movement", "flexion", "--side", "left"]
    arguments += ["--model-quality", "full", "--json"]
    bundled = run(program, tmp_path / "data", *arguments, str(tmp_path / "bundled.json"))
    assert bundled.returncode == 0, bundled.stderr
    installed = subprocess.run(
        [sys.executable, "-m", "measure.cli.main", *arguments, str(tmp_path / "own.json")],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=300,
        check=False,
    )
    assert installed.returncode == 0, installed.stderr
    texts = [(tmp_path / f"{name}.json").read_text("utf-8") for name in ("bundled", "own")]
    assert texts[0] == texts[1]
    (result,) = json.loads(texts[0])["results"]
    assert result["value"] > 100


def test_the_window_measures_and_nothing_leaves(program: Path, tmp_path: Path) -> None:
    if not can_be_made():
        pytest.skip("not on this system: the Xvfb program")
    pictures = ("--pictures", str(tmp_path / "pictures"))
    with virtual_screen() as display:
        calls = traced(
            [program, "-c", LEADING, "--model-quality", "full", str(CLIP), *pictures],
            tmp_path / "calls",
            timeout_s=500,
            more={
                "DISPLAY": display,
                "QT_QPA_PLATFORM": "xcb",
                "THAWLINE_DATA": str(tmp_path / "data"),
                "THAWLINE_MODELS": str(program.parent / "_internal" / "models"),
            },
        )
    assert "Traceback" not in calls.errors, calls.errors
    told = json.loads(calls.output.splitlines()[-1])
    assert told["platform"] == "xcb"
    assert told["pages"][-2:] == ["SummaryPage", "StartPage"]
    assert told["frames"] > 20
    calls.assert_nothing_left(ports=(CLOSED_PORT,))
