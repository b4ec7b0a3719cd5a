"""Course of pain over sessions: whether it is high, and whether it rose. Pure statistics."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from measure.domain.records import SessionRecord

#: Median rating of pain at rest or at night from which on it is reported, of 10. [project]
HIGH_PAIN = 7
#: Days over which pain ratings are taken together. [project]
PAIN_DAY = 14
#: Fewest ratings that are taken together. [project]
PAIN_LEAST = 3
#: Least days between the first and the last of them. [project]
PAIN_LEAST_SPAN_DAY = 7
#: Points by which pain must be higher than in the weeks before; the smallest change that matters
#: is 2.17 points (Michener 2011). [project]
MORE_PAIN = 2.0
#: Days before with whose ratings the latest are compared. [project]
PAIN_BEFORE_DAY = 42


@dataclass(frozen=True, slots=True, kw_only=True)
class HighPain:
    """Median rating at rest or at night of the latest sessions, and their number."""

    rating: float
    sessions: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MorePain:
    """Typical worst pain in 24 hours of the latest sessions, and of the weeks before."""

    now: float
    before: float


def high_pain(sessions: Sequence[SessionRecord], today: dt.date) -> HighPain | None:
    """Return the pain at rest or at night of the last two weeks where it is high, or None."""
    nightly = [
        (ago, max(ratings))
        for ago, session in _until(sessions, today)
        if ago < PAIN_DAY
        if (ratings := [r for r in (session.pain.rest, session.pain.night) if r is not None])
    ]
    if not _enough(nightly):
        return None
    middle = median(rating for _, rating in nightly)
    return HighPain(rating=middle, sessions=len(nightly)) if middle >= HIGH_PAIN else None


def more_pain(sessions: Sequence[SessionRecord], today: dt.date) -> MorePain | None:
    """Return how the worst pain in 24 hours rose in the last two weeks, or None."""
    worst = [
        (ago, session.pain.worst_24h)
        for ago, session in _until(sessions, today)
        if session.pain.worst_24h is not None
    ]
    lately = [(ago, rating) for ago, rating in worst if ago < PAIN_DAY]
    before = [(ago, rating) for ago, rating in worst if 0 <= ago - PAIN_DAY < PAIN_BEFORE_DAY]
    if not (_enough(lately) and _enough(before)):
        return None
    now, then = median(r for _, r in lately), median(r for _, r in before)
    return MorePain(now=now, before=then) if now - then >= MORE_PAIN else None


def _until(sessions: Sequence[SessionRecord], today: dt.date) -> list[tuple[int, SessionRecord]]:
    """Return the sessions up to a day, with how many days ago they were."""
    ago = [((today - session.started.day).days, session) for session in sessions]
    return [(days, session) for days, session in ago if days >= 0]


def _enough(ratings: Sequence[tuple[int, int]]) -> bool:
    """Return whether there are enough ratings, over enough days; each is (days ago, rating)."""
    if len(ratings) < PAIN_LEAST:
        return False
    days_ago = [ago for ago, _ in ratings]
    return max(days_ago) - min(days_ago) >= PAIN_LEAST_SPAN_DAY
