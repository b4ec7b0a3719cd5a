"""Each row of the overview of camera and body has a picture of its own, in both schemes."""

import pytest
from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from gui.widgets.figures.known_sign import Known, KnownSign


@pytest.mark.parametrize("scheme", [Scheme.LIGHT, Scheme.DARK])
def test_no_two_pictures_are_alike(qtbot: QtBot, scheme: Scheme) -> None:
    appearance = Appearance(scheme)
    pictures = []
    for topic in Known:
        sign = KnownSign(appearance, topic)
        qtbot.addWidget(sign)
        picture = sign.grab().toImage()
        assert all(picture != other for other in pictures)
        pictures.append(picture)
