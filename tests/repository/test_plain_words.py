"""The term list of the contributor's guide, and every text that people read."""

import argparse
import re
from collections.abc import Iterator
from importlib.metadata import entry_points
from pathlib import Path

import pytest

from gui.translations.update import files_of, translations
from measure.cli.main import command_parser
from tests.repository.reading_grade import HIGHEST_GRADE, grade, user_pages

ROOT = Path(__file__).parents[2]
GUIDE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def terms() -> dict[str, str]:
    """Return the words that no text may hold, each with what to write instead."""
    section = GUIDE.split("## Words that people read", 1)[1].split("\n## ", 1)[0]
    rows = [line.strip("|").split("|") for line in section.splitlines() if line.startswith("| ")]
    return {
        word: use.strip() for use, words in rows[1:] for word in re.findall(r"`([^`]+)`", words)
    }


def pages() -> Iterator[tuple[str, str]]:
    for page in user_pages():
        text = page.read_text(encoding="utf-8")
        yield page.name, re.sub(r"```.*?```|`[^`]*`|<!--.*?-->", "", text, flags=re.DOTALL)


def window() -> Iterator[tuple[str, str]]:
    yield from (("window", text) for text in translations(files_of("es")[0]))


def commands() -> Iterator[tuple[str, str]]:
    """Yield the help of every command and of its actions."""
    for entry in entry_points(group="thawline.commands"):
        program = command_parser([entry.name])
        yield from _helps(entry.name, _actions(program)[entry.name])


def _helps(name: str, parser: argparse.ArgumentParser) -> Iterator[tuple[str, str]]:
    yield name, parser.format_help()
    for action, below in _actions(parser).items():
        yield from _helps(f"{name} {action}", below)


def _actions(parser: argparse.ArgumentParser) -> dict[str, argparse.ArgumentParser]:
    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            return dict(action.choices)
    return {}


def places_of(word: str) -> set[str]:
    pattern = re.compile(rf"\b{word}\b", re.IGNORECASE)
    texts = (*pages(), *window(), *commands())
    return {
        f"{place}: {line.strip()}"
        for place, text in texts
        for line in text.splitlines()
        if pattern.search(line)
    }


def test_the_term_list_is_read() -> None:
    assert len(terms()) >= 30
    assert places_of("goniometer")


@pytest.mark.parametrize("word", terms())
def test_no_text_holds_a_word_of_the_list(word: str) -> None:
    assert places_of(word) == set(), f"write: {terms()[word]}"


@pytest.mark.parametrize("page", user_pages(), ids=lambda page: page.name)
def test_pages_for_users_are_easy_to_read(page: Path) -> None:
    assert grade(page) <= HIGHEST_GRADE
