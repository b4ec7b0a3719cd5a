"""Over weeks: curves of both shoulders with pain and stretches beneath, and every session."""

from PySide6.QtCore import Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from gui.curves import conducts_of, curves, movements_of, seconds
from gui.pages.session_details import SessionDetails
from gui.services import Services
from gui.verdict_words import notes, side_words, sides_of
from gui.widgets.choices import Choices
from gui.widgets.empty_history import EmptyHistory
from gui.widgets.history_chart import HistoryChart, legend
from gui.widgets.notice_line import NoticeLine
from gui.widgets.pick_button import PickButton
from gui.widgets.stretch_row import StretchRow
from gui.widgets.text import button, label, scrolled
from gui.words import conduct_words, movement_name, tr
from measure.history import History
from measure.movements import Movement
from measure.programme import plan_on
from measure.progress import Progress, progress_of
from measure.records import Conduct, MeasurementRecord, Person, Stretch


class ProgressPage(QWidget):
    """Shows one person's history. Without any it says what will stand here."""

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._history: History | None = None
        self._progress: Progress | None = None
        self._person: Person | None = None
        look = services.look
        self.movement = Choices(list(Movement), movement_name, columns=5, title=tr("movement"))
        self.movement.picked.connect(self._draw)
        self.conduct = PickButton(tr("how it was done"))
        self.conduct.picked.connect(self._draw_chosen)
        self.legend = label("", "quiet")
        self.chart = HistoryChart(look)
        self.chart.picked.connect(self._open_record)
        self.verdict = label("", "lead")
        self.notes = label("", "quiet")
        self.stretches = StretchRow(look)
        self.stretches.done.connect(self._log_stretch)
        self.details = SessionDetails(look)
        self.to_details = button(tr("Every session"))
        self.to_curves = button(tr("Back to the curves"))
        self.to_details.clicked.connect(self.show_details)
        self.to_curves.clicked.connect(self.show_curves)
        self._pages = QStackedWidget()
        self._empty = QWidget()
        self._lay_out()

    def _lay_out(self) -> None:
        look = self._services.look
        empty = QVBoxLayout(self._empty)
        empty.setContentsMargins(24, 24, 24, 16)
        empty.addWidget(EmptyHistory(look))

        drawn = QWidget()
        column = QVBoxLayout(drawn)
        column.setContentsMargins(24, 8, 24, 8)
        column.setSpacing(look.gap(1.5))
        column.addWidget(self.movement.row)
        column.addWidget(self.verdict)
        column.addWidget(self.notes)
        row = QHBoxLayout()
        row.addWidget(self.legend, 1)
        row.addWidget(self.conduct)
        row.addWidget(self.to_details)
        column.addLayout(row)
        column.addWidget(self.chart, 1)
        column.addWidget(self.stretches)
        curves = QWidget()
        beneath = QVBoxLayout(curves)
        beneath.setContentsMargins(0, 0, 0, 8)
        beneath.addWidget(scrolled(drawn), 1)
        notice = QHBoxLayout()
        notice.setContentsMargins(24, 0, 24, 0)
        notice.addWidget(NoticeLine())
        beneath.addLayout(notice)

        whole = QWidget()
        rows = QVBoxLayout(whole)
        rows.setContentsMargins(24, 8, 24, 8)
        rows.addWidget(self.details, 1)
        rows.addWidget(self.to_curves)
        rows.addWidget(NoticeLine())
        for page in (scrolled(self._empty), curves, whole):
            self._pages.addWidget(page)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self._pages)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.reload()

    @Slot(object)
    def show_person(self, person: Person | None) -> None:
        """Show this person's history from now on."""
        self._person = person
        if self.isVisible():
            self.reload()

    @Slot()
    def reload(self) -> None:
        """Look the history up anew."""
        person, services = self._person, self._services
        if person is None:
            self.show_history(None)
            return
        today = services.today()

        def look_up() -> tuple[History, Progress]:
            history = services.keeper.history(person.id)
            return history, progress_of(history, today)

        services.records.run(look_up, self._show_found, self._failed)

    def _show_found(self, found: tuple[History, Progress]) -> None:
        self.show_history(*found)

    def _failed(self, why: str) -> None:
        self.verdict.setText(why)

    def show_history(self, history: History | None, progress: Progress | None = None) -> None:
        """Show a history and what can be said about it, or what will stand here."""
        self._history, self._progress = history, progress
        seen = movements_of(history) if history else ()
        if history is None or not seen:
            self._pages.setCurrentIndex(0)
            return
        for movement in Movement:
            self.movement.button(movement).setEnabled(movement in seen)
        if self.movement.value not in seen:
            self.movement.choose(seen[0])
        self.details.show_history(history)
        self.stretches.show_plan(plan_on(history.plans, self._services.today()))
        self._draw()
        if self._pages.currentIndex() == 0:
            self._pages.setCurrentIndex(1)

    @Slot()
    def _draw(self) -> None:
        """Draw the chosen movement; the ways it was done are offered anew."""
        history, movement = self._history, self.movement.value
        if history is None or movement is None:
            return
        before = self.conduct.value
        conducts = conducts_of(history, movement)
        self.conduct.offer(conducts, conduct_words)
        if before in conducts:
            self.conduct.choose(before)
        self.conduct.setVisible(len(conducts) > 1)
        self._draw_chosen()

    @Slot()
    def _draw_chosen(self) -> None:
        history, movement, conduct = self._history, self.movement.value, self.conduct.value
        if history is None or movement is None or conduct is None:
            return
        found = curves(history, movement, conduct)
        self.chart.show_curves(
            movement, found, [seconds(stretch.done) for stretch in history.stretches]
        )
        signs = [legend(curve) for curve in found]
        pain = tr("beneath: pain 0 to 10")
        stretches = tr("\u25b2 stretches done") if history.stretches else ""
        refused = any(point.value is None for curve in found for point in curve.points)
        dashed = tr("dashed: no reading") if refused else ""
        parts = [*dict.fromkeys(signs), dashed, pain, stretches]
        self.legend.setText("    ".join(part for part in parts if part))
        self._show_verdict(movement, conduct)

    def _show_verdict(self, movement: Movement, conduct: Conduct) -> None:
        progress = self._progress
        if progress is None:
            return
        sides = sides_of(progress, movement, conduct)
        self.verdict.setText("\n".join(side_words(each) for each in sides))
        told = notes(progress, sides)
        self.notes.setText("\n".join(told))
        self.notes.setVisible(bool(told))

    @Slot(object)
    def _log_stretch(self, stretch: Stretch) -> None:
        person, keeper = self._person, self._services.keeper
        if person is not None:
            self._services.records.run(
                lambda: keeper.log_stretch(person.id, stretch),
                lambda _: self.reload(),
                self._failed,
            )

    @Slot(object)
    def _open_record(self, record: MeasurementRecord) -> None:
        self.details.show_session(record.session_id)
        self.show_details()

    @Slot()
    def show_details(self) -> None:
        self._pages.setCurrentIndex(2)
        self.details.list.setFocus()

    @Slot()
    def show_curves(self) -> None:
        self._pages.setCurrentIndex(1)
