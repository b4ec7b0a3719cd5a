"""Landmarks of a clip's coarse track as motion files: TRC text and C3D (c3d.org, package ezc3d).

Motion files have x to the right, y upwards and z; a camera sees no depth, so z is 0 and every
point lies in the image plane. Lengths stay pixels unless the length of a pixel at the person's
distance was measured.

TRC holds the true time of each frame. C3D knows one rate and no times: every frame is placed in
the slot of a regular grid that is nearest to its time, slots without a frame hold invalid points,
and the true time of each frame is in the analog channel "TIME", seconds, NaN in empty slots.
Points of a C3D file are single precision.
"""

import math
import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from measure.clips.observation import ClipObservation
from measure.domain.landmarks import FloatArray, IntArray, Landmark
from measure.domain.tracks import FrameState
from measure.errors import DataError, InputError
from measure.system.atomic_files import private_descriptor, write_over

#: Names of the points, in the order of the network's landmarks.
LABELS = tuple(mark.name for mark in Landmark)
#: Residual that marks an invalid point. [source: C3D, c3d.org]
_INVALID = -1.0
#: Most slots that are written; the format counts little more. [technical]
_MOST_SLOTS = 650_000


@dataclass(frozen=True, slots=True, kw_only=True)
class MotionPoints:
    """Landmarks of one person over n frames, in the axes of motion files.

    Attributes
    ----------
    time_s
        Shape (n,): true times from the clip's first frame.
    places
        Shape (n, 33, 3): x right, y up from the image's lowest row, z 0; NaN where the
        person was not seen.
    units
        "px" or "m".
    rate_hz
        Nominal frames a second; the true times differ from it by up to half a frame of the clip,
        more where the clip's own times are uneven.
    """

    time_s: FloatArray
    places: FloatArray
    units: str
    rate_hz: float


def motion_points(observation: ClipObservation, metres_per_px: float | None = None) -> MotionPoints:
    """Return the points of a clip.

    Parameters
    ----------
    metres_per_px
        Length of a pixel at the person's distance, where it was measured; None leaves pixels.

    Raises
    ------
    InputError
        For a length that is not a positive number.
    """
    if metres_per_px is not None and not (np.isfinite(metres_per_px) and metres_per_px > 0):
        raise InputError(f"{metres_per_px:g} m is not a possible length of a pixel.")
    track = observation.coarse
    places = np.zeros((len(track), len(LABELS), 3))
    places[:, :, 0] = track.points_px[:, :, 0]
    places[:, :, 1] = track.height_px - 1 - track.points_px[:, :, 1]
    places *= metres_per_px or 1.0
    unknown = (track.state != FrameState.SEEN)[:, None] | ~np.isfinite(places).all(axis=2)
    places[unknown] = np.nan
    return MotionPoints(
        time_s=track.time_s,
        places=places,
        units="px" if metres_per_px is None else "m",
        rate_hz=observation.rate_hz,
    )


def write_trc(path: Path, points: MotionPoints) -> None:
    """Write the points of one clip as TRC: tab-separated text; empty cells where not seen.

    Raises
    ------
    DataError
        When the file cannot be written.
    """
    frames, rate = len(points.time_s), f"{points.rate_hz:.6g}"
    facts = (rate, rate, frames, len(LABELS), points.units, rate, 1, frames)
    numbers = range(1, len(LABELS) + 1)
    lines = [
        f"PathFileType\t4\t(X/Y/Z)\t{path.name}",
        "DataRate\tCameraRate\tNumFrames\tNumMarkers\tUnits\tOrigDataRate\tOrigDataStartFrame"
        "\tOrigNumFrames",
        "\t".join(map(str, facts)),
        "Frame#\tTime\t" + "\t\t\t".join(LABELS) + "\t\t",
        "\t\t" + "\t".join(f"X{n}\tY{n}\tZ{n}" for n in numbers),
        "",
    ]
    for frame, (time_s, places) in enumerate(zip(points.time_s, points.places, strict=True)):
        cells = [str(frame + 1), f"{time_s:.6f}", *_cells(places, points.units)]
        lines.append("\t".join(cells))
    write_over(path, ("\n".join(lines) + "\n").encode())


def _cells(places: FloatArray, units: str) -> list[str]:
    digits = 3 if units == "px" else 6
    return [f"{number:.{digits}f}" if math.isfinite(number) else "" for number in places.ravel()]


def write_c3d(path: Path, points: MotionPoints) -> None:
    """Write the points of one clip as C3D.

    Raises
    ------
    InputError
        When there is no frame, or more than the format counts.
    DataError
        When the file cannot be written.
    """
    import ezc3d

    if not len(points.time_s):
        raise InputError("There is no frame to write.")
    slots = slots_of(points.time_s, points.rate_hz)
    count = int(slots[-1]) + 1
    if count > _MOST_SLOTS:
        raise InputError("The clip is too long for a C3D file. Cut it into parts.")
    valid = np.asarray(np.isfinite(points.places).all(axis=2))
    places = np.zeros((4, len(LABELS), count))
    places[3] = 1.0
    places[:3, :, slots] = np.where(valid[..., np.newaxis], points.places, 0.0).transpose(2, 1, 0)
    residuals = np.full((1, len(LABELS), count), _INVALID)
    residuals[0, :, slots] = np.where(valid, 0.0, _INVALID)
    times = np.full((1, 1, count), np.nan)
    times[0, 0, slots] = points.time_s

    file = ezc3d.c3d()
    parameters = file["parameters"]
    parameters["POINT"]["RATE"]["value"] = [points.rate_hz]
    parameters["POINT"]["UNITS"]["value"] = [points.units]
    parameters["POINT"]["LABELS"]["value"] = list(LABELS)
    parameters["ANALOG"]["RATE"]["value"] = [points.rate_hz]
    parameters["ANALOG"]["LABELS"]["value"] = ["TIME"]
    parameters["ANALOG"]["UNITS"]["value"] = ["s"]
    file["data"]["points"] = places
    file["data"]["meta_points"]["residuals"] = residuals
    file["data"]["analogs"] = times
    _write(file, path, count)


def _write(file: Any, path: Path, slots: int) -> None:
    """Write the file and read it back: the package does not notice a full disk."""
    import ezc3d

    part = path.with_name(f".{path.stem}.part.c3d")
    try:
        os.close(private_descriptor(part))
        file.write(str(part))
        written = ezc3d.c3d(str(part))["data"]["points"].shape[2]
        if written != slots:
            raise OSError("it is not whole")
        part.replace(path)
    except (OSError, RuntimeError) as error:
        raise DataError(
            f"{path} cannot be written: {error}. "
            "Choose a folder that exists and that you may write to."
        ) from error
    finally:
        part.unlink(missing_ok=True)


def slots_of(time_s: FloatArray, rate_hz: float) -> IntArray:
    """Return the slot of each frame, shape (n,), from 0 and strictly increasing.

    The nearest slot; a frame whose slot is taken stands in the next one.
    """
    wanted = np.rint((time_s - time_s[0]) * rate_hz).astype(np.int64)
    place = np.arange(len(wanted))
    # Increasing by at least one: subtract the place, keep the largest so far, add it again.
    return np.asarray(np.maximum.accumulate(wanted - place) + place, dtype=np.int64)
