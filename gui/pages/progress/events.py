"""Events page: injections, flares, changes of therapy and other events that may bend a curve."""

import datetime as dt
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QHideEvent
from PySide6.QtWidgets import QGridLayout, QLineEdit, QSizePolicy, QVBoxLayout, QWidget

from gui.pages.progress.event_kinds import EventKinds
from gui.pages.progress.explanation import Explanation
from gui.style.appearance import Appearance
from gui.text.day_text import day_text
from gui.text.wording import event_mark, event_name, person_name, side_title, tr
from gui.widgets.announcement import announce
from gui.widgets.beside_row import BesideRow
from gui.widgets.buttons import MenuButton, bind_keys, button
from gui.widgets.date_field import DateField
from gui.widgets.layouts import card, clear_layout, column, row, strip, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.scroll_page import back_to_top, bring_into_view
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.record_checks import LONGEST_NOTE
from measure.domain.records import Event, EventKind, History, Person
from measure.progress.dates import date_words, short_date_words
from measure.progress.home_programme import events_with_plans
from measure.system.clock import new_id

#: Text size from which the note stands below shoulder and day, per cent. [technical]
_BELOW_FROM_PERCENT = 125
#: Sign of what is done.
_DONE = "\u2713"


@dataclass(frozen=True, slots=True, kw_only=True)
class EventEntries:
    """What is entered of an event that is not saved, in whatever language.

    Attributes
    ----------
    day
        None where what is typed is no day.
    day_typed
        The day as it is typed.
    """

    person_id: str
    kind: EventKind | None
    side: Side | None
    day: dt.date | None
    day_typed: str
    note: str


class EventsPage(QWidget):
    """Lists what was noted, the latest first, and takes something new."""

    #: Event
    noted = Signal(object)
    #: Event that is to go.
    dropped = Signal(object)
    left = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._person: Person | None = None
        self._today = dt.date.min
        self.title = label("", "display")
        self._purpose = label(tr("It appears as a flag above the charts."))
        #: The event that was saved last, in the place of what events are for.
        self.said = label("")
        self.undo = button(tr("Undo"), "line-link")
        self.undo.clicked.connect(self._take_back)
        self._saved: Event | None = None
        self.side = MenuButton(tr("which shoulder"), field=True)
        self.side.offer([Side.LEFT, Side.RIGHT, None], _shoulder_words)
        self.kind = EventKinds(appearance)
        self.day = DateField(appearance, tr("day of the event"), fills=True)
        self.note = QLineEdit()
        self.note.setAccessibleName(tr("note"))
        self.note.setPlaceholderText(tr("A note, if you like"))
        self.note.setMaxLength(LONGEST_NOTE)
        questions = (tr("Which shoulder?"), tr("When?"), tr("Note"))
        self._questions = [label(words, "strong") for words in questions]
        self.lacking = label("", "fault")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.keep = button(tr("Save event"), "main")
        self.leave.clicked.connect(self.left)
        self.keep.clicked.connect(self._keep)
        self.kind.changed.connect(self._show_keep)
        self._list = QWidget()
        self._rows = QVBoxLayout(self._list)
        self.delete_buttons: list[QWidget] = []
        bind_keys(self, self.leave, "Escape")
        self._lay_out()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(gap(1))
        explanation = Explanation(
            tr("What events do"),
            tr(
                "Events appear as flags above the charts. An injection, a procedure, a flare or "
                "a change of camera starts a new line. Your results before and after a "
                "treatment, a flare, or a change of medicine or home programme are compared. "
                "After a clinic visit you see what has changed since. A new home programme "
                "and a session in a clinic are added automatically."
            ),
        )
        self._fields = QGridLayout()
        self._fields.setContentsMargins(0, 0, 0, 0)
        self._fields.setHorizontalSpacing(gap(2))
        self._fields.setVerticalSpacing(gap(0.75))
        self._appearance.changed.connect(self._place_fields)
        self._place_fields()
        heading = label(tr("Noted so far"), "title")
        self._noted = card(heading, self._list, spacing=gap(1))
        saying = widget_with(row((self.said, 1), self.undo, spacing=gap(2)))
        self._saying = strip(saying, "sunken-card")
        self._saying.hide()
        entry = card(self.lacking, self.kind, self._fields, spacing=gap(2))
        frame_page(
            self,
            column(
                BesideRow(self.title, explanation.link),
                explanation,
                self._purpose,
                self._saying,
                spacing=gap(1),
            ),
            entry,
            self._noted,
            1,
            buttons=[self.leave, self.keep],
            spacing=gap(2),
        )

    @Slot()
    def _place_fields(self) -> None:
        """Put shoulder, day and note side by side, under the columns, where they have room."""
        beside = self._appearance.percent < _BELOW_FROM_PERCENT
        columns = 3 if beside else 2
        fields = (self.side, self.day, self.note)
        for place, (question, field) in enumerate(zip(self._questions, fields, strict=True)):
            line, aside = divmod(place, columns)
            wide = 1 if line == 0 else columns
            self._fields.addWidget(question, 2 * line, aside, 1, wide)
            # One height and one top for all three, whatever is inside.
            field.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
            self._fields.setRowMinimumHeight(2 * line + 1, self.day.sizeHint().height())
            self._fields.addWidget(field, 2 * line + 1, aside, 1, wide)
        for place in range(3):
            self._fields.setColumnStretch(place, place < columns)

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self._show_saved(None)

    def show_events(self, history: History, today: dt.date) -> None:
        """Show what was noted of a person; the questions begin anew."""
        person, events = history.person, events_with_plans(history)
        self._person, self._today = person, today
        self.title.setText(tr("Add an event: {person}").format(person=person_name(person)))
        self._show_saved(None)
        self.kind.begin_anew()
        self.side.choose(person.affected[0] if len(person.affected) == 1 else None)
        self.day.show_day(today)
        self.note.clear()
        self._lack("")
        clear_layout(self._rows)
        self.delete_buttons = []
        for event in sorted(events, key=lambda event: event.day, reverse=True):
            self._rows.addWidget(self._row(event, noted=event in history.events))
        if not events:
            self._rows.addWidget(label(tr("No events so far."), "quiet"))
        self.kind.button(EventKind.INJECTION).setFocus()

    @property
    def entered(self) -> EventEntries | None:
        """What is entered by now; None while nobody's events are shown."""
        if self._person is None:
            return None
        return EventEntries(
            person_id=self._person.id,
            kind=self.kind.value,
            side=self.side.value,
            day=self.day.day,
            day_typed=self.day.text.text(),
            note=self.note.text(),
        )

    def resume(self, entered: EventEntries) -> None:
        """Go on with what was entered on such a page."""
        self.kind.choose(entered.kind)
        self.side.choose(entered.side)
        if entered.day is None:
            self.day.text.setText(entered.day_typed)
        else:
            self.day.show_day(entered.day)
        self.note.setText(entered.note)

    def tell_saved(self, event: Event) -> None:
        """Say that an event was saved, until another one is begun."""
        self._show_saved(event)
        announce(self.said, self.said.text())
        back_to_top(self.said)

    def _show_saved(self, event: Event | None) -> None:
        """Say that this event was saved, or what events are for."""
        self._saved = event
        if event is not None:
            words = tr("Saved: {event}, {day}").format(
                event=_with_side(event_mark(event.kind), event),
                day=short_date_words(event.day, self._today, tr),
            )
            self.said.setText(f"{_DONE}  {words}")
            self.undo.setAccessibleName(tr("Undo: {event}").format(event=words))
        self._purpose.setVisible(event is None)
        self._saying.setVisible(event is not None)

    @Slot()
    def _take_back(self) -> None:
        """Delete the event that was saved last."""
        if self._saved is not None:
            self.dropped.emit(self._saved)

    def _row(self, event: Event, *, noted: bool) -> QWidget:
        """Return an event with a button to delete it; a change of plans has none."""
        words = event_words(event)
        if not noted:
            return label(words)
        delete = button(tr("Delete"), "line-link")
        delete.setAccessibleName(tr("Delete: {event}").format(event=words))
        delete.clicked.connect(partial(self._drop, event))
        self.delete_buttons.append(delete)
        return widget_with(row((label(words), 1), delete, spacing=self._appearance.gap(2)))

    def _drop(self, event: Event, _checked: bool = False) -> None:
        self.dropped.emit(event)

    def _lack(self, words: str) -> None:
        self.lacking.setText(words)
        self.lacking.setVisible(bool(words))
        if words:
            bring_into_view(self.lacking)

    @Slot()
    def _show_keep(self) -> None:
        """Let an event be saved once it is chosen."""
        chosen = self.kind.value is not None
        if chosen:
            self._show_saved(None)
        self.keep.setEnabled(chosen)
        self.keep.say(tr("Save event") if chosen else tr("Choose an event first"))

    @Slot()
    def _keep(self) -> None:
        person, kind, day = self._person, self.kind.value, self.day.day
        if person is None or kind is None:
            return
        if day is None or day > self._today:
            self._lack(
                tr("Please enter the day as {day}. It cannot be after today.").format(
                    day=day_text(self._today)
                )
            )
            self.day.text.setFocus()
        else:
            self.noted.emit(
                Event(
                    id=new_id(),
                    person_id=person.id,
                    day=day,
                    kind=kind,
                    side=self.side.value,
                    note=self.note.text().strip(),
                )
            )


def _shoulder_words(side: Side | None) -> str:
    if side is None:
        return tr("Both or neither")
    return tr("Left shoulder") if side is Side.LEFT else tr("Right shoulder")


def _with_side(words: str, event: Event) -> str:
    if event.side is None:
        return words
    return tr("{event}, {side}").format(event=words, side=side_title(event.side).lower())


def event_words(event: Event) -> str:
    """Return one line, "16 Sep 2026: injection, left. Note"."""
    line = f"{date_words(event.day, tr)}: {_with_side(event_name(event.kind), event)}"
    return f"{line}. {event.note}" if event.note else line
