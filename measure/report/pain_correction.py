"""Corrections of saved pain: the new ratings, and a line in the session's note about the former."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from measure.domain.records import MeasurementRecord, Pain, SessionRecord
from measure.progress.dates import date_words
from measure.progress.sentences import short_name
from measure.progress.wording import Translate, english
from measure.storage.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class PainRatings:
    """Ratings of pain of one session.

    Attributes
    ----------
    before
        Pain before the first movement.
    during
        Pain during each movement, by the identifier of its measurement; those that are not in it
        stay as they are.
    """

    before: Pain = field(default_factory=Pain)
    during: Mapping[str, int | None] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class PainCorrection:
    """A correction that was saved, with all that undoes it.

    Attributes
    ----------
    former
        The ratings as they were.
    line
        What the session's note says of it; empty where nothing was changed.
    """

    session_id: str
    former: PainRatings
    line: str


def ratings_of(session: SessionRecord, records: Iterable[MeasurementRecord]) -> PainRatings:
    """Return the ratings of a session and its measurements as they are."""
    return PainRatings(
        before=session.pain, during={record.id: record.pain_during for record in records}
    )


def correct_pain(
    store: Store, session_id: str, wanted: PainRatings, tr: Translate = english
) -> PainCorrection:
    """Save other ratings of a session; its note keeps the former ones and the day.

    Raises
    ------
    InputError
        When there is no such session, or no room in its note.
    """
    session = store.session(session_id)
    records = store.measurements(session.person_id, session_id=session_id)
    changes = _changes(session, records, wanted, tr)
    line = ""
    if changes:
        line = tr("Pain corrected on {day}: {changes}.").format(
            day=date_words(store.now().day, tr), changes="; ".join(changes)
        )
        note = with_lines(session.note, [line])
        store.save_pain(replace(session, pain=wanted.before, note=note), wanted.during)
    return PainCorrection(session_id=session_id, former=ratings_of(session, records), line=line)


def undo_correction(store: Store, correction: PainCorrection) -> None:
    """Save the former ratings again, and take the line out of the note.

    Raises
    ------
    InputError
        When there is no such session any more.
    """
    session, former = store.session(correction.session_id), correction.former
    lines = session.note.split("\n")
    if correction.line in lines:
        # The latest of equal ones is this correction's.
        del lines[len(lines) - 1 - lines[::-1].index(correction.line)]
    restored = replace(session, pain=former.before, note="\n".join(lines))
    store.save_pain(restored, former.during)


def with_lines(note: str, lines: Sequence[str]) -> str:
    """Return a note followed by lines."""
    return "\n".join(filter(None, (note, *lines)))


def _changes(
    session: SessionRecord,
    records: Iterable[MeasurementRecord],
    wanted: PainRatings,
    tr: Translate,
) -> list[str]:
    """Return each rating that becomes another one, with what it was."""
    former, before = session.pain, wanted.before
    pairs = [
        (tr("at rest"), former.rest, before.rest),
        (tr("at night"), former.night, before.night),
        (tr("worst in 24 hours"), former.worst_24h, before.worst_24h),
    ]
    for record in records:
        measurement = record.measurement
        what = tr("{movement}, {side}").format(
            movement=short_name(measurement.movement, tr), side=tr(measurement.side.value)
        )
        rating = record.pain_during
        pairs.append((what[:1].lower() + what[1:], rating, wanted.during.get(record.id, rating)))
    return [
        tr("{what}: {now} instead of {before}").format(
            what=what, now=_rating(now, tr), before=_rating(was, tr)
        )
        for what, was, now in pairs
        if was != now
    ]


def _rating(pain: int | None, tr: Translate) -> str:
    return tr("no answer") if pain is None else str(pain)
