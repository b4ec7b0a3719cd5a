"""Limits of evidence: from when on a check of a series shows a change, a turn or a stall.

Two tests run side by side. The weekly check has a strict limit that falls while data are few and
then stays. The review, every twelve weeks, has a mild one that rises from review to review, so that
all reviews together spend a fixed chance of error, however many there are (error spending, Lan &
DeMets 1983, Biometrika 70:659). The argument and the error rates stand in measure/docs/verdicts.md.

All limits are in standard deviations of a normal distribution.
"""

import numpy as np

#: Evidence that a weekly check needs, by weeks of data: strict while the data are few. [project]
_WEEKS = (4, 5, 6, 7)
_WEEKLY = (5.7, 4.7, 3.8, 3.5)
#: Weeks from one review to the next, counted from the first session or the latest turn. [project]
REVIEW_WEEKS = 12
#: Two-sided chance of error of all reviews of a phase together; review k spends 1 / (k (k + 1)) of
#: it, which adds up to all of it for any number of reviews. [project]
_REVIEW_ERROR = 0.02
#: The same where no other primary movement of the side is measured, so that no other can err.
#: [project]
_REVIEW_ERROR_ALONE = 0.04
#: Evidence that a weekly check needs where the other primary movements of the side, together, show
#: the same direction with the evidence named second. [project]
_BACKED, _BACKING = 2.0, 3.2
#: Evidence that a weekly check needs after a turn. [project]
_AFTER_TURN = 3.5
#: Evidence of a bend at a check and at the one before it: a bend is sought among many days, which
#: needs more than one whose day is known (Davies 1987, Biometrika 74:33). [project]
_TURN = (3.5, 2.5)
#: The same where the other movements, together, bend the same way with the evidence named.
#: [project]
_TURN_BACKED, _TURN_BACKING = (2.4, 2.0), 3.2
#: Evidence against a gain worth having that a stall needs, by how many standard errors of the slope
#: that gain measures; it rises, since each later check is another chance to be wrong. [project]
_STALL_ERRORS, _STALL = (1.5, 2.5, 4.0), (1.45, 2.0, 2.6)
#: Share of that error, and of that of the weekly checks, for a movement that is not primary: as for
#: five of them at once. [project]
_ALSO_SEEN_SHARE = 0.2
#: Evidence that makes a change a likely one, where the weekly limit is not stricter still.
#: [project]
_LIKELY = 2.4
#: A likely change needs less than a confirmed one by this, while the data are few. [project]
_LIKELY_LESS = 1.1


def _stricter(limit: float, primary: bool) -> float:
    """Return a limit for a movement: beside the primary ones a fifth of the error is allowed."""
    from scipy import special  # loaded when first needed: the window starts without it

    if primary:
        return limit
    return -float(special.ndtri(_ALSO_SEEN_SHARE * special.ndtr(-limit)))


def weekly_limit(
    weeks: float, primary: bool = True, *, backing: float = 0.0, turned: bool = False
) -> float:
    """Return the evidence that a weekly check needs after `weeks` of data.

    Parameters
    ----------
    backing
        Evidence of the other movements for the same direction.
    turned
        True after a turn, when it is known already that something changed.
    """
    limit = _AFTER_TURN if turned else float(np.interp(weeks, _WEEKS, _WEEKLY))
    if backing > _BACKING and weeks >= _WEEKS[-1]:
        limit = min(limit, _BACKED)
    return _stricter(limit, primary)


def review_limit(number: int, primary: bool = True, alone: bool = False) -> float:
    """Return the evidence that a review needs; `number` is 1 for the first of a phase.

    Parameters
    ----------
    alone
        True where no other primary movement of the side is measured.
    """
    from scipy import special  # loaded when first needed: the window starts without it

    spent = (_REVIEW_ERROR_ALONE if alone else _REVIEW_ERROR) / (number * (number + 1))
    return _stricter(-float(special.ndtri(spent / 2)), primary)


def likely_limit(weeks: float, primary: bool = True) -> float:
    """Return the evidence from which a change is likely after `weeks` of data."""
    return max(_stricter(_LIKELY, primary), weekly_limit(weeks, primary) - _LIKELY_LESS)


def reviews_passed(weeks: int) -> int:
    """Return how many reviews have come up to a check, `weeks` after the first or a turn."""
    return weeks // REVIEW_WEEKS


def turn_limits(backing: float = 0.0, primary: bool = True) -> tuple[float, float]:
    """Return the evidence of a bend that a check needs, and that the one before it needs.

    Parameters
    ----------
    backing
        Evidence of the other movements for a bend the same way.
    """
    limits = _TURN_BACKED if backing > _TURN_BACKING else _TURN
    return _stricter(limits[0], primary), _stricter(limits[1], primary)


def stall_limit(errors: float) -> float:
    """Return the evidence that a stall needs.

    Parameters
    ----------
    errors
        The gain that is to be ruled out, in standard errors of the slope.
    """
    return float(np.interp(errors, _STALL_ERRORS, _STALL))
