"""Table of paired camera and goniometer readings: rows, columns and every fault in words.

Values and parsing only; the statistics of the pairs are in :mod:`calibration.agreement.study`.
"""

import csv
import io
import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.errors import InputError, in_short

#: Largest file, bytes; a larger one is no table of a study. [technical]
LARGEST_FILE_BYTES = 5_000_000
#: Most rows of a table. [technical]
MOST_ROWS = 20_000
#: Problems listed in one answer, so that it still fits a screen. [technical]
PROBLEMS_SHOWN = 10
#: Longest name of a person or tester, letters. [technical]
MAX_NAME_LENGTH = 80
#: How far a reading may lie beyond the range accepted from the camera, degrees. [project]
LARGEST_POSSIBLE_DEG = 20.0

REQUIRED = ("person", "movement", "side", "camera_deg", "goniometer_deg")
OPTIONAL = ("repeat", "tester")
COLUMNS_WORDED = (
    "The first line must name the columns: person, movement, side, camera_deg, "
    "goniometer_deg, and optionally repeat and tester."
)
_OTHER_NAMES = {"camera": "camera_deg", "goniometer": "goniometer_deg"}
_MISSING = {"", "nan", "na", "n/a", "-", "none", "null"}
_SIDES = {"left": Side.LEFT, "l": Side.LEFT, "right": Side.RIGHT, "r": Side.RIGHT}
_NUMBER = re.compile(r"[+-]?\d{1,9}(?:[.,]\d{0,9})?")
_ANGLES = tuple(movement for movement in Movement if MOVEMENTS[movement].unit is Unit.DEGREES)


@dataclass(frozen=True, slots=True, kw_only=True)
class PairedReading:
    """One row: the readings of camera and goniometer for one held position.

    Attributes
    ----------
    person
        A pseudonym, the same in every row of one person.
    camera_deg, goniometer_deg
        Degrees; NaN where the cell was empty.
    repeat
        Number of the repeat, from 1, or None where the table does not say.
    tester
        Who read the goniometer; empty where the table does not say.
    line
        Its line in the table, from 1; None for a pair that comes from elsewhere.
    """

    person: str
    movement: Movement
    side: Side
    camera_deg: float
    goniometer_deg: float
    repeat: int | None = None
    tester: str = ""
    line: int | None = None

    @property
    def complete(self) -> bool:
        return math.isfinite(self.camera_deg) and math.isfinite(self.goniometer_deg)

    @property
    def mean_deg(self) -> float:
        """Mean of both readings."""
        return (self.camera_deg + self.goniometer_deg) / 2

    @property
    def difference_deg(self) -> float:
        """Camera minus goniometer."""
        return self.camera_deg - self.goniometer_deg

    @property
    def shoulder(self) -> tuple[str, Side]:
        """Identity of the shoulder: person and side."""
        return self.person, self.side


@dataclass(frozen=True, slots=True, kw_only=True)
class PairTable:
    """All rows of a study in their order, with notes on how they were read."""

    pairs: tuple[PairedReading, ...]
    notes: tuple[str, ...] = ()

    def by_movement(self) -> Mapping[Movement, tuple[PairedReading, ...]]:
        """Return the rows of each movement; two movements never share a statistic."""
        rows: dict[Movement, list[PairedReading]] = {}
        for pair in self.pairs:
            rows.setdefault(pair.movement, []).append(pair)
        return {movement: tuple(rows[movement]) for movement in Movement if movement in rows}


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
            f"{path.name} is larger than {LARGEST_FILE_BYTES // 1_000_000} MB, which is too large "
            "for a table of paired readings."
        )
    try:
        return pairs_from_text(content.decode("utf-8-sig"))
    except UnicodeDecodeError:
        raise InputError(
            f"{path.name} is not text in UTF-8. Save the table as 'CSV UTF-8' and try again."
        ) from None


def pairs_from_text(text: str) -> PairTable:
    """Read a table from CSV text; the delimiter is a comma, semicolon or tab.

    A decimal comma is accepted where it is unambiguous: the delimiter is another character, or
    the number is quoted. Empty readings become NaN; -0 becomes 0.

    Raises
    ------
    InputError
        With every problem (the first ten in words), so that a table is corrected in one go.
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
    """Return the first line that is not blank, and the others with their line numbers."""
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
    """Return the position of each column, and a note on columns that are not used."""
    names = [re.sub(r"[\s_-]+", "_", cell.strip().lower()) for cell in header]
    names = [_OTHER_NAMES.get(name, name) for name in names]
    missing = [name for name in REQUIRED if name not in names]
    if missing:
        raise InputError(f"The table has no column {', '.join(missing)}. {COLUMNS_WORDED}")
    columns = (*REQUIRED, *OPTIONAL)
    twice = [name for name in columns if names.count(name) > 1]
    if twice:
        raise InputError(f"The column {', '.join(twice)} appears in the table more than once.")
    unread = [name for name in names if name and name not in columns]
    notes = [f"Columns not used: {', '.join(name[:30] for name in unread[:8])}."] if unread else []
    return {name: names.index(name) for name in columns if name in names}, notes


def _repeated(pairs: Sequence[PairedReading]) -> list[str]:
    """Return a problem for each numbered repeat that occurs twice."""
    seen: set[tuple[object, ...]] = set()
    problems = []
    for pair in pairs:
        key = (pair.shoulder, pair.movement, pair.tester, pair.repeat)
        if pair.repeat is not None and key in seen:
            problems.append(
                f"{pair.person}, {pair.movement}, {pair.side}: repeat {pair.repeat} "
                "appears in the table twice"
            )
        seen.add(key)
    return problems


def _listed(problems: Sequence[str]) -> str:
    shown = "\n".join(f"  - {problem}" for problem in problems[:PROBLEMS_SHOWN])
    more = len(problems) - PROBLEMS_SHOWN
    rest = f"\n  and {more} more" if more > 0 else ""
    return f"The table cannot be used as it is:\n{shown}{rest}\nCorrect these lines and try again."


@dataclass(slots=True, kw_only=True)
class RowParser:
    """Parser of rows that collects all problems, so that a table is corrected in one go.

    Attributes
    ----------
    places
        Position of each column.
    width
        Number of cells in the first line.
    problems
        One sentence for each fault so far.
    decimal_commas
        Whether a decimal comma was read as a decimal point.
    """

    places: Mapping[str, int]
    width: int
    problems: list[str] = field(default_factory=list)
    decimal_commas: bool = False

    def pair(self, line: int, row: list[str]) -> PairedReading | None:
        """Return the pair of one row, or None after recording its problems."""
        if len(row) != self.width:
            # Not padded: "12,5" in a table delimited by commas would shift the cells unnoticed.
            self.problems.append(
                f"line {line} has {len(row)} cells but the first line has {self.width}. Decimal "
                "commas in a table separated by commas cause this: use decimal points, or separate "
                "the cells with semicolons. Leave empty cells empty"
            )
            return None
        cells = dict.fromkeys(("repeat", "tester"), "") | {
            name: row[place].strip() for name, place in self.places.items()
        }
        before = len(self.problems)
        if not cells["person"]:
            self.problems.append(f"line {line} names no person")
        for column in ("person", "tester"):
            self._check_name(cells[column], column, line)
        if cells["tester"].isdecimal():
            self.problems.append(
                f"line {line}: the tester {quoted(cells['tester'])} is a number: write a name or "
                "letters. If it belongs to a reading, use decimal points instead of commas"
            )
        movement = self._movement(cells["movement"], line)
        side = _SIDES.get(cells["side"].lower())
        if side is None:
            said = f"the side {quoted(cells['side'])}" if cells["side"] else "no side"
            self.problems.append(f"line {line} has {said}: write left or right, the person's own")
        camera = self._degrees(cells["camera_deg"], "camera", line, movement)
        goniometer = self._degrees(cells["goniometer_deg"], "goniometer", line, movement)
        repeat = self._repeat(cells["repeat"], line)
        if len(self.problems) > before or movement is None or side is None:
            return None
        return PairedReading(
            person=cells["person"],
            movement=movement,
            side=side,
            camera_deg=camera,
            goniometer_deg=goniometer,
            repeat=repeat,
            tester=cells["tester"],
            line=line,
        )

    def _check_name(self, cell: str, column: str, line: int) -> None:
        if len(cell) > MAX_NAME_LENGTH or not cell.isprintable():
            self.problems.append(
                f"line {line}: the {column} must be plain text of at most {MAX_NAME_LENGTH} letters"
            )

    def _movement(self, cell: str, line: int) -> Movement | None:
        word = re.sub(r"[\s_-]+", "-", cell.lower())
        if word in _ANGLES:
            return Movement(word)
        if word in set(Movement):
            self.problems.append(
                f"line {line}: the {word} reach is not an angle; a goniometer cannot check it"
            )
        else:
            said = f"the movement {quoted(cell)}" if cell else "no movement"
            self.problems.append(f"line {line} has {said}: write one of {', '.join(_ANGLES)}")
        return None

    def _degrees(self, cell: str, instrument: str, line: int, movement: Movement | None) -> float:
        """Return a reading; NaN for an empty cell and for one with a problem."""
        text = cell.removesuffix("°").strip().replace("\u2212", "-")
        if text.lower() in _MISSING:
            return math.nan
        if not _NUMBER.fullmatch(text):
            self.problems.append(
                f"line {line}: the {instrument} reading {quoted(cell)} is not a number"
            )
            return math.nan
        self.decimal_commas |= "," in text
        value = float(text.replace(",", ".")) + 0.0  # adding zero turns -0.0 into 0.0
        if movement is not None:
            low, high = MOVEMENTS[movement].possible
            if not low - LARGEST_POSSIBLE_DEG <= value <= high + LARGEST_POSSIBLE_DEG:
                self.problems.append(
                    f"line {line}: {value:g} degrees is not possible for "
                    f"{MOVEMENTS[movement].name.lower()} (the {instrument} reading)"
                )
        return value

    def _repeat(self, cell: str, line: int) -> int | None:
        if cell.lower() in _MISSING:
            return None
        if not re.fullmatch(r"[1-9][0-9]{0,3}", cell):
            self.problems.append(
                f"line {line}: the repeat {quoted(cell)} is not a whole number from 1 up"
            )
            return None
        return int(cell)


def quoted(cell: str) -> str:
    """Return a cell's text shortened, printable and in quotes, for use in a sentence."""
    short = cell if len(cell) <= 20 else cell[:20] + "…"
    return "'" + "".join(letter if letter.isprintable() else "?" for letter in short) + "'"
