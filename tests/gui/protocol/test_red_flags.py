"""When measuring must wait, and what the pages say."""

import datetime as dt

import pytest

from gui.protocol.red_flags import (
    RedFlagScreening,
    ScreeningAnswer,
    ScreeningKind,
    ScreeningPage,
    pain_requires_screening,
    screening_due,
)
from gui.text.safety_wording import answer_text, screening_text

DAY = dt.date(2026, 11, 25)


@pytest.mark.parametrize(
    ("last", "expected"),
    [
        (None, ScreeningKind.FIRST),
        (DAY, None),
        (DAY - dt.timedelta(days=29), None),
        (DAY - dt.timedelta(days=30), ScreeningKind.MONTHLY),
        (DAY - dt.timedelta(days=400), ScreeningKind.MONTHLY),
        (DAY + dt.timedelta(days=1), ScreeningKind.MONTHLY),
    ],
)
def test_a_check_is_due_first_and_then_monthly(last: dt.date | None, expected: object) -> None:
    assert screening_due(last, DAY) is expected


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
    assert pain_requires_screening(pain, start) is expected


def test_the_first_check_says_what_this_is_and_then_asks_emergencies_first() -> None:
    talk = RedFlagScreening.begin(ScreeningKind.FIRST)
    seen = [talk.page]
    while not talk.over:
        talk = talk.answer(
            ScreeningAnswer.READ if talk.page is ScreeningPage.ABOUT else ScreeningAnswer.NONE_FITS
        )
        seen.append(talk.page)
    assert seen == [
        ScreeningPage.ABOUT,
        ScreeningPage.EMERGENCY,
        ScreeningPage.SOON,
        ScreeningPage.CLINICIAN,
        ScreeningPage.CLEAR,
    ]


def test_the_other_checks_are_short_and_begin_with_emergencies() -> None:
    assert RedFlagScreening.begin(ScreeningKind.MONTHLY).page is ScreeningPage.EMERGENCY
    assert RedFlagScreening.begin(ScreeningKind.MONTHLY).page_position == (1, 3)
    assert RedFlagScreening.begin(ScreeningKind.PAIN).page_position == (1, 2)


@pytest.mark.parametrize("check", list(ScreeningKind))
def test_every_page_but_the_first_leads_back_to_the_one_before(check: ScreeningKind) -> None:
    talk = RedFlagScreening.begin(check)
    assert not talk.can_go_back
    with pytest.raises(ValueError, match="nothing comes before"):
        talk.back()
    while not talk.over:
        following = talk.answer(
            ScreeningAnswer.READ if talk.page is ScreeningPage.ABOUT else ScreeningAnswer.NONE_FITS
        )
        assert following.over or following.back() == talk
        if talk.asks:
            stop = talk.answer(ScreeningAnswer.ONE_FITS)
            assert stop.back() == talk
        talk = following


def test_an_emergency_leads_nowhere_else() -> None:
    talk = RedFlagScreening.begin(ScreeningKind.PAIN).answer(ScreeningAnswer.ONE_FITS)
    assert talk.page is ScreeningPage.STOP_EMERGENCY
    assert talk.over
    assert talk.answers == ()
    with pytest.raises(ValueError, match="no answer"):
        talk.answer(ScreeningAnswer.CLINICIAN_AGREES)


def test_an_operation_within_twelve_weeks_asks_a_clinician_first() -> None:
    talk = RedFlagScreening(ScreeningKind.FIRST, ScreeningPage.CLINICIAN).answer(
        ScreeningAnswer.ONE_FITS
    )
    assert talk.page is ScreeningPage.STOP_CLINICIAN
    assert talk.answers == (ScreeningAnswer.CLINICIAN_AGREES,)
    assert talk.answer(ScreeningAnswer.CLINICIAN_AGREES).page is ScreeningPage.CLEAR
    assert any("twelve weeks" in item for item in screening_text(ScreeningPage.CLINICIAN).items)


def test_with_a_clinicians_consent_the_questions_go_on() -> None:
    talk = RedFlagScreening(ScreeningKind.MONTHLY, ScreeningPage.SOON).answer(
        ScreeningAnswer.ONE_FITS
    )
    assert talk.answer(ScreeningAnswer.CLINICIAN_AGREES).page is ScreeningPage.CLINICIAN


@pytest.mark.parametrize("page", list(ScreeningPage))
def test_every_page_has_words(page: ScreeningPage) -> None:
    words = screening_text(page)
    assert words.title
    assert words.items
    assert words.alarming is (page in (ScreeningPage.EMERGENCY, ScreeningPage.STOP_EMERGENCY))


def test_every_answer_has_words() -> None:
    assert len({answer_text(answer) for answer in ScreeningAnswer}) == len(ScreeningAnswer)


@pytest.mark.parametrize(
    "sign",
    [
        *("Chest", "face droops", "unsteady", "out of shape", "seizure", "hot, red", "numb"),
        *("cold, pale", "headache"),
    ],
)
def test_the_emergency_page_names_the_signs(sign: str) -> None:
    assert any(sign in item for item in screening_text(ScreeningPage.EMERGENCY).items)
