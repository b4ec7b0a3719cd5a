"""Red flag screening: the safety questions, their order and what follows. No Qt, no clock.

The lists follow what public health services and shoulder surgeons' societies tell people to
look out for; the intervals between checks and the pain limits are project values.
"""

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

from measure.domain.records import History
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome, ScreeningRecord
from measure.progress.home_programme import pain_to_rest_from, pain_while_moving
from measure.report.pain_correction import PainRatings

#: Days for which answers to the safety questions hold. [project]
DAYS_BETWEEN_CHECKS = 30
#: Pain rating (0..10) from which the questions are asked again. [project]
HIGH_PAIN = 7
#: Rise of the pain rating within a session from which they are asked again. [project]
PAIN_JUMP = 3


class ScreeningPage(StrEnum):
    """A page of the check, or how it ended."""

    ABOUT = "about"
    EMERGENCY = "emergency"
    SOON = "soon"
    CLINICIAN = "clinician"
    CLEAR = "clear"
    STOP_EMERGENCY = "stop-emergency"
    STOP_SOON = "stop-soon"
    STOP_CLINICIAN = "stop-clinician"


class ScreeningAnswer(StrEnum):
    NONE_FITS = "none-fits"
    ONE_FITS = "one-fits"
    CLINICIAN_AGREES = "clinician-agrees"


_ORDER = {
    ScreeningOccasion.BEFORE: (
        ScreeningPage.EMERGENCY,
        ScreeningPage.SOON,
        ScreeningPage.CLINICIAN,
    ),
    ScreeningOccasion.AFTER_PAIN: (ScreeningPage.EMERGENCY, ScreeningPage.SOON),
}
_STOPS = {
    ScreeningPage.EMERGENCY: ScreeningPage.STOP_EMERGENCY,
    ScreeningPage.SOON: ScreeningPage.STOP_SOON,
    ScreeningPage.CLINICIAN: ScreeningPage.STOP_CLINICIAN,
}
_OUTCOMES = {
    ScreeningPage.STOP_EMERGENCY: ScreeningOutcome.EMERGENCY,
    ScreeningPage.STOP_SOON: ScreeningOutcome.SOON,
    ScreeningPage.STOP_CLINICIAN: ScreeningOutcome.ASK_FIRST,
}


def screening_due(screenings: Iterable[ScreeningRecord], today: dt.date) -> bool:
    """Return whether the questions are due before measuring.

    The last run counts, for DAYS_BETWEEN_CHECKS days. One that named a sign, or one in the future,
    from a clock that was put back, calls for new questions; the questions after pain renew
    nothing.

    Parameters
    ----------
    screenings
        A person's runs, the earliest first.
    """
    last: ScreeningRecord | None = None
    for screening in screenings:
        if screening.occasion is ScreeningOccasion.BEFORE or not screening.outcome.passed:
            last = screening
    if last is None or not last.outcome.passed:
        return True
    return not 0 <= (today - last.day).days < DAYS_BETWEEN_CHECKS


def pain_requires_screening(pain: int | None, start: int | None) -> bool:
    """Return whether this pain, 0..10, calls for the questions.

    Parameters
    ----------
    start
        Pain at the start of the session, 0..10; None where it is not known.
    """
    if pain is None:
        return False
    return pain >= HIGH_PAIN or (start is not None and pain - start >= PAIN_JUMP)


def todays_pain_requiring_screening(
    history: History, screenings: Iterable[ScreeningRecord], today: dt.date
) -> int | None:
    """Return today's pain, 0..10, because of which the questions come before measuring, or None.

    Pain of movements asks each time, pain at rest until the questions have been answered that day
    without a sign.
    """
    moving, resting = pain_to_rest_from(history, today), _pain_at_rest(history, today)
    last = [screening.outcome for screening in screenings if screening.day == today][-1:]
    if any(outcome.passed for outcome in last):
        resting = None
    pain = max((rating for rating in (moving, resting) if rating is not None), default=None)
    return pain if pain_requires_screening(pain, None) else None


def told_pain_requires_screening(
    rest: int | None, history: History, today: dt.date, answered: int | None = None
) -> bool:
    """Return whether pain at rest, 0..10, told after today's questions calls for them again.

    Pain as high that was told before has been asked about.

    Parameters
    ----------
    answered
        Pain because of which they were answered today, 0..10; None for another cause.
    """
    highest = max(_pain_at_rest(history, today) or 0, answered or 0)
    return rest is not None and rest > highest and pain_requires_screening(rest, None)


def todays_high_pain(history: History, today: dt.date) -> int | None:
    """Return the highest pain told today, at rest and moving, if it is high, 0..10; or None."""
    ratings = (_pain_at_rest(history, today), pain_while_moving(history, today))
    pain = max((rating for rating in ratings if rating is not None), default=None)
    return pain if pain_requires_screening(pain, None) else None


def _pain_at_rest(history: History, today: dt.date) -> int | None:
    """Return the highest pain at rest told today, 0..10, or None."""
    sessions = (session for session in history.sessions if session.started.day == today)
    ratings = (session.pain.rest for session in sessions)
    return max((rating for rating in ratings if rating is not None), default=None)


def corrected_pain_requires_screening(former: PainRatings, now: PainRatings) -> int | None:
    """Return the highest pain, 0..10, that a correction of today's session raised to much pain.

    Only pain at rest and during movements counts, as while measuring; None where nothing was raised
    so far.
    """
    pairs = [(former.before.rest, now.before.rest)]
    pairs += [(former.during.get(key), pain) for key, pain in now.during.items()]
    raised = [
        pain
        for was, pain in pairs
        if pain is not None and pain > (was or 0) and pain_requires_screening(pain, now.before.rest)
    ]
    return max(raised, default=None)


@dataclass(frozen=True, slots=True)
class RedFlagScreening:
    """One run through the questions, a page at a time."""

    check: ScreeningOccasion
    page: ScreeningPage
    #: Whether a sign was named and a clinician has said that measuring is all right.
    agreed: bool = False

    @classmethod
    def begin(cls, check: ScreeningOccasion) -> "RedFlagScreening":
        return cls(check, _ORDER[check][0])

    @property
    def outcome(self) -> ScreeningOutcome:
        """How the questions were answered up to this page."""
        if self.page in _OUTCOMES:
            return _OUTCOMES[self.page]
        return ScreeningOutcome.CLINICIAN_AGREED if self.agreed else ScreeningOutcome.CLEAR

    @property
    def over(self) -> bool:
        return self.page in (ScreeningPage.CLEAR, ScreeningPage.STOP_EMERGENCY)

    @property
    def page_position(self) -> tuple[int, int]:
        """Number of the page, from 1, and how many there are; a stop counts as its question."""
        order = _ORDER[self.check]
        asked = {stop: question for question, stop in _STOPS.items()}
        page = asked.get(self.page, self.page)
        return (order.index(page) + 1 if page in order else len(order)), len(order)

    def answer(self, answer: ScreeningAnswer) -> "RedFlagScreening":
        """Return the screening one page on.

        Raises
        ------
        ValueError
            When the page does not offer this answer.
        """
        if answer not in self.answers:
            raise ValueError(f"{answer} is no answer to {self.page}")
        if answer is ScreeningAnswer.ONE_FITS:
            return replace(self, page=_STOPS[self.page])
        order = _ORDER[self.check]
        following = self.page_position[0]
        return RedFlagScreening(
            self.check,
            order[following] if following < len(order) else ScreeningPage.CLEAR,
            self.agreed or answer is ScreeningAnswer.CLINICIAN_AGREES,
        )

    @property
    def asks(self) -> bool:
        """Whether the page asks about a list of signs."""
        return self.page in _STOPS

    @property
    def can_go_back(self) -> bool:
        """Whether there is an earlier answer to change; after pain the questions are over."""
        first = _ORDER[self.check][0]
        return self.page not in (first, ScreeningPage.CLEAR)

    def back(self) -> "RedFlagScreening":
        """Return the screening at the page before; from a stop, at the question it came from.

        Raises
        ------
        ValueError
            On the first page.
        """
        if not self.can_go_back:
            raise ValueError(f"nothing comes before {self.page}")
        order = _ORDER[self.check]
        here = self.page_position[0] - 1
        if self.page not in order:
            return replace(self, page=order[here])
        # What was agreed to on that page is asked again.
        return replace(self, page=order[here - 1], agreed=False)

    @property
    def answers(self) -> tuple[ScreeningAnswer, ...]:
        """What the page offers; an emergency offers nothing but to stop."""
        if self.asks:
            return (ScreeningAnswer.NONE_FITS, ScreeningAnswer.ONE_FITS)
        if self.page in (ScreeningPage.STOP_SOON, ScreeningPage.STOP_CLINICIAN):
            return (ScreeningAnswer.CLINICIAN_AGREES,)
        return ()
