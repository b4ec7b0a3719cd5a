"""Placement of a person before a camera, and its differences from the stored placement.

Drifting placement imitates progress: standing half a metre nearer, or turned by ten degrees,
changes readings by more than a month of recovery.
"""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from measure.domain.calibration_records import Placement
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.standing_pose import WIDTH_ERROR, Neutral, facing_turn_deg
from measure.message import TranslatableMessage
from measure.storage.store import Store

#: Change of distance above which a warning is given, share of the stored distance. [project]
SCALE_SHARE = 0.10
#: Turn of the body above which a warning is given, degrees. [project]
TURN_DEG = 5.0
#: Change of level above which a warning is given, degrees. [project]
LEVEL_DEG = 5.0


class PlacementDrift(StrEnum):
    """Kind of difference between two placements."""

    NEARER = "nearer"
    FARTHER = "farther"
    TURNED = "turned"
    NOT_LEVEL = "not-level"
    OTHER_CAMERA = "other-camera"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacementChange:
    """One difference from the stored placement.

    Attributes
    ----------
    amount
        Share for the distance, degrees for turn and level, 0 for another camera.
    message
        What differs and what to do.
    """

    drift: PlacementDrift
    amount: float
    message: TranslatableMessage

    @property
    def sentence(self) -> str:
        """The message in English."""
        return str(self.message)


def placement_of(
    neutral: Neutral,
    *,
    person_id: str,
    movement: Movement,
    side: Side,
    camera_name: str | None,
    taken: dt.date,
    shoulder_width: float | None = None,
    roll_deg: float | None = None,
) -> Placement:
    """Return today's placement from the session's standing neutral."""
    return Placement(
        person_id=person_id,
        movement=movement,
        side=side,
        camera_name=camera_name,
        width_px=neutral.width_px,
        height_px=neutral.height_px,
        trunk_px=neutral.trunk_px,
        width_over_trunk=neutral.width_over_trunk,
        lean_deg=neutral.lean_deg,
        shoulder_width=shoulder_width,
        roll_deg=roll_deg,
        taken=taken,
    )


def placement_changes(kept: Placement, today: Placement) -> tuple[PlacementChange, ...]:
    """Return the differences from the stored placement that exceed the limits.

    A camera without a name, as of a clip, does not count as another one. The turn comes from the
    shoulders' apparent width, which near a front or back view hardly changes: there a change must
    also exceed the error of the width.

    Raises
    ------
    ValueError
        When the two are not of the same person, movement and side.
    """
    if _placement_key(kept) != _placement_key(today):
        raise ValueError("placements of different people or movements cannot be compared")
    if not _same_picture(kept, today):
        return (
            PlacementChange(
                drift=PlacementDrift.OTHER_CAMERA,
                amount=0.0,
                message=TranslatableMessage(
                    "The camera or the picture size is not the same as on {day}: the readings "
                    "start a new series.",
                    {"day": kept.taken.isoformat()},
                ),
            ),
        )
    changes = (_scale(kept, today), _turn(kept, today), _level(kept, today))
    return tuple(change for change in changes if change is not None)


def turn_resolution_deg(placement: Placement) -> float:
    """Return the smallest turn that the shoulders' width can show at this placement."""
    width, whole = placement.width_over_trunk, placement.shoulder_width
    middle = facing_turn_deg(width, whole)
    return max(abs(facing_turn_deg(width + e, whole) - middle) for e in (-WIDTH_ERROR, WIDTH_ERROR))


def _placement_key(placement: Placement) -> tuple[str, Movement, Side]:
    return placement.person_id, placement.movement, placement.side


def _same_picture(kept: Placement, today: Placement) -> bool:
    names = {kept.camera_name, today.camera_name} - {None}
    sizes = {(placement.width_px, placement.height_px) for placement in (kept, today)}
    return len(names) < 2 and len(sizes) == 1


def _scale(kept: Placement, today: Placement) -> PlacementChange | None:
    share = today.trunk_px / kept.trunk_px
    if 1 / (1 + SCALE_SHARE) <= share <= 1 + SCALE_SHARE:
        return None
    # A trunk twice as long in the picture is half as far away.
    amount = abs(1 / share - 1)
    values = {"share": f"{100 * amount:.0f}", "day": kept.taken.isoformat()}
    if share > 1:
        return PlacementChange(
            drift=PlacementDrift.NEARER,
            amount=amount,
            message=TranslatableMessage(
                "You are about {share} % nearer than on {day}. Step back a little.", values
            ),
        )
    return PlacementChange(
        drift=PlacementDrift.FARTHER,
        amount=amount,
        message=TranslatableMessage(
            "You are about {share} % farther away than on {day}. Come a little closer.", values
        ),
    )


def _turn(kept: Placement, today: Placement) -> PlacementChange | None:
    before = facing_turn_deg(kept.width_over_trunk, kept.shoulder_width)
    amount = abs(facing_turn_deg(today.width_over_trunk, kept.shoulder_width) - before)
    seen = abs(today.width_over_trunk - kept.width_over_trunk) > WIDTH_ERROR
    if amount <= TURN_DEG or not seen:
        return None
    return PlacementChange(
        drift=PlacementDrift.TURNED,
        amount=amount,
        message=TranslatableMessage(
            "You are turned about {angle} degrees compared with {day}. Stand as the drawing "
            "shows, with your feet on their marks.",
            {"angle": f"{amount:.0f}", "day": kept.taken.isoformat()},
        ),
    )


def _level(kept: Placement, today: Placement) -> PlacementChange | None:
    values = {"day": kept.taken.isoformat()}
    if kept.roll_deg is not None and today.roll_deg is not None:
        amount = abs(today.roll_deg - kept.roll_deg)
        message = TranslatableMessage(
            "The camera leans about {angle} degrees compared with {day}. Set it level.",
            {**values, "angle": f"{amount:.0f}"},
        )
    else:
        amount = abs(today.lean_deg - kept.lean_deg)
        message = TranslatableMessage(
            "The camera or your body leans about {angle} degrees compared with {day}. Set the "
            "camera level and stand upright.",
            {**values, "angle": f"{amount:.0f}"},
        )
    if amount <= LEVEL_DEG:
        return None
    return PlacementChange(drift=PlacementDrift.NOT_LEVEL, amount=amount, message=message)


def stored_placement(store: Store, today: Placement) -> Placement | None:
    """Return the place to compare today's with: before the same camera, else the newest one.

    None where nothing is kept of this person, movement and side.
    """
    kept = [
        placement
        for placement in store.placements(today.person_id)
        if _placement_key(placement) == _placement_key(today)
    ]
    alike = [placement for placement in kept if _same_picture(placement, today)]
    chosen = alike or kept
    return chosen[-1] if chosen else None
