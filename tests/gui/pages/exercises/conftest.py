"""A stage with a programme of exercises."""

import pytest

from tests.support.gui.planned_exercises import plan_exercises
from tests.support.gui.stage import WindowHarness


@pytest.fixture
def planned(stage: WindowHarness) -> WindowHarness:
    """A stage with a programme of three exercises, on the exercises page."""
    plan_exercises(stage)
    return stage
