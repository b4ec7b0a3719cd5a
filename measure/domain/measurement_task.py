"""What one reading is about: movement, side, view, and what is known beforehand."""

from dataclasses import dataclass, field, replace

from measure.domain.acquisition import Setup
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, MovementFacts, View


@dataclass(frozen=True, slots=True)
class MeasurementTask:
    """What is measured, and with which knowledge.

    Attributes
    ----------
    view
        What the camera sees, or None while it is to be recognised among the movement's views.
    setup
        What is known of camera, body and instrument.
    """

    movement: Movement
    side: Side
    view: View | None = None
    setup: Setup = field(default_factory=Setup)

    @property
    def facts(self) -> MovementFacts:
        return MOVEMENTS[self.movement]

    @property
    def known_view(self) -> View:
        """The view, once it is given or recognised.

        Raises
        ------
        ValueError
            While it is neither.
        """
        if self.view is None:
            raise ValueError("the view has not been recognised yet")
        return self.view

    def seen_from(self, view: View) -> "MeasurementTask":
        """Return the same task with the view given."""
        return replace(self, view=view)
