"""Goals page: up to three things in the person's own words, rated once a month."""

import datetime as dt
from dataclasses import dataclass, replace
from functools import partial

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QLayout, QLineEdit, QVBoxLayout, QWidget

from gui.pages.progress.goals_card import rating_words
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import person_name, tr
from gui.widgets.beside_row import BesideRow
from gui.widgets.buttons import bind_keys, button
from gui.widgets.figures.pictured_card import figure_tile
from gui.widgets.figures.position_figure import PositionView
from gui.widgets.layouts import card, clear_layout, column, row, separator, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.pain_scale import PainScale
from gui.widgets.scroll_page import bring_into_view
from gui.widgets.side_by_side import LARGE_FROM_PERCENT
from gui.widgets.text import end_together, label
from measure.domain.goal_records import (
    MOST_GOALS,
    Goal,
    GoalRating,
    open_goals,
    rate_from,
    ratings_of,
)
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.record_checks import LONGEST_NAME
from measure.domain.records import History
from measure.progress.dates import date_words
from measure.system.clock import new_id

#: Width and height of the drawing beside the first question or the one goal, and of one beside
#: large text, pixels. [technical]
_DRAWN_PX, _DRAWN_BESIDE_LARGE_PX = (300, 360), (208, 208)


@dataclass(frozen=True, slots=True, kw_only=True)
class GoalEntries:
    """What is entered of a goal that is not saved."""

    person_id: str
    words: str


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
        self._list.setSpacing(appearance.gap(2))
        #: The ratings of each open goal, and the buttons that end one, in the order of the page.
        self.ratings: list[PainScale] = []
        self.end_buttons: list[QWidget] = []
        self.words = QLineEdit()
        self.words.setMaxLength(LONGEST_NAME)
        self.words.setAccessibleName(tr("a goal in your own words"))
        self.words.setPlaceholderText(tr("Such as: put on a jacket"))
        self.words.returnPressed.connect(self._add)
        self.question = label(tr("What would you like to do again?"), "title")
        self.add = button(tr("Add a goal"), "main")
        self.add.clicked.connect(self._add)
        self.enough = label(tr("Three goals are enough: end one to name another."), "quiet")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.leave.clicked.connect(self.left)
        bind_keys(self, self.leave, "Escape")
        #: A person with a raised arm, beside the question, and beside one goal where it has room.
        self._drawn = self._reaching()
        self._lay_out()
        self._fit_drawing()
        appearance.changed.connect(self._fit_drawing)

    def _lay_out(self) -> None:
        most = tr("You can name up to three.")
        how_often = tr("Rate them about once a month.")
        said = tr("Nothing is calculated from the ratings.")
        where = tr("They appear below the charts, in your words.")
        #: What goals are for, before there is one, and what becomes of their ratings.
        self._before = label(end_together(f"{most} {how_often}"), "quiet")
        self._after = label(end_together(f"{said} {where}"), "quiet")
        words = column(
            1,
            self.question,
            self._list,
            self.words,
            self.enough,
            self._before,
            self._after,
            1,
            spacing=self._appearance.gap(1.5),
        )
        goals = card(row((words, 1), column(self._drawn), spacing=4 * GAP_PX))
        buttons = [self.leave, self.add]
        frame_page(self, self.title, goals, buttons=buttons, short=True, from_top=True)

    def _reaching(self) -> QWidget:
        """Return a person who reaches up, in a panel."""
        figure = PositionView(self._appearance, still=True, close=True)
        figure.show_movement(Movement.FLEXION, Side.LEFT)
        return figure_tile(figure)

    @Slot()
    def _fit_drawing(self) -> None:
        """Give the drawing the size for the text, and show it while the words leave it room."""
        roomy = self._appearance.percent < LARGE_FROM_PERCENT
        self._drawn.setFixedSize(*(_DRAWN_PX if roomy else _DRAWN_BESIDE_LARGE_PX))
        self._drawn.setVisible(len(self.ratings) <= int(roomy))

    def show_goals(self, history: History, today: dt.date) -> None:
        """Show a person's goals and ratings."""
        self._history, self._today = history, today
        self.title.setText(tr("Goals: {person}").format(person=person_name(history.person)))
        goals = open_goals(history.goals)
        clear_layout(self._list)
        self.ratings, self.end_buttons = [], []
        for goal in goals:
            rated = self._rated(goal, ratings_of(goal, history.goal_ratings))
            self._list.addWidget(widget_with(rated))
            self._list.addWidget(separator())
        room = len(goals) < MOST_GOALS
        self.add.setVisible(room)
        self.enough.setVisible(not room)
        # Goals that are named stand under the title alone.
        self.question.setVisible(not goals)
        self._before.setVisible(not goals)
        self._fit_drawing()
        self._after.setVisible(bool(goals))
        self.words.clear()
        self._ask(asked=not goals)
        if goals:
            (self.add if room else self.leave).setFocus()

    @property
    def entered(self) -> GoalEntries | None:
        """What is entered by now; None while nobody's goals are shown."""
        if self._history is None:
            return None
        return GoalEntries(person_id=self._history.person.id, words=self.words.text())

    def resume(self, entered: GoalEntries) -> None:
        """Go on with what was entered on such a page."""
        if entered.words:
            self.words.setText(entered.words)
            self._ask(asked=True)

    def _ask(self, *, asked: bool) -> None:
        """Show or hide the field for a new goal."""
        self.words.setVisible(asked)
        self.add.say(tr("Save goal") if asked else tr("Add a goal"))
        if asked:
            self.words.setFocus()
            bring_into_view(self.words)

    def _rated(self, goal: Goal, ratings: tuple[GoalRating, ...]) -> QLayout:
        scale = PainScale(goal.words, with_ends=False)
        rated_today = bool(ratings) and ratings[-1].day == self._today
        if rated_today:
            scale.choose(ratings[-1].rating)
        scale.picked.connect(partial(self._rate, goal, scale))
        end = button(tr("End this goal"), "line-link")
        end.setAccessibleName(tr("End the goal: {goal}").format(goal=goal.words))
        end.clicked.connect(partial(self._end, goal))
        self.ratings.append(scale)
        self.end_buttons.append(end)
        # A first rating of today is seen on the scale.
        seen = rated_today and len(ratings) == 1
        said = tr("Rated today.") if seen else rating_words(ratings)
        due = rate_from(ratings)
        if due is not None and due > self._today:
            again = tr("Next rating from {day} on.").format(day=date_words(due, tr))
            said = f"{said} {again}".strip()
        best = label(tr("10: as well as before"), "quiet")
        best.setAlignment(Qt.AlignmentFlag.AlignRight)
        return column(
            BesideRow(label(goal.words, "title"), end),
            label(tr("How well does it go today?")),
            column(
                scale,
                row((label(tr("0: not possible at all"), "quiet"), 1), (best, 1)),
                spacing=self._appearance.gap(0.5),
            ),
            label(said, "quiet"),
            spacing=self._appearance.gap(1),
        )

    @Slot()
    def _add(self) -> None:
        words, history = " ".join(self.words.text().split()), self._history
        if not words or history is None:
            self._ask(asked=True)
            return
        self.saved.emit(
            Goal(id=new_id(), person_id=history.person.id, words=words, first_day=self._today)
        )

    def _rate(self, goal: Goal, scale: PainScale) -> None:
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
