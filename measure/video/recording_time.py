"""Moment of recording that a clip file states, as phones and cameras write it."""

import datetime as dt
import struct
from pathlib import Path
from typing import BinaryIO

#: Beginning of the count of seconds in these files. [source: ISO/IEC 14496-12]
_BEGINNING = dt.datetime(1904, 1, 1, tzinfo=dt.UTC)
#: First year of a stated moment that is believed: before it no clip of a phone exists. [project]
_FIRST_YEAR = 2000
#: Most boxes looked at on one level: a clip has a handful. [technical]
_MOST_BOXES = 1000
#: Largest size that one box states in 32 bits; 1 means that 64 bits follow. [technical]
_LONG_SIZE = 1


def recording_time(clip: Path, now: dt.datetime) -> dt.datetime | None:
    """Return when a clip was recorded, aware, in UTC; None where its file does not say.

    Parameters
    ----------
    now
        The present moment: a later one is not believed.
    """
    try:
        with clip.open("rb") as file:
            size = clip.stat().st_size
            movie = _box(file, b"moov", 0, size)
            header = None if movie is None else _box(file, b"mvhd", *movie)
            seconds = 0 if header is None else _creation(file, header[0])
    except (OSError, ValueError, struct.error):
        return None
    if not seconds:
        return None
    try:
        moment = _BEGINNING + dt.timedelta(seconds=seconds)
    except OverflowError:
        return None
    return moment if moment.year >= _FIRST_YEAR and moment <= now else None


def _box(file: BinaryIO, wanted: bytes, start: int, end: int) -> tuple[int, int] | None:
    """Return where the content of a box begins and ends, between two places of a file."""
    for _ in range(_MOST_BOXES):
        if start + 8 > end:
            return None
        file.seek(start)
        size, kind = struct.unpack(">I4s", file.read(8))
        content = start + 8
        if size == _LONG_SIZE:
            (size,) = struct.unpack(">Q", file.read(8))
            content += 8
        stop = start + size if size else end
        if stop < content:
            return None
        if kind == wanted:
            return content, min(stop, end)
        start = stop
    return None


def _creation(file: BinaryIO, content: int) -> int:
    """Return the seconds that a movie's header states as its creation."""
    file.seek(content)
    version = file.read(4)[:1]
    form = ">Q" if version == b"\1" else ">I"
    (seconds,) = struct.unpack(form, file.read(struct.calcsize(form)))
    return int(seconds)
