"""Drawn person of the round: does the exercise in step with the round's phases."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QWidget

from gui.drawing.scene import paint_scene, paint_standing
from gui.drawing.shown_movements import BACK_S, OUT_S, REST_S, STAY_S, Shown, shown_exercise
from gui.protocol.exercise_round import ExerciseRound, RoundPhase
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.exercise_wording import round_task_title
from gui.text.wording import tr
from gui.widgets.figures.position_figure import motion_wanted
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side


class RoundFigure(PaintedWidget):
    """Shows an exercise of the list; out of sight for one of the clinician's own."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self._shown: Shown | None = None
        self._side = Side.RIGHT
        self._time_s: float | None = None
        self._at_rest = self._paused = False

    @property
    def time_s(self) -> float | None:
        """Moment of the drawn loop, seconds; None for a still drawing."""
        return self._time_s

    def show_round(self, guided: ExerciseRound) -> None:
        """Show where the round stands."""
        task = guided.task
        listed = task.planned.exercise.listed
        self.setVisible(listed is not None)
        self._shown = None if listed is None else shown_exercise(listed)
        self._side = task.side or Side.RIGHT
        name = tr("drawing: {exercise}").format(exercise=round_task_title(task))
        if name != self.accessibleName():
            self.setAccessibleName(name)
        still = self._shown is None or guided.paused or not motion_wanted()
        self._time_s = None if still else _moment(guided)
        self._paused = guided.paused
        self._at_rest = guided.paused or guided.phase is RoundPhase.REST
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(340, 100)

    def minimumSizeHint(self) -> QSize:
        return QSize(80, 100)

    def paint(self, painter: QPainter) -> None:
        # Nothing drawn comes close to the line above.
        place = QRectF(self.rect()).adjusted(0, GAP_PX, 0, 0)
        if self._shown is not None and self._paused:
            # Nothing is held, and nothing is done.
            paint_standing(painter, self.appearance, place, (self._side,))
        elif self._shown is not None:
            paint_scene(
                painter,
                self.appearance,
                place,
                self._shown,
                self._side,
                time_s=self._time_s,
                close=True,
                at_rest=self._at_rest,
            )


def _moment(guided: ExerciseRound) -> float:
    """Return the moment of the drawn loop, seconds, that goes with the round's phase."""
    share = guided.share
    return {
        RoundPhase.READY: guided.gone_s,
        RoundPhase.MOVE: REST_S + share * OUT_S,
        RoundPhase.HOLD: REST_S + OUT_S,
        RoundPhase.BACK: REST_S + OUT_S + STAY_S + share * BACK_S,
        RoundPhase.REST: 0.0,
        RoundPhase.SWING: guided.gone_s,
        RoundPhase.OVER: 0.0,
    }[guided.phase]
