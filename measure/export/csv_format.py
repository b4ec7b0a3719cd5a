"""The table of trials as CSV: one for programs, one for spreadsheets.

For programs: UTF-8, comma, decimal point, every value as it is, the same on every computer.
For spreadsheets: what a spreadsheet guesses from a text is guarded against, and numbers are
written for the decimal sign that was asked for, never for what this computer is set to.
"""

import csv
import functools
import io
import re
from collections.abc import Callable
from enum import StrEnum

from measure.domain.history import History
from measure.export.table import (
    COLUMNS,
    MEASUREMENT_COLUMNS,
    TRIAL_COLUMNS,
    Cell,
    Column,
    ColumnKind,
    rows_by_measurement,
)


class DecimalSign(StrEnum):
    """What a spreadsheet expects between whole and broken part of a number."""

    COMMA = "comma"
    POINT = "point"


#: A text that begins so may be run as a formula; full-width signs are taken for plain ones.
_FORMULA = re.compile(r"[=+\-@\uff1d\uff0b\uff0d\uff20\u2212\t\r\n]")
_NUMBER_LIKE = re.compile(r"[+-]?[\d.,'\u2019\s]+([eE][+-]?\d+)?\s*[%\u20ac$\u00a3]?")
_DATE_LIKE = re.compile(r"\d{1,4}\s*[-/.:]\s*\d{1,2}\b.*", re.DOTALL)
_MONTH = (
    r"(jan|ene|gen|sty|feb|fev|fév|lut|mar|mär|mrt|apr|avr|abr|kwi|may|mai|mag|mei|maj|jun|jui|"
    r"giu|cze|jul|lug|lip|aug|aou|aoû|ago|sie|sep|set|wrz|oct|okt|out|ott|paź|nov|nob|lis|dec|"
    r"dez|déc|dic|gru)\w*\.?"
)
_MONTH_LIKE = re.compile(
    rf"\d{{1,4}}\.?[\s\-/.]*{_MONTH}([\s\-/.,]*\d{{2,4}})?|{_MONTH}[\s\-/.]*\d{{1,4}}.*",
    re.IGNORECASE | re.DOTALL,
)
_TRUTH_LIKE = re.compile(r"true|false|wahr|falsch|vrai|faux", re.IGNORECASE)

#: Digits after the decimal sign for people; programs get all of them. Ours.
_DIGITS = 4


def csv_for_programs(history: History) -> bytes:
    """Return the table as UTF-8 without mark, separated by commas, lines ended as RFC 4180 says."""
    return _table(history, ",", lambda column, value: _for_program(value)).encode("utf-8")


def csv_for_spreadsheets(history: History, sign: DecimalSign) -> bytes:
    """Return the table with a byte-order mark, so that accented names are read as such.

    Parameters
    ----------
    sign
        With a comma the columns are separated by semicolons, as spreadsheets expect there.
    """
    separator = ";" if sign is DecimalSign.COMMA else ","
    table = _table(history, separator, lambda column, value: _for_spreadsheet(column, value, sign))
    return table.encode("utf-8-sig")


@functools.lru_cache(maxsize=4096)
def guarded(text: str) -> str:
    """Return a text that a spreadsheet leaves alone.

    An apostrophe goes before what might be run as a formula, or read as a number, a date or a
    truth value: "=1+1", "3-4", "1/2", "MAR1", "12e5". Only for texts: a negative number in a
    column of numbers needs none.
    """
    inner = text.strip(" \u00a0\u3000\ufeff\u200b")
    suspicious = (
        _FORMULA.match(inner)
        or _NUMBER_LIKE.fullmatch(inner)
        or _DATE_LIKE.fullmatch(inner)
        or _MONTH_LIKE.fullmatch(inner)
        or _TRUTH_LIKE.fullmatch(inner)
    )
    return "'" + text if suspicious else text


def _table(history: History, separator: str, written: Callable[[Column, Cell], str]) -> str:
    """Return the table, writing what the rows of a measurement share only once."""
    text = io.StringIO()
    writer = csv.writer(text, delimiter=separator)
    writer.writerow(column.header for column in COLUMNS)
    for rows in rows_by_measurement(history):
        shared = [written(column, column.value(rows[0])) for column in MEASUREMENT_COLUMNS]
        for row in rows:
            own = [written(column, column.value(row)) for column in TRIAL_COLUMNS]
            writer.writerow(shared + own)
    return text.getvalue()


def _for_program(value: Cell) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    return repr(value) if isinstance(value, float) else str(value)


def _for_spreadsheet(column: Column, value: Cell, sign: DecimalSign) -> str:
    if column.kind is ColumnKind.TEXT and isinstance(value, str):
        return guarded(value)
    if isinstance(value, float):
        text = repr(round(value, _DIGITS))
        return text.replace(".", ",") if sign is DecimalSign.COMMA else text
    return _for_program(value)
