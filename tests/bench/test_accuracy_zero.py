"""The middle of an outline is found where it was put."""

import numpy as np
import pytest

from tests.bench.accuracy_zero import outline_turn_deg


@pytest.mark.parametrize("turned_deg", [-8.0, 0.0, 5.0])
def test_a_tube_beside_the_line_shows_its_own_direction(turned_deg: float) -> None:
    """A tube 8 cm wide along z, its middle 2 cm aside, sheared in the plane x-z."""
    height, around = np.meshgrid(np.linspace(0, 0.3, 301), np.linspace(0, 2 * np.pi, 181))
    lean = np.tan(np.radians(turned_deg))
    tube = np.column_stack(
        [
            0.02 + 0.04 * np.cos(around.ravel()) + lean * height.ravel(),
            0.04 * np.sin(around.ravel()),
            height.ravel(),
        ]
    )
    line = (np.zeros(3), np.array([0.0, 0.0, 0.3]))
    found = outline_turn_deg(tube, line, np.array([1.0, 0.0, 0.0]), (0.2, 0.8))
    assert found == pytest.approx(turned_deg, abs=0.05)
    assert outline_turn_deg(tube, line, np.array([0.0, 1.0, 0.0]), (0.2, 0.8)) == pytest.approx(
        0.0, abs=0.05
    )
