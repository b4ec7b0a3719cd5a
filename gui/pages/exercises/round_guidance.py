"""Tones and words of the guided round, for somebody who does not look at the screen."""

from gui.protocol.exercise_round import CueKind, ExerciseRound, RoundCue, RoundPhase
from gui.session.audio_cues import AudioCues
from gui.session.tones import Tone
from gui.text.exercise_wording import how_sentence, round_sentence
from gui.text.wording import tr

#: Every so many repetitions the voice says to stop before it becomes painful. [project]
REMINDED_EVERY = 4
#: Seconds of a hold that are counted aloud: each of the last few, before that every fifth.
#: [technical]
_LAST_SECONDS, _EVERY_SECONDS = 3, 5

_TONES = {
    RoundPhase.READY: Tone.NEUTRAL,
    RoundPhase.MOVE: Tone.MOVE,
    RoundPhase.HOLD: Tone.HOLD,
    RoundPhase.BACK: Tone.RETURN,
    RoundPhase.OVER: Tone.DONE,
}


class RoundGuidance:
    """Says and sounds what happens in a round."""

    def __init__(self, cues: AudioCues) -> None:
        self._cues = cues

    def begin(self, guided: ExerciseRound) -> None:
        """Announce the first exercise."""
        self._cues.forget()
        self._announce(guided)

    def follow(self, guided: ExerciseRound, happened: list[RoundCue]) -> None:
        """Say and sound what happened; of several phases at once the last one."""
        for cue in happened:
            words = spoken_words(guided, cue)
            if cue.kind is CueKind.PHASE and cue.phase in _TONES:
                self._cues.sound(_TONES[cue.phase])
            if words:
                self._cues.say(words)

    def pause(self) -> None:
        self._cues.say(tr("Paused. Let the arm rest."))

    def _announce(self, guided: ExerciseRound) -> None:
        self._cues.sound(Tone.NEUTRAL)
        self._cues.say(ready_words(guided))


def spoken_words(guided: ExerciseRound, cue: RoundCue) -> str:
    """Return what is said at a cue; empty where nothing is."""
    if cue.kind is CueKind.SECOND:
        counted = cue.number <= _LAST_SECONDS or cue.number % _EVERY_SECONDS == 0
        return str(cue.number) if counted else ""
    if cue.kind is not CueKind.PHASE:
        return ""
    return {
        RoundPhase.READY: ready_words(guided),
        RoundPhase.MOVE: _move_words(cue.number),
        RoundPhase.HOLD: tr("Hold."),
        RoundPhase.BACK: tr("Slowly back."),
        RoundPhase.REST: tr("Rest."),
        RoundPhase.SWING: str(cue.number) if cue.number > 1 else round_sentence(guided),
        RoundPhase.OVER: tr("Done. Let the arm rest."),
    }[cue.phase]


def ready_words(guided: ExerciseRound) -> str:
    """Return which exercise comes, how it is done, and to stop before it becomes painful."""
    how = how_sentence(guided.task.planned)
    parts = (round_sentence(guided), how, tr("Stop before it becomes painful."))
    return " ".join(part for part in parts if part)


def _move_words(repetition: int) -> str:
    words = tr("{number}. Move slowly.").format(number=repetition)
    if repetition % REMINDED_EVERY:
        return words
    return f"{words} {tr('Stop before it becomes painful.')}"
