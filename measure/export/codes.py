"""Codes of health records: LOINC where one is known, names of our own for the rest.

LOINC numbers, each with its check digit. "Seen" ones were found in public use; the others were
inferred from their neighbours in the list, have to be confirmed at loinc.org, and are written
only on request. Our own code systems are plain names, not addresses.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from measure.domain.landmarks import Side
from measure.domain.movements import Movement

LOINC = "http://loinc.org"
UCUM = "http://unitsofmeasure.org"
CATEGORY = "http://terminology.hl7.org/CodeSystem/observation-category"
ABSENT_REASON = "http://terminology.hl7.org/CodeSystem/data-absent-reason"
PURPOSE = "http://terminology.hl7.org/CodeSystem/v3-ActReason"

OWN_MEASURE = "urn:thawline:measure"
OWN_PART = "urn:thawline:part"
OWN_SITE = "urn:thawline:site"
OWN_LEVEL = "urn:thawline:level"
OWN_REASON = "urn:thawline:reason"
OWN_PERSON = "urn:thawline:person"

#: Pain severity, 0-10 verbal numeric rating, reported.
PAIN_LOINC = "72514-3"


@dataclass(frozen=True, slots=True)
class Code:
    """A LOINC number and whether it was seen in public use."""

    number: str
    seen: bool


#: Active motion, side not part of the code.
_UNSIDED: Mapping[Movement, Code] = {
    Movement.FLEXION: Code("41389-8", seen=True),
    Movement.ABDUCTION: Code("41381-5", seen=True),
    Movement.EXTERNAL_ROTATION: Code("41387-2", seen=True),
    Movement.EXTENSION: Code("41385-6", seen=False),
}

#: Active motion with the side in the code. Some were seen, none twice: all on request only.
_SIDED: Mapping[tuple[Movement, Side], Code] = {
    (Movement.FLEXION, Side.LEFT): Code("41295-7", seen=False),
    (Movement.EXTENSION, Side.LEFT): Code("41297-3", seen=False),
    (Movement.ABDUCTION, Side.LEFT): Code("41299-9", seen=False),
    (Movement.EXTERNAL_ROTATION, Side.LEFT): Code("41305-4", seen=False),
    (Movement.FLEXION, Side.RIGHT): Code("41307-0", seen=False),
    (Movement.EXTENSION, Side.RIGHT): Code("41309-6", seen=False),
    (Movement.ABDUCTION, Side.RIGHT): Code("41311-2", seen=False),
    (Movement.EXTERNAL_ROTATION, Side.RIGHT): Code("41317-9", seen=False),
}


def loinc_of(movement: Movement, side: Side, *, active: bool, unverified: bool) -> list[str]:
    """Return the LOINC numbers of a movement, the one without side first.

    None for a helped movement: LOINC has active and passive, and active-assisted is neither.
    None for the reach behind the back: it is no angle.

    Parameters
    ----------
    unverified
        True to include numbers that were not seen in public use.
    """
    if not active:
        return []
    codes = [_UNSIDED.get(movement), _SIDED.get((movement, side))]
    return [code.number for code in codes if code and (code.seen or unverified)]
