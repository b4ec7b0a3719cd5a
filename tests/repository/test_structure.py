"""The figures of the house are counted right, and are within their limits."""

import ast

import pytest

from tests.repository.structure import (
    circular_imports,
    imports_of_the_house,
    longest_file,
    main,
    nesting,
)

STRAIGHT = """
def straight(a):
    return a
"""
CHAIN = """
def chain(a):
    if a == 1:
        return 1
    elif a == 2:
        return 2
    elif a == 3:
        return 3
    return 0
"""
INSIDE_ELSE = """
def inside_else(a):
    if a:
        return 1
    else:
        for each in a:
            while each:
                each = each.next
"""
WITHIN = """
def outer(a):
    with a:
        def inner(b):
            for each in b:
                if each:
                    return each
        return inner
"""


@pytest.mark.parametrize(
    ("code", "deep"), [(STRAIGHT, 0), (CHAIN, 1), (INSIDE_ELSE, 3), (WITHIN, 1)]
)
def test_blocks_inside_each_other_are_counted(code: str, deep: int) -> None:
    assert nesting(ast.parse(code).body[0]) == deep


def test_rounds_of_imports_are_found() -> None:
    straight = {"a": {"b", "c"}, "b": {"c"}, "c": set()}
    assert circular_imports(straight) == []
    assert circular_imports(straight | {"c": {"a"}}) == [["a", "b", "c"]]
    assert circular_imports({"a": {"b"}, "b": {"a"}, "c": {"d"}, "d": {"c"}}) == [
        ["a", "b"],
        ["c", "d"],
    ]


def test_imports_inside_functions_count() -> None:
    assert "gui.app.application" in imports_of_the_house()["gui.app.command"]


def test_the_house_is_within_its_limits(capsys: pytest.CaptureFixture[str]) -> None:
    assert longest_file().size > 200
    assert main() == 0
    assert "circular imports: 0" in capsys.readouterr().out
