"""What is said and sounded in a round, for somebody who does not look."""

import pytest

from gui.pages.exercises.round_guidance import RoundGuidance
from gui.protocol.exercise_round import ExerciseRound, RoundPhase, tasks_of
from gui.session.audio_cues import AudioCues
from gui.session.tones import Tone
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import PlannedExercise


class HeardCues(AudioCues):
    """Cues that write down what would be heard."""

    def __init__(self) -> None:
        super().__init__(tones=True, speech=True)
        self.said: list[str] = []
        self.tones: list[Tone] = []

    def say(self, text: str) -> None:
        self.said.append(text)

    def sound(self, tone: Tone) -> None:
        self.tones.append(tone)


def heard(planned: PlannedExercise) -> HeardCues:
    """Return what is heard in a round of one exercise."""
    cues, guided = HeardCues(), ExerciseRound(tasks_of([planned]), 0.0)
    guidance = RoundGuidance(cues)
    guidance.begin(guided)
    for tick in range(1, 10_000):
        guidance.follow(guided, guided.advance(tick / 10))
        if guided.over:
            return cues
    raise AssertionError("the round did not end")


@pytest.mark.usefixtures("qapp")
def test_repetitions_and_holds_are_counted_aloud() -> None:
    wall = Exercise(listed=ListedExercise.WALL_WALK)
    cues = heard(
        PlannedExercise(exercise=wall, repetitions=5, hold_s=12, times_a_day=1, note="Slowly.")
    )
    assert cues.said[0].startswith("Get ready: Wall walk. Face a wall")
    assert cues.said[0].endswith("Slowly. Stop before it becomes painful.")
    assert cues.said[1:9] == ["1. Move slowly.", "Hold.", "10", "5", "3", "2", "1", "Slowly back."]
    assert cues.said[9] == "Rest."
    assert cues.said[-1] == "Done. Let the arm rest."
    # Now and then the voice says to stop in time.
    assert "4. Move slowly. Stop before it becomes painful." in cues.said
    assert "5. Move slowly." in cues.said
    one = [Tone.MOVE, Tone.HOLD, Tone.RETURN]
    assert cues.tones == [Tone.NEUTRAL, *(5 * one), Tone.DONE]


@pytest.mark.usefixtures("qapp")
def test_swings_are_counted_aloud() -> None:
    pendulum = Exercise(listed=ListedExercise.PENDULUM)
    cues = heard(PlannedExercise(exercise=pendulum, repetitions=3, hold_s=0, times_a_day=1))
    assert cues.said[1:] == ["Let the arm swing gently.", "2", "3", "Done. Let the arm rest."]


@pytest.mark.usefixtures("qapp")
def test_the_phases_that_sound_have_different_tones() -> None:
    from gui.pages.exercises.round_guidance import _TONES

    assert len(set(_TONES.values())) == len(_TONES) == len(set(RoundPhase)) - 2
