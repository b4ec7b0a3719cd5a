"""Codes of the FHIR export and the small parts of resources made of them.

LOINC numbers are given with their check digit. Those marked `seen` were found in public use; the
others were inferred from their neighbours in the list, have to be confirmed at loinc.org, and
are written only on request. The project's own code systems are plain names, not addresses.
"""

import re
import uuid
from dataclasses import dataclass
from typing import Any

from measure.domain.landmarks import Side
from measure.domain.measurements import LevelBand
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reasons import SENTENCES, Reason
from measure.system.clock import Timestamp

SNOMED = "http://snomed.info/sct"
LOINC = "http://loinc.org"
UCUM = "http://unitsofmeasure.org"
CATEGORY = "http://terminology.hl7.org/CodeSystem/observation-category"
ABSENT_REASON = "http://terminology.hl7.org/CodeSystem/data-absent-reason"
PURPOSE = "http://terminology.hl7.org/CodeSystem/v3-ActReason"

OWN_MEASURE = "urn:thawline:measure"
OWN_PART = "urn:thawline:part"
OWN_SITE = "urn:thawline:site"
OWN_LEVEL = "urn:thawline:level"
OWN_EXERCISE = "urn:thawline:exercise"
OWN_EVENT = "urn:thawline:event"
OWN_ANSWER = "urn:thawline:answer"
OWN_REASON = "urn:thawline:reason"
OWN_PERSON = "urn:thawline:person"

#: Shoulder region by side. [source: SNOMED CT]
_SNOMED_SITES = {Side.LEFT: "91775009", Side.RIGHT: "91774008"}

#: Reasons that say that a movement did not take place as it has to; the other ones are failures of
#: seeing it.
_NOT_PERFORMED = frozenset(
    {
        Reason.NOBODY,
        Reason.HAND_NOT_BEHIND,
        Reason.NO_FACING_STANCE,
        Reason.NO_ZERO_POSE,
        Reason.NO_NEUTRAL,
        Reason.NO_MOVE,
        Reason.LITTLE_MOVEMENT,
        Reason.NO_HOLD,
        Reason.FEW_TRIALS,
    }
)

#: Pain severity, 0-10 verbal numeric rating, reported.
PAIN_LOINC = "72514-3"


def loinc_of(movement: Movement, side: Side, *, active: bool, unverified: bool) -> list[str]:
    """Return the LOINC numbers of a movement, the one without side first.

    None for a helped movement: LOINC has active and passive, and active-assisted is neither.
    None for the reach behind the back: it is no angle.

    Parameters
    ----------
    unverified
        True to include numbers that were not seen in public use.
    """
    loinc = MOVEMENTS[movement].loinc
    if not active or loinc is None:
        return []
    codes = (loinc.unsided, loinc.left if side is Side.LEFT else loinc.right)
    return [code.number for code in codes if code.seen or unverified]


Resource = dict[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class CodeChoices:
    """Which codes are written beside those that always are.

    Attributes
    ----------
    unverified
        LOINC numbers that were not seen in public use.
    snomed
        The shoulder's code of SNOMED CT, which needs a licence in some countries.
    """

    unverified: bool = False
    snomed: bool = False


#: Characters that a FHIR string may not hold.
_NO_STRING = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff\ufffe\uffff]")


def part(code: str, text: str) -> Resource:
    return {"coding": [coding(OWN_PART, code, text)], "text": text}


def component(code: str, text: str, value: float, unit: Unit) -> Resource:
    return {"code": part(code, text), "valueQuantity": quantity(value, unit)}


def quantity(value: float, unit: Unit) -> Resource:
    if unit is Unit.DEGREES:
        return {"value": round(value, 1), "unit": "degrees", "system": UCUM, "code": "deg"}
    return {"value": round(value, 3), "unit": "ratio", "system": UCUM, "code": "1"}


def absent(reasons: tuple[Reason, ...]) -> Resource:
    """Return why there is no value: a code of FHIR, the project's codes, and words.

    "not-performed" where the movement did not take place as it has to, "error" where it could not
    be seen well enough; the first reason decides. Without any it is "unknown".
    """
    if not reasons:
        kind = ("unknown", "Unknown")
    elif reasons[0] in _NOT_PERFORMED:
        kind = ("not-performed", "Not Performed")
    else:
        kind = ("error", "Error")
    return {
        "coding": [
            coding(ABSENT_REASON, *kind),
            *(coding(OWN_REASON, reason.value, SENTENCES[reason]) for reason in reasons),
        ],
        "text": " ".join(SENTENCES[reason] for reason in reasons) or "No value was found.",
    }


def band(level: LevelBand) -> Resource:
    ends = f"{level.low} to {level.high}" if level.low != level.high else level.low
    code = f"{token(level.low)}.{token(level.high)}"
    return {
        "coding": [coding(OWN_LEVEL, code, ends)],
        "text": f"{ends} ({level.band}), decided by: {level.decided_by}",
    }


def site(side: Side, *, snomed: bool = False) -> Resource:
    """Return a shoulder as a body site, on request by its SNOMED CT code too."""
    text = f"{side.value.capitalize()} shoulder"
    codes = [coding(OWN_SITE, f"{side.value}-shoulder", text)]
    if snomed:
        codes.insert(0, coding(SNOMED, _SNOMED_SITES[side]))
    return {"coding": codes, "text": text}


def observation(
    identifier: str, category: str, code: Resource, person_id: str, when: str
) -> Resource:
    """Return the members that all observations have; `when` is a day or an instant."""
    return {
        "resourceType": "Observation",
        "id": identifier,
        "status": "final",
        "category": [{"coding": [coding(CATEGORY, category, category.capitalize())]}],
        "code": code,
        "subject": {"reference": url_of(uuid_of(person_id))},
        "effectiveDateTime": when,
    }


def pain_observation(
    seed: str, person_id: str, when: str, kind: str, text: str, rating: int
) -> Resource:
    """Return a rating of pain, 0..10; equal seeds give equal identifiers."""
    code = {
        "coding": [
            {"system": LOINC, "code": PAIN_LOINC},
            coding(OWN_MEASURE, f"pain-{kind.replace('_', '-')}"),
        ],
        "text": text,
    }
    identifier = str(uuid.uuid5(uuid.NAMESPACE_OID, seed))
    return observation(identifier, "survey", code, person_id, when) | {"valueInteger": rating}


def coding(system: str, code: str, display: str | None = None) -> Resource:
    bare = {"system": system, "code": code}
    return bare | {"display": display} if display else bare


def token(text: str) -> str:
    """Return a text as a FHIR code, which has no blanks."""
    return "-".join(text.split()) or "unknown"


def instant(moment: Timestamp) -> str:
    return moment.local.isoformat(timespec="milliseconds")


def uuid_of(identifier: str) -> str:
    return str(uuid.UUID(identifier))


def url_of(identifier: str) -> str:
    return f"urn:uuid:{identifier}"


def cleaned(value: Any) -> Any:
    """Return a value without characters that FHIR forbids and without blank members."""
    if isinstance(value, str):
        return _NO_STRING.sub("", value)
    if isinstance(value, list):
        return [cleaned(item) for item in value]
    if isinstance(value, dict):
        members = {name: cleaned(item) for name, item in value.items()}
        return {
            name: item
            for name, item in members.items()
            if not isinstance(item, str) or item.strip()
        }
    return value
