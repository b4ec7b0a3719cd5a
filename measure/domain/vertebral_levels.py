"""Vertebral levels for a thumb behind the back, as bands and never as a point.

Heights are fractions of the line from mid-hip (0) to C7 (1). Places of the levels between C7
(0 %) and the line of the posterior iliac spines (100 %) are from Ernst 2013 (T4 21, T7 39,
T10 54.1, L1 70.9, L4 86.1 %), straight lines between. The iliac spines lie above mid-hip by
about 0.13 of mid-hip to C7 (from usual body measures: 7-8 cm of 57 cm); a pelvis marked in an
image of the back replaces it.
"""

from measure.domain.acquisition import BodySetup
from measure.domain.measurements import LevelBand

#: Level, and its place on the way from C7 down to the iliac spines in per cent.
_LEVELS = (
    ("T1", 5.2),
    ("T2", 10.5),
    ("T3", 15.8),
    ("T4", 21.0),
    ("T5", 27.0),
    ("T6", 33.0),
    ("T7", 39.0),
    ("T8", 44.0),
    ("T9", 49.1),
    ("T10", 54.1),
    ("T11", 59.7),
    ("T12", 65.3),
    ("L1", 70.9),
    ("L2", 76.0),
    ("L3", 81.0),
    ("L4", 86.1),
    ("L5", 90.7),
    ("S1", 95.4),
    ("S2", 100.0),
)
#: Regions below: name and the lowest height above mid-hip that belongs to it. [project]
_BELOW = (("sacrum", 0.06), ("buttock", -0.06))
_LOWEST = "thigh"
#: Height of the iliac spines above mid-hip, as a fraction of mid-hip to C7. [project]
ILIAC_SPINES = 0.13

#: Way from C7 to the iliac spines, per cent, beyond which a height is below S2. [project]
_END_OF_LEVELS = 102.3

#: Height of one vertebra, T5 to S2, as a fraction of mid-hip to C7: the 14 steps between their
#: places above take 73 % of the way from C7 to the iliac spines. [project]
LEVEL_HEIGHT = 0.73 * (1.0 - ILIAC_SPINES) / 14
#: Mid-hip to C7 of a usual adult, cm: C7 to the iliac spines is 50.9 cm (Ernst 2013). [project]
USUAL_LINE_CM = 50.9 / (1.0 - ILIAC_SPINES)

_REGIONS = (
    (("T1", "T2", "T3", "T4", "T5", "T6"), "upper thoracic"),
    (("T7", "T8", "T9"), "mid thoracic"),
    (("T10", "T11", "T12"), "lower thoracic"),
    (("L1", "L2", "L3"), "upper lumbar"),
    (("L4", "L5"), "lower lumbar"),
    (("S1", "S2", "sacrum"), "sacrum"),
    (("buttock",), "buttock"),
    (("thigh",), "thigh"),
)


def level_at(height: float, iliac_spines: float = ILIAC_SPINES) -> str:
    """Return the level nearest to a height above mid-hip, as a fraction of mid-hip to C7."""
    way = (1.0 - height) / (1.0 - iliac_spines) * 100
    if way <= _END_OF_LEVELS:
        return min(_LEVELS, key=lambda level: abs(level[1] - way))[0]
    return next((name for name, lowest in _BELOW if height >= lowest), _LOWEST)


def height_of(level: str) -> float:
    """Return the lowest height of a level, as a fraction of mid-hip to C7.

    For a vertebra that is its own height; the regions below the sacrum begin at their limit.
    """
    below = dict(_BELOW)
    if level in below:
        return below[level]
    return 1.0 - dict(_LEVELS)[level] / 100 * (1.0 - ILIAC_SPINES)


def levels_in(height: float) -> float:
    """Return how many vertebrae a difference of heights spans; below S2 as if they went on."""
    return height / LEVEL_HEIGHT


def centimetres_in(height: float) -> float:
    """Return a height, or a difference of two, in cm on a back of usual length."""
    return height * USUAL_LINE_CM


def region_of(level: str) -> str:
    """Return the region that a level belongs to, in words."""
    return next(region for names, region in _REGIONS if level in names)


def marked_spines(body: BodySetup) -> float:
    """Return the height of a person's iliac spines, as a fraction of mid-hip to C7.

    The usual one where C7 and pelvis were not both marked.
    """
    if body.c7_height is None or body.iliac_spines is None:
        return ILIAC_SPINES
    return body.iliac_spines / body.c7_height


def level_of(
    low: float, value: float, high: float, iliac_spines: float = ILIAC_SPINES
) -> LevelBand:
    """Return the band from the level at `low` to the level at `high`.

    The band in words names the region of `value`, or both ends where they differ.
    """
    lowest, highest = level_at(low, iliac_spines), level_at(high, iliac_spines)
    most_likely = region_of(level_at(value, iliac_spines))
    ends = tuple(dict.fromkeys((region_of(lowest), region_of(highest))))
    band = ends[0] if len(ends) == 1 else f"{ends[0]} to {ends[1]}"
    return LevelBand(low=lowest, high=highest, band=f"{band}, most likely {most_likely}")
