"""What is asked of the verdicts: courses, what is counted of them, and the goal of each.

A row follows people through one course; each person has three movements, each of which counts as a
course. Percentages are of courses unless a row speaks of people.
"""

import datetime as dt
import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS
from measure.progress.comparison import Scatter, baseline_block, change_between, recent_block
from measure.progress.current_verdict import CurrentVerdict, current_verdict
from measure.progress.person_evidence import PersonEvidence
from measure.progress.series import Series
from measure.progress.stall import stalled
from measure.progress.weekly_verdicts import Verdict
from measure.trend.sudden_loss import SuddenLoss, sudden_loss
from measure.trend.trend_line import DAYS_A_MONTH, fit_slope
from tests.bench.progress_deficits import deficit_coverage
from tests.bench.progress_people import (
    FIRST_DAY,
    MOVEMENTS_OF_ONE,
    Course,
    person_of,
    series_of,
)
from tests.bench.progress_rules import CHANGED, first_beside

#: The other side reaches so far in the courses of a stall, degrees.
OTHER_DEG = 160.0

MIX = Course(related=0.3, odd=0.1, missed=0.25, learning=5.0, clothes=3.0)

Figures = Mapping[str, float]
_Person = Sequence[tuple[Series, CurrentVerdict]]


def follow(series: Sequence[Series]) -> _Person:
    """Return each series of a person with its verdict a week after the last session."""
    today = _date(series[0].day[-1] + 7)
    person = PersonEvidence.of(series, today, MOVEMENTS_OF_ONE)
    return [(item, current_verdict(item, today, person)) for item in series]


def people_of(course: Course, people: int, seed: int) -> list[_Person]:
    """Return so many people of a course, followed to its end."""
    random = np.random.default_rng(seed)
    return [follow(person_of(course, random)) for _ in range(people)]


def false_changes(course: Course, people: int, seed: int) -> Figures:
    """Return the shares told of a gain or loss, of a gain, and of a turn; of courses and people."""
    everyone = people_of(course, people, seed)
    changed = np.array([[_first(item, CHANGED) for item in person] for person in everyone])
    gained = np.array(
        [[_first(item, (Verdict.GAINING,)) for item in person] for person in everyone]
    )
    turned = np.array([[verdict.turn is not None for _, verdict in person] for person in everyone])
    return {
        "one series": 100 * float(np.isfinite(changed).mean()),
        "within 12 weeks": 100 * float((changed <= 12).mean()),
        "a gain": 100 * float(np.isfinite(gained).mean()),
        "any of three movements": 100 * float(np.isfinite(changed).any(axis=1).mean()),
        "a turn": 100 * float(turned.mean()),
    }


def power(course: Course, people: int, seed: int) -> Figures:
    """Return the share told of the change by week 12, the median week, and the slope shown."""
    wanted = Verdict.GAINING if course.a_month > 0 else Verdict.LOSING
    everyone = [item for person in people_of(course, people, seed) for item in person]
    weeks = np.array([_first(item, (wanted,)) for item in everyone])
    return {"told by week 12": 100 * float((weeks <= 12).mean()), "median week": _median(weeks)}


def power_alone(course: Course, people: int, seed: int) -> Figures:
    """Return the same for people who measure one movement."""
    random = np.random.default_rng(seed)
    wanted = Verdict.GAINING if course.a_month > 0 else Verdict.LOSING
    weeks = np.array(
        [
            _first(follow(person_of(course, random, MOVEMENTS_OF_ONE[:1]))[0], (wanted,))
            for _ in range(3 * people)
        ]
    )
    return {"told by week 12": 100 * float((weeks <= 12).mean()), "median week": _median(weeks)}


def turns(course: Course, people: int, seed: int) -> Figures:
    """Return when a gain was withdrawn, and a loss told, in median weeks after the turn."""
    assert course.then is not None
    turned = course.then[0]
    gone, lost, inside = [], [], []
    for series, verdict in (item for person in people_of(course, people, seed) for item in person):
        weeks = [(check.day.toordinal() - float(series.day[0])) / 7 for check in verdict.checks]
        before = [said for week, said in zip(weeks, verdict.said, strict=True) if week <= turned]
        if before[-1] is not Verdict.GAINING:
            continue
        later = [
            (week - turned, said)
            for week, said in zip(weeks, verdict.said, strict=True)
            if week > turned
        ]
        gone.append(next((week for week, said in later if said is not Verdict.GAINING), math.inf))
        lost.append(next((week for week, said in later if said is Verdict.LOSING), math.inf))
        if verdict.turn is not None and not verdict.turn.sudden:
            day = FIRST_DAY + 7 * turned
            inside.append(verdict.turn.low.toordinal() <= day <= verdict.turn.high.toordinal())
    return {
        "gaining withdrawn": _median(np.array(gone)),
        "losing told": _median(np.array(lost)),
        "turn told, with its day in the interval": 100 * float(np.mean(inside or [math.nan])),
        "gaining at the turn": 100 * len(gone) / (3 * people),
    }


def sudden(course: Course, people: int, seed: int) -> Figures:
    """Return how soon a sudden loss is asked about and told, in sessions."""
    assert course.loss is not None
    random = np.random.default_rng(seed)
    asked, said = [], []
    for _ in range(people):
        for series in person_of(course, random):
            counted = series.counted()
            first = int(np.searchsorted(counted.day, FIRST_DAY + 7 * course.loss[0]))
            last = min(first + 6, len(counted))
            seen = [_loss(counted, k, course.related) for k in range(first + 1, last + 1)]
            asked.append(next((k + 1 for k, loss in enumerate(seen) if loss), math.inf))
            said.append(
                next((k + 1 for k, loss in enumerate(seen) if loss and loss.confirmed), math.inf)
            )
    return {
        "asked at the first session": 100 * float((np.array(asked) <= 1).mean()),
        "told within two sessions": 100 * float((np.array(said) <= 2).mean()),
        "told within four sessions": 100 * float((np.array(said) <= 4).mean()),
    }


def false_losses(course: Course, people: int, seed: int) -> Figures:
    """Return the shares of courses in which a sudden loss is told, or asked about, falsely."""
    random = np.random.default_rng(seed)
    asked = said = 0
    for _ in range(people):
        for series in person_of(course, random):
            counted = series.counted()
            seen = [_loss(counted, k, course.related) for k in range(10, len(counted) + 1)]
            asked += any(loss is not None for loss in seen)
            said += any(loss is not None and loss.confirmed for loss in seen)
    return {"told": 100 * said / (3 * people), "asked to measure again": 100 * asked / (3 * people)}


def stalls(course: Course, people: int, seed: int) -> Figures:
    """Return the share told of a stall within 26 weeks, and by which week half of them are."""
    weeks = []
    for series, verdict in (item for person in people_of(course, people, seed) for item in person):
        if series.movement is not MOVEMENTS_OF_ONE[0]:
            continue
        weeks.append(
            next(
                (
                    (check.day.toordinal() - float(series.day[0])) / 7
                    for check, said in zip(verdict.checks, verdict.said, strict=True)
                    if stalled(check, said, series.movement, 70.0, OTHER_DEG)
                ),
                math.inf,
            )
        )
    return {
        "stalled": 100 * float(np.isfinite(weeks).mean()),
        "median week": _median(np.array(weeks)),
    }


def coverage(course: Course, people: int, seed: int) -> Figures:
    """Return how often the 95 % intervals of slope and change hold the truth, after 12 weeks."""
    slopes, changes = [], []
    for person in people_of(course, people, seed):
        for series, verdict in person:
            counted = series.counted()
            if verdict.checks[-1].slope is None:
                continue
            low, high = verdict.checks[-1].slope.interval_per_month()
            if verdict.turn is None:
                slopes.append(low <= course.a_month <= high)
            usual = MOVEMENTS[series.movement].usual_spread
            line = fit_slope(counted.day, counted.value, usual)
            assert line is not None
            line = line.allowing_for(verdict.checks[-1].slope.related)
            scatter = Scatter(
                spread=line.spread,
                related=line.related,
                degrees_of_freedom=line.degrees_of_freedom,
            )
            before, after = baseline_block(counted, scatter), recent_block(counted, scatter)
            change = change_between(before, after)
            assert change is not None
            chosen = [
                course.truth(counted.day - FIRST_DAY)[part].mean()
                for part in (slice(before.days), slice(-after.days, None))
            ]
            changes.append(change.low <= chosen[1] - chosen[0] <= change.high)
    return {"slope": 100 * float(np.mean(slopes)), "change": 100 * float(np.mean(changes))}


def first_shown(course: Course, people: int, seed: int) -> Figures:
    """Return the mean slope of the line, and as it is shown, when a gain is first told."""
    raw, shown = [], []
    for person in people_of(course, people, seed):
        for series, verdict in person:
            for check, said in zip(verdict.checks, verdict.said, strict=True):
                if said is Verdict.GAINING and check.slope is not None:
                    usual = MOVEMENTS[series.movement].usual_spread
                    raw.append(check.slope.per_month)
                    shown.append(check.slope.shrunk(usual)[0] * DAYS_A_MONTH)
                    break
    return {"line": float(np.mean(raw)), "shown": float(np.mean(shown))}


def moved(course: Course, people: int, seed: int) -> Figures:
    """Return the share told of a change, with a look at the other shoulder and without."""
    random = np.random.default_rng(seed)
    other = replace(course, a_week=1, a_month=0.0)
    weeks = [
        first_beside(series_of(course, random), series_of(other, random, Side.RIGHT))
        for _ in range(people)
    ]
    compared, alone = 100 * np.isfinite(np.array(weeks)).mean(axis=0)
    return {"told, compared": float(compared), "told, not compared": float(alone)}


def _loss(counted: Series, sessions: int, related: float) -> SuddenLoss | None:
    usual = MOVEMENTS[counted.movement].usual_spread
    return sudden_loss(counted.day[:sessions], counted.value[:sessions], usual, related)


def _first(item: tuple[Series, CurrentVerdict], wanted: Sequence[Verdict]) -> float:
    series, verdict = item
    for check, said in zip(verdict.checks, verdict.said, strict=True):
        if said in wanted:
            return (check.day.toordinal() - float(series.day[0])) / 7
    return math.inf


def _median(values: np.ndarray) -> float:
    """Return the value by which half of all were told; infinite where fewer ever were."""
    return float(np.sort(values)[(len(values) - 1) // 2]) if len(values) else math.nan


def _date(day: float) -> dt.date:
    return dt.date.fromordinal(round(float(day)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One row of the table: what is counted of which course, and what is wanted of it."""

    words: str
    count: Callable[[Course, int, int], Figures]
    course: Course
    goals: Mapping[str, str]


_HALF_YEAR = Course(weeks=26)
_REVERSED = Course(a_month=10, then=(12, -10), weeks=24)
ROWS = (
    Row(
        words="flat, independent, 26 weeks",
        count=false_changes,
        course=_HALF_YEAR,
        goals={"one series": "<= 3", "any of three movements": "<= 5", "a turn": "<= 1.5"},
    ),
    Row(
        words="flat, autocorrelation 0.3, 26 weeks",
        count=false_changes,
        course=replace(_HALF_YEAR, related=0.3),
        goals={"one series": "<= 6", "any of three movements": "<= 10", "a turn": "<= 5"},
    ),
    Row(
        words="flat, half of the days' variance common to the movements, 26 weeks",
        count=false_changes,
        course=replace(_HALF_YEAR, shared=0.5),
        goals={},
    ),
    Row(
        words="flat, 8° learned over 3 sessions, 26 weeks",
        count=false_changes,
        course=replace(_HALF_YEAR, learning=8, learning_sessions=3),
        goals={"one series": "<= 3"},
    ),
    Row(
        words="flat, 8° learned, 63 % in two sessions, 26 weeks",
        count=false_changes,
        course=replace(_HALF_YEAR, learning=8),
        goals={},
    ),
    Row(
        words="flat, realistic mix, 26 weeks",
        count=false_changes,
        course=replace(MIX, weeks=26),
        goals={"one series": "<= 8"},
    ),
    Row(
        words="5° a month, 26 weeks",
        count=false_changes,
        course=replace(_HALF_YEAR, a_month=5),
        goals={"a turn": "<= 1.5"},
    ),
    Row(
        words="5° a month, autocorrelation 0.3, 26 weeks",
        count=false_changes,
        course=replace(_HALF_YEAR, a_month=5, related=0.3),
        goals={"a turn": "<= 5"},
    ),
    Row(
        words="5° a month",
        count=power,
        course=Course(a_month=5),
        goals={"told by week 12": ">= 95"},
    ),
    Row(
        words="5° a month, heavy tails, 10 % read 20° low",
        count=power,
        course=Course(a_month=5, heavy=True, odd=0.1),
        goals={"told by week 12": ">= 95"},
    ),
    Row(
        words="5° a month, autocorrelation 0.3",
        count=power,
        course=Course(a_month=5, related=0.3),
        goals={"told by week 12": ">= 85"},
    ),
    Row(
        words="5° a month, 10 % read 20° low",
        count=power,
        course=Course(a_month=5, odd=0.1),
        goals={},
    ),
    Row(
        words="5° a month, realistic mix",
        count=power,
        course=replace(MIX, a_month=5),
        goals={},
    ),
    Row(words="10° a month", count=power, course=Course(a_month=10), goals={}),
    Row(
        words="5° a month, one movement alone",
        count=power_alone,
        course=Course(a_month=5),
        goals={},
    ),
    Row(
        words="10° a month for 12 weeks, then 10° lost a month",
        count=turns,
        course=_REVERSED,
        goals={"gaining withdrawn": "<= 4", "losing told": "<= 8"},
    ),
    Row(
        words="10° a month for 12 weeks, then level",
        count=turns,
        course=replace(_REVERSED, then=(12, 0)),
        goals={"gaining withdrawn": "<= 6"},
    ),
    Row(
        words="the same, autocorrelation 0.3",
        count=turns,
        course=replace(_REVERSED, then=(12, 0), related=0.3),
        goals={},
    ),
    Row(
        words="flat, then 20° lost at once in week 12",
        count=sudden,
        course=Course(loss=(12, 20), weeks=15),
        goals={"told within two sessions": ">= 85"},
    ),
    Row(
        words="5° a month, then 20° lost at once in week 12",
        count=sudden,
        course=Course(a_month=5, loss=(12, 20), weeks=15),
        goals={"told within two sessions": ">= 85"},
    ),
    Row(
        words="flat, 26 weeks: false sudden losses",
        count=false_losses,
        course=_HALF_YEAR,
        goals={"told": "<= 1"},
    ),
    Row(
        words="realistic mix, 26 weeks: false sudden losses",
        count=false_losses,
        course=replace(MIX, weeks=26),
        goals={"told": "<= 5"},
    ),
    Row(
        words="flat, one session a week: stalled",
        count=stalls,
        course=replace(_HALF_YEAR, a_week=1),
        goals={"median week": "<= 11"},
    ),
    Row(
        words="5° a month, one session a week: stalled",
        count=stalls,
        course=replace(_HALF_YEAR, a_week=1, a_month=5),
        goals={"stalled": "<= 10"},
    ),
    Row(
        words="5° a month, three sessions a week: stalled",
        count=stalls,
        course=replace(_HALF_YEAR, a_month=5),
        goals={"stalled": "<= 10"},
    ),
    Row(
        words="deficit to the other side, flat",
        count=deficit_coverage,
        course=Course(),
        goals={"difference now": ">= 93", "share now": ">= 93"},
    ),
    Row(
        words="deficit to the other side, 5° a month, autocorrelation 0.3",
        count=deficit_coverage,
        course=Course(a_month=5, related=0.3),
        goals={"difference now": ">= 92", "share now": ">= 92"},
    ),
    Row(
        words="deficit to the other side, realistic mix",
        count=deficit_coverage,
        course=replace(MIX, a_month=5),
        goals={},
    ),
    Row(
        words="intervals, flat",
        count=coverage,
        course=Course(),
        goals={"slope": "93 to 97", "change": "93 to 97"},
    ),
    Row(
        words="intervals, 5° a month, autocorrelation 0.3",
        count=coverage,
        course=Course(a_month=5, related=0.3),
        goals={"slope": ">= 92", "change": ">= 92"},
    ),
    Row(
        words="intervals, realistic mix",
        count=coverage,
        course=MIX,
        goals={"slope": ">= 88", "change": ">= 88"},
    ),
    Row(
        words="camera moved halfway, both sides read 12° more, the other side compared",
        count=moved,
        course=Course(step=12),
        goals={},
    ),
    Row(
        words="5° a month: slope when a gain is first told",
        count=first_shown,
        course=Course(a_month=5),
        goals={},
    ),
)
