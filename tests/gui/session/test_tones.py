"""Tones: soft, short, each its own."""

import numpy as np
import pytest

from gui.session.tones import SAMPLES_PER_S, Tone, tone_samples


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
