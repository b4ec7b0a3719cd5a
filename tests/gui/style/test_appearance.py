"""The look on the application: text sizes reach every widget, built before or afterwards."""

import pytest
from PySide6.QtCore import QEvent, QObject
from PySide6.QtWidgets import QApplication, QPushButton, QVBoxLayout, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import BODY_PX
from gui.style.palette import Scheme
from gui.widgets.text import label

#: Widgets around each other, more than any page has.
DEEP = 12


class Stylings(QObject):
    """Counts how often a widget is told that its style changed."""

    def __init__(self, watched: QWidget) -> None:
        super().__init__()
        self.count = 0
        watched.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        self.count += event.type() is QEvent.Type.StyleChange
        return False


@pytest.fixture
def appearance(qapp: QApplication) -> Appearance:
    chosen = Appearance(Scheme.LIGHT)
    chosen.apply()
    return chosen


def nested(innermost: QWidget) -> QWidget:
    """Return widgets around each other with one in the middle, each asked for its size."""
    inside = innermost
    for _ in range(DEEP):
        around = QWidget()
        QVBoxLayout(around).addWidget(inside)
        around.sizeHint()
        inside = around
    return inside


@pytest.mark.parametrize("percent", [100, 150, 200])
def test_running_text_is_as_large_as_chosen(appearance: Appearance, percent: int) -> None:
    before = label("Words")
    around = nested(before)
    around.show()
    appearance.choose(percent=percent)
    afterwards = label("Words")
    afterwards.show()
    for seen in (before, afterwards, QPushButton("Press", around)):
        seen.ensurePolished()
        assert seen.font().pixelSize() == BODY_PX * percent // 100
        assert seen.palette().windowText().color() == appearance.colour("ink")
    appearance.choose(percent=100)


def test_text_of_another_role_grows_too(appearance: Appearance) -> None:
    title = label("Words", "title")
    title.show()
    before = title.font().pixelSize()
    appearance.choose(percent=200)
    assert title.font().pixelSize() > before
    appearance.choose(percent=100)
    assert title.font().pixelSize() == before


def test_a_change_of_size_styles_a_deep_widget_a_few_times(appearance: Appearance) -> None:
    deep = QPushButton("Press")
    around = nested(deep)
    around.show()
    stylings = Stylings(deep)
    appearance.choose(percent=150)
    assert 0 < stylings.count < DEEP / 2
    appearance.choose(percent=100)


def test_what_is_built_plain_is_styled_at_the_end_once(appearance: Appearance) -> None:
    deep = QPushButton("Press")
    stylings = Stylings(deep)
    with appearance.styled_when_built():
        around = nested(deep)
    around.show()
    assert 0 < stylings.count < DEEP / 2
    assert QApplication.instance().styleSheet()


def test_a_failure_while_building_leaves_the_application_styled(appearance: Appearance) -> None:
    with pytest.raises(ValueError, match="no window"), appearance.styled_when_built():
        raise ValueError("no window")
    assert QApplication.instance().styleSheet()
