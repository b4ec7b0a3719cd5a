"""Steps through the measuring pages of a window on a stage."""

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from tests.support.gui.stage import WindowHarness


def trials(stage: WindowHarness, *values: float) -> None:
    """Capture and settle trials one after the other."""
    for value in values:
        stage.engine.capture(value)
        stage.settle(30)
        stage.engine.settle()
        stage.settle(30)


def shown(stage: WindowHarness) -> object:
    """Return the page that is shown."""
    page = stage.window.measure
    parts = (page.start, page.safety, page.before, page.live, page.pain, page.next, page.summary)
    (visible,) = [part for part in parts if part.isVisible()]
    return visible


def begin_home(stage: WindowHarness) -> None:
    stage.window.measure.start.home_button.click()
    stage.settle()
    stage.window.measure.before.go.click()
    stage.settle()


def begin_clinic(stage: WindowHarness, movement: Movement = Movement.FLEXION) -> None:
    stage.window.measure.start.prefer(movement, Side.LEFT)
    stage.window.measure.start.clinic_button.click()
    stage.settle()
