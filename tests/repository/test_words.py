"""The glossary of the contributor's guide and the code's identifiers agree."""

import re

import pytest

from tests.repository.identifiers import bound_names, files_by_word, identifiers, words_of
from tests.repository.structure import ROOT

GUIDE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")

#: Identifiers that hold a retired word and mean something else by it.
#: ``careful`` and ``NO_FACING_STANCE`` are words of kept files.
ANOTHER_MEANING = {
    "ExposureSettling",
    "NO_FACING_STANCE",
    "_LONGEST_SETTLING_S",
    "careful",
    "look_up",
}

#: Names that say nothing about what a variable holds.
EMPTY_NAMES = {"each", "one", "told", "found", "known"}


def glossary() -> list[tuple[list[str], list[str]]]:
    """Return the names in the code and the retired words of every row of the glossary."""
    section = GUIDE.split("## Words", 1)[1].split("\n## ", 1)[0]
    rows = [line.strip("|").split("|") for line in section.splitlines() if line.startswith("| **")]
    return [(_quoted(row[2]), _quoted(row[3])) for row in rows]


def _quoted(cell: str) -> list[str]:
    return re.findall(r"`([^`]+)`", cell)


def retired_words() -> list[str]:
    return [word for _, words in glossary() for word in words]


def test_identifiers_are_divided_into_words() -> None:
    assert words_of("FrameResult") == ["frame", "result"]
    assert words_of("_HOLD_ASKED_S") == ["hold", "asked", "s"]
    assert words_of("ROMSeries_of3D") == ["rom", "series", "of", "d"]


def test_the_glossary_has_one_row_for_a_word() -> None:
    words = re.findall(r"^\| \*\*([^*]+)\*\*", GUIDE, re.MULTILINE)
    assert len(words) >= 40
    assert len(set(words)) == len(words)
    assert len(set(retired_words())) == len(retired_words())


@pytest.mark.parametrize("name", [name for names, _ in glossary() for name in names])
def test_names_of_the_glossary_are_in_the_code(name: str) -> None:
    assert name in identifiers()


@pytest.mark.parametrize("word", retired_words())
def test_retired_words_are_not_in_the_code(word: str) -> None:
    names = files_by_word().get(word, {})
    assert {
        name: sorted(files) for name, files in names.items() if name not in ANOTHER_MEANING
    } == {}


def test_variables_are_named_after_what_they_hold() -> None:
    places = {
        (name, file)
        for name in EMPTY_NAMES
        for variable in (name, f"_{name}")
        for file in bound_names().get(variable, ())
    }
    assert places == set()
