"""The one error tree. Bad data is a value with a reason, not an error; errors end a task.

::

    ThawlineError            text in plain words: what happened, what to do next
    ├── InputError           wrong use or unreadable input: exit code 2
    │   ├── ClipError        a clip that cannot be read
    │   ├── ManifestError    a table of clips that cannot be read
    │   ├── ModelFileError   a pose bundle of one's own that is none
    │   └── DataError        a file of ours (store, export, calibration) that cannot be used
    └── MachineError         this machine or its state: exit code 1
        ├── ModelError       the pose model is missing, wrong or cannot be fetched
        ├── PoseProcessError the pose process crashed or hung
        └── CameraError      a camera that gives nothing useful
"""

from measure.message import TranslatableMessage


class ThawlineError(Exception):
    """Base of all errors raised on purpose; its only argument is what the person reads."""

    exit_code = 1

    @property
    def message(self) -> TranslatableMessage | str:
        """The text: a template with values where the window can translate it."""
        said = self.args[0] if self.args else ""
        return said if isinstance(said, TranslatableMessage) else str(said)


class InputError(ThawlineError):
    """Wrong use, or input that cannot be read."""

    exit_code = 2


class ClipError(InputError):
    """A clip that cannot be read."""


class ManifestError(InputError):
    """A table of clips that cannot be read."""


class ModelFileError(InputError):
    """A pose bundle of one's own that cannot be used."""


class DataError(InputError):
    """A file of ours (store, export, calibration) that cannot be used."""


class MachineError(ThawlineError):
    """Something about this machine or its present state."""


class ModelError(MachineError):
    """The pose model is missing, wrong, or cannot be fetched.

    Attributes
    ----------
    causes
        Where it could not be fetched: for each package client why, without what to do next.
    """

    def __init__(
        self,
        text: TranslatableMessage | str,
        causes: tuple[TranslatableMessage | str, ...] = (),
    ) -> None:
        super().__init__(text)
        self.causes = causes


class PoseProcessError(MachineError):
    """The pose process crashed, hung or answered nonsense."""


class CameraError(MachineError):
    """A camera that cannot be opened or gives nothing useful."""


def quoting(message: TranslatableMessage, error: ThawlineError) -> TranslatableMessage | str:
    """Return a message that quotes an error; whole in English where the error has no template."""
    return message if isinstance(error.message, TranslatableMessage) else str(message)


def printable(text: str) -> str:
    """Return text from outside without letters that steer a terminal."""
    return "".join(letter if letter.isprintable() or letter == "\n" else " " for letter in text)


#: For `in_short` of a path: longer than nearly any real one. [technical]
LONGEST_PATH = 400


def in_short(said: object, most: int = 120) -> str:
    """Return what somebody else's error, file or path says, at any length, for a sentence."""
    text = printable(str(said)).replace("\n", " ")
    return (text if len(text) <= most else text[:most] + "...") or type(said).__name__
