"""The sizes of the code base are counted right, and are within their limits."""

import ast

import pytest

from tests.repository.structure import (
    classes_defined_twice,
    largest_folder,
    longest_file,
    longest_function,
    main,
    nesting,
    source_files,
    statements,
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
        for item in a:
            while item:
                item = item.next
"""
WITHIN = """
def outer(a):
    with a:
        def inner(b):
            for item in b:
                if item:
                    return item
        return inner
"""


@pytest.mark.parametrize(
    ("code", "deep"), [(STRAIGHT, 0), (CHAIN, 1), (INSIDE_ELSE, 3), (WITHIN, 1)]
)
def test_blocks_inside_item_other_are_counted(code: str, deep: int) -> None:
    assert nesting(ast.parse(code).body[0]) == deep


def test_functions_inside_functions_are_found() -> None:
    names = [getattr(node, "name", "") for node in statements(ast.parse(WITHIN))]
    assert [name for name in names if name] == ["outer", "inner"]


def test_every_package_is_counted() -> None:
    assert len(source_files()) > 400
    assert longest_file().size > 200
    assert longest_function().size > 40
    assert largest_folder().size > 10
    assert classes_defined_twice() == {}


def test_sizes_are_within_their_limits(capsys: pytest.CaptureFixture[str]) -> None:
    assert main() == 0
    assert "class names defined twice: 0" in capsys.readouterr().out
