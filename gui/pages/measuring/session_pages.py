"""Pages of a session, from the choice of movements to the results, one shown at a time."""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QStackedWidget, QWidget

from gui.pages.measuring.live import LivePage
from gui.pages.measuring.next_task import NextTaskPage
from gui.pages.measuring.pain import PainPage
from gui.pages.measuring.pain_before import PainBeforePage
from gui.pages.measuring.screening import SafetyPage
from gui.pages.measuring.start import StartPage
from gui.pages.measuring.summary import SummaryPage
from gui.session.measurement_session import MeasurementSession
from gui.session.services import Services
from gui.text.wording import tr
from gui.widgets.layouts import column


class SessionPages(QWidget):
    """Holds the pages of a session; what leads from one to the next is not its business."""

    #: Whether a session is under way, so that the rest of the window steps back.
    measuring_changed = Signal(bool)

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self.measuring: MeasurementSession | None = None
        appearance = services.appearance
        self.start = StartPage(appearance, services.settings)
        self.safety = SafetyPage(appearance)
        self.before = PainBeforePage(appearance)
        self.live = LivePage(appearance)
        self.pain = PainPage(appearance)
        self.next = NextTaskPage(appearance)
        self.summary = SummaryPage(appearance)
        self._stack = QStackedWidget()
        for page in (
            *(self.start, self.safety, self.before, self.live),
            *(self.pain, self.next, self.summary),
        ):
            self._stack.addWidget(page)
        column((self._stack, 1), on=self)
        for signal, action in (
            (self.live.pause.clicked, MeasurementSession.toggle_pause),
            (self.live.here.clicked, MeasurementSession.take_position),
            (self.live.discard.clicked, MeasurementSession.discard_last),
            (self.live.stop.clicked, MeasurementSession.finish_here),
            (self.live.hurts.clicked, partial(MeasurementSession.stop_movement, hurts=True)),
            (self.live.retry.clicked, MeasurementSession.retry),
            (self.next.begin, MeasurementSession.go_on),
            (self.next.again, MeasurementSession.again),
            (self.next.end, MeasurementSession.end_session),
        ):
            signal.connect(partial(self._act, action))

    def _act(self, action: Callable[[MeasurementSession], None], _checked: bool = False) -> None:
        """Do something with the session that runs, if any."""
        if self.measuring is not None:
            action(self.measuring)

    @Slot(int)
    def take_pain_limit(self, limit: int) -> None:
        """Let the session that runs, if any, stop at this pain, 0..10."""
        if self.measuring is not None:
            self.measuring.guide.pain_limit = limit

    @property
    def shown(self) -> QWidget | None:
        """The page that is shown, or would be if this one were."""
        return self._stack.currentWidget()

    def show_page(self, page: QWidget) -> None:
        """Show a page, and let the rest of the window step back from those of a session."""
        self._stack.setCurrentWidget(page)
        self.measuring_changed.emit(self.under_way)

    @property
    def under_way(self) -> bool:
        """Whether a session is under way."""
        return self.shown in (self.live, self.pain, self.next)

    def say_person(self, name: str, *, saving: bool) -> None:
        """Name who is measured on every page, and whether it is saved where it can be finished."""
        self.live.person_name = self.pain.person_name = self.next.person_name = name
        for finish in (self.live.stop, self.pain.finish, self.next.finish):
            finish.say(tr("Finish and save") if saving else tr("Finish"))
