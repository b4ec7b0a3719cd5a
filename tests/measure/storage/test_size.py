"""A year of daily sessions is read quickly, and no slower for others' years beside it.

Bounds are processor time and generous: they catch work that grows with the square of the
sessions or a lost index, not a slow computer. tests/bench/bench_store.py measures ten years.
"""

import time
from collections.abc import Iterator

import pytest

from measure.domain.movements import Movement
from measure.storage.store import Store
from tests.bench.bench_store import daily_history

DAYS = 365


@pytest.fixture(scope="module")
def store(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Store]:
    with Store.open(tmp_path_factory.mktemp("year") / "sessions.sqlite") as store:
        for name in ("Rosa", "Emil"):
            store.merge(daily_history(name, DAYS))
        yield store


def test_a_year_is_read_in_a_moment(store: Store) -> None:
    for who in store.people():
        before = time.process_time()
        history = store.history(who.id)
        took_s = time.process_time() - before
        assert len(history.sessions) == DAYS
        assert len(history.measurements) == 6 * DAYS
        assert took_s < 2.0


def test_one_curve_is_read_without_the_others(store: Store) -> None:
    who = store.people()[0]
    before = time.process_time()
    found = store.measurements(who.id, movement=Movement.ABDUCTION)
    took_s = time.process_time() - before
    assert len(found) == 2 * DAYS
    assert took_s < 1.0


@pytest.mark.parametrize(
    "table", ["session", "measurement", "event", "plan", "exercise_done", "next_morning"]
)
def test_a_person_is_found_by_an_index(table: str, store: Store) -> None:
    owner = "session" if table == "measurement" else "person"
    steps = store._connection.execute(
        f"EXPLAIN QUERY PLAN SELECT * FROM {table} WHERE {owner} = 1"
    ).fetchall()
    assert "USING INDEX" in steps[0][3]
