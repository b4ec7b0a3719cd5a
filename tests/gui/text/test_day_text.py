"""Days as people write them, read back."""

import datetime as dt

import pytest
from PySide6.QtWidgets import QApplication

from gui.text.day_text import day_from_text, day_text
from tests.support.gui.screenshots import language_in_force

DAY = dt.date(2026, 3, 4)


@pytest.mark.parametrize(
    "text", ["4 Mar 2026", " 4  march 2026 ", "2026-03-04", "4/3/2026", "04.03.2026"]
)
def test_a_day_is_understood_in_its_usual_forms(qapp: QApplication, text: str) -> None:
    assert day_from_text(text) == DAY


@pytest.mark.parametrize(
    "text", ["", "yesterday", "30 Feb 2026", "4 Mxx 2026", "4 Mar 26", "14 March"]
)
def test_what_is_no_day_gives_none(qapp: QApplication, text: str) -> None:
    assert day_from_text(text) is None


@pytest.mark.parametrize("language", ["en", "es"])
def test_every_month_comes_back_as_it_is_shown(qapp: QApplication, language: str) -> None:
    with language_in_force(qapp, language):
        for month in range(1, 13):
            day = dt.date(2026, month, 9)
            assert day_from_text(day_text(day)) == day


def test_spanish_with_its_prepositions(qapp: QApplication) -> None:
    with language_in_force(qapp, "es"):
        assert day_from_text("4 de marzo de 2026") == DAY
