"""Packed files that lie: found out before anything is unpacked, and every fault one of a list."""

import io
import zipfile
from pathlib import Path

import numpy as np
import pytest

from measure.clips.inputs import read_manifest
from measure.clips.observation_file import load_observation
from measure.errors import DataError, ManifestError, ModelFileError
from measure.pose_models.bundles import own_bundle
from measure.pose_models.catalogue import ModelQuality
from measure.system.safe_archives import ARCHIVE_ERRORS, check_arrays
from tests.support.fake_packages import BUNDLES

BOUND = 1 << 20


def packed(**members: bytes) -> io.BytesIO:
    file = io.BytesIO()
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in members.items():
            archive.writestr(name, content)
    file.seek(0)
    return file


def npy(array: np.ndarray) -> bytes:
    file = io.BytesIO()
    np.save(file, array)
    return file.getvalue()


GOOD = npy(np.zeros(5))


def claiming(before: bytes, after: bytes) -> bytes:
    """An array with a changed header of the same length."""
    filling = len(after) - len(before)
    assert GOOD.count(before) == 1
    return GOOD.replace(before, after).replace(b" " * max(filling, 0) + b"\n", b"\n", 1)


def test_numbers_pass_and_the_file_is_at_its_start_again() -> None:
    file = packed(a=GOOD, b=npy(np.zeros((2, 3), dtype=np.int64)))
    check_arrays(file, BOUND)
    assert file.tell() == 0


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (claiming(b"(5,)", b"(10000000000,)"), "larger than it is"),
        (claiming(b"(5,)", b"(6,)"), "larger than it is"),
        (claiming(b"(5,)", b"(-1,)"), "larger than it is"),
        (claiming(b"<f8", b"|V8"), "something else than numbers"),
        (claiming(b"<f8", b"<U9"), "something else than numbers"),
        (bytes(2 * BOUND), "more than any file"),
        (b"beans", "magic"),
    ],
)
def test_lies_are_found_out(content: bytes, words: str) -> None:
    with pytest.raises(ValueError, match=words):
        check_arrays(packed(a=content), BOUND)


def test_a_header_that_is_no_literal_is_one_of_the_faults() -> None:
    with pytest.raises(ARCHIVE_ERRORS):
        check_arrays(packed(a=GOOD.replace(b"(5,), }", b"(5,),(")), BOUND)


def test_a_small_file_that_unpacks_to_much_takes_no_memory(tmp_path: Path) -> None:
    path = tmp_path / "kept.npz"
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive, archive.open("a", "w") as one:
        for _ in range(1100):
            one.write(bytes(1 << 20))
    assert path.stat().st_size < 2_000_000
    with pytest.raises(DataError, match="more than any file of this kind"):
        load_observation(path)


def header_changed(offset: int, value: bytes, mark: bytes = b"PK\x01\x02") -> bytes:
    data = bytearray(BUNDLES[ModelQuality.FULL])
    place = data.index(mark) + offset
    data[place : place + len(value)] = value
    return bytes(data)


@pytest.mark.parametrize(
    "content",
    [
        header_changed(6, b"\xff\x00"),  # needs a later zip
        header_changed(8, b"\x01\x00"),  # encrypted
        header_changed(8, b"\x20\x00"),  # patched data
        header_changed(10, b"\x61\x00"),  # packed in an unknown way
        header_changed(20, b"\x00\x00\x00\x00"),
    ],
)
def test_a_bundle_with_a_strange_zip_header_is_told(content: bytes, tmp_path: Path) -> None:
    path = tmp_path / "own.task"
    path.write_bytes(content)
    with pytest.raises(ModelFileError, match=r"own\.task (is|holds)"):
        own_bundle(path)


@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
def test_tables_of_every_system_are_read(ending: str, tmp_path: Path) -> None:
    path = tmp_path / "clips.csv"
    path.write_bytes(ending.join(["clip,movement,side", "a.mp4,flexion,left", ""]).encode())
    assert [entry.clip.name for entry in read_manifest(path)] == ["a.mp4"]


def test_a_first_line_that_never_ends_is_told(tmp_path: Path) -> None:
    path = tmp_path / "clips.csv"
    path.write_text("clip,movement,side," + "x" * 200_000)
    with pytest.raises(ManifestError, match=r"clips\.csv, line 1: "):
        read_manifest(path)


def test_a_bundle_whose_directory_and_parts_disagree_is_answered_in_few_words(
    tmp_path: Path,
) -> None:
    content = bytearray(BUNDLES[ModelQuality.LITE])
    place = content.index(b"pose_detector.tflite")
    content[place - 4 : place - 2] = (60_000).to_bytes(2, "little")
    path = tmp_path / "own.task"
    path.write_bytes(content)
    with pytest.raises(ModelFileError, match="incomplete or damaged") as caught:
        own_bundle(path)
    assert len(str(caught.value)) < 600
