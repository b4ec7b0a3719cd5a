"""Reminders at chosen times of the day: which one is due. No Qt, no clock."""

import datetime as dt
import re
from collections.abc import Iterable

#: A reminder that could not be shown for longer than this is left out. [project]
LATEST = dt.timedelta(minutes=15)
#: Most times a day. [technical]
MOST_TIMES = 12

_TIME = re.compile(r"(\d{1,2})[:.](\d{2})")


def times_in(text: str) -> tuple[dt.time, ...]:
    """Return the times of the day written as "8:00, 19:30", the earliest first.

    Raises
    ------
    ValueError
        When something is no time of the day, or there are too many.
    """
    times = set()
    for part in filter(None, re.split(r"[,;\s]+", text)):
        match = _TIME.fullmatch(part)
        if match is None:
            raise ValueError(part)
        times.add(dt.time(int(match[1]), int(match[2])))
    if len(times) > MOST_TIMES:
        raise ValueError(text)
    return tuple(sorted(times))


def reminder_due(times: Iterable[dt.time], since: dt.datetime, now: dt.datetime) -> dt.time | None:
    """Return the last of the times that came after `since` and lies not long before `now`.

    Parameters
    ----------
    since, now
        Local times.
    """
    for time in sorted(times, reverse=True):
        for day in (now.date(), now.date() - dt.timedelta(days=1)):
            moment = dt.datetime.combine(day, time)
            if max(since, now - LATEST) < moment <= now:
                return time
    return None
