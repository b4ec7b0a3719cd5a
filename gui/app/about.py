"""Small dialogs with one button: what the program is, and what all of them share."""

from PySide6.QtWidgets import QDialog, QWidget

from gui.style.measures import GAP_PX
from gui.text.wording import notice, tr
from gui.widgets.buttons import button
from gui.widgets.layouts import Content, column, separator
from gui.widgets.plain_dialog import frame_dialog
from gui.widgets.text import NumberLine, label, terms
from measure.system.versions import software

#: Width of what it says, in widths of a digit: the notice stands in one line. [technical]
_DIGITS = 56
#: Libraries that numbers come from, as their makers write them.
_LIBRARIES = {"mediapipe": "MediaPipe", "opencv": "OpenCV", "numpy": "NumPy", "scipy": "SciPy"}


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
    versions = software()
    version = label(versions["thawline"], "lead")
    name = NumberLine(label("Thawline", "display"), version, spacing=2 * GAP_PX)
    name.set_level(level=True)
    libraries = ", ".join(f"{written}\u00a0{versions[key]}" for key, written in _LIBRARIES.items())
    calculation = tr("Version {number}, with {libraries}")
    lines = {
        tr("Licence"): "Apache-2.0",
        tr("Typeface"): "Atkinson Hyperlegible, SIL Open Font License 1.1",
        tr("Calculation"): calculation.format(number=versions["estimator"], libraries=libraries),
        tr("System"): f"{versions['system']}, Python {versions['python']}",
    }
    return closable_dialog(
        parent,
        tr("About Thawline"),
        name,
        column(label(notice()), label(tr("It is not a medical device.")), spacing=GAP_PX // 2),
        column(separator(), margins=(0, GAP_PX, 0, GAP_PX)),
        terms([(term, label(words)) for term, words in lines.items()]),
    )
