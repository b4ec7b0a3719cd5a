"""What is marked in pictures, what it tells, and how it is kept. No Qt widgets."""

import datetime as dt

import numpy as np

from calibration.body.landmarks_by_hand import BackMarks, back_marks
from calibration.placement.level import Level, Line, level_from_lines
from calibration.placement.viewpoint import Sight
from calibration.repository.bodies import keep_marks
from calibration.repository.lenses import lens_for
from calibration.repository.levels import LEVELS, CameraLevel
from gui.pages.camera_and_body.marking import Marked, MarkTask
from gui.session.known_state import turn_words
from gui.text.words import tr
from measure.errors import InputError
from measure.kinematics.camera_geometry import ideal_points
from measure.kinematics.neutral_pose import TRUNK_MARKS


def level_task(camera: str) -> MarkTask:
    """Return the marking of one or two upright lines."""

    def told(marked: Marked) -> str:
        try:
            found = level_of(marked, camera)
        except InputError:
            return ""
        return turn_words(found.roll_deg, found.roll_half_deg)

    return MarkTask(
        before=tr("Let the camera see a door frame or a plumb line, and take a picture."),
        steps=(
            tr("Mark the upper end of something upright."),
            tr("Mark its lower end, as far away as can be."),
            tr("Keep it, or mark the upper end of a second line, far beside the first."),
            tr("Mark the lower end of the second line."),
        ),
        least=2,
        in_pairs=True,
        needs_person=False,
        told=told,
    )


def back_task(camera: str | None) -> MarkTask:
    """Return the marking of C7 and the pelvis on somebody's back."""

    def told(marked: Marked) -> str:
        try:
            found = back_of(marked, camera)
        except InputError:
            return ""
        return tr(
            "Neck at {neck} %, pelvis at {pelvis} % of the way from hips to shoulders."
        ).format(neck=round(100 * found.c7_height), pelvis=round(100 * found.iliac_spines))

    return MarkTask(
        before=tr("Turn your back to the camera, arms hanging. A helper takes a picture."),
        steps=(
            tr("Mark the bone that stands out most at the base of the neck."),
            tr("Mark one of the two dimples above the buttocks."),
            tr("Mark the other dimple."),
        ),
        least=3,
        in_pairs=False,
        needs_person=True,
        told=told,
    )


def level_of(marked: Marked, camera: str) -> Level:
    """Return the level that marks tell.

    Raises
    ------
    InputError
        When the marks are no upright lines.
    """
    width, height = marked.size_px
    ends = [(float(x), float(y)) for x, y in marked.marks_px]
    lines = [
        Line(top_px=top, bottom_px=bottom)
        for top, bottom in zip(ends[::2], ends[1::2], strict=True)
    ]
    lens = lens_for(camera, width, height)
    return level_from_lines(lines, Sight(width_px=width, height_px=height, lens=lens))


def back_of(marked: Marked, camera: str | None) -> BackMarks:
    """Return where neck and pelvis are marked.

    Raises
    ------
    InputError
        When the marks do not fit the back of the person in the picture.
    """
    if marked.points_px is None:
        raise InputError("Nobody is seen in the picture. Take another one.")
    lens = lens_for(camera, *marked.size_px)
    marks, points = marked.marks_px, marked.points_px
    if lens is not None:
        marks, points = ideal_points(marks, lens), ideal_points(points, lens)
    places = {
        mark: (float(points[mark, 0]), float(points[mark, 1]))
        for mark in TRUNK_MARKS
        if np.isfinite(points[mark]).all()
    }
    c7, first, second = ((float(x), float(y)) for x, y in marks)
    return back_marks(places, c7, (first, second))


def keep_level(marked: Marked, camera: str, today: dt.date) -> None:
    """Keep a camera's level.

    Raises
    ------
    InputError, DataError, MachineError
        When it cannot be, or cannot be kept.
    """
    found = level_of(marked, camera)
    LEVELS.put(
        CameraLevel(
            camera_name=camera,
            roll_deg=found.roll_deg,
            half_deg=found.roll_half_deg,
            day=today,
            fixed=marked.fixed,
        )
    )


def keep_back(marked: Marked, camera: str | None, person_id: str, today: dt.date) -> None:
    """Keep a person's marks; errors as in :func:`keep_level`."""
    found = back_of(marked, camera)
    keep_marks(person_id, found.c7_height, found.iliac_spines, today)
