"""Pain page after a movement: its reading, how much it hurt, what stopped it, how to go on.

All in one visit to the computer: the next movement begins by itself once the person stands for it.
"""

from collections.abc import Mapping
from functools import partial

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QWidget

from gui.drawing.reading_on_body import Reading
from gui.protocol.plan import NextAction, SessionMode, SessionPlan
from gui.protocol.return_detector import ReturnDetector
from gui.session.measurement_session import MeasurementSession
from gui.style.appearance import Appearance
from gui.style.measures import CARD_PADDING_PX
from gui.text.result_wording import difference_words, short_reason, value_and_range
from gui.text.session_wording import correction_next_time
from gui.text.wording import (
    advice_words,
    finding_words,
    measurement_words,
    stopped_by_name,
    task_title,
    tr,
)
from gui.widgets.buttons import bind_keys, button, give_role
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.figures.position_figure import PositionView
from gui.widgets.figures.reading_figure import ReadingFigure
from gui.widgets.layouts import card, column, row, separator, strip
from gui.widgets.page_frame import frame_page
from gui.widgets.pain_scale import PainScale
from gui.widgets.side_by_side import LARGE_FROM_PERCENT, SideBySide
from gui.widgets.text import NumberLine, SignedLine, label
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Status
from measure.domain.movements import Movement, Unit
from measure.domain.records import LimitingFactor
from measure.domain.session_comparison import of_session, side_difference
from measure.live.events import LiveFrame
from measure.progress.home_programme import USUAL_PAIN_LIMIT

#: Width and height of the reading drawn on a body, of one above words, and of a movement that has
#: no reading, pixels. [technical]
_FIGURE_PX, _FIGURE_OF_WORDS_PX, _MOVEMENT_PX = (308, 350), (308, 340), (308, 280)
#: Width and height of the movement that follows, beside its name, and beside a larger one, pixels.
#: [technical]
_NEXT_PX, _NEXT_LARGE_PX = (96, 132), (84, 92)
#: Height of the answers, which are pressed in passing, and of those in larger text, pixels.
#: [technical]
_ANSWER_PX, _ANSWER_LARGE_PX = 80, 62
#: Text size up to which they have room to be that high, per cent. [technical]
_TALL_PERCENT = 150


class PainPage(QWidget):
    """Asks for pain 0 to 10 and what ended the movement; both may be left out."""

    #: (pain or None, LimitingFactor or None, NextAction)
    answered = Signal(object, object, object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.sentence = label(tr("How much did it hurt?"), "display")
        #: Who is measured.
        self.person_name = ""
        #: Whose movement it was; where there is no room for its drawing, with the reading.
        self.line = label("", "lead")
        self.on_body = ReadingFigure(appearance)
        self.on_body.setFixedSize(*_FIGURE_PX)
        #: The movement as it is done, with advice on it.
        self.movement = PositionView(appearance, still=True, close=True)
        self.movement.setFixedSize(*_MOVEMENT_PX)
        self.number = label("", "display")
        self.interval = label("", "title")
        #: What to do about a missing reading.
        self.advice = label("", "strong")
        self.difference = label("", "strong")
        #: That there is no reading, and why, where there is no room for its drawing.
        self.refused = SignedLine("", "", sign_role="strong")
        self.pain = PainScale(tr("Pain in the movement"))
        self.reason = ChoiceRow(
            list(LimitingFactor),
            stopped_by_name,
            may_be_empty=True,
            title=tr("what stopped it"),
        )
        #: The movement that was measured, and its reading in words.
        self._task_title, self._result = "", ""
        #: Whether there is no reading.
        self._lacks = False
        self._back: ReturnDetector | None = None
        self._limit = USUAL_PAIN_LIMIT
        for choices in (self.pain, self.reason):
            choices.picked.connect(self._note_answer)
        self.next_title = label("", "title")
        self.next_words = label("")
        #: The movement that follows, where there is room for it.
        self.next_figure = PositionView(appearance, still=True, close=True)
        self.finish = button(tr("Finish and save"), key=tr("Escape"))
        self.repeat = button(tr("Repeat movement"), key=tr("A"))
        self.done = button(tr("Continue"), "main", key=tr("Enter"))
        for source, after in (
            (self.finish, NextAction.STOP),
            (self.repeat, NextAction.AGAIN),
            (self.done, NextAction.GO_ON),
        ):
            source.clicked.connect(partial(self._answer, after))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(tr("How much did it hurt?"))
        self._lay_out()
        bind_keys(self, self.done, "Return", "Enter")
        bind_keys(self, self.finish, "Escape")
        bind_keys(self, self.repeat, "A")
        appearance.changed.connect(self._fit)
        self._fit()

    def _lay_out(self) -> None:
        """Put the questions and what follows beside the reading, or above it."""
        gap = self._appearance.gap
        self._number = NumberLine(self.number, self.interval, spacing=gap(1.5))
        words = column(self.difference, self._number, self.advice, spacing=gap(0.5))
        self._reading = card(1, self.on_body, self.movement, words, 1, spacing=gap(1))
        stopped = column(
            label(tr("What stopped the movement?"), "title"), self.reason.row, spacing=gap(1)
        )
        self._next_rule = separator()
        self._next_lines = column(1, self.next_title, self.next_words, 1, spacing=gap(0.5))
        self._next_row = row(self.next_figure, (self._next_lines, 1), spacing=gap(1))
        self._next = QFrame()
        self._next_room = column(
            self._next_rule, (self._next_row, 1), on=self._next, spacing=gap(1.5)
        )
        self._strip = strip(self.refused)
        # What follows is as high as its words, and ends with the reading; room is between.
        self._asked = column(self.pain, 1, stopped, 1, self._strip, self._next, spacing=gap(4))
        self._heading = column(self.line, self.sentence, spacing=gap(0.5))
        frame_page(
            self,
            self._heading,
            SideBySide(self._appearance, (self._asked, 8), (self._reading, 5), spacing=gap(4)),
            1,
            buttons=[self.finish, self.repeat, self.done],
            caution=True,
            spacing=gap(1.5),
        )

    @Slot()
    def _fit(self) -> None:
        """Say the reading in a line in place of its drawing where text is large."""
        roomy = self._appearance.percent < LARGE_FROM_PERCENT
        self._reading.setVisible(roomy)
        self.line.setText(self._line(with_reading=not roomy))
        self._strip.setVisible(not roomy and self._lacks)
        self._heading.setSpacing(self._appearance.gap(1 if roomy else 0.5))
        tall = self._appearance.percent <= _TALL_PERCENT
        self._fit_next(roomy=roomy, framed=tall)
        for choice in (*self.pain.buttons, *self.reason.row.buttons):
            choice.setMinimumHeight(_ANSWER_PX if roomy else _ANSWER_LARGE_PX if tall else 0)
        self._asked.setSpacing(self._appearance.gap(4 if tall else 3))

    def _fit_next(self, *, roomy: bool, framed: bool) -> None:
        """Frame what follows, with its drawing, or set it off by a rule where text is large."""
        last, gap = self.finish.isHidden(), self._appearance.gap
        # Where there is little room the button says that nothing follows.
        spare = not roomy and self._lacks and last
        self._next.setHidden(spare)
        give_role(self.next_title, "title" if roomy else "strong")
        self.next_figure.setHidden(last or not framed)
        self.next_figure.setFixedSize(*(_NEXT_PX if roomy else _NEXT_LARGE_PX))
        self._next_rule.setHidden(framed)
        give_role(self._next, "card" if framed else "")
        beside, above = (CARD_PADDING_PX, gap(2)) if framed else (0, 0)
        self._next_room.setContentsMargins(beside, above, beside, above)
        self._next_lines.setSpacing(gap(0.5 if roomy else 0))

    def _line(self, *, with_reading: bool) -> str:
        """Return whose movement it was, and its reading where that is wanted."""
        who = f"{self.person_name}  \u00b7  " if self.person_name else ""
        result = f": {self._result}" if with_reading and self._result else ""
        return f"{who}{self._task_title}{result}"

    def ask(self, measuring: MeasurementSession) -> None:
        """Ask about the movement that has just ended."""
        task, measurement = measuring.guide.task, measuring.guide.measurement
        self._show_reading(measurement, stopped=measuring.guide.stopped_for_pain)
        self.movement.show_movement(task.movement, task.side)
        self._task_title = task_title(task.movement, task.side)
        middle = measurement.value if measurement else None
        low, high = (measurement.low, measurement.high) if measurement else (None, None)
        self.on_body.show_reading(
            Reading(movement=task.movement, side=task.side, value=middle, low=low, high=high)
        )
        self._show_difference(measuring.guide, measuring.earlier)
        guide = measuring.guide
        self.pain.choose(None)
        self.reason.choose(LimitingFactor.PAIN if guide.stopped_for_pain else None)
        alone = measuring.mode is SessionMode.HOME and guide.upcoming is not None
        self._back = ReturnDetector() if alone and not guide.stopped_for_pain else None
        self._limit = guide.pain_limit
        self._show_next(guide)
        self._fit()
        self.setFocus()

    def _show_reading(self, measurement: Measurement | None, *, stopped: bool) -> None:
        """Say the reading, or that there is none and why; advice only if pain did not stop it."""
        value, interval = "", ""
        if measurement is not None:
            value, interval = value_and_range(measurement)
        lacks = measurement is not None and measurement.status is Status.REFUSED
        self._lacks = lacks
        self._result = "" if lacks else value[:1].lower() + value[1:]
        degrees = measurement is not None and measurement.unit is Unit.DEGREES and bool(interval)
        if measurement is not None and degrees:
            self._result = measurement_words(measurement)
        advice = ""
        if measurement is not None and lacks:
            hurt = tr("Stopped because it hurt.")
            interval, advice = (hurt, "") if stopped else _reason(measurement)
            self.refused.say(f"{value}.", advice or interval)
        self.advice.setText(advice)
        self.advice.setHidden(not advice)
        self._number.setHidden(not value)
        self.number.setText(value)
        self.interval.setText(interval)
        give_role(self.number, "number" if degrees else "title")
        give_role(self.interval, "lead" if degrees else "" if lacks else "quiet")
        self._number.set_level(degrees)
        self.on_body.setFixedSize(*(_FIGURE_PX if degrees else _FIGURE_OF_WORDS_PX))
        self.on_body.setHidden(bool(advice))
        self.movement.setVisible(bool(advice))

    def _show_difference(
        self, guide: SessionPlan, earlier: Mapping[tuple[Movement, Side], Measurement]
    ) -> None:
        """Say at once how the sides differ, where both were measured today."""
        task = guide.task
        results = {**earlier, **of_session(outcome.measurement for outcome in guide.outcomes)}
        left, right = (results.get((task.movement, side)) for side in Side)
        words = ""
        if left is not None and right is not None:
            words = difference_words(task.movement, side_difference(left, right))
        self.difference.setText(words[:1].upper() + words[1:])
        self.difference.setVisible(bool(words))

    @Slot()
    def _note_answer(self) -> None:
        if self._back is not None:
            self._back.answer()
        self._say_next()

    @Slot(object)
    def take_frame(self, frame: LiveFrame) -> None:
        """Go on by itself when the pain was said and the person has gone back into place."""
        if self._back is None or self._at_limit or not self.isVisible():
            return
        if self._back.update(frame) and self.pain.value is not None:
            self._answer(NextAction.GO_ON)

    def _show_next(self, guide: SessionPlan) -> None:
        """Say what follows, so that nobody has to wait at the computer for it."""
        upcoming = guide.upcoming
        self.finish.setVisible(upcoming is not None)
        self.done.say(tr("Continue") if upcoming else tr("Finish"))
        if upcoming is not None:
            self.next_figure.show_movement(upcoming.movement, upcoming.side)
        if upcoming is None:
            self.next_title.setText(tr("This was the last movement"))
        else:
            here, of = guide.task_position
            self.next_title.setText(
                tr("Next, {here} of {of}: {task}").format(
                    here=here + 1, of=of, task=task_title(upcoming.movement, upcoming.side)
                )
            )
        self._say_next()

    @property
    def _at_limit(self) -> bool:
        """Whether the pain that was said asks for a rest; nothing begins by itself then."""
        return self.pain.value is not None and self.pain.value >= self._limit

    def _say_next(self) -> None:
        """Say that a number is missing, then what leads on: the button or standing in place."""
        missing, alone = self.pain.value is None, self._back is not None
        if self.finish.isHidden():
            first = tr("Choose a number, then Finish to see the results.")
            words = first if missing else tr("Finish shows the results.")
        elif self._at_limit:
            words = tr("That much pain asks for a rest. Nothing starts by itself.")
        elif missing:
            first = tr("Choose a number, then go to your spot or Continue.")
            words = first if alone else tr("Choose a number, then Continue.")
        else:
            ready = tr("Press Continue when you are ready.")
            words = tr("Press Continue, or go to your spot.") if alone else ready
        self.next_words.setText(words)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        text = event.text()
        if text.isascii() and text.isdigit():
            self._choose(int(text))
        elif text.lower() == "x":
            self._choose(10)
        else:
            super().keyPressEvent(event)

    def _choose(self, pain: int) -> None:
        self.pain.choose(pain)
        self._note_answer()

    def _answer(self, after: NextAction, _checked: bool = False) -> None:
        self.answered.emit(self.pain.value, self.reason.value, after)


def _reason(measurement: Measurement) -> tuple[str, str]:
    """Return why there is no reading, and what to do about it, which may be nothing."""
    reasons = measurement.refused_for[:1]
    finding, advice = finding_words(reasons), advice_words(reasons)
    next_time = "".join(map(correction_next_time, reasons))
    why = short_reason(measurement) or finding
    return why, next_time or ("" if advice == finding else advice)
