"""Body lengths from poses, tape and marks, and when they are too old."""

import dataclasses
import datetime as dt

import numpy as np
import pytest

from calibration.body.landmarks_by_hand import locate_back_landmarks
from calibration.body.lengths import BodyLengths, lengths_from_poses, lengths_from_tape
from calibration.body.record import (
    body_record_warnings,
    save_back_landmarks,
    save_body_lengths,
)
from measure.domain.acquisition import BodySetup
from measure.domain.calibration_records import BodyRecord, BodySource, check_body
from measure.domain.landmarks import Landmark
from measure.domain.standing_pose import Neutral
from measure.domain.tracks import Track
from measure.errors import InputError
from measure.kinematics.neutral_pose import median_points, neutral_of
from measure.storage.store import Store
from tests.calibration.conftest import WHO
from tests.support.virtual_room import Room, standing

#: The virtual person's, over the trunk of 0.289 statures.
UPPER_ARM, FOREARM, WIDTH = 0.17 / 0.289, 0.15 / 0.289, 0.196 / 0.289


def lengths_of(neutral: Track, raised: Track | None = None) -> BodyLengths:
    lengths = lengths_from_poses(neutral, raised)
    assert isinstance(lengths, BodyLengths), lengths
    return lengths


def said(neutral: Track, raised: Track | None = None) -> str:
    lengths = lengths_from_poses(neutral, raised)
    assert isinstance(lengths, str)
    return lengths


def changed(track: Track, marks: list[Landmark], by: tuple[float, float]) -> Track:
    points = track.points_px.copy()
    points[:, marks] = points[:, marks] + by
    return Track(
        time_s=track.time_s,
        points_px=points,
        visibility=track.visibility,
        presence=track.presence,
        state=track.state,
        people=track.people,
        width_px=track.width_px,
        height_px=track.height_px,
    )


def test_neutral_and_t_pose_give_the_lengths() -> None:
    room = Room(height_m=1.2)
    lengths = lengths_of(
        standing(room, error_px=1.0), standing(room, arms_deg=85.0, distance_m=2.9, error_px=1.0)
    )
    assert lengths.body.upper_arm == pytest.approx(UPPER_ARM, rel=0.03)
    assert lengths.body.forearm == pytest.approx(FOREARM, rel=0.03)
    assert lengths.body.shoulder_width == pytest.approx(WIDTH, rel=0.03)
    assert lengths.body.c7_height is None
    assert lengths.notes == ()


def test_the_longer_pose_counts_as_pictures_only_shorten() -> None:
    room = Room(height_m=1.2)
    raised = standing(room, arms_deg=70.0)
    # Elbows pulled towards the shoulders by a tenth: an arm pointing at the lens.
    both = [Landmark.LEFT_ELBOW, Landmark.RIGHT_ELBOW]
    short = changed(standing(room), both, (0.0, -0.1 * 0.17 * 1.72 * room.focal / 3.0))
    assert lengths_of(short, raised).body.upper_arm == pytest.approx(UPPER_ARM, rel=0.03)
    alone = lengths_of(short)
    assert alone.body.upper_arm == pytest.approx(0.9 * UPPER_ARM, rel=0.03)
    assert alone.share_error > lengths_of(short, raised).share_error
    assert "hanging arms only" in alone.notes[0]


def test_arms_that_were_not_raised_are_noted() -> None:
    room = Room(height_m=1.2)
    assert "not seen out to the side" in lengths_of(standing(room), standing(room)).notes[0]


@pytest.mark.parametrize(
    ("neutral", "part"),
    [
        (standing(Room(), turn_deg=90.0), "is not facing the camera"),
        (standing(Room(), turn_deg=180.0), "is not facing the camera"),
        (standing(Room(), distance_m=25.0), "Step closer"),
        (
            changed(standing(Room()), [Landmark.LEFT_ELBOW], (0.0, 60.0)),
            "Left and right upper arm seem to differ",
        ),
        (
            changed(
                standing(Room()),
                [
                    Landmark.LEFT_ELBOW,
                    Landmark.RIGHT_ELBOW,
                    Landmark.LEFT_WRIST,
                    Landmark.RIGHT_WRIST,
                ],
                (0.0, 200.0),
            ),
            "not possible",
        ),
    ],
)
def test_poses_that_give_no_lengths(neutral: Track, part: str) -> None:
    assert part in said(neutral)


def test_arms_that_were_not_seen_leave_their_lengths_unknown() -> None:
    lost = changed(standing(Room()), [Landmark.LEFT_WRIST], (np.nan, 0.0))
    lengths = lengths_of(lost)
    assert lengths.body.forearm is None
    assert lengths.body.upper_arm is not None
    assert "The forearms were not both seen." in lengths.notes


def test_a_tape_measure() -> None:
    lengths = lengths_from_tape(trunk_cm=50, upper_arm_cm=30, shoulder_width_cm=36)
    assert lengths.body == BodySetup(upper_arm=0.6, shoulder_width=0.72)


@pytest.mark.parametrize(
    ("typed", "part"),
    [
        ({"trunk_cm": 500.0, "upper_arm_cm": 30.0}, "A trunk of 500 cm"),
        ({"trunk_cm": float("nan"), "upper_arm_cm": 30.0}, "is not possible"),
        ({"trunk_cm": 50.0, "upper_arm_cm": 300.0}, "between 20 and 42 cm"),
        ({"trunk_cm": 50.0, "forearm_cm": float("nan")}, "forearm must be"),
        ({"trunk_cm": 50.0, "forearm_cm": -25.0}, "forearm must be"),
        ({"trunk_cm": 50.0}, "at least one length"),
    ],
)
def test_lengths_that_cannot_be(typed: dict[str, float], part: str) -> None:
    with pytest.raises(InputError, match=part):
        lengths_from_tape(**typed)


#: Seen from the back: the left shoulder on the left; trunk 200 px, hips at y = 400.
BACK = {
    Landmark.LEFT_SHOULDER: (250.0, 200.0),
    Landmark.RIGHT_SHOULDER: (390.0, 200.0),
    Landmark.LEFT_HIP: (270.0, 400.0),
    Landmark.RIGHT_HIP: (370.0, 400.0),
}


def test_marks_are_heights_along_the_trunk() -> None:
    marks = locate_back_landmarks(BACK, (322.0, 160.0), ((300.0, 370.0), (340.0, 366.0)))
    assert marks.c7_height == pytest.approx(1.2)
    assert marks.iliac_spines == pytest.approx(0.16)


def test_marks_of_a_leaning_person_are_along_the_trunk_too() -> None:
    turn = np.radians(12)
    spin = np.array([[np.cos(turn), -np.sin(turn)], [np.sin(turn), np.cos(turn)]])

    def leaned(point: tuple[float, float]) -> tuple[float, float]:
        x, y = spin @ np.array(point)
        return float(x), float(y)

    places = {mark: leaned(point) for mark, point in BACK.items()}
    marks = locate_back_landmarks(
        places, leaned((320.0, 160.0)), (leaned((300.0, 368.0)), leaned((340.0, 368.0)))
    )
    assert marks.c7_height == pytest.approx(1.2)
    assert marks.iliac_spines == pytest.approx(0.16)


@pytest.mark.parametrize(
    ("places", "c7", "spine", "part"),
    [
        ({}, (320, 160), (320, 368), "not found in the picture"),
        (
            {**BACK, Landmark.LEFT_SHOULDER: (500.0, 200.0)},
            (320, 160),
            (320, 368),
            "does not show the back",
        ),
        (BACK, (320, 250), (320, 368), "mark of C7 lies at 0.75"),
        (BACK, (400, 160), (320, 368), "beside the spine"),
        (BACK, (320, 160), (320, 250), "dimples of the pelvis lies at 0.75"),
        (BACK, (float("nan"), 160), (320, 368), "not a number"),
    ],
)
def test_marks_that_cannot_be(
    places: dict[Landmark, tuple[float, float]],
    c7: tuple[float, float],
    spine: tuple[float, float],
    part: str,
) -> None:
    with pytest.raises(InputError, match=part):
        locate_back_landmarks(places, c7, (spine, spine))


def test_lengths_and_marks_are_kept_apart_from_each_other(store: Store) -> None:
    day, later = dt.date(2026, 3, 1), dt.date(2026, 11, 25)
    save_back_landmarks(store, WHO, 1.2, 0.15, day)
    save_body_lengths(store, WHO, BodySetup(upper_arm=0.6), BodySource.TAPE, later)
    record = store.body(WHO)
    assert record is not None
    assert record.body == BodySetup(upper_arm=0.6, c7_height=1.2, iliac_spines=0.15)
    assert (record.marks_day, record.lengths_day) == (day, later)
    save_back_landmarks(store, WHO, 1.25, 0.16, later)
    record = store.body(WHO)
    assert record is not None
    assert record.body.upper_arm == 0.6
    assert record.marks_day == later


def test_old_lengths_are_never_used_silently() -> None:
    record = BodyRecord(
        person_id=WHO,
        body=BodySetup(shoulder_width=WIDTH, c7_height=1.2),
        lengths_from=BodySource.POSES,
        lengths_day=dt.date(2026, 1, 1),
        marks_day=dt.date(2026, 11, 1),
    )
    assert body_record_warnings(record, dt.date(2026, 6, 30)) == ()
    (old,) = body_record_warnings(record, dt.date(2026, 7, 1))
    assert "body lengths are from 2026-01-01" in str(old)


@pytest.mark.parametrize(("turn", "width", "part"), [(0.0, 0.55, "wider"), (0.0, 0.80, "narrower")])
def test_shoulders_that_do_not_fit_the_record_are_told(
    turn: float, width: float, part: str
) -> None:
    day = dt.date(2026, 11, 25)
    record = BodyRecord(
        person_id=WHO,
        body=BodySetup(shoulder_width=width),
        lengths_from=BodySource.POSES,
        lengths_day=day,
    )
    stance = neutral_of(standing(Room(), turn_deg=turn))
    assert isinstance(stance, Neutral)
    (doubt,) = body_record_warnings(record, day, stance)
    assert part in str(doubt)
    side_on = neutral_of(standing(Room(), turn_deg=90.0))
    assert isinstance(side_on, Neutral)
    assert body_record_warnings(record, day, side_on) == ()
    typed = dataclasses.replace(record, lengths_from=BodySource.TAPE)
    assert body_record_warnings(typed, day, stance) == ()


@pytest.mark.parametrize(
    "record",
    [
        BodyRecord(person_id="x", body=BodySetup()),
        BodyRecord(person_id=WHO, body=BodySetup(upper_arm=0.6)),
        BodyRecord(person_id=WHO, body=BodySetup(c7_height=1.2)),
        BodyRecord(person_id=WHO, body=BodySetup(c7_height=0.2), marks_day=dt.date(2026, 1, 1)),
        BodyRecord(
            person_id=WHO,
            body=BodySetup(forearm=float("nan")),
            lengths_from=BodySource.TAPE,
            lengths_day=dt.date(2026, 1, 1),
        ),
    ],
)
def test_records_that_cannot_be(record: BodyRecord) -> None:
    with pytest.raises(InputError):
        check_body(record)


def test_medians_feed_the_marks() -> None:
    places = median_points(standing(Room(), turn_deg=180.0))
    hips = (places[Landmark.LEFT_HIP][0] + places[Landmark.RIGHT_HIP][0]) / 2
    shoulders, low = places[Landmark.LEFT_SHOULDER][1], places[Landmark.LEFT_HIP][1]
    trunk = low - shoulders
    marks = locate_back_landmarks(
        places, (hips, shoulders - 0.2 * trunk), ((hips, low - 0.1 * trunk),) * 2
    )
    assert marks.c7_height == pytest.approx(1.2, abs=0.01)
