"""Words of a day in sentences and reports, in any language."""

import datetime as dt

from measure.progress.wording import Translate, english

#: Names of the months; not by the locale, as a report is in English on every computer.
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
#: Templates of a day, and of one of this year.
DATE = "{day} {month} {year}"
DAY = "{day} {month}"


def date_words(day: dt.date, tr: Translate = english) -> str:
    """Return a day such as "4 Oct 2026"."""
    return tr(DATE).format(day=day.day, month=tr(MONTHS[day.month - 1]), year=day.year)


def short_date_words(day: dt.date, today: dt.date, tr: Translate = english) -> str:
    """Return a day such as "4 Oct", with its year where that is another one than today's."""
    if day.year != today.year:
        return date_words(day, tr)
    return tr(DAY).format(day=day.day, month=tr(MONTHS[day.month - 1]))
