"""Backup, delete everything, restore: every row of every table is back.

The tables are read from the schema, so a table that is added later has to be filled here too.
"""

import contextlib
import sqlite3
from pathlib import Path

import pytest

from measure.cli.main import main
from measure.domain.records import History
from measure.storage.store import Store
from tests.support import record_samples as sample

Rows = dict[str, list[tuple[object, ...]]]

WHO = sample.person()
SESSION = sample.session(WHO)


def fill() -> None:
    """Put at least one row into every table of the user's store."""
    with Store.open() as store:
        store.merge(
            History(
                person=WHO,
                sessions=(SESSION, sample.full_session(WHO)),
                measurements=(
                    sample.record(SESSION, 1),
                    sample.record(SESSION, 2, sample.REACH),
                    sample.record(SESSION, 3, sample.REFUSAL),
                ),
                events=(sample.event(WHO),),
                plans=(sample.plan(WHO), sample.own_plan(WHO)),
                exercises_done=(sample.exercise_log(WHO), sample.own_exercise_log(WHO)),
                next_mornings=(sample.next_morning(WHO),),
                goals=(sample.goal(WHO),),
                goal_ratings=(sample.goal_rating(WHO),),
                screenings=(sample.screening(WHO),),
                body=sample.body(WHO),
                places=(sample.place(WHO), sample.place(WHO, camera_name=None)),
            )
        )
        store.save_lens(sample.LENS)
        store.save_level(sample.LEVEL)
        store.save_correction(sample.CORRECTION)
        store.save_study(sample.STUDY)


def rows_of(path: Path) -> Rows:
    """Return every row of every table that the schema names."""
    with contextlib.closing(sqlite3.connect(path)) as connection:
        tables = connection.execute(
            "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
        )
        return {
            table: sorted(connection.execute(f"SELECT * FROM {table}"), key=repr)
            for (table,) in tables.fetchall()
        }


@pytest.fixture
def path(data_folder: Path) -> Path:
    fill()
    return data_folder / "sessions.sqlite"


def test_every_table_is_filled(path: Path) -> None:
    """A table without a row is not tested below: fill it above."""
    assert [table for table, rows in rows_of(path).items() if not rows] == []


def test_backup_delete_everything_restore(
    path: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = rows_of(path)
    copy = tmp_path / "copy.sqlite"
    assert main(["backup", str(copy)]) == 0
    for file in path.parent.iterdir():
        file.unlink()
    assert main(["restore", str(copy)]) == 0
    assert rows_of(path) == before
    assert main(["people", "delete", WHO.pseudonym, "--yes"]) == 0
    assert main(["restore", str(copy)]) == 0
    assert rows_of(path) == before


def test_deleting_the_only_person_leaves_nothing_but_cameras(path: Path) -> None:
    """What hangs on a person goes with them: a table added later cannot keep a row of theirs."""
    with Store.open(path) as store:
        store.delete_person(WHO.id)
    left = {table for table, rows in rows_of(path).items() if rows}
    assert left == {"lens", "camera_level", "correction", "agreement_study"}


def test_an_export_carries_every_table_of_a_person(
    path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = rows_of(path)
    file = str(tmp_path / "rosa.json")
    assert main(["export", WHO.pseudonym, "--format", "json", "--to", file]) == 0
    monkeypatch.setenv("THAWLINE_DATA", str(tmp_path / "elsewhere"))
    assert main(["import", file]) == 0
    after = rows_of(tmp_path / "elsewhere" / "sessions.sqlite")
    cameras = ("lens", "camera_level", "correction", "agreement_study")
    assert after == before | {table: [] for table in cameras}


def test_a_history_held_in_memory_brings_a_deleted_person_back(path: Path) -> None:
    before = rows_of(path)
    with Store.open(path) as store:
        history = store.history(WHO.id)
        store.delete_person(WHO.id)
        store.merge(history)
        assert store.history(WHO.id) == history
    after = rows_of(path)
    assert {table: len(rows) for table, rows in after.items()} == {
        table: len(rows) for table, rows in before.items()
    }
