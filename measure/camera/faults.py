"""What can go wrong with a source of pictures, and the error that says so."""

from enum import StrEnum

from measure.errors import CameraError


class SourceFault(StrEnum):
    """What keeps pictures or poses from coming."""

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
    """A source of pictures that cannot be opened, or gives no more.

    Attributes
    ----------
    trouble
        What the window tells the person about.
    """

    def __init__(self, trouble: SourceFault, text: str) -> None:
        super().__init__(text)
        self.trouble = trouble
