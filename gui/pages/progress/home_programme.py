"""Home programme page: stretches, how often, how long, and the pain at which to stop."""

import datetime as dt

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import stretch_name, tr
from gui.widgets.buttons import ButtonRow, MenuButton, bind_keys, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import card, column, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.records import Person, Plan, PlannedStretch, Stretch
from measure.progress.home_programme import STRETCHES
from measure.system.clock import new_id

#: Times a day that are offered. [project]
_TIMES = tuple(range(1, 13))
#: Holds that are offered, seconds; 0 is no hold. [project]
_HOLDS_S = (0, 5, 10, 15, 20, 30, 45, 60, 90, 120)


class _StretchPlanRow(QWidget):
    """One stretch: whether it is planned, how many times a day, how long it is held."""

    def __init__(self, appearance: Appearance, stretch: Stretch) -> None:
        super().__init__()
        self.stretch = stretch
        facts = STRETCHES[stretch]
        name = stretch_name(stretch)
        self.wanted = WrappingCheckBox(appearance, name)
        self.times = MenuButton(tr("{stretch}, times a day").format(stretch=name))
        self.times.offer(_TIMES, _times_words)
        self.hold = MenuButton(tr("{stretch}, how long it is held").format(stretch=name))
        self.hold.offer(_HOLDS_S[:1] if facts.swinging else _HOLDS_S, _hold_words)
        if facts.swinging:
            self.hold.hide()
        self.wanted.toggled.connect(self._follow)
        layout = QGridLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setHorizontalSpacing(appearance.gap(1))
        layout.addWidget(self.wanted, 0, 0, Qt.AlignmentFlag.AlignVCenter)
        layout.addWidget(self.times, 0, 1)
        layout.addWidget(self.hold, 0, 2)
        layout.addWidget(label(tr(facts.how), "quiet"), 1, 0, 1, 3)
        layout.setColumnStretch(0, 1)
        self._follow(False)

    @property
    def planned(self) -> PlannedStretch | None:
        """What is planned of this stretch, or None."""
        if not self.wanted.isChecked():
            return None
        return PlannedStretch(
            stretch=self.stretch, times_a_day=self.times.value, hold_s=self.hold.value
        )

    def show_planned(self, planned: PlannedStretch | None) -> None:
        self.wanted.setChecked(planned is not None)
        if planned is None:
            self.times.choose(_TIMES[0])
            self.hold.choose(0)
            return
        # A hold that was set elsewhere, such as 12 seconds, is offered beside the usual ones.
        holds = self.hold.values
        self.hold.offer(tuple(sorted({*holds, planned.hold_s})), _hold_words)
        self.times.choose(planned.times_a_day)
        self.hold.choose(planned.hold_s)

    @Slot(bool)
    def _follow(self, wanted: bool) -> None:
        self.times.setEnabled(wanted)
        self.hold.setEnabled(wanted)


class HomeProgrammePage(QWidget):
    """Shows the plan in force and takes another. It suggests nothing and counts nothing."""

    #: Plan
    chosen = Signal(object)
    left = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._person: Person | None = None
        self._today = dt.date.min
        self._shown: Plan | None = None
        self.title = label("", "title")
        self.lines = {stretch: _StretchPlanRow(appearance, stretch) for stretch in Stretch}
        self.pain_limit = ChoiceRow(
            list(range(11)), str, may_be_empty=True, title=tr("pain at which to stop")
        )
        self.chosen_by = QLineEdit()
        self.chosen_by.setAccessibleName(tr("who chose it"))
        self.chosen_by.setPlaceholderText(tr("such as physiotherapist; no name is needed"))
        self.lacking = label("", "lead")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.end = button(tr("End the programme"))
        self.keep = button(tr("Keep"), "main")
        self.leave.clicked.connect(self.left)
        self.end.clicked.connect(self._end)
        self.keep.clicked.connect(self._keep)
        bind_keys(self, self.leave, "Escape")
        self._lay_out()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        explained = tr(
            "A clinician chooses the stretches, how often and how long. "
            "Put down what you were told; nothing is added to it here."
        )
        scale = tr("0 is no pain, 10 the worst imaginable: the number you were told.")
        page = column(
            self.title,
            label(explained, "lead"),
            card(*self.lines.values(), spacing=gap(1.5)),
            label(tr("Stop when the pain reaches"), "lead"),
            self.pain_limit.row,
            label(scale, "quiet"),
            label(tr("Chosen by"), "lead"),
            self.chosen_by,
            1,
            margins=(0, 0, 12, 0),
            spacing=gap(1.5),
        )
        column(
            (scrollable(widget_with(page)), 1),
            self.lacking,
            ButtonRow([self.leave, self.end, self.keep]),
            on=self,
            margins=(24, 8, 24, 16),
            spacing=gap(1),
        )

    def show_plan(self, person: Person, plan: Plan | None, today: dt.date) -> None:
        """Show the plan that is in force today, or an empty one."""
        self._person, self._today = person, today
        self._shown = plan if plan is not None and plan.stretches else None
        self.title.setText(tr("Home programme: {person}").format(person=person.pseudonym))
        planned = {line.stretch: line for line in self._shown.stretches} if self._shown else {}
        for stretch, line in self.lines.items():
            line.show_planned(planned.get(stretch))
        self.pain_limit.choose(self._shown.pain_limit if self._shown else None)
        self.chosen_by.setText(self._shown.chosen_by if self._shown else "")
        self.end.setVisible(self._shown is not None)
        self._lack("")
        next(iter(self.lines.values())).wanted.setFocus()

    def _lack(self, words: str) -> None:
        self.lacking.setText(words)
        self.lacking.setVisible(bool(words))

    @Slot()
    def _keep(self) -> None:
        stretches = tuple(
            planned for line in self.lines.values() if (planned := line.planned) is not None
        )
        pain_limit = self.pain_limit.value
        if not stretches:
            self._lack(tr("No stretch is ticked yet."))
            next(iter(self.lines.values())).wanted.setFocus()
        elif pain_limit is None:
            self._lack(tr("The pain at which to stop is still missing."))
            self.pain_limit.button(0).setFocus()
        else:
            self._tell(stretches, pain_limit, self.chosen_by.text().strip())

    @Slot()
    def _end(self) -> None:
        self._tell((), 0, "")

    def _tell(self, stretches: tuple[PlannedStretch, ...], pain_limit: int, chosen_by: str) -> None:
        """Tell of the plan; one that was put down today is corrected, not followed by another."""
        person, shown = self._person, self._shown
        if person is None:
            return
        corrects = shown is not None and shown.first_day == self._today and bool(stretches)
        self.chosen.emit(
            Plan(
                id=shown.id if shown is not None and corrects else new_id(),
                person_id=person.id,
                first_day=self._today,
                stretches=stretches,
                pain_limit=pain_limit,
                chosen_by=chosen_by,
            )
        )


def _times_words(times: int) -> str:
    return tr("once a day") if times == 1 else tr("{times} times a day").format(times=times)


def _hold_words(hold_s: int) -> str:
    return tr("held for {seconds} s").format(seconds=hold_s) if hold_s else tr("not held")
