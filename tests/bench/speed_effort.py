"""How much is measured: for figures to keep, or in a hurry. Every row says how much it was."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """How much is measured.

    Attributes
    ----------
    rounds
        Of what goes by the clock.
    seconds
        Length of the clip that every frame of is looked at.
    clips
        Read against bare loops, from clips and from kept tracks.
    bare_frames
        Of each clip that a bare loop looks at before its time is taken for the whole clip's.
    crowd
        Clips for two processes.
    many
        Clips for the memory of one worker.
    minutes
        Lengths of the growing clip.
    thin_hz
        Pictures a second looked at in it.
    resumed
        Clips of the run that is killed and gone on with.
    """

    rounds: int = 3
    seconds: int = 10
    clips: int = 4
    bare_frames: int = 1_000_000
    crowd: int = 20
    many: int = 200
    minutes: tuple[int, ...] = (1, 10, 60)
    thin_hz: float = 0.5
    resumed: int = 300


THOROUGH = Effort()
SHORT = Effort(
    rounds=1,
    seconds=3,
    clips=1,
    bare_frames=30,
    crowd=4,
    many=80,
    minutes=(1, 10, 60),
    thin_hz=0.05,
    resumed=20,
)
