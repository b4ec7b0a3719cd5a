"""Stall: a gain worth having is ruled out while a side is still short. Pure statistics."""

from measure.domain.movements import Movement
from measure.progress.weekly_verdicts import Verdict, WeeklyCheck
from measure.trend.evidence_limits import stall_limit

#: Gain in degrees a month that must be ruled out before a stall. [project]
STALL_BELOW_DEG = 5.0
#: Fewest weeks, and fewest days with a measurement, by which to judge a stall. [project]
STALL_LEAST_WEEKS, STALL_LEAST_DAYS = 8.0, 6
#: A side short of the other by more than this is still short, degrees. [project]
STALL_SHORT_DEG = 15.0
#: A side short of the other by more than this share of its level is still short. [project]
STALL_SHORT_SHARE = 0.2
#: The movements for which a stall is reported.
STALLING = (Movement.FLEXION, Movement.EXTERNAL_ROTATION)

#: Verdicts beside which a stall is not told.
_CLEAR = (Verdict.GAINING, Verdict.LOSING, Verdict.LIKELY_LOSING)


def stalled(
    check: WeeklyCheck, verdict: Verdict, movement: Movement, short_by: float, other: float
) -> bool:
    """Return whether a gain worth having is ruled out by the whole line since the latest turn.

    Parameters
    ----------
    check
        The latest weekly check.
    verdict
        Verdict on the trend at that check.
    short_by
        Other side minus this one, in degrees.
    other
        Level of the other side, in degrees.
    """
    if movement not in STALLING or verdict in _CLEAR or check.slope is None:
        return False
    if not (short_by > STALL_SHORT_DEG or short_by > STALL_SHORT_SHARE * other):
        return False
    if check.weeks < STALL_LEAST_WEEKS or check.slope.days < STALL_LEAST_DAYS:
        return False
    errors = STALL_BELOW_DEG / check.slope.error_per_month
    return check.evidence_below(STALL_BELOW_DEG) > stall_limit(errors)
