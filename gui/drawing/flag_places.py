"""Places of the flags above a chart, so that no words meet others or a pole. No Qt."""

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FlagPlace:
    """Line of a flag, and on which side of its pole its words stand.

    Attributes
    ----------
    line
        From 0 at the top; the pole goes down from there.
    worded
        Whether there is room for its words.
    leftwards
        Whether the words end at the pole instead of beginning there.
    """

    line: int
    worded: bool
    leftwards: bool = False


def flag_places(
    flags: Sequence[tuple[float, float]], lines: int, right_px: float
) -> list[FlagPlace]:
    """Return the places of flags, which come from left to right.

    Parameters
    ----------
    flags
        Each with its pole's x and the width of its words, pixels.
    lines
        Lines of words that there are.
    right_px
        Words that would go beyond go to the left of their pole.
    """
    ends = [float("-inf")] * lines
    places = []
    for x, width in flags:
        leftwards = x + width > right_px
        begin, end = (x - width, x) if leftwards else (x, x + width)
        # The pole must not cross words of the lines beneath.
        free = [k for k in range(lines) if ends[k] < begin and max(ends[k:]) < x]
        line = free[0] if free else lines - 1
        places.append(FlagPlace(line, bool(free), leftwards))
        if free:
            ends[line] = end
    return places
