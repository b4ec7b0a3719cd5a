"""Page between two movements: what comes next and how to stand for it."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from gui.protocol.plan import faces_away_from_screen
from gui.session.measurement_session import MeasurementSession
from gui.style.appearance import Appearance
from gui.style.measures import CARD_PADDING_PX, GAP_PX
from gui.text.session_wording import next_sentence, without_reading
from gui.text.wording import movement_plainly, task_title, tr
from gui.widgets.buttons import bind_keys, button
from gui.widgets.figures.position_pair import PositionPair
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import card, column, strip
from gui.widgets.page_frame import frame_page
from gui.widgets.side_by_side import LARGE_FROM_PERCENT
from gui.widgets.text import label

#: Most height of the word on the camera's bar, pixels. [technical]
_NAME_PX = 27
#: Up to this text size the drawings have room for words beneath them, per cent. [technical]
_NAMED_PERCENT = 150


class NextTaskPage(QWidget):
    """Shows the next task; begins it, measures the last again, or ends the session."""

    begin = Signal()
    again = Signal()
    end = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.pain_words = label("", "lead")
        #: Why the movement before gave no reading.
        self.without_reading = label("")
        self._strip = strip(self.without_reading)
        #: Who is measured.
        self.person_name = ""
        self.title = label("", "lead")
        self.hint = label(
            tr("You will not see the screen: listen for the voice and the tones."), "lead"
        )
        self.sentence = FittedSentence(appearance, lines=1, upright=Qt.AlignmentFlag.AlignTop)
        self.position = PositionPair(appearance, "lead", named_px=min(appearance.px(), _NAME_PX))
        self.figure = self.position.figure
        self.go = button(tr("Start"), "main", key=tr("Enter"))
        self.repeat = button(tr("Repeat the last movement"), key=tr("A"))
        self.finish = button(tr("Finish and save"), key=tr("Escape"))
        self.go.clicked.connect(self.begin)
        self.repeat.clicked.connect(self.again)
        self.finish.clicked.connect(self.end)
        self._lay_out()
        bind_keys(self, self.go, "Return", "Enter")
        bind_keys(self, self.repeat, "A")
        bind_keys(self, self.finish, "Escape")

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        frame_page(
            self,
            column(self.title, self.sentence, spacing=gap()),
            self.pain_words,
            (self._drawings(), 1),
            self.hint,
            self._strip,
            buttons=[self.finish, self.repeat, self.go],
            caution=True,
        )

    def _drawings(self) -> QWidget:
        """Return the card of the drawings, which have its height but a little."""
        made = card((self.position, 1))
        layout = made.layout()
        if layout is not None:
            layout.setContentsMargins(CARD_PADDING_PX, 2 * GAP_PX, CARD_PADDING_PX, 2 * GAP_PX)
        return made

    def show_next(self, measuring: MeasurementSession, *, mirrored: bool) -> None:
        """Show the task that comes next."""
        guide = measuring.guide
        task = guide.upcoming or guide.task
        here, of = guide.task_position
        title = tr("Next, {here} of {of}: {task}").format(
            here=min(here + 1, of), of=of, task=task_title(task.movement, task.side)
        )
        small = self._appearance.percent < LARGE_FROM_PERCENT
        plainly = movement_plainly(task.movement) if small else ""
        self.title.setText("  \u00b7  ".join(filter(None, (self.person_name, title, plainly))))
        pain, nothing = guide.pain_at_limit, guide.gave_nothing
        self._strip.setVisible(nothing is not None)
        if nothing is not None:
            self.without_reading.setText(without_reading(nothing))
        self.pain_words.setVisible(pain is not None)
        self.pain_words.setText(
            tr(
                "You rated the pain in the last movement {pain} of 10. The limit is {limit}. "
                "Let the arm rest. Start the next movement only if the pain has eased, or stop "
                "for today."
            ).format(pain=pain, limit=guide.pain_limit)
        )
        self.sentence.say(next_sentence(guide))
        self.position.show_movement(task.movement, task.side, is_mirrored=mirrored)
        self.hint.setVisible(faces_away_from_screen(task.movement))
        self.position.set_captions(shown=self._appearance.percent <= _NAMED_PERCENT)
        (self.go if pain is None else self.finish).setFocus()
