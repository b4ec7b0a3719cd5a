"""From the cells of one row to a pair of readings, with every fault in plain words."""

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit

MAX_NAME_LENGTH = 80
#: A reading may lie this far beyond what is accepted from the camera, degrees. Ours.
LARGEST_POSSIBLE_DEG = 20.0

_MISSING = {"", "nan", "na", "n/a", "-", "none", "null"}
_SIDES = {"left": Side.LEFT, "l": Side.LEFT, "right": Side.RIGHT, "r": Side.RIGHT}
_NUMBER = re.compile(r"[+-]?\d{1,9}(?:[.,]\d{0,9})?")
_ANGLES = tuple(each for each in Movement if MOVEMENTS[each].unit is Unit.DEGREES)


@dataclass(frozen=True, slots=True, kw_only=True)
class PairedReading:
    """One row: what camera and goniometer said about one held position.

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
    """

    person: str
    movement: Movement
    side: Side
    camera_deg: float
    goniometer_deg: float
    repeat: int | None = None
    tester: str = ""

    @property
    def complete(self) -> bool:
        return math.isfinite(self.camera_deg) and math.isfinite(self.goniometer_deg)

    @property
    def shoulder(self) -> tuple[str, Side]:
        """What is measured: one shoulder of one person."""
        return self.person, self.side


@dataclass(slots=True, kw_only=True)
class RowParser:
    """Reads rows and gathers what is wrong with them, so that a table is mended in one go.

    Attributes
    ----------
    places
        Where each known column stands.
    width
        Cells in the first line.
    problems
        One sentence for each fault found so far.
    decimal_commas
        Whether a decimal comma was understood as a decimal point.
    """

    places: Mapping[str, int]
    width: int
    problems: list[str] = field(default_factory=list)
    decimal_commas: bool = False

    def pair(self, line: int, row: list[str]) -> PairedReading | None:
        """Return the pair of one row, or None after noting what is wrong with it."""
        if len(row) != self.width:
            # Not filled up: "12,5" in a table parted by commas would shift the cells unseen.
            self.problems.append(
                f"line {line} has {len(row)} cells but the first line has {self.width}. Decimal "
                "commas in a table parted by commas do this: use decimal points, or part the "
                "cells by semicolons. Leave the place of an empty cell empty"
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
        if word == Movement.HAND_BEHIND_BACK:
            self.problems.append(
                f"line {line}: the hand-behind-back reach is no angle; no goniometer can check it"
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
    """Return a cell's text short and printable, in quotes, for use in a sentence."""
    short = cell if len(cell) <= 20 else cell[:20] + "…"
    return "'" + "".join(each if each.isprintable() else "?" for each in short) + "'"
