"""Goals page: up to three things in the person's own words, rated once a month."""

import datetime as dt
from dataclasses import replace
from functools import partial

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget

from gui.pages.progress.goals_card import rating_words
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.buttons import bind_keys, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import card, clear_layout, row
from gui.widgets.page_frame import frame_page
from gui.widgets.text import label
from measure.domain.goal_records import (
    MOST_GOALS,
    Goal,
    GoalRating,
    open_goals,
    rate_from,
    ratings_of,
)
from measure.domain.record_checks import LONGEST_NAME
from measure.domain.records import History
from measure.progress.dates import date_words
from measure.system.clock import new_id


class GoalsPage(QWidget):
    """Takes goals, ratings, and the end of a goal. Every tap is saved at once."""

    #: A Goal to save, new or changed.
    saved = Signal(object)
    #: A GoalRating to save.
    rated = Signal(object)
    left = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._history: History | None = None
        self._today = dt.date.min
        self.title = label("", "display")
        self._list = QVBoxLayout()
        self._list.setSpacing(appearance.gap(1.5))
        #: The ratings of each open goal, and the buttons that end one, in the order of the page.
        self.ratings: list[ChoiceRow[int]] = []
        self.end_buttons: list[QWidget] = []
        self.words = QLineEdit()
        self.words.setMaxLength(LONGEST_NAME)
        self.words.setAccessibleName(tr("a goal in your own words"))
        self.words.setPlaceholderText(tr("In your own words, such as: put on a jacket"))
        self.words.returnPressed.connect(self._add)
        self.add = button(tr("Add goal"), "main")
        self.add.clicked.connect(self._add)
        self.enough = label(tr("Three goals are enough: end one to name another."), "quiet")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.leave.clicked.connect(self.left)
        bind_keys(self, self.leave, "Escape")
        self._lay_out()

    def _lay_out(self) -> None:
        explained = tr(
            "What would you like to do again? Choose things that matter to you. Rate them about "
            "once a month; nothing is worked out from the ratings. They appear below the charts, "
            "in your words."
        )
        frame_page(
            self,
            self.title,
            label(explained),
            self._list,
            self.words,
            self.enough,
            1,
            buttons=[self.leave, self.add],
        )

    def show_goals(self, history: History, today: dt.date) -> None:
        """Show a person's goals and ratings."""
        self._history, self._today = history, today
        self.title.setText(tr("Goals: {person}").format(person=history.person.pseudonym))
        goals = open_goals(history.goals)
        clear_layout(self._list)
        self.ratings, self.end_buttons = [], []
        for goal in goals:
            self._list.addWidget(self._card(goal, ratings_of(goal, history.goal_ratings)))
        room = len(goals) < MOST_GOALS
        for widget in (self.words, self.add):
            widget.setVisible(room)
        self.enough.setVisible(not room)
        self.words.clear()
        (self.words if room else self.leave).setFocus()

    def _card(self, goal: Goal, ratings: tuple[GoalRating, ...]) -> QWidget:
        scale = ChoiceRow(list(range(11)), str, title=goal.words)
        for rating in range(11):
            scale.button(rating).setAccessibleName(
                tr("{goal}: {rating} of 10").format(goal=goal.words, rating=rating)
            )
        if ratings and ratings[-1].day == self._today:
            scale.choose(ratings[-1].rating)
        scale.picked.connect(partial(self._rate, goal, scale))
        end = button(tr("End this goal"))
        end.setAccessibleName(tr("End the goal: {goal}").format(goal=goal.words))
        end.clicked.connect(partial(self._end, goal))
        self.ratings.append(scale)
        self.end_buttons.append(end)
        said = rating_words(ratings)
        due = rate_from(ratings)
        if due is not None and due > self._today:
            again = tr("Next rating from {day} on.").format(day=date_words(due, tr))
            said = f"{said} {again}"
        return card(
            label(goal.words, "title"),
            label(said, "quiet"),
            label(tr("How well does it go today? 0 not possible at all, 10 as well as before.")),
            scale.row,
            row(end, 1),
            spacing=self._appearance.gap(1),
        )

    @Slot()
    def _add(self) -> None:
        words, history = " ".join(self.words.text().split()), self._history
        if not words or history is None:
            self.words.setFocus()
            return
        self.saved.emit(
            Goal(id=new_id(), person_id=history.person.id, words=words, first_day=self._today)
        )

    def _rate(self, goal: Goal, scale: ChoiceRow[int], _place: int) -> None:
        rating = scale.value
        if rating is not None:
            self.rated.emit(
                GoalRating(
                    id=new_id(),
                    person_id=goal.person_id,
                    goal_id=goal.id,
                    day=self._today,
                    rating=rating,
                )
            )

    def _end(self, goal: Goal, _checked: bool = False) -> None:
        self.saved.emit(replace(goal, last_day=self._today))
