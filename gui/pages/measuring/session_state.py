"""Choice of the shoulder's state in a session: before or after exercises, pain relief taken."""

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QWidget

from gui.style.appearance import Appearance
from gui.text.wording import timing_name, tr
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import column, row, widget_with
from gui.widgets.side_by_side import LARGE_FROM_PERCENT, SideBySide
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.session_facts import ExerciseTiming, SessionState


class SessionStateChoice(QWidget):
    """Asks what may change a reading and no camera sees; nothing of it has to be answered.

    Parameters
    ----------
    pain_relief
        The words of the tick for pain relief.
    beside_px
        Where the answers begin beside the question, pixels; None directly after it.
    """

    def __init__(
        self, appearance: Appearance, pain_relief: str, *, beside_px: int | None = None
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
        self._appearance, self._beside_px = appearance, beside_px
        between = appearance.gap(2)
        self._asked = label(tr("Today's exercises"), "strong")
        self._question = widget_with(row(self._asked, (self.timing.row, 1), spacing=between))
        shown = SideBySide(
            appearance,
            *((first, 6 if beside_px is None else 0) for first in (self._question, self.logged)),
            (self.pain_relief, 5),
            spacing=appearance.gap(2),
        )
        column(shown, on=self)
        appearance.changed.connect(self._fit)
        self._fit()
        self.ask()

    @Slot()
    def _fit(self) -> None:
        """Let the answers begin at their place, or after the question where text is large."""
        large = self._appearance.percent >= LARGE_FROM_PERCENT
        beside = 0 if large or self._beside_px is None else self._beside_px
        self._asked.setMinimumWidth(max(0, beside - self._appearance.gap(2)))

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
        self._question.setVisible(not after_exercises)
        self.logged.setVisible(after_exercises)

    @property
    def state(self) -> SessionState:
        """What was said; no tick says nothing."""
        return SessionState(
            timing=ExerciseTiming.AFTER if self._after_exercises else self.timing.value,
            pain_relief=True if self.pain_relief.isChecked() else None,
        )
