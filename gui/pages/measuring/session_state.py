"""Choice of the shoulder's state in a session: before or after exercises, pain relief taken."""

from PySide6.QtCore import Qt, Slot
from PySide6.QtWidgets import QBoxLayout, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import BUTTON_PADDING_PX
from gui.text.wording import timing_name, tr
from gui.widgets.buttons import give_role
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import column, row
from gui.widgets.side_by_side import LARGE_FROM_PERCENT
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.session_facts import ExerciseTiming, SessionState


class SessionStateChoice(QWidget):
    """Asks what may change a reading and no camera sees; nothing of it has to be answered.

    Parameters
    ----------
    pain_relief
        The words of the tick for pain relief.
    ticked_elsewhere
        Whether the tick for pain relief is put among other things.
    """

    def __init__(
        self, appearance: Appearance, pain_relief: str, *, ticked_elsewhere: bool = False
    ) -> None:
        super().__init__()
        self.timing = ChoiceRow(
            list(ExerciseTiming), timing_name, may_be_empty=True, title=tr("Today's exercises")
        )
        self.logged = label(
            tr("You logged exercises in the last hour, so these results count as after exercise."),
            "quiet",
        )
        self.pain_relief = WrappingCheckBox(appearance, pain_relief)
        self._after_exercises = False
        self._appearance, self._beside_px = appearance, 0
        self._asked = label(tr("Today's exercises"))
        gap = appearance.gap
        answers: list[QWidget] = [self.timing.row, self.logged]
        if not ticked_elsewhere:
            answers.append(self.pain_relief)
        self._layout = row(self._asked, (column(*answers, 1, spacing=gap(1.5)), 1), on=self)
        self._layout.setSpacing(gap(1))
        appearance.changed.connect(self._fit)
        self._fit()
        self.ask()

    def answer_beside(self, px: int) -> None:
        """Let the answers begin so far beside the question, pixels; beneath it for zero."""
        self._beside_px = px
        self._fit()

    @Slot()
    def _fit(self) -> None:
        """Put the answers at their place, or beneath the question where text is large."""
        gap, roomy = self._appearance.gap(1), self._appearance.percent < LARGE_FROM_PERCENT
        beside, way = self._beside_px if roomy else 0, QBoxLayout.Direction
        self._layout.setDirection(way.LeftToRight if beside else way.TopToBottom)
        self._asked.setMinimumWidth(max(0, beside - gap))
        give_role(self._asked, "strong" if beside else "title")
        # Beside the answers it stands on the line of their words.
        self._asked.setAlignment(Qt.AlignmentFlag.AlignTop)
        self._asked.setContentsMargins(0, BUTTON_PADDING_PX[0] if beside else 0, 0, 0)

    def ask(self, *, after_exercises: bool = False) -> None:
        """Ask anew.

        Parameters
        ----------
        after_exercises
            Whether the log of exercises says already that they were done.
        """
        self.timing.choose(None)
        self.pain_relief.setChecked(False)
        self._after_exercises = after_exercises
        for question in (self._asked, self.timing.row):
            question.setVisible(not after_exercises)
        self.logged.setVisible(after_exercises)

    @property
    def state(self) -> SessionState:
        """What was said; no tick says nothing."""
        return SessionState(
            timing=ExerciseTiming.AFTER if self._after_exercises else self.timing.value,
            pain_relief=True if self.pain_relief.isChecked() else None,
        )
