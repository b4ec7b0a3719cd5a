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
        Length of the clip whose frames are all analysed.
    clips
        Read against bare loops, from clips and from kept tracks.
    bare_frames
        Of each clip that a bare loop analyses before its time is taken for the whole clip's.
    """

    rounds: int = 3
    seconds: int = 10
    clips: int = 4
    bare_frames: int = 1_000_000


THOROUGH = Effort()
SHORT = Effort(rounds=1, seconds=3, clips=1, bare_frames=30)
