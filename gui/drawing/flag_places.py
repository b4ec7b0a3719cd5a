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


def words_before(
    places: Sequence[float],
    words_px: Sequence[float],
    half_px: float,
    *,
    left_px: float,
    right_px: float,
) -> list[bool] | None:
    """Return which signs have their word on the left, so that each stands exactly at its place.

    None where that is not possible; words stand on the right where they can.

    Parameters
    ----------
    places
        Middles of the signs, from left to right, pixels.
    words_px, half_px
        Room of each word beside its sign, and half the width of a sign.
    left_px, right_px
        Where the first word may begin, and where the last ends at the latest.
    """
    for left_first in (False, True):
        before: list[bool] = []
        end = min([left_px, *(place - half_px for place in places[:1])])
        for number, (place, wide) in enumerate(zip(places, words_px, strict=True)):
            later = places[number + 1] - half_px if number + 1 < len(places) else right_px
            left = place - half_px - wide >= end
            right = place - half_px >= end and place + half_px + wide <= later
            if not (left or right):
                break
            before.append(left and (left_first or not right))
            end = place + half_px + (0.0 if before[-1] else wide)
        if len(before) == len(places):
            return before
    return None
