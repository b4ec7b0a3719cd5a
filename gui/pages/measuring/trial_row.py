"""Row of a movement's trials, readable from across the room: practice first, then those counted."""

from dataclasses import dataclass, replace
from itertools import pairwise
from math import ceil

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, QTimer, Slot
from PySide6.QtGui import QFont, QFontMetricsF, QHideEvent, QPainter, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.protocol.plan import Attempt, AttemptState, SessionPlan
from gui.style.appearance import Appearance
from gui.text.wording import tr, trial_words, value_words
from gui.widgets.figures.position_figure import motion_wanted
from gui.widgets.fitted_sentence import LEAST_SHARE
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.movements import MOVEMENTS, Unit

#: Side of a sign, space after it, and least space between two places, in heights of the type.
#: [technical]
_SIGN, _AFTER_SIGN, _BETWEEN = 0.6, 0.3, 0.55
#: Thickness of the line from one place to the next, pixels. [technical]
_WAY_PX = 2
#: Least height of the word of practice, relative to the type. [technical]
_SMALLER = 0.55
#: Time between two pictures of a sign that turns, and how far it turns meanwhile. [technical]
_TURN_MS, _TURN_DEG = 80, 24
#: How much of a ring is drawn while a trial is being calculated, degrees. [technical]
_ARC_DEG = 250


@dataclass(frozen=True)
class _Place:
    """A place of the row: what was taken, if anything, and its word."""

    attempt: Attempt | None
    word: str
    font: QFont
    due: bool = False
    scored: bool = False


class TrialRow(PaintedWidget):
    """A place for practice, then one for each scored trial wanted; a sign and a word or value each.

    A dashed ring is a trial to come, a whole one is due now, an open one that turns is being
    calculated, a filled band is final. Practice leaves the room to the others once it is over.
    """

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._places: list[Attempt | None] = []
        self._unit = Unit.DEGREES
        self._practising = False
        self._turned_deg = 0
        self._timer = QTimer(self)
        self._timer.setInterval(_TURN_MS)
        self._timer.timeout.connect(self._turn)

    @property
    def words(self) -> tuple[str, ...]:
        """What each place of a scored trial says, in whole words."""
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
        self._practising = guide.practice_left > 0
        numbered = enumerate(self.words, start=1)
        trial = tr("Trial {number}: {words}")
        said = [trial.format(number=number, words=words) for number, words in numbered]
        if guide.task.practice:
            done = tr("next") if self._practising else tr("done")
            said.insert(0, tr("Practice: {words}").format(words=done))
        self.setAccessibleName(". ".join(said))
        computing = any(attempt.state is AttemptState.REFINING for attempt in counted)
        if computing and motion_wanted() and self.isVisible():
            self._timer.start()
        else:
            self._timer.stop()
        self.update()

    def type_px(self) -> int:
        """Return the size of the type, pixels."""
        return ceil(self.window().height() * LEAST_SHARE)

    def sizeHint(self) -> QSize:
        return QSize(300, round(self.type_px() * 1.16))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self._timer.stop()

    def paint(self, painter: QPainter) -> None:
        written = self._written()
        divided = self._divided(written)
        self._paint_way(painter, divided)
        for (sign, text), place in zip(divided, written, strict=True):
            if sign is not None:
                self._sign(painter, sign, place.attempt, due=place.due)
            self._word(painter, text, place)

    def _written(self) -> list[_Place]:
        """Return what stands in the row, practice first; without its word where room lacks."""
        px, places = self.type_px(), []
        for number, attempt in enumerate(self._places):
            due = attempt is None and not self._practising and self._all_final(number)
            scored = attempt is not None and attempt.state is AttemptState.SCORED
            font = self.appearance.font(px, bold=attempt is not None or due)
            word = self._short(number, attempt)
            places.append(_Place(attempt, word, font, due=due, scored=scored))
        if self._practising:
            places.insert(0, self._practice(places))
        return places

    def _practice(self, others: list[_Place]) -> _Place:
        """Return the place of practice: its word is as large as the others leave room, or away."""
        px = self.type_px()
        others_px = sum(self._beside(place).right() + px * _BETWEEN for place in others)
        room = self.width() - others_px
        whole = _Place(None, tr("practice"), self.appearance.font(px), due=True)
        size = min(px, px * (room - px * (_SIGN + _AFTER_SIGN)) / _width_px(whole))
        if size < px * _SMALLER:
            return _Place(None, "", whole.font, due=True)
        return replace(whole, font=self.appearance.font(size))

    def _divided(self, places: list[_Place]) -> list[tuple[QRectF | None, QRectF]]:
        """Return where the sign and the word of each are, from one end of the row to the other.

        Where there is too little room a value has no sign.
        """
        for bare in (False, True):
            needed = []
            for place in places:
                text = self._beside(place)
                if bare and place.scored:
                    text.moveLeft(0)
                needed.append(text)
            between = (self.width() - sum(text.right() for text in needed)) / max(
                1, len(places) - 1
            )
            if between >= self.type_px() * _BETWEEN:
                break
        left, side, divided = 0.0, self.type_px() * _SIGN, []
        for text in needed:
            wide, signed = text.right(), text.left() > 0
            sign = QRectF(left, (self.height() - side) / 2, side, side) if signed else None
            divided.append((sign, text.translated(left, 0)))
            left += wide + between
        return divided

    def _paint_way(self, painter: QPainter, divided: list[tuple[QRectF | None, QRectF]]) -> None:
        """Paint a hairline from each place to the next: they are one way from end to end."""
        px = self.type_px()
        painter.setPen(QPen(self.appearance.colour("line"), _WAY_PX))
        for (before, word), (sign, value) in pairwise(divided):
            last = before if before is not None and not word.width() else word
            start, end = last.right() + px * _BETWEEN, (sign or value).left() - px * _BETWEEN
            if end - start >= px * _BETWEEN:
                painter.drawLine(QPointF(start, self.height() / 2), QPointF(end, self.height() / 2))

    def _all_final(self, number: int) -> bool:
        """Whether so many trials from the first on are taken and none is still calculated."""
        before = self._places[:number]
        return all(taken and taken.state is not AttemptState.REFINING for taken in before)

    def _beside(self, place: _Place) -> QRectF:
        """Return where a word is beside its sign, from the beginning of its place."""
        side, gap = self.type_px() * _SIGN, self.type_px() * _AFTER_SIGN
        return QRectF(side + gap if place.word else side, 0, _width_px(place), self.height())

    def _word(self, painter: QPainter, text: QRectF, place: _Place) -> None:
        painter.setFont(place.font)
        strong = place.attempt is not None or place.due
        painter.setPen(self.appearance.colour("ink" if strong else "quiet"))
        base = self.height() / 2 + QFontMetricsF(place.font).capHeight() / 2
        painter.drawText(QPointF(text.left(), base), place.word)

    def _sign(
        self, painter: QPainter, place: QRectF, attempt: Attempt | None, *, due: bool
    ) -> None:
        if attempt is not None and attempt.state is AttemptState.SCORED:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(self.appearance.colour("arm"))
            painter.drawRoundedRect(place.adjusted(0, 2, 0, -2), 5, 5)
            return
        ring = place.adjusted(2, 2, -2, -2)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        if attempt is not None:
            painter.setPen(QPen(self.appearance.colour("hold"), 4))
            painter.drawArc(ring, -16 * self._turned_deg, 16 * _ARC_DEG)
            return
        pen = QPen(self.appearance.colour("ink" if due else "edge"), 4 if due else 3)
        if not due:
            pen.setDashPattern([1.6, 1.8])
        painter.setPen(pen)
        painter.drawEllipse(ring)

    @Slot()
    def _turn(self) -> None:
        self._turned_deg = (self._turned_deg + _TURN_DEG) % 360
        self.update()

    def _short(self, number: int, attempt: Attempt | None) -> str:
        """Return what stands beside the sign: the trial's number, then its final value."""
        if attempt is None:
            return str(number + 1)
        value = None if attempt.trial is None else attempt.trial.value
        return str(number + 1) if value is None else value_words(value, self._unit)

    def _said(self, attempt: Attempt | None) -> str:
        if attempt is None:
            return tr("next")
        if attempt.trial is None:
            return tr("being calculated")
        return trial_words(attempt.trial, self._unit)


def _width_px(place: _Place) -> float:
    """Return how wide the word of a place is, pixels."""
    return QFontMetricsF(place.font).horizontalAdvance(place.word)
