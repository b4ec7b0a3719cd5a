"""Body records in the store: saving lengths and marks, and when a record is too old to trust."""

import dataclasses
import datetime as dt

from measure.domain.acquisition import BodySetup
from measure.domain.calibration_records import BodyRecord, BodySource
from measure.domain.standing_pose import Neutral
from measure.kinematics.neutral_pose import FACING_WIDTH
from measure.message import TranslatableMessage
from measure.storage.store import Store

#: Days after which a body record is no longer used; an adult's proportions stay, but clothes,
#: model and way of measuring change. [project]
STALE_DAYS = 180
#: Share by which today's shoulder width may differ before the record is doubted. [project]
MAX_WIDTH_CHANGE = 0.10


def save_body_lengths(
    store: Store, person_id: str, body: BodySetup, source: BodySource, day: dt.date
) -> BodyRecord:
    """Keep new lengths of a person; the marks stay as they were."""
    before = store.body(person_id) or BodyRecord(person_id=person_id, body=BodySetup())
    record = dataclasses.replace(
        before,
        body=dataclasses.replace(
            body, c7_height=before.body.c7_height, iliac_spines=before.body.iliac_spines
        ),
        lengths_from=source,
        lengths_day=day,
    )
    store.save_body(record)
    return record


def save_back_landmarks(
    store: Store, person_id: str, c7_height: float, iliac_spines: float, day: dt.date
) -> BodyRecord:
    """Keep new marks of a person; the lengths stay as they were."""
    before = store.body(person_id) or BodyRecord(person_id=person_id, body=BodySetup())
    record = dataclasses.replace(
        before,
        body=dataclasses.replace(before.body, c7_height=c7_height, iliac_spines=iliac_spines),
        marks_day=day,
    )
    store.save_body(record)
    return record


def body_record_warnings(
    record: BodyRecord, today: dt.date, neutral: Neutral | None = None
) -> tuple[TranslatableMessage, ...]:
    """Return why a record should not be trusted without a look, in words; nothing if it may.

    Parameters
    ----------
    neutral
        Today's stance, where one was seen facing the camera or from the back.
    """
    doubts = []
    if record.lengths_day is not None and (today - record.lengths_day).days > STALE_DAYS:
        doubts.append(
            TranslatableMessage(
                "The body lengths are from {day}, more than {most} days ago. Measure them again.",
                {"day": record.lengths_day.isoformat(), "most": str(STALE_DAYS)},
            )
        )
    if record.marks_day is not None and (today - record.marks_day).days > STALE_DAYS:
        doubts.append(
            TranslatableMessage(
                "The marks are from {day}, more than {most} days ago. Measure them again.",
                {"day": record.marks_day.isoformat(), "most": str(STALE_DAYS)},
            )
        )
    width = record.network_shoulder_width
    if neutral is not None and width is not None:
        today_width = abs(neutral.width_over_trunk)
        facing = today_width >= FACING_WIDTH
        if facing and today_width > (1 + MAX_WIDTH_CHANGE) * width:
            doubts.append(
                TranslatableMessage(
                    "The shoulders look wider against the trunk than when they were measured. Is "
                    "this the right person, facing the camera?"
                )
            )
        if facing and today_width < (1 - MAX_WIDTH_CHANGE) * width:
            doubts.append(
                TranslatableMessage(
                    "The shoulders look narrower against the trunk than when they were measured. "
                    "Is this the right person, facing the camera?"
                )
            )
    return tuple(doubts)
