"""Wording of the report: person, pain, events, earlier trends, way of measuring."""

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
from measure.progress.dates import date_words
from measure.progress.phases import SeriesPhase
from measure.progress.sentences import (
    A_MONTH,
    NO_ADVICE,
    setup_sentence,
    uncompared_slope,
    when_known_sentence,
)
from measure.progress.series import instrument_signature
from measure.progress.shoulder import SideProgress
from measure.progress.side_wording import END_WORDS
from measure.progress.weekly_verdicts import Verdict
from measure.progress.wording import (
    INTERVAL,
    VERDICT_WORDS,
    WITH_INTERVAL,
    Translate,
    change_words,
    conduct_words,
    english,
    name_words,
    number_words,
    slope_words,
)
from measure.report.measurement_wording import basis_sentences

_ONSETS = {
    Onset.GRADUAL: "began gradually",
    Onset.INJURY: "began with an injury",
    Onset.OPERATION: "began with an operation",
    Onset.ARM_KEPT_STILL: "began while the arm was kept still",
    Onset.OTHER: "began in another way",
}
_REFERENCES = {
    Reference.TRUNK_AXIS: "against the trunk's axis",
    Reference.PLUMB_LINE: "against the vertical",
}
_AFFECTED = {
    (Side.LEFT,): "left side affected",
    (Side.RIGHT,): "right side affected",
    (Side.LEFT, Side.RIGHT): "both shoulders affected",
}
_HANDED = {Side.LEFT: "left-handed", Side.RIGHT: "right-handed"}
_DIABETES = ("diabetes", "no diabetes")
_THYROID = ("thyroid disease", "no thyroid disease")
BEFORE_BREAK = "Before “{why}”, {side} side, {first} to {last}: {trends}."
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
    View.FRONT: "{movement} seen from the front",
    View.BACK: "{movement} seen from the back",
    View.SIDE: "{movement} seen from the side",
    View.OBLIQUE: "{movement} seen from the front at an angle",
}

#: All words of this module's tables, for the extractor of texts to translate.
WORDS = (
    *_ONSETS.values(),
    *_REFERENCES.values(),
    *_AFFECTED.values(),
    *_HANDED.values(),
    *_DIABETES,
    *_THYROID,
    *_AGES.values(),
    *_VIEWS.values(),
    BEFORE_BREAK,
)

#: Characters of a checksum that distinguish two models in print. [technical]
_CHECKSUM_SHOWN = 10


def person_words(history: History, today: dt.date, tr: Translate) -> str:
    """Return the person and the time covered, as HTML."""
    person = history.person
    words = []
    if person.affected:
        words.append(tr(_AFFECTED[person.affected]))
    if person.dominant:
        words.append(tr(_HANDED[person.dominant]))
    if person.since:
        words.append(tr("since {when}").format(when=person.since))
    if person.onset:
        words.append(tr(_ONSETS[person.onset]))
    if person.age_band:
        words.append(tr(_AGES[person.age_band]))
    for stated, (yes, no) in ((person.diabetes, _DIABETES), (person.thyroid, _THYROID)):
        if stated is not None:
            words.append(tr(yes if stated else no))
    made = tr("Made on {day}.").format(day=date_words(today, tr))
    if len(history.sessions) == 1:
        made = tr("Made on {day} from one session, {first}.").format(
            day=date_words(today, tr), first=date_words(history.sessions[0].started.day, tr)
        )
    elif history.sessions:
        first, last = (date_words(history.sessions[k].started.day, tr) for k in (0, -1))
        made = tr("Made on {day} from {count} sessions, {first} to {last}.").format(
            day=date_words(today, tr), count=len(history.sessions), first=first, last=last
        )
    name = f"<b>{escape(name_words(person.pseudonym, tr))}</b>"
    return f"{', '.join([name, *map(escape, words)])}. {escape(made)}"


def event_words(event: Event, tr: Translate) -> str:
    """Return an event as HTML."""
    what = tr(EVENT_WORDS[event.kind])
    words = tr("{day}: {what}").format(day=date_words(event.day, tr), what=what)
    if event.side:
        words += tr(", {side} side").format(side=tr(event.side.value))
    note = f": {event.note}" if event.note else ""
    return escape(words + note)


def pain_words(history: History, today: dt.date, tr: Translate) -> str:
    """Return the ratings of pain over the last two weeks, median and range."""
    lately = [
        session.pain for session in history.sessions if (today - session.started.day).days < 14
    ]
    parts = []
    for template, ratings in (
        (tr("worst in 24 hours {rating}"), [pain.worst_24h for pain in lately]),
        (tr("at night {rating}"), [pain.night for pain in lately]),
        (tr("at rest {rating}"), [pain.rest for pain in lately]),
    ):
        given = [rating for rating in ratings if rating is not None]
        if given:
            parts.append(template.format(rating=_middle(given, tr)))
    if not parts:
        return tr("Pain at rest, at night and in 24 hours was not rated in the last two weeks.")
    words = tr("Pain in the last two weeks, 0 to 10, median and range: {ratings}.")
    return words.format(ratings="; ".join(parts))


def _middle(ratings: Sequence[int], tr: Translate) -> str:
    """Return the median of ratings and their range, "3 (2 to 5)"."""
    interval = tr(INTERVAL).format(low=min(ratings), high=max(ratings))
    return tr(WITH_INTERVAL).format(value=number_words(median(ratings), 0, tr), range=interval)


def during_words(history: History, today: dt.date, tr: Translate) -> str:
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
        stops = Counter(record.stopped_by for record in lately if record.stopped_by)
        words = [tr("pain {rating}").format(rating=_middle(pain, tr))] if pain else []
        words += [
            tr("stopped by {what} {times}").format(
                what=tr(END_WORDS[stop]), times=times_words(count, tr)
            )
            for stop, count in stops.most_common()
        ]
        if words:
            parts.append(f"{tr(MOVEMENTS[movement].name)}: {', '.join(words)}")
    if not parts:
        return ""
    template = (
        tr("During movement in the last four weeks, affected side. {movements}.")
        if len(affected) == 1
        else tr("During movement in the last four weeks, both sides. {movements}.")
    )
    return template.format(movements="; ".join(parts))


def phase_words(sides: Iterable[SideProgress], tr: Translate = english) -> list[str]:
    """Return the verdicts before the latest breaks, one sentence per break, plain text."""
    phases: dict[tuple[Side, dt.date, str], list[tuple[SideProgress, SeriesPhase]]] = {}
    for progress in sides:
        for phase in progress.earlier[-MOST_PHASES:]:
            if phase.verdict is not Verdict.TOO_EARLY:
                key = (progress.side, phase.ended, phase.ended_by)
                phases.setdefault(key, []).append((progress, phase))
    return [
        tr(BEFORE_BREAK).format(
            why=", ".join(tr(reason) for reason in ended_by.split(" and ")),
            side=tr(side.value),
            first=date_words(min(phase.first for _, phase in members), tr),
            last=date_words(max(phase.last for _, phase in members), tr),
            trends="; ".join(_phase_trend(progress, phase, tr) for progress, phase in members),
        )
        for (side, _, ended_by), members in phases.items()
    ]


def _phase_trend(progress: SideProgress, phase: SeriesPhase, tr: Translate) -> str:
    words = f"{tr(MOVEMENTS[progress.movement].name)} {tr(VERDICT_WORDS[phase.verdict])}"
    slope = uncompared_slope(phase, progress)
    if slope is None:
        return words
    return f"{words}, {tr(A_MONTH).format(change=slope_words(slope, progress.movement, tr))}"


def visit_words(sides: Iterable[SideProgress], tr: Translate) -> list[str]:
    """Return the change since the latest clinic visit, one sentence a side, plain text."""
    changes: dict[tuple[Side, dt.date], list[str]] = {}
    for side in sides:
        if since := side.since_visit:
            name = tr(MOVEMENTS[side.movement].name)
            words = f"{name} {change_words(since.change, side.movement, tr)}"
            changes.setdefault((side.side, since.day), []).append(words)
    return [
        tr("Since the clinic visit on {day}, {side} side: {changes}.").format(
            day=date_words(day, tr), side=tr(side.value), changes="; ".join(words)
        )
        for (side, day), words in changes.items()
    ]


def setup_words(sides: Iterable[SideProgress], tr: Translate) -> list[str]:
    """Return how the person stands otherwise than at first, one sentence a side, plain text."""
    return [
        f"{_subject(side, tr)}: {setup_sentence(side, tr)}" for side in sides if side.setup_change
    ]


def when_words(sides: Sequence[SideProgress], tr: Translate) -> list[str]:
    """Return when gains of these sides would show, plain text; empty where verdicts stand."""
    sentences = [
        f"{_subject(side, tr)}: {when_known_sentence(side, tr)}"
        for side in sides
        if side.time_to_know
    ]
    others = any(side.time_to_know and side.time_to_know.other_rhythms for side in sides)
    return [*sentences, tr(NO_ADVICE)] if others else sentences


def _subject(side: SideProgress, tr: Translate) -> str:
    return f"{tr(MOVEMENTS[side.movement].name)}, {tr(side.side.value)}"


def times_words(count: int, tr: Translate) -> str:
    """Return a number of times, "once" or "3 times"."""
    return tr("once") if count == 1 else tr("{count} times").format(count=count)


def how_measured(history: History, tr: Translate) -> str:
    """Return the way of measuring, model and software behind the latest readings, as HTML."""
    latest: dict[Movement, MeasurementRecord] = {}
    for record in history.measurements:
        latest[record.measurement.movement] = record
    by_way: dict[str, list[str]] = {}
    for movement in Movement:
        if movement in latest:
            record = latest[movement]
            way = f"{conduct_words(record.conduct, tr)}, {_reference(record, tr)}"
            name = tr(_VIEWS[record.measurement.view]).format(movement=tr(MOVEMENTS[movement].name))
            by_way.setdefault(way, []).append(name)
    lines = [f"{'; '.join(names)}: {way}." for way, names in by_way.items()]
    lines += basis_sentences((record.measurement for record in latest.values()), tr)
    signed = [
        (instrument_signature(record.measurement.provenance), record)
        for record in history.measurements
    ]
    latest_of_signature = dict(signed)
    counts = Counter(way for way, _ in signed)
    lines += [
        tr("{instrument} ({count} of {total} measurements).").format(
            instrument=_instrument(latest_of_signature[way], tr), count=count, total=len(signed)
        )
        for way, count in counts.most_common(3)
    ]
    if len(counts) > 3:
        lines.append(
            tr("{count} other ways of measuring were used as well.").format(count=len(counts) - 3)
        )
    return "".join(f"<p>{escape(line)}</p>" for line in lines)


def _reference(record: MeasurementRecord, tr: Translate) -> str:
    if MOVEMENTS[record.measurement.movement].behind_back:
        return tr("height of the thumb between hips and neck")
    return tr(_REFERENCES[record.measurement.reference])


def _instrument(record: MeasurementRecord, tr: Translate) -> str:
    provenance = record.measurement.provenance
    hashes = ", ".join(
        f"{name} {value[:_CHECKSUM_SHOWN]}"
        for name, value in sorted(provenance.model_hashes.items())
    )
    software = ", ".join(f"{name} {value}" for name, value in sorted(provenance.software.items()))
    camera, correction = provenance.setup.camera, provenance.setup.correction
    name = camera.name or tr("not named")
    model = provenance.model + (f" ({hashes})" if hashes else "")
    words = [
        tr("Model: {name}").format(name=model),
        (
            tr("camera: {name}, lens calibrated")
            if camera.lens
            else tr("camera: {name}, lens not calibrated")
        ).format(name=name),
        tr("correction against a goniometer: {study}").format(study=correction.study)
        if correction
        else tr("no correction against a goniometer"),
        tr("software: {versions}").format(versions=software or tr("not recorded")),
    ]
    return "; ".join(words)


def side_text(side: Side, affected: tuple[Side, ...], tr: Translate) -> str:
    if side not in affected:
        return tr(side.value)
    return tr("left, affected") if side is Side.LEFT else tr("right, affected")
