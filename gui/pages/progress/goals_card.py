"""Card of a person's own goals, with how they were rated from month to month."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, clear_layout, column, row, widget_with
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.text import label
from measure.domain.goal_records import Goal, GoalRating, open_goals, ratings_of
from measure.domain.records import History
from measure.progress.dates import date_words


class GoalsCard(QWidget):
    """The open goals, each with its ratings; leads to the page on which they are rated."""

    wanted = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.words = label("", "quiet")
        self.open = button(tr("My goals"))
        self.open.clicked.connect(self.wanted)
        self._list = QVBoxLayout()
        self._list.setSpacing(appearance.gap(1))
        column(
            card(
                label(tr("What I want to do again"), "title"),
                self.words,
                self._list,
                row(self.open, 1),
                spacing=appearance.gap(1),
            ),
            on=self,
        )

    def show_goals(self, history: History) -> None:
        """Show a person's open goals."""
        clear_layout(self._list)
        goals = open_goals(history.goals)
        self.words.setText(
            tr("Rated once a month: 0 not possible at all, 10 as well as before.")
            if goals
            else tr(
                "Name up to three things in your own words, such as putting on a jacket, and "
                "rate once a month how well they go."
            )
        )
        for goal in goals:
            ratings = ratings_of(goal, history.goal_ratings)
            strip = RatingStrip(self._appearance, goal, ratings)
            words = label(f"{goal.words}\n{rating_words(ratings)}")
            line = row((words, 1), (strip, 1), spacing=self._appearance.gap(2))
            self._list.addWidget(widget_with(line))


class RatingStrip(PaintedWidget):
    """The ratings of one goal from month to month, 0 to 10."""

    def __init__(
        self,
        appearance: Appearance,
        goal: Goal,
        ratings: Sequence[GoalRating],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(appearance, parent)
        self._ratings = tuple(ratings)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(
            tr("{goal}: {ratings}").format(goal=goal.words, ratings=rating_words(ratings))
        )

    def sizeHint(self) -> QSize:
        return QSize(260, round(self.appearance.px() * 3.2))

    def paint(self, painter: QPainter) -> None:
        px = self.appearance.px(0.8)
        place = QRectF(px * 2, px * 0.8, self.width() - px * 4, self.height() - px * 1.6)
        painter.setFont(self.appearance.font(px))
        for value in (0, 10):
            y = place.bottom() - place.height() * value / 10
            painter.setPen(QPen(self.appearance.colour("line"), 1))
            painter.drawLine(QPointF(place.left(), y), QPointF(place.right(), y))
            painter.setPen(self.appearance.colour("quiet"))
            box = QRectF(0, y - px, px * 1.6, px * 2)
            vertical = Qt.AlignmentFlag.AlignVCenter
            painter.drawText(box, vertical | Qt.AlignmentFlag.AlignRight, str(value))
        if not self._ratings:
            return
        first, last = self._ratings[0].day, self._ratings[-1].day
        span = max((last - first).days, 1)
        spots = [
            QPointF(
                place.left() + px + (place.width() - 2 * px) * (rating.day - first).days / span,
                place.bottom() - place.height() * rating.rating / 10,
            )
            for rating in self._ratings
        ]
        painter.setPen(QPen(self.appearance.colour("arm"), 2))
        painter.drawPolyline(QPolygonF(spots))
        painter.setBrush(self.appearance.colour("arm"))
        for spot in spots:
            painter.drawEllipse(spot, px * 0.28, px * 0.28)


def rating_words(ratings: Sequence[GoalRating]) -> str:
    """Return the first and the latest rating of a goal."""
    if not ratings:
        return tr("Not rated so far.")
    last = ratings[-1]
    latest = tr("{rating} of 10 on {day}").format(rating=last.rating, day=date_words(last.day, tr))
    if len(ratings) == 1:
        return f"{latest}."
    first = ratings[0]
    return tr("{first} on {day}, then {latest}.").format(
        first=first.rating, day=date_words(first.day, tr), latest=latest
    )
