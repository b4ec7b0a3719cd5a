"""Faults of a source of frames, and the error that carries one."""

from enum import StrEnum

from measure.errors import CameraError
from measure.message import TranslatableMessage


class SourceFault(StrEnum):
    """Faults that keep frames or poses from coming."""

    CAMERA_DENIED = "camera-denied"
    CAMERA_BUSY = "camera-busy"
    CAMERA_MISSING = "camera-missing"
    CAMERA_UNPLUGGED = "camera-unplugged"
    CAMERA_BLACK = "camera-black"
    CAMERA_SLOW = "camera-slow"
    CAMERA_STUCK = "camera-stuck"
    CLIP_UNREADABLE = "clip-unreadable"
    CLIP_ENDED = "clip-ended"
    MODEL_MISSING = "model-missing"
    POSE_RESTARTING = "pose-restarting"
    POSE_FAILED = "pose-failed"
    OTHER = "other"


class SourceTroubleError(CameraError):
    """A source of frames cannot be opened, or gives no more.

    Attributes
    ----------
    trouble
        The fault that the window reports.
    """

    def __init__(self, trouble: SourceFault, text: TranslatableMessage | str) -> None:
        super().__init__(text)
        self.trouble = trouble
