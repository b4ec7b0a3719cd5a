"""Clips as sources: each odd clip gives the right frames at the right times, or its sentence."""

import os
from pathlib import Path

import numpy as np
import pytest

from measure.errors import ClipError
from measure.video.frame import FrameNormalizer
from measure.video.reader import ClipReader, SourceFrame
from measure.video.source import open_clip
from tests.support import odd_clips
from tests.support.odd_clips import number_in, odd_clip


def read(clip: Path, **wanted: object) -> tuple[list[SourceFrame], ClipReader]:
    source = open_clip(clip)
    try:
        reader = ClipReader(source, clip.name, **wanted)  # type: ignore[arg-type]
        return list(reader.frames()), reader
    finally:
        source.close()


def numbers(frames: list[SourceFrame]) -> list[int]:
    return [number_in(frame.pixels) for frame in frames if frame.pixels is not None]


@pytest.mark.parametrize(
    "kind",
    ["ordinary", "index-first", "starts-at-5s-ts", "motion-jpeg-avi", "ten-bit-hevc", "interlaced"],
)
def test_every_frame_comes_in_order_from_time_zero(kind: str) -> None:
    frames, reader = read(odd_clip(kind))
    assert numbers(frames) == list(range(90))
    assert [frame.index for frame in frames] == list(range(90))
    assert [frame.time_s for frame in frames] == pytest.approx(np.arange(90) / 30, abs=2e-3)
    assert reader.frames_lost == 0
    deep = ["More than 8 bits per colour (perhaps HDR); colours are approximate."]
    assert reader.notes == (deep if kind == "ten-bit-hevc" else [])


def test_times_of_uneven_frames_are_their_own() -> None:
    frames, _ = read(odd_clip("uneven-times"))
    own = [
        *(n / 30 for n in range(30)),
        *(1 + n / 10 for n in range(30)),
        *(4 + n / 15 for n in range(30)),
    ]
    assert numbers(frames) == list(range(90))
    assert [frame.time_s for frame in frames] == pytest.approx(own, abs=2e-3)


@pytest.mark.parametrize(
    ("kind", "corner"),
    [("ordinary", "upper left"), ("turned-90", "upper right"), ("turned-180", "lower right"),
     ("turned-270", "lower left")],
)  # fmt: skip
def test_rotation_tag_is_obeyed_once(kind: str, corner: str) -> None:
    source = open_clip(odd_clip(kind))
    assert source.grab()
    pixels = source.retrieve()
    source.close()
    assert pixels is not None
    turned = kind in ("turned-90", "turned-270")
    assert pixels.shape == ((320, 240, 3) if turned else (240, 320, 3))
    assert (source.facts.height_px, source.facts.width_px) == pixels.shape[:2]
    assert source.facts.rotation_deg == int(kind.partition("-")[2] or 0)
    places = {
        "upper left": pixels[10, 10], "upper right": pixels[10, -10],
        "lower left": pixels[-10, 10], "lower right": pixels[-10, -10],
    }  # fmt: skip
    red = [name for name, (blue, _, red) in places.items() if int(red) - int(blue) > 120]
    assert red == [corner]


def test_pixels_are_made_square_also_in_a_turned_clip() -> None:
    for kind, size in (("wide-pixels", (427, 240)), ("wide-pixels-turned-90", (240, 427))):
        source = open_clip(odd_clip(kind))
        assert source.grab()
        pixels = source.retrieve()
        source.close()
        assert pixels is not None
        picture = FrameNormalizer(sample_aspect=source.facts.sample_aspect).normalize(pixels)
        assert (picture.width_px, picture.height_px) == size
        assert picture.rgb.shape[:2] == size[::-1]


@pytest.mark.parametrize("name", ["Żółw ü 日本 %03d.mp4", "no ending", "CLIP.MOV", "a:b.mp4", "-i"])
def test_odd_names_are_only_names(name: str, tmp_path: Path) -> None:
    folder = tmp_path / "Ünï %02d"
    folder.mkdir()
    clip = folder / name
    clip.write_bytes(odd_clip("ordinary").read_bytes())
    frames, _ = read(clip)
    assert len(frames) == 90


def test_a_relative_path_with_a_colon_is_no_address(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "concat:x.mp4").write_bytes(odd_clip("ordinary").read_bytes())
    monkeypatch.chdir(tmp_path)
    assert len(read(Path("concat:x.mp4"))[0]) == 90


@pytest.mark.parametrize(("kind", "least"), [("damaged-10", 70), ("damaged-25", 50)])
def test_damage_in_the_middle_is_a_marked_gap(kind: str, least: int) -> None:
    frames, reader = read(odd_clip(kind))
    readable = [frame for frame in frames if frame.pixels is not None]
    assert least <= len(readable) < 90
    assert len(frames) == pytest.approx(90, abs=2)
    assert reader.frames_lost == len(frames) - len(readable) > 0
    times = [frame.time_s for frame in frames]
    assert np.diff(times) == pytest.approx(np.full(len(times) - 1, 1 / 30), abs=0.02)
    assert times[-1] == pytest.approx(89 / 30, abs=1e-3)
    # Frames after the gap keep their own times.
    assert number_in(readable[-1].pixels) == 89


def test_a_clip_cut_off_behind_its_index_says_how_much_is_there() -> None:
    frames, reader = read(odd_clip("cut-index-first"))
    assert 30 < len(frames) < 70
    assert reader.notes == [f"The recording seems incomplete: {len(frames) / 30:.1f} of 3.0 s."]


def test_a_stream_without_times_is_counted_and_says_so() -> None:
    frames, reader = read(odd_clip("bare-h264"))
    assert numbers(frames) == list(range(90))
    assert "no times" in reader.notes[0]


def test_odd_sizes_and_large_pictures_decode() -> None:
    frames, _ = read(odd_clip("lossless-odd-size-mkv"))
    assert numbers(frames) == list(range(15))
    assert frames[0].pixels is not None
    assert frames[0].pixels.shape == (241, 321, 3)
    large, _ = read(odd_clip("large"), rate_hz=10)
    assert large[0].pixels is not None
    picture = FrameNormalizer().normalize(large[0].pixels)
    assert (picture.width_px, picture.height_px) == (3840, 2160)
    assert picture.rgb.shape == (720, 1280, 3)


def test_an_animated_picture_is_a_clip() -> None:
    frames, _ = read(odd_clip("animated-gif"))
    assert len(frames) == pytest.approx(30, abs=1)
    assert frames[-1].time_s == pytest.approx(2.9, abs=0.11)


def test_a_dark_room_is_no_fault_but_perfect_black_is() -> None:
    frames, _ = read(odd_clip("dark-room-mkv"))
    assert all(frame.pixels is not None for frame in frames)
    with pytest.raises(ClipError, match="completely black"):
        read(odd_clip("black-mkv"))


@pytest.mark.parametrize(
    ("kind", "part"),
    [
        ("empty", "is empty (0 bytes)"),
        ("random", "is not a video that Thawline recognises"),
        ("notes-txt", "is a text file, not a video"),
        ("list-m3u8", "is a text file, not a video"),
        ("still-png", "is a still picture"),
        ("still-jpg", "is a still picture"),
        ("single-frame", "contains a single picture"),
        ("sound-m4a", "contains sound only, no pictures"),
        ("sound-mkv", "contains sound only, no pictures"),
        ("broken-mkv", "contains no pictures that can be decoded"),
        ("cut-without-index", "its index is missing"),
        ("enormous-avi", "16000 x 16000 pixels, more than Thawline can read"),
    ],
)
def test_what_is_no_clip_gets_its_own_sentence(kind: str, part: str) -> None:
    clip = odd_clip(kind)
    with pytest.raises(ClipError) as caught:
        read(clip)
    assert part in str(caught.value)
    assert clip.name in str(caught.value)


def test_the_environment_lets_the_decoder_read_files_only() -> None:
    open_clip(odd_clip("ordinary")).close()
    assert os.environ["OPENCV_FFMPEG_CAPTURE_OPTIONS"] == "protocol_whitelist;file"


def test_number_in_reads_what_frame_wrote() -> None:
    assert [number_in(odd_clips.frame(n)) for n in (0, 1, 89, 255)] == [0, 1, 89, 255]
