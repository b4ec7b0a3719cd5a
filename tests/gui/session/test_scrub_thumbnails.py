"""Small pictures of a clip, by which it is stepped through."""

import numpy as np

from gui.session.clip_reader import open_scrub_thumbnails
from tests.support.real_model import CLIPS


def test_a_picture_outlives_the_image_that_it_was_unpacked_from() -> None:
    pictures = open_scrub_thumbnails(CLIPS / "flexion-left-full.mp4")
    first = pictures.at(0.0)
    owner = first if first.base is None else first.base
    assert isinstance(owner, np.ndarray)
    assert owner.flags.owndata
    assert 60 < first.mean() < 200
