"""Page before a session at home: three optional ratings of pain, and what comes first."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QBoxLayout, QWidget

from gui.pages.measuring.first_movement import FirstMovement
from gui.pages.measuring.session_state import SessionStateChoice
from gui.protocol.plan import MovementTask
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, row
from gui.widgets.page_frame import frame_page
from gui.widgets.pain_scale import PainScale
from gui.widgets.text import label
from measure.domain.records import Pain

#: Text size from which a question stands above its scale, per cent. [technical]
_ABOVE_FROM_PERCENT = 130
#: Width of the questions beside their scales, pixels. [technical]
_QUESTION_PX = 190


class _Rated(QWidget):
    """A question beside its scale, or above it where text is large."""

    def __init__(self, appearance: Appearance, title: str, scale: PainScale) -> None:
        super().__init__()
        self._appearance = appearance
        self._title = label(title, "strong")
        self._layout = row(self._title, (scale, 1), on=self, spacing=appearance.gap(1))
        self._layout.setAlignment(self._title, Qt.AlignmentFlag.AlignTop)
        appearance.changed.connect(self.arrange)
        self.arrange()

    @Slot()
    def arrange(self) -> None:
        """Put the question where it belongs at the present text size."""
        above = self._appearance.percent >= _ABOVE_FROM_PERCENT
        way = QBoxLayout.Direction
        self._layout.setDirection(way.TopToBottom if above else way.LeftToRight)
        self._title.setFixedWidth(_QUESTION_PX if not above else self.maximumWidth())
        if above:
            self._title.setMinimumWidth(0)
        # Its text begins where the numbers have their middle.
        self._title.setContentsMargins(0, 0 if above else self._appearance.gap(1), 0, 0)


class PainBeforePage(QWidget):
    """Asks for pain now, last night and at its worst since yesterday."""

    #: (Pain, SessionState)
    answered = Signal(object, object)
    back = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sentence = label(tr("How does the shoulder feel today?"), "title")
        self.first = FirstMovement(appearance)
        self.now, self.night, self.worst = (
            PainScale(question, with_ends=last)
            for question, last in (
                (tr("Pain now"), False),
                (tr("Pain last night"), False),
                (tr("Worst pain since yesterday"), True),
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
            _Rated(appearance, tr("Now, at rest"), self.now),
            _Rated(appearance, tr("Last night"), self.night),
            _Rated(appearance, tr("Worst in the last 24 hours"), self.worst),
            label(tr("You can skip any of these."), "small"),
            spacing=appearance.gap(1),
        )
        frame_page(
            self,
            self.first,
            self.sentence,
            scales,
            self.state,
            1,
            buttons=[self.leave, self.go],
            spacing=appearance.gap(1.5),
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
