"""What is known of each person's body, where it came from, and when it is too old to trust."""

import dataclasses
import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from calibration.message import TranslatableMessage
from calibration.repository.shelf import JsonRepository
from measure.domain.acquisition import BodySetup, check_lengths
from measure.domain.records import check_id
from measure.errors import InputError
from measure.kinematics.neutral_pose import FACING_WIDTH, Neutral

#: Proportions of an adult do not change, but clothes, model and measuring do. Ours.
STALE_DAYS = 180
#: Today's shoulder width may differ by this share before the record is doubted. Ours.
MAX_WIDTH_CHANGE = 0.10


class BodySource(StrEnum):
    """Where a length came from."""

    POSES = "poses"
    TAPE = "tape"
    MARKS = "marks"


@dataclass(frozen=True, slots=True, kw_only=True)
class BodyRecord:
    """A person's body as far as it is known.

    Attributes
    ----------
    person_id
        Identifier of the person in the store.
    lengths_from, lengths_day
        Where arm lengths and shoulder width came from, and when; None without any.
    marks_day
        When C7 and pelvis were marked; None when they were not.
    """

    person_id: str
    body: BodySetup
    lengths_from: BodySource | None = None
    lengths_day: dt.date | None = None
    marks_day: dt.date | None = None


def check_body(record: BodyRecord) -> None:
    """Raise InputError unless every length can be and has a day."""
    check_id(record.person_id)
    check_lengths(record.body)
    lengths = (record.body.upper_arm, record.body.forearm, record.body.shoulder_width)
    if any(each is not None for each in lengths) and None in (
        record.lengths_day,
        record.lengths_from,
    ):
        raise InputError("the lengths have no day or source")
    if record.body.c7_height is not None and record.marks_day is None:
        raise InputError("the marks have no day")


BODIES: JsonRepository[BodyRecord] = JsonRepository(
    "bodies", BodyRecord, key=lambda record: record.person_id, check=check_body, most=2000
)


def save_body_lengths(
    person_id: str, body: BodySetup, source: BodySource, day: dt.date
) -> BodyRecord:
    """Keep new lengths of a person; the marks stay as they were."""
    before = BODIES.get(person_id) or BodyRecord(person_id=person_id, body=BodySetup())
    record = dataclasses.replace(
        before,
        body=dataclasses.replace(
            body, c7_height=before.body.c7_height, iliac_spines=before.body.iliac_spines
        ),
        lengths_from=source,
        lengths_day=day,
    )
    BODIES.put(record)
    return record


def save_back_landmarks(
    person_id: str, c7_height: float, iliac_spines: float, day: dt.date
) -> BodyRecord:
    """Keep new marks of a person; the lengths stay as they were."""
    before = BODIES.get(person_id) or BodyRecord(person_id=person_id, body=BodySetup())
    record = dataclasses.replace(
        before,
        body=dataclasses.replace(before.body, c7_height=c7_height, iliac_spines=iliac_spines),
        marks_day=day,
    )
    BODIES.put(record)
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
    found = []
    if record.lengths_day is not None and (today - record.lengths_day).days > STALE_DAYS:
        found.append(
            TranslatableMessage(
                "The body lengths are from {day}, more than {most} days ago. Measure them again.",
                {"day": record.lengths_day.isoformat(), "most": str(STALE_DAYS)},
            )
        )
    if record.marks_day is not None and (today - record.marks_day).days > STALE_DAYS:
        found.append(
            TranslatableMessage(
                "The marks are from {day}, more than {most} days ago. Measure them again.",
                {"day": record.marks_day.isoformat(), "most": str(STALE_DAYS)},
            )
        )
    # A tape's shoulders are those of the bones; the network sees its own, a tenth narrower.
    width = network_shoulder_width(record)
    if neutral is not None and width is not None:
        today_width = abs(neutral.width_over_trunk)
        facing = today_width >= FACING_WIDTH
        if facing and today_width > (1 + MAX_WIDTH_CHANGE) * width:
            found.append(
                TranslatableMessage(
                    "The shoulders look wider against the trunk than when they were measured. Is "
                    "this the right person, facing the camera?"
                )
            )
        if facing and today_width < (1 - MAX_WIDTH_CHANGE) * width:
            found.append(
                TranslatableMessage(
                    "The shoulders look narrower against the trunk than when they were measured. "
                    "Is this the right person, facing the camera?"
                )
            )
    return tuple(found)


def network_shoulder_width(record: BodyRecord) -> float | None:
    """Return the shoulders' width as the network sees it; a tape's is that of the bones."""
    return record.body.shoulder_width if record.lengths_from is BodySource.POSES else None
