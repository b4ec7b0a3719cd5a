"""Every command that README, contributor's guide and user pages show does what they say.

Each one is at least understood by the real parser; what is cheap is run in an empty data folder.
What is not run here is named, with the place that runs it.
"""

import re
import shlex
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

from measure.cli.main import command_parser, main
from measure.clips.setup_file import write_setup
from measure.domain.acquisition import KnownSetup
from measure.storage.store import Store
from tests.support import replay_of_script, scripted_arm

ROOT = Path(__file__).parents[2]
PAGES = [
    ROOT / "DEVELOPERS.md",
    ROOT / "README.md",
    *sorted(ROOT.glob("[a-z]*/**/README.md")),
    *sorted(ROOT.glob("measure/docs/*.md")),
    *sorted(page for page in (ROOT / "gui/help").iterdir() if page.suffix in (".md", ".html")),
]

#: Shown commands that need the pose model, clips or minutes, and where they are run instead.
RUN_ELSEWHERE = {
    "thawline app": "tests/gui/app/test_command.py",
    "thawline demo": "tests/measure/cli/test_replay.py",
    "thawline model": "tests/measure/cli/test_model.py",
    "thawline replay": "tests/measure/cli/test_replay.py",
    "thawline calibrate lens clip": "tests/calibration/cli/test_calibrate.py",
    "thawline calibrate level person": "tests/calibration/cli/test_calibrate.py",
    "thawline calibrate body poses": "tests/calibration/cli/test_calibrate.py",
    "thawline calibrate body marks": "tests/calibration/cli/test_calibrate.py",
    "thawline calibrate correction": "tests/calibration/cli/test_calibrate.py",
}
#: Modules that set things up; the runs of CI begin with them.
SETTING_UP = {"pip", "pytest", "venv", "PyInstaller"}
#: What stands for something that the reader chooses, and what is put there for the parser.
PLACEHOLDERS = {"FORMAT": "json", "COMMAND": "check", "FOLDER": "folder"}

READINGS = "person,movement,side,camera_deg,goniometer_deg\n" + "".join(
    f"P{number},flexion,left,{100 + 3 * number},{101 + 3 * number - number % 3}\n"
    for number in range(12)
)


def shown_commands(page: Path) -> list[str]:
    """Return the commands of one page: lines of code blocks, and code within sentences."""
    text = page.read_text(encoding="utf-8")
    blocks = re.findall(r"^```[a-z]*\n(.*?)^```", text, re.DOTALL | re.MULTILINE)
    rest = re.sub(r"^```.*?^```", "", text, flags=re.DOTALL | re.MULTILINE)
    lines = [line for block in blocks for line in block.splitlines()]
    lines += re.findall(r"^ {4}(\S.*)$", rest, re.MULTILINE)
    lines += re.findall(r"`([^`\n]+)`", rest) + re.findall(r"<code>([^<]+)</code>", rest)
    plain = [_plain(line) for line in lines]
    return [line for line in plain if re.match(r"(thawline|python) ", line + " ")]


def _plain(line: str) -> str:
    """Return a line without comment, prompt folder and system's own spelling."""
    line = re.sub(r"\s{2,}#.*$", "", line.strip())
    line = re.sub(r"^(\.venv/bin/|\.venv\\Scripts\\)", "", line)
    return re.sub(r"^(py -3\.\d+|python3?(\.\d+)?)(?= )", "python", line)


SHOWN = sorted(
    {(page.relative_to(ROOT).as_posix(), line) for page in PAGES for line in shown_commands(page)}
)
THAWLINE = sorted({line for _, line in SHOWN if line.startswith("thawline ")})
MODULES = sorted({line for _, line in SHOWN if line.startswith("python ")})


def test_the_pages_show_commands() -> None:
    assert {"thawline check", "thawline model", "thawline privacy"} <= set(THAWLINE)
    assert any(line.startswith("python -m pytest") for line in MODULES)


def test_every_name_of_the_list_is_still_shown_and_its_place_is_there() -> None:
    for start, place in RUN_ELSEWHERE.items():
        assert any(line.startswith(start) for line in THAWLINE), start
        words = start.split()[1:]
        told = (ROOT / place).read_text(encoding="utf-8")
        assert words[-1] in told, (start, place)


def _words(line: str) -> list[str]:
    words = [PLACEHOLDERS.get(word, word) for word in shlex.split(line)]
    return words[1:]


@pytest.mark.parametrize("line", THAWLINE)
def test_the_command_line_understands_it(line: str, tmp_path: Path) -> None:
    words = _words(line)
    if "--help" in words or len(words) == 1:
        assert main([words[0], "--help"]) == 0
        return
    arguments = command_parser(words).parse_args(words)
    assert callable(arguments.run)


@pytest.fixture
def started(
    qapp: QApplication, data_folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Path:
    """A working folder with what the commands read, and two people in the store.

    The one Qt application of the process is made by pytest-qt, before a report makes a lesser one.
    """
    monkeypatch.chdir(tmp_path)
    for name in ("PERSON", "Bramble"):
        assert main(["people", "add", name, "--affected", "left"]) == 0
    (tmp_path / "readings.csv").write_text(READINGS, encoding="utf-8")
    return tmp_path


def is_whole(line: str) -> bool:
    """Tell whether a line can be run as it stands; a sentence may only name a command."""
    words = _words(line)
    try:
        command_parser(words).parse_args(words)
    except SystemExit:
        return False
    return True


CHEAP = [
    line
    for line in THAWLINE
    if not any(line.startswith(each) for each in RUN_ELSEWHERE)
    and "--help" not in line
    and is_whole(line)
]


def time_of_a_session() -> str:
    """Begin a session of PERSON; return its time as it is listed."""
    with Store.open() as store:
        person = store.find_person("PERSON")
        session = store.start_session(person.id)
    return session.started.local.strftime("%Y-%m-%d %H:%M")


@pytest.mark.parametrize("line", CHEAP)
def test_it_runs(line: str, started: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    words = _words(line)
    if words[0] in ("import", "restore"):
        export = ["export", "PERSON", "--format", "json", "--to", "FILE"]
        assert main(export if words[0] == "import" else ["backup", "FILE"]) == 0
    if words[:2] == ["people", "delete"]:
        monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
        monkeypatch.setattr("builtins.input", lambda *_: "PERSON")
    if "--delete" in words:
        monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
        monkeypatch.setattr("builtins.input", lambda *_: "yes")
    if "--delete" in words or "--correct-pain" in words:
        words = [time_of_a_session() if word == "TIME" else word for word in words]
    # The check tells what a computer lacks with its exit code.
    allowed = (0, 1) if words[0] == "check" else (0,)
    assert main(words) in allowed


#: Shown readings of clips. Those of the page for analysts are run in their order by its own test;
#: pictures are drawn into a real clip, in `tests/measure/cli/test_replay.py`.
REPLAYS = sorted(
    {
        line
        for page, line in SHOWN
        if re.match(r"thawline replay (--manifest |\S+\.mp4 )", line)
        and page != "measure/docs/analyst.md"
        and "--annotate" not in line
    }
)


@pytest.mark.parametrize("line", REPLAYS)
def test_a_clip_is_read_with_a_scripted_arm_for_the_networks(
    line: str, started: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    replay_of_script.put_in_place(monkeypatch)
    scripted_arm.write_clip(started / "raise.mp4", peak=110.0)
    (started / "clips.csv").write_text("clip,movement,side\nraise.mp4,flexion,left\n", "utf-8")
    write_setup(started / "bramble.json", KnownSetup())
    words = _words(line)
    assert main(words) == 0
    made = [words[at + 1] for at, word in enumerate(words) if word in ("--json", "--track")]
    assert all((started / name).stat().st_size > 100 for name in made)


@pytest.mark.parametrize("line", MODULES)
def test_python_finds_the_module(line: str) -> None:
    words = shlex.split(line)
    assert words[1] == "-m"
    if words[2] in SETTING_UP:
        return
    asked = [sys.executable, "-m", words[2], "--help"]
    done = subprocess.run(asked, cwd=ROOT, capture_output=True, text=True, timeout=60)
    assert done.returncode == 0, done.stderr
    # A module that does its work instead of giving help would change files under other tests.
    assert done.stdout.startswith("usage: "), done.stdout
    for option in (word for word in words[3:] if word.startswith("--")):
        assert option in done.stdout


def shown_targets() -> list[str]:
    """Return the make targets that a page names, in code blocks and within sentences."""
    found = set()
    for page in PAGES:
        text = page.read_text(encoding="utf-8")
        found |= set(re.findall(r"(?:^|`)make (?:[A-Z]+=\S+ )?([a-z-]+)", text, re.MULTILINE))
    # A sentence may begin a line with the word.
    return sorted(found - {"a", "better", "changes", "readings"})


@pytest.mark.parametrize("target", shown_targets())
def test_make_knows_the_target(target: str) -> None:
    make = shutil.which("make")
    if make is None:
        pytest.skip("needs a program: make")
    done = subprocess.run(
        [make, "--dry-run", "--no-print-directory", target, f"PYTHON={sys.executable}"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=60,
    )
    assert done.returncode == 0, done.stderr
