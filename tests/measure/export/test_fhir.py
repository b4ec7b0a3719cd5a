"""The FHIR bundle: held against the R4 models, and against what it must and must not say."""

import datetime as dt
import json
import re
from pathlib import Path
from typing import Any

import pytest
from fhir.resources.R4B.bundle import Bundle
from hypothesis import HealthCheck, given, settings

from measure.domain.movements import MOVEMENTS, Movement, View
from measure.domain.reasons import Reason
from measure.domain.records import AssessmentCondition, Assistance, History, Pain
from measure.export.fhir import history_fhir
from measure.export.fhir_codes import PAIN_LOINC, CodeChoices, absent
from tests.support import record_samples as sample
from tests.support.record_samples import FixedClock
from tests.support.record_strategies import histories

WHO = sample.person()
SESSION = sample.session(WHO)
ACTIVE = AssessmentCondition()
NOW = FixedClock().now()
#: The codes of every movement that has any.
CODES = [
    code
    for facts in MOVEMENTS.values()
    if facts.loinc is not None
    for code in (facts.loinc.unsided, facts.loinc.left, facts.loinc.right)
]


def _bundle(*records: Any, who: Any = WHO, unverified: bool = False, **changes: Any) -> list[Any]:
    session = sample.session(who, **changes)
    history = History(person=who, sessions=(session,), measurements=records)
    data = history_fhir(history, NOW, CodeChoices(unverified=unverified))
    Bundle.model_validate_json(data)
    return [entry["resource"] for entry in json.loads(data)["entry"]]


def _observation(resources: list[Any], code: str) -> Any:
    observations = [
        resource
        for resource in resources
        if resource["resourceType"] == "Observation"
        and any(coding["code"] == code for coding in resource["code"]["coding"])
    ]
    assert len(observations) == 1, code
    return observations[0]


def _loinc(resource: Any) -> list[str]:
    return [
        coding["code"]
        for coding in resource["code"]["coding"]
        if coding["system"] == "http://loinc.org"
    ]


@settings(max_examples=20, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(history=histories())
def test_every_history_makes_a_valid_bundle(history: History) -> None:
    data = history_fhir(history, NOW, CodeChoices(unverified=True, snomed=True))
    bundle = Bundle.model_validate_json(data)
    urls = [entry.fullUrl for entry in bundle.entry]
    assert len(set(urls)) == len(urls)
    content = json.loads(data)
    for reference in _references(content):
        assert reference in urls
    kinds = [entry["resource"]["resourceType"] for entry in content["entry"]]
    assert kinds.count("Patient") == 1


def _references(value: Any) -> list[str]:
    if isinstance(value, dict):
        own = [value["reference"]] if isinstance(value.get("reference"), str) else []
        return own + [reference for inner in value.values() for reference in _references(inner)]
    if isinstance(value, list):
        return [reference for inner in value for reference in _references(inner)]
    return []


def test_a_reading_says_all_that_belongs_to_it() -> None:
    resources = _bundle(sample.record(SESSION, conduct=ACTIVE))
    observation = _observation(resources, "flexion-active")
    assert _loinc(observation) == ["41389-8"]
    assert observation["valueQuantity"] == {
        "value": 91.2,
        "unit": "degrees",
        "system": "http://unitsofmeasure.org",
        "code": "deg",
    }
    assert observation["bodySite"]["text"] == "Left shoulder"
    assert observation["category"][0]["coding"][0]["code"] == "exam"
    assert observation["effectiveDateTime"] == "2026-04-02T10:01:00.000+02:00"
    assert (
        "side view, active, standing, measured against the trunk axis"
        in observation["method"]["text"]
    )
    parts = {part["code"]["text"]: part for part in observation["component"]}
    assert parts["95 % interval, lower end"]["valueQuantity"]["value"] == 83.0
    assert parts["Trial 1"]["valueQuantity"]["value"] == 91.2
    absent = parts["Trial 3"]["dataAbsentReason"]
    assert "valueQuantity" not in parts["Trial 3"]
    assert [coding["code"] for coding in absent["coding"]] == ["error", "trunk-lean"]
    assert "Your body leaned" in absent["text"]
    assert observation["note"][0]["text"].startswith("The trials differ")
    assert "stiffness" in observation["note"][1]["text"]
    assert "shrug" in observation["note"][2]["text"]


def test_a_refusal_is_an_absence_with_its_reasons() -> None:
    observation = _observation(
        _bundle(sample.record(SESSION, 1, sample.REFUSAL, conduct=ACTIVE)),
        "external-rotation-active",
    )
    assert not [name for name in observation if name.startswith("value")]
    codes = [coding["code"] for coding in observation["dataAbsentReason"]["coding"]]
    assert codes == ["error", "trunk-lean", "few-trials"]


def test_a_reach_is_a_band_of_our_own_and_never_degrees() -> None:
    observation = _observation(
        _bundle(sample.record(SESSION, 1, sample.REACH, conduct=ACTIVE), unverified=True),
        "hand-behind-back-active",
    )
    assert _loinc(observation) == []
    assert observation["valueCodeableConcept"]["coding"][0]["code"] == "L3.T12"
    parts = {part["code"]["text"]: part for part in observation["component"]}
    assert parts["Height of the thumb"]["valueQuantity"]["code"] == "1"
    assert parts["Lowest level of the band"]["valueCodeableConcept"]["text"] == "L3"
    assert '"deg"' not in json.dumps(observation)


@pytest.mark.parametrize("help_", [kind for kind in Assistance if kind is not Assistance.NONE])
def test_a_helped_movement_is_neither_active_nor_passive(help_: Assistance) -> None:
    resources = _bundle(
        sample.record(SESSION, conduct=AssessmentCondition(help=help_)), unverified=True
    )
    observation = _observation(resources, "flexion-active-assisted")
    assert _loinc(observation) == []
    assert "active-assisted" in observation["method"]["text"]


@pytest.mark.parametrize(
    ("movement", "view", "seen", "all_codes"),
    [
        (Movement.FLEXION, View.SIDE, ["41389-8"], ["41389-8", "41295-7"]),
        (Movement.ABDUCTION, View.FRONT, ["41381-5"], ["41381-5", "41299-9"]),
        (Movement.EXTERNAL_ROTATION, View.OBLIQUE, ["41387-2"], ["41387-2", "41305-4"]),
        (Movement.EXTENSION, View.SIDE, [], ["41385-6", "41297-3"]),
    ],
)
def test_only_codes_in_public_use_unless_asked(
    movement: Movement, view: View, seen: list[str], all_codes: list[str]
) -> None:
    measurement = sample.measurement(movement=movement, view=view)
    record = sample.record(SESSION, 1, measurement, conduct=ACTIVE)
    code = f"{movement.value}-active"
    assert _loinc(_observation(_bundle(record), code)) == seen
    assert _loinc(_observation(_bundle(record, unverified=True), code)) == all_codes


def test_the_codes_written_by_default_are_the_documented_ones() -> None:
    page = (Path(__file__).parents[3] / "measure/docs/exports.md").read_text(encoding="utf-8")
    seen = {code.number for code in CODES if code.seen}
    assert seen | {PAIN_LOINC} == set(re.findall(r"\b\d{5}-\d\b", page))


def check_digit(stem: str) -> int:
    """Return the check digit of a LOINC number without it (modulus 10, as LOINC defines it)."""
    odd = str(int(stem[::-1][::2][::-1]) * 2)
    even = stem[::-1][1::2][::-1]
    return -sum(int(digit) for digit in even + odd) % 10


def test_every_loinc_number_has_its_check_digit() -> None:
    codes = [code.number for code in CODES] + [PAIN_LOINC]
    assert len(set(codes)) == len(codes) == 13
    for code in codes:
        stem, digit = code.split("-")
        assert check_digit(stem) == int(digit), code


def test_pain_is_a_number_of_its_own() -> None:
    resources = _bundle(sample.record(SESSION))
    for code, rating, text in (
        ("pain-rest", 1, "Pain at rest"),
        ("pain-night", 4, "Pain at night"),
        ("pain-worst-24h", 6, "Pain worst in 24 hours"),
        ("pain-movement", 5, "Pain during the movement: Flexion"),
    ):
        observation = _observation(resources, code)
        assert (observation["valueInteger"], observation["code"]["text"]) == (rating, text)
        assert _loinc(observation) == ["72514-3"]
        assert observation["category"][0]["coding"][0]["code"] == "survey"
    unasked = _bundle(pain=Pain(night=0), note="")
    assert [resource["resourceType"] for resource in unasked] == [
        "Patient",
        "Observation",
        "Observation",
    ]
    assert _observation(unasked, "pain-night")["valueInteger"] == 0


def test_a_session_gathers_its_members_and_its_note() -> None:
    resources = _bundle(sample.record(SESSION, 1), sample.record(SESSION, 2, sample.REFUSAL))
    panel = _observation(resources, "session")
    members = {member["reference"] for member in panel["hasMember"]}
    assert len(members) == 3 + 2 * 2
    assert panel["note"] == [{"text": "After planting beans."}]


def test_alike_conditions_are_one_device() -> None:
    other = sample.measurement(
        provenance=sample.Provenance(model="full", software={"thawline": "0.2.0"})
    )
    resources = _bundle(
        sample.record(SESSION, 1), sample.record(SESSION, 2), sample.record(SESSION, 3, other)
    )
    devices = [device for device in resources if device["resourceType"] == "Device"]
    assert len(devices) == 2
    versions = {version["type"]["text"]: version["value"] for version in devices[0]["version"]}
    assert versions["program thawline"] == "0.1.0"
    assert versions["pose model heavy, SHA-256"] == "59e4" * 16
    assert "not a diagnosis" in devices[0]["note"][0]["text"]


def test_the_patient_is_a_pseudonym() -> None:
    patient = _bundle(sample.record(SESSION))[0]
    assert patient["name"] == [{"use": "anonymous", "text": "Rosa"}]
    assert set(patient) == {"resourceType", "id", "identifier", "name"}


def test_made_up_people_are_marked_in_every_resource() -> None:
    demo = sample.person("Rosa", demo=True)
    marked = _bundle(sample.record(SESSION), who=demo)
    assert all(resource["meta"]["security"][0]["code"] == "HTEST" for resource in marked)
    assert not [resource for resource in _bundle(sample.record(SESSION)) if "meta" in resource]


def test_hostile_names_and_notes_stay_text() -> None:
    who = sample.person('<script>alert("x")</script>&amp;')
    session = sample.session(who, note='"}],"resourceType":"Patient"\u2028<b>')
    history = History(person=who, sessions=(session,))
    content = json.loads(history_fhir(history, NOW))
    assert content["entry"][0]["resource"]["name"][0]["text"] == who.pseudonym
    assert content["entry"][-1]["resource"]["note"][0]["text"] == session.note


@pytest.mark.parametrize("offset_min", [-840, -210, 0, 345, 840])
def test_times_carry_their_offset(offset_min: int) -> None:
    started = sample.moment("2026-04-02T08:00:00+00:00", offset_min)
    panel = _observation(_bundle(started=started), "session")
    assert dt.datetime.fromisoformat(panel["effectiveDateTime"]) == started.utc
    assert panel["effectiveDateTime"][-6] in "+-"


def _whole_bundle(codes: CodeChoices | None = None) -> list[Any]:
    """Return the bundle of a history that holds everything but measurements."""
    history = History(
        person=WHO,
        sessions=(sample.full_session(WHO),),
        events=(sample.event(WHO),),
        plans=(sample.plan(WHO), sample.own_plan(WHO)),
        exercises_done=(sample.exercise_log(WHO), sample.own_exercise_log(WHO)),
        next_mornings=(sample.next_morning(WHO),),
        goals=(sample.goal(WHO),),
        goal_ratings=(sample.goal_rating(WHO),),
        screenings=(sample.screening(WHO),),
    )
    late = FixedClock("2026-05-01T08:00:00+00:00").now()
    data = history_fhir(history, late, codes or CodeChoices())
    Bundle.model_validate_json(data)
    return [entry["resource"] for entry in json.loads(data)["entry"]]


def _of_kind(resources: list[Any], kind: str) -> list[Any]:
    return [resource for resource in resources if resource["resourceType"] == kind]


def test_the_programme_is_a_care_plan_with_its_goals() -> None:
    resources = _whole_bundle()
    first, second = _of_kind(resources, "CarePlan")
    assert (first["status"], second["status"]) == ("completed", "active")
    assert first["period"] == {"start": "2026-04-02", "end": "2026-04-15"}
    assert second["period"] == {"start": "2026-04-16"}
    (activity,) = second["activity"]
    assert activity["detail"] == {
        "kind": "ServiceRequest",
        "code": {"text": "Door lean"},
        "status": "in-progress",
        "scheduledTiming": {"repeat": {"frequency": 3, "period": 1, "periodUnit": "d"}},
        "description": "10 repetitions, held for 15 s, 3 times a day, left. "
        "Lean in a doorway, the hand on its frame.",
    }
    assert first["activity"][0]["detail"]["code"]["coding"][0]["code"] == "pendulum"
    assert {"text": "Stop at pain 3 of 10."} in second["note"]
    assert {"text": "Review: 2026-05-14"} in second["note"]
    (goal,) = _of_kind(resources, "Goal")
    assert goal["description"] == {"text": "Put on a jacket"}
    assert goal["lifecycleStatus"] == "active"
    assert second["goal"] == [{"reference": f"urn:uuid:{goal['id']}"}]
    rating = _observation(resources, "goal-rating")
    assert rating["valueInteger"] == 3
    assert rating["focus"] == second["goal"]


def test_what_was_done_is_a_procedure_of_its_plan() -> None:
    resources = _whole_bundle()
    plans = _of_kind(resources, "CarePlan")
    done = _of_kind(resources, "Procedure")
    assert [item["basedOn"][0]["reference"] for item in done] == [
        f"urn:uuid:{plan['id']}" for plan in plans
    ]
    assert "note" not in done[0]
    assert done[1]["note"] == [
        {"text": "Repetitions: 6"},
        {"text": "Compared with the last time: easier"},
    ]
    pain = _observation(resources, "pain-exercise")
    assert pain["valueInteger"] == 3
    assert pain["partOf"] == [{"reference": f"urn:uuid:{done[1]['id']}"}]
    assert _observation(resources, "eased-by-next-morning")["valueBoolean"] is False


def test_events_answers_state_and_values_by_hand_are_observations() -> None:
    resources = _whole_bundle()
    event = _observation(resources, "event")
    assert event["valueCodeableConcept"]["coding"][0]["code"] == "injection"
    assert event["bodySite"]["text"] == "Left shoulder"
    answers = _observation(resources, "safety-questions")
    assert answers["valueCodeableConcept"]["coding"][0]["code"] == "clear"
    panel = _observation(resources, "session")
    values = [part.get("valueString", part.get("valueBoolean")) for part in panel["component"]]
    assert values == ["after", True]
    passive = _observation(resources, "flexion-passive")
    assert passive["valueQuantity"]["value"] == 105.0
    assert _loinc(passive) == []
    members = {member["reference"] for member in panel["hasMember"]}
    assert f"urn:uuid:{passive['id']}" in members


def test_the_side_has_a_snomed_code_on_request_only() -> None:
    usual = _observation(_whole_bundle(), "event")["bodySite"]["coding"]
    assert [item["system"] for item in usual] == ["urn:thawline:site"]
    asked = _observation(_whole_bundle(CodeChoices(snomed=True)), "event")["bodySite"]["coding"]
    assert asked[0] == {"system": "http://snomed.info/sct", "code": "91775009"}
    assert asked[1:] == usual


@pytest.mark.parametrize(
    ("reason", "code"),
    [
        (Reason.NO_HOLD, "not-performed"),
        (Reason.NO_MOVE, "not-performed"),
        (Reason.UNREADABLE_FRAMES, "error"),
        (Reason.HIDDEN, "error"),
    ],
)
def test_absence_is_told_by_its_first_reason(reason: Reason, code: str) -> None:
    assert absent((reason, Reason.TRUNK_LEAN))["coding"][0]["code"] == code
    assert absent(())["coding"][0]["code"] == "unknown"


def test_passes_are_properties_of_the_device_and_no_model_number() -> None:
    (device,) = _of_kind(_bundle(sample.record(SESSION)), "Device")
    assert "modelNumber" not in device
    made = {item["type"]["text"]: item["valueCode"] for item in device["property"]}
    assert made["Pose model"] == [{"text": "heavy"}]
