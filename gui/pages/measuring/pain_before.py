"""Page before a session at home: three optional ratings of pain, and what comes first."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QWidget

from gui.pages.measuring.conditions import SessionStateChoice
from gui.pages.measuring.first_movement import FirstMovement
from gui.protocol.plan import MovementTask
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.buttons import bind_keys, button
from gui.widgets.layouts import card, column, row, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.pain_scale import QUESTION_PX, PainScale, RatedQuestion, ends_words, scale_ends
from gui.widgets.side_by_side import LARGE_FROM_PERCENT
from gui.widgets.text import label
from measure.domain.records import Pain

#: Space above a question with its scale beneath it, pixels. [technical]
_ABOVE_PX = 18
#: Height of the numbers where text is small, and where they have the page for themselves then, and
#: space between their rows, pixels. [technical]
_SMALL_PX, _ALONE_PX, _BETWEEN_PX = 48, 72, 8
#: Height of the numbers where text is large: three questions are seen at once, pixels. [technical]
_LARGE_PX = 56
#: Text size from which there is least room for them, per cent. [technical]
_LARGEST_FROM_PERCENT = 175


class PainBeforePage(QWidget):
    """Asks for pain now, last night and at its worst since yesterday."""

    #: (Pain, SessionState)
    answered = Signal(object, object)
    #: The same, where nothing is to be measured.
    noted = Signal(object, object)
    back = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.sentence = label(tr("How much pain today?"), "display")
        self.first = FirstMovement(appearance)
        self.now, self.night, self.worst = (
            PainScale(question, with_ends=False)
            for question in (
                tr("Pain now"),
                tr("Pain last night"),
                tr("Worst pain since yesterday"),
            )
        )
        self.state = SessionStateChoice(
            appearance,
            tr("Pain relief taken in the last four hours"),
        )
        self.state.answer_beside(QUESTION_PX + appearance.gap(0.5))
        self.go = button(tr("Start"), "main", key=tr("Enter"))
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.go.clicked.connect(self._answer)
        self.leave.clicked.connect(self._go_back)
        #: Whether pain is noted alone, and nothing measured after it.
        self._alone = False
        self._whose = ""
        #: Who went back from the questions, with answers that are still there.
        self._went_back: str | None = None
        #: How much has to be answered: beneath the heading where text is large, and beside the
        #: words over the scales.
        self._skips = (label("", "quiet"), label("", "quiet"))
        self._legend = RatedQuestion(appearance, self._skips[1], widget_with(scale_ends()))
        self._ends = label(ends_words(), "quiet")
        self._ends.setAlignment(Qt.AlignmentFlag.AlignRight)
        now = label(tr("Now, at rest"), "strong")
        now.setWordWrap(False)
        rated = [
            RatedQuestion(appearance, words, scale)
            for words, scale in (
                (widget_with(row(now, (self._ends, 1))), self.now),
                (label(tr("Last night"), "strong"), self.night),
                (label(tr("Worst in the last 24 hours"), "strong"), self.worst),
            )
        ]
        self._scales = column(self._legend, *rated)
        frame_page(
            self,
            column(self.sentence, self._skips[0], spacing=appearance.gap(0.5)),
            card(self._scales),
            card(self.state),
            self.first,
            1,
            buttons=[self.leave, self.go],
        )
        bind_keys(self, self.go, "Return", "Enter")
        bind_keys(self, self.leave, "Escape")
        for scale in (self.now, self.night, self.worst):
            scale.picked.connect(self._fit_way_on)
        appearance.changed.connect(self._fit)
        self._fit()

    @Slot()
    def _fit(self) -> None:
        """Say what numbers mean above all scales; where text is large, at the first question."""
        large = self._appearance.percent >= LARGE_FROM_PERCENT
        self._legend.setVisible(not large)
        small = _ALONE_PX if self._alone else _SMALL_PX
        largest = self._appearance.percent >= _LARGEST_FROM_PERCENT
        above, high = (_ABOVE_PX, _LARGE_PX) if largest else (3 * GAP_PX, _LARGE_PX + GAP_PX)
        self._scales.setSpacing(above if large else _BETWEEN_PX)
        for part in (self._ends, self._skips[0]):
            part.setVisible(large)
        for scale in (self.now, self.night, self.worst):
            for choice in scale.buttons:
                choice.setFixedHeight(high if large else small)

    def ask(
        self,
        tasks: Sequence[MovementTask],
        minutes: int,
        *,
        after_exercises: bool = False,
        whose: str = "",
    ) -> None:
        """Ask anew, and show what comes first.

        Parameters
        ----------
        tasks, minutes
            What will be measured, and about how long it takes.
        after_exercises
            Whether the log of exercises says already that they were done.
        whose
            Who is asked: whoever went back finds what they had answered.
        """
        self._ask_anew(whose, alone=False, after_exercises=after_exercises)
        self.first.show_tasks(tasks, minutes)
        self.go.setFocus()

    def ask_alone(self, whose: str) -> None:
        """Ask anew where nothing is measured: there is something to save from an answer on."""
        self._ask_anew(whose, alone=True)
        self.now.buttons[0].setFocus()

    def _ask_anew(self, whose: str, *, alone: bool, after_exercises: bool = False) -> None:
        if whose != self._went_back:
            for scale in (self.now, self.night, self.worst):
                scale.choose(None)
            self.state.ask(after_exercises=after_exercises)
        self._whose, self._went_back, self._alone = whose, None, alone
        self.first.setHidden(alone)
        skip = tr("One number is enough.") if alone else tr("You can skip any of these.")
        for words in self._skips:
            words.setText(skip)
        self._fit()
        self._fit_way_on()

    @property
    def _pain(self) -> Pain:
        return Pain(rest=self.now.value, night=self.night.value, worst_24h=self.worst.value)

    @Slot()
    def _fit_way_on(self) -> None:
        """Say what the way on does, or what it lacks."""
        lacking = self._alone and self._pain == Pain()
        self.go.setEnabled(not lacking)
        alone = tr("Choose a number first") if lacking else tr("Save")
        self.go.say(alone if self._alone else tr("Start"))

    @Slot()
    def _go_back(self) -> None:
        self._went_back = self._whose
        self.back.emit()

    @Slot()
    def _answer(self) -> None:
        (self.noted if self._alone else self.answered).emit(self._pain, self.state.state)
