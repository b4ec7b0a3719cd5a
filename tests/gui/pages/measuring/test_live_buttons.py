"""The foot of the live page: every button keeps its place, the caution stays in one line."""

import pytest
from PySide6.QtCore import QRect

from gui.pages.measuring.live import LivePage
from gui.text.wording import notice
from measure.camera.faults import SourceFault
from measure.live.events import LiveEventKind
from tests.support.gui.measuring_steps import begin_clinic, trials
from tests.support.gui.screenshots import PERCENTS, SIZES, resize
from tests.support.gui.stage import WindowHarness


def places(live: LivePage) -> list[QRect]:
    """Return where the buttons and the caution stand, from the left and from above."""
    foot = (live.stop, live.here, live.pause, live.hurts, live.buttons, live.caution)
    return [member.geometry() for member in foot]


@pytest.mark.parametrize("size", SIZES)
def test_buttons_stay_in_place_in_every_state(stage: WindowHarness, size: tuple[int, int]) -> None:
    begin_clinic(stage)
    resize(stage, size)
    live = stage.window.measure.live
    before = places(live)
    stop = live.hurts.geometry()
    assert stop.right() == live.buttons.rect().right()
    if size[0] >= 1366:  # elsewhere all words need the room
        assert all(stop.width() > place.width() for place in before[:3])
    assert len({place.top() for place in before[:4]}) == 1
    assert live.hurts.property("role") == "main"
    assert not live.discard.isVisible()
    trials(stage, 120.0)
    assert live.discard.isVisible()
    assert places(live) == before
    stage.engine.pause()
    stage.settle()
    # What goes on stands out then, and nothing else does.
    assert (live.pause.property("role"), live.hurts.property("role")) == ("main", "")
    assert not live.here.isEnabled()
    assert places(live) == before
    stage.engine.resume()
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_UNPLUGGED)
    stage.settle()
    assert live.retry.geometry() == stop
    assert not live.hurts.isVisible()
    assert places(live) == before


@pytest.mark.parametrize("percent", PERCENTS)
def test_the_caution_and_deleting_a_trial_share_one_line(
    stage: WindowHarness, percent: int
) -> None:
    stage.services.appearance.choose(percent=percent)
    begin_clinic(stage)
    resize(stage, SIZES[0])
    trials(stage, 120.0)
    live = stage.window.measure.live
    words, link = live.caution.words, live.discard
    assert link.isVisible()
    assert words.width() >= words.fontMetrics().horizontalAdvance(notice())
    assert link.width() >= link.fontMetrics().horizontalAdvance(link.text())
    assert not words.geometry().intersects(link.geometry())
    assert live.caution.height() < 2 * words.fontMetrics().lineSpacing()
    assert live.buttons.height() > live.caution.height()
