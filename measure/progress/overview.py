"""Overview of a person's progress: every movement and side, and the prompts for a clinician.

Pure: the present day comes from the caller.
"""

import datetime as dt
from dataclasses import dataclass, replace

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, History
from measure.progress.clinician_prompts import Prompt, prompts
from measure.progress.person_evidence import PersonEvidence
from measure.progress.series import all_series
from measure.progress.shoulder import SideProgress, side_progress


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """A person's progress as of one day."""

    today: dt.date
    sides: tuple[SideProgress, ...]
    prompts: tuple[Prompt, ...]

    @property
    def usual(self) -> tuple[SideProgress, ...]:
        """Each movement and side under its most frequent condition."""
        return tuple(side for side in self.sides if side.usual)

    def of(self, movement: Movement, side: Side) -> SideProgress | None:
        """Return a movement and side under its most frequent condition, or None."""
        wanted = (movement, side)
        return next((item for item in self.usual if (item.movement, item.side) == wanted), None)


def progress_of(history: History, today: dt.date) -> Progress:
    """Return a person's progress.

    Measurements after `today` are left out, so an earlier day gives the progress of that day.
    """
    history = history_until(history, today)
    every_series = all_series(history)
    usual: dict[Movement, AssessmentCondition] = {}
    for series in every_series:
        usual.setdefault(series.movement, series.conduct)
    affected = history.person.affected
    evidence = PersonEvidence.of(every_series, today)
    sides = tuple(
        side_progress(series, every_series, affected, usual[series.movement], evidence, today)
        for series in every_series
    )
    return Progress(
        today=today,
        sides=sides,
        prompts=prompts([side for side in sides if side.usual], history, today),
    )


def history_until(history: History, today: dt.date) -> History:
    """Return the history up to the end of a local day: its sessions, measurements and events.

    Plans and stretches are left as they are; they carry their own days.
    """
    moments = [session.started for session in history.sessions]
    moments += [record.taken for record in history.measurements]
    last_event = max((event.day for event in history.events), default=today)
    # A local day lies within a day of UTC's, so most histories need no closer comparison.
    if last_event <= today and all(moment.utc.date() < today for moment in moments):
        return history
    sessions = tuple(session for session in history.sessions if session.started.day <= today)
    session_ids = {session.id for session in sessions}
    return replace(
        history,
        sessions=sessions,
        measurements=tuple(
            record
            for record in history.measurements
            if record.session_id in session_ids and record.taken.day <= today
        ),
        events=tuple(event for event in history.events if event.day <= today),
    )
