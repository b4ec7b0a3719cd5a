"""The calibrated set-up of one person: lens, level, body and corrections from the store."""

import datetime as dt
from dataclasses import dataclass, replace

from calibration.agreement.stored_corrections import corrections_for, studies_for
from calibration.agreement.trial_scatter import trial_sds_of
from calibration.body.record import body_record_warnings
from calibration.lens.profiles import lenses_of, newest_lens, other_size_message
from measure.domain.acquisition import BodySetup, CameraSetup, KnownSetup, LensProfile
from measure.domain.calibration_records import BodyRecord
from measure.domain.standing_pose import Neutral
from measure.message import TranslatableMessage
from measure.storage.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class CalibratedSetup:
    """A set-up, and what a person should hear about it before measuring.

    Attributes
    ----------
    messages
        What is not known, and why.
    stale
        Those of the messages that are about something kept which is not used any longer.
    lenses
        The camera's lens profiles of all picture sizes, the newest last.
    """

    setup: KnownSetup
    messages: tuple[TranslatableMessage, ...]
    stale: tuple[TranslatableMessage, ...] = ()
    lenses: tuple[LensProfile, ...] = ()


def load_calibrated_setup(
    store: Store,
    *,
    camera_name: str | None,
    person_id: str | None,
    today: dt.date,
    size_px: tuple[int, int] | None = None,
    neutral: Neutral | None = None,
    already_mirrored: bool = False,
    quarter_turns: int = 0,
) -> CalibratedSetup:
    """Return what is known of camera, body and instrument, with messages on what is not.

    A doubtful record of the body is used no longer, and that is said; what is unknown is
    unknown, and the interval widens.

    Parameters
    ----------
    size_px
        Width and height of the upright picture where known; otherwise the camera's newest lens
        profile is taken, and who measures drops it when pictures have another size.
    neutral
        Today's neutral pose, to check the record of the body against.
    """
    lenses = lenses_of(store, camera_name)
    lens, lens_messages = _lens(lenses, size_px)
    stale = list(lens_messages) if lenses else []
    level = store.level(camera_name)
    roll = level.roll_deg if level is not None and level.holds_on(today) else None
    if level is not None and roll is None:
        stale.append(
            TranslatableMessage(
                "The camera's level is from {day}; measure it again.",
                {"day": level.day.isoformat()},
            )
        )
    record = None if person_id is None else store.body(person_id)
    body, doubtful = _body(record, today, neutral)
    stale.extend(doubtful)
    uncalibrated = [message for message in lens_messages if message not in stale]
    return CalibratedSetup(
        setup=KnownSetup(
            camera=CameraSetup(
                name=camera_name,
                lens=lens,
                roll_deg=roll,
                already_mirrored=already_mirrored,
                quarter_turns=quarter_turns,
            ),
            body=body,
            corrections=corrections_for(store, camera_name),
            studies=studies_for(store, camera_name),
            trial_sds=trial_sds_of(store, person_id),
        ),
        messages=(*uncalibrated, *stale),
        stale=tuple(stale),
        lenses=lenses,
    )


def _lens(
    lenses: tuple[LensProfile, ...], size_px: tuple[int, int] | None
) -> tuple[LensProfile | None, list[TranslatableMessage]]:
    lens = newest_lens(lenses, size_px)
    if lens is not None:
        return lens, []
    unfit = None if size_px is None else other_size_message(lenses, size_px)
    plain = TranslatableMessage("The lens is not calibrated; a typical field of view is assumed.")
    return None, [unfit or plain]


def _body(
    record: BodyRecord | None, today: dt.date, neutral: Neutral | None
) -> tuple[BodySetup, tuple[TranslatableMessage, ...]]:
    if record is None:
        return BodySetup(), ()
    warnings = body_record_warnings(record, today, neutral)
    return (BodySetup(), warnings) if warnings else (_usable(record), ())


def _usable(record: BodyRecord) -> BodySetup:
    """Return the lengths as the estimators take them.

    Without the forearm: knowing it made no reading better that could be shown, neither by a
    tape nor exactly (calibration/README.md), so the usual proportion serves everybody.
    """
    return replace(record.body, forearm=None)
