"""The error that a camera or clip gives when it cannot go on: it knows which trouble it is."""

from measure.errors import CameraError
from measure.live_events import Trouble


class SourceTroubleError(CameraError):
    """A source of pictures that cannot be opened, or gives no more.

    Attributes
    ----------
    trouble
        What the window tells the person about.
    """

    def __init__(self, trouble: Trouble, text: str) -> None:
        super().__init__(text)
        self.trouble = trouble
