"""Marking tasks: what is marked, what the marks say, and how they are kept."""

import datetime as dt

import numpy as np

from calibration.body.landmarks_by_hand import BackLandmarks, locate_back_landmarks
from calibration.body.record import save_back_landmarks
from calibration.lens.profiles import lens_for
from calibration.placement.level import CameraOrientation, PlumbLine, orientation_from_plumb_lines
from calibration.placement.viewpoint import PinholeView
from gui.drawing.calibration_guides import Guide
from gui.pages.camera_and_body.marking import MarkedPoints, MarkingTask
from gui.session.known_state import longer_edge_words, turn_words
from gui.text.wording import tr
from measure.domain.calibration_records import CameraLevel
from measure.errors import InputError
from measure.kinematics.camera_geometry import undistort_points
from measure.kinematics.neutral_pose import TRUNK_MARKS
from measure.storage.store import Store


def level_marking_task(camera: str) -> MarkingTask:
    """Return the marking of one or two upright lines."""

    def describe(marked: MarkedPoints) -> str:
        try:
            estimate = orientation_from_marks(marked, camera)
        except InputError:
            return ""
        return turn_words(estimate.roll_deg, estimate.roll_half_deg)

    def better(marked: MarkedPoints) -> str:
        return longer_edge_words(orientation_from_marks(marked, camera).roll_half_deg)

    return MarkingTask(
        before=tr("Level: mark an upright edge."),
        steps=(
            tr("Mark the upper end of something upright."),
            tr("Mark its lower end, as far away as possible."),
            tr("Save it, or mark the upper end of a second line, well to one side of the first."),
            tr("Mark the lower end of the second line."),
        ),
        least=2,
        in_pairs=True,
        needs_person=False,
        describe=describe,
        outline=(
            tr("Take a picture with a door frame in it."),
            tr("Mark its upper end (1) and its lower end (2)."),
            tr("Save the level."),
        ),
        guide=Guide.UPRIGHT,
        better=better,
    )


def back_marking_task(camera: str | None) -> MarkingTask:
    """Return the marking of C7 and the pelvis on somebody's back."""

    def describe(marked: MarkedPoints) -> str:
        try:
            estimate = back_landmarks_from_marks(marked, camera)
        except InputError:
            return ""
        return tr(
            "Neck at {neck} %, pelvis at {pelvis} % of the way from hips to shoulders."
        ).format(neck=round(100 * estimate.c7_height), pelvis=round(100 * estimate.iliac_spines))

    return MarkingTask(
        before=tr("Turn your back and let your arms hang."),
        steps=(
            tr("Mark the bone that stands out most at the base of the neck."),
            tr("Mark one of the two dimples above the buttocks."),
            tr("Mark the other dimple."),
        ),
        least=3,
        in_pairs=False,
        needs_person=True,
        describe=describe,
        outline=(
            tr("Your helper presses Take this picture."),
            tr("Mark the neck (1) and the two back dimples (2,\u00a03)."),
            tr("Save the marks."),
        ),
        guide=Guide.BACK,
    )


def orientation_from_marks(marked: MarkedPoints, camera: str) -> CameraOrientation:
    """Return the level that marks tell.

    Raises
    ------
    InputError
        When the marks are no upright lines.
    """
    width, height = marked.size_px
    ends = [(float(x), float(y)) for x, y in marked.marks_px]
    lines = [
        PlumbLine(top_px=top, bottom_px=bottom)
        for top, bottom in zip(ends[::2], ends[1::2], strict=True)
    ]
    with Store.open() as store:
        lens = lens_for(store, camera, width, height)
    return orientation_from_plumb_lines(
        lines, PinholeView(width_px=width, height_px=height, lens=lens)
    )


def back_landmarks_from_marks(marked: MarkedPoints, camera: str | None) -> BackLandmarks:
    """Return where neck and pelvis are marked.

    Raises
    ------
    InputError
        When the marks do not fit the back of the person in the picture.
    """
    if marked.points_px is None:
        raise InputError("Nobody is seen in the picture. Take another one.")
    with Store.open() as store:
        lens = lens_for(store, camera, *marked.size_px)
    marks, points = marked.marks_px, marked.points_px
    if lens is not None:
        marks, points = undistort_points(marks, lens), undistort_points(points, lens)
    places = {
        mark: (float(points[mark, 0]), float(points[mark, 1]))
        for mark in TRUNK_MARKS
        if np.isfinite(points[mark]).all()
    }
    c7, first, second = ((float(x), float(y)) for x, y in marks)
    return locate_back_landmarks(places, c7, (first, second))


def save_marked_level(marked: MarkedPoints, camera: str, today: dt.date) -> None:
    """Keep a camera's level.

    Raises
    ------
    InputError, DataError, MachineError
        When it cannot be, or cannot be kept.
    """
    estimate = orientation_from_marks(marked, camera)
    level = CameraLevel(
        camera_name=camera,
        roll_deg=estimate.roll_deg,
        half_deg=estimate.roll_half_deg,
        day=today,
        fixed=marked.fixed,
    )
    with Store.open() as store:
        store.save_level(level)


def save_marked_back(
    marked: MarkedPoints, camera: str | None, person_id: str, today: dt.date
) -> None:
    """Keep a person's marks; errors as in :func:`save_marked_level`."""
    estimate = back_landmarks_from_marks(marked, camera)
    with Store.open() as store:
        save_back_landmarks(store, person_id, estimate.c7_height, estimate.iliac_spines, today)
