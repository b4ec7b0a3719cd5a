"""Reading a table of paired camera and goniometer readings from a file.

Here: the file, its columns, rows that contradict each other. The cells of a row are read in
:mod:`calibration.agreement.pairs_table`; statistics have no place here.
"""

import csv
import io
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from calibration.agreement.pairs_table import PairedReading, RowParser
from measure.domain.movements import Movement
from measure.errors import InputError, in_short

#: A study never needs more; a larger file is a mistake. Ours.
LARGEST_FILE_BYTES = 5_000_000
MOST_ROWS = 20_000
#: Problems listed in one answer, so that it still fits a screen.
PROBLEMS_SHOWN = 10

REQUIRED = ("person", "movement", "side", "camera_deg", "goniometer_deg")
OPTIONAL = ("repeat", "tester")
COLUMNS_WORDED = (
    "The first line must name the columns: person, movement, side, camera_deg, "
    "goniometer_deg, and if wanted repeat and tester."
)
_OTHER_NAMES = {"camera": "camera_deg", "goniometer": "goniometer_deg"}


@dataclass(frozen=True, slots=True, kw_only=True)
class PairTable:
    """All rows of a study, in their order, and what was noticed while reading them."""

    pairs: tuple[PairedReading, ...]
    notes: tuple[str, ...] = ()

    def by_movement(self) -> Mapping[Movement, tuple[PairedReading, ...]]:
        """Return the rows of each movement: two movements never share one statistic."""
        found: dict[Movement, list[PairedReading]] = {}
        for pair in self.pairs:
            found.setdefault(pair.movement, []).append(pair)
        return {each: tuple(found[each]) for each in Movement if each in found}


def read_pairs(path: Path) -> PairTable:
    """Read a table from a file.

    Raises
    ------
    InputError
        When the file cannot be read or holds anything that is not a table of pairs; the text
        names the lines.
    """
    if path.is_dir():
        raise InputError(f"{path.name} is a folder. Give the CSV file itself.")
    if path.exists() and not path.is_file():
        raise InputError(f"{path.name} is a device or a pipe. Give the CSV file itself.")
    try:
        with path.open("rb") as file:
            content = file.read(LARGEST_FILE_BYTES + 1)
    except FileNotFoundError:
        raise InputError(f"There is no file {path.name}. Check its name and folder.") from None
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or str(error)
        raise InputError(
            f"{path.name} could not be read ({why}). Check that you may open it."
        ) from error
    if len(content) > LARGEST_FILE_BYTES:
        raise InputError(
            f"{path.name} is larger than {LARGEST_FILE_BYTES // 1_000_000} MB: "
            "that is no table of paired readings."
        )
    try:
        return pairs_from_text(content.decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise InputError(
            f"{path.name} is not text in UTF-8. Save the table as 'CSV UTF-8' and try again."
        ) from None


def pairs_from_text(text: str) -> PairTable:
    """Read a table from CSV text; cells parted by comma, semicolon or tab.

    A decimal comma is understood where it cannot be mistaken: the cells are parted by
    something else, or the number stands in quotes. Empty readings become NaN; -0 becomes 0.

    Raises
    ------
    InputError
        With every problem found (the first ten in words), so that a table is mended in one go.
    """
    header, rows = _cells(text)
    places, notes = _places(header)
    if not rows:
        raise InputError("The table has a first line but no readings below it.")
    if len(rows) > MOST_ROWS:
        raise InputError(f"The table has more than {MOST_ROWS} rows. Split it.")
    reader = RowParser(places=places, width=len(header))
    read = [reader.pair(line, row) for line, row in rows]
    pairs = tuple(pair for pair in read if pair is not None)
    problems = [*reader.problems, *_repeated(pairs)]
    if problems:
        raise InputError(_listed(problems))
    if reader.decimal_commas:
        notes.append("Decimal commas were read as decimal points.")
    return PairTable(pairs=pairs, notes=tuple(notes))


def _cells(text: str) -> tuple[list[str], list[tuple[int, list[str]]]]:
    """Return the first filled line and the others with their line numbers."""
    if "\0" in text:
        raise InputError("The file is not a text table. Save it as CSV and try again.")
    first_line = next((line for line in text.splitlines() if line.strip()), "")
    if not first_line:
        raise InputError("The table is empty. " + COLUMNS_WORDED)
    reader = csv.reader(
        io.StringIO(text, newline=""), delimiter=max(",;\t", key=first_line.count), strict=True
    )
    try:
        rows = [(reader.line_num, row) for row in reader if any(cell.strip() for cell in row)]
    except csv.Error as error:
        raise InputError(
            f"Line {reader.line_num} of the table cannot be understood ({in_short(error)}). "
            "Save it from the spreadsheet as CSV again."
        ) from None
    if not rows:
        raise InputError("The table is empty. " + COLUMNS_WORDED)
    return rows[0][1], rows[1:]


def _places(header: Sequence[str]) -> tuple[dict[str, int], list[str]]:
    """Return where each known column stands, and a note on the columns nobody reads."""
    names = [re.sub(r"[\s_-]+", "_", cell.strip().lower()) for cell in header]
    names = [_OTHER_NAMES.get(name, name) for name in names]
    missing = [name for name in REQUIRED if name not in names]
    if missing:
        raise InputError(f"The table has no column {', '.join(missing)}. {COLUMNS_WORDED}")
    known = (*REQUIRED, *OPTIONAL)
    twice = [name for name in known if names.count(name) > 1]
    if twice:
        raise InputError(f"The column {', '.join(twice)} stands in the table more than once.")
    unread = [name for name in names if name and name not in known]
    notes = [f"Columns not used: {', '.join(name[:30] for name in unread[:8])}."] if unread else []
    return {name: names.index(name) for name in known if name in names}, notes


def _repeated(pairs: Sequence[PairedReading]) -> list[str]:
    """Return a problem for each numbered repeat that stands in the table twice."""
    seen: set[tuple[object, ...]] = set()
    problems = []
    for pair in pairs:
        key = (pair.shoulder, pair.movement, pair.tester, pair.repeat)
        if pair.repeat is not None and key in seen:
            problems.append(
                f"{pair.person}, {pair.movement}, {pair.side}: repeat {pair.repeat} "
                "stands in the table twice"
            )
        seen.add(key)
    return problems


def _listed(problems: Sequence[str]) -> str:
    shown = "\n".join(f"  - {each}" for each in problems[:PROBLEMS_SHOWN])
    more = len(problems) - PROBLEMS_SHOWN
    rest = f"\n  and {more} more" if more > 0 else ""
    return f"The table cannot be used as it is:\n{shown}{rest}\nMend these lines and try again."
