"""The list of keys: by page, what must be found at once first, as the buttons say it."""

import pytest
from PySide6.QtWidgets import QApplication, QGridLayout, QLabel, QWidget

from gui.app.application import configure_application
from gui.app.keys import keys_dialog
from gui.style.palette import Scheme
from gui.widgets.buttons import ShortcutButton
from tests.support.gui.screenshots import PERCENTS
from tests.support.gui.stage import WindowHarness


def listed(parent: QWidget) -> dict[str, list[tuple[str, str]]]:
    """Return the keys and their meanings by heading, as they stand in the dialog."""
    found: dict[str, list[tuple[str, str]]] = {}
    for grid in keys_dialog(parent).findChildren(QGridLayout):
        heading = ""
        for line in range(grid.rowCount()):
            key, words = (grid.itemAtPosition(line, at) for at in (0, 1))
            if key is None or words is None:
                continue
            first, second = key.widget(), words.widget()
            assert isinstance(first, QLabel)
            assert isinstance(second, QLabel)
            if first is second:
                heading = first.text()
                found[heading] = []
            else:
                assert first.property("role") == "key"
                found[heading].append((first.text(), second.text()))
    return found


def test_stopping_for_pain_comes_first(stage: WindowHarness) -> None:
    keys = listed(stage.window)
    assert list(keys) == ["Measuring", "Clips", "Exercises", "In a clinic", "Every page"]
    for page in ("Measuring", "Exercises"):
        assert keys[page][0] == ("S", "Stop: it hurts")


@pytest.mark.parametrize("percent", PERCENTS)
def test_groups_stand_in_two_columns_in_a_window_of_usual_width(
    qapp: QApplication, percent: int
) -> None:
    configure_application(qapp)
    stage = WindowHarness(Scheme.LIGHT, percent, (1366, 700))
    dialog = keys_dialog(stage.window)
    dialog.open()
    stage.settle()
    left, right = dialog.findChildren(QGridLayout)
    assert left.geometry().right() < right.geometry().left()
    assert left.geometry().top() == right.geometry().top()
    dialog.close()
    stage.close()


def test_a_key_stands_in_one_line_of_its_page(stage: WindowHarness) -> None:
    for page, lines in listed(stage.window).items():
        keys = [key for key, _ in lines]
        assert len(set(keys)) == len(keys), page
        assert not any("," in key for key in keys), page


def test_keys_do_what_the_buttons_say(stage: WindowHarness) -> None:
    keys = listed(stage.window)
    measure, exercises = stage.window.measure, stage.window.exercises
    pages = {
        "Measuring": (measure.live, measure.pain),
        "Exercises": (exercises.rounds.round,),
        "Clips": (stage.window.clips.review,),
    }
    for page, widgets in pages.items():
        said = dict(keys[page])
        for widget in widgets:
            for one in widget.findChildren(ShortcutButton):
                key = one.accessibleDescription()
                if key in ("Escape", "S"):
                    assert said[key] == one.accessibleName(), page
