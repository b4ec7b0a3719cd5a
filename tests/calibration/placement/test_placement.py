"""Kept placements: what is warned about, what is not, and what cannot be seen."""

import dataclasses
import datetime as dt

import pytest

from calibration.placement.placement import (
    PlacementDrift,
    placement_changes,
    placement_of,
    stored_placement,
    turn_resolution_deg,
)
from measure.domain.calibration_records import Placement
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.standing_pose import Neutral
from measure.errors import InputError
from measure.kinematics.neutral_pose import neutral_of
from measure.storage.store import Store
from tests.calibration.conftest import WHO
from tests.support.virtual_room import Room, standing

#: Of the virtual person.
SHOULDERS = 0.196 / 0.289


def placed(
    room: Room | None = None, *, distance_m: float = 3.0, turn_deg: float = 90.0, **known: object
) -> Placement:
    neutral = neutral_of(
        standing(room or Room(), distance_m=distance_m, turn_deg=turn_deg, error_px=0.5)
    )
    assert isinstance(neutral, Neutral)
    kept = placement_of(
        neutral,
        person_id=WHO,
        movement=Movement.FLEXION,
        side=Side.LEFT,
        camera_name="garden camera",
        taken=dt.date(2026, 11, 25),
        shoulder_width=SHOULDERS,
    )
    return dataclasses.replace(kept, **known)  # type: ignore[arg-type]


def drifts(kept: Placement, today: Placement) -> list[PlacementDrift]:
    return [each.drift for each in placement_changes(kept, today)]


def test_the_same_place_is_not_warned_about() -> None:
    assert placement_changes(placed(), placed(distance_m=3.15, turn_deg=93.0)) == ()


@pytest.mark.parametrize(
    ("today", "drift", "part"),
    [
        (
            placed(distance_m=2.5),
            PlacementDrift.NEARER,
            "17 % nearer than on 2026-11-25. Step back",
        ),
        (
            placed(distance_m=3.6),
            PlacementDrift.FARTHER,
            "20 % farther away than on 2026-11-25. Come",
        ),
        (placed(turn_deg=101.0), PlacementDrift.TURNED, "turned about 1"),
        (placed(turn_deg=80.0), PlacementDrift.TURNED, "turned about 1"),
        (
            placed(Room(roll_deg=7.0)),
            PlacementDrift.NOT_LEVEL,
            "The camera or your body leans about 7",
        ),
        (placed(camera_name="another"), PlacementDrift.OTHER_CAMERA, "new series"),
        (placed(width_px=640, height_px=360), PlacementDrift.OTHER_CAMERA, "new series"),
    ],
)
def test_what_is_warned_about(today: Placement, drift: PlacementDrift, part: str) -> None:
    (found,) = placement_changes(placed(), today)
    assert found.drift is drift
    assert part in found.sentence


def test_several_differences_at_once() -> None:
    today = placed(Room(roll_deg=-8.0), distance_m=2.4, turn_deg=75.0)
    assert drifts(placed(), today) == [
        PlacementDrift.NEARER,
        PlacementDrift.TURNED,
        PlacementDrift.NOT_LEVEL,
    ]


def test_a_measured_roll_counts_more_than_the_persons_lean() -> None:
    leaning = placed(Room(roll_deg=7.0), roll_deg=1.0)
    assert placement_changes(placed(roll_deg=0.0), leaning) == ()
    assert drifts(placed(roll_deg=0.0), placed(roll_deg=6.0)) == [PlacementDrift.NOT_LEVEL]


@pytest.mark.parametrize(("turn", "told"), [(90.0, 3.0), (45.0, 5.0), (0.0, 20.0)])
def test_how_small_a_turn_can_be_seen(turn: float, told: float) -> None:
    assert turn_resolution_deg(placed(turn_deg=turn)) < told


def test_from_the_front_small_turns_are_not_made_up() -> None:
    assert placement_changes(placed(turn_deg=0.0), placed(turn_deg=8.0)) == ()
    assert drifts(placed(turn_deg=0.0), placed(turn_deg=30.0)) == [PlacementDrift.TURNED]
    assert turn_resolution_deg(placed(turn_deg=0.0)) > 10


def test_placements_of_different_things_are_not_compared() -> None:
    with pytest.raises(ValueError, match="cannot be compared"):
        placement_changes(placed(), placed(side=Side.RIGHT))


def test_kept_and_found_again(store: Store) -> None:
    assert stored_placement(store, placed()) is None
    store.save_placement(placed())
    newer = placed(distance_m=2.8)
    store.save_placement(newer)
    assert stored_placement(store, placed()) == newer
    assert stored_placement(store, placed(side=Side.RIGHT)) is None
    assert len(store.placements(WHO)) == 1


def test_each_camera_has_a_place_of_its_own(store: Store) -> None:
    here, there = placed(), placed(camera_name="desk camera", distance_m=2.0)
    store.save_placement(here)
    assert stored_placement(store, there) == here
    assert drifts(here, there) == [PlacementDrift.OTHER_CAMERA]
    store.save_placement(there)
    assert stored_placement(store, there) == there
    assert stored_placement(store, here) == here
    of_a_clip = placed(camera_name=None)
    assert stored_placement(store, of_a_clip) == there
    assert drifts(here, of_a_clip) == []


@pytest.mark.parametrize(
    ("known", "part"),
    [
        ({"person_id": "Bramble"}, "not an identifier"),
        ({"trunk_px": 0.0}, "no such size"),
        ({"trunk_px": float("nan")}, "missing"),
        ({"roll_deg": float("inf")}, "missing"),
        ({"width_px": 0}, "no such width"),
        ({"width_over_trunk": 9.0}, "no such width"),
        ({"shoulder_width": 0.0}, "no such width"),
        ({"camera_name": "x" * 201}, "too long"),
    ],
)
def test_placements_that_cannot_be(store: Store, known: dict[str, object], part: str) -> None:
    with pytest.raises(InputError, match=part):
        store.save_placement(placed(**known))  # type: ignore[arg-type]
    assert store.placements(WHO) == []
