"""Records as plain data and back, and what hostile data is answered."""

import contextlib
import datetime as dt
import json
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.domain.acquisition import LensProfile, Setup
from measure.domain.home_programme_records import PlannedExercise
from measure.domain.measurements import Measurement
from measure.domain.movements import Movement
from measure.domain.records import History, Pain
from measure.errors import DataError
from measure.system.json_codec import (
    from_data,
    json_reader,
    to_data,
    to_json,
    utc_from_text,
    utc_text,
)
from tests.support import record_samples as sample
from tests.support.record_strategies import measurements


@settings(max_examples=60, deadline=None)
@given(measurement=measurements())
def test_measurements_come_back_through_json(measurement: Measurement) -> None:
    text = json.dumps(to_data(measurement), allow_nan=False)
    assert from_data(Measurement, json.loads(text)) == measurement
    assert json_reader(Setup)(to_json(measurement.provenance.setup)) == measurement.provenance.setup


def test_plain_forms() -> None:
    assert to_data(Pain(rest=3)) == {"rest": 3, "night": None, "worst_24h": None}
    assert to_data((Movement.FLEXION, True, 1.5)) == ["flexion", True, 1.5]
    assert to_data(dt.date(2026, 3, 1)) == "2026-03-01"
    assert to_data({"a": np.float32(0.5), "b": np.int64(3)}) == {"a": 0.5, "b": 3}
    assert to_data([float("nan"), float("inf"), np.float32("nan")]) == [None, None, None]
    with pytest.raises(TypeError, match="no plain data"):
        to_data(object())


def test_equal_values_have_equal_text() -> None:
    assert to_json({"b": "2", "a": "1"}) == to_json({"a": "1", "b": "2"}) == '{"a":"1","b":"2"}'


def test_times_in_text_sort_as_times() -> None:
    early = dt.datetime(2026, 1, 1, tzinfo=dt.UTC)
    late = early + dt.timedelta(microseconds=1)
    assert utc_text(early) == "2026-01-01T00:00:00.000000Z"
    assert utc_text(early) < utc_text(late)
    assert utc_from_text(utc_text(late)) == late
    assert utc_from_text("2026-01-01T02:00:00+02:00") == early


@pytest.mark.parametrize(
    "text",
    ["", "today", "2026-01-01T00:00:00", "2026-02-30T00:00:00Z", "0001-01-01T00:00:00+14:00"],
)
def test_texts_that_are_no_time(text: str) -> None:
    with pytest.raises(DataError, match="is not a time"):
        utc_from_text(text, "started")


def _changed(**changes: Any) -> dict[str, Any]:
    plain: dict[str, Any] = to_data(sample.session(sample.person()))
    return plain | changes


@pytest.mark.parametrize(
    ("changes", "part"),
    [
        ({"note": 5}, r"s\.note: expected text"),
        ({"note": "\ud800"}, r"s\.note: half a character"),
        ({"note": "x" * 4001}, "4000 characters"),
        ({"note": "bell \x07"}, "not text"),
        ({"note": None}, "not nothing"),
        ({"finished": 1}, r"s\.finished: expected true or false"),
        ({"duration_s": "5"}, r"s\.duration_s: expected a number"),
        ({"duration_s": True}, "expected a number"),
        ({"duration_s": 10**400}, "a finite number"),
        ({"id": "../../etc"}, "not an identifier"),
        ({"id": "A" * 32}, "not an identifier"),
        (
            {"conduct": {"help": "crane", "posture": "standing"}},
            r"s\.conduct\.help: expected one of none",
        ),
        ({"conduct": []}, r"s\.conduct: expected an object"),
        ({"pain": {"rest": 11}}, "from 0"),
        ({"pain": {"rest": -1}}, "from 0"),
        ({"pain": {"rest": 2.5}}, r"s\.pain\.rest: expected a whole number"),
        ({"pain": {"rest": True}}, "a whole number"),
        ({"pain": {"rest": 2**63}}, "a whole number"),
        ({"started": {"utc": "now"}}, r"s\.started\.utc: 'now' is not a time"),
        ({"started": {"offset_min": 0}}, "'utc' is missing"),
        ({"mood": "good"}, "unknown field 'mood'"),
    ],
)
def test_hostile_sessions(changes: dict[str, Any], part: str) -> None:
    from measure.domain.records import SessionRecord

    with pytest.raises(DataError, match=part):
        from_data(SessionRecord, _changed(**changes), "s")


TOWEL = {"exercise": {"listed": "towel"}, "times_a_day": 3, "hold_s": 5}


@pytest.mark.parametrize(
    ("kind", "data", "part"),
    [
        (LensProfile, to_data(sample.SETUP.camera.lens) | {"focal_px": [1.0]}, "a list of 2"),
        (LensProfile, to_data(sample.SETUP.camera.lens) | {"focal_px": "12"}, "a list of 2"),
        (
            PlannedExercise,
            {"exercise": {"listed": "towel"}, "times_a_day": 13, "hold_s": 5},
            "1 to 12 times",
        ),
        (
            PlannedExercise,
            {"exercise": {"listed": "towel"}, "times_a_day": 3, "hold_s": 121},
            "0 to 120",
        ),
        (Pain, None, "expected an object, not nothing"),
        (Pain, [1, 2], "expected an object"),
    ],
)
def test_hostile_parts(kind: type, data: object, part: str) -> None:
    with pytest.raises(DataError, match=part):
        from_data(kind, data, "here")


def test_errors_stay_short_whatever_the_data() -> None:
    with pytest.raises(DataError) as caught:
        from_data(Pain, {"rest": ["x" * 10_000] * 1000}, "pain")
    assert len(str(caught.value)) < 400
    with pytest.raises(DataError) as caught:
        from_data(Pain, {"x" * 10_000: 1}, "pain")
    assert len(str(caught.value)) < 400


_json = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner),
    max_leaves=8,
)


@settings(max_examples=150, deadline=None)
@given(data=_json, name=st.sampled_from(["sessions", "measurements", "person", "plans"]))
def test_any_data_is_read_or_answered(data: object, name: str) -> None:
    plain = to_data(History(person=sample.person())) | {name: data}
    with contextlib.suppress(DataError):
        assert from_data(History, plain).person == sample.person()


@pytest.mark.parametrize("text", ["{", "[" * 100_000, '{"a":' * 5000])
def test_a_damaged_column_is_named(text: str) -> None:
    with pytest.raises(DataError, match="holds JSON is damaged"):
        json_reader(Setup)(text)
