"""Wording of names, values and measurements in the language of the window."""

import re
from collections.abc import Iterable

from PySide6.QtCore import QCoreApplication

from measure.domain.exercises import Exercise
from measure.domain.landmarks import Side
from measure.domain.measurements import BASIS_SENTENCES, Measurement, Status, Trial
from measure.domain.movements import MOVEMENTS, Movement, Unit, View
from measure.domain.reasons import SENTENCES, Reason
from measure.domain.records import (
    EVENT_WORDS,
    AgeBand,
    AssessmentCondition,
    Assistance,
    BodyPosition,
    EventKind,
    LimitingFactor,
    Onset,
    Person,
)
from measure.domain.session_facts import ExerciseTiming
from measure.domain.vertebral_levels import centimetres_in
from measure.errors import ThawlineError
from measure.message import TranslatableMessage
from measure.progress.sentences import short_name
from measure.progress.wording import name_words, with_decimal_sign

#: A number with decimals, as English has it.
_DECIMAL = re.compile(r"[+\-\N{MINUS SIGN}]?\d+\.\d+")


def tr(text: str) -> str:
    """Return the text in the chosen language; the context is empty, as the extractor sees it."""
    return QCoreApplication.translate("", text)


def message_text(message: TranslatableMessage | str) -> str:
    """Return a message in the chosen language, and plain text as it is."""
    if isinstance(message, str):
        return message
    values = {
        name: _number_or_words(value) if isinstance(value, str) else message_text(value)
        for name, value in message.values.items()
    }
    return tr(message.template).format(**values)


def error_text(error: Exception) -> str:
    """Return what an error says in the chosen language, in English where it has no template."""
    return message_text(error.message if isinstance(error, ThawlineError) else str(error))


def _number_or_words(value: str) -> str:
    """Return a number with the language's decimal sign, and words as they are."""
    return with_decimal_sign(value, tr) if _DECIMAL.fullmatch(value) else value


def notice() -> str:
    """Return the line that stands on every page with a number."""
    return tr("An estimate, not a diagnosis. Stop before it becomes painful.")


def short_notice() -> str:
    """Return that line where the page says itself when to stop."""
    return tr("An estimate, not a diagnosis.")


def movement_name(movement: Movement) -> str:
    return tr(MOVEMENTS[movement].name)


def short_movement_name(movement: Movement) -> str:
    """Return a movement's name without the position that only external rotation adds."""
    return short_name(movement, tr)


def movement_plainly(movement: Movement) -> str:
    """Return the movement in everyday words."""
    return tr(MOVEMENTS[movement].plain_name)


def movement_introduced(movement: Movement) -> str:
    """Return a movement's name, then everyday words for it, "Extension: arm backwards"."""
    return f"{movement_name(movement)}: {movement_plainly(movement)}"


def side_name(side: Side) -> str:
    return tr("left") if side is Side.LEFT else tr("right")


def side_title(side: Side) -> str:
    return tr("Left") if side is Side.LEFT else tr("Right")


def person_name(person: Person) -> str:
    """Return what a person is called; who was never asked for a name, in the present language."""
    return name_words(person.pseudonym, tr)


def listed_name(person: Person) -> str:
    """Return a person's name for a list of people: it says who is made up."""
    return person_name(person) + (tr(" (demo data)") if person.demo else "")


def affected_name(affected: tuple[Side, ...]) -> str:
    """Return the affected side or sides."""
    if len(affected) == 1:
        return side_title(affected[0])
    return tr("Both") if affected else tr("Not stated")


def onset_name(onset: Onset) -> str:
    return {
        Onset.GRADUAL: tr("Came on gradually"),
        Onset.INJURY: tr("An injury"),
        Onset.OPERATION: tr("An operation"),
        Onset.ARM_KEPT_STILL: tr("The arm was kept still"),
        Onset.OTHER: tr("Something else"),
    }[onset]


def age_name(band: AgeBand) -> str:
    return {
        AgeBand.UNDER_40: tr("Under 40"),
        AgeBand.FORTIES: tr("40 to 49"),
        AgeBand.FIFTIES: tr("50 to 59"),
        AgeBand.SIXTIES: tr("60 to 69"),
        AgeBand.FROM_70: tr("70 or over"),
    }[band]


def task_title(movement: Movement, side: Side) -> str:
    """Return for example "Flexion, left arm"."""
    return tr("{movement}, {side} arm").format(
        movement=movement_name(movement), side=side_name(side)
    )


def reason_sentence(reason: Reason) -> str:
    return tr(SENTENCES[reason])


def reason_sentences(reasons: Iterable[Reason]) -> str:
    return " ".join(map(reason_sentence, reasons))


def advice_words(reasons: Iterable[Reason]) -> str:
    """Return only the advice of reasons, each once; a reason itself where nothing can be done."""
    parts = (reason_sentence(reason).partition(". ") for reason in reasons)
    return " ".join(dict.fromkeys(advice or finding for finding, _, advice in parts))


def finding_words(reasons: Iterable[Reason]) -> str:
    """Return the first of some reasons in a short sentence, without its advice."""
    for reason in reasons:
        finding, stop, _ = reason_sentence(reason).partition(". ")
        return f"{finding}." if stop else finding
    return ""


def notes_words(
    measurement: Measurement | None, *, few_trials: bool = True, headed: bool = True
) -> str:
    """Return what a reading carries as notes, or nothing.

    Parameters
    ----------
    few_trials
        Whether few trials are worth a word: not where no more were planned.
    headed
        Whether it begins by saying that these are notes.
    """
    if measurement is None or measurement.value is None:
        return ""
    notes = [note for note in measurement.notes if few_trials or note is not Reason.FEW_TRIALS]
    heading = tr("Noted: ") if headed and notes else ""
    return heading + reason_sentences(notes)


def stopped_by_name(stopped_by: LimitingFactor) -> str:
    return {
        LimitingFactor.PAIN: tr("Pain"),
        LimitingFactor.STIFFNESS: tr("Stiffness"),
        LimitingFactor.WEAKNESS: tr("Weakness"),
        LimitingFactor.OTHER: tr("Something else"),
    }[stopped_by]


def pain_sentence(pain: int | None, stopped_by: LimitingFactor | None) -> str:
    """Return what was said about pain, 0..10, and the end of a movement; no full stop."""
    parts = []
    if pain is not None:
        parts.append(tr("pain {pain} of 10").format(pain=pain))
    if stopped_by is not None:
        stop = stopped_by_name(stopped_by).lower()
        parts.append(tr("stopped by {reason}").format(reason=stop))
    return ", ".join(parts).capitalize() if parts else tr("No pain rating")


def event_name(kind: EventKind) -> str:
    return {
        EventKind.INJECTION: tr("Injection"),
        EventKind.HYDRODILATATION: tr("Hydrodilatation"),
        EventKind.MANIPULATION: tr("Manipulation under anaesthesia"),
        EventKind.CAPSULAR_RELEASE: tr("Capsular release"),
        EventKind.PROCEDURE: tr("Another procedure"),
        EventKind.FLARE: tr("Flare"),
        EventKind.THERAPY: tr("Therapy started or changed"),
        EventKind.THERAPY_BEGAN: tr("Therapy began"),
        EventKind.THERAPY_ENDED: tr("Therapy ended"),
        EventKind.PROGRAMME_CHANGED: tr("Home programme changed"),
        EventKind.MEDICINE_CHANGED: tr("Medicine changed"),
        EventKind.CLINIC_VISIT: tr("Clinic visit"),
        EventKind.CAMERA_CHANGED: tr("Camera changed or moved"),
        EventKind.MODEL_CHANGED: tr("Body tracking changed"),
        EventKind.OTHER: tr("Something else"),
    }[kind]


def event_mark(kind: EventKind) -> str:
    """Return the name of an event in a chart."""
    return tr(EVENT_WORDS[kind])


def exercise_name(exercise: Exercise) -> str:
    """Return the name of an exercise of the list, or a clinician's own as it was typed."""
    return exercise.own_name if exercise.listed is None else tr(exercise.name)


def help_name(kind: Assistance) -> str:
    return {
        Assistance.NONE: tr("without help"),
        Assistance.OTHER_HAND: tr("helped by the other hand"),
        Assistance.STICK: tr("helped by a stick"),
        Assistance.PULLEY: tr("helped by a pulley"),
        Assistance.HELPER: tr("helped by someone"),
    }[kind]


def timing_name(timing: ExerciseTiming) -> str:
    """Return whether a session was before or after exercises."""
    return {
        ExerciseTiming.BEFORE: tr("Not done yet"),
        ExerciseTiming.AFTER: tr("Done already"),
    }[timing]


def posture_name(posture: BodyPosition) -> str:
    return tr("standing") if posture is BodyPosition.STANDING else tr("sitting")


def conduct_sentence(conduct: AssessmentCondition) -> str:
    """Return for example "Standing, the arm moves without help"."""
    return tr("{posture}, {help}").format(
        posture=posture_name(conduct.posture).capitalize(), help=help_name(conduct.help)
    )


def value_words(value: float, unit: Unit) -> str:
    """Return a value in whole degrees, or of the reach in cm above the hips on a usual back."""
    if unit is Unit.DEGREES:
        return f"{round(value)}°"
    return f"{round(centimetres_in(value))} cm"


def range_words(low: float, high: float, unit: Unit) -> str:
    """Return an interval in words, such as "137 to 147"."""
    ends = (low, high) if unit is Unit.DEGREES else map(centimetres_in, (low, high))
    first, last = map(round, ends)
    return tr("{low} to {high}").format(low=first, high=last)


def view_name(view: View) -> str:
    return tr(view.value)


def band_words(band: str) -> str:
    """Return a band of levels by region, "upper lumbar to sacrum, most likely sacrum"."""
    ends, _, likely = band.partition(", most likely ")
    low, _, high = ends.partition(" to ")
    words = tr("{low} to {high}").format(low=tr(low), high=tr(high)) if high else tr(low)
    return (
        tr("{band}, most likely {region}").format(band=words, region=tr(likely))
        if likely
        else words
    )


def basis_sentence(measurement: Measurement) -> str:
    """Return on what the interval of a reading rests, or nothing where that is not known."""
    basis = measurement.interval_basis
    return "" if basis is None else tr(BASIS_SENTENCES[basis])


def likely_place(band: str) -> str:
    """Return in everyday words where the likeliest region of a band of levels lies."""
    places = {
        "upper thoracic": tr("Between the shoulder blades"),
        "mid thoracic": tr("About the lower end of the shoulder blade"),
        "lower thoracic": tr("About the lower ribs"),
        "upper lumbar": tr("About the waist"),
        "lower lumbar": tr("Below the waist"),
        "sacrum": tr("About the base of the spine"),
        "buttock": tr("Buttock"),
        "thigh": tr("Thigh"),
    }
    return places.get(band.rpartition(", most likely ")[2], band_words(band))


def measurement_words(measurement: Measurement) -> str:
    """Return one line for a measurement, or every reason why there is no reading."""
    if measurement.status is Status.REFUSED:
        return tr("No reading. ") + reason_sentences(measurement.refused_for)
    if measurement.level is not None:
        level = measurement.level
        return tr("{band}, {low} to {high}").format(
            band=band_words(level.band), low=tr(level.low), high=tr(level.high)
        )
    if measurement.value is None or measurement.low is None or measurement.high is None:
        return tr("No reading.")
    return tr("{value} ({range})").format(
        value=value_words(measurement.value, measurement.unit),
        range=range_words(measurement.low, measurement.high, measurement.unit),
    )


def trial_words(trial: Trial, unit: Unit) -> str:
    """Return one line for a trial: its value and interval, or the reasons against it."""
    if trial.refused_for:
        return tr("Not counted. ") + reason_sentences(trial.refused_for)
    if trial.value is None or trial.low is None or trial.high is None:
        return tr("Not counted.")
    return tr("{value} ({range})").format(
        value=value_words(trial.value, unit), range=range_words(trial.low, trial.high, unit)
    )
