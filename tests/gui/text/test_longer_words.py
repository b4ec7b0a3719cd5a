"""Other languages: words two fifths longer, and right to left, in the smallest window and in the
largest type.
"""

import re
from collections.abc import Iterator

import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtGui import QAction, QImage
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QWidget

from gui.app.application import configure_application
from gui.app.main_window import SMALLEST_PX
from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from gui.text.language import LANGUAGES
from gui.translations.update import files_of, translations
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.wrapping_check_box import WrappingCheckBox
from tests.support.fitting import misfits
from tests.support.gui.screenshots import CHAPTERS, GOAL, states
from tests.support.gui.stage import WindowHarness
from tests.support.gui.tool_states import CLIPS, RECENT
from tests.support.pseudo_language import CLOSE, LONGER, OPEN, PseudoTranslator, pseudo

#: The same in every language: names of the stage and of languages, and what is never shown (a menu
#: of the plotting library, switched off).
NAMES = (
    "Thawline",
    "Integrated Webcam",
    "Desk Camera HD",
    "Export...",
    "bytes",
    GOAL,
    *CLIPS,
    RECENT.name,
    *LANGUAGES.values(),
)
#: Named by Qt in the chosen language, in calendars.
MONTHS = {QLocale("en").standaloneMonthName(month) for month in range(1, 13)}
#: States that do not fit yet. A state that fits in every case has to leave this list.
UNFINISHED = {
    "progress-goals-none",
    "progress-goals",
    "progress-sessions",
    "programme-lacking",
    "known-retest",
}
SOURCES = tuple(translations(files_of("es")[0]))


def test_words_grow_and_placeholders_stay() -> None:
    assert pseudo("{low} to {high}") == f"{OPEN}{{low}} ton {{high}}{CLOSE}"
    assert pseudo("H") == "H"
    for text in SOURCES:
        assert re.findall(r"\{\w+\}", pseudo(text)) == re.findall(r"\{\w+\}", text)


def test_the_made_up_language_is_as_much_longer_as_it_says() -> None:
    long = [text for text in SOURCES if len(text) > 20 and "{" not in text]
    grown = sum(len(pseudo(text)) for text in long) / sum(len(text) for text in long)
    # Spaces and stops do not grow, so that letters grow by a little more than they do together.
    assert 1.25 < grown < 1 + LONGER


@pytest.mark.parametrize("direction", list(Qt.LayoutDirection)[:2], ids=lambda value: value.name)
def test_a_box_to_tick_stands_where_reading_begins(
    qapp: QApplication, direction: Qt.LayoutDirection
) -> None:
    tick = WrappingCheckBox(Appearance(Scheme.LIGHT), "")
    tick.setLayoutDirection(direction)
    tick.resize(300, 40)
    drawn = tick.grab().toImage().convertToFormat(QImage.Format.Format_Grayscale8)
    marked = [x for x in range(300) if any(drawn.pixelColor(x, y).red() < 140 for y in range(40))]
    assert marked
    assert all((x < 60) is (direction is Qt.LayoutDirection.LeftToRight) for x in marked)


@pytest.fixture
def made_up(qapp: QApplication) -> Iterator[None]:
    """Let the made-up language be in force for windows made from now on."""
    translator = PseudoTranslator()
    qapp.installTranslator(translator)
    yield
    qapp.removeTranslator(translator)
    qapp.setLayoutDirection(Qt.LayoutDirection.LeftToRight)


def texts(window: QWidget) -> Iterator[str]:
    """Yield what a window says, menus and all; not what is in a language of its own."""
    for kind in (QLabel, QAbstractButton):
        shown = window.findChildren(kind)
        own = Qt.WidgetAttribute.WA_SetLocale
        yield from (widget.text() for widget in shown if not widget.testAttribute(own))
    yield from (action.text() for action in window.findChildren(QAction))
    yield from (widget.text for widget in window.findChildren(FittedSentence))


def is_shortened_clip(text: str) -> bool:
    """Tell whether a text is the name of a clip, cut in its middle to fit."""
    begin, cut, end = text.partition("…")
    return bool(cut) and any(clip.startswith(begin) and clip.endswith(end) for clip in CLIPS)


def is_forgotten(text: str) -> bool:
    """Tell whether a text holds words that no translator was asked for."""
    rest = re.sub(f"{OPEN}.*{CLOSE}", "", text, flags=re.DOTALL).replace("&", "")
    if rest.startswith("/") or rest in MONTHS:
        return False
    for name in NAMES:
        rest = rest.replace(name, "")
    if is_shortened_clip(rest):
        return False
    return bool(re.search(r"[A-Za-z]{3,}", rest))


@pytest.mark.parametrize("chapter", CHAPTERS)
@pytest.mark.parametrize(
    ("direction", "size", "percent"),
    [
        (Qt.LayoutDirection.LeftToRight, SMALLEST_PX, 100),
        (Qt.LayoutDirection.RightToLeft, SMALLEST_PX, 100),
        (Qt.LayoutDirection.RightToLeft, (1280, 800), 200),
    ],
)
def test_every_state_fits(
    qapp: QApplication,
    made_up: None,
    direction: Qt.LayoutDirection,
    size: tuple[int, int],
    percent: int,
    chapter: str,
) -> None:
    configure_application(qapp)
    qapp.setLayoutDirection(direction)
    stage = WindowHarness(percent=percent, size=size)
    assert stage.window.size().toTuple() == size
    cut, forgotten, seen = [], set(), 0
    for name in states(stage, chapter):
        stage.settle()
        seen += 1
        if name not in UNFINISHED:
            cut += [f"{name}: {what}" for what in misfits(stage.window)]
        forgotten |= {text for text in texts(stage.window) if is_forgotten(text)}
    stage.close()
    assert seen > 16
    assert not cut, "\n".join(cut)
    assert not forgotten
