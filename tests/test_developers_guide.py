"""The contributor's guide names modules, folders and make targets that are really there."""

import re
from fnmatch import fnmatch
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
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
    named = {name.strip("/") for row in table_after("## The house") for name in quoted(row[0])}
    there = {
        path.name
        for path in ROOT.iterdir()
        if path.is_dir() and any(path.rglob("*.py")) and not path.name.startswith(".")
    }
    ignored = {"build", "dist", "demo_output", "screenshots"}
    assert named == {name for name in there if not name.endswith("egg-info")} - ignored


@pytest.mark.parametrize("row", table_after("### How a frame becomes a number"), ids=str)
def test_every_module_on_the_way_of_a_frame_is_there(row):
    names = quoted(row[1])
    assert names
    for name in names:
        found = list((ROOT / "measure").glob(f"{name.strip('/')}.py"))
        found += [path for path in (ROOT / "measure").glob(name.strip("/")) if path.is_dir()]
        assert found, f"measure/{name}"


def modules_of(package):
    """Modules of a package as its page names them: `name`, or `folder/` for a package in it."""
    folder = ROOT / package
    there = {path.stem for path in folder.glob("*.py")} | {
        path.name for path in folder.glob("*.json")
    }
    inner = {
        path.parent.name if package == "measure" else f"{path.parent.name}/{path.stem}"
        for path in folder.glob("*/*.py")
    }
    return (there | inner) - {"__init__"}


@pytest.mark.parametrize("package", ["measure", "calibration", "gui"])
def test_the_page_of_a_package_has_a_place_for_every_module(package):
    page = (ROOT / package / "README.md").read_text(encoding="utf-8")
    cells = re.findall(r"^\| (`.+?) \|", page, re.MULTILINE)
    patterns = [name.rstrip("/") for cell in cells for name in quoted(cell)]
    modules = modules_of(package)
    placed = {name: [each for each in patterns if fnmatch(name, each)] for name in modules}
    assert [name for name, found in sorted(placed.items()) if not found] == []
    used = {each for found in placed.values() for each in found}
    assert [each for each in patterns if each not in used and "." not in each] == []


def test_every_make_target_named_is_in_the_makefile():
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    for target in set(re.findall(r"(?:^|`)make ([a-z-]+)", GUIDE, re.MULTILINE)):
        assert re.search(rf"^{re.escape(target)}:", makefile, re.MULTILINE), target
