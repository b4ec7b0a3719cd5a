"""Landmarks as a TRC file: tab-separated text with a time and three numbers for each point.

Times are the true ones. Where a point was not seen its cells are empty.
"""

import math
from pathlib import Path

from measure.domain.landmarks import FloatArray
from measure.errors import DataError
from measure.export.motion_points import LABELS, MotionPoints


def write_trc(path: Path, points: MotionPoints) -> None:
    """Write the points of one clip.

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
    try:
        path.write_text("\n".join(lines) + "\n", encoding="utf-8", newline="\n")
    except OSError as error:
        raise DataError(
            f"{path} cannot be written: {error.strerror or error}. "
            "Choose a folder that exists and that you may write to."
        ) from error


def _cells(places: FloatArray, units: str) -> list[str]:
    digits = 3 if units == "px" else 6
    return [f"{each:.{digits}f}" if math.isfinite(each) else "" for each in places.ravel()]
