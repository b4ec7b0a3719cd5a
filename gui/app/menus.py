"""The menus: every action of the window with its text and its keys."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import Slot
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu, QMenuBar

from gui.app.about import about_dialog
from gui.app.help_pages import HelpPage, open_page, page_name
from gui.app.keys import keys_dialog
from gui.pages.settings.data_page import DataPage, data_page_title
from gui.session.preferences import Preferences
from gui.session.undo import UndoList
from gui.text.wording import tr

if TYPE_CHECKING:
    from gui.app.main_window import MainWindow


def fill_menus(bar: QMenu | QMenuBar, window: "MainWindow", preferences: Preferences) -> None:
    """Add all menus of a window to its menu, or to its menu bar."""
    _fill_file_menu(bar.addMenu(tr("&File")), window)
    edit = bar.addMenu(tr("&Edit"))
    edit.addAction(_UndoAction(window.services.undo, edit))
    edit.addSeparator()
    settings = _add(edit, tr("&Settings"), window.show_settings, "Ctrl+,")
    settings.setMenuRole(QAction.MenuRole.PreferencesRole)
    _fill_data_menu(bar.addMenu(tr("&People and data")), window)
    _fill_page_menu(bar.addMenu(tr("&Go to")), window)
    _fill_view_menu(bar.addMenu(tr("&View")), preferences)
    _fill_help_menu(bar.addMenu(tr("&Help")), window)


def _fill_file_menu(menu: QMenu, window: "MainWindow") -> None:
    _add(menu, tr("Open a &clip..."), window.open_clip, "Ctrl+O")
    _add(menu, tr("Open a &folder of clips..."), window.open_folder, "Ctrl+Shift+O")
    menu.addSeparator()
    _add(menu, tr("&Report for a clinic visit"), window.show_report, "Ctrl+R")
    menu.addSeparator()
    leave = _add(menu, tr("&Quit"), window.close, "Ctrl+Q")
    leave.setMenuRole(QAction.MenuRole.QuitRole)


class _UndoAction(QAction):
    """Puts back what was deleted or corrected last, and says what that is."""

    def __init__(self, undo: UndoList, parent: QMenu) -> None:
        super().__init__(parent)
        self._undo = undo
        self.setShortcut(QKeySequence("Ctrl+Z"))
        self.triggered.connect(undo.undo)
        undo.changed.connect(self.refresh)
        self.refresh()

    @Slot()
    def refresh(self) -> None:
        entry = self._undo.next
        self.setEnabled(entry is not None)
        self.setText(tr("&Undo: {words}").format(words=entry.words) if entry else tr("&Undo"))


def _fill_page_menu(menu: QMenu, window: "MainWindow") -> None:
    for place, word in enumerate(window.words):
        _add(menu, word.accessibleName(), partial(window.go, place), f"Ctrl+{place + 1}")
    menu.addSeparator()
    _add(menu, tr("Edit the &programme"), window.show_home_programme, "Ctrl+H")
    _add(menu, tr("&Events: injection, flare, camera"), window.show_events, "Ctrl+E")


def _fill_data_menu(menu: QMenu, window: "MainWindow") -> None:
    for page in DataPage:
        _add(menu, data_page_title(page), partial(window.show_data, page))


def _fill_view_menu(menu: QMenu, preferences: Preferences) -> None:
    _add(menu, tr("Text &larger"), partial(preferences.change_text, 1), "Ctrl++")
    _add(menu, tr("Text s&maller"), partial(preferences.change_text, -1), "Ctrl+-")
    _add(menu, tr("&Normal text size"), partial(preferences.change_text, 0), "Ctrl+0")


def _fill_help_menu(menu: QMenu, window: "MainWindow") -> None:
    _add(menu, tr("&Help"), window.show_help, "F1")
    _add(menu, tr("&Keys"), lambda: keys_dialog(window).open(), "F2")
    menu.addSeparator()
    for page in HelpPage:
        _add(menu, page_name(page), partial(open_page, page, window))
    menu.addSeparator()
    about = _add(menu, tr("&About Thawline"), lambda: about_dialog(window).open())
    about.setMenuRole(QAction.MenuRole.AboutRole)


def _add(menu: QMenu, text: str, slot: object, keys: str = "") -> QAction:
    """Add an action."""
    action = QAction(text, menu)
    if keys:
        action.setShortcut(QKeySequence(keys))
    action.triggered.connect(slot)
    menu.addAction(action)
    return action
