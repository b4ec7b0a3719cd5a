"""Small dialogs with one button: what the program is, and what all of them share."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QGridLayout, QLabel, QSizePolicy, QWidget

from gui.style.measures import GAP_PX
from gui.text.wording import notice, tr
from gui.widgets.buttons import button
from gui.widgets.layouts import Content, column, widget_with
from gui.widgets.plain_dialog import frame_dialog
from gui.widgets.text import NumberLine, label
from measure.system.versions import software

#: Width of what it says, in widths of a digit: the notice stands in one line. [technical]
_DIGITS = 56
#: Pairs of a name and a version in a line. [technical]
_PAIRS = 2


def closable_dialog(
    parent: QWidget, name: str, *contents: Content, digits: int = _DIGITS
) -> QDialog:
    """Return a dialog that says something and can be closed; parameters as of its frame."""
    made = QDialog(parent)
    made.setWindowTitle(name)
    close = button(tr("Close"), "main")
    close.clicked.connect(made.accept)
    frame_dialog(made, *contents, buttons=[close], digits=digits)
    close.setFocus()
    return made


def about_dialog(parent: QWidget) -> QDialog:
    versions = dict(software())
    version = label(versions.pop("thawline"), "lead")
    name = NumberLine(label("Thawline", "display"), version, spacing=2 * GAP_PX)
    name.set_level(level=True)
    licences = tr(
        "Licence: Apache-2.0.\nTypeface: Atkinson Hyperlegible, SIL Open Font License 1.1."
    )
    return closable_dialog(
        parent,
        tr("About Thawline"),
        name,
        column(label(notice()), label(tr("It is not a medical device.")), spacing=GAP_PX // 2),
        column(label(tr("What it calculates with"), "strong"), _versions(versions), spacing=GAP_PX),
        label(licences, "quiet"),
    )


def _versions(versions: dict[str, str]) -> QWidget:
    """Return names and versions in two aligned columns, read one below the other."""
    written = {
        "mediapipe": "MediaPipe",
        "opencv": "OpenCV",
        "numpy": "NumPy",
        "scipy": "SciPy",
        "estimator": tr("Calculation"),
        "python": "Python",
        "system": tr("System"),
    }
    grid = QGridLayout()
    grid.setContentsMargins(0, 0, 0, 0)
    grid.setHorizontalSpacing(3 * GAP_PX)
    grid.setVerticalSpacing(GAP_PX // 2)
    lines = -(-len(versions) // _PAIRS)
    for place, (name, number) in enumerate(versions.items()):
        at, line = divmod(place, lines)
        grid.addWidget(_one_line(written.get(name, name), "quiet"), line, 2 * at)
        grid.addWidget(_one_line(number), line, 2 * at + 1)
    for at in range(_PAIRS):
        grid.setColumnStretch(2 * at + 1, 1)
    return widget_with(grid)


def _one_line(words: str, role: str = "") -> QLabel:
    made = label(words, role)
    made.setWordWrap(False)
    made.setAlignment(Qt.AlignmentFlag.AlignTop)
    made.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
    return made
