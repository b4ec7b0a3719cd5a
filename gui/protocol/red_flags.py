"""Red flag screening: the safety questions, their order and what follows. No Qt, no clock.

The lists follow what public health services and shoulder surgeons' societies tell people to
look out for; the intervals between checks and the pain limits are project values.
"""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

#: Days between a full or short screening and the next short one. [project]
DAYS_BETWEEN_CHECKS = 30
#: Pain rating (0..10) from which the questions are asked again. [project]
HIGH_PAIN = 7
#: Rise of the pain rating within a session from which they are asked again. [project]
PAIN_JUMP = 3


class ScreeningKind(StrEnum):
    """Which questions to ask."""

    FIRST = "first"
    MONTHLY = "monthly"
    PAIN = "pain"


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
    READ = "read"
    NONE_FITS = "none-fits"
    ONE_FITS = "one-fits"
    CLINICIAN_AGREES = "clinician-agrees"


_ORDER = {
    ScreeningKind.FIRST: (
        ScreeningPage.ABOUT,
        ScreeningPage.EMERGENCY,
        ScreeningPage.SOON,
        ScreeningPage.CLINICIAN,
    ),
    ScreeningKind.MONTHLY: (ScreeningPage.EMERGENCY, ScreeningPage.SOON, ScreeningPage.CLINICIAN),
    ScreeningKind.PAIN: (ScreeningPage.EMERGENCY, ScreeningPage.SOON),
}
_STOPS = {
    ScreeningPage.EMERGENCY: ScreeningPage.STOP_EMERGENCY,
    ScreeningPage.SOON: ScreeningPage.STOP_SOON,
    ScreeningPage.CLINICIAN: ScreeningPage.STOP_CLINICIAN,
}


def screening_due(last: dt.date | None, today: dt.date) -> ScreeningKind | None:
    """Return the check that is due before measuring, or None.

    A date in the future, from a clock that was put back, counts as no check at all.
    """
    if last is None:
        return ScreeningKind.FIRST
    days = (today - last).days
    return ScreeningKind.MONTHLY if days >= DAYS_BETWEEN_CHECKS or days < 0 else None


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


@dataclass(frozen=True, slots=True)
class RedFlagScreening:
    """One run through the questions, a page at a time."""

    check: ScreeningKind
    page: ScreeningPage

    @classmethod
    def begin(cls, check: ScreeningKind) -> "RedFlagScreening":
        return cls(check, _ORDER[check][0])

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
            return RedFlagScreening(self.check, _STOPS[self.page])
        order = _ORDER[self.check]
        following = self.page_position[0]
        return RedFlagScreening(
            self.check, order[following] if following < len(order) else ScreeningPage.CLEAR
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
        return RedFlagScreening(self.check, order[here if self.page not in order else here - 1])

    @property
    def answers(self) -> tuple[ScreeningAnswer, ...]:
        """What the page offers; an emergency offers nothing but to stop."""
        if self.page is ScreeningPage.ABOUT:
            return (ScreeningAnswer.READ,)
        if self.asks:
            return (ScreeningAnswer.NONE_FITS, ScreeningAnswer.ONE_FITS)
        if self.page in (ScreeningPage.STOP_SOON, ScreeningPage.STOP_CLINICIAN):
            return (ScreeningAnswer.CLINICIAN_AGREES,)
        return ()
