"""Names at the ends of the lines of the history chart: heights on the body and shoulders. No Qt."""

from collections.abc import Sequence
from itertools import pairwise, product

#: Least distance of heights on the body between which a shoulder's name has room, in distances of
#: two names. [technical]
_BETWEEN = 2.2
#: What is nearer to a distance than this is that distance, pixels. [technical]
_ROUNDED = 0.01


def ends_apart(
    wanted: Sequence[float], places: Sequence[float], least: float
) -> tuple[list[float], list[float]]:
    """Return where names of shoulders stand, and the heights on the body that stay named.

    Heights on the body keep their places. A shoulder's name gives way to them where there is room
    between two of them; elsewhere what it would meet is left unnamed.

    Parameters
    ----------
    wanted
        Where the courses of the shoulders end, from above, pixels.
    places
        Heights on the body, from above, pixels.
    least
        Least distance of two names, pixels.
    """
    roomy = all(below - above >= _BETWEEN * least for above, below in pairwise(places))
    fixed = places if roomy else ()
    # As near as possible, each beside a height or beside the other shoulder.
    steps = [number * least for number in range(-len(wanted), len(wanted) + 1)]
    tries = [*wanted, *(place + step for place in (*fixed, *wanted) for step in steps)]

    def free(named: Sequence[float]) -> bool:
        apart = all(below - above >= least - _ROUNDED for above, below in pairwise(named))
        return apart and all(abs(at - place) >= least - _ROUNDED for at in named for place in fixed)

    def away(named: Sequence[float]) -> float:
        return sum(abs(at - place) for at, place in zip(named, wanted, strict=True))

    named = min(filter(free, product(tries, repeat=len(wanted))), key=away)
    kept = [at for at in places if all(abs(at - name) >= least - _ROUNDED for name in named)]
    return list(named), kept
