"""Page after a round: one row for each exercise, with the pain reached and how it went."""

from collections.abc import Collection

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QSizePolicy, QVBoxLayout, QWidget

from gui.drawing.shown_movements import shown_exercise
from gui.pages.exercises.still_figure import StillFigure, in_one_scale
from gui.protocol.exercise_round import ExerciseResult
from gui.style.appearance import Appearance
from gui.text.exercise_wording import compared_name, in_part_words, limit_passed_sentence
from gui.text.wording import exercise_name, tr
from gui.widgets.beside_row import BesideRow
from gui.widgets.buttons import bind_keys, button
from gui.widgets.choice_row import ChoiceRow, typed_rating
from gui.widgets.layouts import card, clear_layout, column, row, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.pain_scale import scale_ends
from gui.widgets.text import NumberLine, SignedLine, label
from measure.domain.exercises import Exercise
from measure.domain.home_programme_records import ComparedWithLast
from measure.domain.landmarks import Side

#: Side of the drawing at a text size of 100 %, and where it is the only exercise, pixels.
#: [technical]
_DRAWING_PX, _ALONE_PX = 164, 280
#: Text size from which the numbers take the whole width, per cent. [technical]
_ALONE_FROM_PERCENT = 150


class RatingRow(QWidget):
    """Pain 0 to 10 and easier, the same or harder, of one exercise; both may be left out.

    Parameters
    ----------
    limit
        Pain rating, 1..10, at which the programme says to stop.
    alone
        Whether it is the only one, and has the page to itself.
    compared
        Whether it was done before, so that it can be compared with the last time.
    """

    def __init__(
        self,
        appearance: Appearance,
        result: ExerciseResult,
        pain: int | None,
        limit: int,
        *,
        alone: bool,
        compared: bool,
    ) -> None:
        super().__init__()
        self.exercise = result.exercise
        self._limit = limit
        name = exercise_name(result.exercise)
        self.pain = ChoiceRow(
            list(range(11)),
            str,
            may_be_empty=True,
            large=True,
            title=tr("{exercise}: pain reached, 0 to 10").format(exercise=name),
        )
        self.compared = ChoiceRow(
            list(ComparedWithLast),
            compared_name,
            may_be_empty=True,
            title=tr("{exercise}: compared with the last time").format(exercise=name),
        )
        for place, choice in enumerate(self.pain.row.buttons):
            choice.setAccessibleName(
                tr("{exercise}: pain {pain} of 10").format(exercise=name, pain=place)
            )
        for choice in self.compared.row.buttons:
            choice.setAccessibleName(f"{name}: {choice.text()}")
        self.passed = label("", "lead" if alone else "")
        self.pain.picked.connect(self._show)
        self.pain.choose(pain)
        #: Whether the pain was said already: it is not asked for again.
        self.stated = pain is not None
        self.change = button(tr("Change"), "link")
        self.change.setAccessibleName(tr("Change: {exercise}").format(exercise=name))
        self.change.clicked.connect(self._ask_again)
        self._appearance, self._compared = appearance, compared
        listed = result.exercise.listed
        shown = shown_exercise(listed) if listed else None
        side_px = _ALONE_PX if alone else _DRAWING_PX
        self.figure = StillFigure(appearance, shown, Side.LEFT, side_px)
        for answers in (self.pain.row, self.compared.row):
            answers.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._lay_out(name, in_part_words(result.repetitions, result.planned))

    def _lay_out(self, name: str, part: str) -> None:
        gap = self._appearance.gap
        asked = label(tr("Compared with last time"), "strong")
        comparison = widget_with(column(asked, self.compared.row, spacing=gap(1)))
        in_part = label(part, "quiet")
        scale = column(self.pain.row, scale_ends(), spacing=gap(0.5))
        self._scale = widget_with(scale)
        said = tr("You said pain {pain} of 10.").format(pain=self.pain.value)
        self._said = BesideRow(SignedLine("\u2713", said), self.change)
        self._asked = column(
            1,
            BesideRow(label(name, "title"), in_part),
            self._said,
            self._scale,
            self.passed,
            comparison,
            1,
        )
        row(self.figure, (self._asked, 1), on=self, spacing=gap(3))
        in_part.setVisible(bool(part))
        comparison.setVisible(self._compared)
        self._appearance.changed.connect(self._leave_room)
        self._leave_room()
        self._show()

    @Slot()
    def _leave_room(self) -> None:
        """Do without the drawing where large numbers need its room."""
        small = self._appearance.percent < _ALONE_FROM_PERCENT
        self.figure.setVisible(small)
        self._asked.setSpacing(self._appearance.gap(2 if small and not self.stated else 1))

    @Slot()
    def _ask_again(self) -> None:
        """Let what was said be changed."""
        self.stated = False
        self._show()
        self.pain.row.buttons[self.pain.value or 0].setFocus()

    def choose_pain(self, pain: int) -> None:
        self.pain.choose(pain)
        self._show()

    @Slot()
    def _show(self) -> None:
        pain = self.pain.value
        passed = pain is not None and pain >= self._limit
        self.passed.setText(limit_passed_sentence(self._limit) if passed else "")
        self.passed.setVisible(passed and not self.stated)
        self._said.setVisible(self.stated)
        self._scale.setVisible(not self.stated)


class RatingPage(QWidget):
    """Asks how the exercises of a round went. What was done is saved already."""

    #: The rows with what was chosen, a tuple of RatingRow.
    rated = Signal(object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.rows: tuple[RatingRow, ...] = ()
        self.leave = button(tr("Skip"), key=tr("Escape"))
        self.keep = button(tr("Save"), "main", key=tr("Enter"))
        self.leave.clicked.connect(self._leave)
        self.keep.clicked.connect(self._keep)
        bind_keys(self, self.leave, "Escape")
        bind_keys(self, self.keep, "Return", "Enter")
        self._cards = QVBoxLayout()
        self._cards.setSpacing(appearance.gap(2))
        self._lay_out()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        heading = label(tr("How much did it hurt?"), "display")
        self._optional = label(tr("You can skip this."), "quiet")
        self._head = NumberLine(heading, self._optional, spacing=gap(3))
        frame_page(
            self,
            self._head,
            self._cards,
            1,
            buttons=[self.leave, self.keep],
        )
        self._appearance.changed.connect(self._leave_room)
        self._leave_room()

    @Slot()
    def _leave_room(self) -> None:
        """Do without the words that the button says too, where text is large."""
        small = self._appearance.percent < _ALONE_FROM_PERCENT
        self._optional.setVisible(small)
        self._head.set_level(small)

    def ask(
        self,
        results: tuple[ExerciseResult, ...],
        pains: dict[Exercise, int],
        limit: int,
        done_before: Collection[Exercise],
    ) -> None:
        """Ask about what was done.

        Parameters
        ----------
        pains
            Pain that was stated already, 0..10.
        limit
            Pain rating, 1..10, at which the programme says to stop.
        done_before
            Exercises that were done before this round: only they can be compared.
        """
        clear_layout(self._cards)
        self.rows = tuple(
            RatingRow(
                self._appearance,
                result,
                pains.get(result.exercise),
                limit,
                alone=len(results) == 1,
                compared=result.exercise in done_before,
            )
            for result in results
        )
        in_one_scale([rating.figure for rating in self.rows])
        for rating in self.rows:
            framed: QFrame = card(rating)
            self._cards.addWidget(framed)
        # No answer looks chosen; digits go to the first row.
        self.keep.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let a digit rate the row where the keyboard is, and go on to the next row."""
        pain = typed_rating(event.text())
        if pain is None:
            super().keyPressEvent(event)
            return
        places = [
            k for k, rating in enumerate(self.rows) if rating.isAncestorOf(self.focusWidget())
        ]
        open_rows = [k for k, rating in enumerate(self.rows) if not rating.stated]
        here = (places or open_rows or [0])[0]
        self.rows[here].choose_pain(pain)
        following = self.rows[min(here + 1, len(self.rows) - 1)]
        following.pain.row.buttons[0].setFocus(Qt.FocusReason.TabFocusReason)

    @Slot()
    def _leave(self) -> None:
        self.rated.emit(())

    @Slot()
    def _keep(self) -> None:
        self.rated.emit(self.rows)
