"""All that is known beforehand for one measurement, gathered from the shelves."""

import datetime as dt
from dataclasses import dataclass

from calibration.body_shelf import BODIES, doubts
from calibration.correction_shelf import correction_for
from calibration.lens_shelf import lens_for
from calibration.level_shelf import LEVELS
from calibration.neutral import Neutral
from calibration.placement import PLACEMENTS
from measure.movements import Movement
from measure.setup import BodySetup, CameraSetup, Setup


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """A set-up, and what a person should hear about it before measuring."""

    setup: Setup
    remarks: tuple[str, ...]


def known_setup(
    *,
    camera_name: str | None,
    width_px: int,
    height_px: int,
    person_id: str | None,
    movement: Movement,
    today: dt.date,
    neutral: Neutral | None = None,
    already_mirrored: bool = False,
    quarter_turns: int = 0,
) -> Known:
    """Return what is known of camera, body and instrument, with remarks on what is not.

    A doubtful record of the body is used no longer, and that is said; what is unknown is
    unknown, and the interval widens.

    Parameters
    ----------
    width_px, height_px
        Size of the upright picture.
    neutral
        Today's stance, to check the record of the body against.
    """
    remarks = []
    lens = lens_for(camera_name, width_px, height_px)
    if lens is None:
        remarks.append("The lens is not calibrated; a usual field of view is assumed.")
    level = LEVELS.get(camera_name)
    roll = level.roll_deg if level is not None and level.holds_on(today) else None
    if level is not None and roll is None:
        remarks.append(f"The camera's level is from {level.day.isoformat()}; measure it again.")
    body, said = _body(person_id, today, neutral)
    return Known(
        setup=Setup(
            camera=CameraSetup(
                name=camera_name,
                lens=lens,
                roll_deg=roll,
                already_mirrored=already_mirrored,
                quarter_turns=quarter_turns,
            ),
            body=body,
            correction=correction_for(camera_name, movement),
        ),
        remarks=(*remarks, *said),
    )


def forget_person(person_id: str) -> None:
    """Remove what is kept here about a person: body and placements."""
    BODIES.remove(lambda record: record.person_id == person_id)
    PLACEMENTS.remove(lambda placement: placement.person_id == person_id)


def _body(
    person_id: str | None, today: dt.date, neutral: Neutral | None
) -> tuple[BodySetup, tuple[str, ...]]:
    record = BODIES.get(person_id) if person_id is not None else None
    if record is None:
        return BodySetup(), ()
    found = doubts(record, today, neutral)
    return (BodySetup(), found) if found else (record.body, ())
