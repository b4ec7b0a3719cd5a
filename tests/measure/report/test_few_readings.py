"""The report of a person with few readings: said in few words, and not in the plural."""

import pytest

from measure.report.page import report_html
from tests.measure.report.test_page import DETAILED, LEFT, TWELVE, text_of
from tests.support.progress_histories import day, history
from tests.support.report_text import Page


def test_too_early_is_said_once_and_in_few_words() -> None:
    text = Page(report_html(history({LEFT: [(0, 90.0), (7, 91.0)]}), day(8))).text
    assert "Since the first sessions no readings before and after that can be compared." in text
    assert "it takes four weeks" not in text
    assert text.count("A trend needs at least 4 weeks and 8 days with readings") == 1


def test_a_single_session_is_not_counted_in_the_plural() -> None:
    text = text_of(history({LEFT: [(0, 90.0)]}))
    assert "from one session, 6 Apr 2026." in text
    assert "Worst pain in 24 hours was not rated in the last two weeks." in text


def test_an_other_side_that_was_not_measured_is_named_so() -> None:
    assert "the other side was not measured." in text_of(history({LEFT: TWELVE}))


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (100.0, "The only measurement gave a reading."),
        (None, "The only measurement gave no reading: no reading is safer"),
    ],
)
def test_a_single_measurement_is_not_counted_as_many(value: float | None, words: str) -> None:
    text = Page(report_html(history({LEFT: [(0, value)]}), day(0), DETAILED)).text
    assert words in text
    assert "All 1 measurements" not in text
    assert "1 of 1 measurements gave" not in text
