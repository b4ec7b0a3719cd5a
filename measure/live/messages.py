"""What the live process and its supervisor say to each other, beside what all pose processes say.

Pictures do not travel here but through :mod:`measure.live.shared_frames`; a message names the slot.
"""

import os
from dataclasses import dataclass, field
from pathlib import Path

from measure.camera.faults import SourceFault
from measure.domain.acquisition import CameraSetup
from measure.domain.tracks import PoseFrame
from measure.pose.messages import GarbledError, Message, MessageKind, frames_message, frames_of
from measure.pose_models.catalogue import ModelQuality


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceOrder:
    """A source to be opened in place of the one before.

    Attributes
    ----------
    session
        Number that all answers about it carry.
    clip
        A clip to play, or None for the camera.
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
        Name of the slots for pictures.
    quality
        The network that looks.
    """

    session: int
    clip: Path | None
    camera: str | None
    quarter_turns: int
    already_mirrored: bool
    origin_s: float
    start_s: float
    loop: bool
    ring: str
    quality: ModelQuality

    def message(self) -> Message:
        """Return the order as a message."""
        return Message(
            kind=MessageKind.LIVE,
            values={
                "session": self.session,
                "clip": None if self.clip is None else os.fspath(self.clip.absolute()),
                "camera": self.camera,
                "quarter_turns": self.quarter_turns,
                "already_mirrored": self.already_mirrored,
                "origin_s": self.origin_s,
                "start_s": self.start_s,
                "loop": self.loop,
                "ring": self.ring,
                "quality": self.quality.value,
            },
        )

    @classmethod
    def of(cls, message: Message) -> "SourceOrder":
        """Return the order that a message holds."""
        values = dict(message.values)
        clip, quality = values.pop("clip"), ModelQuality(values.pop("quality"))
        return cls(clip=None if clip is None else Path(clip), quality=quality, **values)

    @property
    def setup(self) -> CameraSetup:
        return CameraSetup(
            name=self.camera,
            quarter_turns=self.quarter_turns,
            already_mirrored=self.already_mirrored,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameMessage:
    """One picture that was looked at.

    Attributes
    ----------
    pose
        What was found; its pixels are those of `size_px`.
    slot
        Where the picture lies.
    shape
        Height and width of the picture there.
    size_px
        Width and height of the full-size picture.
    quick, careful
        Whether it belongs to the regular grid of the quick and of the careful passes.
    fps
        Pictures that the source delivers a second, 0 where not known yet.
    """

    session: int
    pose: PoseFrame
    slot: int
    shape: tuple[int, int]
    size_px: tuple[int, int]
    coarse: bool
    fine: bool
    fps: float = 0.0

    def message(self) -> Message:
        """Return it as a message."""
        return Message(
            kind=MessageKind.SEEN,
            values={
                "session": self.session,
                "slot": self.slot,
                "shape": self.shape,
                "size_px": self.size_px,
                "coarse": self.coarse,
                "fine": self.fine,
                "fps": self.fps,
            },
            arrays=frames_message(0, [self.pose]).arrays,
        )

    @classmethod
    def of(cls, message: Message) -> "FrameMessage":
        """Return what a message holds.

        Raises
        ------
        GarbledError
            If it holds something else.
        """
        values = message.values
        try:
            (pose,) = frames_of(message)
            height, width = values["shape"]
            full_width, full_height = values["size_px"]
            return cls(
                session=values["session"],
                pose=pose,
                slot=values["slot"],
                shape=(height, width),
                size_px=(full_width, full_height),
                coarse=values["coarse"],
                fine=values["fine"],
                fps=values["fps"],
            )
        except (KeyError, TypeError, ValueError) as error:
            raise GarbledError(f"a look without sense came ({error})") from None


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceOpened:
    """A source is open."""

    session: int
    backend: str
    sample_aspect: float = 1.0

    def message(self) -> Message:
        return Message(
            kind=MessageKind.OPENED,
            values={
                "session": self.session,
                "backend": self.backend,
                "sample_aspect": self.sample_aspect,
            },
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultChanged:
    """What keeps pictures from coming; no trouble when they come again."""

    session: int
    trouble: SourceFault | None
    text: str = field(default="")

    def message(self) -> Message:
        return Message(
            kind=MessageKind.TROUBLE,
            values={
                "session": self.session,
                "trouble": None if self.trouble is None else self.trouble.value,
                "text": self.text,
            },
        )

    @classmethod
    def of(cls, message: Message) -> "FaultChanged":
        values = dict(message.values)
        trouble = values.pop("trouble")
        return cls(trouble=None if trouble is None else SourceFault(trouble), **values)
