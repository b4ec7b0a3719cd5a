"""The sentence of a page is large enough for three metres, and fits."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetricsF
from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.style.measures import BODY_PX, DISPLAY
from gui.widgets.fitted_sentence import FittedSentence
from tests.gui.conftest import Place


@pytest.mark.parametrize("size", [(1280, 800), (900, 560)])
@pytest.mark.parametrize(
    "text",
    [
        "Hold it there, gently.",
        "Face the camera, then turn half right. Forearm ahead.",
        "word " * 60,
    ],
)
def test_the_sentence_is_at_least_a_fifteenth_of_the_window_and_fits(
    appearance: Appearance, qtbot: QtBot, placed: Place, size: tuple[int, int], text: str
) -> None:
    sentence = FittedSentence(appearance)
    window = placed(sentence, size)
    sentence.say(text)
    qtbot.wait(20)
    font = sentence.fitted_font()
    assert font.pixelSize() >= window.height() / 15
    flags = int(Qt.TextFlag.TextWordWrap)
    needed = QFontMetricsF(font).boundingRect(sentence.rect(), flags, text)
    assert needed.width() <= sentence.width() + 1
    if len(text) < 100:
        assert needed.height() <= sentence.height() + 1
    assert sentence.accessibleName() == text


def test_a_heading_is_read_from_afar_where_a_line_has_room_for_it(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    sentence = FittedSentence(appearance, lines=1, heading=True)
    window = placed(sentence, (1280, 900))
    sentence.say("This is a good place.")
    qtbot.wait(20)
    assert sentence.fitted_font().pixelSize() == window.height() // 15
    sentence.say("word " * 60)
    qtbot.wait(20)
    assert sentence.fitted_font().pixelSize() == round(DISPLAY * BODY_PX)
