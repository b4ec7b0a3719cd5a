"""Printable sheet with the board at true scale, and a ruler to check the printer."""

import textwrap
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from calibration.lens.board import CELL_MM, SQUARE_MM, SQUARES, board_cells
from measure.errors import InputError
from measure.export.figure_file import save_figure

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure
    from matplotlib.path import Path as Outline

#: Length of the printed ruler that shows whether the printer kept the scale, millimetres.
#: [technical]
RULER_MM = 100.0

_MM_PER_INCH = 25.4
_PNG_DPI = 300
_TEXT = (
    "Print at 100 %, not fitted to the page. The line must measure 100 mm. Glue the sheet to "
    f"something flat and stiff, and keep the white edge. Squares {SQUARE_MM:g} mm."
)


@dataclass(frozen=True, slots=True)
class PaperSize:
    """Sheet in landscape, millimetres."""

    name: str
    width_mm: float
    height_mm: float


PAPERS = {
    paper.name: paper
    for paper in (PaperSize("a4", 297.0, 210.0), PaperSize("letter", 279.4, 215.9))
}


def board_origin_mm(paper: PaperSize) -> tuple[float, float]:
    """Return the board's upper left corner on the sheet, millimetres (x, y)."""
    return (paper.width_mm - SQUARES[0] * SQUARE_MM) / 2, 10.0


def save_board_sheet(path: Path, paper: PaperSize = PAPERS["a4"]) -> None:
    """Write the sheet as PDF, or as PNG with 300 dots an inch.

    Raises
    ------
    InputError
        When the name ends in neither .pdf nor .png.
    DataError
        When the file cannot be written.
    """
    kind = path.suffix.lower()
    if kind not in (".pdf", ".png"):
        raise InputError(f"The name of the board file {path.name} must end in .pdf or .png.")
    # No date: the same sheet is the same file.
    metadata = {"CreationDate": None} if kind == ".pdf" else None
    save_figure(board_sheet_figure(paper), path, dpi=_PNG_DPI, metadata=metadata)


def board_sheet_figure(paper: PaperSize) -> "Figure":
    """Return the sheet as a figure of exactly its size; its axes are millimetres, y down."""
    from matplotlib.figure import Figure
    from matplotlib.patches import PathPatch

    figure = Figure(figsize=(paper.width_mm / _MM_PER_INCH, paper.height_mm / _MM_PER_INCH))
    sheet = figure.add_axes((0, 0, 1, 1))
    sheet.set_xlim(0, paper.width_mm)
    sheet.set_ylim(paper.height_mm, 0)
    sheet.axis("off")
    left, top = board_origin_mm(paper)
    sheet.add_patch(PathPatch(_black_cells(left, top), facecolor="black", edgecolor="none"))
    _draw_ruler(sheet, left, top + SQUARES[1] * SQUARE_MM + 16)
    sheet.text(
        left + RULER_MM + 12,
        top + SQUARES[1] * SQUARE_MM + 8,
        "\n".join(textwrap.wrap(_TEXT, 68)),
        fontsize=10,
        verticalalignment="top",
    )
    return figure


def _black_cells(left: float, top: float) -> "Outline":
    """Return all black cells as one outline, which is filled without hairlines between cells."""
    from matplotlib.path import Path as Outline

    corners: list[tuple[float, float]] = []
    codes: list[Any] = []
    for row, cells in enumerate(board_cells()):
        edges = np.flatnonzero(np.diff(np.concatenate([[False], cells, [False]]).astype(np.int8)))
        y0, y1 = top + row * CELL_MM, top + (row + 1) * CELL_MM
        for start, end in edges.reshape(-1, 2):
            x0, x1 = left + start * CELL_MM, left + end * CELL_MM
            corners += [(x0, y0), (x1, y0), (x1, y1), (x0, y1), (x0, y0)]
            codes += [Outline.MOVETO, *[Outline.LINETO] * 3, Outline.CLOSEPOLY]
    return Outline(corners, codes)


def _draw_ruler(sheet: "Axes", left: float, base: float) -> None:
    sheet.plot([left, left + RULER_MM], [base, base], color="black", linewidth=0.8)
    for mm in range(round(RULER_MM) + 1):
        tall = 5.0 if mm % 10 == 0 else 3.5 if mm % 5 == 0 else 2.0
        sheet.plot([left + mm, left + mm], [base, base - tall], color="black", linewidth=0.4)
        if mm % 10 == 0:
            sheet.text(left + mm, base + 1, str(mm), fontsize=7, ha="center", va="top")
    sheet.text(left + RULER_MM + 3, base, "mm", fontsize=7, va="top")
