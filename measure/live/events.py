"""Events and frames of a live measurement, as values for its display.

The engine that makes them (camera, pose, trials, refinement) and the window that draws them meet
here, so neither needs to know the other.
"""

from dataclasses import dataclass, field, replace
from enum import StrEnum
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from measure.camera.faults import SourceFault
from measure.domain.acquisition import KnownSetup, LensProfile, Setup
from measure.domain.landmarks import FloatArray, Side
from measure.domain.measurements import Measurement, Trial
from measure.domain.movements import Movement
from measure.domain.reasons import Reason


class Phase(StrEnum):
    """Phases of a live measurement."""

    OPENING = "opening"
    SEARCHING_FOR_PERSON = "looking-for-person"
    WAIT_NEUTRAL = "wait-neutral"
    MOVE = "move"
    HOLD = "hold"
    RETURN = "return"
    REFINING = "refining"
    REST = "rest"
    PAUSED = "paused"
    TROUBLE = "trouble"
    DONE = "done"


class SetupHint(StrEnum):
    """Hints on camera, light and place of the person."""

    STEP_BACK = "step-back"
    COME_CLOSER = "come-closer"
    STEP_LEFT = "step-left"
    STEP_RIGHT = "step-right"
    RAISE_SCREEN = "raise-screen"
    LOWER_SCREEN = "lower-screen"
    LEVEL_CAMERA = "level-camera"
    MORE_LIGHT = "more-light"
    LIGHT_FROM_FRONT = "light-from-front"


class LiveEventKind(StrEnum):
    TRIAL_CAPTURED = "trial-captured"
    TRIAL_REFINED = "trial-refined"
    TRIAL_REFUSED = "trial-refused"
    TRIAL_DISCARDED = "trial-discarded"
    TRIAL_RESTORED = "trial-restored"
    MEASUREMENT_DONE = "measurement-done"
    TROUBLE = "trouble"
    RECOVERED = "recovered"
    PERSON_LOST = "person-lost"
    PAUSED = "paused"
    RESUMED = "resumed"
    HAND_RAISED = "hand-raised"
    #: The position was to be measured, and is not held still.
    NOT_STILL = "not-still"


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """The source of frames: a camera by name, or a clip played at real speed.

    Attributes
    ----------
    setup
        What is known; `setup.camera.name` says which camera. None there takes the first.
    clip
        A clip to play as if it were the camera, or None.
    by_movement
        Corrections, studies and scatters of trials; each movement uses its own. Its camera and body
        are not used.
    lenses
        All profiles of the camera, of which the frames' size chooses; the newest last.
    """

    setup: Setup = field(default_factory=Setup)
    clip: Path | None = None
    by_movement: KnownSetup = field(default_factory=KnownSetup)
    lenses: tuple[LensProfile, ...] = ()

    def setup_of(self, movement: Movement) -> Setup:
        """Return the setup for one movement."""
        own = self.by_movement.of(movement)
        return replace(
            self.setup,
            correction=own.correction or self.setup.correction,
            study=own.study or self.setup.study,
            trial_sd=own.trial_sd or self.setup.trial_sd,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LiveFrame:
    """One frame with what was detected in exactly that frame.

    Attributes
    ----------
    picture
        Shape (height, width, 3), RGB, uint8, C-contiguous, upright, never mirrored by us.
    frame_id
        Rises by at least one from frame to frame.
    time_s
        Seconds since the source was opened.
    points_px
        Shape (33, 2), pixels of `picture`, or None where the person was not seen.
    value
        Value of the coarse pass in the movement's unit, a guide and no reading; None without.
    reasons
        What spoils this frame, most important first.
    hold_share
        How much of the hold is done, 0..1.
    setup_hints
        What to change about the place, most important first.
    quality
        How well the arm is seen, 0..1, or None where unknown.
    size_px
        Width and height of the same frame in full, before it was made smaller for inference;
        None where it was not.
    """

    picture: NDArray[np.uint8]
    frame_id: int
    time_s: float
    phase: Phase
    points_px: FloatArray | None = None
    value: float | None = None
    reasons: tuple[Reason, ...] = ()
    hold_share: float = 0.0
    setup_hints: tuple[SetupHint, ...] = ()
    quality: float | None = None
    size_px: tuple[int, int] | None = None

    @property
    def full_size_px(self) -> tuple[int, int]:
        """Width and height that lens profiles and readings are in."""
        return self.size_px or (self.picture.shape[1], self.picture.shape[0])


@dataclass(frozen=True, slots=True, kw_only=True)
class LiveEvent:
    """Something that happened once, in order.

    Attributes
    ----------
    trial_id
        Tells the trials of one chosen movement apart; the same from TRIAL_CAPTURED to
        TRIAL_REFINED, TRIAL_REFUSED or TRIAL_DISCARDED.
    practice
        True for a practice trial, which is never scored.
    value
        With TRIAL_CAPTURED: the hold of the coarse pass, a guide and no reading.
    trial
        With TRIAL_REFINED and TRIAL_REFUSED.
    measurement
        With MEASUREMENT_DONE the final one. With TRIAL_REFINED the one that all trials refined
        so far make, so that it can be kept at once.
    side
        With HAND_RAISED, the person's hand. During a movement the engine pauses, or goes on, by
        itself; PAUSED or RESUMED follows.
    trouble, text
        With TROUBLE: what it is, and details in words if there are any.
    """

    kind: LiveEventKind
    trial_id: int = 0
    practice: bool = False
    value: float | None = None
    trial: Trial | None = None
    measurement: Measurement | None = None
    side: Side | None = None
    trouble: SourceFault | None = None
    text: str = ""
