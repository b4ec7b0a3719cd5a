"""Rules that no other tool holds: what may be imported where, and what is not loaded."""

import ast
import subprocess
import sys
import tomllib
from importlib.metadata import entry_points
from pathlib import Path

import pytest

from measure.cli.help_lines import HELP_LINES
from tests.repository.structure import PACKAGES, ROOT, sources


def imported(file: Path) -> set[str]:
    """Return the top-level names of all packages that a file imports, also inside functions."""
    names = set()
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names |= {each.name.split(".")[0] for each in node.names}
        elif isinstance(node, ast.ImportFrom) and node.level == 0 and node.module:
            names.add(node.module.split(".")[0])
    return names


@pytest.mark.parametrize(
    ("package", "pattern"),
    [("sqlite3", "measure/storage/*.py"), ("mediapipe", "measure/pose/network.py")],
)
def test_one_place_for_each_outside_thing(package: str, pattern: str) -> None:
    allowed = set(ROOT.glob(pattern))
    found = {file for file in sources(*PACKAGES) if package in imported(file)}
    assert found, f"nothing imports {package}: the rule has lost its subject"
    assert found <= allowed


def test_every_folder_stands_in_the_contract_of_imports() -> None:
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    contracts = settings["tool"]["importlinter"]["contracts"]
    layers = next(contract["layers"] for contract in contracts if contract["type"] == "layers")
    named = {name.strip("() ") for layer in layers for name in layer.split("|")}
    folders = {
        f"{package}.{path.parent.name}"
        for package in ("measure", "calibration", "gui")
        for path in (ROOT / package).glob("*/__init__.py")
    }
    assert folders <= named


HEAVY = {"cv2", "mediapipe", "PySide6", "matplotlib", "torch", "distributed", "numpy", "scipy"}


@pytest.mark.parametrize(
    ("arguments", "shown", "command"),
    [
        (["--help"], "replay", set()),
        (["check", "--help"], "--json", {"measure.cli.check"}),
        (["agreement", "--help"], "goniometer", {"calibration.cli.agreement"}),
        (["app", "--help"], "--source", {"gui.app.command"}),
    ],
)
def test_only_the_chosen_command_is_loaded(
    arguments: list[str], shown: str, command: set[str]
) -> None:
    code = (
        "import sys\n"
        "from measure.cli.main import main\n"
        "main(sys.argv[1:])\n"
        "print('\\n'.join(sys.modules), file=sys.stderr)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, *arguments], capture_output=True, text=True, check=True
    )
    loaded = set(done.stderr.split())
    commands = {entry.module for entry in entry_points(group="thawline.commands")}
    assert len(commands) > 15
    assert commands & loaded == command
    assert HEAVY & loaded == set()
    assert shown in done.stdout


def test_help_lines_are_those_of_the_commands() -> None:
    summaries = {
        entry.name: entry.load().__doc__.partition("\n")[0]
        for entry in entry_points(group="thawline.commands")
    }
    assert summaries == HELP_LINES
