"""Numbers that decide something say where they come from, and stand on the page of thresholds."""

import pytest

from tests.repository.structure import ROOT
from tests.repository.thresholds import PAGE, page, thresholds, thresholds_of, untagged, uses

MODULE = """\
#: How long a hold lasts at least, seconds. More only tires. [project]
LEAST_HOLD_S = 1.0
HOLD_SHARES = (0.8, -0.5)

#: Critical value. [source: doi:10.1000/182]
(_LOW, _HIGH) = (2 * 3, 4)

UNEXPLAINED = 5
#: A name.
NAME = "name"
#: By view. [technical]
OFFSETS: dict[View, float] = {View.FRONT: 1.0, View.SIDE: 0.5}
"""


def test_numbers_are_read_with_their_comments() -> None:
    numbers = list(thresholds_of(MODULE, "measure/trials/holds.py"))
    assert [(number.name, number.value, number.tag) for number in numbers] == [
        ("LEAST_HOLD_S", "1.0", "project"),
        ("HOLD_SHARES", "0.8, -0.5", "project"),
        ("_LOW", "2 * 3", "source: doi:10.1000/182"),
        ("_HIGH", "4", "source: doi:10.1000/182"),
        ("OFFSETS", "front 1.0; side 0.5", "technical"),
    ]
    first = numbers[0]
    assert first.meaning == "How long a hold lasts at least, seconds."
    assert first.unit_of_name == "seconds"
    assert first.source == "project value, not validated"
    assert numbers[2].source == "doi:10.1000/182"


@pytest.mark.parametrize("package", ["measure", "calibration", "gui"])
def test_explained_numbers_say_where_they_come_from(package: str) -> None:
    assert sum(number.path.startswith(f"{package}/") for number in thresholds()) > 20
    places = [f"{number.path}:{number.line} {number.name}" for number in untagged()]
    assert [place for place in places if place.startswith(f"{package}/")] == []


def test_readers_of_a_number_are_found() -> None:
    readers = uses()["measure/domain/acquisition.py", "ASSUMED_HORIZONTAL_FIELD_DEG"]
    assert "measure/kinematics/rotation.py" in readers


@pytest.mark.parametrize(
    ("comment", "unit"),
    [
        ("Shortest hold, seconds.", "seconds"),
        ("Fewest days with a reading.", "days"),
        ("Where the camera stands, in trunk lengths.", "trunk lengths"),
        ("Factor by which the median of some days scatters more.", ""),
    ],
)
def test_units_are_read_from_comments(comment: str, unit: str) -> None:
    (number,) = thresholds_of(f"#: {comment} [project]\nVALUE = 1\n", "measure/some.py")
    assert number.unit_of_comment == unit


@pytest.mark.parametrize("name", ["README.md", "DEVELOPERS.md"])
def test_the_page_is_linked(name: str) -> None:
    assert PAGE.relative_to(ROOT).as_posix() in (ROOT / name).read_text(encoding="utf-8")


def test_the_page_is_up_to_date() -> None:
    made = "python -m tests.repository.thresholds --write"
    assert PAGE.read_text(encoding="utf-8") == page(), f"run {made}"
