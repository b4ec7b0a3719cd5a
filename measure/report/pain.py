"""Pain in the report: the latest answers, the highest one with its day, and what was too much."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

from measure.domain.landmarks import Side
from measure.domain.records import History, LimitingFactor, MeasurementRecord
from measure.progress.dates import date_words
from measure.progress.home_programme import HIGH_PAIN, plan_on
from measure.progress.sentences import short_name
from measure.progress.side_wording import END_WORDS
from measure.progress.wording import Translate

#: Days up to today in which the highest pain is sought. [project]
HIGHEST_DAY = 28
#: Days up to today in which pain that was too much is a point to check. [project]
TOO_MUCH_DAY = 14


@dataclass(frozen=True, slots=True)
class _Answer:
    """A rating of pain, and of what."""

    rating: int
    day: dt.date
    what: str


def latest_pain(history: History, today: dt.date, tr: Translate) -> str:
    """Return the latest day with answers on pain, and them; nothing where there was none."""
    answered = [answer.day for answer in _answers(history, today, tr)]
    answered += [
        record.taken.day
        for record in history.measurements
        if record.stopped_by is not None and record.taken.day <= today
    ]
    if not answered:
        return ""
    day = max(answered)
    sessions = [session.pain for session in history.sessions if session.started.day == day]
    parts = []
    for template, ratings in (
        (tr("at rest {rating}"), [pain.rest for pain in sessions]),
        (tr("at night {rating}"), [pain.night for pain in sessions]),
        (tr("worst in 24 hours {rating}"), [pain.worst_24h for pain in sessions]),
    ):
        given = [rating for rating in ratings if rating is not None]
        if given:
            parts.append(template.format(rating=given[-1]))
    affected = history.person.affected or tuple(Side)
    records = [
        record
        for record in history.measurements
        if record.taken.day == day and record.measurement.side in affected
    ]
    parts += _during(records, tr)
    done = [log.pain for log in history.exercises_done if log.done.day == day]
    if hurt := [rating for rating in done if rating is not None]:
        parts.append(tr("in exercises up to {rating}").format(rating=max(hurt)))
    return tr("Latest answers, {day}: {answers}.").format(
        day=date_words(day, tr), answers="; ".join(parts)
    )


def _during(records: Sequence[MeasurementRecord], tr: Translate) -> list[str]:
    """Return the highest pain during the movements of a day, and what stopped which of them."""
    parts = []
    one_side = len({record.measurement.side for record in records}) == 1
    rated = [(record.pain_during, record) for record in records if record.pain_during is not None]
    if rated:
        highest, record = max(rated, key=lambda pair: pair[0])
        parts.append(
            tr("during movement up to {rating}, {movement}").format(
                rating=highest, movement=(_name if one_side else _movement)(record, tr)
            )
        )
    for cause in LimitingFactor:
        stopped = dict.fromkeys(
            _name(record, tr) if one_side else _movement(record, tr)
            for record in records
            if record.stopped_by is cause
        )
        if stopped:
            words = tr("stopped by {what}: {movements}")
            parts.append(words.format(what=tr(END_WORDS[cause]), movements=", ".join(stopped)))
    return parts


def highest_pain(history: History, today: dt.date, tr: Translate) -> str:
    """Return the highest pain of the last weeks with its day and of what.

    Nothing without any, and where it is among the latest answers, which say it.
    """
    answers = _answers(history, today, tr)
    answer = _highest(answers, today, HIGHEST_DAY)
    if answer is None or answer.day == max(given.day for given in answers):
        return ""
    return tr("Highest in {weeks} weeks: {rating} on {day}, {what}.").format(
        weeks=HIGHEST_DAY // 7,
        rating=answer.rating,
        day=date_words(answer.day, tr),
        what=answer.what,
    )


def too_much_pain(history: History, today: dt.date, tr: Translate) -> str:
    """Return the highest pain during movement or exercise that was too much lately, or nothing."""
    moving, exercising = _of_movements(history, tr), _of_exercises(history, tr)
    much = [answer for answer in moving if answer.rating >= HIGH_PAIN and answer.day <= today]
    much += [
        answer
        for answer in exercising
        if answer.rating >= min(HIGH_PAIN, _limit(history, answer.day) or HIGH_PAIN)
        and answer.day <= today
    ]
    answer = _highest(much, today, TOO_MUCH_DAY)
    if answer is None:
        return ""
    words = tr("pain {rating} of 10 {what} on {day}")
    limit = _limit(history, answer.day)
    if answer in exercising and limit is not None and limit <= answer.rating:
        words = tr("pain {rating} of 10 {what} on {day} (the programme stops at {limit})")
    return words.format(
        rating=answer.rating, what=answer.what, day=date_words(answer.day, tr), limit=limit
    )


def _limit(history: History, day: dt.date) -> int | None:
    """Return the rating at which the programme of a day stops, or None without a programme."""
    plan = plan_on(history.plans, day)
    return plan.pain_limit if plan is not None and plan.exercises else None


def _highest(answers: Sequence[_Answer], today: dt.date, days: int) -> _Answer | None:
    """Return the highest of the answers of so many days up to today, the latest of equals."""
    lately = [answer for answer in answers if (today - answer.day).days < days]
    return max(lately, key=lambda answer: (answer.rating, answer.day), default=None)


def _answers(history: History, today: dt.date, tr: Translate) -> list[_Answer]:
    """Return every rating up to a day."""
    before = [
        _Answer(rating, session.started.day, what)
        for session in history.sessions
        for what, rating in (
            (tr("worst in 24 hours"), session.pain.worst_24h),
            (tr("at night"), session.pain.night),
            (tr("at rest"), session.pain.rest),
        )
        if rating is not None
    ]
    every = (*before, *_of_movements(history, tr), *_of_exercises(history, tr))
    return [answer for answer in every if answer.day <= today]


def _of_movements(history: History, tr: Translate) -> list[_Answer]:
    return [
        _Answer(
            record.pain_during,
            record.taken.day,
            tr("during {movement}").format(movement=_movement(record, tr)),
        )
        for record in history.measurements
        if record.pain_during is not None
    ]


def _of_exercises(history: History, tr: Translate) -> list[_Answer]:
    return [
        _Answer(
            log.pain,
            log.done.day,
            tr("in the exercise {exercise}").format(exercise=tr(log.exercise.name)),
        )
        for log in history.exercises_done
        if log.pain is not None
    ]


def _movement(record: MeasurementRecord, tr: Translate) -> str:
    """Return the movement and side of a measurement, in a sentence."""
    side = tr(record.measurement.side.value)
    return tr("{movement} ({side})").format(movement=_name(record, tr), side=side)


def _name(record: MeasurementRecord, tr: Translate) -> str:
    return short_name(record.measurement.movement, tr).lower()
