"""Spoken guidance: the tones and sentences that lead through a movement without a screen."""

from gui.protocol.plan import SessionStep
from gui.session.audio_cues import AudioCues
from gui.session.tones import Tone
from gui.text.wording import tr
from measure.live.events import LiveEventKind, Phase

_TONE_OF_PHASE = {
    Phase.WAIT_NEUTRAL: Tone.NEUTRAL,
    Phase.MOVE: Tone.MOVE,
    Phase.HOLD: Tone.HOLD,
    Phase.RETURN: Tone.RETURN,
}
_TONE_OF_EVENT = {
    LiveEventKind.TRIAL_CAPTURED: Tone.CAPTURED,
    LiveEventKind.TRIAL_REFUSED: Tone.REFUSED,
}


class SpokenGuidance:
    """Decides which tone is due, and announces the end of a movement."""

    def __init__(self, cues: AudioCues) -> None:
        self._cues = cues
        self._phase: Phase | None = None
        self._stood = False

    def begin_movement(self) -> None:
        self._phase, self._stood = None, False
        self._cues.forget()

    def follow_phase(self, phase: Phase, *, measuring: bool) -> None:
        """Sound the tone of a phase that begins; that of the rest once for each movement."""
        before, self._phase = self._phase, phase
        if phase is before or not measuring:
            return
        tone = _TONE_OF_PHASE.get(phase)
        if tone is Tone.RETURN and before is not Phase.HOLD:
            return  # the arm has come back already, or never held
        if tone is Tone.NEUTRAL:
            if self._stood:
                return
            self._stood = True
        if tone is not None:
            self._cues.sound(tone)

    def follow_event(self, kind: LiveEventKind) -> None:
        """Sound the tone of a captured or refused trial."""
        tone = _TONE_OF_EVENT.get(kind)
        if tone is not None:
            self._cues.sound(tone)

    def end_movement(self, step: SessionStep) -> None:
        """Say that the movement is done: the person may stand away from the screen."""
        self._cues.sound(Tone.DONE)
        self._cues.say(
            tr("Done. Let the arm rest. How much did it hurt?")
            if step is SessionStep.PAIN
            else tr("Done. Let the arm rest.")
        )
