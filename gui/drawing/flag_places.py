"""Places of the numbered flags above a chart, so that none lies on another. No Qt."""

from collections.abc import Sequence


def spread(
    places: Sequence[float], widths_px: Sequence[float], *, left_px: float, right_px: float
) -> list[float]:
    """Return where signs stand that are to be near these places and beside each other.

    Parameters
    ----------
    places
        Wanted middles of the signs, from left to right, pixels.
    widths_px
        Room of each sign from its middle to that of the next one.
    left_px, right_px
        Least and greatest middle; where there are more signs than room, they go on to the left.
    """
    middles: list[float] = []
    for number, place in enumerate(places):
        least = middles[-1] + widths_px[number - 1] if middles else left_px
        middles.append(max(place, least))
    most = right_px
    for number in reversed(range(len(middles))):
        middles[number] = min(middles[number], most)
        most = middles[number] - widths_px[number - 1]
    return middles
