"""Pain that was saved wrongly becomes right; a note says what it was, undo leaves no trace."""

from collections.abc import Iterator
from dataclasses import replace

import pytest

from measure.domain.record_checks import LONGEST_NOTE
from measure.domain.records import History, Pain
from measure.errors import InputError
from measure.report.pain_correction import (
    PainRatings,
    correct_pain,
    ratings_of,
    undo_correction,
    with_lines,
)
from measure.storage.store import Store
from tests.support import record_samples as sample

WHO = sample.person()
FIRST = sample.session(WHO, 1, pain=Pain(rest=7, night=2), note="Slept badly.")
SECOND = sample.session(WHO, 2)
RECORDS = (sample.record(FIRST, 1), sample.record(FIRST, 2, sample.REACH), sample.record(SECOND, 1))


@pytest.fixture
def store() -> Iterator[Store]:
    with Store.in_memory(clock=sample.FixedClock()) as made:
        made.merge(History(person=WHO, sessions=(FIRST, SECOND), measurements=RECORDS))
        yield made


def test_the_note_keeps_day_and_former_ratings(store: Store) -> None:
    first, reach, _ = RECORDS
    before = store.history(WHO.id)
    during = {first.id: 1, reach.id: None}
    wanted = PainRatings(before=Pain(rest=1, night=2, worst_24h=3), during=during)
    correction = correct_pain(store, FIRST.id, wanted)
    session = store.session(FIRST.id)
    assert session.pain == wanted.before
    assert session.note == f"Slept badly.\n{correction.line}"
    assert correction.line.startswith("Pain corrected on 1 Apr 2026: at rest: 1 instead of 7; ")
    assert "worst in 24 hours: 3 instead of no answer" in correction.line
    assert f": 1 instead of {first.pain_during}" in correction.line
    assert f": no answer instead of {reach.pain_during}" in correction.line
    assert "at night" not in correction.line
    after = store.history(WHO.id)
    assert after.sessions[1] == SECOND
    # All else of the measurements is as it was.
    assert after.measurements == tuple(
        replace(record, pain_during=during.get(record.id, record.pain_during))
        for record in before.measurements
    )
    undo_correction(store, correction)
    assert store.history(WHO.id) == before


def test_two_corrections_are_undone_one_by_one(store: Store) -> None:
    wanted = [PainRatings(before=Pain(rest=rest)) for rest in (1, 2)]
    corrections = [correct_pain(store, FIRST.id, each) for each in wanted]
    assert store.session(FIRST.id).note.count("Pain corrected") == 2
    undo_correction(store, corrections[1])
    session = store.session(FIRST.id)
    assert (session.pain, session.note) == (Pain(rest=1), f"Slept badly.\n{corrections[0].line}")
    undo_correction(store, corrections[0])
    assert store.session(FIRST.id) == FIRST


def test_what_is_not_changed_is_not_noted(store: Store) -> None:
    before = store.history(WHO.id)
    same = ratings_of(FIRST, RECORDS[:2])
    correction = correct_pain(store, FIRST.id, same)
    assert correction.line == ""
    assert store.history(WHO.id) == before


def test_a_measurement_of_another_session_stays(store: Store) -> None:
    session, other = store.session(FIRST.id), RECORDS[2]
    store.save_pain(session, {other.id: 9})
    assert store.measurements(WHO.id) == list(RECORDS)


@pytest.mark.parametrize("rating", [-1, 11])
def test_an_impossible_rating_changes_nothing(store: Store, rating: int) -> None:
    before = store.history(WHO.id)
    wanted = PainRatings(before=Pain(rest=1), during={RECORDS[0].id: rating})
    with pytest.raises(InputError, match="Pain is rated from 0"):
        correct_pain(store, FIRST.id, wanted)
    assert store.history(WHO.id) == before


def test_without_room_in_the_note_nothing_is_lost(store: Store) -> None:
    store.save_session(replace(FIRST, note="x" * LONGEST_NOTE))
    with pytest.raises(InputError, match="A note can have"):
        correct_pain(store, FIRST.id, PainRatings(before=Pain(rest=1)))
    assert store.session(FIRST.id).pain == FIRST.pain


def test_a_session_that_is_gone_is_named(store: Store) -> None:
    store.delete_session(FIRST.id)
    with pytest.raises(InputError, match="no longer saved"):
        correct_pain(store, FIRST.id, PainRatings())


def test_lines_follow_a_note() -> None:
    assert with_lines("", ["a", "b"]) == "a\nb"
    assert with_lines("note", []) == "note"
