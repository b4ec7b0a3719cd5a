"""The installed package `thawline`: its public names, its start, its wheel and its examples."""

import doctest
import shutil
import subprocess
import sys
import zipfile
from importlib import import_module
from pathlib import Path

import pytest
import thawline

from tests.repository.structure import PACKAGES, ROOT

TYPING = ("_typing", "typing", "typing.io", "typing.re")


def test_public_names_are_sorted_and_all_there() -> None:
    assert thawline.__all__ == sorted(
        thawline.__all__, key=lambda name: (name != name.upper(), name)
    )
    for name in thawline.__all__:
        assert getattr(thawline, name) is not None
    assert set(thawline.__all__) <= set(dir(thawline))
    given: dict[str, object] = {}
    exec("from thawline import *", given)
    assert set(thawline.__all__) <= set(given)


def test_a_name_that_is_none_of_ours_is_an_attribute_error() -> None:
    with pytest.raises(AttributeError, match="no attribute 'measure_everything'"):
        _ = thawline.measure_everything


def test_every_error_of_the_tree_is_public() -> None:
    errors = import_module("measure.errors")
    tree = {name for name in vars(errors) if name.endswith("Error")}
    assert tree <= set(thawline.__all__)


def test_importing_loads_nothing_heavy() -> None:
    code = (
        "import sys; before = set(sys.modules); import thawline; print(*set(sys.modules) - before)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert set(done.stdout.split()) <= {"thawline", "collections.abc", *TYPING}


@pytest.mark.parametrize("module", ["thawline", "thawline.clip_reading", "thawline.person_history"])
@pytest.mark.usefixtures("working_folder")
def test_examples_of_the_docstrings_are_true(module: str) -> None:
    failed, tried = doctest.testmod(import_module(module))
    assert (failed, tried > 3) == (0, True)


def test_every_function_has_an_example() -> None:
    for name in ("clip_reading", "person_history"):
        module = import_module(f"thawline.{name}")
        for function in set(vars(module)) & set(thawline.__all__):
            if getattr(module, function).__module__ == module.__name__:
                assert ">>> " in getattr(module, function).__doc__, function


def belongs_in_the_wheel(file: Path) -> bool:
    """Whether a file of the packages is used where they are installed, without the repository."""
    for_contributors = file.name == "README.md" or file.suffix in {".ts", ".spec"}
    return file.is_file() and not for_contributors and file.parent.name != "__pycache__"


def test_the_wheel_holds_every_file_once(tmp_path: Path) -> None:
    """Built from a copy of the packages, without a network."""
    files = [file for package in PACKAGES for file in (ROOT / package).rglob("*")]
    names = {file.relative_to(ROOT).as_posix() for file in files if belongs_in_the_wheel(file)}
    for name in (*names, "pyproject.toml", "README.md", "LICENSE"):
        copied = tmp_path / "copy" / name
        copied.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(ROOT / name, copied)
    code = f"from setuptools.build_meta import build_wheel; print(build_wheel({str(tmp_path)!r}))"
    subprocess.run(
        [sys.executable, "-c", code], cwd=tmp_path / "copy", capture_output=True, check=True
    )
    (wheel,) = tmp_path.glob("*.whl")
    with zipfile.ZipFile(wheel) as archive:
        inside = {name for name in archive.namelist() if ".dist-info/" not in name}
    assert inside == {name.replace("measure/api/", "thawline/") for name in names}
    assert {"thawline/__init__.py", "thawline/py.typed", "measure/py.typed"} <= inside
