"""FHIR export: a history as an R4 bundle.

A pseudonymous patient, devices, observations of measurements and sessions, the home programme as
care plans, goals and procedures.


The bundle is plain data; tests validate it against the R4 models. Values are rounded to a tenth
of a degree here: more digits would claim more than a camera sees.
"""

import uuid

from measure.domain.measurements import Measurement, Provenance, Status, Trial
from measure.domain.movements import MOVEMENTS, Unit
from measure.domain.reasons import SENTENCES
from measure.domain.records import Assistance, History, MeasurementRecord, Person
from measure.export.fhir_codes import (
    LOINC,
    OWN_LEVEL,
    OWN_MEASURE,
    OWN_PERSON,
    PURPOSE,
    CodeChoices,
    Resource,
    absent,
    band,
    cleaned,
    coding,
    component,
    instant,
    loinc_of,
    observation,
    pain_observation,
    part,
    quantity,
    site,
    token,
    url_of,
    uuid_of,
)
from measure.export.fhir_programme import programme_resources
from measure.export.fhir_session import (
    event_observation,
    screening_observation,
    session_members,
    session_panel,
)
from measure.export.history_csv import setup_text
from measure.export.history_json import NOTICE, json_by_line
from measure.system.clock import Timestamp
from measure.system.json_codec import to_json

_HELP_WORDS = {
    Assistance.NONE: "active",
    Assistance.OTHER_HAND: "active-assisted by the other hand",
    Assistance.STICK: "active-assisted with a stick",
    Assistance.PULLEY: "active-assisted with a pulley",
    Assistance.HELPER: "active-assisted by a helper",
}


#: As a bundle is written where nothing was chosen.
USUAL_CODES = CodeChoices()


def history_fhir(history: History, written: Timestamp, codes: CodeChoices = USUAL_CODES) -> bytes:
    """Return a history as a FHIR R4 bundle of type "collection", UTF-8 JSON.

    Parameters
    ----------
    written
        The present moment.
    """
    devices: dict[str, Resource] = {}
    members: dict[str, list[Resource]] = {
        session.id: session_members(session, codes) for session in history.sessions
    }
    for record in history.measurements:
        device = _device(record.measurement.provenance)
        device = devices.setdefault(device["id"], device)
        members[record.session_id] += _observations(record, device["id"], codes)
    resources = [_patient(history.person), *devices.values()]
    for session in history.sessions:
        resources += [*members[session.id], session_panel(session, members[session.id])]
    resources += [event_observation(event, codes) for event in history.events]
    resources += [screening_observation(screening) for screening in history.screenings]
    resources += programme_resources(history, written.day)
    if history.person.demo:
        for resource in resources:
            resource["meta"] = {"security": [coding(PURPOSE, "HTEST", "test health data")]}
    bundle = {
        "resourceType": "Bundle",
        "type": "collection",
        "timestamp": instant(written),
        "entry": [
            {"fullUrl": url_of(resource["id"]), "resource": resource} for resource in resources
        ],
    }
    return json_by_line(cleaned(bundle))


def _patient(person: Person) -> Resource:
    return {
        "resourceType": "Patient",
        "id": uuid_of(person.id),
        "identifier": [{"system": OWN_PERSON, "value": person.id}],
        "name": [{"use": "anonymous", "text": person.pseudonym}],
    }


def _device(provenance: Provenance) -> Resource:
    """Return the program with its models and set-up as a device; equal ones are one device."""
    versions = _versions(provenance.software, "program ", "")
    versions += _versions(provenance.model_hashes, "pose model ", ", SHA-256")
    setup = setup_text(provenance.setup)
    alike = to_json([provenance.model, provenance.passes, setup, versions])
    device: Resource = {
        "resourceType": "Device",
        "id": str(uuid.uuid5(uuid.NAMESPACE_OID, "device " + alike)),
        "deviceName": [{"name": "Thawline", "type": "user-friendly-name"}],
        "property": _properties(provenance),
        "version": versions,
        "note": [{"text": NOTICE}, {"text": "Set-up: " + setup}],
    }
    return device if versions else {k: v for k, v in device.items() if k != "version"}


def _properties(provenance: Provenance) -> list[Resource]:
    """Return the pose model and the passes made with it."""
    properties = [
        {"type": part("pose-model", "Pose model"), "valueCode": [{"text": provenance.model}]}
    ]
    if provenance.passes:
        passes = [{"text": name} for name in provenance.passes]
        properties.append({"type": part("passes", "Passes"), "valueCode": passes})
    return properties


def _observations(record: MeasurementRecord, device: str, codes: CodeChoices) -> list[Resource]:
    measurement = record.measurement
    taken, where = instant(record.taken), site(measurement.side, snomed=codes.snomed)
    code = _code(record, codes.unverified)
    measured = observation(uuid_of(record.id), "exam", code, record.person_id, taken)
    measured |= {
        "bodySite": where,
        "method": {"text": _method(record)},
        "device": {"reference": url_of(device)},
    }
    if components := _components(measurement):
        measured["component"] = components
    measured |= _result(measurement)
    if notes := _notes(record):
        measured["note"] = [{"text": text} for text in notes]
    observations = [measured]
    if record.pain_during is not None:
        text = f"Pain during the movement: {MOVEMENTS[measurement.movement].name}"
        seed = f"{record.id} pain"
        pain = pain_observation(seed, record.person_id, taken, "movement", text, record.pain_during)
        observations.append(pain | {"bodySite": where})
    return observations


def _code(record: MeasurementRecord, unverified: bool) -> Resource:
    measurement = record.measurement
    numbers = loinc_of(
        measurement.movement, measurement.side, active=record.conduct.active, unverified=unverified
    )
    kind = "active" if record.conduct.active else "active-assisted"
    text = f"Shoulder, {MOVEMENTS[measurement.movement].name.lower()}, {kind}"
    own = coding(OWN_MEASURE, f"{measurement.movement.value}-{kind}", text)
    return {
        "coding": [*({"system": LOINC, "code": number} for number in numbers), own],
        "text": text,
    }


def _result(measurement: Measurement) -> Resource:
    """Return either a value or the reason why there is none."""
    if measurement.status is Status.REFUSED or measurement.value is None:
        return {"dataAbsentReason": absent(measurement.reasons)}
    if measurement.level:
        return {"valueCodeableConcept": band(measurement.level)}
    return {"valueQuantity": quantity(measurement.value, measurement.unit)}


def _components(measurement: Measurement) -> list[Resource]:
    unit = measurement.unit
    parts = []
    if measurement.level and measurement.value is not None:
        parts.append(component("height-ratio", "Height of the thumb", measurement.value, unit))
    for code, text, value in (
        ("interval-low", "95 % interval, lower end", measurement.low),
        ("interval-high", "95 % interval, upper end", measurement.high),
        ("against-vertical", "Against the picture's vertical", measurement.against_vertical),
    ):
        if value is not None:
            parts.append(component(code, text, value, unit))
    if measurement.level:
        for code, text, level in (
            ("level-low", "Lowest level of the band", measurement.level.low),
            ("level-high", "Highest level of the band", measurement.level.high),
        ):
            parts.append(
                {
                    "code": part(code, text),
                    "valueCodeableConcept": {
                        "coding": [coding(OWN_LEVEL, token(level), level)],
                        "text": level,
                    },
                }
            )
    for number, trial in enumerate(measurement.trials, start=1):
        parts.append(_trial(number, trial, unit))
    return parts


def _trial(number: int, trial: Trial, unit: Unit) -> Resource:
    code = part("trial", f"Trial {number}")
    if trial.scored and trial.value is not None:
        return {"code": code, "valueQuantity": quantity(trial.value, unit)}
    return {"code": code, "dataAbsentReason": absent(trial.refused_for)}


def _method(record: MeasurementRecord) -> str:
    measurement = record.measurement
    return (
        f"One camera, {measurement.view.value} view, {_HELP_WORDS[record.conduct.help]}, "
        f"{record.conduct.posture.value}, measured against the "
        f"{measurement.reference.value.replace('-', ' ')}; median of the scored trials"
    )


def _notes(record: MeasurementRecord) -> list[str]:
    notes = []
    if record.measurement.status is Status.READING:
        notes += [SENTENCES[reason] for reason in record.measurement.reasons]
    if record.stopped_by:
        notes.append(f"What stopped the movement: {record.stopped_by.value}.")
    if record.overridden:
        codes = ", ".join(record.overridden)
        notes.append(f"A clinician let trials count in spite of: {codes}.")
    return notes


def _versions(values: dict[str, str], prefix: str, ending: str) -> list[Resource]:
    return [
        {"type": {"text": f"{prefix}{name}{ending}"}, "value": value}
        for name, value in sorted(values.items())
        if value.strip()
    ]
