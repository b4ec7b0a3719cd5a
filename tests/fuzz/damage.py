"""Damage to the bytes of a file, the same for the same seed: flipped, cut, spliced, lying.

What lies about itself is in :data:`LIES`: numbers in headers replaced by absurd ones.
"""

import random
import struct
from collections.abc import Callable

#: What a header may claim: nothing, everything, one less, a negative number, a huge picture.
ABSURD = (0, 1, 2, 0xFF, 0x7FFF, 0xFFFF, 50_000, 10_000_000, 0x7FFFFFFF, 0x80000000, 0xFFFFFFFF)

#: Names of parts of clips, behind which sizes, counts and times stand.
_PARTS = (
    b"mvhd", b"tkhd", b"mdhd", b"hdlr", b"stts", b"ctts", b"stss", b"stsc", b"stsz", b"stco",
    b"stsd", b"avc1", b"avcC", b"hvcC", b"colr", b"pasp", b"elst", b"moov", b"trak", b"mdia",
    b"mdat", b"ftyp", b"avih", b"strh", b"strf", b"idx1", b"movi", b"LIST", b"\x16\x54\xae\x6b",
    b"\x1a\x45\xdf\xa3", b"\x18\x53\x80\x67", b"\x15\x49\xa9\x66", b"\x1f\x43\xb6\x75",
    b"GIF8", b"\x00\x00\x01\x67", b"\x00\x00\x01\x65", b"\xff\xc0", b"\xff\xda",
)  # fmt: skip

Damage = Callable[[bytearray, random.Random], None]


def flip(data: bytearray, chance: random.Random) -> None:
    """Change some bits."""
    for _ in range(chance.choice((1, 3, 20, 200))):
        data[chance.randrange(len(data))] ^= 1 << chance.randrange(8)


def overwrite(data: bytearray, chance: random.Random) -> None:
    """Write noise, zeros or ones over a stretch."""
    start = chance.randrange(len(data))
    length = min(chance.choice((1, 16, 512, len(data) // 10 + 1)), len(data) - start)
    fill = (chance.randbytes(length), bytes(length), b"\xff" * length)[chance.randrange(3)]
    data[start : start + length] = fill


def cut(data: bytearray, chance: random.Random) -> None:
    """Lose the end, the beginning, or a piece."""
    where = chance.randrange(len(data))
    kind = chance.randrange(4)
    if kind < 2:
        del data[where:]
    elif kind == 2:
        del data[: where // 8]
    else:
        del data[where : where + chance.randrange(1, len(data) // 4 + 2)]


def splice(data: bytearray, chance: random.Random) -> None:
    """Put a piece of the file somewhere else in it, over what is there or between it."""
    start, other = chance.randrange(len(data)), chance.randrange(len(data))
    piece = bytes(data[other : other + chance.randrange(1, 4000)])
    data[start : start + chance.choice((0, len(piece)))] = piece


def lie(data: bytearray, chance: random.Random) -> None:
    """Replace numbers near the start, or behind the names of parts, by absurd ones."""
    for _ in range(chance.randrange(1, 4)):
        number = chance.choice(ABSURD)
        order = chance.choice("<>")
        width, code = chance.choice(((1, "B"), (2, "H"), (4, "I"), (8, "Q")))
        number %= 1 << (8 * width)
        places = [data.find(part) for part in chance.sample(_PARTS, len(_PARTS))]
        found = next((place for place in places if place >= 0), -1)
        if found < 0 or chance.random() < 0.2:
            place = chance.randrange(min(len(data), 200))
        else:
            place = max(0, found + chance.randrange(-8, 90))
        data[place : place + width] = struct.pack(order + code, number)


def grow(data: bytearray, chance: random.Random) -> None:
    """Repeat a piece many times, or append a foreign file."""
    if chance.random() < 0.5:
        start = chance.randrange(len(data))
        piece = bytes(data[start : start + chance.randrange(1, 64)])
        data[start:start] = piece * chance.randrange(1, 2000)
    else:
        data += chance.choice((b"PK\x03\x04", b"<html>", b"#EXTM3U\nhttp://x/", b"\0" * 9000))


DAMAGES: tuple[Damage, ...] = (flip, overwrite, cut, splice, lie, lie, grow)


def damaged(data: bytes, seed: int) -> bytes:
    """Return a damaged copy, the same for the same seed; never empty."""
    chance = random.Random(seed)
    changed = bytearray(data)
    for _ in range(chance.choice((1, 1, 1, 2, 4))):
        chance.choice(DAMAGES)(changed, chance)
        if not changed:
            changed += b"\0"
    return bytes(changed)
