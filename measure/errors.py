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


class ThawlineError(Exception):
    """Base of all errors raised on purpose; its text is shown to the person as it stands."""

    exit_code = 1


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
    """The pose model is missing, wrong, or cannot be fetched."""


class PoseProcessError(MachineError):
    """The pose process crashed, hung or answered nonsense."""


class CameraError(MachineError):
    """A camera that cannot be opened or gives nothing useful."""
