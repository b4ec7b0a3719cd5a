"""Whatever matters during a trial is read from three metres, at every text size and window size."""

from math import ceil

import pytest
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QApplication, QWidget

from gui.app.application import configure_application
from gui.pages.measuring.live import LivePage
from gui.widgets.fitted_sentence import FittedSentence
from tests.support.gui.screenshots import PERCENTS, SIZES, language_in_force, resize, states
from tests.support.gui.stage import WindowHarness


def cut(widget: QWidget) -> bool:
    """Return whether a part of a widget is scrolled away or covered by the window's edge."""
    return widget.visibleRegion().boundingRect() != widget.rect()


def too_small(page: LivePage, height: int) -> list[str]:
    """Return what is lower than a fifteenth of the window, or not wholly seen."""
    wrong = []
    sentences: list[FittedSentence] = [page.sentence, page.kind, page.reason, page.hint]
    for shown in sentences:
        if not (shown.isVisible() and shown.text):
            continue
        if shown.fitted_font().pixelSize() < height / 15:
            wrong.append(f"{shown.text!r} is {shown.fitted_font().pixelSize()} high")
        if cut(shown):
            wrong.append(f"{shown.text!r} is cut")
    if page.trials.isVisible() and (page.trials.type_px() < height / 15 or cut(page.trials)):
        wrong.append("trials are low or cut")
    if page.number.isVisible():
        font = page.number.appearance.digit_font(page.number.digit_height())
        digits = QFontMetricsF(font).tightBoundingRect("0").height()
        if digits < height / 6 - 2 or cut(page.number):
            wrong.append(f"number is {digits:.0f} high or cut")
    return wrong


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("percent", PERCENTS)
def test_what_matters_is_a_fifteenth_of_the_window(
    qapp: QApplication, language: str, percent: int
) -> None:
    configure_application(qapp)
    wrong: list[str] = []
    seen = 0
    with language_in_force(qapp, language):
        stage = WindowHarness(percent=percent, size=SIZES[0])
        page = stage.window.measure.live
        for name in states(stage, "measuring"):
            stage.settle()
            if not page.isVisible():
                continue
            seen += 1
            for size in reversed(SIZES):
                resize(stage, size)
                wrong += [f"{name} at {size}: {what}" for what in too_small(page, size[1])]
        stage.close()
    assert seen > 12
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize("size", SIZES)
def test_larger_text_never_makes_the_number_smaller(
    qapp: QApplication, size: tuple[int, int]
) -> None:
    configure_application(qapp)
    heights = []
    for percent in PERCENTS:
        stage = WindowHarness(percent=percent, size=size)
        heights.append(ceil(stage.window.measure.live.number.digit_height()))
        stage.close()
    assert heights == sorted(heights)
