"""List of the formats of an export, of which one is chosen."""

from PySide6.QtWidgets import QWidget

from gui.pages.settings.radio_line import RadioLine
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.layouts import column
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
        Format.SPREADSHEET: tr("One row per trial, for any spreadsheet program."),
        Format.CSV: tr("One row per trial, with commas and decimal points (CSV)."),
        Format.JSON: tr("The only format that Thawline can import, here or elsewhere (JSON)."),
        Format.FHIR: tr("The readings as observations of the FHIR standard, release 4."),
    }[kind]


class FormatList(QWidget):
    """A line for each format; the first is chosen."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__()
        self.setAccessibleName(tr("Format"))
        self._lines = {
            kind: RadioLine(appearance, format_name(kind), format_words(kind))
            for kind in (Format.SPREADSHEET, Format.CSV, Format.JSON, Format.FHIR)
        }
        column(*self._lines.values(), on=self, spacing=0)
        for line in self._lines.values():
            line.together = tuple(self._lines.values())
        self._lines[Format.SPREADSHEET].setChecked(True)

    @property
    def value(self) -> Format:
        return next(kind for kind, line in self._lines.items() if line.isChecked())

    def button(self, kind: Format) -> RadioLine:
        return self._lines[kind]
