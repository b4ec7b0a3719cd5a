"""Today's exercises: begin the round, log one done elsewhere, and what the programme is."""

import datetime as dt
from functools import partial

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QVBoxLayout, QWidget

from gui.drawing.shown_movements import shown_exercise
from gui.pages.exercises.elsewhere_button import ElsewhereButton
from gui.pages.exercises.planned_line import PlannedLine
from gui.pages.exercises.reminder_card import ReminderCard
from gui.pages.exercises.still_figure import StillFigure, in_one_scale
from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.text.exercise_wording import (
    day_words,
    limit_passed_sentence,
    log_words,
    plan_sentences,
)
from gui.text.language import LANGUAGES, language_in_force
from gui.text.wording import exercise_name, person_name, tr
from gui.widgets.beside_row import BesideRow, list_card
from gui.widgets.buttons import MenuButton, button, give_role
from gui.widgets.figures.pictured_card import PicturedCard
from gui.widgets.layouts import FlowRow, card, clear_layout, column, row, separator, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.text import label, titled
from measure.domain.exercise_rounds import DayOfExercises
from measure.domain.exercises import ListedExercise
from measure.domain.home_programme_records import ExerciseLog, Plan
from measure.domain.landmarks import Side
from measure.domain.records import Person
from measure.progress.dates import date_words

#: Width of the drawing where nothing is planned yet, a share of its height. [technical]
_DRAWN_WIDE = 0.8
#: Width of the bar beside a heading that asks to stop, pixels. [technical]
_BAR_PX = 6


class TodayPage(QWidget):
    """The first page of the exercises. It counts nothing and asks for nothing more."""

    started = Signal()
    #: Exercises that were done elsewhere, a tuple of Exercise.
    done_elsewhere = Signal(object)
    #: Identifiers of logs that were a mistake, a tuple.
    removed = Signal(object)
    #: Whether the shoulder had settled by the next morning; None to be asked later.
    morning_answered = Signal(object)
    edited = Signal()
    #: The language of the page for the person that is to be written or printed.
    page_wanted = Signal(str)
    preview_wanted = Signal(str)

    def __init__(
        self,
        appearance: Appearance,
        settings: WindowSettings,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._tapped: tuple[ExerciseLog, ...] = ()
        #: What is to be done today, or what the page says of it first.
        self.state = label("", "display")
        self.question = label("")
        self.yes, self.no = button(tr("Yes")), button(tr("No"))
        self.later = button(tr("Ask later"), "link")
        self.start = button(tr("Start today's exercises"), "main", key=tr("Enter"))
        self.go_on = button(tr("Continue today's exercises"), "link")
        self.passed = label("", "lead")
        self.enough = button(tr("Done for today"), "main", key=tr("Enter"))
        self.resume = button(tr("Undo: done for today"))
        self._person: Person | None = None
        #: Identifier of the person who stopped after too much pain, until another day.
        self._left_alone = ""
        self.elsewhere = ElsewhereButton()
        self.undo = button("", "line-link")
        self.plan = label("", "quiet")
        self.empty, self.how_to_begin = label("", "display"), label("", "lead")
        self.how_to_begin.setText(
            tr("Enter the exercises that the clinician chose. Thawline adds nothing to them.")
        )
        self.edit = button(tr("Edit the programme"))
        self.language = MenuButton(tr("language of the exercise sheet"))
        self.language.offer(tuple(LANGUAGES), LANGUAGES.__getitem__)
        self.language.choose(language_in_force(settings.language))
        self.pdf = button(tr("Save as PDF"))
        self.print = button(tr("Print"))
        self.reminders = ReminderCard(appearance, settings)
        self._planned, self._entries = QVBoxLayout(), QVBoxLayout()
        for answer, eased in ((self.yes, True), (self.no, False), (self.later, None)):
            answer.clicked.connect(partial(self._answer, eased))
        self.start.clicked.connect(self.started)
        self.go_on.clicked.connect(self.started)
        self.elsewhere.picked.connect(self.done_elsewhere)
        self.undo.clicked.connect(self._undo)
        self.edit.clicked.connect(self.edited)
        self.pdf.clicked.connect(self._want_page)
        self.print.clicked.connect(self._want_preview)
        self.enough.clicked.connect(self._leave_alone)
        self.resume.clicked.connect(self._take_back)
        self._enter = QAction(self)
        self._enter.setShortcuts([QKeySequence("Return"), QKeySequence("Enter")])
        self._enter.setShortcutContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        self._enter.triggered.connect(self._press_main)
        self.addAction(self._enter)
        self._lay_out()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        answers = row(self.yes, self.no, self.later, spacing=gap(1))
        self._asked = card(BesideRow(self.question, widget_with(answers)))
        for layout in (self._planned, self._entries):
            layout.setContentsMargins(0, 0, 0, 0)
            layout.setSpacing(gap(1))
        self._planned.setSpacing(gap(2))
        ways = widget_with(row(self.undo, self.elsewhere, spacing=gap(3)))
        self._today = card(widget_with(self._planned), BesideRow(self.plan, ways), spacing=gap(2))
        self._log_card = card(label(tr("Logged today"), "title"), widget_with(self._entries))
        sheet = FlowRow(gap(1), filling=False)
        sheet.offer([self.language, self.pdf, self.print])
        about = titled(tr("Exercise sheet"), tr("Your exercises with drawings, on paper."))
        self._rest = list_card(BesideRow(about, sheet), self.reminders)
        self._blank = self._made_blank()
        # A bar marks a heading that asks to stop.
        self._bar = separator(upright=True)
        self._bar.setProperty("role", "notice-rule")
        self._bar.setFixedWidth(_BAR_PX)
        heading = column(self.state, self.passed, spacing=gap(1))
        self._said = widget_with(row(self._bar, (heading, 1), spacing=gap(2)))
        # After too much pain, going on is possible, but it stands after everything else.
        self._below = widget_with(column(row(self.go_on, 1), 1))
        frame_page(
            self,
            self._said,
            (self._blank, 1),
            self._today,
            # How it was last time is asked after what is to be done.
            self._asked,
            self._log_card,
            self._rest,
            self._below,
            buttons=[self.edit, self.start, self.enough, self.resume],
        )

    def _made_blank(self) -> QWidget:
        """Return what stands there where nothing is planned: why, what to do, a drawing."""
        pendulum = shown_exercise(ListedExercise.PENDULUM)
        drawing = StillFigure(self._appearance, pendulum, Side.LEFT)
        words = column(1, self.how_to_begin, 1)
        self._pictured = PicturedCard(self._appearance, drawing, words, wide=_DRAWN_WIDE)
        return widget_with(column(self.empty, self._pictured, 1, spacing=self._appearance.gap(2)))

    def show_day(
        self,
        person: Person | None,
        plan: Plan | None,
        day: DayOfExercises,
        measured_pain: int | None = None,
    ) -> None:
        """Show a person's programme and what was logged today.

        Parameters
        ----------
        measured_pain
            The highest pain of the day while measuring, 0..10; it counts for the limit as well.
        """
        ratings = (day.highest_pain(), measured_pain)
        pain = max((rating for rating in ratings if rating is not None), default=0)
        planned = plan is not None and bool(plan.exercises)
        real = person is not None and not person.demo
        self._person = person
        passed = plan is not None and 0 < plan.pain_limit <= pain
        left_alone = passed and person is not None and person.id == self._left_alone
        begin = planned and real and not left_alone and bool(day.due)
        self.state.setText(day_words(day, begin=begin))
        self._show_start(plan if passed else None, day, pain, begin=begin)
        self.resume.setVisible(bool(planned and real and left_alone and day.due))
        self._show_programme(plan if planned else None, day)
        self.elsewhere.setVisible(planned and real and self.enough.isHidden())
        self._show_entries(plan, day)
        self.empty.setText(_empty_words(person, planned=planned))
        self._blank.setVisible(not planned)
        if planned and not real:
            self.passed.setText(self.empty.text())
            self.passed.show()
        for shown in (self._said, self._below):
            shown.setVisible(planned)
        self.edit.setEnabled(real)
        self.edit.say(tr("Edit the programme") if planned else tr("Enter the exercises"))
        give_role(self.edit, "main" if real and not planned else "")
        self._pictured.setVisible(real and not planned)

    def show_waiting(self) -> None:
        """Say nothing of the programme until it was looked up."""
        self._blank.hide()
        self._said.hide()
        self.edit.setEnabled(False)

    def _show_start(
        self, limited: Plan | None, day: DayOfExercises, pain: int, *, begin: bool
    ) -> None:
        """Offer the round; after a plan's limit was reached, first of all to stop for today."""
        self.start.say(
            tr("Continue today's exercises") if day.begun else tr("Start today's exercises")
        )
        self.start.setVisible(begin and limited is None)
        self.go_on.setVisible(begin and limited is not None)
        self.enough.setVisible(begin and limited is not None)
        self.passed.setVisible(limited is not None)
        self._bar.setVisible(limited is not None)
        if limited is not None:
            self.state.setText(tr("Stop for today: pain reached {pain}.").format(pain=pain))
            self.passed.setText(limit_passed_sentence(limited.pain_limit))

    @Slot()
    def _press_main(self) -> None:
        """Press what the page is about at present."""
        for target in (self.enough, self.start):
            if target.isVisible():
                target.click()
                return

    @Slot()
    def _leave_alone(self) -> None:
        """Offer no round any more today; what is done elsewhere can still be logged."""
        self._left_alone = self._person.id if self._person is not None else ""
        self._show_left_alone(left_alone=True)
        self.edit.setFocus()

    @Slot()
    def _take_back(self) -> None:
        """Offer the round again, where the day was ended by mistake."""
        self._left_alone = ""
        self._show_left_alone(left_alone=False)
        self.enough.setFocus()

    def _show_left_alone(self, *, left_alone: bool) -> None:
        for widget in (self.enough, self.go_on):
            widget.setHidden(left_alone)
        for widget in (self.elsewhere, self.resume):
            widget.setVisible(left_alone)

    def _show_programme(self, plan: Plan | None, day: DayOfExercises) -> None:
        clear_layout(self._planned)
        for shown in (self._today, self._rest):
            shown.setVisible(plan is not None)
        if plan is None:
            return
        self.plan.setText(plan_sentences(plan, with_limit=self.passed.isHidden()))
        self.elsewhere.offer(day.due, plan.exercises)
        lines = [PlannedLine(self._appearance, its, day.logged) for its in plan.exercises]
        in_one_scale([line.figure for line in lines])
        for line in (*lines, separator()):
            self._planned.addWidget(line)

    def _show_entries(self, plan: Plan | None, day: DayOfExercises) -> None:
        clear_layout(self._entries)
        self._log_card.setVisible(bool(day.logged))
        for log in day.logged:
            words = log_words(log, plan)
            remove = button(tr("Remove"), "link")
            remove.setAccessibleName(tr("Remove: {exercise}").format(exercise=words))
            remove.clicked.connect(partial(self._remove, log))
            self._entries.addWidget(widget_with(row((label(words), 1), remove)))

    def ask_about(self, day: dt.date | None, today: dt.date) -> None:
        """Ask whether a day's exercises had settled by the next morning; None asks nothing."""
        self._asked.setVisible(day is not None and not self._today.isHidden())
        if day is None:
            return
        if (today - day).days == 1:
            self.question.setText(
                tr("After yesterday's exercises, had your shoulder settled by this morning?")
            )
        else:
            words = tr("Exercises on {day}: had your shoulder settled by the next morning?")
            self.question.setText(words.format(day=date_words(day, tr)))

    def show_tapped(self, logs: tuple[ExerciseLog, ...]) -> None:
        """Say what was logged by a tap, and offer to undo it."""
        self._tapped = logs
        self.undo.setVisible(bool(logs))
        if logs:
            names = ", ".join(exercise_name(log.exercise) for log in logs)
            self.undo.say(tr("Undo"))
            self.undo.setAccessibleName(tr("Undo: {exercises}").format(exercises=names))

    def keep_focus(self) -> None:
        """Put the keyboard on what comes first."""
        ways = (self.enough, self.start)
        next((way for way in ways if way.isVisibleTo(self)), self.edit).setFocus()

    @Slot()
    def _want_page(self) -> None:
        self.page_wanted.emit(self.language.value)

    @Slot()
    def _want_preview(self) -> None:
        self.preview_wanted.emit(self.language.value)

    def _answer(self, eased: bool | None, _checked: bool = False) -> None:
        self.morning_answered.emit(eased)

    @Slot()
    def _undo(self) -> None:
        self.removed.emit(tuple(log.id for log in self._tapped))

    def _remove(self, log: ExerciseLog, _checked: bool = False) -> None:
        self.removed.emit((log.id,))


def _empty_words(person: Person | None, *, planned: bool) -> str:
    """Return why no round can be offered, or nothing."""
    if person is None:
        return tr("First choose or add a person on the Measure page.")
    if person.demo:
        return tr("{name} is made up: nothing is logged.").format(name=person_name(person))
    if not planned:
        return tr("No exercises yet.")
    return ""
