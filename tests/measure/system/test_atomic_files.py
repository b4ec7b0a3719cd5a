"""File names from pseudonyms, and files that are written whole or not at all."""

import os
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from measure.errors import DataError, InputError, MachineError
from measure.system.atomic_files import (
    LONGEST_PART,
    safe_name,
    unused_path,
    write_new,
    write_over,
)


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("Rosa", "Rosa"),
        ("Łukasz Ω 日本", "Łukasz Ω 日本"),
        ('a/b\\c:d*e?f"g<h>i|j', "a-b-c-d-e-f-g-h-i-j"),
        ("../../etc/passwd", "-..-etc-passwd".replace("-", "_-", 1)),
        ("..", "person"),
        (".", "person"),
        ("   ", "person"),
        ("...hidden", "hidden"),
        ("trailing. . .", "trailing"),
        ("-rf", "_-rf"),
        ("CON", "_CON"),
        ("con.txt", "_con.txt"),
        ("Nul ", "_Nul"),
        ("aux .x", "_aux .x"),
        ("COM1", "_COM1"),
        ("LPT\u00b9", "_LPT\u00b9"),
        ("COM10", "COM10"),
        ("Conrad", "Conrad"),
        ("a\nb\0c\u202ed", "a-b-c-d"),
        ("é" * 60, "é" * 50),
        ("日" * 60, "日" * 33),
        ("😀" * 60, "😀" * 25),
    ],
)
def test_names(text: str, name: str) -> None:
    assert safe_name(text) == name


@given(text=st.text(max_size=200))
def test_any_text_gives_a_name_that_a_file_can_have(text: str) -> None:
    name = safe_name(text)
    assert name
    assert name == name.strip(" .")
    assert not set(name) & set('<>:"/\\|?*')
    assert len(name.encode("utf-8", "surrogatepass")) <= LONGEST_PART + 1
    assert name.isprintable()


def test_a_file_is_written_for_its_owner_only(tmp_path: Path) -> None:
    path = tmp_path / "rosa.json"
    write_new(path, b"data")
    assert path.read_bytes() == b"data"
    if os.name == "posix":
        assert path.stat().st_mode & 0o777 == 0o600
    assert list(tmp_path.iterdir()) == [path]


def test_nothing_is_overwritten_and_another_name_is_offered(tmp_path: Path) -> None:
    path = tmp_path / "rosa.json"
    path.write_bytes(b"mine")
    (tmp_path / "rosa (2).json").write_bytes(b"mine too")
    with pytest.raises(InputError, match=r"rosa \(3\)\.json"):
        write_new(path, b"data")
    assert path.read_bytes() == b"mine"
    assert unused_path(path) == tmp_path / "rosa (3).json"
    assert len(list(tmp_path.iterdir())) == 2


@pytest.mark.parametrize("links", [True, False])
def test_a_file_that_appears_meanwhile_is_not_overwritten(
    links: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "rosa.json"
    real = os.link

    def slow_link(source: Path, target: Path) -> None:
        target.write_bytes(b"theirs")
        if not links:
            raise PermissionError(1, "Operation not permitted")
        real(source, target)

    monkeypatch.setattr(os, "link", slow_link)
    with pytest.raises(InputError, match="exists already"):
        write_new(path, b"data")
    assert path.read_bytes() == b"theirs"
    assert list(tmp_path.iterdir()) == [path]


def test_a_disk_without_links(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def no_link(source: Path, target: Path) -> None:
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr(os, "link", no_link)
    write_new(tmp_path / "rosa.json", b"data")
    assert [each.read_bytes() for each in tmp_path.iterdir()] == [b"data"]


def test_a_full_disk_leaves_nothing_behind(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(MachineError, match="No space left"):
        write_new(tmp_path / "rosa.json", b"data")
    assert list(tmp_path.iterdir()) == []


def test_names_that_cannot_be_written(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="no folder"):
        write_new(tmp_path / "nowhere" / "rosa.json", b"data")
    with pytest.raises(MachineError, match="could not be written"):
        write_new(tmp_path / ("x" * 300), b"data")
    assert list(tmp_path.iterdir()) == []


def test_a_file_that_takes_anothers_place_is_whole_or_gone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "plot.png"
    write_over(target, b"old")
    write_over(target, b"new")
    assert target.read_bytes() == b"new"

    def full(path: Path) -> int:
        path.write_bytes(b"ne")
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("measure.system.atomic_files.private_descriptor", full)
    with pytest.raises(DataError, match=r"plot.png cannot be written: .*space"):
        write_over(target, b"newer")
    assert list(tmp_path.iterdir()) == []
