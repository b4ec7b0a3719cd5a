"""Columns of text on the terminal."""

from measure.cli.terminal_table import table


def test_columns_line_up() -> None:
    lines = table([["a", "bb"], ["ccc", ""]], ("x", "y")).splitlines()
    assert lines == ["x    y", "---  --", "a    bb", "ccc"]
