"""Page before a session at home: three optional ratings of pain, and what comes first."""

from collections.abc import Sequence

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QLabel, QWidget

from gui.pages.measuring.first_movement import FirstMovement
from gui.pages.measuring.session_state import SessionStateChoice
from gui.protocol.plan import MovementTask
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, separator, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.pain_scale import PainScale, scale_ends
from gui.widgets.side_by_side import SideBySide
from gui.widgets.text import label
from measure.domain.records import Pain

#: Width of the questions beside their scales, pixels. [technical]
_QUESTION_PX = 250


class _Rated(SideBySide):
    """Words beside a scale, or above it where text is large."""

    def __init__(self, appearance: Appearance, words: QLabel, scale: QWidget) -> None:
        self._words = words
        super().__init__(appearance, words, (scale, 1), spacing=appearance.gap(0.5))

    @Slot()
    def arrange(self) -> None:
        """Give the words their width beside the scale, and the whole above it."""
        super().arrange()
        self._words.setMinimumWidth(0 if self.stacked else _QUESTION_PX)
        self._words.setMaximumWidth(self.maximumWidth() if self.stacked else _QUESTION_PX)


class PainBeforePage(QWidget):
    """Asks for pain now, last night and at its worst since yesterday."""

    #: (Pain, SessionState)
    answered = Signal(object, object)
    back = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sentence = label(tr("How is the shoulder today?"), "display")
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
            appearance, tr("I have taken pain relief in the last four hours")
        )
        self.go = button(tr("Start"), "main", key=tr("Enter"))
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.go.clicked.connect(self._answer)
        self.leave.clicked.connect(self.back)
        scales = card(
            *(
                _Rated(appearance, words, scale)
                for words, scale in (
                    (label(tr("You can skip any of these."), "quiet"), widget_with(scale_ends())),
                    (label(tr("Now, at rest"), "strong"), self.now),
                    (label(tr("Last night"), "strong"), self.night),
                    (label(tr("Worst in the last 24 hours"), "strong"), self.worst),
                )
            ),
            separator(),
            self.state,
            spacing=appearance.gap(1),
        )
        frame_page(
            self,
            self.sentence,
            scales,
            self.first,
            1,
            buttons=[self.leave, self.go],
        )

    def ask(
        self,
        tasks: Sequence[MovementTask],
        minutes: int,
        *,
        mirrored: bool = False,
        after_exercises: bool = False,
    ) -> None:
        """Ask anew, and show what comes first.

        Parameters
        ----------
        tasks, minutes
            What will be measured, and about how long it takes.
        mirrored
            Whether drawings are turned about, as in a mirror.
        after_exercises
            Whether the log of exercises says already that they were done.
        """
        for scale in (self.now, self.night, self.worst):
            scale.choose(None)
        self.state.ask(after_exercises=after_exercises)
        self.first.show_tasks(tasks, minutes, mirrored=mirrored)
        self.go.setFocus()

    @Slot()
    def _answer(self) -> None:
        self.answered.emit(
            Pain(rest=self.now.value, night=self.night.value, worst_24h=self.worst.value),
            self.state.state,
        )
