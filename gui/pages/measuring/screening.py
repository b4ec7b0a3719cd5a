"""Screening page: the safety questions before measuring, one page at a time."""

from functools import partial

from PySide6.QtCore import QEvent, QObject, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QPushButton, QScrollArea, QVBoxLayout, QWidget

from gui.protocol.red_flags import RedFlagScreening, ScreeningAnswer, ScreeningPage
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX, MARGIN_PX
from gui.text.safety_wording import ScreeningText, answer_text, screening_text
from gui.text.wording import tr
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.layouts import card, column, row, separator, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import SignedLine, label
from measure.domain.screening_records import ScreeningOccasion

#: From left to right. Neither answer to a list of signs stands out from the other.
_BUTTON_ORDER = (
    ScreeningAnswer.ONE_FITS,
    ScreeningAnswer.NONE_FITS,
    ScreeningAnswer.CLINICIAN_AGREES,
)
#: Text size from which a list is set closer, so that more of it is seen, per cent. [technical]
_LARGE_FROM_PERCENT = 130
#: Pixels from its end at which a list counts as read to the end. [technical]
_END_PX = 8


class SafetyPage(QWidget):
    """Runs a :class:`RedFlagScreening`; tells whether measuring may go on.

    "None of these" can be pressed only once the end of the list has been on the screen.
    """

    cleared = Signal()
    #: Before measuring, from the first list, before anything was answered.
    left = Signal()
    stopped = Signal()
    #: After much pain a movement that does not hurt is wanted.
    other_movement = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._screening = RedFlagScreening.begin(ScreeningOccasion.BEFORE)
        self._another = False
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(0, 0, 0, 0)
        self._shown: QWidget | None = None
        self._area: QScrollArea | None = None
        #: Runs out when what was painted is on the screen; goes with the page.
        self._painted = QTimer(self, singleShot=True, interval=0)
        self._painted.timeout.connect(self._check_end)
        self.rest = self._rest_button()
        self.answers: dict[ScreeningAnswer, QPushButton] = {}
        self.ways_out: list[QPushButton] = []
        back = QShortcut(QKeySequence(Qt.Key.Key_Escape), self)
        back.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        back.activated.connect(self.go_back)

    @property
    def screening(self) -> RedFlagScreening:
        return self._screening

    def ask(self, check: ScreeningOccasion, *, another: bool = False) -> None:
        """Begin the questions.

        Parameters
        ----------
        another
            Whether there is another movement that could be measured instead of a painful one.
        """
        self._screening = RedFlagScreening.begin(check)
        self._another = another
        self._show()

    def give(self, answer: ScreeningAnswer, _checked: bool = False) -> None:
        """Answer the page that is shown."""
        self._screening = self._screening.answer(answer)
        if (
            self._screening.page is ScreeningPage.CLEAR
            and self._screening.check is not ScreeningOccasion.AFTER_PAIN
        ):
            self.cleared.emit()
        else:
            self._show()

    @Slot()
    def go_back(self) -> None:
        """Show the page before, to change its answer; from the first, leave the questions."""
        if self._screening.can_go_back:
            self._screening = self._screening.back()
            self._show()
        elif self._may_leave:
            self.left.emit()

    @property
    def _may_leave(self) -> bool:
        """Whether there is a page before the questions; after much pain there is none."""
        return self._screening.asks and self._screening.check is ScreeningOccasion.BEFORE

    @Slot()
    def show_rest(self) -> None:
        """Scroll the list by a page."""
        if self._area is not None:
            bar = self._area.verticalScrollBar()
            bar.setValue(bar.value() + bar.pageStep() - bar.singleStep())

    def _show(self) -> None:
        """Build the page anew: pages differ in what they hold."""
        words = screening_text(self._screening.page)
        area = scrollable(self._list(words) if self._screening.asks else self._verdict(words))
        area.setAccessibleName(words.title)
        buttons = self._buttons()
        buttons.installEventFilter(area)
        foot = row(buttons, margins=(MARGIN_PX, GAP_PX, MARGIN_PX, GAP_PX))
        outer = widget_with(column((area, 1), separator(), foot, spacing=0))
        if self._shown is not None:
            self._layout.removeWidget(self._shown)
            self._shown.hide()
            self._shown.deleteLater()
        self._shown, self._area = outer, area
        self._layout.addWidget(outer)
        area.viewport().installEventFilter(self)
        if self.isVisible():
            self.keep_focus()

    def _list(self, words: ScreeningText) -> QWidget:
        """Return the signs of a list below its question."""
        here, of = self._screening.page_position
        roomy = self._appearance.percent < _LARGE_FROM_PERCENT
        before = (
            tr("Before going on, {here} of {of}")
            if self._screening.check is ScreeningOccasion.AFTER_PAIN
            else tr("Before measuring, {here} of {of}")
        )
        place = label(before.format(here=here, of=of), "small")
        place.setWordWrap(False)
        items: list[QWidget] = [SignedLine("\u2022", item) for item in words.items]
        items.append(label(words.close, "alarm" if words.alarming else "title"))
        return widget_with(
            column(
                row((label(words.heading, "small"), 1), place),
                label(words.title, "display" if roomy else "title"),
                card(
                    *items,
                    role="alarm-card" if words.alarming else "card",
                    spacing=self._appearance.gap(1.25 if roomy else 1),
                ),
                1,
                margins=(0, self._appearance.gap(1.5), 0, GAP_PX),
                spacing=self._appearance.gap(1),
            )
        )

    def _verdict(self, words: ScreeningText) -> QWidget:
        """Return what follows from an answer: little, and so in large type, in the middle."""
        title = label(words.title, "display")
        rest = [label(item, "lead") for item in words.items]
        gap = self._appearance.gap(2)
        contents: list[QWidget]
        if words.alarming:
            contents = [card(title, *rest, role="alarm-fill", spacing=gap)]
        else:
            contents = [title, card(*rest, spacing=gap)]
        margins = (0, MARGIN_PX, 0, MARGIN_PX)
        return widget_with(column(2, *contents, 3, margins=margins, spacing=gap))

    def _buttons(self) -> ButtonRow:
        screening = self._screening
        self.answers = {}
        self.ways_out = []
        if screening.page is ScreeningPage.CLEAR:
            self._way_out(tr("Stop for today"), "main", self.stopped)
            if self._another:
                self._way_out(tr("Another movement that does not hurt"), "", self.other_movement)
        elif screening.can_go_back or self._may_leave:
            back = tr("Back") if screening.asks else tr("Change my answer")
            self._way_out(back, "link", self.go_back)
            if not screening.asks:
                self._way_out(tr("Stop for today"), "main", self.stopped)
        for answer in _BUTTON_ORDER:
            if answer in screening.answers:
                self.answers[answer] = button(answer_text(answer))
                self.answers[answer].setProperty("leads_on", True)
                self.answers[answer].clicked.connect(partial(self.give, answer))
        self.rest = self._rest_button()
        foot = ButtonRow([*self.ways_out, *self.answers.values(), self.rest])
        if screening.asks:
            none = self.answers[ScreeningAnswer.NONE_FITS]
            none.setEnabled(False)
            # Its place belongs to the button that shows the rest of the list until that is seen.
            none.setVisible(False)
            self.rest.setVisible(True)
        return foot

    def _rest_button(self) -> QPushButton:
        """Return the button that scrolls the list, hidden unless there is more to see."""
        made = button(tr("Show the rest"))
        made.setProperty("leads_on", True)
        made.clicked.connect(self.show_rest)
        made.setVisible(False)
        return made

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Notice what of the list is being painted."""
        if event.type() is QEvent.Type.Paint:
            self._painted.start()
        return super().eventFilter(watched, event)

    @Slot()
    def _check_end(self) -> None:
        """Let the list be denied once its end has been on the screen."""
        none = self.answers.get(ScreeningAnswer.NONE_FITS)
        if none is None or none.isEnabled() or self._area is None:
            return
        bar = self._area.verticalScrollBar()
        at_end = bar.value() >= bar.maximum() - _END_PX
        none.setEnabled(at_end)
        none.setVisible(at_end)
        self.rest.setVisible(not at_end)

    def _way_out(self, text: str, role: str, slot: object) -> None:
        way_out = button(text, role)
        way_out.clicked.connect(slot)
        self.ways_out.append(way_out)

    def keep_focus(self) -> None:
        """Put the keyboard on the list, not on an answer: nobody should agree by accident."""
        if self._area is not None:
            self._area.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
            self._area.setFocus()
