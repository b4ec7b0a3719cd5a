"""A drawn person beside words leaves these the page where text is large."""

from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.widgets.figures.pictured_card import PicturedCard
from gui.widgets.figures.standing_figure import StandingFigure
from gui.widgets.layouts import column
from gui.widgets.text import label


def test_the_person_is_lower_the_larger_the_text_is(qtbot: QtBot, appearance: Appearance) -> None:
    figure, words = StandingFigure(appearance), label("Words beside it")
    card = PicturedCard(appearance, figure, column(words))
    qtbot.addWidget(card)
    card.resize(900, 460)
    card.show()
    heights = []
    for percent in (100, 150, 200):
        appearance.choose(percent=percent)
        heights.append(figure.height())
        assert words.mapTo(card, words.rect().topLeft()).x() > figure.width()
    assert heights == sorted(heights, reverse=True)
    assert len(set(heights)) == 3
