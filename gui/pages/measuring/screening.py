"""Screening page: the safety questions before measuring, one page at a time."""

from collections.abc import Collection
from functools import partial

from PySide6.QtCore import QDeadlineTimer, QEvent, QObject, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QLayout,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from gui.protocol.red_flags import RedFlagScreening, ScreeningAnswer, ScreeningPage
from gui.style.appearance import Appearance
from gui.style.measures import BAR_PX, GAP_PX, MARGIN_PX, TITLE
from gui.text.safety_wording import ScreeningText, answer_text, screening_text
from gui.text.wording import tr
from gui.widgets.buttons import HELD_BACK_MS, ButtonRow, ShortcutButton, button
from gui.widgets.figures.standing_figure import StandingFigure
from gui.widgets.fold import MoreBelow
from gui.widgets.layouts import Content, card, centred, column, row, separator, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.side_by_side import LARGE_FROM_PERCENT
from gui.widgets.text import OneLineLabel, SignedLine, end_together, label
from measure.domain.landmarks import Side
from measure.domain.screening_records import ScreeningOccasion

#: From left to right. Neither answer to a list of signs stands out from the other.
_BUTTON_ORDER = (
    ScreeningAnswer.ONE_FITS,
    ScreeningAnswer.NONE_FITS,
    ScreeningAnswer.CLINICIAN_AGREES,
)
#: Width and height of the drawn person, and of one beside large text, pixels. [technical]
_FIGURE_PX, _FIGURE_BESIDE_LARGE_PX = (280, 360), (190, 300)
#: Space inside the card of an emergency, beyond that of any card, pixels. [technical]
_EMERGENCY_PX = 2 * GAP_PX
#: Empty pixels beneath the letters of a line, at most. [technical]
_LEADING_PX = 4
#: Pixels from its end at which a list counts as read to the end. [technical]
_END_PX = 8


def _cause(check: ScreeningOccasion, pain: int, rose_from: int | None, *, clinic: bool) -> str:
    """Return why the questions appear."""
    after = check is ScreeningOccasion.AFTER_PAIN
    if after and rose_from is not None:
        words = (
            tr("Ask the patient: the pain rose from {before} to {pain} of 10.")
            if clinic
            else tr("Asked now because the pain rose from {before} to {pain} of 10.")
        )
        return words.format(before=rose_from, pain=pain)
    if clinic:
        words = (
            tr("Ask the patient: the pain was rated {pain} of 10.")
            if after
            else tr("Ask the patient: pain reached {pain} of 10 today.")
        )
        return words.format(pain=pain)
    words = (
        tr("Asked now because the pain was rated {pain} of 10.")
        if after
        else tr("Asked again because pain reached {pain} of 10 today.")
    )
    return words.format(pain=pain)


class SafetyPage(QWidget):
    """Runs a :class:`RedFlagScreening`; tells whether measuring may go on.

    "None of these" can be pressed only once the end of the list has been on the screen. It comes in
    the place of another button, so never beneath a pointer that rests there, nor to the keyboard,
    unless the person has scrolled the list; and it is not pressed in its first moment.
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
        self._why, self._another, self._clinic = "", False, False
        #: The arms that are meant: the one that hurt, or those with a stiff shoulder.
        self.sides: Collection[Side] = ()
        #: The pain before, where the questions after a movement are asked because it rose.
        self.pain_rose_from: int | None = None
        self._layout = QVBoxLayout(self)
        self._layout.setContentsMargins(0, 0, 0, 0)
        self._shown: QWidget | None = None
        self._area: QScrollArea | None = None
        #: The signs of the list that is shown, and their card.
        self._lines: list[SignedLine] = []
        self._signs: QWidget = self
        #: Runs out when what was painted is on the screen; goes with the page.
        self._painted = QTimer(self, singleShot=True, interval=0)
        self._painted.timeout.connect(self._check_end)
        #: Whether the list was scrolled by the person since its end was checked last.
        self._scrolled = False
        #: Whether the buttons are to change as soon as nobody is about to press one.
        self._waits = False
        #: While a list has just come its buttons may still find their places.
        self._new = QDeadlineTimer(0)
        self._foot_row: ButtonRow | None = None
        self.rest = self._rest_button()
        self.answers: dict[ScreeningAnswer, ShortcutButton] = {}
        self.ways_out: list[QPushButton] = []
        back = QShortcut(QKeySequence(Qt.Key.Key_Escape), self)
        back.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
        back.activated.connect(self.go_back)

    @property
    def screening(self) -> RedFlagScreening:
        return self._screening

    def ask(
        self,
        check: ScreeningOccasion,
        pain: int | None = None,
        *,
        another: bool = False,
        clinic: bool = False,
    ) -> None:
        """Begin the questions.

        Parameters
        ----------
        pain
            The pain of today, 0..10, because of which they are asked now; None for another cause.
        another
            Whether there is another movement that could be measured instead of a painful one.
        clinic
            Whether a clinician reads them, who asks a patient.
        """
        self._clinic = clinic
        self._screening = RedFlagScreening.begin(check)
        self._why = "" if pain is None else _cause(check, pain, self.pain_rose_from, clinic=clinic)
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
        """Scroll on to the first sign that is not seen whole."""
        if self._area is None:
            return
        bar = self._area.verticalScrollBar()
        here = bar.value()
        unseen = [line.geometry().top() + self._signs.y() - GAP_PX for line in self._unseen()]
        bar.setValue(here + bar.pageStep() - bar.singleStep())
        if unseen and here < unseen[0] < bar.value():
            bar.setValue(unseen[0])
        # Where nothing is left to scroll, to ask for the rest is enough.
        self._note_scrolling()
        self._check_again()

    @Slot()
    def _note_scrolling(self) -> None:
        self._scrolled = True

    def _check_again(self) -> None:
        """Check for the end of the list now if that had to wait."""
        if self._waits:
            self._painted.start()

    def _unseen(self) -> list[SignedLine]:
        """Return the signs that fade at the page's lower edge or lie below it."""
        fold = None if self._area is None else self._area.findChild(MoreBelow)
        if self._area is None or fold is None:
            return []
        faint = fold.fade[0] + self._area.verticalScrollBar().value() - self._signs.y()
        return [line for line in self._lines if line.geometry().bottom() > faint + _LEADING_PX]

    def _show(self) -> None:
        """Build the page anew: pages differ in what they hold."""
        words = screening_text(self._screening.page, clinic=self._clinic)
        buttons, asks = self._buttons(), self._screening.asks
        area = scrollable(self._list(words) if asks else self._verdict(words))
        area.setAccessibleName(words.title)
        fold = area.findChild(MoreBelow)
        if asks and fold is not None:
            fold.keep_items_whole()
        buttons.installEventFilter(area)
        beside = MARGIN_PX - BAR_PX
        framed = row(area, margins=(beside, 0, beside, 0))
        outer = widget_with(column((framed, 1), separator(), self._foot(words, buttons), spacing=0))
        if self._shown is not None:
            self._layout.removeWidget(self._shown)
            self._shown.hide()
            self._shown.deleteLater()
        self._shown, self._area = outer, area
        self._layout.addWidget(outer)
        area.viewport().installEventFilter(self)
        area.verticalScrollBar().actionTriggered.connect(self._note_scrolling)
        self._scrolled = self._waits = False
        self._new.setRemainingTime(HELD_BACK_MS)
        if self.isVisible():
            self.keep_focus()

    def _foot(self, words: ScreeningText, buttons: ButtonRow) -> QLayout:
        """Return the buttons, and above them what follows from a list: it is always in sight."""
        said: list[Content] = []
        roomy = self._appearance.percent < LARGE_FROM_PERCENT
        if words.close:
            alarm, usual = ("alarm", "title") if roomy else ("fault", "")
            role = alarm if words.alarming else usual
            # Where text is large a second line is better than another size on each page.
            one_line = OneLineLabel(self._appearance, words.close, role, bold=True, share=TITLE)
            said.append(one_line if roomy else label(words.close, role))
        apart = self._appearance.gap(2 if roomy else 1)
        low = widget_with(column(*said, buttons, spacing=apart))
        return centred(low, margins=(MARGIN_PX, GAP_PX, MARGIN_PX, GAP_PX))

    def _list(self, words: ScreeningText) -> QWidget:
        """Return the signs of a list below its question, the fewer the larger."""
        here, of = self._screening.page_position
        roomy = self._appearance.percent < LARGE_FROM_PERCENT
        gap = self._appearance.gap
        position = tr("{here} of {of}").format(here=here, of=of)
        place = label(f"{words.heading}, {position}" if roomy else position, "quiet")
        place.setWordWrap(False)
        place.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
        self._lines = []
        for item, strong in zip(words.items, words.strong, strict=True):
            line = SignedLine("\u2022", item)
            line.emphasise(strong.split("|"))
            self._lines.append(line)
        # The longest list needs room above the foot as well.
        between = (1.25 if words.alarming else 1.5) if roomy else 1.75
        self._signs = card(
            *self._lines,
            role="alarm-card" if words.alarming else "card",
            spacing=gap(between),
        )
        why = self._why or (tr("Ask the patient.") if self._clinic and not roomy else "")
        said = [label(why, "lead")] if why else []
        made = widget_with(
            column(
                row((label(words.title, "display"), 1), place, spacing=gap(2)),
                *said,
                self._signs,
                1,
                margins=(0, MARGIN_PX, 0, 2 * GAP_PX),
                spacing=gap(1.5 if roomy else 1),
            )
        )
        if roomy:
            made.setProperty("short", "some" if words.alarming else "true")
        return made

    def _verdict(self, words: ScreeningText) -> QWidget:
        """Return what follows from an answer: little, and so in large type, in the middle."""
        gap, roomy = self._appearance.gap, self._appearance.percent < LARGE_FROM_PERCENT
        title = label(words.title, "display")
        first, *rest = (label(end_together(item), "lead") for item in words.items)
        contents: list[Content]
        if words.alarming:
            numbers = [
                (column(label(number, "number"), label(where), spacing=0), 1)
                for number, where in words.numbers
            ]
            above = gap(1) if roomy else 0
            called = row(*numbers, spacing=gap(2), margins=(0, above, 0, above))
            margins = (_EMERGENCY_PX if roomy else 0,) * 4
            said = column(title, first, called, *rest, margins=margins, spacing=gap(2))
            contents = [card(said, role="alarm-fill")]
        else:
            said = column(1, title, first, *rest, 1, spacing=gap(2))
            figure = StandingFigure(self._appearance, *self.sides)
            figure.setFixedSize(*(_FIGURE_PX if roomy else _FIGURE_BESIDE_LARGE_PX))
            contents = [card(row(figure, (said, 1), spacing=gap(4 if roomy else 2)))]
        margins = (0, MARGIN_PX, 0, MARGIN_PX)
        return widget_with(column(2, *contents, 3, margins=margins, spacing=gap(2)))

    def _buttons(self) -> ButtonRow:
        screening = self._screening
        self.answers = {}
        self.ways_out = []
        if screening.page is ScreeningPage.CLEAR:
            self._way_out(tr("Stop for today"), "main", self.stopped)
            if self._another:
                self._way_out(tr("Another movement that does not hurt"), "", self.other_movement)
        elif screening.can_go_back or self._may_leave:
            self._way_out(tr("Back"), "", self.go_back)
            if not screening.asks:
                self._way_out(tr("Stop for today"), "main", self.stopped)
        for answer in _BUTTON_ORDER:
            if answer in screening.answers:
                self.answers[answer] = button(answer_text(answer, clinic=self._clinic))
                self.answers[answer].setProperty("leads_on", screening.asks)
                self.answers[answer].clicked.connect(partial(self.give, answer))
        self.rest = self._rest_button()
        foot = ButtonRow([*self.ways_out, *self.answers.values(), self.rest], wide=True)
        if screening.asks:
            none = self.answers[ScreeningAnswer.NONE_FITS]
            none.setEnabled(False)
            # Its place belongs to the button that shows the rest of the list until that is seen.
            none.setVisible(False)
            self.rest.setVisible(True)
            for watched in (foot, self.rest):
                watched.installEventFilter(self)
        self._foot_row = foot
        return foot

    def _rest_button(self) -> ShortcutButton:
        """Return the button that scrolls the list, hidden unless there is more to see."""
        made = button(tr("Show the rest"), "main")
        made.clicked.connect(self.show_rest)
        made.setVisible(False)
        return made

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Notice what of the list is being painted, and who leaves its buttons."""
        if event.type() in (QEvent.Type.Leave, QEvent.Type.FocusOut):
            self._check_again()
        elif event.type() is QEvent.Type.Paint and watched not in (self._foot_row, self.rest):
            self._painted.start()
        return super().eventFilter(watched, event)

    @Slot()
    def _check_end(self) -> None:
        """Let the list be denied once its end has been on the screen."""
        none = self.answers.get(ScreeningAnswer.NONE_FITS)
        if none is None or none.isEnabled() or self._area is None:
            return
        scrolled, self._scrolled = self._scrolled, False
        self._waits = self._is_about_to_press and not scrolled and self._new.hasExpired()
        if self._waits:
            return
        bar = self._area.verticalScrollBar()
        at_end = bar.value() >= bar.maximum() - _END_PX
        none.setEnabled(at_end)
        none.setVisible(at_end)
        if at_end:
            for answer in self.answers.values():
                answer.hold_back()
        self.rest.setVisible(not at_end)
        left = len(self._unseen())
        self.rest.say(tr("Show {count} more").format(count=left) if left else tr("Show the rest"))

    @property
    def _is_about_to_press(self) -> bool:
        """Whether the pointer rests on the buttons, or the keyboard on the one that will go."""
        pointed = self._foot_row is not None and self._foot_row.underMouse()
        return pointed or self.rest.hasFocus()

    def _way_out(self, text: str, role: str, slot: object) -> None:
        way_out = button(text, role)
        way_out.clicked.connect(slot)
        self.ways_out.append(way_out)

    def keep_focus(self) -> None:
        """Put the keyboard on the list, not on an answer: nobody should agree by accident."""
        if self._area is not None:
            self._area.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
            self._area.setFocus()
