"""Python interface of Thawline: read shoulder motion from clips, follow it over months.

Installed as ``thawline``. Every public name is listed in ``__all__``; the packages behind it
(``measure``, ``calibration``, ``gui``) are private and may change in any version.

>>> import thawline
>>> reading = thawline.read_observation("raise.npz")
>>> measurement = reading.measurement
>>> measurement.movement, measurement.side, measurement.status
(<Movement.FLEXION: 'flexion'>, <Side.LEFT: 'left'>, <Status.READING: 'reading'>)
>>> measurement.low < measurement.value < measurement.high
True

Names are loaded when they are first used, so that ``import thawline`` costs nearly nothing.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from measure.clips.inputs import ClipEntry, read_manifest
    from measure.clips.outcome import ClipResult
    from measure.clips.read import ClipReading
    from measure.clips.setup_file import read_setup
    from measure.domain.acquisition import (
        BodySetup,
        CameraSetup,
        Correction,
        KnownSetup,
        LensProfile,
        MovementCorrection,
        Setup,
    )
    from measure.domain.landmarks import Landmark, Side
    from measure.domain.measurements import (
        LevelBand,
        Measurement,
        Provenance,
        Reference,
        Status,
        Trial,
    )
    from measure.domain.movements import MOVEMENTS, Movement, MovementFacts, Unit, View
    from measure.domain.reasons import Reason
    from measure.domain.records import (
        AssessmentCondition,
        Assistance,
        BodyPosition,
        Event,
        EventKind,
        History,
        LimitingFactor,
        MeasurementRecord,
        Onset,
        Pain,
        Person,
        SessionRecord,
    )
    from measure.domain.tracks import FrameState, Track
    from measure.errors import (
        CameraError,
        ClipError,
        DataError,
        InputError,
        MachineError,
        ManifestError,
        ModelError,
        ModelFileError,
        PoseProcessError,
        ThawlineError,
    )
    from measure.pose_models.catalogue import ModelQuality
    from measure.progress.comparison import Block, Change
    from measure.progress.overview import Progress
    from measure.progress.shoulder import SideProgress
    from measure.progress.trend_line import Slope
    from measure.progress.weekly_verdicts import Verdict
    from measure.storage.store import Store

    from .clip_reading import read_clip, read_clips, read_observation, save_observation
    from .person_history import open_store, progress

__all__ = [
    "MOVEMENTS",
    "AssessmentCondition",
    "Assistance",
    "Block",
    "BodyPosition",
    "BodySetup",
    "CameraError",
    "CameraSetup",
    "Change",
    "ClipEntry",
    "ClipError",
    "ClipReading",
    "ClipResult",
    "Correction",
    "DataError",
    "Event",
    "EventKind",
    "FrameState",
    "History",
    "InputError",
    "KnownSetup",
    "Landmark",
    "LensProfile",
    "LevelBand",
    "LimitingFactor",
    "MachineError",
    "ManifestError",
    "Measurement",
    "MeasurementRecord",
    "ModelError",
    "ModelFileError",
    "ModelQuality",
    "Movement",
    "MovementCorrection",
    "MovementFacts",
    "Onset",
    "Pain",
    "Person",
    "PoseProcessError",
    "Progress",
    "Provenance",
    "Reason",
    "Reference",
    "SessionRecord",
    "Setup",
    "Side",
    "SideProgress",
    "Slope",
    "Status",
    "Store",
    "ThawlineError",
    "Track",
    "Trial",
    "Unit",
    "Verdict",
    "View",
    "open_store",
    "progress",
    "read_clip",
    "read_clips",
    "read_manifest",
    "read_observation",
    "read_setup",
    "save_observation",
]

#: Modules by the public names that they hold; a test holds this equal to the imports above.
_HOMES = {
    ".clip_reading": "read_clip read_clips read_observation save_observation",
    ".person_history": "open_store progress",
    "measure.clips.inputs": "ClipEntry read_manifest",
    "measure.clips.outcome": "ClipResult",
    "measure.clips.read": "ClipReading",
    "measure.clips.setup_file": "read_setup",
    "measure.domain.acquisition": "BodySetup CameraSetup Correction KnownSetup LensProfile "
    "MovementCorrection Setup",
    "measure.domain.landmarks": "Landmark Side",
    "measure.domain.measurements": "LevelBand Measurement Provenance Reference Status Trial",
    "measure.domain.movements": "MOVEMENTS Movement MovementFacts Unit View",
    "measure.domain.reasons": "Reason",
    "measure.domain.records": "AssessmentCondition Assistance BodyPosition Event EventKind "
    "History LimitingFactor MeasurementRecord Onset Pain Person SessionRecord",
    "measure.domain.tracks": "FrameState Track",
    "measure.errors": "CameraError ClipError DataError InputError MachineError ManifestError "
    "ModelError ModelFileError PoseProcessError ThawlineError",
    "measure.pose_models.catalogue": "ModelQuality",
    "measure.progress.comparison": "Block Change",
    "measure.progress.overview": "Progress",
    "measure.progress.shoulder": "SideProgress",
    "measure.progress.trend_line": "Slope",
    "measure.progress.weekly_verdicts": "Verdict",
    "measure.storage.store": "Store",
}
_MODULES = {name: module for module, names in _HOMES.items() for name in names.split()}


def __getattr__(name: str) -> Any:
    """Load a public name; afterwards it is an ordinary attribute."""
    if name not in _MODULES:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    value = getattr(import_module(_MODULES[name], __name__), name)
    globals()[name] = value
    return value


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
