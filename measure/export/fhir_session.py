"""FHIR resources of sessions and of what happened between them: pain, state, events, answers."""

import uuid
from collections.abc import Iterable, Iterator

from measure.domain.movements import MOVEMENTS, Unit
from measure.domain.records import EVENT_WORDS, Event, SessionRecord
from measure.domain.screening_records import ScreeningRecord
from measure.domain.session_facts import ClinicianMethod, ClinicianValue
from measure.export.fhir_codes import (
    OWN_ANSWER,
    OWN_EVENT,
    OWN_MEASURE,
    CodeChoices,
    Resource,
    coding,
    instant,
    observation,
    pain_observation,
    part,
    quantity,
    site,
    url_of,
    uuid_of,
)

_PAIN_WORDS = {"rest": "at rest", "night": "at night", "worst_24h": "worst in 24 hours"}
_METHOD_WORDS = {
    ClinicianMethod.PASSIVE: "passive, taken by a clinician",
    ClinicianMethod.GONIOMETER: "taken by a clinician with a goniometer",
}


def session_members(session: SessionRecord, codes: CodeChoices) -> list[Resource]:
    """Return what a session holds beside its measurements: pain before it, a clinician's values."""
    return [
        *_pain_before(session),
        *(_by_hand(session, v, codes) for v in session.clinician_values),
    ]


def session_panel(session: SessionRecord, members: Iterable[Resource]) -> Resource:
    """Return the session itself: no value of its own, but its members, state and note."""
    code = {
        "coding": [coding(OWN_MEASURE, "session", "Session")],
        "text": "Session of shoulder measurements",
    }
    panel = observation(
        uuid_of(session.id), "exam", code, session.person_id, instant(session.started)
    )
    references = [{"reference": url_of(member["id"])} for member in members]
    if references:
        panel["hasMember"] = references
    if state := list(_state(session)):
        panel["component"] = state
    if session.note.strip():
        panel["note"] = [{"text": session.note}]
    return panel


def event_observation(event: Event, codes: CodeChoices) -> Resource:
    """Return something that happened on a day."""
    code = {"coding": [coding(OWN_MEASURE, "event", "Event")], "text": "Event"}
    words = EVENT_WORDS[event.kind]
    resource = observation(
        uuid_of(event.id), "survey", code, event.person_id, event.day.isoformat()
    )
    resource["valueCodeableConcept"] = {
        "coding": [coding(OWN_EVENT, event.kind.value, words)],
        "text": words,
    }
    if event.side is not None:
        resource["bodySite"] = site(event.side, snomed=codes.snomed)
    if event.note.strip():
        resource["note"] = [{"text": event.note}]
    return resource


def screening_observation(screening: ScreeningRecord) -> Resource:
    """Return how the safety questions were answered on a day."""
    text = f"Safety questions, {screening.occasion.value.replace('-', ' ')}"
    code = {"coding": [coding(OWN_MEASURE, "safety-questions", text)], "text": text}
    day, outcome = screening.day.isoformat(), screening.outcome.value
    return observation(uuid_of(screening.id), "survey", code, screening.person_id, day) | {
        "valueCodeableConcept": {
            "coding": [coding(OWN_ANSWER, outcome)],
            "text": outcome.replace("-", " "),
        }
    }


def _state(session: SessionRecord) -> Iterator[Resource]:
    """Yield components for the state of the shoulder, as far as it was stated."""
    state = session.state
    if state.timing is not None:
        yield {
            "code": part("exercises", "Before or after the day's exercises"),
            "valueString": state.timing.value,
        }
    if state.pain_relief is not None:
        yield {
            "code": part("pain-relief", "Pain relief in the four hours before"),
            "valueBoolean": state.pain_relief,
        }


def _pain_before(session: SessionRecord) -> Iterator[Resource]:
    """Yield an observation for every rating of pain before a session."""
    for name, words in _PAIN_WORDS.items():
        rating = getattr(session.pain, name)
        if rating is not None:
            yield pain_observation(
                f"{session.id} {name}",
                session.person_id,
                instant(session.started),
                name,
                f"Pain {words}",
                rating,
            )


def _by_hand(session: SessionRecord, value: ClinicianValue, codes: CodeChoices) -> Resource:
    """Return a value that a clinician typed in."""
    kind = f"{value.movement.value}-{value.method.value}"
    text = f"Shoulder, {MOVEMENTS[value.movement].name.lower()}, {value.method.value}"
    code = {"coding": [coding(OWN_MEASURE, kind, text)], "text": text}
    seed = f"{session.id} {kind} {value.side.value}"
    identifier = str(uuid.uuid5(uuid.NAMESPACE_OID, seed))
    when = instant(session.started)
    return observation(identifier, "exam", code, session.person_id, when) | {
        "bodySite": site(value.side, snomed=codes.snomed),
        "method": {"text": _METHOD_WORDS[value.method]},
        "valueQuantity": quantity(value.value_deg, Unit.DEGREES),
    }
