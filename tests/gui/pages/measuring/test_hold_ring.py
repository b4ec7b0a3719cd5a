"""The ring of a hold keeps within its bounds."""

from gui.pages.measuring.hold_ring import HoldRing
from gui.style.appearance import Appearance


def test_the_ring_keeps_within_its_bounds(appearance: Appearance) -> None:
    ring = HoldRing(appearance)
    ring.show_hold(1.7, "2/3")
    assert ring.share == 1.0
    ring.show_hold(-1.0, "2/3")
    assert ring.share == 0.0
