"""The list of known ways to fail in README.md: complete, and every test named there exists."""

import ast
import re
from functools import cache
from pathlib import Path

import pytest

TESTS = Path(__file__).parents[1]
WAYS = 69

_ROW = re.compile(r"^\| (\d+) \| (.+?) \| (.+?) \| (.+?) \|$", re.MULTILINE)
#: Rows of the tables further down, without a number; the last cell names the tests.
_OTHER_ROW = re.compile(r"^\| ([^|]+?) \|(?:.*\|)? (`.+?) \|$", re.MULTILINE)
_NAMED = re.compile(r"`([\w/]+\.py)::(test_\w+)`")

_TEXT = (TESTS / "README.md").read_text(encoding="utf-8")
ROWS = _ROW.findall(_TEXT)
OTHER_ROWS = _OTHER_ROW.findall(_TEXT.partition("## When a part fails")[2])


@cache
def named_in(name: str) -> frozenset[str]:
    """Return the tests of a file."""
    tree = ast.parse((TESTS / name).read_text(encoding="utf-8"))
    return frozenset(
        node.name for node in ast.walk(tree) if isinstance(node, ast.FunctionDef | ast.ClassDef)
    )


def test_the_list_is_numbered_without_a_gap() -> None:
    assert [int(number) for number, *_ in ROWS] == list(range(1, WAYS + 1))


@pytest.mark.parametrize("row", ROWS, ids=[row[0] for row in ROWS])
def test_every_way_is_shown_by_tests_that_exist_or_cannot_happen(row: tuple[str, ...]) -> None:
    shown = row[3]
    if shown.startswith("does not apply: "):
        return
    named = _NAMED.findall(shown)
    assert ", ".join(f"`{file}::{test}`" for file, test in named) == shown
    for file, test in named:
        assert test in named_in(file), f"{file} has no {test}"


def test_every_table_is_checked() -> None:
    """Each row that is not a head or a rule."""
    tables = _TEXT.partition("## When a part fails")[2]
    rows = re.findall(r"^\| (?!---)", tables, re.MULTILINE)
    assert len(OTHER_ROWS) == len(rows) - tables.count("shown by |") > 30


@pytest.mark.parametrize("row", OTHER_ROWS, ids=[row[0][:40] for row in OTHER_ROWS])
def test_every_promise_is_shown_by_tests_that_exist(row: tuple[str, str]) -> None:
    named = _NAMED.findall(row[1])
    assert ", ".join(f"`{file}::{test}`" for file, test in named) == row[1]
    for file, test in named:
        assert test in named_in(file), f"{file} has no {test}"
