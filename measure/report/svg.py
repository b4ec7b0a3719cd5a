"""Diagrams for paper: a few plain marks, written as SVG for both the HTML report and the PDF.

Lengths are points (1/72 inch), y runs downwards, shades run from 0 (black) to 1 (white):
everything is readable in black and white.
"""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import Enum
from html import escape

#: The report's typeface, and the one that has the signs which it lacks.
FONT, SPARE_FONT = "Atkinson Hyperlegible", "DejaVu Sans"
#: Reach of a corner of a mark, in halves of its size. [technical]
_CORNER = 1.25


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A straight line."""

    x1: float
    y1: float
    x2: float
    y2: float
    width: float = 0.6
    shade: float = 0.0
    dashed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A rectangle; `fill` and `edge` are the shades of its area and outline, or None."""

    x: float
    y: float
    width: float
    height: float
    fill: float | None = None
    edge: float | None = 0.0
    dashed: bool = False


class Shape(Enum):
    """Shape of a mark; each stands for one thing in a diagram."""

    ROUND = "round"
    SQUARE = "square"
    DIAMOND = "diamond"
    TRIANGLE = "triangle"


@dataclass(frozen=True, slots=True, kw_only=True)
class Dot:
    """A mark at a value, open or filled; its shade is that of its outline and of what fills it."""

    x: float
    y: float
    size: float
    shape: Shape = Shape.ROUND
    filled: bool = True
    shade: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """A line of text. `anchor` is "start", "middle" or "end"; y is its baseline."""

    x: float
    y: float
    text: str
    size: float = 8.0
    anchor: str = "start"
    bold: bool = False


Mark = Line | Box | Dot | Words


@dataclass(frozen=True, slots=True, kw_only=True)
class Diagram:
    """A drawing with its size in points, and a description for readers who cannot see it."""

    width: float
    height: float
    marks: tuple[Mark, ...]
    description: str


#: Returns the text that stands for a diagram in a page.
Draw = Callable[[Diagram], str]


def as_svg(diagram: Diagram, families: str = f"{FONT}, {SPARE_FONT}, sans-serif") -> str:
    """Return a diagram as an SVG element.

    Parameters
    ----------
    families
        Typefaces of its words, the preferred one first; a drawer that knows no lists wants one.
    """
    inside = "".join(_svg(mark, families) for mark in diagram.marks)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" role="img" '
        f'aria-label="{escape(diagram.description)}" '
        f'width="{_number(diagram.width)}pt" height="{_number(diagram.height)}pt" '
        f'viewBox="0 0 {_number(diagram.width)} {_number(diagram.height)}">{inside}</svg>'
    )


def _svg(mark: Mark, families: str) -> str:
    match mark:
        case Line():
            return (
                f'<line x1="{_number(mark.x1)}" y1="{_number(mark.y1)}" x2="{_number(mark.x2)}" '
                f'y2="{_number(mark.y2)}" stroke="{_grey(mark.shade)}" '
                f'stroke-width="{_number(mark.width)}"{_dashes(mark.dashed)}/>'
            )
        case Box():
            return (
                f'<rect x="{_number(mark.x)}" y="{_number(mark.y)}" '
                f'width="{_number(mark.width)}" height="{_number(mark.height)}" '
                f'fill="{_grey(mark.fill)}" stroke="{_grey(mark.edge)}" stroke-width="0.5"'
                f"{_dashes(mark.dashed)}/>"
            )
        case Dot():
            return _dot(mark)
        case Words():
            weight = ' font-weight="bold"' if mark.bold else ""
            return (
                f'<text x="{_number(mark.x)}" y="{_number(mark.y)}" '
                f'font-family="{families}" font-size="{_number(mark.size)}" '
                f'text-anchor="{mark.anchor}"{weight}>{_without_ligatures(escape(mark.text))}</text>'
            )


def _dot(dot: Dot) -> str:
    """Return a mark; what has corners is a little larger than its size, so that all look alike."""
    half = dot.size / 2
    fill = _grey(dot.shade if dot.filled else 1.0)
    style = f'fill="{fill}" stroke="{_grey(dot.shade)}" stroke-width="0.5"'
    match dot.shape:
        case Shape.ROUND:
            return (
                f'<circle cx="{_number(dot.x)}" cy="{_number(dot.y)}" r="{_number(half)}" {style}/>'
            )
        case Shape.SQUARE:
            return (
                f'<rect x="{_number(dot.x - half)}" y="{_number(dot.y - half)}" '
                f'width="{_number(dot.size)}" height="{_number(dot.size)}" {style}/>'
            )
        case Shape.DIAMOND:
            far = half * _CORNER
            corners = [(0.0, -far), (far, 0.0), (0.0, far), (-far, 0.0)]
        case Shape.TRIANGLE:
            far = half * _CORNER
            corners = [(0.0, -far), (far, half), (-far, half)]
    return f'<polygon points="{_points(dot, corners)}" {style}/>'


def _points(dot: Dot, corners: Sequence[tuple[float, float]]) -> str:
    return " ".join(f"{_number(dot.x + x)},{_number(dot.y + y)}" for x, y in corners)


def _without_ligatures(text: str) -> str:
    """Return escaped text in spans that keep "fi" and "fl" apart: no search finds a ligature."""
    spans = re.split(r"(?<=f)(?=[fil])", text)
    return text if len(spans) == 1 else "".join(f"<tspan>{span}</tspan>" for span in spans)


def _number(number: float) -> str:
    return f"{number:.2f}".rstrip("0").rstrip(".")


def _grey(shade: float | None) -> str:
    if shade is None:
        return "none"
    level = round(255 * shade)
    return f"#{level:02x}{level:02x}{level:02x}"


def _dashes(dashed: bool) -> str:
    return ' stroke-dasharray="2 1.5"' if dashed else ""
