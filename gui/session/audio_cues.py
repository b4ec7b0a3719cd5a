"""Audio cues: tones and speech, both optional, neither ever waited for.

A computer without a sound device, a voice or the libraries for them is simply silent; the same
words stand on the screen.
"""

import contextlib
import os
from typing import Any

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QLocale, QObject

from gui.session.tones import SAMPLES_PER_S, Tone, tone_samples


class AudioCues(QObject):
    """Speaks and sounds. Devices are looked for by `warm_up`, as that takes a moment."""

    def __init__(self, *, tones: bool, speech: bool, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.tones_wanted = tones
        self.speech_wanted = speech
        self._speaker: Any = None
        self._output: Any = None
        self._buffers: dict[Tone, QBuffer] = {}
        self._last_said = ""
        self._warm = False

    def warm_up(self) -> None:
        """Look for a voice and a sound device, once, before measuring begins."""
        if self._warm:
            return
        self._warm = True
        if os.environ.get("QT_QPA_PLATFORM") == "offscreen":
            return
        with contextlib.suppress(ImportError, RuntimeError):
            self._output = _sound_output(self)
        with contextlib.suppress(ImportError, RuntimeError):
            self._speaker = _speaker(self)

    def follow_language(self) -> None:
        """Speak the window's language from now on, where there is such a voice."""
        if self._speaker is not None:
            _choose_voice(self._speaker)

    @property
    def has_voice(self) -> bool:
        """Whether a voice was found."""
        return self._speaker is not None

    @property
    def has_sound(self) -> bool:
        """Whether a sound device was found."""
        return self._output is not None

    def try_voice(self, text: str) -> None:
        """Speak a sentence, whether speech is wanted while measuring or not."""
        if self._speaker is not None:
            self._speaker.stop()
            self._speaker.say(text)

    def try_tone(self, tone: Tone) -> None:
        """Sound a tone, whether tones are wanted while measuring or not."""
        if self._output is not None:
            self._play(tone)

    def say(self, text: str) -> None:
        """Speak a sentence, breaking off the one before; the same twice in a row once."""
        if text == self._last_said:
            return
        self._last_said = text
        if self.speech_wanted:
            self.try_voice(text)

    def sound(self, tone: Tone) -> None:
        """Sound a tone."""
        if self.tones_wanted and self._output is not None:
            self._play(tone)

    def _play(self, tone: Tone) -> None:
        buffer = self._buffers.get(tone)
        if buffer is None:
            buffer = QBuffer(self)
            buffer.setData(QByteArray(tone_samples(tone).tobytes()))
            self._buffers[tone] = buffer
        self._output.stop()
        buffer.close()
        buffer.open(QIODevice.OpenModeFlag.ReadOnly)
        self._output.start(buffer)

    def forget(self) -> None:
        """Let the next sentence be spoken even if it is the same as the last."""
        self._last_said = ""

    def silence(self) -> None:
        """Break off what sounds."""
        if self._speaker is not None:
            self._speaker.stop()
        if self._output is not None:
            self._output.stop()


def _sound_output(parent: QObject) -> Any:
    """Return an output on the system's sound device, or None without one."""
    from PySide6.QtMultimedia import QAudioFormat, QAudioSink, QMediaDevices

    device = QMediaDevices.defaultAudioOutput()
    if device.isNull():
        return None
    plain = QAudioFormat()
    plain.setSampleRate(SAMPLES_PER_S)
    plain.setChannelCount(1)
    plain.setSampleFormat(QAudioFormat.SampleFormat.Int16)
    return QAudioSink(device, plain, parent) if device.isFormatSupported(plain) else None


def _speaker(parent: QObject) -> Any:
    """Return a speaker with a voice of its own, or None without one."""
    from PySide6.QtTextToSpeech import QTextToSpeech

    engines = [name for name in QTextToSpeech.availableEngines() if name != "mock"]
    if not engines:
        return None
    speaker = QTextToSpeech(parent)
    _choose_voice(speaker)
    return speaker if speaker.availableVoices() else None


def _choose_voice(speaker: Any) -> None:
    """Let a speaker use the window's language where there is such a voice."""
    if QLocale().language() in [locale.language() for locale in speaker.availableLocales()]:
        speaker.setLocale(QLocale())
