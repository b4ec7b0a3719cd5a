"""Sizes that are read from three metres, bands that show uncertainty, boxes that are ticked."""

from collections.abc import Callable

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from gui.pages.measuring.hold_ring import HoldRing
from gui.session.tones import SAMPLES_PER_S, Tone, tone_samples
from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from gui.widgets.big_number import BigNumber
from gui.widgets.buttons import ButtonRow, MenuButton, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.measurement_band import BandContent, MeasurementBand
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.movements import Movement, Unit


@pytest.fixture
def appearance(qapp: QApplication) -> Appearance:
    made = Appearance(Scheme.LIGHT)
    made.apply()
    return made


Place = Callable[[QWidget, tuple[int, int]], QWidget]


@pytest.fixture
def placed(qtbot: QtBot) -> Place:
    """Put a widget into a window of a size and show it; the windows live as long as the test."""
    windows = []

    def place(widget: QWidget, size: tuple[int, int]) -> QWidget:
        window = QWidget()
        layout = QVBoxLayout(window)
        layout.addWidget(widget)
        layout.addStretch(1)
        window.resize(*size)
        qtbot.addWidget(window)
        window.show()
        qtbot.waitExposed(window)
        windows.append(window)
        return window

    return place


@pytest.mark.parametrize("size", [(1280, 800), (900, 560), (1920, 1080)])
def test_digits_are_at_least_a_sixth_of_the_window(
    appearance: Appearance, qtbot: QtBot, placed: Place, size: tuple[int, int]
) -> None:
    number = BigNumber(appearance)
    window = placed(number, size)
    number.show_value(118.4, Unit.DEGREES)
    assert number.text == "118\u00b0"
    assert number.digit_height() >= window.height() / 6 - 0.01
    font = appearance.digit_font(number.digit_height())
    assert QFontMetricsF(font).tightBoundingRect("0").height() >= window.height() / 6 - 2
    assert QFontMetricsF(font).horizontalAdvance("180") <= number.width()


def test_no_number_is_a_dash_and_never_a_zero(appearance: Appearance) -> None:
    number = BigNumber(appearance)
    number.show_value(None, Unit.DEGREES)
    assert number.text == "\u2013"
    assert number.accessibleName() == "no number"


@pytest.mark.parametrize("size", [(1280, 800), (900, 560)])
@pytest.mark.parametrize(
    "text",
    [
        "Hold it there, gently.",
        "Face the camera, then turn half right. Forearm straight ahead.",
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


def coloured(appearance: Appearance, band: MeasurementBand, name: str) -> int:
    """Return how many pixels of the band have a colour of the palette."""
    image = band.grab().toImage()
    wanted = appearance.colour(name)
    return sum(
        image.pixelColor(x, y) == wanted
        for x in range(image.width())
        for y in range(image.height())
    )


def test_a_refusal_is_an_empty_frame_with_its_reason(appearance: Appearance) -> None:
    band = MeasurementBand(appearance)
    band.resize(300, 90)
    band.show_reading(Movement.FLEXION, BandContent(words="No still hold was seen."), "Trial 2")
    assert band.accessibleName() == "Trial 2: No still hold was seen."
    assert coloured(appearance, band, "arm") == 0
    assert coloured(appearance, band, "edge") > 100
    band.show_reading(Movement.FLEXION, BandContent(words="118", value=118, low=110, high=126))
    assert coloured(appearance, band, "arm") > 10


def test_long_words_make_the_band_higher(appearance: Appearance) -> None:
    band = MeasurementBand(appearance)
    band.show_reading(Movement.FLEXION, BandContent(words="short"))
    low = band.heightForWidth(200)
    band.show_reading(Movement.FLEXION, BandContent(words="a much longer reason " * 6))
    assert band.heightForWidth(200) > low > band.heightForWidth(2000) - band.height()


def test_the_ring_keeps_within_its_bounds(appearance: Appearance) -> None:
    ring = HoldRing(appearance)
    ring.show_hold(1.7, "2/3")
    assert ring.share == 1.0
    ring.show_hold(-1.0, "2/3")
    assert ring.share == 0.0


def test_one_of_several_is_chosen(appearance: Appearance, qtbot: QtBot, placed: Place) -> None:
    choices: ChoiceRow[int] = ChoiceRow([1, 2, 3], str, may_be_empty=True)
    window = placed(choices.row, (400, 100))
    assert choices.value is None
    choices.button(2).click()
    assert choices.value == 2
    choices.button(3).click()
    assert choices.value == 3
    choices.button(3).click()
    assert choices.value is None
    choices.button(1).setFocus()
    qtbot.keyClick(choices.button(1), Qt.Key.Key_Right)
    assert window.focusWidget() is choices.button(2)


def test_a_choice_that_must_be_made_cannot_be_taken_back(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    choices = ChoiceRow(["a", "b"], str)
    placed(choices.row, (400, 100))
    choices.choose("a")
    choices.button("a").click()
    assert choices.value == "a"


@pytest.mark.parametrize(("wide", "lines"), [(1100, 1), (420, 3), (230, 5)])
def test_choices_break_into_lines_where_they_do_not_fit(
    appearance: Appearance, qtbot: QtBot, placed: Place, wide: int, lines: int
) -> None:
    choices = ChoiceRow(["x" * 14] * 5, str)
    placed(choices.row, (wide, 500))
    qtbot.wait(20)
    tops = {one.y() for one in choices.row.buttons}
    assert len(tops) == lines
    assert all(one.x() + one.width() <= choices.row.width() for one in choices.row.buttons)


@pytest.mark.parametrize(("wide", "lines"), [(1000, 1), (560, 2), (260, 3)])
def test_a_row_of_buttons_breaks_into_lines_and_fills_them(
    appearance: Appearance, qtbot: QtBot, placed: Place, wide: int, lines: int
) -> None:
    buttons = [button("x" * 16) for _ in range(3)]
    row = ButtonRow(buttons)
    placed(row, (wide, 400))
    qtbot.wait(20)
    assert len({one.y() for one in buttons}) == lines
    assert buttons[-1].geometry().right() == row.rect().right()
    buttons[1].hide()
    qtbot.wait(20)
    assert len({buttons[0].y(), buttons[2].y()}) == max(1, lines - 1)
    assert buttons[0].x() == row.rect().left()
    assert buttons[2].geometry().right() == row.rect().right()


def test_a_button_tells_its_key_only_where_there_is_room(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    one = button("Discard the last", key="Backspace")
    placed(one, (600, 100))
    assert "Backspace" in one.text()
    assert one.accessibleName() == "Discard the last"
    assert one.accessibleDescription() == "Backspace"
    one.setFixedWidth(190)
    qtbot.wait(10)
    assert one.text() == "Discard the last"


def test_a_box_is_ticked_by_mouse_and_space(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    tick = WrappingCheckBox(appearance, "A sore day")
    placed(tick, (400, 100))
    qtbot.mouseClick(tick, Qt.MouseButton.LeftButton)
    assert tick.isChecked()
    qtbot.keyClick(tick, Qt.Key.Key_Space)
    assert not tick.isChecked()
    assert tick.heightForWidth(120) > tick.heightForWidth(400)


def test_a_list_button_shows_and_tells_what_was_picked(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    pick = MenuButton("movement")
    pick.offer(list(Movement), str)
    assert pick.value is Movement.FLEXION
    with qtbot.waitSignal(pick.picked) as told:
        pick.menu().actions()[2].trigger()
    assert told.args == [Movement.ABDUCTION]
    assert pick.value is Movement.ABDUCTION
    assert pick.accessibleName() == "movement: abduction"
    pick.offer([], str)
    assert pick.value is None


@pytest.mark.parametrize("tone", list(Tone))
def test_tones_are_soft_short_and_end_in_silence(tone: Tone) -> None:
    sound = tone_samples(tone)
    assert sound.dtype == np.int16
    assert 0.2 < len(sound) / SAMPLES_PER_S < 1.0
    assert 3000 < np.abs(sound).max() < 12000
    assert abs(int(sound[0])) < 100
    assert np.abs(sound[-40:]).max() < 200


def test_tones_differ() -> None:
    assert len({tone_samples(tone).tobytes() for tone in Tone}) == len(Tone)
