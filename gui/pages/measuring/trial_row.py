"""Row of a movement's trials, readable from across the room: to come, being calculated, final."""

from math import ceil

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.protocol.plan import Attempt, AttemptState, SessionPlan
from gui.style.appearance import Appearance
from gui.text.wording import tr, trial_words, value_words
from gui.widgets.fitted_sentence import LEAST_SHARE
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.movements import MOVEMENTS, Unit


class TrialRow(PaintedWidget):
    """One place for each scored trial wanted; a sign and a word or value in each.

    A dashed ring is a trial to come, a hollow one is being calculated, a filled band is final.
    """

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._places: list[Attempt | None] = []
        self._unit = Unit.DEGREES

    @property
    def words(self) -> tuple[str, ...]:
        """What each place says, in whole words."""
        return tuple(self._said(attempt) for attempt in self._places)

    def show_guide(self, guide: SessionPlan) -> None:
        """Show where the movement stands."""
        counted = [
            attempt
            for attempt in guide.attempts
            if attempt.state in (AttemptState.REFINING, AttemptState.SCORED)
        ]
        wanted = guide.task.trials
        self._unit = MOVEMENTS[guide.task.movement].unit
        self._places = [*counted, *[None] * wanted][:wanted]
        numbered = enumerate(self.words, start=1)
        trial = tr("Trial {number}: {words}")
        self.setAccessibleName(
            ". ".join(trial.format(number=number, words=words) for number, words in numbered)
        )
        self.update()

    def type_px(self) -> int:
        """Return the size of the type, pixels."""
        return ceil(self.window().height() * LEAST_SHARE)

    def sizeHint(self) -> QSize:
        return QSize(300, round(self.type_px() * 1.16))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paint(self, painter: QPainter) -> None:
        px = self.type_px()
        wide = min(self.width() / max(1, len(self._places)), px * 5.2)
        for number, attempt in enumerate(self._places):
            place = QRectF(number * wide, 0, wide, self.height())
            sign = QRectF(place.left() + 2, place.center().y() - px * 0.3, px * 0.6, px * 0.6)
            self._sign(painter, sign, attempt)
            final = attempt is not None and attempt.state is AttemptState.SCORED
            painter.setFont(self.appearance.font(px, bold=final))
            painter.setPen(self.appearance.colour("ink" if final else "quiet"))
            base = place.center().y() + QFontMetricsF(painter.font()).capHeight() / 2
            painter.drawText(QPointF(sign.right() + px * 0.3, base), self._short(number, attempt))

    def _sign(self, painter: QPainter, place: QRectF, attempt: Attempt | None) -> None:
        if attempt is not None and attempt.state is AttemptState.SCORED:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(self.appearance.colour("arm"))
            painter.drawRoundedRect(place.adjusted(0, 2, 0, -2), 5, 5)
            return
        pen = QPen(self.appearance.colour("edge" if attempt is None else "hold"), 3)
        if attempt is None:
            pen.setDashPattern([1.6, 1.8])
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(place.adjusted(1.5, 1.5, -1.5, -1.5))

    def _short(self, number: int, attempt: Attempt | None) -> str:
        """Return what stands beside the sign: the trial's number, then its value."""
        if attempt is None:
            return str(number + 1)
        value = attempt.guide_value if attempt.trial is None else attempt.trial.value
        return "\u2026" if value is None else value_words(value, self._unit)

    def _said(self, attempt: Attempt | None) -> str:
        if attempt is None:
            return tr("next")
        if attempt.trial is None:
            return tr("being calculated")
        return trial_words(attempt.trial, self._unit)
