"""The beginning of a clip file that states when it was recorded, and nothing else."""

import datetime as dt
import struct

_BEGINNING = dt.datetime(1904, 1, 1, tzinfo=dt.UTC)


def movie_of(recorded: dt.datetime, *, version: int = 0) -> bytes:
    """Return the bytes of a movie header after some other boxes."""
    seconds = round((recorded - _BEGINNING).total_seconds())
    stated = struct.pack(">Q" if version else ">I", seconds)
    header = _box(b"mvhd", bytes([version, 0, 0, 0]) + stated + bytes(96))
    return _box(b"ftyp", b"isom") + _box(b"free", b"") + _box(b"moov", _box(b"udta", b"") + header)


def _box(kind: bytes, content: bytes) -> bytes:
    return struct.pack(">I4s", 8 + len(content), kind) + content
