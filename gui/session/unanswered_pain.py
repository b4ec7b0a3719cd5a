"""Much pain whose safety questions wait for an answer, by person, until the window is closed."""

import datetime as dt
from collections.abc import Iterable

from gui.protocol.red_flags import (
    todays_pain_requiring_screening,
    told_pain_requires_screening,
)
from measure.domain.records import History
from measure.domain.screening_records import ScreeningRecord


class UnansweredPain:
    """Knows because of which pain the questions were asked, and whether they were answered.

    One for all pages: what was left without an answer on one of them is asked on the next one.
    """

    def __init__(self) -> None:
        self._waiting: dict[str, int] = {}
        #: The pain for which somebody answered last, and on which day.
        self._answered: dict[str, tuple[dt.date, int]] = {}

    def ask(self, person_id: str, pain: int | None) -> None:
        """Remember that the questions are asked; None is another cause than pain, 0..10."""
        if pain is not None:
            self._waiting[person_id] = pain

    def answer(self, person_id: str, today: dt.date) -> None:
        """Remember that all of them were answered."""
        pain = self._waiting.pop(person_id, None)
        if pain is not None:
            self._answered[person_id] = (today, pain)

    def at_beginning(
        self, history: History, screenings: Iterable[ScreeningRecord], today: dt.date
    ) -> int | None:
        """Return the pain, 0..10, that asks before a session or a round of exercises, or None."""
        waiting = self._waiting.get(history.person.id)
        if waiting is not None:
            return waiting
        return todays_pain_requiring_screening(history, screenings, today)

    def when_told(self, rest: int | None, history: History, today: dt.date) -> int | None:
        """Return the pain, 0..10, that asks once pain at rest was told, or None.

        What was asked about at the beginning has been answered by then.
        """
        person_id = history.person.id
        day, answered = self._answered.get(person_id, (today, None))
        if told_pain_requires_screening(rest, history, today, answered if day == today else None):
            return rest
        return self._waiting.get(person_id)
