"""A day as people write it: "25 Nov 2026"; numbers alone are understood too."""

import datetime as dt
import re

from gui.text.wording import tr
from measure.progress.dates import MONTHS, date_words

#: Digits of a year that is written in full.
_YEAR = r"(\d{4})"


def day_text(day: dt.date) -> str:
    """Return a day as it is shown in a field."""
    return date_words(day, tr)


def day_from_text(text: str) -> dt.date | None:
    """Return the day that was typed, or None for what is none.

    Understood are "25 Nov 2026" with the month's name in the window's language or its beginning,
    "2026-11-25", and "25/11/2026" or "25.11.2026".
    """
    words = text.strip().lower()
    if match := re.fullmatch(_YEAR + r"-(\d{1,2})-(\d{1,2})", words):
        return _day(match[1], int(match[2]), match[3])
    if match := re.fullmatch(r"(\d{1,2})[/.](\d{1,2})[/.]" + _YEAR, words):
        return _day(match[3], int(match[2]), match[1])
    words = words.replace(" de ", " ")
    if match := re.fullmatch(r"(\d{1,2})\.?\s+([^\W\d]{3,})\.?\s+" + _YEAR, words):
        return _day(match[3], _month(match[2]), match[1])
    return _as_shown(words)


def _as_shown(words: str) -> dt.date | None:
    """Return the day that a field shows so, in whatever way the window's language puts it."""
    if match := re.fullmatch(r"\D*(\d{1,2})\D+" + _YEAR + r"\D*", words):
        days = (_day(match[2], month, match[1]) for month in range(1, 13))
        return next((day for day in days if day and day_text(day).lower() == words), None)
    return None


def _month(name: str) -> int:
    """Return the number of a month whose short name begins this one, or 0."""
    shorts = [tr(month).lower().rstrip(".") for month in MONTHS]
    return next((k for k, short in enumerate(shorts, start=1) if name.startswith(short)), 0)


def _day(year: str, month: int, day: str) -> dt.date | None:
    try:
        return dt.date(int(year), month, int(day))
    except ValueError:
        return None
