"""Container check: rejects paths that are no video files before a decoder opens them.

The decoder's answer to bad input is a bare "not opened"; and a text file that names other
places (a play list) would make it follow them, even over the network. So a clip is accepted
only when its first bytes are those of a known container, and everything else gets its own
sentence. Nothing is decoded here. General libraries for recognising files know fewer containers
(no bare H.264, no transport streams from any start) and guess where this check has to refuse.
"""

import codecs
import os
import re
import stat
import struct
from collections.abc import Iterator
from enum import StrEnum
from pathlib import Path
from typing import BinaryIO

from measure.errors import LONGEST_PATH, ClipError, in_short
from measure.message import TranslatableMessage, system_reason

#: Bytes read from the start of a file to recognise it. [technical]
_HEAD_BYTES = 1 << 16

#: Boxes of an MP4 file that are read on one level; real files have a few, or one for each second.
#: [technical]
_MOST_BOXES = 100_000

#: Windows attribute of a file whose content is not on this computer yet
#: (FILE_ATTRIBUTE_RECALL_ON_DATA_ACCESS). [source: MS-FSCC 2.6]
_KEPT_ELSEWHERE = 0x00400000


class Container(StrEnum):
    """Kinds of file that first bytes distinguish."""

    MP4 = "MP4 or MOV"
    MATROSKA = "MKV or WebM"
    AVI = "AVI"
    TRANSPORT = "MPEG transport stream"
    PROGRAM = "MPEG"
    ASF = "WMV"
    FLASH = "FLV"
    OGG = "Ogg"
    GIF = "GIF"
    RAW_H26X = "bare H.264 or HEVC"
    RAW_Y4M = "Y4M"
    PICTURE = "a still picture"
    SOUND = "a sound file"
    ARCHIVE = "a packed archive"
    DOCUMENT = "a document"
    TEXT = "a text file"
    UNKNOWN = "unknown"


_NO_CLIPS = {
    Container.PICTURE: TranslatableMessage("is a still picture; a movement needs a clip"),
    Container.SOUND: TranslatableMessage("contains sound only, no pictures"),
    Container.ARCHIVE: TranslatableMessage(
        "is a compressed archive; extract it and choose the clip inside"
    ),
    Container.DOCUMENT: TranslatableMessage("is a document, not a video"),
    Container.TEXT: TranslatableMessage("is a text file, not a video"),
    Container.UNKNOWN: TranslatableMessage("is not a video that Thawline recognises"),
}


def check_clip(clip: Path) -> Container:
    """Return the container of a clip that may be opened.

    Raises
    ------
    ClipError
        The path leads to no clip; each kind of thing has a sentence of its own.
    """
    _check_name(clip)
    _check_place(clip)
    try:
        with clip.open("rb") as file:
            head = file.read(_HEAD_BYTES)
            kind = sniff_container(head)
            if kind is Container.MP4:
                _check_index(clip, file)
    except PermissionError:
        raise ClipError(
            TranslatableMessage(
                "You do not have permission to read the clip {clip}. Ask for it, or copy the "
                "clip to a folder of your own.",
                {"clip": _name(clip)},
            )
        ) from None
    except OSError as error:
        raise ClipError(
            TranslatableMessage(
                "The clip {clip} cannot be read ({reason}). Copy it to this computer's own "
                "disk and try again.",
                {"clip": _name(clip), "reason": system_reason(error)},
            )
        ) from None
    if _has_sound_only(kind, head):
        kind = Container.SOUND
    if kind in _NO_CLIPS:
        raise ClipError(_no_clip(clip, kind))
    return kind


def _no_clip(clip: Path, kind: Container) -> TranslatableMessage:
    return TranslatableMessage(
        "The clip {clip} {finding}.", {"clip": _name(clip), "finding": _NO_CLIPS[kind]}
    )


def _name(clip: Path) -> str:
    return in_short(clip.name or clip, LONGEST_PATH)


def _place(path: Path) -> str:
    return in_short(path, LONGEST_PATH)


def _check_name(clip: Path) -> None:
    text = os.fspath(clip)
    if "\0" in text:
        raise ClipError(TranslatableMessage("The clip's name contains a zero byte. Rename it."))
    scheme, separator, _ = text.partition(":/")
    if separator and len(scheme) > 1 and scheme.replace("+", "").isalnum():
        raise ClipError(
            TranslatableMessage(
                "{path} is an address, not a file. Nothing is downloaded: save the clip on this "
                "computer first.",
                {"path": _place(clip)},
            )
        )
    try:
        text.encode("utf-8")
    except UnicodeEncodeError:
        raise ClipError(
            TranslatableMessage(
                "The clip {clip} has a name that is not readable text. Rename it.",
                {"clip": _name(clip)},
            )
        ) from None


def _check_place(clip: Path) -> None:
    try:
        facts = clip.stat()
    except FileNotFoundError:
        raise ClipError(
            TranslatableMessage(
                "The clip {clip} was not found in {folder}. Check the name.",
                {"clip": _name(clip), "folder": _place(Path(os.path.abspath(clip.parent)))},
            )
        ) from None
    except PermissionError:
        raise ClipError(
            TranslatableMessage(
                "The clip {clip} is in a folder that you do not have permission to open. Copy it "
                "to one of your own.",
                {"clip": _name(clip)},
            )
        ) from None
    except OSError as error:
        raise ClipError(
            TranslatableMessage(
                "The clip {clip} cannot be found ({reason}).",
                {"clip": _name(clip), "reason": system_reason(error)},
            )
        ) from None
    if stat.S_ISDIR(facts.st_mode):
        raise ClipError(
            TranslatableMessage(
                "{path} is a folder, not a clip. Choose one of the files in it.",
                {"path": _place(clip)},
            )
        )
    if not stat.S_ISREG(facts.st_mode):
        raise ClipError(
            TranslatableMessage(
                "{path} is a device or a pipe, not a recorded clip.", {"path": _place(clip)}
            )
        )
    if getattr(facts, "st_file_attributes", 0) & _KEPT_ELSEWHERE:
        raise ClipError(
            TranslatableMessage(
                "The clip {clip} is stored online and is not on this computer yet. Make it "
                "available offline first.",
                {"clip": _name(clip)},
            )
        )
    if facts.st_size == 0:
        raise ClipError(
            TranslatableMessage(
                "The clip {clip} is empty (0 bytes). Copy or record it again.",
                {"clip": _name(clip)},
            )
        )


def sniff_container(head: bytes) -> Container:
    """Return the kind of a file whose first bytes are `head`."""
    if head[4:8] in (b"ftyp", b"moov", b"mdat", b"wide", b"free", b"skip", b"pnot"):
        still = head[4:8] == b"ftyp" and head[8:12] in (b"heic", b"heix", b"mif1", b"avif")
        return Container.PICTURE if still else Container.MP4
    if head[:4] == b"RIFF":
        inside = {b"AVI ": Container.AVI, b"WAVE": Container.SOUND, b"WEBP": Container.PICTURE}
        return inside.get(head[8:12], Container.UNKNOWN)
    for start, kind in _STARTS:
        if head.startswith(start):
            return kind
    if _is_transport_stream(head):
        return Container.TRANSPORT
    sound = len(head) > 1 and head[0] == 0xFF and head[1] & 0xE0 == 0xE0
    if sound and not head.startswith(_TEXT_MARKS):
        return Container.SOUND  # bare MPEG audio
    return Container.TEXT if _is_text(head) else Container.UNKNOWN


_STARTS = (
    (b"\x1a\x45\xdf\xa3", Container.MATROSKA),
    (b"\x00\x00\x01\xba", Container.PROGRAM),
    (b"\x00\x00\x01\xb3", Container.PROGRAM),
    (b"\x30\x26\xb2\x75\x8e\x66\xcf\x11", Container.ASF),
    (b"FLV\x01", Container.FLASH),
    (b"OggS", Container.OGG),
    (b"GIF8", Container.GIF),
    (b"YUV4MPEG2", Container.RAW_Y4M),
    (b"\x00\x00\x00\x01", Container.RAW_H26X),
    (b"\x00\x00\x01", Container.RAW_H26X),
    (b"\x89PNG", Container.PICTURE),
    (b"\xff\xd8\xff", Container.PICTURE),
    (b"BM", Container.PICTURE),
    (b"II*\x00", Container.PICTURE),
    (b"MM\x00*", Container.PICTURE),
    (b"ID3", Container.SOUND),
    (b"fLaC", Container.SOUND),
    (b"#!AMR", Container.SOUND),
    (b"PK\x03\x04", Container.ARCHIVE),
    (b"\x1f\x8b", Container.ARCHIVE),
    (b"7z\xbc\xaf", Container.ARCHIVE),
    (b"Rar!", Container.ARCHIVE),
    (b"%PDF", Container.DOCUMENT),
)


#: Byte order marks of UTF-16 and UTF-8.
_TEXT_MARKS = (b"\xff\xfe", b"\xfe\xff", b"\xef\xbb\xbf")


def _is_transport_stream(head: bytes) -> bool:
    """Return whether sync bytes stand every 188 bytes (or every 192, with a time before each)."""
    for first, step in ((0, 188), (4, 192)):
        marks = head[first : first + 5 * step : step]
        if len(marks) >= 3 and set(marks) == {0x47}:
            return True
    return False


def _is_text(head: bytes) -> bool:
    if head.startswith(_TEXT_MARKS):
        return True
    try:
        # Incremental, because the head may end inside a letter.
        text = codecs.getincrementaldecoder("utf-8")().decode(head)
    except UnicodeDecodeError:
        return False
    return all(sign.isprintable() or sign in "\t\r\n\f" for sign in text)


def _has_sound_only(kind: Container, head: bytes) -> bool:
    """Return whether a Matroska or Ogg file names sound codecs at its start and no video codec."""
    if kind is Container.MATROSKA:
        return b"A_" in head and not re.search(rb"V_[A-Z]", head)
    if kind is Container.OGG:
        sound = any(mark in head for mark in (b"\x01vorbis", b"OpusHead", b"\x7fFLAC"))
        return sound and b"\x80theora" not in head
    return False


def _check_index(clip: Path, file: BinaryIO) -> None:
    """Check that an MP4 or MOV file has its index and a video track.

    Raises
    ------
    ClipError
        If the index is missing (a recording that was cut off) or there is only sound.
    """
    size = file.seek(0, os.SEEK_END)
    kinds = []
    for kind, start, end in _boxes(file, 0, size):
        kinds.append(kind)
        if kind == b"moov" and end <= size:
            tracks = _track_kinds(file, start, end)
            if tracks and b"vide" not in tracks:
                raise ClipError(_no_clip(clip, Container.SOUND))
            return
    if b"moof" not in kinds:
        raise ClipError(
            TranslatableMessage(
                "The clip {clip} is incomplete: its index is missing, as happens when a "
                "recording or a copy is interrupted. Record or copy it again.",
                {"clip": _name(clip)},
            )
        )


def _boxes(file: BinaryIO, start: int, end: int) -> Iterator[tuple[bytes, int, int]]:
    """Yield kind, start and end of the content of each box between two places of the file."""
    place = start
    for _ in range(_MOST_BOXES):
        if place + 8 > end:
            return
        file.seek(place)
        head = file.read(16)
        length, kind = struct.unpack(">I4s", head[:8])
        content = place + 8
        if length == 1 and len(head) == 16:
            length = struct.unpack(">Q", head[8:])[0]
            content = place + 16
        elif length == 0:
            length = end - place
        if length < content - place:
            return
        yield kind, content, place + length
        place += length


def _track_kinds(file: BinaryIO, start: int, end: int) -> set[bytes]:
    """Return the handler kinds of the tracks in an index: b"vide", b"soun" and others."""
    kinds = set()
    for track in _inside(file, b"trak", start, end):
        for media in _inside(file, b"mdia", *track):
            for handler, _ in _inside(file, b"hdlr", *media):
                file.seek(handler + 8)
                kinds.add(file.read(4))
    return kinds


def _inside(file: BinaryIO, kind: bytes, start: int, end: int) -> list[tuple[int, int]]:
    """Return where the content of each box of a kind starts and ends."""
    return [
        (inner, min(after, end)) for name, inner, after in _boxes(file, start, end) if name == kind
    ]
