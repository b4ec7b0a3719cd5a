from pathlib import Path

import pytest

from measure.clips.inputs import ClipEntry, read_manifest
from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from measure.errors import ManifestError


def write(tmp_path, content):
    path = tmp_path / "clips.csv"
    if isinstance(content, bytes):
        path.write_bytes(content)
    else:
        path.write_text(content, encoding="utf-8")
    return path


def test_all_columns(tmp_path):
    path = write(
        tmp_path,
        "clip,movement,side,view,reference\n"
        "a.mp4,flexion,left,side,121.5\n\n"
        " b ü.mp4 , Abduction,RIGHT,,\n",
    )
    first, second = read_manifest(path)
    assert first == ClipEntry(
        clip=tmp_path / "a.mp4",
        movement=Movement.FLEXION,
        side=Side.LEFT,
        view=View.SIDE,
        reference=121.5,
    )
    assert second.clip == tmp_path / "b ü.mp4"
    assert (second.movement, second.side, second.view) == (Movement.ABDUCTION, Side.RIGHT, None)
    assert second.reference is None


def test_absolute_paths_and_a_byte_order_mark(tmp_path):
    clip = tmp_path / "x.mp4"
    path = write(tmp_path, f"side,movement,clip\nleft,extension,{clip}\n".encode("utf-8-sig"))
    assert read_manifest(path)[0].clip == clip


@pytest.mark.parametrize(
    ("content", "part"),
    [
        ("", "has no column"),
        ("clip,side\na.mp4,left\n", "has no column movement"),
        ("clip,movement,side\n", "names no clips"),
        ("clip,movement,side\n,flexion,left\n", "line 2: no clip"),
        ("clip,movement,side\na.mp4,jump,left\n", "line 2: 'jump' is not a movement"),
        ("clip,movement,side\na.mp4,flexion,up\n", "'up' is not a side"),
        ("clip,movement,side,view\na.mp4,flexion,left,top\n", "'top' is not a view"),
        ("clip,movement,side,reference\na.mp4,flexion,left,12;5\n", "'12;5' is not a number"),
        ("clip,movement,side,reference\na.mp4,flexion,left,nan\n", "is not a number"),
        ("clip,movement,side\nhttp://x/a.mp4,flexion,left\n", "is an address"),
        (b"\xff\xfe\x00bad", "not UTF-8"),
        (b"clip,movement,side\n\x00\n", "not a text file"),
    ],
)
def test_bad_manifests_say_what_is_wrong(tmp_path, content, part):
    with pytest.raises(ManifestError, match=part):
        read_manifest(write(tmp_path, content))


def test_missing_folder_and_device(tmp_path):
    with pytest.raises(ManifestError, match="no file"):
        read_manifest(tmp_path / "none.csv")
    with pytest.raises(ManifestError, match="is a folder"):
        read_manifest(tmp_path)
    if Path("/dev/null").exists():
        with pytest.raises(ManifestError, match="not a file"):
            read_manifest(Path("/dev/null"))


def test_a_huge_manifest_is_not_read(tmp_path):
    path = tmp_path / "huge.csv"
    with path.open("wb") as file:
        file.truncate(6_000_000)
    with pytest.raises(ManifestError, match="larger than"):
        read_manifest(path)
