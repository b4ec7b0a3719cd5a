"""Row of a movement's trials: captured, being refined, refined, still to come."""

from PySide6.QtWidgets import QHBoxLayout, QWidget

from gui.protocol.plan import Attempt, AttemptState, SessionPlan
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.measurement_band import BandContent, MeasurementBand, band_for_trial
from measure.domain.movements import Movement


class TrialRow(QWidget):
    """One band for each scored trial wanted; refused ones are told in the row's last place."""

    def __init__(
        self, appearance: Appearance, *, most: int = 5, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(appearance.gap(3))
        self.bands = [MeasurementBand(appearance, least_share=1 / 32) for _ in range(most)]
        for band in self.bands:
            layout.addWidget(band, 1)

    def show_guide(self, guide: SessionPlan) -> None:
        """Show where the movement stands."""
        movement = guide.task.movement
        counted = [
            attempt
            for attempt in guide.attempts
            if attempt.state in (AttemptState.REFINING, AttemptState.SCORED)
        ]
        for place, band in enumerate(self.bands):
            band.setVisible(place < guide.task.trials)
            attempt = counted[place] if place < len(counted) else None
            band.show_reading(movement, _shown(attempt, movement))


def _shown(attempt: Attempt | None, movement: Movement) -> BandContent:
    if attempt is None:
        return BandContent(words=tr("to come"), waiting=True)
    if attempt.trial is None:
        return BandContent(words=tr("calculating"), value=attempt.guide_value, waiting=True)
    return band_for_trial(attempt.trial, movement)
