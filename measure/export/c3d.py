"""Landmarks as a C3D file (c3d.org), written with the package ezc3d.

C3D knows one rate and no times. Every frame stands in the slot of a regular grid that is nearest
to its time, slots without a frame hold invalid points, and the true time of each frame is in the
analog channel "TIME", seconds, NaN in empty slots. Points are single precision, as the format
has it.
"""

from pathlib import Path
from typing import Any

import numpy as np

from measure.domain.landmarks import FloatArray, IntArray
from measure.errors import DataError, InputError
from measure.export.motion_points import LABELS, MotionPoints

#: C3D says by a residual of -1 that a point is invalid.
_INVALID = -1.0
#: More slots than the format can count. Ours: 24 hours at the thin rate come close.
_MOST_SLOTS = 650_000


def write_c3d(path: Path, points: MotionPoints) -> None:
    """Write the points of one clip.

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
    """Write the file and look into it: the package does not notice a full disk."""
    import ezc3d

    part = path.with_name(f".{path.stem}.part.c3d")
    try:
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
    """Return the slot of each frame, shape (n,), from 0 and growing: none is lost.

    The nearest slot; a frame whose slot is taken stands in the next one.
    """
    wanted = np.rint((time_s - time_s[0]) * rate_hz).astype(np.int64)
    place = np.arange(len(wanted))
    # Growing by at least one: take away the place, keep the largest so far, add it again.
    return np.asarray(np.maximum.accumulate(wanted - place) + place, dtype=np.int64)
