"""Arguments shared by the calibration commands: persons, lenses, points, lines and sizes."""

import argparse
import re
from typing import TYPE_CHECKING

from calibration.placement.level import PlumbLine
from measure.cli.open_store import open_store

if TYPE_CHECKING:
    from measure.domain.acquisition import LensProfile

_POINT = re.compile(r"(\d{1,5}(?:\.\d{1,3})?),(\d{1,5}(?:\.\d{1,3})?)")
_SIZE = re.compile(r"([1-9]\d{0,4})x([1-9]\d{0,4})")


def add_person(*parsers: argparse.ArgumentParser) -> None:
    """Add the required option --person to each parser."""
    for parser in parsers:
        parser.add_argument("--person", required=True, metavar="NAME", help="the pseudonym")


def stored_lens(camera_name: str | None, width_px: int, height_px: int) -> "LensProfile | None":
    """Return the profile of a camera at a frame size; None where it, or the camera, is unknown.

    Raises
    ------
    DataError, MachineError
        As :meth:`measure.storage.store.Store.open`.
    """
    from calibration.lens.profiles import lens_for

    if camera_name is None:
        return None
    with open_store() as store:
        return lens_for(store, camera_name, width_px, height_px)


def parse_point(text: str) -> tuple[float, float]:
    """Return "320,118.5" as (x, y), pixels from the upper left, y down."""
    match = _POINT.fullmatch(text)
    if not match:
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is not a point; write X,Y such as 320,118")
    return float(match[1]), float(match[2])


def parse_line(text: str) -> PlumbLine:
    """Return "320,40:322,420" as a line, its upper point first."""
    top, _, bottom = text.partition(":")
    return PlumbLine(top_px=parse_point(top), bottom_px=parse_point(bottom))


def parse_size(text: str) -> tuple[int, int]:
    """Return "640x480" as width and height."""
    match = _SIZE.fullmatch(text.lower())
    if not match:
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is not a size; write WxH such as 640x480")
    return int(match[1]), int(match[2])
