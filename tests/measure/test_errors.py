"""What messages repeat of files from outside: short, and nothing that steers a terminal."""

import math
import zipfile
from pathlib import Path

import pytest

from calibration.agreement.pairs_table import read_pairs
from measure.batch.cache_key import content_hash
from measure.cli.main import main
from measure.clips.inputs import read_manifest
from measure.errors import ClipError, DataError, InputError, ManifestError, in_short, printable
from measure.storage.store import Store
from measure.video.container import check_clip
from tests.support import record_samples as sample

#: Clears the screen of a terminal.
STEERING = "\x1b[2J"
ENDLESS = STEERING + "bean " * 2000


def test_what_a_reader_quotes_of_a_file_is_cut_and_made_printable() -> None:
    said = in_short(zipfile.BadZipFile("header " + ENDLESS))
    assert len(said) < 150
    assert said.isprintable()
    assert in_short(MemoryError()) == "MemoryError"


def test_lines_stay_lines_and_names_of_any_language_names() -> None:
    assert printable("Żółw\n日本\t!") == "Żółw\n日本 !"


def check(said: str) -> None:
    assert len(said) < 800
    assert said.isprintable()


@pytest.mark.parametrize("column", range(5))
def test_cells_of_a_manifest(column: int, tmp_path: Path) -> None:
    cells = ["a.mp4", "flexion", "left", "side", "96"]
    cells[column] = ("http://" if column == 0 else "") + ENDLESS
    path = tmp_path / "clips.csv"
    path.write_text("clip,movement,side,view,reference\n" + ",".join(cells))
    with pytest.raises(ManifestError) as caught:
        read_manifest(path)
    check(str(caught.value))


@pytest.mark.parametrize("read", [check_clip, content_hash])
@pytest.mark.parametrize("name", [ENDLESS, "x/" * 3000, f"not there {STEERING}.mp4"])
def test_names_of_clips(read: object, name: str, tmp_path: Path) -> None:
    with pytest.raises(ClipError) as caught:
        read(tmp_path / name)  # type: ignore[operator]
    check(str(caught.value).replace(str(tmp_path), ""))


@pytest.mark.usefixtures("data_folder")
def test_a_name_that_steers_a_terminal_is_printed_without_doing_so(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    clip = tmp_path / f"bed{STEERING}.mp4"
    clip.write_bytes(b"no clip")
    assert main(["replay", str(clip), "--movement", "flexion", "--side", "left"]) == 2
    told = capsys.readouterr()
    assert "bed" in told.err
    assert STEERING[0] not in told.out + told.err


@pytest.mark.parametrize(
    ("change", "value"),
    [
        ("UPDATE event SET day = ?", ENDLESS),
        ("UPDATE measurement SET movement = ?", ENDLESS),
        ("UPDATE measurement SET against_vertical = ?", math.inf),
        ("UPDATE measurement SET value = ?", -math.inf),
        ("UPDATE trial SET hold_end_s = ?", math.inf),
        ("UPDATE session SET duration_s = ?", math.inf),
    ],
)
def test_values_of_a_damaged_store(change: str, value: object, tmp_path: Path) -> None:
    path = tmp_path / "sessions.sqlite"
    who = sample.person()
    session = sample.session(who)
    with Store.open(path) as store:
        store.save_person(who)
        store.save_session(session)
        store.save_measurement(sample.record(session))
        store.save_event(sample.event(who))
        store._connection.execute("PRAGMA ignore_check_constraints = ON")
        assert store._connection.execute(change, (value,)).rowcount > 0
    with Store.open(path) as store, pytest.raises(DataError, match="is damaged") as caught:
        store.history(who.id)
    check(str(caught.value).replace(str(tmp_path), ""))


def test_a_table_whose_columns_are_parted_by_tabs(tmp_path: Path) -> None:
    path = tmp_path / "pairs.csv"
    path.write_text('person\tmovement\tside\n"A"b\tflexion\tleft\n')
    with pytest.raises(InputError) as caught:
        read_pairs(path)
    check(str(caught.value))
