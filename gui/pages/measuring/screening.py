"""Screening page: the safety questions before measuring, one page at a time."""

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QPushButton, QSizePolicy, QVBoxLayout, QWidget

from gui.protocol.red_flags import RedFlagScreening, ScreeningAnswer, ScreeningKind, ScreeningPage
from gui.style.appearance import Appearance
from gui.text.safety_wording import answer_text, screening_text
from gui.text.wording import tr
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.layouts import card, column, row, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label


def _item(text: str) -> QWidget:
    """Return a line of a list, its sign hanging before it."""
    sign = label("\u2022", "lead")
    sign.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
    sign.setAlignment(Qt.AlignmentFlag.AlignTop)
    return widget_with(row(sign, (label(text, "lead"), 1), spacing=12))


#: From left to right.
_BUTTON_ORDER = (
    ScreeningAnswer.ONE_FITS,
    ScreeningAnswer.NONE_FITS,
    ScreeningAnswer.READ,
    ScreeningAnswer.CLINICIAN_AGREES,
)


class SafetyPage(QWidget):
    """Runs a :class:`RedFlagScreening`; tells whether measuring may go on."""

    cleared = Signal()
    stopped = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._screening = RedFlagScreening.begin(ScreeningKind.FIRST)
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(24, 16, 24, 16)
        self._shown: QWidget | None = None
        self.answers: dict[ScreeningAnswer, QPushButton] = {}
        self.ways_out: list[QPushButton] = []

    @property
    def screening(self) -> RedFlagScreening:
        return self._screening

    def ask(self, check: ScreeningKind, _checked: bool = False) -> None:
        """Begin the questions."""
        self._screening = RedFlagScreening.begin(check)
        self._show()

    def give(self, answer: ScreeningAnswer, _checked: bool = False) -> None:
        """Answer the page that is shown."""
        self._screening = self._screening.answer(answer)
        if (
            self._screening.page is ScreeningPage.CLEAR
            and self._screening.check is not ScreeningKind.PAIN
        ):
            self.cleared.emit()
        else:
            self._show()

    def _show(self) -> None:
        """Build the page anew: pages differ in what they hold."""
        layout = column(spacing=self._appearance.gap(2))
        words = screening_text(self._screening.page)
        here, of = self._screening.page_position
        if of > 1:
            before = (
                tr("Before going on, {here} of {of}")
                if self._screening.check is ScreeningKind.PAIN
                else tr("Before measuring, {here} of {of}")
            )
            layout.addWidget(label(before.format(here=here, of=of), "quiet"))
        title = label(words.title, "title")
        layout.addWidget(title)
        many = len(words.items) > 1
        items = [_item(item) if many else label(item, "lead") for item in words.items]
        if words.close:
            items.append(label(words.close, "alarm" if words.alarming else "title"))
        if words.alarming and not words.close:
            title.setProperty("role", "alarm")
        layout.addWidget(card(*items, role="alarm-card" if words.alarming else "card", spacing=10))
        layout.addStretch(1)
        outer = widget_with(column((scrollable(widget_with(layout)), 1), self._buttons()))
        if self._shown is not None:
            self._layout.removeWidget(self._shown)
            self._shown.hide()
            self._shown.deleteLater()
        self._shown = outer
        self._layout.addWidget(outer)

    def _buttons(self) -> ButtonRow:
        screening = self._screening
        self.answers = {}
        self.ways_out = []
        if screening.page is ScreeningPage.CLEAR:
            self._way_out(tr("Go on gently"), "", self.cleared)
            self._way_out(tr("Stop for today"), "main", self.stopped)
        elif not screening.answers or ScreeningAnswer.CLINICIAN_AGREES in screening.answers:
            self._way_out(tr("Ask again"), "", partial(self.ask, screening.check))
            self._way_out(tr("Leave measuring"), "main", self.stopped)
        for answer in _BUTTON_ORDER:
            if answer in screening.answers:
                role = "main" if answer in (ScreeningAnswer.READ, ScreeningAnswer.NONE_FITS) else ""
                self.answers[answer] = button(answer_text(answer), role)
                self.answers[answer].clicked.connect(partial(self.give, answer))
        return ButtonRow([*self.ways_out, *self.answers.values()])

    def _way_out(self, text: str, role: str, slot: object) -> None:
        way_out = button(text, role)
        way_out.clicked.connect(slot)
        self.ways_out.append(way_out)

    def keep_focus(self) -> None:
        """Put the keyboard on the page, not on an answer: nobody should agree by accident."""
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setFocus()
