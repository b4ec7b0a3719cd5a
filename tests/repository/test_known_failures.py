"""The list of known ways to fail in README.md: complete, and every test named there exists."""

import ast
import re
from functools import cache
from pathlib import Path

import pytest

TESTS = Path(__file__).parents[1]
WAYS = 69

_TEXT = (TESTS / "README.md").read_text(encoding="utf-8").partition("## Known ways to fail")[2]
#: Rows of all tables, heads and rules left out; the last cell names the tests.
ROWS = [
    [cell.strip() for cell in line.strip("|").split("|")]
    for line in _TEXT.splitlines()
    if line.startswith("| ") and not line.endswith("shown by |")
]
_NAMED = re.compile(r"`([\w/]+\.py)::(test_\w+)`")


@cache
def named_in(name: str) -> frozenset[str]:
    tree = ast.parse((TESTS / name).read_text(encoding="utf-8"))
    return frozenset(node.name for node in ast.walk(tree) if isinstance(node, ast.FunctionDef))


def test_the_list_is_numbered_without_a_gap() -> None:
    numbers = [int(row[0]) for row in ROWS if row[0].isdecimal()]
    assert numbers == list(range(1, WAYS + 1))
    assert len(ROWS) > WAYS + 30


@pytest.mark.parametrize("row", ROWS, ids=[row[0][:40] for row in ROWS])
def test_every_row_is_shown_by_tests_that_exist_or_cannot_happen(row: list[str]) -> None:
    shown = row[-1]
    if row[0].isdecimal() and shown.startswith("does not apply: "):
        return
    named = _NAMED.findall(shown)
    assert named
    assert ", ".join(f"`{file}::{test}`" for file, test in named) == shown
    for file, test in named:
        assert test in named_in(file), f"{file} has no {test}"
