"""Calibration state of the chosen camera and person, in words."""

import datetime as dt
from collections.abc import Callable
from dataclasses import dataclass

from calibration.body.record import body_record_warnings
from calibration.lens.fit import horizontal_field_of_view_deg
from calibration.lens.profiles import lenses_of, other_size_message
from gui.text.wording import message_text, movement_name, tr
from measure.domain.acquisition import LensProfile
from measure.domain.calibration_records import BodyRecord, CameraLevel, StoredCorrection
from measure.message import TranslatableMessage
from measure.storage.store import Store

#: A camera's turn that is known no better than this says nothing, degrees. [project]
USEFUL_LEVEL_DEG = 5.0


@dataclass(frozen=True, slots=True, kw_only=True)
class CalibrationState:
    """What there is.

    Attributes
    ----------
    lenses
        The camera's profiles of all picture sizes, the newest last.
    doubts
        Why the record of the body is not used until measured again.
    places
        How many places of the person are kept.
    corrections
        Those that are kept for the camera, switched on or off.
    """

    lenses: tuple[LensProfile, ...] = ()
    level: CameraLevel | None = None
    level_holds: bool = False
    body: BodyRecord | None = None
    doubts: tuple[TranslatableMessage, ...] = ()
    places: int = 0
    corrections: tuple[StoredCorrection, ...] = ()


#: Camera's name, person's identifier and the day.
CalibrationStateLoader = Callable[[str | None, str | None, dt.date], CalibrationState]


def load_calibration_state(
    camera: str | None, person_id: str | None, today: dt.date
) -> CalibrationState:
    """Read what is kept; it waits for the disk.

    Raises
    ------
    DataError, MachineError
        When a file cannot be read.
    """
    with Store.open() as store:
        level = None if camera is None else store.level(camera)
        body = None if person_id is None else store.body(person_id)
        return CalibrationState(
            lenses=() if camera is None else lenses_of(store, camera),
            level=level,
            level_holds=level is not None and level.holds_on(today),
            body=body,
            doubts=() if body is None else body_record_warnings(body, today),
            places=0 if person_id is None else len(store.placements(person_id)),
            corrections=tuple(
                stored for stored in store.corrections() if stored.camera_name == camera
            ),
        )


def empty_calibration_state(
    camera: str | None, person_id: str | None, today: dt.date
) -> CalibrationState:
    """Keep nothing, as a window without a data folder."""
    return CalibrationState()


def _not_yet(use: str, effort: str) -> str:
    """Return what something that is not known yet takes, and what it is good for."""
    return f"{effort} \u00b7 {use}"


def lens_words(state: CalibrationState, size_px: tuple[int, int] | None) -> str:
    """Return what is known of the lens, for pictures of a size; None where that is not known."""
    if not state.lenses:
        return _not_yet(tr("For an arm near the picture's edge"), tr("10 min"))
    unfit = None if size_px is None else other_size_message(state.lenses, size_px)
    if unfit is not None:
        return "\u25b6  " + message_text(unfit)
    lens = [lens for lens in state.lenses if size_px in (None, lens.size_px)][-1]
    return tr("\u2713  Calibrated at {size} pixels: {field} degrees wide.").format(
        size=f"{lens.width_px} x {lens.height_px}", field=round(horizontal_field_of_view_deg(lens))
    )


def level_words(state: CalibrationState) -> str:
    level = state.level
    if level is None:
        return _not_yet(tr("For a camera that stands crooked"), tr("2 min"))
    if not state.level_holds:
        return tr("▶  From {day}, no longer used. Measure it again.").format(
            day=level.day.isoformat()
        )
    turn = f"{turn_words(level.roll_deg, level.half_deg)} {longer_edge_words(level.half_deg)}"
    return tr("\u2713  {turn} Measured on {day}.").format(
        turn=turn.rstrip(), day=level.day.isoformat()
    )


def turn_words(roll_deg: float, half_deg: float) -> str:
    """Return how the camera is turned about its axis, and how surely that is known."""
    # Loads the statistics of progress, which the window's start does without.
    from measure.progress.wording import number_words

    if half_deg >= USEFUL_LEVEL_DEG:
        return tr("It shows the level to within {half}°; {least}° is needed.").format(
            half=number_words(half_deg, 0, tr), least=number_words(USEFUL_LEVEL_DEG, 0, tr)
        )
    numbers = {"angle": number_words(abs(roll_deg), 1, tr), "half": number_words(half_deg, 1, tr)}
    if roll_deg >= 0:
        return tr("Turned clockwise by {angle} degrees, give or take {half}.").format(**numbers)
    return tr("Turned anticlockwise by {angle} degrees, give or take {half}.").format(**numbers)


def longer_edge_words(half_deg: float) -> str:
    """Return what makes a level surer; nothing where it is known well enough."""
    if half_deg < USEFUL_LEVEL_DEG:
        return ""
    return tr("Mark a longer edge, such as a whole door frame.")


def lengths_words(state: CalibrationState) -> str:
    record = state.body
    if record is None or record.lengths_day is None:
        return _not_yet(tr("For an arm towards the camera"), tr("3 min, tape"))
    return _dated(record.lengths_day, state)


def marks_words(state: CalibrationState) -> str:
    record = state.body
    if record is None or record.marks_day is None:
        return _not_yet(tr("For the hand behind the back"), tr("3 min, helper"))
    return _dated(record.marks_day, state)


def correction_words(kept: StoredCorrection) -> str:
    return tr("Correct {movement} by the study {study} ({pairs} pairs)").format(
        movement=movement_name(kept.movement).lower(),
        study=kept.correction.study,
        pairs=kept.correction.pairs,
    )


def place_words(state: CalibrationState) -> str:
    if not state.places:
        return tr("Nothing is saved yet. The next readings save it.")
    return tr("\u2713  Places saved: {places}.").format(places=state.places)


def _dated(day: dt.date, state: CalibrationState) -> str:
    if state.doubts:
        return "\u25b6  " + " ".join(map(message_text, state.doubts))
    return tr("\u2713  Measured on {day}.").format(day=day.isoformat())
