"""What a path leads to is told apart before a decoder sees it."""

import os
import struct
from pathlib import Path
from types import SimpleNamespace

import pytest

from measure.errors import ClipError
from measure.video import container
from measure.video.container import Container, check_clip, sniff_container
from tests.support.odd_clips import odd_clip


@pytest.mark.parametrize(
    ("head", "kind"),
    [
        (b"\0\0\0\x20ftypisom", Container.MP4),
        (b"\0\0\0\x08wide\0\0", Container.MP4),
        (b"\0\0\0\x20ftypheic", Container.PICTURE),
        (b"\x1a\x45\xdf\xa3....", Container.MATROSKA),
        (b"RIFF\x10\0\0\0AVI LIST", Container.AVI),
        (b"RIFF\x10\0\0\0WAVEfmt ", Container.SOUND),
        (b"RIFF\x10\0\0\0WEBPVP8 ", Container.PICTURE),
        (b"RIFF\x10\0\0\0XXXX", Container.UNKNOWN),
        (b"GIF89a....", Container.GIF),
        (b"\x89PNG\r\n\x1a\n", Container.PICTURE),
        (b"\xff\xd8\xff\xe0", Container.PICTURE),
        (b"ID3\x04", Container.SOUND),
        (b"\xff\xfb\x90\x64", Container.SOUND),
        (b"OggS\0\x02", Container.OGG),
        (b"FLV\x01\x05", Container.FLASH),
        (b"\0\0\0\x01\x67", Container.RAW_H26X),
        ((b"\x47" + b"\0" * 187) * 5, Container.TRANSPORT),
        ((b"\0\0\0\0\x47" + b"\0" * 187) * 5, Container.TRANSPORT),
        (b"PK\x03\x04", Container.ARCHIVE),
        (b"%PDF-1.7", Container.DOCUMENT),
        ("Möhren säen\n".encode(), Container.TEXT),
        ("Möhren".encode("utf-16"), Container.TEXT),
        (b"<!DOCTYPE html>", Container.TEXT),
        (bytes(range(128, 256)), Container.UNKNOWN),
        (b"\0" * 64, Container.UNKNOWN),
        (b"G", Container.TEXT),
    ],
)
def test_first_bytes_tell_the_kind(head: bytes, kind: Container) -> None:
    assert sniff_container(head) is kind


def test_a_missing_clip_names_its_folder_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "below").mkdir()
    monkeypatch.chdir(tmp_path / "below")
    with pytest.raises(ClipError) as caught:
        check_clip(Path("../away.mp4"))
    assert str(caught.value).startswith(f"The clip away.mp4 was not found in {tmp_path}.")


def test_text_cut_inside_a_letter_is_still_text() -> None:
    assert sniff_container(("x" + "ä" * 40000).encode()[: 1 << 16]) is Container.TEXT


def refusal(clip: Path) -> str:
    with pytest.raises(ClipError) as caught:
        check_clip(clip)
    return str(caught.value)


def test_places_that_hold_no_file(tmp_path: Path) -> None:
    assert "was not found" in refusal(tmp_path / "absent.mp4")
    assert "was not found" in refusal(tmp_path / "no folder" / "absent.mp4")
    assert "is a folder" in refusal(tmp_path)
    (tmp_path / "dangling.mp4").symlink_to(tmp_path / "absent.mp4")
    assert "was not found" in refusal(tmp_path / "dangling.mp4")
    (tmp_path / "file").write_text("x")
    assert "cannot be found" in refusal(tmp_path / "file" / "inside.mp4")


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="not on this system: named pipes")
def test_pipes_and_devices_are_never_opened(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.mp4")
    assert "a device or a pipe" in refusal(tmp_path / "pipe.mp4")
    assert "a device or a pipe" in refusal(Path("/dev/zero"))


@pytest.mark.parametrize(
    "address",
    ["http://127.0.0.1/clip.mp4", "rtsp://camera/1", "https:/host/x.mp4", "file:///etc/passwd"],
)
def test_addresses_are_refused(address: str) -> None:
    assert "is an address, not a file" in refusal(Path(address))


def test_names_that_no_decoder_can_take() -> None:
    assert "zero byte" in refusal(Path("a\0b.mp4"))
    assert "not readable text" in refusal(Path(os.fsdecode(b"\xff\xfe.mp4")))


def test_no_permission(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    clip = tmp_path / "locked.mp4"
    clip.write_bytes(b"x")

    def forbidden(self: Path, *args: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", forbidden)
    assert "do not have permission to read" in refusal(clip)
    monkeypatch.setattr(Path, "stat", forbidden)
    assert "folder that you do not have permission to open" in refusal(clip)


def test_a_disk_that_fails(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    clip = tmp_path / "clip.mp4"
    clip.write_bytes(b"x")

    def broken(self: Path, *args: object) -> None:
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(Path, "open", broken)
    assert "cannot be read (Input/output error)" in refusal(clip)


def test_a_file_that_is_only_online(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    facts = SimpleNamespace(st_mode=0o100644, st_size=9, st_file_attributes=0x00400020)
    monkeypatch.setattr(Path, "stat", lambda self: facts)
    assert "stored online" in refusal(tmp_path / "clip.mp4")


def test_good_containers_pass() -> None:
    assert check_clip(odd_clip("ordinary")) is Container.MP4
    assert check_clip(odd_clip("starts-at-5s-ts")) is Container.TRANSPORT
    assert check_clip(odd_clip("motion-jpeg-avi")) is Container.AVI


def box(kind: bytes, content: bytes = b"") -> bytes:
    return struct.pack(">I4s", 8 + len(content), kind) + content


def track(kind: bytes) -> bytes:
    return box(b"trak", box(b"mdia", box(b"hdlr", b"\0" * 8 + kind + b"\0" * 12)))


@pytest.mark.parametrize(
    ("content", "part"),
    [
        (box(b"ftyp", b"isom") + box(b"mdat", b"x" * 99), "its index is missing"),
        (box(b"ftyp", b"isom") + box(b"moov", track(b"vide"))[:-4], "its index is missing"),
        (box(b"ftyp", b"isom") + box(b"moov", track(b"soun")), "sound only"),
        (box(b"ftyp", b"isom") + b"\0\0\0\x02mdat", "its index is missing"),
    ],
)
def test_boxes_tell_what_is_missing(tmp_path: Path, content: bytes, part: str) -> None:
    clip = tmp_path / "clip.mp4"
    clip.write_bytes(content)
    assert part in refusal(clip)


@pytest.mark.parametrize(
    "content",
    [
        box(b"ftyp", b"isom") + box(b"moov", track(b"soun") + track(b"vide")),
        box(b"ftyp", b"isom") + struct.pack(">I4sQ", 1, b"mdat", 20) + b"abcd"
        + box(b"moov", track(b"vide")),
        box(b"ftyp", b"isom") + box(b"moof", b"x") + box(b"mdat", b"x"),
        box(b"ftyp", b"isom") + struct.pack(">I4s", 0, b"moov") + track(b"vide"),
    ],
)  # fmt: skip
def test_boxes_of_usual_files_pass(tmp_path: Path, content: bytes) -> None:
    clip = tmp_path / "clip.mp4"
    clip.write_bytes(content)
    assert check_clip(clip) is Container.MP4


@pytest.mark.parametrize(
    ("content", "refused"),
    [
        (b"\x1a\x45\xdf\xa3" + b"\x86\x86A_OPUS", True),
        (b"\x1a\x45\xdf\xa3" + b"\x86\x86A_OPUS\x86\x8fV_MPEG4/ISO/AVC", False),
        (b"\x1a\x45\xdf\xa3" + b"nothing known", False),
        (b"OggS\0\x02" + b"\x01vorbis", True),
        (b"OggS\0\x02" + b"OpusHead", True),
        (b"OggS\0\x02" + b"\x80theora" + b"OggS\0\x02" + b"\x01vorbis", False),
    ],
)
def test_sound_alone_is_told_apart(tmp_path: Path, content: bytes, refused: bool) -> None:
    clip = tmp_path / "clip"
    clip.write_bytes(content)
    if refused:
        assert "contains sound only" in refusal(clip)
    else:
        check_clip(clip)


def test_boxes_nested_without_end_are_left(tmp_path: Path) -> None:
    content = track(b"soun")
    for _ in range(3000):
        content = box(b"trak", content)
    clip = tmp_path / "clip.mp4"
    clip.write_bytes(box(b"ftyp", b"isom") + box(b"moov", content))
    assert check_clip(clip) is Container.MP4  # the decoder has the last word


def test_every_kind_that_is_no_clip_has_a_sentence() -> None:
    clips = {
        Container.MP4, Container.MATROSKA, Container.AVI, Container.TRANSPORT, Container.PROGRAM,
        Container.ASF, Container.FLASH, Container.OGG, Container.GIF, Container.RAW_H26X,
        Container.RAW_Y4M,
    }  # fmt: skip
    assert clips | container._NO_CLIPS.keys() == set(Container)
    assert not clips & container._NO_CLIPS.keys()
