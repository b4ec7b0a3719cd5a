"""Points, lines and sizes as they are typed on the command line."""

import argparse
import re

from calibration.placement.level import PlumbLine

_POINT = re.compile(r"(\d{1,5}(?:\.\d{1,3})?),(\d{1,5}(?:\.\d{1,3})?)")
_SIZE = re.compile(r"([1-9]\d{0,4})x([1-9]\d{0,4})")


def parse_point(text: str) -> tuple[float, float]:
    """Return "320,118.5" as (x, y), pixels from the upper left, y down."""
    found = _POINT.fullmatch(text)
    if not found:
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is no point; write X,Y such as 320,118")
    return float(found[1]), float(found[2])


def parse_line(text: str) -> PlumbLine:
    """Return "320,40:322,420" as a line, its upper point first."""
    top, _, bottom = text.partition(":")
    return PlumbLine(top_px=parse_point(top), bottom_px=parse_point(bottom))


def parse_size(text: str) -> tuple[int, int]:
    """Return "640x480" as width and height."""
    found = _SIZE.fullmatch(text.lower())
    if not found:
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is no size; write WxH such as 640x480")
    return int(found[1]), int(found[2])
