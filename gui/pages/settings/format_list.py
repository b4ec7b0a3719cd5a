"""List of the formats of an export, of which one is chosen."""

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QWidget

from gui.pages.settings.radio_line import RadioLine
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.layouts import column, row
from measure.export.formats import Format


def format_name(kind: Format) -> str:
    return {
        Format.SPREADSHEET: tr("Table for a spreadsheet"),
        Format.CSV: tr("Table for other programs"),
        Format.JSON: tr("Everything, to import again"),
        Format.FHIR: tr("For a health record"),
    }[kind]


def format_words(kind: Format) -> str:
    """Return what a format is for."""
    return {
        Format.SPREADSHEET: tr("One row for each trial. Opens in any spreadsheet program."),
        Format.CSV: tr("One row for each trial, with commas and decimal points (CSV)."),
        Format.JSON: tr("The only format that Thawline can import, here or elsewhere (JSON)."),
        Format.FHIR: tr("The readings as observations of the FHIR standard, release 4."),
    }[kind]


class FormatList(QWidget):
    """A line for each format; the first is chosen.

    Parameters
    ----------
    for_spreadsheet
        What else is chosen for a spreadsheet; it is beneath that line while that is chosen.
    """

    def __init__(self, appearance: Appearance, for_spreadsheet: QWidget) -> None:
        super().__init__()
        self.setAccessibleName(tr("Format"))
        self._lines = {
            kind: RadioLine(appearance, format_name(kind), format_words(kind))
            for kind in (Format.SPREADSHEET, Format.CSV, Format.JSON, Format.FHIR)
        }
        first, *others = self._lines.values()
        self._indented = row(for_spreadsheet, 1)
        column(first, self._indented, *others, on=self, spacing=0)
        for line in self._lines.values():
            line.together = tuple(self._lines.values())
        first.toggled.connect(for_spreadsheet.setVisible)
        first.setChecked(True)
        appearance.changed.connect(self._indent)
        self._indent()

    @Slot()
    def _indent(self) -> None:
        """Let what belongs to the first line begin where its name does."""
        self._indented.setContentsMargins(self._lines[Format.SPREADSHEET].text_left(), 0, 0, 8)

    @property
    def value(self) -> Format:
        return next(kind for kind, line in self._lines.items() if line.isChecked())

    def button(self, kind: Format) -> RadioLine:
        return self._lines[kind]
