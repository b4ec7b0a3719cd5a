"""The demo story: four made-up members of an allotment garden over twenty weeks.

What happens to whom stands here; how it becomes sessions with lifelike noise stands in
:mod:`measure.demo.sessions`. The names begin with "demo-" and the people are marked as demo,
so that nothing made up can pass for somebody's readings.
"""

import datetime as dt
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from measure.demo.sessions import Happening, Member, history_of, made_id
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import (
    EventKind,
    History,
    Onset,
    Person,
    Plan,
    PlannedStretch,
    Stretch,
)
from measure.errors import InputError
from measure.storage.store import Store
from measure.system.clock import Timestamp

WEEKS = 20

#: Truth of a healthy shoulder, in each movement's unit.
_HEALTHY: Mapping[Movement, float] = {
    Movement.FLEXION: 162.0,
    Movement.EXTENSION: 56.0,
    Movement.ABDUCTION: 156.0,
    Movement.EXTERNAL_ROTATION: 68.0,
    Movement.HAND_BEHIND_BACK: 0.56,
}
#: Truth of a stiff one.
_STIFF: Mapping[Movement, float] = {
    Movement.FLEXION: 92.0,
    Movement.EXTENSION: 30.0,
    Movement.ABDUCTION: 76.0,
    Movement.EXTERNAL_ROTATION: 14.0,
    Movement.HAND_BEHIND_BACK: 0.02,
}


@dataclass(frozen=True, slots=True)
class _Way:
    """How far towards health a shoulder is at some weeks, 0 (stiff) to 1; straight between."""

    weeks: tuple[float, ...]
    shares: tuple[float, ...]

    def at(self, week: float) -> float:
        for k in range(1, len(self.weeks)):
            if week <= self.weeks[k]:
                before, after = self.weeks[k - 1], self.weeks[k]
                part = (week - before) / (after - before)
                return self.shares[k - 1] + part * (self.shares[k] - self.shares[k - 1])
        return self.shares[-1]


def load_story(store: Store) -> list[str]:
    """Put the story into a store and return what to tell, a line each.

    The story ends on the store's present day. Members who are there already stay as they are,
    so loading it again changes nothing.

    Raises
    ------
    InputError
        When somebody who is not made up has one of the names.
    """
    told = [
        "Demo data: these people and all their readings are made up. "
        "They are members of an allotment garden who log their shoulders between plantings."
    ]
    here = {person.id for person in store.people()}
    names = {person.pseudonym.casefold() for person in store.people()}
    now = store.now()
    for member, line in _members(now):
        person = member.person
        if person.id in here:
            told.append(f"{person.pseudonym}: here already, left as it is.")
            continue
        if person.pseudonym.casefold() in names:
            raise InputError(
                f"Somebody else is called {person.pseudonym} already, so the demo story cannot be "
                "loaded. Rename that person first."
            )
        store.merge(history_of(member, now))
        told.append(f"{person.pseudonym}: {line}")
    told.append("See them with: thawline progress demo-Marigold   or in the window.")
    return told


def story_histories(now: Timestamp) -> tuple[History, ...]:
    """Return the members' histories as they would be loaded at that moment."""
    return tuple(history_of(member, now) for member, _ in _members(now))


def _members(now: Timestamp) -> tuple[tuple[Member, str], ...]:
    first = now.day - dt.timedelta(days=7 * WEEKS)
    return (
        (_gaining(first), "gaining: a stiff left shoulder that comes back, quickly at first."),
        (_stalled(first), "stalled: a right shoulder that gained and then stood still."),
        (_turning(first), "losing, then gaining after an injection in week 10."),
        (_beginner(now.day), "too little data: a few sessions only."),
    )


def _gaining(first: dt.date) -> Member:
    way = _Way((0, 5, 10, 20), (0.05, 0.25, 0.45, 0.75))
    return Member(
        person=_person("demo-Marigold", Side.LEFT, "2026-02", Onset.GRADUAL),
        seed=11,
        first=first,
        truth=_truth(way.at),
        pain=_Way((0, 6, 20), (6.0, 3.0, 1.0)).at,
        plan=_plan("demo-Marigold", first, Stretch.TABLE_SLIDE_FORWARD, Stretch.EXTERNAL_ROTATION),
        diligence=0.8,
        happenings=(
            Happening(week=8, kind=EventKind.OTHER, note="First potatoes lifted with both hands."),
        ),
    )


def _stalled(first: dt.date) -> Member:
    way = _Way((0, 8, 20), (0.1, 0.36, 0.38))
    return Member(
        person=_person("demo-Bramble", Side.RIGHT, "2025-11", Onset.ARM_KEPT_STILL),
        seed=22,
        first=first,
        truth=_truth(way.at),
        pain=_Way((0, 10, 20), (5.0, 3.0, 3.0)).at,
        plan=_plan("demo-Bramble", first, Stretch.WALL_WALK, Stretch.TOWEL),
        diligence=0.55,
    )


def _turning(first: dt.date) -> Member:
    way = _Way((0, 10, 14, 20), (0.45, 0.05, 0.3, 0.62))
    return Member(
        person=_person("demo-Thistle", Side.LEFT, "2026-05", Onset.GRADUAL),
        seed=33,
        first=first,
        truth=_truth(way.at),
        pain=_Way((0, 10, 12, 20), (5.0, 8.0, 3.0, 2.0)).at,
        plan=_plan("demo-Thistle", first, Stretch.PENDULUM, Stretch.CROSS_BODY),
        diligence=0.7,
        happenings=(
            Happening(
                week=10,
                kind=EventKind.INJECTION,
                note="No measuring for a week, as told.",
                rest_day=7,
            ),
        ),
    )


def _beginner(today: dt.date) -> Member:
    way = _Way((0, 3), (0.3, 0.32))
    return Member(
        person=_person("demo-Clover", Side.RIGHT, "2026-09", None),
        seed=44,
        first=today - dt.timedelta(days=16),
        truth=_truth(way.at),
        pain=_Way((0, 3), (4.0, 4.0)).at,
        plan=None,
        diligence=0.0,
    )


def _truth(share: Callable[[float], float]) -> Callable[[Movement, float, bool], float]:
    def truth(movement: Movement, week: float, affected: bool) -> float:
        healthy, stiff = _HEALTHY[movement], _STIFF[movement]
        return stiff + share(week) * (healthy - stiff) if affected else healthy

    return truth


def _person(name: str, affected: Side, since: str, onset: Onset | None) -> Person:
    return Person(
        id=made_id(name),
        pseudonym=name,
        affected=(affected,),
        dominant=Side.RIGHT,
        since=since,
        onset=onset,
        demo=True,
    )


def _plan(name: str, first: dt.date, *stretches: Stretch) -> Plan:
    return Plan(
        id=made_id(f"plan of {name}"),
        person_id=made_id(name),
        first_day=first,
        stretches=tuple(
            PlannedStretch(
                stretch=each, times_a_day=2, hold_s=0 if each is Stretch.PENDULUM else 15
            )
            for each in stretches
        ),
        pain_limit=4,
        chosen_by="made-up physiotherapist",
    )
