"""Capture of board views for a lens fit, with guidance on what to show next.

The window feeds it camera frames, the command line a clip or a folder of photographs. It decides
which views are worth keeping; the fit itself is in :mod:`calibration.lens.fit`.
"""

import warnings
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

import numpy as np

from calibration.lens.board import SQUARE_MM, SQUARES, BoardView, find_board
from calibration.lens.fit import FEWEST_CORNERS, Coverage, LensFit, corner_coverage, fit_lens
from measure.domain.landmarks import FloatArray
from measure.errors import InputError
from measure.message import TranslatableMessage
from measure.video.frame import FrameNormalizer, Picture
from measure.video.reader import ClipReader
from measure.video.source import open_clip

#: Views that suffice, when they also cover the image and some are tilted. [project]
ENOUGH_VIEWS = 24
#: Tilted views that suffice. [project]
ENOUGH_TILTED = 5
#: Most views; more add time but no precision. [project]
MOST_VIEWS = 40
#: Largest motion of the corners between frames of a still board, share of the image's width: a
#: moving board is blurred, and bent by a rolling shutter. [project]
STILL = 0.003
#: Least mean distance of the board's corners from those of any kept view for a new view, share
#: of the image's width. [project]
NEW = 0.06
#: Largest ratio of opposite sides of a board that counts as tilted. [project]
TILTED = 0.93
#: Analysis rate of a clip, frames per second. [project]
CLIP_RATE_HZ = 10.0
#: Most photographs in a folder. [technical]
MOST_PICTURES = 200
#: Largest photograph, bytes. [technical]
LARGEST_PICTURE_BYTES = 50_000_000
#: Most pixels of a photograph. [technical]
MOST_PICTURE_PIXELS = 7680 * 4320

PICTURE_ENDINGS = (".png", ".jpg", ".jpeg", ".bmp", ".tif", ".tiff", ".webp")


class ViewOutcome(StrEnum):
    """Outcome of offering one image."""

    NO_BOARD = "no-board"
    MOVING = "moving"
    SAME_VIEW = "same-view"
    KEPT = "kept"
    OTHER_SIZE = "other-size"


@dataclass(frozen=True, slots=True, kw_only=True)
class CaptureGuidance:
    """Outcome of one image, and what to do next.

    Attributes
    ----------
    view
        The board in this image, for drawing; None where it was not detected.
    message
        One thing to do.
    kept
        Number of views kept so far.
    coverage
        Coverage of the image by the corners of the kept views; None before the first.
    enough
        True when a fit is worth trying.
    """

    shown: ViewOutcome
    view: BoardView | None
    message: TranslatableMessage
    kept: int
    coverage: Coverage | None
    enough: bool

    @property
    def sentence(self) -> str:
        """The message in English."""
        return str(self.message)


class LensCapture:
    """Views of the board by one camera at one image size.

    Parameters
    ----------
    camera_name
        As the system names the camera; for a clip, the name that its profile is to have.
    """

    def __init__(self, camera_name: str) -> None:
        self._camera_name = camera_name
        self._size: tuple[int, int] | None = None
        self._views: list[BoardView] = []
        self._outlines: list[FloatArray] = []
        self._last: BoardView | None = None
        self._left_out = 0

    @property
    def views(self) -> tuple[BoardView, ...]:
        return tuple(self._views)

    @property
    def left_out(self) -> int:
        """Pictures left out because their size differs from the first one's."""
        return self._left_out

    def offer(self, picture: Picture, *, still: bool = False) -> CaptureGuidance:
        """Detect the board in one image and keep the view if it is sharp and new.

        Parameters
        ----------
        picture
            Upright, not mirrored.
        still
            True for single photographs, which have no frame before them to compare with.
        """
        size = (picture.width_px, picture.height_px)
        if self._size is None:
            self._size = size
        if size != self._size:
            self._left_out += 1
            return self._guidance(ViewOutcome.OTHER_SIZE, None)
        view = _in_full_size(find_board(picture.rgb), picture)
        before, self._last = self._last, view
        if view is None or len(view.ids) < FEWEST_CORNERS:
            return self._guidance(ViewOutcome.NO_BOARD, view)
        if not still and not _is_still(before, view, picture.width_px):
            return self._guidance(ViewOutcome.MOVING, view)
        outline = _outline(view)
        if outline is None:
            return self._guidance(ViewOutcome.NO_BOARD, view)
        apart = [float(np.mean(np.hypot(*(outline - other).T))) for other in self._outlines]
        if len(self._views) >= MOST_VIEWS or min(apart, default=np.inf) < NEW * picture.width_px:
            return self._guidance(ViewOutcome.SAME_VIEW, view)
        self._views.append(view)
        self._outlines.append(outline)
        return self._guidance(ViewOutcome.KEPT, view)

    def fit(self) -> LensFit:
        """Return the lens fitted to the kept views, or why there is none."""
        width, height = self._size or (1, 1)
        return fit_lens(
            self._views, camera_name=self._camera_name, width_px=width, height_px=height
        )

    def _guidance(self, shown: ViewOutcome, view: BoardView | None) -> CaptureGuidance:
        coverage = corner_coverage(self._views, *self._size) if self._size and self._views else None
        tilted = sum(_is_tilted(outline) for outline in self._outlines)
        enough = (
            len(self._views) >= ENOUGH_VIEWS
            and tilted >= ENOUGH_TILTED
            and coverage is not None
            and coverage.enough
        )
        return CaptureGuidance(
            shown=shown,
            view=view,
            message=_message(shown, coverage, len(self._views), tilted, enough),
            kept=len(self._views),
            coverage=coverage,
            enough=enough,
        )


def capture_clip(
    clip: Path,
    camera_name: str,
    *,
    quarter_turns: int = 0,
    already_mirrored: bool = False,
    tick: Callable[[float], None] = lambda time_s: None,
) -> LensCapture:
    """Return the views in a clip of a person showing the board.

    Parameters
    ----------
    tick
        Called with the time of every frame passed, seconds.

    Raises
    ------
    ClipError
        When the clip cannot be read.
    """
    capture = LensCapture(camera_name)
    source = open_clip(clip)
    try:
        gate = FrameNormalizer(
            sample_aspect=source.facts.sample_aspect,
            quarter_turns=quarter_turns,
            already_mirrored=already_mirrored,
        )
        reader = ClipReader(source, clip.name, rate_hz=CLIP_RATE_HZ, tick=tick)
        for frame in reader.frames():
            if frame.pixels is not None:
                capture.offer(gate.normalize(frame.pixels))
    finally:
        source.close()
    return capture


def capture_folder(folder: Path, camera_name: str) -> LensCapture:
    """Return the views in a folder of photographs, each of another position of the board.

    Raises
    ------
    InputError
        When the folder holds no pictures, too many, or one that cannot be read.
    """
    try:
        files = sorted(path for path in folder.iterdir() if path.suffix.lower() in PICTURE_ENDINGS)
    except OSError as error:
        raise InputError(f"The folder {folder.name} cannot be read ({error.strerror}).") from error
    if not files:
        raise InputError(f"The folder {folder.name} contains no pictures (PNG or JPEG).")
    if len(files) > MOST_PICTURES:
        raise InputError(
            f"The folder {folder.name} holds {len(files)} pictures; at most {MOST_PICTURES} can be "
            f"used. About {ENOUGH_VIEWS} different views are best."
        )
    capture = LensCapture(camera_name)
    gate = FrameNormalizer()
    for file in files:
        capture.offer(gate.normalize(_read_picture(file)), still=True)
    return capture


def _read_picture(file: Path) -> np.ndarray:
    """Return a photograph, upright by its EXIF tag, shape (height, width, 3), blue-green-red."""
    from PIL import Image, ImageOps, UnidentifiedImageError

    too_large = InputError(f"The picture {file.name} is too large. Export it smaller.")
    try:
        if file.stat().st_size > LARGEST_PICTURE_BYTES:
            raise too_large
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)
            opened = Image.open(file)
        with opened:
            # The size is read from the header: nothing is allocated for a forged one.
            if opened.width * opened.height > MOST_PICTURE_PIXELS:
                raise too_large
            upright = ImageOps.exif_transpose(opened)
            pixels = np.asarray(upright.convert("RGB"), dtype=np.uint8)
    except Image.DecompressionBombError:
        raise too_large from None
    except (OSError, UnidentifiedImageError, ValueError, SyntaxError) as error:
        raise InputError(
            f"The picture {file.name} cannot be read. Remove it from the folder or save it again."
        ) from error
    return np.ascontiguousarray(pixels[:, :, ::-1])


def _in_full_size(view: BoardView | None, picture: Picture) -> BoardView | None:
    """Return a view of the analysed image in pixels of the full-size one."""
    if view is None:
        return None
    height, width = picture.rgb.shape[:2]
    fractions = (view.points_px + 0.5) / np.array([width, height])
    return BoardView(ids=view.ids, points_px=picture.pixels(fractions))


def _is_still(before: BoardView | None, now: BoardView, width_px: int) -> bool:
    if before is None:
        return False
    _, first, second = np.intersect1d(before.ids, now.ids, return_indices=True)
    if len(first) < FEWEST_CORNERS // 2:
        return False
    moved = np.hypot(*(before.points_px[first] - now.points_px[second]).T)
    return float(np.median(moved)) < STILL * width_px


def _outline(view: BoardView) -> FloatArray | None:
    """Return the position of the board's own four corners, shape (4, 2), pixels.

    None where the detected corners lie on a line and so do not determine the rest.
    """
    import cv2

    flat = view.board_mm()[:, :2]
    if np.linalg.matrix_rank(flat - flat.mean(axis=0)) < 2:
        return None
    plan, _ = cv2.findHomography(flat, view.points_px)
    if plan is None:
        return None
    width, height = SQUARES[0] * SQUARE_MM, SQUARES[1] * SQUARE_MM
    corners = np.array([[0, 0, 1], [width, 0, 1], [width, height, 1], [0, height, 1.0]])
    placed = corners @ np.asarray(plan, dtype=np.float64).T
    if np.any(placed[:, 2] * placed[0, 2] <= 0):
        return None
    outline: FloatArray = placed[:, :2] / placed[:, 2:]
    return outline


def _is_tilted(outline: FloatArray) -> bool:
    top, right, bottom, left = np.hypot(*(np.roll(outline, -1, axis=0) - outline).T)
    across, down = sorted((top, bottom)), sorted((left, right))
    return bool(min(across[0] / across[1], down[0] / down[1]) < TILTED)


def _message(
    shown: ViewOutcome, coverage: Coverage | None, kept: int, tilted: int, enough: bool
) -> TranslatableMessage:
    if shown is ViewOutcome.OTHER_SIZE:
        return TranslatableMessage(
            "This picture is not the same size as the first one; it is left out."
        )
    if shown is ViewOutcome.NO_BOARD:
        return TranslatableMessage("Show the whole printed board, or most of it, in good light.")
    if shown is ViewOutcome.MOVING:
        return TranslatableMessage("Hold the board still for a moment.")
    if enough:
        return TranslatableMessage("There are enough views. You can still add more.")
    if coverage is not None and coverage.bare_quarters:
        return TranslatableMessage(
            "Move the board to the {where} of the picture and hold it.",
            {"where": coverage.bare_quarters[0]},
        )
    if tilted < ENOUGH_TILTED:
        return TranslatableMessage(
            "Tilt one side of the board away, by about 30 degrees, and hold it."
        )
    if coverage is not None and not coverage.enough:
        return TranslatableMessage("Move the board to the edge of the picture and hold it.")
    return TranslatableMessage(
        "Please move or tilt the board: {kept} of {enough} views.",
        {"kept": str(kept), "enough": str(ENOUGH_VIEWS)},
    )
