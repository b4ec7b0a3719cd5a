"""Wording of the report: person, pain, events, earlier trends, way of measuring, caveats."""

import datetime as dt
from collections import Counter
from collections.abc import Iterable, Sequence
from html import escape
from statistics import median

from measure.domain.landmarks import Side
from measure.domain.measurements import Reference
from measure.domain.movements import MOVEMENTS, Movement, View
from measure.domain.records import (
    EVENT_WORDS,
    AgeBand,
    Event,
    History,
    MeasurementRecord,
    Onset,
)
from measure.progress.dates import MONTHS, date_words
from measure.progress.phases import SeriesPhase
from measure.progress.sentences import (
    NO_ADVICE,
    setup_sentence,
    uncompared_slope,
    when_known_sentence,
)
from measure.progress.series import instrument_signature
from measure.progress.shoulder import SideProgress
from measure.progress.weekly_verdicts import Verdict
from measure.progress.wording import VERDICT_WORDS, change_words, conduct_words, slope_words
from measure.report.measurement_wording import basis_sentences

NOTICE = "An estimate made with a camera, not a diagnosis and not a medical device."
DEMO = "DEMO DATA: this person and all these readings are made up."

CAVEATS = (
    "Angles are active motion of the arm against the trunk as one camera sees it. They are "
    "not the passive range of the joint and not interchangeable with a goniometer's.",
    "A reading is the median of a session's trials, and its interval in brackets is of what the "
    "person could do that day. It is meant to hold the true value in 19 of 20 readings; in flexion "
    "and abduction that was tried on angles marked in photographs of real people, in the other "
    "movements on virtual people only. Most of its width is the same for every reading of one "
    "person with one set-up, so changes are known better than single values: their interval counts "
    "only the scatter from day to day.",
    "First and last readings are medians of up to five days, the two practice sessions of a set-up "
    "left out; their change covers the whole time, and its interval stands alone (pointwise). "
    "A verdict is looked for every week, from four weeks and eight days with readings on, by a "
    "line through at most 16 weeks that odd days hardly move. With so many looks it needs more "
    "evidence than a 95 % interval, so “no clear change” may stand beside an interval without 0; "
    "“likely” may still be chance. In twelve weeks without any change a few simulated people in "
    "100 were told of one. The line begins anew after a turn, and where the way of measuring "
    "changed or something happened to the shoulder. Movements also seen need more evidence. Three "
    "weeks after the last reading no verdict is today's.",
    "“Stalled” means that a gain of 5° a month is unlikely while the side is still short of the "
    "other. It is missed more often than it is wrong.",
    "Before and after an event: two lines and a step, drawn towards a weak assumption (slopes of "
    "+2 ± 6° a month, step 0 ± 10°) until there are days enough.",
    "Behind the back, levels of the spine are shown. Changes are given in levels and centimetres, "
    "both approximate: they assume a back of usual length.",
    "Limits for trends, milestones and prompts are this program's own and await a "
    "physiotherapist's confirmation.",
)

_ONSETS = {
    Onset.GRADUAL: "began gradually",
    Onset.INJURY: "began with an injury",
    Onset.OPERATION: "began with an operation",
    Onset.ARM_KEPT_STILL: "began while the arm was kept still",
    Onset.OTHER: "began otherwise",
}
_REFERENCES = {
    Reference.TRUNK_AXIS: "against the trunk's axis",
    Reference.PLUMB_LINE: "against the vertical",
}
#: Number of latest breaks of a series that are described, so that a report fits two pages.
#: [technical]
MOST_PHASES = 2

_AGES = {
    AgeBand.UNDER_40: "aged under 40",
    AgeBand.FORTIES: "aged 40 to 49",
    AgeBand.FIFTIES: "aged 50 to 59",
    AgeBand.SIXTIES: "aged 60 to 69",
    AgeBand.FROM_70: "aged 70 or over",
}

_VIEWS = {
    View.FRONT: "from the front",
    View.BACK: "from the back",
    View.SIDE: "from the side",
    View.OBLIQUE: "half turned to the front",
}

#: Characters of a checksum that distinguish two models in print. [technical]
_CHECKSUM_SHOWN = 10


def short_date(day: dt.date) -> str:
    return f"{day.day} {MONTHS[day.month - 1]} {day.year % 100:02d}"


def person_words(history: History, today: dt.date) -> str:
    """Return the person and the time covered, as HTML."""
    person = history.person
    words = [f"<b>{escape(person.pseudonym)}</b>"]
    if person.affected:
        both = len(person.affected) == 2
        words.append("both shoulders affected" if both else f"{person.affected[0]} side affected")
    if person.dominant:
        words.append(f"{person.dominant.value}-handed")
    if person.since:
        words.append(f"since {escape(person.since)}")
    if person.onset:
        words.append(_ONSETS[person.onset])
    if person.age_band:
        words.append(_AGES[person.age_band])
    for fact, stated in (("diabetes", person.diabetes), ("thyroid disease", person.thyroid)):
        if stated is not None:
            words.append(fact if stated else f"no {fact}")
    text = ", ".join(words) + f". Made on {date_words(today)}"
    if history.sessions:
        first, last = (history.sessions[k].started.day for k in (0, -1))
        text += f" from {len(history.sessions)} sessions, {date_words(first)} to {date_words(last)}"
    return text + "."


def event_words(event: Event) -> str:
    """Return an event as HTML."""
    where = f", {event.side.value} side" if event.side else ""
    note = f": {escape(event.note)}" if event.note else ""
    return f"{date_words(event.day)}: {EVENT_WORDS[event.kind]}{where}{note}"


def pain_words(history: History, today: dt.date) -> str:
    """Return the ratings of pain over the last two weeks, median and range."""
    lately = [
        session.pain for session in history.sessions if (today - session.started.day).days < 14
    ]
    parts = []
    for name, ratings in (
        ("worst in 24 hours", [pain.worst_24h for pain in lately]),
        ("at night", [pain.night for pain in lately]),
        ("at rest", [pain.rest for pain in lately]),
    ):
        given = [rating for rating in ratings if rating is not None]
        if given:
            parts.append(f"{name} {median(given):.0f} ({min(given)} to {max(given)})")
    if not parts:
        return "Pain was not rated in the last two weeks."
    return "Pain in the last two weeks, middle and range of 0 to 10: " + "; ".join(parts) + "."


def during_words(history: History, today: dt.date) -> str:
    """Return pain during each movement and what ended it, over four weeks, affected sides."""
    affected = history.person.affected or tuple(Side)
    parts = []
    for movement in Movement:
        lately = [
            record
            for record in history.measurements
            if record.measurement.movement is movement
            and record.measurement.side in affected
            and (today - record.taken.day).days < 28
        ]
        pain = [record.pain_during for record in lately if record.pain_during is not None]
        stops = Counter(record.stopped_by.value for record in lately if record.stopped_by)
        words = [f"pain {median(pain):.0f} ({min(pain)} to {max(pain)})"] if pain else []
        words += [f"ended by {stop} {times_words(count)}" for stop, count in stops.most_common()]
        if words:
            parts.append(f"{MOVEMENTS[movement].name}: {', '.join(words)}")
    if not parts:
        return ""
    side = "affected side" if len(affected) == 1 else "both sides"
    return f"During movement in the last four weeks, {side}. {'; '.join(parts)}."


def phase_words(sides: Iterable[SideProgress]) -> list[str]:
    """Return the verdicts before the latest breaks, one sentence per break, plain text."""
    phases: dict[tuple[Side, dt.date, str], list[tuple[SideProgress, SeriesPhase]]] = {}
    for progress in sides:
        for phase in progress.earlier[-MOST_PHASES:]:
            if phase.verdict is not Verdict.TOO_EARLY:
                key = (progress.side, phase.ended, phase.ended_by)
                phases.setdefault(key, []).append((progress, phase))
    sentences = []
    for (side, _, ended_by), members in phases.items():
        first = min(phase.first for _, phase in members)
        last = max(phase.last for _, phase in members)
        trends = "; ".join(_phase_trend(progress, phase) for progress, phase in members)
        sentences.append(
            f"Before “{ended_by}”, {side.value} side, {date_words(first)} to {date_words(last)}: "
            f"{trends}."
        )
    return sentences


def _phase_trend(progress: SideProgress, phase: SeriesPhase) -> str:
    words = f"{MOVEMENTS[progress.movement].name} {VERDICT_WORDS[phase.verdict]}"
    slope = uncompared_slope(phase, progress)
    return f"{words}, {slope_words(slope, progress.movement)} a month" if slope else words


def visit_words(sides: Iterable[SideProgress]) -> list[str]:
    """Return the change since the latest clinic visit, one sentence a side, plain text."""
    changes: dict[tuple[Side, dt.date], list[str]] = {}
    for side in sides:
        if since := side.since_visit:
            name = MOVEMENTS[side.movement].name
            words = f"{name} {change_words(since.change, side.movement)}"
            changes.setdefault((side.side, since.day), []).append(words)
    return [
        f"Since the clinic visit on {date_words(day)}, {side.value} side: {'; '.join(words)}."
        for (side, day), words in changes.items()
    ]


def setup_words(sides: Iterable[SideProgress]) -> list[str]:
    """Return how the person stands otherwise than at first, one sentence a side, plain text."""
    return [
        f"{MOVEMENTS[side.movement].name}, {side.side.value}: {setup_sentence(side)}"
        for side in sides
        if side.setup_change
    ]


def when_words(sides: Sequence[SideProgress]) -> list[str]:
    """Return when gains of these sides would show, plain text; empty where verdicts stand."""
    sentences = [
        f"{MOVEMENTS[side.movement].name}, {side.side.value}: {when_known_sentence(side)}"
        for side in sides
        if side.time_to_know
    ]
    others = any(side.time_to_know and side.time_to_know.other_rhythms for side in sides)
    return [*sentences, NO_ADVICE] if others else sentences


def times_words(count: int) -> str:
    """Return a number of times, "once" or "3 times"."""
    return "once" if count == 1 else f"{count} times"


def how_measured(history: History) -> str:
    """Return the way of measuring, model and software behind the latest readings, as HTML."""
    latest: dict[Movement, MeasurementRecord] = {}
    for record in history.measurements:
        latest[record.measurement.movement] = record
    by_way: dict[str, list[str]] = {}
    for movement in Movement:
        if movement in latest:
            record = latest[movement]
            way = f"{conduct_words(record.conduct)}, {_reference(record)}"
            name = f"{MOVEMENTS[movement].name} seen {_VIEWS[record.measurement.view]}"
            by_way.setdefault(way, []).append(name)
    lines = [f"{'; '.join(names)}: {way}." for way, names in by_way.items()]
    lines += basis_sentences(record.measurement for record in latest.values())
    signed = [
        (instrument_signature(record.measurement.provenance), record)
        for record in history.measurements
    ]
    latest_of_signature = dict(signed)
    counts = Counter(way for way, _ in signed)
    lines += [
        f"{_instrument(latest_of_signature[way])} ({count} of {len(signed)} measurements)."
        for way, count in counts.most_common(3)
    ]
    if len(counts) > 3:
        lines.append(f"{len(counts) - 3} other ways of measuring were used as well.")
    return "".join(f"<p>{escape(line)}</p>" for line in lines)


def _reference(record: MeasurementRecord) -> str:
    if MOVEMENTS[record.measurement.movement].behind_back:
        return "height of the thumb between hips and neck"
    return _REFERENCES[record.measurement.reference]


def _instrument(record: MeasurementRecord) -> str:
    provenance = record.measurement.provenance
    hashes = ", ".join(
        f"{name} {value[:_CHECKSUM_SHOWN]}"
        for name, value in sorted(provenance.model_hashes.items())
    )
    software = ", ".join(f"{name} {value}" for name, value in sorted(provenance.software.items()))
    camera = provenance.setup.camera
    words = [
        f"Model: {provenance.model}" + (f" ({hashes})" if hashes else ""),
        f"camera: {camera.name or 'not named'}, "
        + ("lens calibrated" if camera.lens else "lens not calibrated"),
        f"correction against a goniometer: {provenance.setup.correction.study}"
        if provenance.setup.correction
        else "no correction against a goniometer",
        f"software: {software or 'not recorded'}",
    ]
    return "; ".join(words)


def side_text(side: Side, affected: tuple[Side, ...]) -> str:
    return f"{side.value}, affected" if side in affected else side.value
