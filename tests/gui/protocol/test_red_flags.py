"""When measuring must wait, and what the pages say."""

import datetime as dt
from dataclasses import replace

import pytest
from PySide6.QtWidgets import QApplication

from gui.protocol.red_flags import (
    HIGH_PAIN,
    RedFlagScreening,
    ScreeningAnswer,
    ScreeningPage,
    corrected_pain_requires_screening,
    pain_requires_screening,
    screening_due,
    todays_high_pain,
    todays_pain_requiring_screening,
    told_pain_requires_screening,
)
from gui.text.safety_wording import answer_text, screening_text
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import Pain
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome
from measure.report.pain_correction import PainRatings
from tests.support.gui.measuring_steps import screening_today
from tests.support.gui.screenshots import LANGUAGES, language_in_force
from tests.support.progress_histories import history
from tests.support.record_samples import person

DAY = dt.date(2026, 11, 25)
WHO = person()


@pytest.mark.parametrize(
    ("last", "expected"),
    [
        (None, True),
        (DAY, False),
        (DAY - dt.timedelta(days=29), False),
        (DAY - dt.timedelta(days=30), True),
        (DAY - dt.timedelta(days=400), True),
        (DAY + dt.timedelta(days=1), True),
    ],
)
def test_a_check_is_due_first_and_then_monthly(last: dt.date | None, expected: bool) -> None:
    screenings = [] if last is None else [screening_today(WHO, last)]
    assert screening_due(screenings, DAY) is expected


@pytest.mark.parametrize(
    ("occasion", "outcome", "expected"),
    [
        (ScreeningOccasion.BEFORE, ScreeningOutcome.CLINICIAN_AGREED, False),
        (ScreeningOccasion.BEFORE, ScreeningOutcome.SOON, True),
        (ScreeningOccasion.AFTER_PAIN, ScreeningOutcome.CLEAR, False),
        (ScreeningOccasion.AFTER_PAIN, ScreeningOutcome.EMERGENCY, True),
    ],
)
def test_a_sign_makes_the_questions_due_again(
    occasion: ScreeningOccasion, outcome: ScreeningOutcome, expected: bool
) -> None:
    """Also one that was named after a painful movement; answers after pain renew nothing."""
    earlier = screening_today(WHO, DAY - dt.timedelta(days=1))
    later = replace(screening_today(WHO, DAY), occasion=occasion, outcome=outcome)
    assert screening_due([earlier, later], DAY) is expected
    old = screening_today(WHO, DAY - dt.timedelta(days=40))
    renewed = occasion is ScreeningOccasion.BEFORE and outcome.passed
    assert screening_due([old, later], DAY) is not renewed


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


def test_the_check_asks_emergencies_first() -> None:
    talk = RedFlagScreening.begin(ScreeningOccasion.BEFORE)
    seen = [talk.page]
    while not talk.over:
        talk = talk.answer(ScreeningAnswer.NONE_FITS)
        seen.append(talk.page)
    assert seen == [
        ScreeningPage.EMERGENCY,
        ScreeningPage.SOON,
        ScreeningPage.CLINICIAN,
        ScreeningPage.CLEAR,
    ]


def test_after_pain_there_are_fewer_questions() -> None:
    assert RedFlagScreening.begin(ScreeningOccasion.BEFORE).page_position == (1, 3)
    assert RedFlagScreening.begin(ScreeningOccasion.AFTER_PAIN).page_position == (1, 2)


@pytest.mark.parametrize("check", list(ScreeningOccasion))
def test_every_page_but_the_first_leads_back_to_the_one_before(check: ScreeningOccasion) -> None:
    talk = RedFlagScreening.begin(check)
    assert not talk.can_go_back
    with pytest.raises(ValueError, match="nothing comes before"):
        talk.back()
    while not talk.over:
        following = talk.answer(ScreeningAnswer.NONE_FITS)
        assert following.over or following.back() == talk
        if talk.asks:
            stop = talk.answer(ScreeningAnswer.ONE_FITS)
            assert stop.back() == talk
        talk = following


def test_an_emergency_leads_nowhere_else() -> None:
    talk = RedFlagScreening.begin(ScreeningOccasion.AFTER_PAIN).answer(ScreeningAnswer.ONE_FITS)
    assert talk.page is ScreeningPage.STOP_EMERGENCY
    assert talk.over
    assert talk.answers == ()
    with pytest.raises(ValueError, match="no answer"):
        talk.answer(ScreeningAnswer.CLINICIAN_AGREES)


def test_an_operation_within_twelve_weeks_asks_a_clinician_first() -> None:
    talk = RedFlagScreening(ScreeningOccasion.BEFORE, ScreeningPage.CLINICIAN).answer(
        ScreeningAnswer.ONE_FITS
    )
    assert talk.page is ScreeningPage.STOP_CLINICIAN
    assert talk.answers == (ScreeningAnswer.CLINICIAN_AGREES,)
    assert talk.answer(ScreeningAnswer.CLINICIAN_AGREES).page is ScreeningPage.CLEAR
    assert any("twelve weeks" in item for item in screening_text(ScreeningPage.CLINICIAN).items)


def test_with_a_clinicians_consent_the_questions_go_on() -> None:
    talk = RedFlagScreening(ScreeningOccasion.BEFORE, ScreeningPage.SOON).answer(
        ScreeningAnswer.ONE_FITS
    )
    assert talk.outcome is ScreeningOutcome.SOON
    agreed = talk.answer(ScreeningAnswer.CLINICIAN_AGREES)
    assert agreed.page is ScreeningPage.CLINICIAN
    cleared = agreed.answer(ScreeningAnswer.NONE_FITS)
    assert cleared.outcome is ScreeningOutcome.CLINICIAN_AGREED
    denied = agreed.back().answer(ScreeningAnswer.NONE_FITS).answer(ScreeningAnswer.NONE_FITS)
    assert denied.outcome is ScreeningOutcome.CLEAR


@pytest.mark.parametrize("page", list(ScreeningPage))
def test_every_page_has_words(page: ScreeningPage) -> None:
    words = screening_text(page)
    assert words.title
    assert words.items
    assert words.alarming is (page in (ScreeningPage.EMERGENCY, ScreeningPage.STOP_EMERGENCY))


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize(
    "page", [ScreeningPage.EMERGENCY, ScreeningPage.SOON, ScreeningPage.CLINICIAN]
)
def test_what_is_bold_stands_in_its_sign(
    qapp: QApplication, page: ScreeningPage, language: str
) -> None:
    with language_in_force(qapp, language):
        words = screening_text(page)
    assert len(words.strong) == len(words.items)
    for item, strong in zip(words.items, words.strong, strict=True):
        assert all(phrase and phrase in item for phrase in strong.split("|")), item


def test_every_answer_has_words() -> None:
    assert len({answer_text(answer) for answer in ScreeningAnswer}) == len(ScreeningAnswer)


@pytest.mark.parametrize(
    "sign",
    [
        *("Chest", "drooping face", "unsteady", "out of shape", "seizure", "hot, red", "numb"),
        *("cold, pale", "headache"),
    ],
)
def test_the_emergency_page_names_the_signs(sign: str) -> None:
    assert any(sign in item for item in screening_text(ScreeningPage.EMERGENCY).items)


@pytest.mark.parametrize(("rest", "expected"), [(7, 7), (6, None), (None, None)])
def test_pain_at_rest_asks_before_measuring_until_answered(
    rest: int | None, expected: int | None
) -> None:
    pained = history({(Movement.FLEXION, Side.LEFT): [(0, 90.0)]}, pain={0: Pain(rest=rest)})
    today = pained.sessions[0].started.day
    yesterday = screening_today(pained.person, today - dt.timedelta(days=1))
    assert todays_pain_requiring_screening(pained, [yesterday], today) == expected
    answered = screening_today(pained.person, today)
    assert todays_pain_requiring_screening(pained, [yesterday, answered], today) is None
    stopped = replace(answered, outcome=ScreeningOutcome.SOON)
    assert todays_pain_requiring_screening(pained, [answered, stopped], today) == expected
    assert todays_pain_requiring_screening(pained, [stopped, answered], today) is None
    assert todays_pain_requiring_screening(pained, [], today + dt.timedelta(days=1)) is None


@pytest.mark.parametrize(
    ("told", "known", "answered", "expected"),
    [
        (8, None, None, True),
        (7, 6, None, True),
        (8, 8, None, False),
        (8, 7, None, True),
        (7, 8, None, False),
        (8, None, 8, False),
        (9, None, 8, True),
        (6, None, None, False),
        (None, None, None, False),
    ],
)
def test_pain_told_later_asks_unless_as_much_was_answered_today(
    told: int | None, known: int | None, answered: int | None, expected: bool
) -> None:
    pained = history({(Movement.FLEXION, Side.LEFT): [(0, 90.0)]}, pain={0: Pain(rest=known)})
    today = pained.sessions[0].started.day
    assert told_pain_requires_screening(told, pained, today, answered) is expected
    tomorrow = today + dt.timedelta(days=1)
    asks = told_pain_requires_screening(told, pained, tomorrow)
    assert asks is (told is not None and told >= HIGH_PAIN)


@pytest.mark.parametrize(
    ("rest", "moving", "expected"),
    [(8, None, 8), (2, 7, 7), (7, 9, 9), (6, 6, None), (None, None, None)],
)
def test_high_pain_of_the_day_is_the_highest_at_rest_and_moving(
    rest: int | None, moving: int | None, expected: int | None
) -> None:
    pained = history({(Movement.FLEXION, Side.LEFT): [(0, 90.0)]}, pain={0: Pain(rest=rest)})
    (record,) = pained.measurements
    pained = replace(pained, measurements=(replace(record, pain_during=moving),))
    today = pained.sessions[0].started.day
    assert todays_high_pain(pained, today) == expected
    assert todays_high_pain(pained, today + dt.timedelta(days=1)) is None


def _ratings(rest: int | None, **during: int | None) -> PainRatings:
    return PainRatings(before=Pain(rest=rest), during=during)


@pytest.mark.parametrize(
    ("former", "now", "expected"),
    [
        (_ratings(2), _ratings(7), 7),
        (_ratings(None), _ratings(8), 8),
        (_ratings(8), _ratings(7), None),
        (_ratings(8), _ratings(8), None),
        (_ratings(2), _ratings(6), None),
        (_ratings(2, first=3), _ratings(2, first=5), 5),
        (_ratings(2, first=3), _ratings(2, first=4), None),
        (_ratings(2, first=9, second=1), _ratings(2, first=8, second=7), 7),
        (_ratings(2, first=3), _ratings(2, first=None), None),
        (_ratings(None, first=None), _ratings(None, first=6), None),
    ],
)
def test_only_pain_that_a_correction_raised_calls_for_the_questions(
    former: PainRatings, now: PainRatings, expected: int | None
) -> None:
    assert corrected_pain_requires_screening(former, now) == expected
