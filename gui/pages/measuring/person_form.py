"""Form for what is known about a person: pseudonym, affected side, and optional facts."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from typing import Any

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QDialog, QGridLayout, QLineEdit, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import affected_name, age_name, error_text, onset_name, side_title, tr
from gui.widgets.buttons import MenuButton, button
from gui.widgets.plain_dialog import DIALOG_MARGIN_PX, frame_dialog
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.records import AgeBand, Onset, Person
from measure.errors import InputError

#: Width of the form in one column and in two, and the least width in which two have room, in widths
#: of a digit. [technical]
_NARROW_DIGITS, _WIDE_DIGITS, _TWO_DIGITS = 50, 84, 72


class PersonForm(QDialog):
    """Edits one person; only the pseudonym is needed."""

    #: The person as edited.
    edited = Signal(object)

    def __init__(self, appearance: Appearance, person: Person, parent: QWidget) -> None:
        super().__init__(parent)
        self._person = person
        self.setWindowTitle(tr("Person"))
        self.name = QLineEdit(person.pseudonym)
        self.name.setMaxLength(60)
        both = tuple(Side)
        self.affected = _menu(
            tr("Stiff shoulder"), [(), (Side.LEFT,), (Side.RIGHT,), both], affected_name
        )
        self.since = QLineEdit(person.since or "")
        self.since.setPlaceholderText(tr("For example March 2026"))
        self.onset = _optional(tr("It began with"), Onset, onset_name)
        self.dominant = _optional(tr("Dominant hand"), Side, side_title)
        self.age = _optional(tr("Age"), AgeBand, age_name)
        self.diabetes = _optional(tr("Diabetes"), (True, False), _yes_no)
        self.thyroid = _optional(tr("Thyroid disease"), (True, False), _yes_no)
        self.trouble = label("", "alarm")
        self.trouble.setVisible(False)
        self.save = button(tr("Save"), "main")
        self.cancel = button(tr("Cancel"))
        self.save.clicked.connect(self._save)
        self.cancel.clicked.connect(self.reject)
        for field, value in (
            (self.affected, person.affected),
            (self.onset, person.onset),
            (self.dominant, person.dominant),
            (self.age, person.age_band),
            (self.diabetes, person.diabetes),
            (self.thyroid, person.thyroid),
        ):
            field.choose(value)
        self._lay_out(appearance, parent)

    def _lay_out(self, appearance: Appearance, parent: QWidget) -> None:
        room = parent.window().width() - 4 * DIALOG_MARGIN_PX
        wide = _TWO_DIGITS * parent.fontMetrics().horizontalAdvance("0") <= room
        form = QGridLayout()
        form.setHorizontalSpacing(appearance.gap(2))
        form.setVerticalSpacing(appearance.gap(2))
        across = 2 if wide else 1
        for place, (text, field) in enumerate(self._fields()):
            line, at = divmod(place, across)
            caption = label(text)
            caption.setWordWrap(False)
            caption.setBuddy(field)
            caption.setContentsMargins(appearance.gap(2) if at else 0, 0, 0, 0)
            if isinstance(field, QLineEdit):
                field.setAccessibleName(text)
            form.addWidget(caption, line, 2 * at)
            form.addWidget(field, line, 2 * at + 1)
            form.setColumnStretch(2 * at + 1, 1)
        form.setContentsMargins(0, 0, 0, 0)
        advice = tr("Only the pseudonym is needed. It need not be a real name.")
        frame_dialog(
            self,
            label(tr("Person"), "display"),
            label(advice, "quiet"),
            self.trouble,
            form,
            buttons=[self.cancel, self.save],
            digits=_WIDE_DIGITS if wide else _NARROW_DIGITS,
        )

    def _fields(self) -> tuple[tuple[str, QWidget], ...]:
        """Return the fields by caption, those that belong together one after the other."""
        return (
            (tr("Pseudonym"), self.name),
            (tr("Age"), self.age),
            (tr("Stiff shoulder"), self.affected),
            (tr("Dominant hand"), self.dominant),
            (tr("Stiff since"), self.since),
            (tr("It began with"), self.onset),
            (tr("Diabetes"), self.diabetes),
            (tr("Thyroid disease"), self.thyroid),
        )

    @Slot()
    def _save(self) -> None:
        try:
            person = replace(
                self._person,
                pseudonym=self.name.text(),
                affected=self.affected.value or (),
                dominant=self.dominant.value,
                since=self.since.text().strip() or None,
                onset=self.onset.value,
                age_band=self.age.value,
                diabetes=self.diabetes.value,
                thyroid=self.thyroid.value,
            )
        except InputError as error:
            self.trouble.setText(error_text(error))
            self.trouble.setVisible(True)
            return
        self.accept()
        self.edited.emit(person)


def _menu(title: str, values: Sequence[Any], words: Callable[[Any], str]) -> MenuButton:
    menu = MenuButton(title, field=True)
    menu.offer(values, words)
    return menu


def _optional(title: str, values: Iterable[Any], words: Callable[[Any], str]) -> MenuButton:
    """Return a menu that also offers not to say."""
    return _menu(
        title, [None, *values], lambda value: tr("Not stated") if value is None else words(value)
    )


def _yes_no(stated: bool) -> str:
    return tr("Yes") if stated else tr("No")
