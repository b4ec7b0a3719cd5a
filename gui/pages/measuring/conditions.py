"""Conditions of a session: how movements are done, and what may change a reading unseen."""

from PySide6.QtCore import Qt, Slot
from PySide6.QtWidgets import QBoxLayout, QWidget

from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.style.measures import BUTTON_PADDING_PX
from gui.text.wording import conduct_sentence, help_name, posture_name, timing_name, tr
from gui.widgets.buttons import MenuButton, button, give_role
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import column, row, widget_with
from gui.widgets.side_by_side import LARGE_FROM_PERCENT, SideBySide
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.records import AssessmentCondition, Assistance, BodyPosition
from measure.domain.session_facts import ExerciseTiming, SessionState


class ConductChoice(QWidget):
    """Says the conduct of the settings in one line, which opens to be changed."""

    def __init__(self, appearance: Appearance, settings: WindowSettings) -> None:
        super().__init__()
        self.posture = ChoiceRow(
            list(BodyPosition),
            lambda position: posture_name(position).capitalize(),
            title=tr("Body position"),
        )
        self.help = MenuButton(tr("help with the movement"))
        self.help.offer(list(Assistance), lambda kind: help_name(kind).capitalize())
        self.posture.choose(settings.conduct.posture)
        self.help.choose(settings.conduct.help)
        self.words = label("")
        self.words.setWordWrap(False)
        self.change = button(tr("Change"), "line-link")
        self.change.setAccessibleName(tr("Change how the movements are done"))
        apart = tr("Sitting and assisted results are plotted separately.")
        gap = appearance.gap
        self._line = widget_with(row(self.words, self.change, 1, spacing=gap(1)))
        self._choices = widget_with(
            column(
                SideBySide(appearance, (self.posture.row, 3), (self.help, 2), spacing=gap(1)),
                label(apart, "quiet"),
                spacing=gap(1),
            )
        )
        column(self._line, self._choices, on=self)
        self.change.clicked.connect(self._open)
        self.fold()

    def fold(self) -> None:
        """Show the conduct as one line."""
        self.words.setText(f"{conduct_sentence(self.conduct)}.")
        self._line.show()
        self._choices.hide()

    @Slot()
    def _open(self) -> None:
        """Show the choices, the keyboard on the first."""
        self._choices.show()
        self._line.hide()
        self.posture.row.buttons[0].setFocus()

    @property
    def conduct(self) -> AssessmentCondition:
        """How the movements are done, as chosen."""
        return AssessmentCondition(
            posture=self.posture.value or BodyPosition.STANDING,
            help=self.help.value or Assistance.NONE,
        )


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
