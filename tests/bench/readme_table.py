"""README's table of trust, made from the tables of measure/docs/accuracy.md.

    python -m tests.bench.readme_table

`bench_real --write` and `bench_accuracy --write` call it after they have written accuracy.md, so
README never holds a figure that the page does not.
"""

import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

_ROOT = Path(__file__).resolve().parents[2]
_MARKS = re.compile(r"(<!-- trust:begin -->\n).*?(<!-- trust:end -->)", re.DOTALL)
_HEAD = (
    "| people | movement | given | read | mean error | 95 % range holds | ± shown |\n"
    "|---|---|---|---|---|---|---|\n"
)
#: Row of accuracy.md that repeats others, for those who read the numbers again.
_REPEATED = "all that stand in"


@dataclass(frozen=True, slots=True)
class Row:
    """A row of a table in accuracy.md; `error` and `shown` in degrees or parts of the back."""

    group: str
    given: int
    read: int
    error: float
    shown: float
    held: str
    degrees: bool


def main() -> None:
    """Write the table into README.md."""
    page = (_ROOT / "measure/docs/accuracy.md").read_text(encoding="utf-8")
    readme = _ROOT / "README.md"
    text = readme.read_text(encoding="utf-8")
    table = trust_table(page)
    readme.write_text(_MARKS.sub(lambda m: f"{m[1]}{table}\n{m[2]}", text), encoding="utf-8")


def trust_table(accuracy_page: str) -> str:
    """Return real people by movement and range, then virtual ones by movement, as Markdown."""
    lines = [_line("real", row) for row in real_rows(accuracy_page)]
    lines += [_line("virtual", row) for row in virtual_rows(accuracy_page)]
    return _HEAD + "\n".join(lines)


def real_rows(page: str) -> list[Row]:
    """Return the groups of marked arms of real people, as the page's first table has them."""
    return [
        Row(
            group=cells[0],
            given=int(cells[1]),
            read=int(cells[2]),
            error=_number(cells[4]),
            shown=_number(cells[8]),
            held=cells[7].partition(" (")[0],
            degrees=True,
        )
        for cells in _first_table(page, "real-people")
        if not cells[0].startswith(_REPEATED)
    ]


def virtual_rows(page: str) -> list[Row]:
    """Return one row a movement, of straight and bent elbows and all views together."""
    groups: dict[str, list[list[str]]] = defaultdict(list)
    for cells in _first_table(page, "accuracy"):
        groups[cells[0].rpartition(", ")[0]].append(cells)
    rows = []
    for movement, parts in groups.items():
        counts = [int(cells[2]) for cells in parts]
        held = [re.findall(r"\d+", cells[8]) for cells in parts]
        rows.append(
            Row(
                group=movement,
                given=sum(int(cells[1]) for cells in parts),
                read=sum(counts),
                error=_weighted([cells[5] for cells in parts], counts),
                shown=_weighted([cells[9] for cells in parts], counts),
                held=f"{sum(int(n[0]) for n in held)} of {sum(int(n[1]) for n in held)}",
                degrees="°" in parts[0][5],
            )
        )
    return rows


def _line(people: str, row: Row) -> str:
    unit = "{:.1f}°" if row.degrees else "{:.2f}"
    error, shown = unit.format(row.error), unit.format(row.shown)
    return f"| {people} | {row.group} | {row.given} | {row.read} | {error} | {row.held} | {shown} |"


def _first_table(page: str, marks: str) -> Iterator[list[str]]:
    """Yield the cells of each row of the first table between marks, its head left out."""
    section = page.split(f"<!-- {marks}:begin -->")[1].split(f"<!-- {marks}:end -->")[0]
    table = re.search(r"(?:^\|.*\n?)+", section, re.MULTILINE)
    assert table is not None, marks
    for line in table[0].splitlines()[2:]:
        yield [cell.strip() for cell in line.strip("|").split("|")]


def _weighted(cells: list[str], counts: list[int]) -> float:
    """Return the mean of cells, each as often as its group was read."""
    pairs = zip(cells, counts, strict=True)
    return sum(_number(cell) * count for cell, count in pairs) / sum(counts)


def _number(cell: str) -> float:
    match = re.match(r"[+-]?\d+(\.\d+)?", cell)
    assert match is not None, cell
    return float(match[0])


if __name__ == "__main__":
    main()
