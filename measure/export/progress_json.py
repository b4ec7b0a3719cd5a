"""A person's progress on a day as JSON: what the progress page shows, as data.

Described field by field in measure/docs/progress-json.md.
"""

import datetime as dt
import json
from collections.abc import Callable
from typing import Any, TypeVar

from measure.domain.movements import MOVEMENTS
from measure.domain.records import LimitingFactor, Person
from measure.progress.before_after import BeforeAfter
from measure.progress.clinician_prompts import Prompt
from measure.progress.comparison import Block, Change
from measure.progress.current_verdict import Turn
from measure.progress.detectable_gain import POWER, TimeToKnow
from measure.progress.home_programme import ProgrammeDone
from measure.progress.movement_ends import MonthEnds
from measure.progress.overview import Progress
from measure.progress.phases import SeriesPhase
from measure.progress.sentences import (
    change_sentence,
    effect_sentence,
    setup_sentence,
    shown_change,
    slope_sentence,
    told_since,
    unproven,
    verdict_words,
    visit_sentence,
    when_known_sentence,
)
from measure.progress.series import Series
from measure.progress.shoulder import SideProgress
from measure.progress.side_deficit import Pattern, Share, SideDeficit
from measure.progress.side_wording import deficit_sentence, end_times_words, pattern_sentence
from measure.trend.event_effect import EffectEstimate
from measure.trend.sudden_loss import SuddenLoss

FORMAT = "thawline-progress"
#: Version of the format; rises when a reader of the former one would misread the data. [technical]
SCHEMA = 3

_Data = dict[str, Any]
_Value = TypeVar("_Value")


def progress_json(person: Person, progress: Progress, notice: str) -> str:
    """Return a person's progress as indented JSON, its members always in the same order."""
    data = progress_data(person, progress, notice)
    return json.dumps(data, ensure_ascii=False, indent=2, allow_nan=False)


def progress_data(person: Person, progress: Progress, notice: str) -> _Data:
    """Return a person's progress as lists, objects, texts and numbers; None for what is not known.

    Parameters
    ----------
    notice
        What the numbers are not, for whoever reads them elsewhere.
    """
    return {
        "format": FORMAT,
        "schema": SCHEMA,
        "person": person.pseudonym,
        "demo": person.demo,
        "day": progress.today.isoformat(),
        "notice": notice,
        "movements": [_side(side) for side in progress.sides],
        "prompts": [_prompt(prompt) for prompt in progress.prompts],
        "home_programme": [
            {
                "monday": week.monday.isoformat(),
                "planned": week.planned,
                "done": week.done,
                "in_part": week.in_part,
                "days": week.days,
            }
            for week in progress.programme_weeks
            if week.planned
        ],
        "exercises_done": _or_none(progress.programme_done, _programme_done),
        "dominant": progress.dominant.value if progress.dominant else None,
        "pattern": _or_none(progress.pattern, _pattern),
        "ends": [_ends(month) for month in progress.ends],
    }


def _programme_done(done: ProgrammeDone) -> _Data:
    return {
        "since": done.since.isoformat(),
        "exercises": [
            {
                "exercise": item.exercise.name,
                "planned": item.planned,
                "done": item.done,
                "in_part": item.in_part,
                "held_s": item.held_s,
                "without_repetitions": item.uncounted,
            }
            for item in done.exercises
        ],
    }


def _side(side: SideProgress) -> _Data:
    return {
        "movement": side.movement.value,
        "side": side.side.value,
        "affected": side.affected,
        "primary": side.primary,
        "help": side.conduct.help.value,
        "posture": side.conduct.posture.value,
        "usual": side.usual,
        "unit": MOVEMENTS[side.movement].unit.value,
        **_verdict(side),
        "baseline": _block(side.baseline),
        "recent": _block(side.recent),
        "change": _or_none(
            side.change,
            lambda change: (
                _change(change)
                | {"unproven": unproven(side, change), "text": change_sentence(side)}
            ),
        ),
        "since_visit": _or_none(
            side.since_visit,
            lambda since: (
                {"day": since.day.isoformat()}
                | _change(since.change)
                | {"text": visit_sentence(side)}
            ),
        ),
        "events": [_event(side, compared) for compared in side.events],
        "when_known": _or_none(side.time_to_know, lambda answer: _when_known(side, answer)),
        "other_side": _or_none(side.other, _block),
        "short_by": side.short_by,
        "deficit": _or_none(side.deficit, lambda deficit: _deficit(side, deficit)),
        "set_up_drifted_by": side.drifted_by,
        "set_up_change": _or_none(
            side.setup_change,
            lambda change: {
                "nearer": change.nearer,
                "turned_deg": change.turned_deg,
                "leaning_deg": change.leaning_deg,
                "effect": change.effect,
                "text": setup_sentence(side),
            },
        ),
        "spread": side.spread,
        "spread_is_own": side.own_spread,
        "earlier": [_phase(phase) for phase in side.earlier],
        "milestones": [
            {
                "task": milestone.task.words,
                "range": milestone.task.range_words,
                "reached": milestone.reached,
            }
            for milestone in side.milestones
        ],
        "breaks": [
            {"day": point.day.isoformat(), "why": point.why, "set_up": point.setup}
            for point in side.series.breaks
        ],
        "readings": _readings(side.series),
    }


def _verdict(side: SideProgress) -> _Data:
    current = side.current
    return {
        "verdict": side.verdict.value,
        "verdict_text": verdict_words(side),
        "since": _day(told_since(side)),
        "as_of": _day(current.as_of),
        "expires": _day(current.expires),
        "lapsed": _or_none(current.lapsed, lambda verdict: verdict.value),
        "turn": _or_none(current.turn, _turn),
        "sudden_loss": _or_none(side.sudden_loss, _loss),
        "slope": _or_none(
            current.shown if shown_change(side) else None,
            lambda shown: {
                "per_month": shown.per_month,
                "low": shown.low,
                "high": shown.high,
                "shrunk": shown.shrunk,
                "text": slope_sentence(side),
            },
        ),
    }


def _turn(turn: Turn) -> _Data:
    return {
        "day": turn.day.isoformat(),
        "low": turn.low.isoformat(),
        "high": turn.high.isoformat(),
        "before": turn.before.value,
        "shown_on": turn.shown_on.isoformat(),
        "sudden": turn.sudden,
        "by": turn.by,
    }


def _loss(loss: SuddenLoss) -> _Data:
    return {
        "first_day": loss.first_day.isoformat(),
        "by": loss.by,
        "sessions": loss.sessions,
        "confirmed": loss.confirmed,
    }


def _event(side: SideProgress, compared: BeforeAfter) -> _Data:
    event, effect = compared.event, compared.effect
    return {
        "what": event.what,
        "day": event.day.isoformat(),
        "side": _or_none(event.side, lambda concerned: concerned.value),
        "change_since": _estimate(effect.change_since),
        "step": _estimate(effect.step),
        "slope_before": _estimate(effect.slope_before),
        "slope_after": _estimate(effect.slope_after),
        "days_before": effect.days_before,
        "days_after": effect.days_after,
        "text": effect_sentence(compared, side.movement),
    }


def _estimate(estimate: EffectEstimate) -> _Data:
    return {
        "value": estimate.value,
        "low": estimate.low,
        "high": estimate.high,
        "mostly_assumed": estimate.mostly_assumed,
    }


def _when_known(side: SideProgress, answer: TimeToKnow) -> _Data:
    return {
        "chance": POWER,
        "sessions_a_week": answer.sessions_a_week,
        "gains": [{"per_month": gain.per_month, "weeks": gain.weeks} for gain in answer.gains],
        "other_rhythms": [
            {"sessions_a_week": rhythm, "weeks": weeks} for rhythm, weeks in answer.other_rhythms
        ],
        "text": when_known_sentence(side),
    }


def _phase(phase: SeriesPhase) -> _Data:
    return {
        "first": phase.first.isoformat(),
        "last": phase.last.isoformat(),
        "ended": phase.ended.isoformat(),
        "ended_by": phase.ended_by,
        "verdict": phase.verdict.value,
        "slope_per_month": phase.slope.per_month if phase.slope else None,
        "slope_interval": list(phase.slope.interval_per_month()) if phase.slope else None,
    }


def _readings(series: Series) -> list[_Data]:
    columns = (series.value, series.low, series.high)
    return [
        {
            "day": series.date(k).isoformat(),
            **{
                name: float(column[k])
                for name, column in zip(("value", "low", "high"), columns, strict=True)
            },
            "practice": bool(series.practice[k]),
        }
        for k in range(len(series))
    ]


def _prompt(prompt: Prompt) -> _Data:
    return {
        "kind": prompt.kind.value,
        "movements": [movement.value for movement in prompt.movements],
        "side": _or_none(prompt.side, lambda side: side.value),
        "text": prompt.text,
    }


def _block(block: Block) -> _Data:
    return {
        "value": block.value,
        "low": block.low,
        "high": block.high,
        "days": block.days,
        "first": block.first.isoformat(),
        "last": block.last.isoformat(),
    }


def _change(change: Change) -> _Data:
    return {"value": change.value, "low": change.low, "high": change.high}


def _day(day: dt.date | None) -> str | None:
    return None if day is None else day.isoformat()


def _deficit(side: SideProgress, deficit: SideDeficit) -> _Data:
    return {
        **_change(deficit.now.difference),
        "share": _or_none(deficit.now.share, _share),
        "text": deficit_sentence(deficit.now, side.movement),
        "months": [
            {"month": f"{item.month:%Y-%m}"}
            | _change(item.deficit.difference)
            | {"share": _or_none(item.deficit.share, _share)}
            for item in deficit.months
        ],
    }


def _share(share: Share) -> _Data:
    return {"percent": share.percent, "low": share.low, "high": share.high}


def _pattern(pattern: Pattern) -> _Data:
    return {
        "side": pattern.side.value,
        "shares": [{"movement": movement} | _share(share) for movement, share in pattern.shares],
        "smallest": pattern.smallest,
        "text": pattern_sentence(pattern),
    }


def _ends(month: MonthEnds) -> _Data:
    return {
        "month": f"{month.month:%Y-%m}",
        "times": {kind.value: month.times.get(kind, 0) for kind in LimitingFactor},
        "text": end_times_words(month),
    }


def _or_none(value: _Value | None, data: Callable[[_Value], Any]) -> Any:
    return None if value is None else data(value)
