"""Names at the ends of the chart's lines: none lies on another, none is far from its own."""

import pytest

from gui.drawing.place_names import ends_apart

#: Least distance of two names, pixels.
LEAST = 20.0


@pytest.mark.parametrize(
    ("ends", "places", "named", "kept"),
    [
        ([40.0, 60.0], [100.0, 200.0], [40.0, 60.0], [100.0, 200.0]),
        ([40.0, 45.0], [100.0, 200.0], [40.0, 60.0], [100.0, 200.0]),
        ([40.0, 95.0], [100.0, 200.0], [40.0, 80.0], [100.0, 200.0]),
        ([40.0, 103.0], [100.0, 200.0], [40.0, 120.0], [100.0, 200.0]),
        ([95.0, 97.0], [100.0, 200.0], [80.0, 120.0], [100.0, 200.0]),
        ([100.0], [], [100.0], []),
        # Where there is no room between heights, those that would be met are not named.
        ([95.0], [40.0, 70.0, 100.0, 130.0], [95.0], [40.0, 70.0, 130.0]),
    ],
)
def test_shoulders_give_way_to_heights_on_the_body(ends, places, named, kept):
    assert ends_apart(ends, places, LEAST) == (named, kept)
