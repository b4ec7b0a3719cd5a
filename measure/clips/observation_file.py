"""Observation files: landmark tracks of a clip, kept so that it can be read again without frames.

One .npz for each clip, without pickled objects: every number as it was, and with which networks
and settings the clip was observed. With the same set-up the reading is the same, bit for bit.
"""

import json
import os
import tempfile
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any

import numpy as np

from measure.clips.inputs import ClipEntry
from measure.clips.observation import ClipObservation
from measure.clips.outcome import ClipResult
from measure.clips.read import measurement_from_observation
from measure.domain.acquisition import KnownSetup
from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from measure.domain.tracks import FrameState, Track
from measure.errors import DataError, InputError, in_short
from measure.pose.jobs import ClipInfo
from measure.system.atomic_files import write_errors
from measure.system.json_codec import from_data, to_data
from measure.system.safe_archives import ARCHIVE_ERRORS, check_arrays

#: Version of the format: raised when earlier versions can no longer read a file. [technical]
_FORM = 1
_ARRAYS = ("time_s", "points_px", "visibility", "presence", "state", "people")
_WHOLE_NUMBERS = ("state", "people")

#: Largest file, bytes; an hour with every frame of five passes needs about half of it. [technical]
LARGEST_BYTES = 1 << 30


@dataclass(frozen=True, slots=True, kw_only=True)
class _Header:
    """All of a kept clip but its arrays; the names of the passes are those of the arrays."""

    form: int
    clip: str
    reference: float | None
    person: str
    movement: Movement
    side: Side
    view: View | None
    model: str
    model_hashes: dict[str, str]
    passes: tuple[str, ...]
    software: dict[str, str]
    facts: ClipInfo
    careful: tuple[str, ...]
    windows: tuple[tuple[float, float], ...]
    quarter_turns: int
    already_mirrored: bool
    every_frame: bool


#: Fields that the header takes over as they are.
_SHARED = {field.name for field in fields(ClipObservation)} & {
    field.name for field in fields(_Header)
}


def save_observation(path: Path, entry: ClipEntry, observation: ClipObservation) -> None:
    """Write a clip's observation; a half-written file never takes the name.

    Raises
    ------
    DataError
        When the file cannot be written.
    """
    header = _Header(
        form=_FORM,
        clip=str(entry.clip),
        reference=entry.reference,
        person=entry.person,
        **{
            **{name: getattr(observation, name) for name in _SHARED},
            "model_hashes": dict(observation.model_hashes),
            "software": dict(observation.software),
            "careful": tuple(observation.fine),
        },
    )
    text = json.dumps(to_data(header), ensure_ascii=False).encode()
    arrays: dict[str, Any] = {"said": np.frombuffer(text, dtype=np.uint8)}
    for name, track in {"quick": observation.coarse, **observation.fine}.items():
        for field in _ARRAYS:
            arrays[f"{name}:{field}"] = getattr(track, field)
    with write_errors(path):
        handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=".tracks.", suffix=".part")
        try:
            with os.fdopen(handle, "wb") as file:
                np.savez_compressed(file, **arrays)
            os.replace(temporary, path)
        except OSError:
            os.unlink(temporary)
            raise


def load_observation(path: Path) -> tuple[ClipEntry, ClipObservation]:
    """Return a kept clip: which one it was, and its observation.

    Raises
    ------
    DataError
        When the file cannot be read, is no observation file, or is damaged.
    """
    if path.exists() and not path.is_file():
        raise DataError(f"{path} is not a file. Choose one that --keep-tracks wrote.")
    try:
        with path.open("rb") as file:
            check_arrays(file, LARGEST_BYTES)
            with np.load(file, allow_pickle=False) as arrays:
                header = _header(path, arrays)
                size = header.facts.width_px, header.facts.height_px
                coarse = _track(arrays, "quick", size)
                fine = {name: _track(arrays, name, size) for name in header.careful}
    except OSError as error:
        raise DataError(f"{path} cannot be read: {error.strerror or error}.") from error
    except ARCHIVE_ERRORS as error:
        raise DataError(
            f"{path} contains no tracks of Thawline, or is damaged ({in_short(error)})."
        ) from None
    if len({track.time_s.tobytes() for track in fine.values()}) > 1:
        raise DataError(f"{path} is damaged: its detailed passes saw different frames.")
    entry = ClipEntry(
        clip=Path(header.clip),
        movement=header.movement,
        side=header.side,
        view=header.view,
        reference=header.reference,
        person=header.person,
    )
    values = {name: getattr(header, name) for name in _SHARED}
    return entry, ClipObservation(**{**values, "coarse": coarse, "fine": fine})


def _header(path: Path, arrays: Any) -> _Header:
    data = json.loads(arrays["said"].tobytes())
    if not isinstance(data, dict) or data.get("form") != _FORM:
        raise DataError(f"{path} was written by another version of Thawline. Read the clip again.")
    header = from_data(_Header, data, path.name)
    missing = {"mediapipe", "opencv"} - header.software.keys()
    if missing:
        raise DataError(f"{path} does not say with which {', '.join(missing)} it was made.")
    return header


def _track(arrays: Any, name: str, size: tuple[int, int]) -> Track:
    """Return one track; a ValueError says what is wrong with it."""
    if any(arrays[f"{name}:{field}"].dtype.kind not in "iu" for field in _WHOLE_NUMBERS):
        raise ValueError("states or numbers of people are no whole numbers")
    values: dict[str, Any] = {
        field: np.array(
            arrays[f"{name}:{field}"],
            dtype=np.int64 if field in _WHOLE_NUMBERS else np.float64,
            order="C",
        )
        for field in _ARRAYS
    }
    time_s = values["time_s"]
    if not np.isfinite(time_s).all() or (np.diff(time_s) <= 0).any():
        raise ValueError("its times do not grow")
    if not np.isin(values["state"], list(FrameState)).all() or (values["people"] < 0).any():
        raise ValueError("a frame has no known state")
    return Track(**values, width_px=size[0], height_px=size[1])


def kept_files(path: Path) -> tuple[Path, ...]:
    """Return an observation file, or all of a folder in the order of their names.

    Raises
    ------
    InputError
        When there are none.
    """
    files = tuple(sorted(path.glob("*.npz"))) if path.is_dir() else (path,)
    if not files or not files[0].exists():
        raise InputError(f"There are no saved tracks in {path}. --keep-tracks saves them.")
    return files


def read_observations(
    files: Sequence[Path], setup: KnownSetup, unusable: Callable[[DataError], None]
) -> Iterator[ClipResult]:
    """Read clips again from observation files.

    Parameters
    ----------
    setup
        What is known beforehand; may be another than when the clips were observed.
    unusable
        Called for each file that does not even say which clip it is of; the others go on.
    """
    for number, file in enumerate(files):
        try:
            entry, observation = load_observation(file)
        except DataError as error:
            unusable(error)
            continue
        try:
            reading = measurement_from_observation(observation, setup.of(observation.movement))
        except DataError as error:
            yield ClipResult(number=number, entry=entry, error=error)
        else:
            yield ClipResult(
                number=number, entry=entry, measurement=reading.measurement, reading=reading
            )
