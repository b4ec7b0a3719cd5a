"""When a clip was recorded: what its file states, believed only where it can be."""

import datetime as dt
from pathlib import Path

import pytest

from measure.video.recording_time import recording_time
from tests.support.movie_header import movie_of

NOW = dt.datetime(2026, 11, 30, tzinfo=dt.UTC)
MARCH = dt.datetime(2026, 3, 5, 9, 30, tzinfo=dt.UTC)


@pytest.mark.parametrize("version", [0, 1])
def test_the_moment_that_a_file_states(tmp_path: Path, version: int) -> None:
    clip = tmp_path / "clip.mp4"
    clip.write_bytes(movie_of(MARCH, version=version))
    assert recording_time(clip, NOW) == MARCH


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"\0\0\0",
        b"RIFF" + bytes(400),
        movie_of(MARCH)[:-100],
        movie_of(dt.datetime(1904, 1, 1, tzinfo=dt.UTC)),
        movie_of(dt.datetime(1999, 12, 31, tzinfo=dt.UTC)),
        movie_of(NOW + dt.timedelta(days=1)),
        b"\0\0\0\1moov" + b"\xff" * 8 + bytes(50),
    ],
)
def test_nothing_where_a_file_says_nothing_that_can_be(tmp_path: Path, content: bytes) -> None:
    clip = tmp_path / "clip.mp4"
    clip.write_bytes(content)
    assert recording_time(clip, NOW) is None


def test_a_clip_that_is_gone_has_no_moment(tmp_path: Path) -> None:
    assert recording_time(tmp_path / "gone.mp4", NOW) is None
