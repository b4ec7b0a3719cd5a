"""The help's first page: nothing reads as an order to everyone, and every page is reached."""

from PySide6.QtCore import QPoint
from PySide6.QtWidgets import QFrame, QLabel

from gui.app.help_pages import HelpPage
from gui.protocol.red_flags import ScreeningPage
from gui.text.safety_wording import screening_text
from gui.widgets.text import SignedLine
from tests.support.gui.stage import WindowHarness


def test_what_to_do_stands_before_each_list_of_signs(stage: WindowHarness) -> None:
    stage.window.show_help()
    stage.settle()
    page = stage.window.help
    (alarming,) = [one for one in page.findChildren(QFrame) if one.property("role") == "alarm-card"]
    first = alarming.findChildren(QLabel)[0].text()
    signs = [line.text() for line in alarming.findChildren(SignedLine)]
    assert first == "If any of these apply, do not measure. Get help now:"
    wanted = screening_text(ScreeningPage.EMERGENCY).items
    assert [sign.removeprefix("\u2022  ") for sign in signs] == list(wanted)


def test_every_help_page_is_reached(stage: WindowHarness) -> None:
    stage.window.show_help()
    assert set(stage.window.help.topics) == set(HelpPage)


def test_the_words_of_all_topics_begin_at_one_line(stage: WindowHarness) -> None:
    stage.window.show_help()
    stage.settle()
    topics = stage.window.help.topics.values()
    first = [topic for topic in topics if topic.x() == 0]
    assert len(first) > 1
    assert len({topic.name.mapTo(stage.window, QPoint(0, 0)).x() for topic in first}) == 1
