"""Tables of pairs: what is understood, and every fault in plain words."""

import math
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calibration.agreement.pairs_table import (
    LARGEST_FILE_BYTES,
    PairTable,
    pairs_from_text,
    read_pairs,
)
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import InputError

HEADER = "person,movement,side,camera_deg,goniometer_deg,repeat,tester\n"


def table_of(row: str, header: str = HEADER) -> PairTable:
    return pairs_from_text(header + row + "\n")


def test_a_plain_row() -> None:
    (pair,) = table_of("Bramble,flexion,left,121.5,118,2,Wren").pairs
    assert pair.person == "Bramble"
    assert pair.movement is Movement.FLEXION
    assert pair.side is Side.LEFT
    assert (pair.camera_deg, pair.goniometer_deg) == (121.5, 118.0)
    assert (pair.repeat, pair.tester) == (2, "Wren")
    assert pair.shoulder == ("Bramble", Side.LEFT)


@pytest.mark.parametrize(
    ("row", "camera"),
    [
        ("P,flexion,left,-0,10,,", 0.0),
        ("P,flexion,left,-0.0,10,,", 0.0),
        ("P,flexion,left,+12,10,,", 12.0),
        ("P,flexion,left, 12° ,10,,", 12.0),
        ("P,flexion,left,\u22125,10,,", -5.0),
        ('P,flexion,left,"12,5",10,,', 12.5),
        ("P, Flexion ,L,12.,10,,", 12.0),
        ("P,flexion,R,12,10,,", 12.0),
    ],
)
def test_numbers_that_are_understood(row: str, camera: float) -> None:
    (pair,) = table_of(row).pairs
    assert pair.camera_deg == camera
    assert math.copysign(1, pair.camera_deg) == math.copysign(1, camera)


def test_decimal_commas_between_semicolons_are_read_and_noted() -> None:
    table = table_of("P;flexion;left;12,5;11,5", "person;movement;side;camera_deg;goniometer_deg\n")
    assert table.pairs[0].goniometer_deg == 11.5
    assert "Decimal commas were read as decimal points." in table.notes


@pytest.mark.parametrize("empty", ["", "NaN", "n/a", "-", "nan"])
def test_a_missing_reading_is_not_a_number(empty: str) -> None:
    (pair,) = table_of(f"P,flexion,left,{empty},10,,").pairs
    assert math.isnan(pair.camera_deg)
    assert not pair.complete


@pytest.mark.parametrize(
    ("row", "part"),
    [
        ("P,flexion,left,twelve,10,,", "line 2: the camera reading 'twelve' is not a number"),
        ("P,flexion,left,12,inf,,", "the goniometer reading 'inf' is not a number"),
        ("P,flexion,left,1e2,10,,", "'1e2' is not a number"),
        ("P,flexion,left,=1+1,10,,", "'=1+1' is not a number"),
        ("P,flexion,left,12 deg,10,,", "'12 deg' is not a number"),
        ("P,flexion,left,1234567890,10,,", "is not a number"),
        ("P,flexion,left,540,10,,", "540 degrees is not possible for flexion"),
        ("P,flexion,,12,10,,", "line 2 has no side: write left or right"),
        ("P,flexion,links,12,10,,", "the side 'links'"),
        ("P,twist,left,12,10,,", "the movement 'twist': write one of flexion"),
        ("P,,left,12,10,,", "no movement"),
        ("P,hand-behind-back,left,12,10,,", "is not an angle"),
        (",flexion,left,12,10,,", "names no person"),
        ("P,flexion,left,12,10,0,", "the repeat '0' is not a whole number from 1 up"),
        ("P,flexion,left,12,10,1.5,", "the repeat '1.5'"),
        ("P,flexion,left,12,5,11,5,,", "Decimal commas in a table separated by commas"),
        ("P,flexion,left,12,5,11,5", "the tester '5' is a number"),
        ("P,flexion,left,12,10", "line 2 has 5 cells but the first line has 7"),
        ("P" * 81 + ",flexion,left,12,10,,", "at most 80 letters"),
        ("P\x07,flexion,left,12,10,,", "plain text"),
        ("P,flexion,left,12,10,1,\nP,flexion,left,13,10,1,", "repeat 1 appears in the table twice"),
    ],
)
def test_rows_that_cannot_be_used(row: str, part: str) -> None:
    with pytest.raises(InputError) as caught:
        table_of(row)
    assert part in str(caught.value)
    assert "Correct these lines" in str(caught.value)


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("", "is empty"),
        ("\n \n", "is empty"),
        (HEADER, "no readings below"),
        ("person,side\nP,left\n", "no column movement, camera_deg, goniometer_deg"),
        (HEADER.replace("tester", "person") + "P,flexion,left,1,1,1,P", "more than once"),
        ("%PDF-1.4\n\0\0", "not a text table"),
        (HEADER + 'P,flexion,left,"12,10,,\n', "cannot be understood"),
        (HEADER + "P,flexion,left,1,1,,\n" * 20_001, "more than 20000 rows"),
    ],
)
def test_texts_that_are_no_table(text: str, part: str) -> None:
    with pytest.raises(InputError) as caught:
        pairs_from_text(text)
    assert part in str(caught.value)


def test_all_faults_are_told_at_once_and_the_list_stays_short() -> None:
    with pytest.raises(InputError) as caught:
        table_of("\n".join("P,flexion,left,x,10,," for _ in range(25)))
    text = str(caught.value)
    assert text.count("is not a number") == 10
    assert "and 15 more" in text


def test_columns_that_nobody_reads_are_named() -> None:
    table = table_of("P,flexion,left,1,2,warm", "person,movement,side,camera,goniometer,room\n")
    assert table.notes == ("Columns not used: room.",)


def test_movements_are_kept_apart() -> None:
    table = table_of(
        "P,abduction,left,12,10,,\nP,external rotation,left,12,10,,\nP,flexion,right,1,1,,"
    )
    assert list(table.by_movement()) == [
        Movement.FLEXION,
        Movement.ABDUCTION,
        Movement.EXTERNAL_ROTATION,
    ]


def test_a_spreadsheets_byte_order_mark_does_no_harm(tmp_path: Path) -> None:
    path = tmp_path / "beans.csv"
    path.write_bytes(b"\xef\xbb\xbf" + (HEADER + "Ö,flexion,left,1,2,,\r\n").encode())
    assert read_pairs(path).pairs[0].person == "Ö"


def test_files_that_cannot_be_read(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="There is no file"):
        read_pairs(tmp_path / "gone.csv")
    with pytest.raises(InputError, match="is a folder"):
        read_pairs(tmp_path)
    wide = tmp_path / "wide.csv"
    wide.write_bytes(HEADER.encode("utf-16"))
    with pytest.raises(InputError, match="UTF-8"):
        read_pairs(wide)
    large = tmp_path / "large.csv"
    large.write_bytes(b"a" * (LARGEST_FILE_BYTES + 1))
    with pytest.raises(InputError, match="larger than 5 MB"):
        read_pairs(large)
    with pytest.raises(InputError, match="could not be read"):
        read_pairs(Path("a\0b"))


@settings(max_examples=200, deadline=None)
@given(text=st.text(max_size=200) | st.text(alphabet='P,;\t"\n1.flexion', max_size=200))
def test_any_text_is_a_table_or_a_plain_answer(text: str) -> None:
    for content in (text, HEADER + text):
        assert read_or_answer(content)


def read_or_answer(content: str) -> str | tuple[object, ...]:
    try:
        return pairs_from_text(content).pairs
    except InputError as error:
        return str(error)
