"""A planned exercise on the page of today: its drawing, how much and how, and what was done."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt, Slot
from PySide6.QtGui import QPainter, QPen
from PySide6.QtWidgets import QWidget

from gui.drawing.shown_movements import shown_exercise
from gui.pages.exercises.still_figure import StillFigure
from gui.style.appearance import Appearance
from gui.style.measures import CONTENT_PX, LINE
from gui.text.exercise_wording import done_whole, done_words, how_sentence, planned_title
from gui.text.wording import tr
from gui.widgets.figures.pictured_card import figure_tile
from gui.widgets.layouts import column, row
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.text import SignedLine, label
from measure.domain.home_programme_records import ExerciseLog, PlannedExercise
from measure.domain.landmarks import Side
from measure.progress.home_programme import dose_words

#: Text sizes from which the drawing has less room beside all words, and from which it alone says
#: how, per cent; the round says it too. [technical]
_LARGE_FROM_PERCENT, _SHORT_FROM_PERCENT = 150, 200
#: Side of the tile of the drawing below and from these text sizes, and of what was logged, pixels:
#: two exercises are seen at once. [technical]
_TILE_PX, _LARGE_PX, _SHORT_PX, _LOGGED_PX = 176, 152, 184, 160
#: Width of what was done, at the end of the line, in sizes of the text. [technical]
_DONE_WIDTH = 13.5
#: Width of the sign of what is partly done, relative to the type, and its ring, pixels.
#: [technical]
_SIGN, _RING_PX = 0.75, 2.0
#: Where its filled half begins, and how far it goes, sixteenths of a degree. [technical]
_FROM_TOP, _HALF = 90 * 16, 180 * 16


class _PartSign(PaintedWidget):
    """A ring, half of it filled where something was done."""

    def __init__(self, appearance: Appearance, *, begun: bool) -> None:
        super().__init__(appearance)
        self._begun = begun

    def sizeHint(self) -> QSize:
        px = self.appearance.px(LINE)
        return QSize(px, px)

    def paint(self, painter: QPainter) -> None:
        across = self.appearance.px(_SIGN)
        # It stands beside the first line of the words.
        ring = QRectF(1, (self.height() - across) / 2, across, across)
        colour = self.appearance.colour("hold" if self._begun else "quiet")
        painter.setPen(QPen(colour, _RING_PX))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(ring)
        if self._begun:
            painter.setBrush(colour)
            painter.drawChord(ring, _FROM_TOP, _HALF)


class PlannedLine(QWidget):
    """One exercise of the programme; one of the clinician's own has no drawing.

    Parameters
    ----------
    logged
        What was logged today; where anything was, the line says what was done of the exercise
        instead of how it is done.
    """

    def __init__(
        self, appearance: Appearance, planned: PlannedExercise, logged: Sequence[ExerciseLog]
    ) -> None:
        super().__init__()
        self._appearance = appearance
        listed = planned.exercise.listed
        shown = shown_exercise(listed) if listed is not None else None
        side = planned.sides[0] if planned.sides else Side.LEFT
        self.figure = StillFigure(appearance, shown, side)
        self._tile, self._drawn = figure_tile(self.figure), shown is not None
        words_done = done_words(planned, logged)
        whole = done_whole(planned, logged)
        self._dose = label(dose_words(planned, tr, with_side=False))
        self._how = label(how_sentence(planned), "quiet")
        self.done = SignedLine(
            "\u2713" if whole else "\u2013",
            words_done or tr("Not done today."),
            drawn=None if whole else _PartSign(appearance, begun=bool(words_done)),
        )
        self._words = column(
            1,
            label(planned_title(planned), "title"),
            self._dose,
            self._how,
            1,
            spacing=appearance.gap(0.75),
        )
        self._end = column(1, 1)
        parts = (column(1, self._tile, 1), (self._words, 1), self._end)
        row(*parts, on=self, spacing=appearance.gap(3))
        self._said = bool(logged)
        appearance.changed.connect(self._leave_room)
        self._leave_room()
        self.done.setVisible(self._said)

    @Slot()
    def _leave_room(self) -> None:
        """Say how it is done where nothing was done yet; where text is large, only what matters."""
        percent = self._appearance.percent
        roomy = percent < _SHORT_FROM_PERCENT
        px = _LARGE_PX if percent >= _LARGE_FROM_PERCENT else _TILE_PX
        px = px if roomy else _SHORT_PX
        px = min(px, _LOGGED_PX) if self._said else px
        self._tile.setFixedSize(px, px if self._drawn else 0)
        self._dose.setVisible(roomy or not self._said)
        self._how.setVisible(roomy and not self._said and bool(self._how.text()))
        self.done.keep_sign_width(self._appearance.px())
        self._place_done(beside=percent < _LARGE_FROM_PERCENT)

    def _place_done(self, *, beside: bool) -> None:
        """Say what was done at the end of the line, or with large text beneath the other words."""
        for layout in (self._words, self._end):
            layout.removeWidget(self.done)
        place = self._end if beside else self._words
        place.insertWidget(place.count() - 1, self.done)
        wide = self._appearance.px(_DONE_WIDTH) if beside else 0
        self.done.setMinimumWidth(wide)
        self.done.setMaximumWidth(wide or CONTENT_PX)
