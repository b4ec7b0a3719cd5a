"""Page before a session at home: three optional ratings of pain."""

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QWidget

from gui.style.appearance import Appearance
from gui.text.wording import timing_name, tr
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import column, row, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.records import Pain
from measure.domain.session_facts import ExerciseTiming, SessionState


class PainBeforePage(QWidget):
    """Asks for pain now, last night and at its worst since yesterday."""

    #: (Pain, SessionState)
    answered = Signal(object, object)
    back = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sentence = FittedSentence(appearance, lines=1)
        self.sentence.say(tr("How does the shoulder feel today?"))
        self.now, self.night, self.worst = (
            ChoiceRow(list(range(11)), str, may_be_empty=True, large=True, title=title)
            for title in (tr("pain now"), tr("pain last night"), tr("worst pain since yesterday"))
        )
        self.timing = ChoiceRow(
            list(ExerciseTiming), timing_name, may_be_empty=True, title=tr("Today's exercises")
        )
        self.logged = label(
            tr("Exercises were logged within the last hour: these results count as after them."),
            "quiet",
        )
        self.pain_relief = WrappingCheckBox(
            appearance, tr("I have taken pain relief in the last four hours")
        )
        self._after_exercises = False
        self.go = button(tr("Continue"), "main", key=tr("Enter"))
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.go.clicked.connect(self._answer)
        self.leave.clicked.connect(self.back)
        questions = column(self.sentence, spacing=appearance.gap(1.5))
        for title, choices in (
            (tr("Now, at rest"), self.now),
            (tr("Last night"), self.night),
            (tr("The worst since yesterday"), self.worst),
        ):
            questions.addWidget(label(title, "lead"))
            questions.addWidget(choices.row, 1)
        questions.addWidget(
            label(
                tr("0 is no pain, 10 the worst imaginable. Leave out what you do not want to say."),
                "quiet",
            )
        )
        self._question = widget_with(
            row(label(tr("Today's exercises")), (self.timing.row, 1), spacing=appearance.gap(2))
        )
        for content in (self._question, self.logged, self.pain_relief):
            questions.addWidget(content)
        column(
            (scrollable(widget_with(questions)), 1),
            ButtonRow([self.leave, self.go]),
            on=self,
            margins=(24, 16, 24, 16),
            spacing=appearance.gap(1.5),
        )

    def ask(self, *, after_exercises: bool = False) -> None:
        """Ask anew.

        Parameters
        ----------
        after_exercises
            Whether the log of exercises says already that they were done.
        """
        for choices in (self.now, self.night, self.worst, self.timing):
            choices.choose(None)
        self.pain_relief.setChecked(False)
        self._after_exercises = after_exercises
        self._question.setVisible(not after_exercises)
        self.logged.setVisible(after_exercises)
        self.go.setFocus()

    @Slot()
    def _answer(self) -> None:
        self.answered.emit(
            Pain(rest=self.now.value, night=self.night.value, worst_24h=self.worst.value),
            SessionState(
                timing=ExerciseTiming.AFTER if self._after_exercises else self.timing.value,
                pain_relief=True if self.pain_relief.isChecked() else None,
            ),
        )
