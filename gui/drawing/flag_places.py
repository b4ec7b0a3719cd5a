"""Places of the numbered flags above a chart, so that none lies on another. No Qt."""

from collections.abc import Sequence


def spread(
    places: Sequence[float], width_px: float, *, left_px: float, right_px: float
) -> list[float]:
    """Return where signs stand that are to be near these places and beside each other.

    Parameters
    ----------
    places
        Wanted middles of the signs, from left to right, pixels.
    width_px
        Room that each sign takes.
    left_px, right_px
        Least and greatest middle; where there are more signs than room, they go on to the left.
    """
    middles: list[float] = []
    for place in places:
        least = middles[-1] + width_px if middles else left_px
        middles.append(max(place, least))
    most = right_px
    for number in reversed(range(len(middles))):
        middles[number] = min(middles[number], most)
        most = middles[number] - width_px
    return middles
