"""Wording of days, and of the axes of the history chart."""

import datetime as dt

from PySide6.QtCore import QDate, QLocale

from gui.text.wording import tr
from measure.domain.movements import MOVEMENTS, Direction, Family, Movement, Unit
from measure.domain.reading_scale import LEVEL_TICKS
from measure.domain.records import EventKind

#: Forms of a tick's name by what the ticks stand for.
_FORMS = {"day": "d MMM", "month": "MMM", "year": "yyyy"}


def tick_words(unit: str, day: dt.date) -> str:
    """Return the name of a tick of the day axis, a day, month or year; January says its year."""
    form = "MMM yyyy" if unit == "month" and day.month == 1 else _FORMS[unit]
    return QLocale().toString(QDate(day.year, day.month, day.day), form)


def weekday_name(day: dt.date) -> str:
    """Return the name of a day of the week."""
    return QLocale().toString(QDate(day.year, day.month, day.day), "dddd")


def places(movement: Movement) -> tuple[tuple[float, str], ...]:
    """Return heights on the axis that people know from their own body, each with its name."""
    facts = MOVEMENTS[movement]
    if facts.unit is Unit.FRACTION:
        names = (
            tr("buttock"),
            tr("pelvis"),
            tr("waist"),
            tr("lowest rib"),
            tr("shoulder blade"),
        )
        return tuple((height, name) for (height, _), name in zip(LEVEL_TICKS, names, strict=True))
    if facts.family is Family.ROTATION:
        return ((0.0, tr("straight ahead")), (90.0, tr("straight out")))
    if facts.direction is Direction.BACKWARDS:
        return ((0.0, tr("arm hanging")), (90.0, tr("straight back")))
    return ((0.0, tr("arm hanging")), (90.0, tr("shoulder height")), (180.0, tr("straight up")))


def flag_word(kind: EventKind) -> str:
    """Return one word for an event, beside the number of its flag."""
    return {
        EventKind.INJECTION: tr("injection"),
        EventKind.HYDRODILATATION: tr("hydrodilatation"),
        EventKind.MANIPULATION: tr("manipulation"),
        EventKind.CAPSULAR_RELEASE: tr("release"),
        EventKind.PROCEDURE: tr("procedure"),
        EventKind.FLARE: tr("flare"),
        EventKind.THERAPY: tr("therapy"),
        EventKind.THERAPY_BEGAN: tr("therapy"),
        EventKind.THERAPY_ENDED: tr("therapy"),
        EventKind.PROGRAMME_CHANGED: tr("programme"),
        EventKind.MEDICINE_CHANGED: tr("medicine"),
        EventKind.CLINIC_VISIT: tr("visit"),
        EventKind.CAMERA_CHANGED: tr("camera"),
        EventKind.MODEL_CHANGED: tr("tracking"),
        EventKind.OTHER: tr("other"),
    }[kind]
