"""Tones of the cues, as samples."""

from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

SAMPLES_PER_S = 44_100
#: Loudness of the loudest sample, of 1. Soft beside speech. [technical]
_LOUDNESS = 0.3


class Tone(StrEnum):
    """What a tone says."""

    NEUTRAL = "neutral"
    MOVE = "move"
    HOLD = "hold"
    RETURN = "return"
    CAPTURED = "captured"
    REFUSED = "refused"
    DONE = "done"


#: Pitches in Hz and how long each sounds, seconds. One for stand, up for go, level for stay, far
#: down for come back, a falling third for captured, a low one for not counted, three rising ones
#: for the end of a movement. [technical]
_NOTES: dict[Tone, tuple[tuple[float, float], ...]] = {
    Tone.NEUTRAL: ((392.0, 0.26),),
    Tone.MOVE: ((392.0, 0.14), (523.3, 0.22)),
    Tone.HOLD: ((523.3, 0.3),),
    Tone.RETURN: ((523.3, 0.14), (349.2, 0.3)),
    Tone.CAPTURED: ((659.3, 0.16), (523.3, 0.34)),
    Tone.REFUSED: ((261.6, 0.3), (261.6, 0.3)),
    Tone.DONE: ((523.3, 0.14), (659.3, 0.14), (784.0, 0.34)),
}


def tone_samples(tone: Tone) -> NDArray[np.int16]:
    """Return a tone, shape (n,), 16 bit, one channel; every note swells and fades."""
    notes = []
    for pitch_hz, length_s in _NOTES[tone]:
        time_s = np.arange(round(length_s * SAMPLES_PER_S)) / SAMPLES_PER_S
        swell = np.minimum(1.0, np.minimum(time_s / 0.02, (length_s - time_s) / 0.08))
        wave = np.sin(2 * np.pi * pitch_hz * time_s)
        wave = wave + 0.25 * np.sin(4 * np.pi * pitch_hz * time_s)
        notes.append(wave / 1.25 * np.clip(swell, 0.0, 1.0) ** 2)
    return np.asarray(np.concatenate(notes) * _LOUDNESS * 32767, dtype=np.int16)
