"""Messages between the live worker and its supervisor, beside those that all workers share.

Frames do not travel here but through :mod:`measure.live.shared_frames`; a message names the slot.
"""

from pathlib import Path
from typing import Annotated

from msgspec import Meta

from measure.camera.faults import SourceFault
from measure.domain.acquisition import CameraSetup
from measure.domain.tracks import PoseFrame
from measure.live.shared_frames import SLOTS
from measure.pose.message_pipe import GarbledError, Message, Text, decoder_of
from measure.pose.messages import (
    Alive,
    LoadModel,
    Ready,
    are_people,
)
from measure.pose_models.catalogue import ModelQuality
from measure.video.frame import LONGEST_SIDE_PX

_Slot = Annotated[int, Meta(ge=-1, lt=SLOTS)]
_Side = Annotated[int, Meta(ge=0, le=LONGEST_SIDE_PX)]


class SourceOrder(Message, frozen=True, kw_only=True, tag="source"):
    """To the live worker: a source to be opened in place of the one before.

    Attributes
    ----------
    session
        Number that all answers about it carry.
    clip
        A clip to play, or None for the camera; an absolute path.
    camera
        Label of the camera, or None for the first.
    quarter_turns, already_mirrored
        As in :class:`measure.domain.acquisition.CameraSetup`.
    origin_s
        Moment of the monotonic clock that a camera's times are counted from; that clock is
        the same for all processes of a computer.
    start_s
        Where a clip begins.
    loop
        Whether a clip begins anew at its end.
    ring
        Name of the slots for frames.
    quality
        The network to use.
    """

    session: int
    clip: Path | None
    camera: Text | None
    quarter_turns: int
    already_mirrored: bool
    origin_s: float
    start_s: float
    loop: bool
    ring: str
    quality: ModelQuality

    @property
    def setup(self) -> CameraSetup:
        """How frames of the source are made upright."""
        return CameraSetup(
            name=self.camera,
            quarter_turns=self.quarter_turns,
            already_mirrored=self.already_mirrored,
        )


class UseModel(Message, frozen=True, kw_only=True, tag="use"):
    """To the live worker: the network to use from the next frame on."""

    quality: ModelQuality


class FrameMessage(Message, frozen=True, kw_only=True, tag="frame"):
    """From the live worker: one frame that was analysed.

    Attributes
    ----------
    pose
        The people in it; pixels are those of `size_px`.
    slot
        Where the frame lies; -1 for one lost to damage.
    shape
        Height and width of the frame there.
    size_px
        Width and height of the full-size frame.
    coarse, fine
        Whether it belongs to the regular grid of the coarse and of the fine passes.
    fps
        Frames that the source delivers a second, 0 where not known yet.
    """

    session: int
    pose: PoseFrame
    slot: _Slot
    shape: tuple[_Side, _Side]
    size_px: tuple[int, int]
    coarse: bool
    fine: bool
    fps: float

    def __post_init__(self) -> None:
        pose = self.pose
        people = len(pose.points_px)
        if not are_people(people, pose.points_px, pose.visibility, pose.presence):
            raise GarbledError("a frame whose arrays do not fit together")


class SourceOpened(Message, frozen=True, kw_only=True, tag="opened"):
    """From the live worker: a source is open."""

    session: int
    backend: str
    sample_aspect: float = 1.0


class FaultChanged(Message, frozen=True, kw_only=True, tag="fault"):
    """From the live worker: what keeps frames from coming; no trouble when they come again."""

    session: int
    trouble: SourceFault | None
    text: Text = Text()


class Ended(Message, frozen=True, kw_only=True, tag="ended"):
    """From the live worker: the clip is over."""

    session: int


#: What the live worker takes, and what it answers.
LIVE_ORDERS = decoder_of(LoadModel | SourceOrder | UseModel)
LIVE_ANSWERS = decoder_of(Ready | Alive | SourceOpened | FrameMessage | FaultChanged | Ended)
