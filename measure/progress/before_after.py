"""Before and after: which events of a history are compared, and with which days of a series.

The comparison itself is in :mod:`measure.trend.event_effect`. Pure.
"""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS
from measure.domain.records import EVENT_WORDS, Event, EventKind, History
from measure.progress.comparison import Change, Scatter, change_between, recent_block
from measure.progress.home_programme import events_with_plans
from measure.progress.series import Series
from measure.trend.event_effect import EffectPrior, EventEffect, event_effect

#: Events before and after which a series is compared, and whether a session on the same day
#: comes after: people measure before an injection. [project]
_COMPARED: Mapping[EventKind, bool] = {
    EventKind.INJECTION: False,
    EventKind.HYDRODILATATION: False,
    EventKind.MANIPULATION: False,
    EventKind.CAPSULAR_RELEASE: False,
    EventKind.PROCEDURE: False,
    EventKind.FLARE: True,
    EventKind.THERAPY: False,
    EventKind.THERAPY_BEGAN: False,
    EventKind.PROGRAMME_CHANGED: False,
    EventKind.MEDICINE_CHANGED: False,
}
#: Events further back than this are not compared any more, days. [project]
COMPARED_FOR_DAY = 182
#: Most events that are compared, the latest ones. [project]
MOST_EVENTS = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class TreatmentEvent:
    """Something that may have changed the course of a shoulder.

    Attributes
    ----------
    day
        The local day on which it happened.
    first_day_after
        The first local day that counts as after it.
    side
        The side that it concerns, or None for both.
    what
        In words, to be translated.
    """

    day: dt.date
    first_day_after: dt.date
    side: Side | None
    what: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeSince:
    """Change from the days up to a clinic visit to the latest ones."""

    day: dt.date
    change: Change


@dataclass(frozen=True, slots=True, kw_only=True)
class BeforeAfter:
    """A series before and after one event."""

    event: TreatmentEvent
    effect: EventEffect


def treatment_events(history: History) -> tuple[TreatmentEvent, ...]:
    """Return the events of a history that are compared, the earliest first.

    Injections, procedures, flares, therapies, medicines, and changes of the home programme.
    """
    return tuple(
        TreatmentEvent(
            day=event.day,
            first_day_after=event.day + dt.timedelta(days=0 if _COMPARED[event.kind] else 1),
            side=event.side,
            what=EVENT_WORDS[event.kind],
        )
        for event in events_with_plans(history)
        if event.kind in _COMPARED
    )


def latest_visit(events: Sequence[Event], today: dt.date) -> dt.date | None:
    """Return the day of the latest clinic visit before today, or None."""
    days = [event.day for event in events if event.kind is EventKind.CLINIC_VISIT]
    return max((day for day in days if day < today), default=None)


def before_after(
    series: Series, events: Sequence[TreatmentEvent], today: dt.date
) -> tuple[BeforeAfter, ...]:
    """Return the latest events of a series with what is seen before and after them.

    Only days that are comparable in height with the last one are used, from the event before to
    the event after. Events of one day share their days: they cannot be told apart.

    Parameters
    ----------
    series
        Not empty.
    events
        The earliest first; those of the other side are left out here.
    """
    series = series.latest_instrument().counted()
    events = [event for event in events if event.side in (None, series.side)]
    facts = MOVEMENTS[series.movement]
    prior = EffectPrior.of(facts.unit)
    comparisons = []
    borders = [event.first_day_after.toordinal() for event in events]
    for event, at in zip(events, borders, strict=True):
        if (today - event.day).days > COMPARED_FOR_DAY:
            continue
        start = max((border for border in borders if border < at), default=-1)
        end = min((border for border in borders if border > at), default=dt.date.max.toordinal())
        used = (series.day >= start) & (series.day < end)
        day, value = series.day[used], series.value[used]
        effect = event_effect(day, value, float(at), facts.usual_spread, prior)
        if effect is not None:
            comparisons.append(BeforeAfter(event=event, effect=effect))
    return tuple(comparisons[-MOST_EVENTS:])


def change_since(series: Series, visit: dt.date | None, scatter: Scatter) -> ChangeSince | None:
    """Return the change from the days up to a visit to the latest ones, or None without both.

    Parameters
    ----------
    scatter
        How far one day scatters about the trend.
    """
    series = series.latest_instrument().counted()
    if visit is None or not len(series):
        return None
    until = series.where(series.day <= visit.toordinal())
    if not len(until):
        return None
    change = change_between(recent_block(until, scatter), recent_block(series, scatter))
    return None if change is None else ChangeSince(day=visit, change=change)
