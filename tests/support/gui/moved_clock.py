"""A clock that stands where it is put and ticks once each time it is read."""

import datetime as dt

from measure.system.clock import Timestamp

#: Local time minus UTC, minutes.
OFFSET_MIN = 60


class MovedClock:
    """The local time of a place one hour ahead of UTC."""

    def __init__(self) -> None:
        self._local = dt.datetime(2026, 3, 2, 9)

    def move_to(self, local: dt.datetime) -> None:
        """Let it be this local time from now on."""
        self._local = local

    def pass_minutes(self, minutes: float) -> None:
        """Let time pass."""
        self._local += dt.timedelta(minutes=minutes)

    def now(self) -> Timestamp:
        self._local += dt.timedelta(milliseconds=1)
        utc = (self._local - dt.timedelta(minutes=OFFSET_MIN)).replace(tzinfo=dt.UTC)
        return Timestamp(utc=utc, offset_min=OFFSET_MIN)

    def monotonic_s(self) -> float:
        return (self._local - dt.datetime(2026, 1, 1)).total_seconds()

    def today(self) -> dt.date:
        return self._local.date()

    def local_time(self) -> dt.datetime:
        return self._local
