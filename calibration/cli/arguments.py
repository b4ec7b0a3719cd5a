"""Points, lines and sizes as they are typed on the command line."""

import argparse
import re

from calibration.placement.level import Line

_POINT = re.compile(r"(\d{1,5}(?:\.\d{1,3})?),(\d{1,5}(?:\.\d{1,3})?)")
_SIZE = re.compile(r"([1-9]\d{0,4})x([1-9]\d{0,4})")


def point(text: str) -> tuple[float, float]:
    """Return "320,118.5" as (x, y), pixels from the upper left, y down."""
    found = _POINT.fullmatch(text)
    if not found:
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is no point; write X,Y such as 320,118")
    return float(found[1]), float(found[2])


def line(text: str) -> Line:
    """Return "320,40:322,420" as a line, its upper point first."""
    top, _, bottom = text.partition(":")
    return Line(top_px=point(top), bottom_px=point(bottom))


def size(text: str) -> tuple[int, int]:
    """Return "640x480" as width and height."""
    found = _SIZE.fullmatch(text.lower())
    if not found:
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is no size; write WxH such as 640x480")
    return int(found[1]), int(found[2])
