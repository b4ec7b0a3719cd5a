"""The exported history comes back whole, and a hostile file is answered in plain words."""

import json
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from measure.domain.records import History
from measure.errors import DataError, InputError
from measure.export import history_json as history_json_module
from measure.export.history_json import history_from_json, history_json, read_history
from measure.export.history_schema import SCHEMA
from measure.storage.store import Store
from tests.support import record_samples as sample
from tests.support.record_samples import FixedClock
from tests.support.record_strategies import histories

WHO = sample.person()
SESSION = sample.session(WHO)
HISTORY = History(
    person=WHO,
    sessions=(SESSION, sample.full_session(WHO)),
    measurements=(sample.record(SESSION, 1), sample.record(SESSION, 2, sample.REACH)),
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
#: What earlier versions could hold of it.
UNSCREENED = replace(HISTORY, sessions=(SESSION,), goals=(), goal_ratings=(), screenings=())
STRETCHES_ONLY = replace(
    UNSCREENED,
    plans=(sample.plan(WHO),),
    exercises_done=(sample.exercise_log(WHO),),
    next_mornings=(),
    goals=(),
    goal_ratings=(),
)
NOW = FixedClock().now()
GOLDEN = Path(__file__).parent / "golden"


def _plain() -> dict[str, Any]:
    content: dict[str, Any] = json.loads(history_json(HISTORY, NOW, "0.1.0"))
    return content


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(history=histories())
def test_a_history_comes_back_as_it_went_out(history: History) -> None:
    assert history_from_json(history_json(history, NOW, "0.1.0")) == history


def test_what_the_file_says_about_itself() -> None:
    content = _plain()
    assert (content["format"], content["schema"]) == ("thawline-history", SCHEMA)
    assert content["written"]["utc"] == "2026-04-01T08:00:00.000000Z"
    assert "not a diagnosis" in content["notice"]
    assert content["person"]["demo"] is False


def test_every_earlier_schema_has_its_golden_file_and_is_read() -> None:
    """A file of each version that was ever written, kept as that version wrote it."""
    for schema in range(1, SCHEMA):
        file = GOLDEN / f"history-of-schema-{schema}.json"
        assert json.loads(file.read_bytes())["schema"] == schema
        read = read_history(file)
        assert read.person == WHO
        assert read.measurements == HISTORY.measurements


def test_a_file_of_the_first_schema_is_read_as_before() -> None:
    """It holds neither body nor places."""
    file = GOLDEN / "history-of-schema-1.json"
    assert json.loads(file.read_bytes())["schema"] == 1
    assert read_history(file) == replace(STRETCHES_ONLY, body=None, places=())


def test_a_file_of_the_second_schema_is_read_as_before() -> None:
    """Its plans and its list of what was done name stretches; nothing is added to them."""
    file = GOLDEN / "history-of-schema-2.json"
    assert json.loads(file.read_bytes())["schema"] == 2
    assert read_history(file) == STRETCHES_ONLY


def test_a_file_of_the_third_schema_is_read_as_before() -> None:
    """It holds no goals and no screenings, and its sessions do not say the shoulder's state."""
    file = GOLDEN / "history-of-schema-3.json"
    assert json.loads(file.read_bytes())["schema"] == 3
    assert read_history(file) == UNSCREENED


@pytest.mark.parametrize(
    ("path", "value", "part"),
    [
        (("stretches",), 5, "exercises_done: expected a list"),
        (("stretches", 0), 5, r"exercises_done\[0\]: expected an object"),
        (("stretches", 0, "stretch"), "dancing", r"exercises_done\[0\].exercise.listed"),
        (("plans", 0, "stretches"), None, r"plans\[0\].exercises: expected a list"),
        (("plans", 0, "stretches", 1, "times_a_day"), 13, "1 to 12 times"),
    ],
)
def test_a_file_of_the_second_schema_that_was_changed(
    path: tuple[Any, ...], value: object, part: str
) -> None:
    content: Any = json.loads((GOLDEN / "history-of-schema-2.json").read_bytes())
    place = content
    for step in path[:-1]:
        place = place[step]
    place[path[-1]] = value
    with pytest.raises(DataError, match=part):
        history_from_json(json.dumps(content).encode())


def test_every_field_is_documented() -> None:
    """measure/docs/json-export.md names each field that the file can hold."""
    page = (Path(__file__).parents[3] / "measure/docs/json-export.md").read_text(encoding="utf-8")
    named = set(re.findall(r"`([a-z0-9_]+)`", page))
    free = {"model_hashes", "software", "source"}

    def fields(value: object, under: str = "") -> set[str]:
        if isinstance(value, list):
            return set().union(*(fields(item, under) for item in value))
        if isinstance(value, dict):
            own = set() if under in free else set(value)
            return own.union(*(fields(item, name) for name, item in value.items()))
        return set()

    assert fields(_plain()) - named == set()


def test_a_mark_at_the_start_does_no_harm() -> None:
    data = b"\xef\xbb\xbf" + history_json(HISTORY, NOW, "0.1.0")
    assert history_from_json(data) == HISTORY


@pytest.mark.parametrize(
    ("data", "part"),
    [
        (b"", "not JSON"),
        (b"{", "not JSON"),
        (b"\xff\xfe", "not UTF-8"),
        (b"[]", "not a history"),
        (b"null", "not a history"),
        (b'{"format": "thawline-history"}', "which version"),
        (b'{"format": "thawline-history", "schema": true}', "which version"),
        (b'{"format": "thawline-history", "schema": "1"}', "which version"),
        (b'{"format": "thawline-history", "schema": 5}', "later version"),
        (b'{"format": "thawline-history", "schema": 1}', "'written' is missing"),
        (b'{"format": "thawline-history", "schema": NaN}', "not a number in JSON"),
        (b"[" * 100_000, "too deeply"),
        (b'{"a":' * 100_000, "too deeply"),
        (b"1" * 5000, "not JSON"),
        (b"PK\x03\x04", "not a history|not JSON"),
    ],
)
def test_what_is_no_history(data: bytes, part: str) -> None:
    with pytest.raises(DataError, match=part):
        history_from_json(data)


@pytest.mark.parametrize(
    ("path", "value", "part"),
    [
        (("written",), 5, "written: expected an object"),
        (("software",), None, "'software' has unexpected contents"),
        (("person",), None, "person: expected an object"),
        (("person", "pseudonym"), "\u202e", "printable"),
        (("sessions",), {}, "sessions: expected a list"),
        (("sessions", 0, "person_id"), "0" * 32, "someone else"),
        (("measurements", 0, "session_id"), "0" * 32, "is missing"),
        (("measurements", 1, "id"), "EQUAL", "not an identifier"),
        (("measurements", 0, "measurement", "value"), "91", r"\.value: expected a number"),
        (("measurements", 0, "measurement", "trials", 0, "flags"), ["x"], "one of nobody"),
        (("events", 0, "day"), "tomorrow", "a day such as"),
        (("body", "person_id"), "0" * 32, "someone else"),
        (("body", "body", "upper_arm"), 7, "upper arm 7 cannot be"),
        (("body", "marks_day"), None, "the marks have no day"),
        (("places", 1, "person_id"), "0" * 32, "someone else"),
        (("places", 0, "trunk_px"), 0, "no such size"),
        (("places", 1, "camera_name"), "Laptop camera", "Two saved places"),
        (("extra",), 1, "unknown field 'extra'"),
    ],
)
def test_a_file_that_was_changed(path: tuple[Any, ...], value: object, part: str) -> None:
    content = _plain()
    place: Any = content
    for step in path[:-1]:
        place = place[step]
    place[path[-1]] = value
    with pytest.raises(DataError, match=part):
        history_from_json(json.dumps(content).encode())


def test_sizes_are_bounded_before_anything_is_made(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    data = history_json(HISTORY, NOW, "0.1.0")
    path = tmp_path / "rosa.json"
    path.write_bytes(data)
    monkeypatch.setattr(history_json_module, "LARGEST_FILE_BYTES", len(data))
    assert read_history(path) == HISTORY
    monkeypatch.setattr(history_json_module, "LARGEST_FILE_BYTES", len(data) - 1)
    with pytest.raises(DataError, match="larger than any history"):
        read_history(path)
    monkeypatch.undo()
    monkeypatch.setattr(history_json_module, "MOST_CONTAINERS", 10)
    with pytest.raises(DataError, match="more records than any"):
        read_history(path)
    monkeypatch.undo()
    monkeypatch.setattr(history_json_module, "MOST_ITEMS", 10)
    with pytest.raises(DataError, match=r"Nothing was changed\. Choose a file"):
        read_history(path)


def test_files_that_cannot_be_read(tmp_path: Path) -> None:
    for name in ("nothing.json", ""):
        with pytest.raises(InputError, match="no file"):
            read_history(tmp_path / name)


def test_merging_adds_what_is_missing_and_keeps_what_is_here(tmp_path: Path) -> None:
    changed = sample.session(WHO, note="Told otherwise.")
    second = sample.session(WHO, 2)
    longer = History(
        person=WHO,
        sessions=(changed, second),
        measurements=(*HISTORY.measurements, sample.record(second)),
        events=HISTORY.events,
        plans=HISTORY.plans,
        exercises_done=HISTORY.exercises_done,
    )
    with Store.open(tmp_path / "sessions.sqlite") as store:
        store.merge(HISTORY)
        merged = store.merge(longer)
        assert (merged.added, merged.same, merged.kept) == (2, 7, 1)
        assert store.sessions(WHO.id) == [SESSION, second, sample.full_session(WHO)]


def test_a_pseudonym_that_is_taken_gets_a_number(tmp_path: Path) -> None:
    with Store.open(tmp_path / "sessions.sqlite") as store:
        store.save_person(sample.person("ROSA"))
        store.save_person(sample.person("Rosa (2)"))
        merged = store.merge(HISTORY)
        assert merged.person.pseudonym == "Rosa (3)"
        assert store.merge(HISTORY).new_person is False
        long = sample.person("x" * 60, id=sample.some_id("another"))
        store.save_person(sample.person("x" * 60))
        assert store.merge(History(person=long)).person.pseudonym == "x" * 56 + " (2)"


def test_records_of_somebody_else_are_not_taken_over(tmp_path: Path) -> None:
    other = sample.person("Emil")
    stolen = sample.session(other, id=SESSION.id)
    with Store.open(tmp_path / "sessions.sqlite") as store:
        store.merge(HISTORY)
        with pytest.raises(DataError, match="belongs to another person here"):
            store.merge(History(person=other, sessions=(stolen,)))
        assert store.people() == [WHO]
        assert store.history(WHO.id) == HISTORY
