"""People page: who is in the store; add, edit, choose, delete."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QLayout, QSizePolicy, QVBoxLayout, QWidget

from gui.pages.measuring.person_form import PersonForm
from gui.pages.settings.data_page import DataPage, data_page_title
from gui.session.services import Services
from gui.text.wording import affected_name, listed_name, person_name, tr
from gui.widgets.beside_row import list_card
from gui.widgets.buttons import ShortcutButton, button
from gui.widgets.figures.standing_figure import StandingFigure
from gui.widgets.layouts import FlowRow, clear_layout, column, row, widget_with
from gui.widgets.plain_dialog import plain_dialog
from gui.widgets.text import label
from gui.widgets.titled_page import TitledPage
from measure.domain.records import History, Person, SessionRecord
from measure.progress.dates import date_words
from measure.progress.wording import UNASKED_NAME
from measure.system.clock import new_id

#: Height of a drawn person: pixels, and more in sizes of the text; its width, a share of the
#: height. [technical]
_HIGH_PX, _MORE, _WIDE = 60, 4.0, 0.54
#: Text up to this size leaves room for what can be done beside a name, per cent. [technical]
_BESIDE_PERCENT = 115


@dataclass(frozen=True, slots=True)
class ListedPerson:
    """A person with their sessions, the earliest first."""

    person: Person
    sessions: tuple[SessionRecord, ...]


class PeoplePage(TitledPage):
    """Lists everybody with what can be done."""

    #: People were added, changed or deleted.
    changed = Signal()
    #: The identifier of the person to be measured from now on.
    chosen = Signal(str)
    #: The identifier of the person whose progress is to be shown.
    progress_wanted = Signal(str)

    def __init__(self, services: Services) -> None:
        super().__init__(services.appearance, data_page_title(DataPage.PEOPLE))
        self._services = services
        self.add = button(tr("Add a person"), "main")
        self.add.clicked.connect(self.ask_for_person)
        #: Buttons by what they do and the person's identifier.
        self.buttons: dict[tuple[str, str], ShortcutButton] = {}
        self._list = QWidget()
        self._rows: QVBoxLayout = column(on=self._list, spacing=self._appearance.gap(1))
        advice = tr("Names need not be real; only you must know them.")
        self.lay_out(label(advice, "quiet"), self._list, buttons=[self.add], short=True)
        self._people: list[ListedPerson] = []
        self._appearance.changed.connect(self._arrange)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.reload()

    @Slot()
    def reload(self) -> None:
        """Look up who is in the store."""
        keeper = self._services.keeper

        def look_up() -> list[ListedPerson]:
            store = keeper.store
            return [
                ListedPerson(person, tuple(store.sessions(person.id))) for person in store.people()
            ]

        self._services.records.run(look_up, self._show, self.message_raised.emit)

    def _show(self, people: list[ListedPerson]) -> None:
        """Show people, first who is measured."""
        chosen = self._services.person_id
        self._people = sorted(people, key=lambda listed: listed.person.id != chosen)
        self._arrange()

    @Slot()
    def _arrange(self) -> None:
        clear_layout(self._rows)
        self.buttons = {}
        if self._people:
            self._rows.addWidget(self._card())
        else:
            self._rows.addWidget(label(tr("No one has been added yet."), "lead"))

    def _card(self) -> QWidget:
        """Return everybody one below the other."""
        high = _HIGH_PX + self._appearance.px(_MORE)
        space = self._appearance.gap(3)
        rows = []
        for listed in self._people:
            figure = StandingFigure(self._appearance, *listed.person.affected)
            figure.setFixedSize(round(_WIDE * high), high)
            rows.append(widget_with(row(figure, (self._words(listed), 1), spacing=space)))
        return list_card(*rows, spacing=self._appearance.gap(2))

    def _words(self, listed: ListedPerson) -> QLayout:
        """Return who somebody is, and what can be done."""
        person = listed.person
        name = listed_name(person)
        progress = partial(self.progress_wanted.emit, person.id)
        actions: list[tuple[str, str, str, Callable[[], None]]] = [
            ("progress", tr("Open progress"), tr("Open progress: {name}"), progress),
            ("edit", tr("Edit"), tr("Edit {name}"), partial(self.ask_for_facts, person)),
            ("delete", tr("Delete"), _delete_words(person), partial(self.ask_to_delete, listed)),
        ]
        measured = person.id == self._services.person_id
        if not measured and not person.demo:
            choose = partial(self.chosen.emit, person.id)
            actions.insert(0, ("choose", tr("Measure"), tr("Measure {name}"), choose))
        offered = [self._action(person, *action) for action in actions]
        space = self._appearance.gap(2)
        stiff = tr("Stiff shoulder: {side}").format(side=affected_name(person.affected).lower())
        facts = column(label(stiff), label(_sessions(listed)), spacing=0)
        if self._appearance.percent <= _BESIDE_PERCENT:
            words = column(1, self._name(name, measured=measured), facts, 1, spacing=space // 2)
            return row((words, 1), column(1, row(*offered, spacing=space), 1), spacing=2 * space)
        beneath = FlowRow(space, filling=False)
        beneath.offer(offered)
        return column(self._name(name, measured=measured), facts, 1, beneath, spacing=space)

    def _name(self, name: str, *, measured: bool) -> QWidget:
        """Return a name, with a mark beside it if this is who is measured."""
        shown = label(name, "title")
        if not measured:
            return shown
        shown.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        mark = label(tr("\u2713 Currently chosen"), "far-right")
        return widget_with(row(shown, (mark, 1), spacing=self._appearance.gap(3)))

    def _action(
        self, person: Person, kind: str, text: str, named: str, act: Callable[[], None]
    ) -> ShortcutButton:
        made = button(text, "link" if kind == "delete" else "")
        made.setAccessibleName(named.format(name=person_name(person)))
        made.clicked.connect(lambda _checked=False: act())
        self.buttons[kind, person.id] = made
        return made

    # -- adding and editing -------------------------------------------------------------------

    @Slot()
    def ask_for_person(self) -> None:
        """Ask for what may be known about a new person."""
        form = self._form(Person(id=new_id(), pseudonym=tr("New person")))
        form.name.selectAll()
        form.name.setFocus()

    def ask_for_facts(self, person: Person) -> None:
        """Ask for what has changed about a person."""
        self._form(person)

    def _form(self, person: Person) -> PersonForm:
        form = PersonForm(self._appearance, person, self)
        form.edited.connect(self._save)
        form.open()
        return form

    @Slot(object)
    def _save(self, person: Person) -> None:
        keeper = self._services.keeper
        self._services.records.run(
            lambda: keeper.save_person(person), self._changed, self.message_raised.emit
        )

    def _changed(self, _person: object) -> None:
        self.reload()
        self.changed.emit()

    # -- deleting -----------------------------------------------------------------------------

    def ask_to_delete(self, listed: ListedPerson) -> None:
        """Ask before a person is deleted."""
        person = listed.person
        question = (
            tr("Delete everything that is saved about you?")
            if person.pseudonym == UNASKED_NAME
            else tr("Delete {name} and everything saved about them?")
        )
        kept = tr(
            "You can undo this until Thawline is closed, but not after that. "
            "Exports, reports and backups made earlier stay as they are."
        )
        asked = plain_dialog(
            question.format(name=person_name(person)),
            tr("Do not delete"),
            self,
            more=" ".join(filter(None, (_lost_words(len(listed.sessions)), kept))),
            agree=_delete_words(person),
        )
        asked.accepted.connect(partial(self._delete, person))
        asked.open()

    def _delete(self, person: Person) -> None:
        services = self._services
        words = (
            tr("Everything saved about you is deleted. You can undo this until Thawline is closed.")
            if person.pseudonym == UNASKED_NAME
            else tr("{name} is deleted. You can undo this until Thawline is closed.")
        ).format(name=person_name(person))

        def deleted(history: History) -> None:
            services.undo.offer(words, lambda: services.keeper.put_back(history))
            self._changed(history)

        services.records.run(
            lambda: services.keeper.delete_person(person.id), deleted, self.message_raised.emit
        )


def _delete_words(person: Person) -> str:
    """Return what deletes a person, in the words of a button."""
    if person.pseudonym == UNASKED_NAME:
        return tr("Delete my data")
    return tr("Delete {name}").format(name=person_name(person))


def _lost_words(sessions: int) -> str:
    """Return how many sessions go with a person, nothing where there are none."""
    if sessions < 2:
        return tr("1 session is deleted.") * sessions
    return tr("{count} sessions are deleted.").format(count=sessions)


def _sessions(listed: ListedPerson) -> str:
    """Return for example "Sessions: 12, the last on 20 Nov 2026"."""
    if not listed.sessions:
        return tr("No session yet")
    return tr("Sessions: {count}, the last on {day}").format(
        count=len(listed.sessions), day=date_words(listed.sessions[-1].started.day, tr)
    )
