"""Dialogs of the program, opened one after the other as a person opens them."""

from collections.abc import Collection, Iterator
from pathlib import Path

from PySide6.QtWidgets import QDialog

from gui.app.about import about_dialog
from gui.app.crash_report import CrashDialog
from gui.app.help_pages import HelpDialog, HelpPage
from gui.app.keys import keys_dialog
from gui.app.window_pages import MainPage
from gui.pages.settings.data_page import DataPage
from measure.storage.backup import Contents
from tests.support.gui.demo_history import demo_history
from tests.support.gui.stage import TODAY, WindowHarness

#: What a report of a crash may look like.
_TRACE = """thawline 1.0
python 3.12

Traceback (most recent call last):
  File "~/thawline/measure/angles.py", line 41, in angle_of
    return math.acos(adjacent / hypotenuse)
ZeroDivisionError: float division by zero"""


def dialogs(stage: WindowHarness) -> Iterator[tuple[str, QDialog]]:
    """Open each dialog of a window with a person in it, and close it after; yield its name too."""
    window = stage.window
    person = window.measure.people.person
    assert person is not None
    stage.store.merge(demo_history(person, TODAY, weeks=2))
    for name, made in (
        ("about", about_dialog(window)),
        ("keys", keys_dialog(window)),
        ("crash", CrashDialog(_TRACE, window)),
        ("help", HelpDialog(HelpPage.WINDOW.path, window)),
    ):
        made.open()
        yield from _opened(stage, name)
    window.show_data(DataPage.PEOPLE)
    stage.settle()
    window.settings.people.buttons["delete", person.id].click()
    yield from _opened(stage, "delete")
    window.settings.people.buttons["edit", person.id].click()
    yield from _opened(stage, "person")
    contents = Contents(people=2, sessions=64, measurements=310)
    window.settings.backups.ask_to_restore(Path("copy.sqlite"), contents)
    yield from _opened(stage, "restore")
    window.go(MainPage.PROGRESS)
    window.progress.show_details()
    stage.settle()
    window.progress.details.drop.click()
    yield from _opened(stage, "session")


def save_dialogs(stage: WindowHarness, folders: Collection[Path]) -> int:
    """Write a picture of each dialog into each of these folders; return how many."""
    taken = 0
    for name, shown in dialogs(stage):
        for folder in folders:
            shown.grab().save(str(folder / f"dialog-{name}.png"))
            taken += 1
    return taken


def _opened(stage: WindowHarness, name: str) -> Iterator[tuple[str, QDialog]]:
    stage.settle()
    (shown,) = [made for made in stage.window.findChildren(QDialog) if made.isVisible()]
    yield name, shown
    shown.reject()
    shown.deleteLater()
    stage.settle()
