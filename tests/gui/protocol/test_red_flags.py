"""When measuring must wait, and what the pages say."""

import datetime as dt

import pytest

from gui.protocol.red_flags import Answer, Check, Page, Talk, check_due, pain_asks_for_check
from gui.text.safety_words import answer_words, wording

DAY = dt.date(2026, 11, 25)


@pytest.mark.parametrize(
    ("last", "expected"),
    [
        (None, Check.FIRST),
        (DAY, None),
        (DAY - dt.timedelta(days=29), None),
        (DAY - dt.timedelta(days=30), Check.MONTHLY),
        (DAY - dt.timedelta(days=400), Check.MONTHLY),
        (DAY + dt.timedelta(days=1), Check.MONTHLY),
    ],
)
def test_a_check_is_due_first_and_then_monthly(last: dt.date | None, expected: object) -> None:
    assert check_due(last, DAY) is expected


@pytest.mark.parametrize(
    ("pain", "start", "expected"),
    [
        (None, 2, False),
        (6, None, False),
        (7, None, True),
        (10, 10, True),
        (4, 2, False),
        (5, 2, True),
        (3, 0, True),
        (2, 0, False),
    ],
)
def test_much_or_rising_pain_asks_again(
    pain: int | None, start: int | None, expected: bool
) -> None:
    assert pain_asks_for_check(pain, start) is expected


def test_the_first_check_says_what_this_is_and_then_asks_emergencies_first() -> None:
    talk = Talk.begin(Check.FIRST)
    seen = [talk.page]
    while not talk.over:
        talk = talk.answer(Answer.READ if talk.page is Page.ABOUT else Answer.NONE_FITS)
        seen.append(talk.page)
    assert seen == [Page.ABOUT, Page.EMERGENCY, Page.SOON, Page.CLINICIAN, Page.CLEAR]


def test_the_other_checks_are_short_and_begin_with_emergencies() -> None:
    assert Talk.begin(Check.MONTHLY).page is Page.EMERGENCY
    assert Talk.begin(Check.MONTHLY).place == (1, 3)
    assert Talk.begin(Check.PAIN).place == (1, 2)


def test_an_emergency_leads_nowhere_else() -> None:
    talk = Talk.begin(Check.PAIN).answer(Answer.ONE_FITS)
    assert talk.page is Page.STOP_EMERGENCY
    assert talk.over
    assert talk.answers == ()
    with pytest.raises(ValueError, match="no answer"):
        talk.answer(Answer.CLINICIAN_AGREES)


def test_an_operation_within_twelve_weeks_asks_a_clinician_first() -> None:
    talk = Talk(Check.FIRST, Page.CLINICIAN).answer(Answer.ONE_FITS)
    assert talk.page is Page.STOP_CLINICIAN
    assert talk.answers == (Answer.CLINICIAN_AGREES,)
    assert talk.answer(Answer.CLINICIAN_AGREES).page is Page.CLEAR
    assert any("twelve weeks" in item for item in wording(Page.CLINICIAN).items)


def test_with_a_clinicians_consent_the_questions_go_on() -> None:
    talk = Talk(Check.MONTHLY, Page.SOON).answer(Answer.ONE_FITS)
    assert talk.answer(Answer.CLINICIAN_AGREES).page is Page.CLINICIAN


@pytest.mark.parametrize("page", list(Page))
def test_every_page_has_words(page: Page) -> None:
    words = wording(page)
    assert words.title
    assert words.items
    assert words.alarming is (page in (Page.EMERGENCY, Page.STOP_EMERGENCY))


def test_every_answer_has_words() -> None:
    assert len({answer_words(answer) for answer in Answer}) == len(Answer)


@pytest.mark.parametrize(
    "sign", ["chest", "out of shape", "seizure", "hot, red", "numb", "cold, pale", "headache"]
)
def test_the_emergency_page_names_the_signs(sign: str) -> None:
    assert any(sign in item for item in wording(Page.EMERGENCY).items)
