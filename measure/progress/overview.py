"""A person's progress over weeks and months: every movement and side, and what to talk about.

Pure: the day it is today comes from the caller.
"""

import datetime as dt
from dataclasses import dataclass, replace

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, History
from measure.progress.clinician_prompts import Prompt, prompts
from measure.progress.series import all_series
from measure.progress.shoulder import SideProgress, side_progress


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """All that can be said about a person's progress on a day."""

    today: dt.date
    sides: tuple[SideProgress, ...]
    prompts: tuple[Prompt, ...]

    @property
    def usual(self) -> tuple[SideProgress, ...]:
        """Each movement and side in the way it is done most often."""
        return tuple(each for each in self.sides if each.usual)

    def of(self, movement: Movement, side: Side) -> SideProgress | None:
        """Return a movement and side in the way it is done most often, or None."""
        return next(
            (each for each in self.usual if each.movement is movement and each.side is side), None
        )


def progress_of(history: History, today: dt.date) -> Progress:
    """Return everything that can be said about a person's progress.

    Readings after `today` are left out, so an earlier day shows what could be said then.
    """
    history = history_until(history, today)
    found = all_series(history)
    usual: dict[Movement, AssessmentCondition] = {}
    for series in found:
        usual.setdefault(series.movement, series.conduct)
    affected = history.person.affected
    sides = tuple(
        side_progress(series, found, affected, usual[series.movement], today) for series in found
    )
    return Progress(
        today=today,
        sides=sides,
        prompts=prompts([each for each in sides if each.usual and each.affected], history, today),
    )


def history_until(history: History, today: dt.date) -> History:
    """Return what had happened by the end of a local day: sessions, measurements and events.

    Plans and stretches are left as they are; they carry their own days.
    """
    moments = [each.started for each in history.sessions]
    moments += [each.taken for each in history.measurements]
    last_event = max((each.day for each in history.events), default=today)
    # A local day lies within a day of UTC's, so most histories need no closer look.
    if last_event <= today and all(each.utc.date() < today for each in moments):
        return history
    sessions = tuple(each for each in history.sessions if each.started.day <= today)
    known = {each.id for each in sessions}
    return replace(
        history,
        sessions=sessions,
        measurements=tuple(
            each
            for each in history.measurements
            if each.session_id in known and each.taken.day <= today
        ),
        events=tuple(each for each in history.events if each.day <= today),
    )
