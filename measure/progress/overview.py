"""Overview of a person's progress: every movement and side, and the prompts for a clinician.

Pure: the present day comes from the caller.
"""

import datetime as dt
import math
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.records import AssessmentCondition, EventKind, History, MeasurementRecord
from measure.domain.setup_changes import SetupChange, Standing, lasting_change, standing_of
from measure.progress.before_after import (
    before_after,
    change_since,
    latest_visit,
    treatment_events,
)
from measure.progress.clinician_prompts import Prompt, prompts
from measure.progress.detectable_gain import GAINS_DEG, Outlook, TimeToKnow, verdict_limit
from measure.progress.home_programme import (
    ProgrammeDone,
    WeekDone,
    plan_on,
    programme_done,
    recent_weeks,
)
from measure.progress.movement_ends import MonthEnds, ends_by_month
from measure.progress.person_evidence import PRIMARY_MOVEMENTS, PersonEvidence
from measure.progress.series import all_series, instrument_of
from measure.progress.shoulder import SideProgress, side_progress
from measure.progress.side_deficit import Pattern, pattern_of
from measure.progress.weekly_verdicts import Verdict
from measure.trend.event_effect import FRACTION_OF_A_DEGREE
from measure.trend.trend_line import widening


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """A person's progress as of one day: what window, terminal, report and JSON show of it.

    Attributes
    ----------
    sides
        Every movement and side, by the way in which it is done.
    programme_weeks
        Exercises of the latest weeks that had a plan.
    programme_done
        What was done of each exercise since the latest clinic visit, or in the latest weeks
        without one; None where nothing was planned.
    pattern
        The affected side's ranges as shares of the other's, over movements; None without two.
    ends
        What ended the movements of the affected sides, by month.
    dominant
        The person's dominant hand, where it is known.
    affected
        The affected sides; empty where not stated.
    primary
        The main movements, of the plan or the usual ones.
    """

    today: dt.date
    sides: tuple[SideProgress, ...]
    prompts: tuple[Prompt, ...]
    programme_weeks: tuple[WeekDone, ...]
    programme_done: ProgrammeDone | None
    pattern: Pattern | None
    ends: tuple[MonthEnds, ...]
    dominant: Side | None
    affected: tuple[Side, ...]
    primary: tuple[Movement, ...]

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
    plan = plan_on(history.plans, today)
    primary = plan.primary if plan is not None and plan.primary else PRIMARY_MOVEMENTS
    evidence = PersonEvidence.of(every_series, today, primary)
    events, visit = treatment_events(history), latest_visit(history.events, today)
    setup_changes = lasting_setup_changes(history)
    sides = []
    for series in every_series:
        side = side_progress(
            series, every_series, affected, usual[series.movement], evidence, today
        )
        sides.append(
            replace(
                side,
                events=before_after(series, events, today),
                since_visit=change_since(series, visit, side.scatter),
                setup_change=setup_changes.get((side.movement, side.side)) if side.usual else None,
                time_to_know=_time_to_know(side, evidence, today),
            )
        )
    usual_sides = [side for side in sides if side.usual]
    return Progress(
        today=today,
        sides=tuple(sides),
        prompts=prompts(usual_sides, history, today),
        programme_weeks=recent_weeks(history.plans, history.exercises_done, today),
        programme_done=programme_done(history.plans, history.exercises_done, visit, today),
        pattern=_pattern(usual_sides),
        ends=ends_by_month(history, affected or tuple(Side)),
        dominant=history.person.dominant,
        affected=affected,
        primary=tuple(movement for movement in Movement if movement in primary),
    )


def _pattern(sides: Sequence[SideProgress]) -> Pattern | None:
    """Return the pattern of the affected side, which is the only one with deficits."""
    deficits = [(side, side.deficit) for side in sides if side.deficit is not None]
    if not deficits:
        return None
    return pattern_of(deficits[0][0].side, ((side.movement, what) for side, what in deficits))


def _time_to_know(
    side: SideProgress, evidence: PersonEvidence, today: dt.date
) -> TimeToKnow | None:
    """Return when gains would show, while nothing is known of a change.

    For the primary movements of an affected side: of the others no gain is waited for.
    """
    if side.verdict not in (Verdict.TOO_EARLY, Verdict.NO_CLEAR_CHANGE):
        return None
    if not (side.primary and side.affected):
        return None
    segment = side.series.latest_segment()
    counted = segment.counted().day
    if side.current.turn is not None:
        counted = counted[counted >= side.current.turn.day.toordinal()]
    if not len(counted):
        return None
    outlook = Outlook(
        day=counted,
        first_day=float(segment.day[0]),
        spread=side.spread * math.sqrt(widening(evidence.related(today))),
        limit=verdict_limit(
            side.primary, alone=not evidence.others((side.movement, side.conduct, side.side))
        ),
    )
    of_degrees = MOVEMENTS[side.movement].unit is Unit.DEGREES
    scale = 1.0 if of_degrees else FRACTION_OF_A_DEGREE
    return outlook.time_to_know([gain * scale for gain in GAINS_DEG])


def history_until(history: History, today: dt.date) -> History:
    """Return the history up to the end of a local day: its sessions, measurements and events.

    Plans and exercises done are left as they are; they carry their own days.
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


def lasting_setup_changes(history: History) -> Mapping[tuple[Movement, Side], SetupChange]:
    """Return what differs now from the first readings, for sides of which something does.

    Only readings of the latest instrument count, since the last noted change of camera or model:
    what was noted has begun a new series.
    """
    changed = [
        event.day
        for event in history.events
        if event.kind in (EventKind.CAMERA_CHANGED, EventKind.MODEL_CHANGED)
    ]
    groups: dict[tuple[Movement, Side], list[MeasurementRecord]] = defaultdict(list)
    for record in sorted(history.measurements, key=lambda item: item.taken.utc):
        if not changed or record.taken.day >= max(changed):
            groups[record.measurement.movement, record.measurement.side].append(record)
    changes = {
        (movement, side): lasting_change(movement, _poses(records))
        for (movement, side), records in groups.items()
    }
    return {of: change for of, change in changes.items() if change is not None}


def _poses(records: list[MeasurementRecord]) -> list[Standing]:
    """Return how the person stood in the readings of the latest instrument."""
    latest = instrument_of(records[-1].measurement)
    poses = (
        standing_of(record.measurement.provenance.source)
        for record in records
        if instrument_of(record.measurement) == latest
    )
    return [pose for pose in poses if pose is not None]
