"""Lens fit: a profile from views of the board, with the refusal of poor fits.

Undistorting points with a profile is in :mod:`measure.kinematics.camera_geometry`; capturing the
views in :mod:`calibration.lens.capture`.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

import numpy as np
from numpy.typing import NDArray

from calibration.lens.board import BoardView
from measure.domain.acquisition import LensProfile
from measure.domain.landmarks import FloatArray
from measure.kinematics.camera_geometry import undistort_points
from measure.message import TranslatableMessage, join_messages

#: Fewest views for a fit. [project]
FEWEST_VIEWS = 8
#: Fewest corners in a view. [project]
FEWEST_CORNERS = 8
#: Cells across and down in which corners are counted. [project]
COVERAGE_CELLS = (6, 4)
#: Least share of cells with corners: where no corner was seen, distortion is a guess. [project]
LEAST_COVERAGE = 0.6
#: Least share of cells with corners in each quarter of the image. [project]
LEAST_QUARTER = 0.5
#: Largest root mean square distance of detected from fitted corners, pixels. [project]
LARGEST_ERROR_PX = 1.0
#: Tilt of the board from which a view counts as tilted, degrees: square views do not separate
#: focal length from distance, and the fit is then confident but ten times off. [project]
LEAST_TILT_DEG = 12.0
#: Fewest tilted views. [project]
FEWEST_TILTED = 4
#: Largest half of the focal length's 95 % interval, as a share of it. [project]
LARGEST_FOCAL_ERROR = 0.01
#: Least F statistic (one degree of freedom) of a third radial term for its use: it bends wildly
#: where there were no corners. [project]
THIRD_TERM_F = 20.0


class LensFitProblem(StrEnum):
    """Reason why views do not yield a profile."""

    FEW_VIEWS = "few-views"
    UNCOVERED = "uncovered"
    NO_FIT = "no-fit"
    LARGE_ERROR = "large-error"
    UNTILTED = "untilted"
    UNSURE_FOCAL = "unsure-focal"
    FOLDED = "folded"


@dataclass(frozen=True, slots=True, kw_only=True)
class Coverage:
    """Coverage of the image by detected corners.

    Attributes
    ----------
    cells
        Whether a cell of the image held a corner in any view, shape (rows, columns).
    """

    cells: NDArray[np.bool_]

    @property
    def share(self) -> float:
        """Share of the cells, 0..1."""
        return float(np.mean(self.cells))

    @property
    def bare_quarters(self) -> tuple[TranslatableMessage, ...]:
        """Quarters of the image with too few corners, in words."""
        rows, columns = self.cells.shape[0] // 2, self.cells.shape[1] // 2
        quarters = (
            (TranslatableMessage("upper left"), self.cells[:rows, :columns]),
            (TranslatableMessage("upper right"), self.cells[:rows, columns:]),
            (TranslatableMessage("lower left"), self.cells[rows:, :columns]),
            (TranslatableMessage("lower right"), self.cells[rows:, columns:]),
        )
        return tuple(name for name, part in quarters if np.mean(part) < LEAST_QUARTER)

    @property
    def enough(self) -> bool:
        return self.share >= LEAST_COVERAGE and not self.bare_quarters


@dataclass(frozen=True, slots=True, kw_only=True)
class LensFit:
    """Result of a fit: a profile, or why there is none.

    Attributes
    ----------
    profile
        None when refused.
    faults
        Why it was refused; empty with a profile.
    messages
        The result and, if refused, what to do.
    views
        Number of views used.
    coverage
        Where corners were detected.
    reprojection_px
        Root mean square distance of detected from fitted corners; NaN without a fit.
    worst_view_px
        The same of the worst single view.
    focal_error
        Half of the focal length's 95 % interval as a share of it; NaN without a fit.
    """

    profile: LensProfile | None
    faults: tuple[LensFitProblem, ...]
    messages: tuple[TranslatableMessage, ...]
    views: int
    coverage: Coverage
    reprojection_px: float = math.nan
    worst_view_px: float = math.nan
    focal_error: float = math.nan

    @property
    def sentence(self) -> str:
        """The messages in English."""
        return join_messages(self.messages)


def corner_coverage(views: Sequence[BoardView], width_px: int, height_px: int) -> Coverage:
    """Return which cells of the image hold corners of the views."""
    across, down = COVERAGE_CELLS
    cells = np.zeros((down, across), dtype=np.bool_)
    for view in views:
        column = np.floor((view.points_px[:, 0] + 0.5) / width_px * across).astype(int)
        row = np.floor((view.points_px[:, 1] + 0.5) / height_px * down).astype(int)
        cells[row.clip(0, down - 1), column.clip(0, across - 1)] = True
    return Coverage(cells=cells)


def horizontal_field_of_view_deg(profile: LensProfile) -> float:
    """Return the horizontal field of view of the ideal camera, degrees."""
    return 2 * math.degrees(math.atan(profile.width_px / 2 / profile.focal_px[0]))


def fit_lens(
    views: Sequence[BoardView], *, camera_name: str, width_px: int, height_px: int
) -> LensFit:
    """Return the lens fitted to the views, or why there is none.

    Parameters
    ----------
    views
        Corners in pixels of upright, unmirrored images of the given size.
    """
    useful = [view for view in views if _is_useful(view)]
    coverage = corner_coverage(useful, width_px, height_px)
    faults = []
    if len(useful) < FEWEST_VIEWS:
        faults.append(LensFitProblem.FEW_VIEWS)
    if not coverage.enough:
        faults.append(LensFitProblem.UNCOVERED)
    if faults:
        return _refused(faults, useful, coverage)
    solved = _solve(useful, width_px, height_px)
    if solved is None:
        return _refused([LensFitProblem.NO_FIT], useful, coverage)
    profile = LensProfile(
        camera_name=camera_name,
        width_px=width_px,
        height_px=height_px,
        focal_px=solved.focal_px,
        centre_px=solved.centre_px,
        distortion=solved.distortion,
        reprojection_px=solved.error_px,
        views=len(useful),
    )
    if solved.error_px > LARGEST_ERROR_PX:
        faults.append(LensFitProblem.LARGE_ERROR)
    if solved.tilted < FEWEST_TILTED:
        faults.append(LensFitProblem.UNTILTED)
    elif not solved.focal_error <= LARGEST_FOCAL_ERROR:
        faults.append(LensFitProblem.UNSURE_FOCAL)
    if not np.isfinite(undistort_points(_rim(width_px, height_px), profile)).all():
        faults.append(LensFitProblem.FOLDED)
    if faults:
        return _refused(faults, useful, coverage, solved)
    return LensFit(
        profile=profile,
        faults=(),
        messages=(
            TranslatableMessage(
                "Lens calculated from {views} views: {field} degrees wide, error {error} pixels, "
                "corners seen in {share} % of the picture.",
                {
                    "views": str(len(useful)),
                    "field": f"{horizontal_field_of_view_deg(profile):.0f}",
                    "error": f"{solved.error_px:.2f}",
                    "share": f"{100 * coverage.share:.0f}",
                },
            ),
        ),
        views=len(useful),
        coverage=coverage,
        reprojection_px=solved.error_px,
        worst_view_px=solved.worst_view_px,
        focal_error=solved.focal_error,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _LensSolution:
    focal_px: tuple[float, float]
    centre_px: tuple[float, float]
    distortion: tuple[float, float, float, float, float]
    error_px: float
    worst_view_px: float
    focal_error: float
    tilted: int
    unknowns: int


def _is_useful(view: BoardView) -> bool:
    """Return whether a view has enough corners, not all on one line."""
    if len(view.ids) < FEWEST_CORNERS or not np.isfinite(view.points_px).all():
        return False
    flat = view.board_mm()[:, :2]
    return bool(np.linalg.matrix_rank(flat - flat.mean(axis=0)) == 2)


def _rim(width_px: int, height_px: int) -> FloatArray:
    """Return points along the image's rim, shape (n, 2)."""
    across, down = np.linspace(0, width_px - 1, 33), np.linspace(0, height_px - 1, 33)
    sides = [(across, 0 * down), (across, 0 * down + height_px - 1)]
    sides += [(0 * across, down), (0 * across + width_px - 1, down)]
    return np.concatenate([np.stack(side, axis=-1) for side in sides])


def _solve(views: Sequence[BoardView], width_px: int, height_px: int) -> _LensSolution | None:
    """Return the fit with two radial terms, or with three where that is clearly better."""
    import cv2

    plain = _calibrate(views, (width_px, height_px), cv2.CALIB_FIX_K3)
    third = _calibrate(views, (width_px, height_px), 0)
    if plain is None or third is None:
        return plain
    residuals = 2 * sum(len(view.ids) for view in views)
    left = max(1, residuals - third.unknowns - 6 * len(views))
    gained = (plain.error_px**2 - third.error_px**2) / max(third.error_px**2, 1e-12)
    return third if gained * left > THIRD_TERM_F else plain


def _calibrate(
    views: Sequence[BoardView], size: tuple[int, int], flags: int
) -> _LensSolution | None:
    import cv2

    board = [view.board_mm().astype(np.float32) for view in views]
    seen = [view.points_px.astype(np.float32).reshape(-1, 1, 2) for view in views]
    start: Any = np.eye(3)
    try:
        error, camera, bend, turns, _, spread, _, view_errors = cv2.calibrateCameraExtended(
            board, seen, size, start, np.zeros(5), flags=flags
        )
    except cv2.error:
        return None
    numbers = np.concatenate([np.ravel(camera), np.ravel(bend)[:5], [error]])
    if not np.isfinite(numbers).all() or camera[0, 0] <= 0 or camera[1, 1] <= 0:
        return None
    k1, k2, p1, p2, k3 = (float(number) for number in np.ravel(bend)[:5])
    spreads = np.ravel(spread)
    return _LensSolution(
        focal_px=(float(camera[0, 0]), float(camera[1, 1])),
        centre_px=(float(camera[0, 2]), float(camera[1, 2])),
        distortion=(k1, k2, p1, p2, k3),
        error_px=float(error),
        worst_view_px=float(np.max(view_errors)),
        focal_error=1.96 * float(max(spreads[0] / camera[0, 0], spreads[1] / camera[1, 1])),
        tilted=sum(
            _tilt_deg(np.asarray(turn, dtype=np.float64)) >= LEAST_TILT_DEG for turn in turns
        ),
        unknowns=8 if flags else 9,
    )


def _tilt_deg(turn: FloatArray) -> float:
    """Return the angle between the board's normal and the lens axis, from a rotation vector."""
    import cv2

    return math.degrees(math.acos(min(1.0, abs(float(cv2.Rodrigues(turn)[0][2, 2])))))


def _refused(
    faults: Sequence[LensFitProblem],
    views: Sequence[BoardView],
    coverage: Coverage,
    solved: _LensSolution | None = None,
) -> LensFit:
    messages = {
        LensFitProblem.FEW_VIEWS: TranslatableMessage(
            "Useful views of the board: {views}. At least {fewest} are needed; 24 are better.",
            {"views": str(len(views)), "fewest": str(FEWEST_VIEWS)},
        ),
        LensFitProblem.UNCOVERED: TranslatableMessage(
            "The board was seen in only {share} % of the picture: show it in the {where} too.",
            {"share": f"{100 * coverage.share:.0f}", "where": _uncovered_area(coverage)},
        ),
        LensFitProblem.NO_FIT: TranslatableMessage(
            "No lens fits these views. Check that the board was flat and that only one board was "
            "in view."
        ),
        LensFitProblem.LARGE_ERROR: TranslatableMessage(
            "The corners are {error} pixels off the best-fitting lens; at most {most} is "
            "accepted. Keep the board flat and hold it still.",
            {
                "error": f"{solved.error_px:.1f}" if solved else "",
                "most": f"{LARGEST_ERROR_PX:g}",
            },
        ),
        LensFitProblem.UNTILTED: TranslatableMessage(
            "The board always faced the camera squarely: tilt it to the left, right, up and "
            "down, by about 30 degrees, in at least {fewest} views.",
            {"fewest": str(FEWEST_TILTED)},
        ),
        LensFitProblem.UNSURE_FOCAL: TranslatableMessage(
            "The focal length is still uncertain: tilt the board to each side, and show it "
            "nearer and farther away."
        ),
        LensFitProblem.FOLDED: TranslatableMessage(
            "The calculated lens is not possible at the edge of the picture: show the board "
            "nearer to the edge. Fisheye lenses are not supported."
        ),
    }
    return LensFit(
        profile=None,
        faults=tuple(faults),
        messages=(
            TranslatableMessage("No lens profile was created."),
            *(messages[fault] for fault in faults),
        ),
        views=len(views),
        coverage=coverage,
        reprojection_px=solved.error_px if solved else math.nan,
        worst_view_px=solved.worst_view_px if solved else math.nan,
        focal_error=solved.focal_error if solved else math.nan,
    )


def _uncovered_area(coverage: Coverage) -> TranslatableMessage:
    """Return the quarters that lack corners, in words."""
    bare = coverage.bare_quarters
    if not bare:
        return TranslatableMessage("edges")
    words = bare[0]
    for quarter in bare[1:]:
        words = TranslatableMessage("{first} and {second}", {"first": words, "second": quarter})
    return words
