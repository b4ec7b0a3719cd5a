"""Whether a session was before or after exercises, as stated or as the exercise log shows."""

import datetime as dt
from collections.abc import Iterable

from measure.domain.home_programme_records import ExerciseLog
from measure.domain.records import SessionRecord
from measure.domain.session_facts import ExerciseTiming
from measure.system.clock import Timestamp

#: Minutes after an exercise within which a measurement counts as taken after exercises: warmth and
#: stretch of the tissue wear off within about an hour. [project]
AFTER_WITHIN_MIN = 60


def follows_exercises(moment: Timestamp, exercises_done: Iterable[ExerciseLog]) -> bool:
    """Return whether an exercise was logged in the hour before a moment."""
    within = dt.timedelta(minutes=AFTER_WITHIN_MIN)
    return any(dt.timedelta() <= moment.utc - log.done.utc <= within for log in exercises_done)


def timing_of(
    session: SessionRecord, exercises_done: Iterable[ExerciseLog]
) -> ExerciseTiming | None:
    """Return whether a session was before or after exercises, or None where nothing says so.

    What was stated holds; a session that says nothing was after them where the log shows some in
    the hour before.
    """
    if session.state.timing is not None:
        return session.state.timing
    return ExerciseTiming.AFTER if follows_exercises(session.started, exercises_done) else None
