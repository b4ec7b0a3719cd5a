"""The table of speed and memory: its rows, and where they are kept in the documents."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

DOCUMENT = Path(__file__).resolve().parents[2] / "measure/docs/analyst.md"
_MARKS = re.compile(r"(<!-- speed:begin -->\n)(.*?)(<!-- speed:end -->)", re.DOTALL)
_HEAD = "| | what | asked for | measured |\n|---|---|---|---|\n"


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One line: a mark such as "b1", what was compared, the goal, and the figure in words."""

    mark: str
    what: str
    goal: str
    measured: str

    @property
    def text(self) -> str:
        return f"| {self.mark} | {self.what} | {self.goal} | {self.measured} |"


def table(lines: Iterable[str]) -> str:
    """Return the table of whole lines."""
    return _HEAD + "".join(f"{line}\n" for line in lines)


def with_rows(document: str, rows: Iterable[Row]) -> str:
    """Return a document whose table has these rows; others that it has are left as they are."""

    def changed(marks: re.Match[str]) -> str:
        lines = {line.split("|")[1].strip(): line for line in marks[2].splitlines() if "|" in line}
        lines = {mark: line for mark, line in lines.items() if re.fullmatch(r"[a-z]\d*", mark)}
        lines |= {row.mark: row.text for row in rows}
        return marks[1] + table(lines[mark] for mark in sorted(lines)) + marks[3]

    return _MARKS.sub(changed, document)
