"""The trials of a movement side by side: captured, being settled, settled, still to come."""

from PySide6.QtWidgets import QHBoxLayout, QWidget

from gui.protocol.plan import Attempt, AttemptState, Guide
from gui.style.look import Look
from gui.text.words import tr
from gui.widgets.reading_band import ReadingBand, Shown, shown_trial
from measure.domain.movements import Movement


class TrialRow(QWidget):
    """One band for each scored trial wanted; refused ones are told in the row's last place."""

    def __init__(self, look: Look, *, most: int = 5, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(look.gap(3))
        self.bands = [ReadingBand(look, least_share=1 / 32) for _ in range(most)]
        for band in self.bands:
            layout.addWidget(band, 1)

    def show_guide(self, guide: Guide) -> None:
        """Show where the movement stands."""
        movement = guide.task.movement
        counted = [
            each
            for each in guide.attempts
            if each.state in (AttemptState.SETTLING, AttemptState.SCORED)
        ]
        for place, band in enumerate(self.bands):
            band.setVisible(place < guide.task.trials)
            attempt = counted[place] if place < len(counted) else None
            band.show_reading(movement, _shown(attempt, movement))


def _shown(attempt: Attempt | None, movement: Movement) -> Shown:
    if attempt is None:
        return Shown(words=tr("to come"), waiting=True)
    if attempt.trial is None:
        return Shown(words=tr("being settled"), value=attempt.guide_value, waiting=True)
    return shown_trial(attempt.trial, movement)
