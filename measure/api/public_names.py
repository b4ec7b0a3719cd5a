"""Public names of the Python interface, in one place; loaded when the first one is used."""

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
from measure.progress.weekly_verdicts import Verdict
from measure.storage.store import Store
from measure.trend.trend_line import Slope

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
