"""Aligned columns of text for the terminal."""

from collections.abc import Sequence


def table(rows: Sequence[Sequence[str]], header: Sequence[str]) -> str:
    """Return rows as aligned columns under a header."""
    lines = [list(header), *[list(row) for row in rows]]
    widths = [max(len(line[column]) for line in lines) for column in range(len(header))]
    text = [
        "  ".join(cell.ljust(width) for cell, width in zip(line, widths, strict=True)).rstrip()
        for line in lines
    ]
    text.insert(1, "  ".join("-" * width for width in widths))
    return "\n".join(text)
