"""The contributor's guide names modules, folders and make targets that are really there."""

import ast
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
GUIDE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def table_after(heading):
    """Rows of the first table after a heading, as lists of cells."""
    text = GUIDE.split(heading, 1)[1]
    rows = []
    for line in text.splitlines():
        if line.startswith("|"):
            rows.append([cell.strip() for cell in line.strip("|").split("|")])
        elif rows:
            break
    return rows[2:]


def quoted(cell):
    return re.findall(r"`([^`]+)`", cell)


def test_every_folder_of_the_house_is_there_and_none_is_missing():
    named = {name.strip("/") for row in table_after("## The tree") for name in quoted(row[0])}
    there = {
        path.name
        for path in ROOT.iterdir()
        if path.is_dir() and any(path.rglob("*.py")) and not path.name.startswith(".")
    }
    ignored = {"build", "dist", "demo_output", "screenshots"}
    assert named == {name for name in there if not name.endswith("egg-info")} - ignored


def folders_of_packages():
    return sorted(
        path.parent
        for package in ("measure", "calibration", "gui")
        for path in (ROOT / package).rglob("__init__.py")
    )


@pytest.mark.parametrize("folder", folders_of_packages(), ids=str)
def test_every_folder_says_in_a_sentence_what_it_is_for(folder):
    told = ast.get_docstring(ast.parse((folder / "__init__.py").read_text(encoding="utf-8")))
    assert told
    assert told.split("\n\n")[0].endswith(".")


@pytest.mark.parametrize("package", ["measure", "calibration", "gui"])
def test_every_folder_of_a_package_is_in_the_guide(package):
    rows = GUIDE.split(f"| `{package}/` | what lives there |", 1)[1].split("\n\n")[0]
    named = set(quoted("".join(line.split("|")[1] for line in rows.splitlines() if line)))
    there = {path.parent.name for path in (ROOT / package).glob("*/__init__.py")}
    assert named - {"errors"} == there - {"repository"}


def test_every_path_of_the_guide_is_there():
    paths = re.findall(r"`((?:measure|calibration|gui|tests|sample_clips)/[\w/-]+)(\.\w+)*`", GUIDE)
    assert len(paths) > 60
    for path, ending in paths:
        file = ROOT / path
        assert (
            file.is_dir() or file.with_suffix(".py").is_file() or Path(f"{file}{ending}").is_file()
        )
