"""Page after a round: one row for each exercise, with the pain reached and how it went."""

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from gui.protocol.exercise_round import ExerciseResult
from gui.style.appearance import Appearance
from gui.text.exercise_wording import compared_name, in_part_words, limit_passed_sentence
from gui.text.wording import exercise_name, tr
from gui.widgets.buttons import bind_keys, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import card, clear_layout, column, row
from gui.widgets.page_frame import frame_page
from gui.widgets.text import label
from measure.domain.exercises import Exercise
from measure.domain.home_programme_records import ComparedWithLast


class RatingRow(QWidget):
    """Pain 0 to 10 and easier, the same or harder, of one exercise; both may be left out."""

    def __init__(
        self, appearance: Appearance, result: ExerciseResult, pain: int | None, limit: int
    ) -> None:
        super().__init__()
        self.exercise = result.exercise
        self._limit = limit
        name = exercise_name(result.exercise)
        self.pain = ChoiceRow(
            list(range(11)),
            str,
            may_be_empty=True,
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
        self.passed = label("", "lead")
        self.pain.picked.connect(self._show)
        self.pain.choose(pain)
        part = label(in_part_words(result.repetitions, result.planned), "quiet")
        part.setVisible(bool(part.text()))
        column(
            row(label(name, "title"), part, spacing=appearance.gap(2)),
            self.pain.row,
            self.passed,
            self.compared.row,
            on=self,
            spacing=appearance.gap(1),
        )
        self._show()

    def choose_pain(self, pain: int) -> None:
        self.pain.choose(pain)
        self._show()

    @Slot()
    def _show(self) -> None:
        pain = self.pain.value
        passed = pain is not None and pain >= self._limit
        self.passed.setText(limit_passed_sentence(self._limit) if passed else "")
        self.passed.setVisible(passed)


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
        scale = tr(
            "Pain: 0 is none, 10 the worst imaginable. Below: compared with the last time. You can "
            "skip any of these."
        )
        frame_page(
            self,
            label(tr("How did it go?"), "display"),
            label(scale, "quiet"),
            self._cards,
            1,
            buttons=[self.leave, self.keep],
        )

    def ask(
        self, results: tuple[ExerciseResult, ...], pains: dict[Exercise, int], limit: int
    ) -> None:
        """Ask about what was done.

        Parameters
        ----------
        pains
            Pain that was stated already, 0..10.
        limit
            Pain rating, 1..10, at which the programme says to stop.
        """
        clear_layout(self._cards)
        self.rows = tuple(
            RatingRow(self._appearance, result, pains.get(result.exercise), limit)
            for result in results
        )
        for rating in self.rows:
            framed: QFrame = card(rating)
            self._cards.addWidget(framed)
        # No answer looks chosen; digits go to the first row.
        self.keep.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let a digit rate the row where the keyboard is, and go on to the next row."""
        text = event.text()
        pain = (
            10 if text.lower() == "x" else int(text) if text.isascii() and text.isdigit() else None
        )
        if pain is None:
            super().keyPressEvent(event)
            return
        places = [
            k for k, rating in enumerate(self.rows) if rating.isAncestorOf(self.focusWidget())
        ]
        here = places[0] if places else 0
        self.rows[here].choose_pain(pain)
        following = self.rows[min(here + 1, len(self.rows) - 1)]
        following.pain.row.buttons[0].setFocus(Qt.FocusReason.TabFocusReason)

    @Slot()
    def _leave(self) -> None:
        self.rated.emit(())

    @Slot()
    def _keep(self) -> None:
        self.rated.emit(self.rows)
