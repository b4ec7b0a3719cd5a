"""Small odd clips, made by the ffmpeg program once a session; none of them is kept in the tree.

The ordinary one is 320 x 240, 3 s at 30 frames a second. Every frame carries a red square in
its upper left corner and its own number in pixels (see :func:`number_in`).
"""

import random
import shutil
import subprocess
import tempfile
from collections.abc import Callable
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray

WIDTH, HEIGHT, FPS, FRAMES = 320, 240, 30, 90

_BLOCK = 20
_FOLDER = tempfile.TemporaryDirectory(prefix="thawline-odd-clips-")
_H264 = ("-c:v", "libx264", "-pix_fmt", "yuv420p", "-preset", "ultrafast", "-bf", "2", "-g", "12")


def frame(number: int, width: int = WIDTH, height: int = HEIGHT) -> NDArray[np.uint8]:
    """A frame, shape (height, width, 3), red-green-blue: grey shades, red corner, number."""
    picture = np.empty((height, width, 3), dtype=np.uint8)
    picture[:] = (60 + 120 * np.arange(width) / width).astype(np.uint8)[None, :, None]
    picture[:40, :40] = (230, 20, 20)
    for bit in range(8):
        block = slice(height - _BLOCK, height), slice(bit * _BLOCK, (bit + 1) * _BLOCK)
        picture[block] = 235 if number >> bit & 1 else 20
    return picture


def number_in(blue_green_red: NDArray[np.uint8]) -> int:
    """The number that a frame carries."""
    row = blue_green_red.shape[0] - _BLOCK // 2
    bits = [
        int(blue_green_red[row, bit * _BLOCK + _BLOCK // 2].mean() > 128) << bit for bit in range(8)
    ]
    return sum(bits)


def ffmpeg(*arguments: str | Path, frames: list[NDArray[np.uint8]] | None = None) -> None:
    """Run ffmpeg; frames, if any, come in on its standard input at 30 a second."""
    if shutil.which("ffmpeg") is None:
        pytest.skip("not on this system: the ffmpeg program")
    command: list[str | Path] = ["ffmpeg", "-y", "-v", "error", "-nostdin"]
    given = None
    if frames is not None:
        height, width = frames[0].shape[:2]
        command[-1:] = ["-f", "rawvideo", "-pix_fmt", "rgb24", "-s", f"{width}x{height}"]
        command += ["-r", str(FPS), "-i", "-"]
        given = b"".join(each.tobytes() for each in frames)
    done = subprocess.run([*command, *arguments], input=given, capture_output=True, check=False)
    assert done.returncode == 0, done.stderr.decode()


@cache
def odd_clip(kind: str) -> Path:
    """The clip of a kind of :data:`KINDS`, made when first asked for."""
    ending = "mp4"
    for known in ("mkv", "avi", "mov", "gif", "png", "jpg", "m4a", "h264", "ts", "txt", "m3u8"):
        if kind.endswith("-" + known):
            ending = known
    path = Path(_FOLDER.name) / f"{kind}.{ending}"
    KINDS[kind](path)
    return path


def _ordinary(path: Path, *options: str) -> None:
    ffmpeg(*(options or _H264), path, frames=[frame(n) for n in range(FRAMES)])


def _again(*options: str) -> Callable[[Path], None]:
    """Make a clip from the ordinary one."""
    return lambda path: ffmpeg("-i", odd_clip("ordinary"), *options, path)


def _anew(*options: str) -> Callable[[Path], None]:
    return lambda path: _ordinary(path, *options)


def _turned(quarters: int) -> Callable[[Path], None]:
    """Write a rotation tag: so many clockwise quarter turns make the stored picture upright."""

    def make(path: Path) -> None:
        content = bytearray(odd_clip("ordinary").read_bytes())
        write_rotation(content, quarters)
        path.write_bytes(content)

    return make


def write_rotation(content: bytearray, quarters: int) -> None:
    """Put clockwise quarter turns into the track header of an MP4 file."""
    cos, sin = [(1, 0), (0, 1), (-1, 0), (0, -1)][quarters]
    place = content.index(b"tkhd") + 4 + 40
    for offset, value in ((0, cos), (4, sin), (12, -sin), (16, cos)):
        content[place + offset : place + offset + 4] = (value << 16).to_bytes(4, "big", signed=True)


def _wide_and_turned(path: Path) -> None:
    content = bytearray(odd_clip("wide-pixels").read_bytes())
    write_rotation(content, 1)
    path.write_bytes(content)


def _damaged(share: float) -> Callable[[Path], None]:
    """Overwrite a share of the middle of the picture data."""

    def make(path: Path) -> None:
        content = bytearray(odd_clip("ordinary").read_bytes())
        start = content.index(b"mdat") + 4
        size = content.index(b"moov") - start
        first, length = start + int(0.4 * size), int(share * size)
        content[first : first + length] = random.Random(5).randbytes(length)
        path.write_bytes(content)

    return make


def _cut(of: str, share: float) -> Callable[[Path], None]:
    def make(path: Path) -> None:
        content = odd_clip(of).read_bytes()
        path.write_bytes(content[: int(share * len(content))])

    return make


def _uneven(path: Path) -> None:
    """Frames 0-29 at 30 a second, 30-59 at 10 a second, 60-89 at 15 a second."""
    times = "if(lt(N,30),N/30,if(lt(N,60),1+(N-30)/10,4+(N-60)/15))/TB"
    ffmpeg("-i", odd_clip("ordinary"), "-vf", f"setpts='{times}'", "-fps_mode", "vfr", *_H264, path)


def _claiming(side_px: int) -> Callable[[Path], None]:
    """Write a motion JPEG clip whose headers claim so many pixels each way."""
    return lambda path: _claim_size(path, side_px)


def _claim_size(path: Path, side_px: int) -> None:
    ffmpeg("-c:v", "mjpeg", path, frames=[frame(n) for n in range(10)])
    content = bytearray(path.read_bytes())
    size = side_px.to_bytes(2, "big")
    place = 0
    while (place := content.find(b"\xff\xc0", place)) >= 0:
        content[place + 5 : place + 9] = size + size
        place += 9
    place = content.index(b"strf")
    content[place + 12 : place + 20] = 2 * side_px.to_bytes(4, "little")
    path.write_bytes(content)


def _endless(path: Path) -> None:
    """A motion JPEG clip whose headers claim ten million frames."""
    ffmpeg("-c:v", "mjpeg", path, frames=[frame(n) for n in range(10)])
    content = bytearray(path.read_bytes())
    many = (10_000_000).to_bytes(4, "little")
    place = content.index(b"avih")
    content[place + 24 : place + 28] = many
    place = content.index(b"strh")
    content[place + 40 : place + 44] = many
    path.write_bytes(content)


def _dark(noise: int) -> Callable[[Path], None]:
    def make(path: Path) -> None:
        grain = np.random.default_rng(3)
        frames = [
            grain.integers(0, noise + 1, (HEIGHT, WIDTH, 3), dtype=np.uint8) for _ in range(30)
        ]
        ffmpeg("-c:v", "ffv1", "-pix_fmt", "bgr0", path, frames=frames)

    return make


def _odd_size(path: Path) -> None:
    ffmpeg("-c:v", "ffv1", path, frames=[frame(n, 321, 241) for n in range(15)])


def _large(path: Path) -> None:
    ffmpeg("-f", "lavfi", "-i", "color=gray:size=3840x2160:rate=30:duration=0.2", *_H264, path)


#: How each kind is made.
KINDS: dict[str, Callable[[Path], None]] = {
    "ordinary": _ordinary,
    "index-first": _again("-c", "copy", "-movflags", "+faststart"),
    "turned-90": _turned(1),
    "turned-180": _turned(2),
    "turned-270": _turned(3),
    "uneven-times": _uneven,
    "starts-at-5s-ts": _again("-c", "copy", "-muxdelay", "0", "-output_ts_offset", "5"),
    "ntsc": _again("-vf", "setpts=N*1001/30000/TB", "-r", "30000/1001", *_H264),
    "fifteen": _again("-r", "15", *_H264),
    "ten-bit-hevc": _anew(
        *("-c:v", "libx265", "-pix_fmt", "yuv420p10le"),
        *("-preset", "ultrafast", "-x265-params", "log-level=none"),
    ),
    "interlaced": _anew(*_H264[:4], "-flags", "+ilme+ildct", "-x264opts", "tff=1"),
    "wide-pixels": _anew("-vf", "setsar=4/3", *_H264),
    "wide-pixels-turned-90": _wide_and_turned,
    "motion-jpeg-avi": _again("-c:v", "mjpeg", "-q:v", "3"),
    "copied-mkv": _again("-c", "copy"),
    "lossless-odd-size-mkv": _odd_size,
    "animated-gif": _again("-r", "10"),
    "still-png": _again("-frames:v", "1"),
    "still-jpg": _again("-frames:v", "1"),
    "single-frame": _again("-frames:v", "1", *_H264),
    "bare-h264": _again("-c", "copy"),
    "damaged-10": _damaged(0.10),
    "damaged-25": _damaged(0.25),
    "cut-without-index": _cut("ordinary", 0.6),
    "cut-index-first": _cut("index-first", 0.6),
    "sound-m4a": lambda path: ffmpeg("-f", "lavfi", "-i", "sine=duration=1", path),
    "sound-mkv": lambda path: ffmpeg("-f", "lavfi", "-i", "sine=duration=1", path),
    "empty": lambda path: path.write_bytes(b"") and None,
    "random": lambda path: path.write_bytes(random.Random(1).randbytes(5000)) and None,
    "notes-txt": lambda path: path.write_text("Runner beans by the shed.\n" * 40) and None,
    "list-m3u8": lambda path: path.write_text("#EXTM3U\nhttp://127.0.0.1:9/clip.ts\n") and None,
    "broken-mkv": lambda path: (
        path.write_bytes(b"\x1a\x45\xdf\xa3" + random.Random(2).randbytes(3000)) and None
    ),
    "enormous-avi": _claiming(16_000),
    "absurd-avi": _claiming(50_000),
    "endless-avi": _endless,
    "large": _large,
    "black-mkv": _dark(0),
    "dark-room-mkv": _dark(9),
}
