"""Small dialogs of the help menu: the keys, versions."""

from PySide6.QtWidgets import QDialog, QWidget

from gui.text.wording import notice, tr
from gui.widgets.buttons import button
from gui.widgets.plain_dialog import frame_dialog
from gui.widgets.text import label, terms
from measure.system.versions import software


def _dialog(parent: QWidget, title: str, *lines: QWidget) -> QDialog:
    """Return a dialog of lines below a title."""
    made = QDialog(parent)
    made.setWindowTitle(title)
    close = button(tr("Close"), "main")
    close.clicked.connect(made.accept)
    frame_dialog(made, label(title, "title"), *lines, buttons=[close])
    close.setFocus()
    return made


def keys_dialog(parent: QWidget) -> QDialog:
    keys = (
        (tr("Space"), tr("pause, continue")),
        (tr("Backspace"), tr("delete the last trial")),
        (tr("Escape"), tr("finish and save")),
        (tr("Enter"), tr("continue")),
        (tr("0 to 9, X for ten"), tr("pain")),
        (tr("H"), tr("while measuring: measure this position")),
        (tr("B, C"), tr("in a clinic: full baseline, one movement")),
        (tr("O, M"), tr("the other side, another movement")),
        (tr("A"), tr("repeat the last movement")),
        (tr("R"), tr("try again after a problem")),
        (tr("N, S"), tr("during exercises: next exercise, stop because it hurts")),
        (tr("Space, left and right"), tr("in a clip: play, one frame back or on")),
        (tr("+, -, 0"), tr("in a clip: enlarge the picture, make it smaller, show all of it")),
        (tr("Z, X, C"), tr("in a clip: the same for the curve; the wheel and dragging work too")),
        (tr("Ctrl 1 to 5"), tr("Measure, Exercises, Progress, Clips, Set-up")),
        (tr("Ctrl H, Ctrl E"), tr("exercises, events")),
        (tr("Ctrl R"), tr("report for a clinic visit")),
        (tr("F10"), tr("the menu")),
        (tr("Ctrl + and Ctrl -"), tr("text larger, smaller")),
    )
    raising = label(tr("You can also pause by raising your other hand."), "quiet")
    table = terms([(key, label(what)) for key, what in keys], "strong")
    return _dialog(parent, tr("Keys"), table, raising)


def about_dialog(parent: QWidget) -> QDialog:
    licences = tr(
        "Licence: Apache-2.0. Typeface: Atkinson Hyperlegible, SIL Open Font License 1.1."
    )
    return _dialog(
        parent,
        "Thawline",
        label(notice(), "lead"),
        label(tr("It is not a medical device."), "lead"),
        terms([(name, label(number)) for name, number in software().items()]),
        label(licences, "quiet"),
    )
