"""What people brought in themselves: goals in their own words, a clinician's typed-in values."""

from html import escape

from measure.domain.goal_records import open_goals, ratings_of
from measure.domain.movements import MOVEMENTS
from measure.domain.records import History
from measure.domain.session_facts import ClinicianMethod
from measure.progress.dates import date_words
from measure.progress.wording import Translate, number_words

#: Words of the methods by which a clinician takes a value.
METHOD_WORDS = {
    ClinicianMethod.GONIOMETER: "active {value}°",
    ClinicianMethod.PASSIVE: "passive {value}°",
}


def goal_words(history: History, tr: Translate) -> str:
    """Return the open goals with their first and latest rating, as HTML, or nothing."""
    parts = []
    for goal in open_goals(history.goals):
        ratings = ratings_of(goal, history.goal_ratings)
        words = tr("“{words}”").format(words=goal.words)
        for rating in dict.fromkeys((ratings[0], ratings[-1]) if ratings else ()):
            words += tr(", {rating} of 10 on {day}").format(
                rating=rating.rating, day=date_words(rating.day, tr)
            )
        parts.append(words)
    if not parts:
        return ""
    return escape(tr("Wants to do again: {goals}.").format(goals="; ".join(parts)))


def by_hand_words(history: History, tr: Translate) -> str:
    """Return the values that a clinician typed in last, as HTML, or nothing."""
    sessions = [session for session in history.sessions if session.clinician_values]
    if not sessions:
        return ""
    values = "; ".join(
        tr("{movement}, {side}: {words}").format(
            movement=tr(MOVEMENTS[value.movement].name),
            side=tr(value.side.value),
            words=tr(METHOD_WORDS[value.method]).format(value=number_words(value.value_deg, 0, tr)),
        )
        for value in sessions[-1].clinician_values
    )
    day = date_words(sessions[-1].started.day, tr)
    return escape(tr("Measured by hand on {day}: {values}.").format(day=day, values=values))
