"""The table of trials: exact for programs, safe for spreadsheets."""

import csv
import io
import locale
import math

import pytest
from hypothesis import HealthCheck, given, settings

from measure.domain.records import AgeBand, History
from measure.domain.session_facts import ExerciseTiming, SessionState
from measure.export.history_csv import (
    COLUMNS,
    MEASUREMENT_COLUMNS,
    TRIAL_COLUMNS,
    DecimalSign,
    csv_for_programs,
    csv_for_spreadsheets,
    guarded,
    rows_by_measurement,
)
from tests.support import record_samples as sample
from tests.support.record_strategies import histories

WHO = sample.person(age_band=AgeBand.FIFTIES, diabetes=False, thyroid=True)
SESSION = sample.session(WHO, state=SessionState(timing=ExerciseTiming.AFTER, pain_relief=True))
HISTORY = History(
    person=WHO,
    sessions=(SESSION,),
    measurements=(
        sample.record(SESSION, 1),
        sample.record(SESSION, 2, sample.REACH),
        sample.record(SESSION, 3, sample.REFUSAL),
        sample.record(SESSION, 4, sample.measurement(value=-12.5, low=-20.0, high=-5.0, trials=())),
    ),
)


def _read(data: bytes, separator: str = ",") -> list[dict[str, str]]:
    text = data.decode("utf-8-sig")
    return list(csv.DictReader(io.StringIO(text, newline=""), delimiter=separator))


def test_one_row_a_trial_and_one_for_a_measurement_without() -> None:
    rows = _read(csv_for_programs(HISTORY))
    assert [row["trial"] for row in rows] == ["1", "2", "3", "4", "1", "1", ""]
    assert [row["movement"] for row in rows] == [
        *["flexion"] * 4,
        "hand-behind-back",
        "external-rotation",
        "flexion",
    ]
    assert [row["trial_value_deg"] for row in rows] == ["91.25", "93.5", "", "90.75", "", "", ""]
    assert [row["trial_scored"] for row in rows[:4]] == ["true", "true", "false", "true"]
    assert rows[2]["trial_refused_for"] == "trunk-lean"
    assert rows[2]["trial_flags"] == "trunk-lean shrug"
    assert rows[4]["trial_value_fraction"] == "0.5"
    assert (rows[4]["level_low"], rows[4]["level_high"]) == ("L3", "T12")
    assert (rows[5]["status"], rows[5]["value_deg"]) == ("refused", "")
    assert rows[6]["value_deg"] == "-12.5"


def test_state_and_typed_in_values_stand_beside_the_measurement() -> None:
    """A clinician's value stands in the rows of its movement and side only."""
    session = sample.full_session(WHO)
    reach = sample.record(session, 2, sample.REACH)
    rows = _read(
        csv_for_programs(
            History(person=WHO, sessions=(session,), measurements=(sample.record(session), reach))
        )
    )
    assert (rows[0]["exercise_timing"], rows[0]["pain_relief_4h"]) == ("after", "true")
    assert (rows[0]["clinician_passive_deg"], rows[0]["clinician_goniometer_deg"]) == (
        "105.0",
        "98.5",
    )
    assert rows[-1]["movement"] == "hand-behind-back"
    assert rows[-1]["clinician_passive_deg"] == rows[-1]["clinician_goniometer_deg"] == ""


def test_what_changes_a_number_stands_in_every_row() -> None:
    row = _read(csv_for_programs(HISTORY))[0]
    assert row["session_started_utc"] == "2026-04-02T08:00:00.000000Z"
    assert row["session_started_local"] == "2026-04-02 10:00:00"
    assert (row["help"], row["posture"]) == ("other-hand", "sitting")
    assert (row["view"], row["reference"]) == ("side", "trunk-axis")
    assert row["model_sha256"] == "full=" + "e9a5" * 16 + "; heavy=" + "59e4" * 16
    assert row["passes"] == "heavy; heavy mirrored"
    assert row["software"] == "mediapipe=1.2.3; thawline=0.1.0"
    assert '"roll_deg":-1.5' in row["setup_json"]
    assert (row["demo"], row["pain_during_0_10"]) == ("false", "5")


def test_units_stand_in_the_headers() -> None:
    assert not MEASUREMENT_COLUMNS.keys() & TRIAL_COLUMNS.keys()
    rows = [row for rows in rows_by_measurement(HISTORY) for row in rows]
    for header, getter in COLUMNS.items():
        cells = {type(cell) for cell in map(getter, rows) if cell is not None}
        if header.endswith(("_deg", "_fraction", "_s")):
            assert cells <= {float}, header
        else:
            assert len(cells) == 1, header
            assert float not in cells, header


def test_the_bytes_for_programs_do_not_depend_on_this_computer() -> None:
    before = csv_for_programs(HISTORY)
    assert not before.startswith(b"\xef\xbb\xbf")
    assert before.splitlines()[0].decode() == ",".join(COLUMNS)
    kept = locale.setlocale(locale.LC_ALL)
    for name in ("de_DE.UTF-8", "C.UTF-8", "C"):
        try:
            locale.setlocale(locale.LC_ALL, name)
        except locale.Error:
            continue
        assert csv_for_programs(HISTORY) == before
    locale.setlocale(locale.LC_ALL, kept)


def test_for_spreadsheets_with_a_decimal_comma() -> None:
    data = csv_for_spreadsheets(HISTORY, DecimalSign.COMMA)
    assert data.startswith(b"\xef\xbb\xbfperson;person_id;")
    rows = _read(data, ";")
    assert rows[0]["value_deg"] == "91,25"
    assert rows[6]["value_deg"] == "-12,5"
    assert rows[4]["value_fraction"] == "0,5"
    assert rows[0]["pain_rest_0_10"] == "1"


def test_for_spreadsheets_with_a_decimal_point() -> None:
    data = csv_for_spreadsheets(HISTORY, DecimalSign.POINT)
    assert data.startswith(b"\xef\xbb\xbfperson,person_id,")
    assert _read(data)[6]["value_deg"] == "-12.5"


@pytest.mark.parametrize(
    "text",
    [
        "=1+1",
        "=cmd|' /C calc'!A0",
        "+49 30 12",
        "-2+3",
        "@SUM(A1)",
        "\t=1+1",
        "\r=1+1",
        "\n=1+1",
        "  =1+1",
        "\u00a0=1+1",
        "\ufeff=1+1",
        "\uff1d1+1",
        "\uff0b1",
        "\uff0d1",
        "\uff20SUM(A1)",
        "\u2212 1",
        "-",
        '=HYPERLINK("http://a.example";"b")',
        "3-4",
        "1/2",
        "9.10",
        "9,10",
        "22.5",
        "12:30",
        "2026-03",
        "2026-03-14",
        "1.2.26 in the morning",
        "007",
        "12e5",
        "1E-3",
        "1 000,5",
        "50 %",
        "MAR1",
        "Mar 5",
        "März 2026",
        "5. mai",
        "12-Dez-2026",
        "1 sept.",
        "TRUE",
        "falsch",
    ],
)
def test_texts_that_a_spreadsheet_would_change(text: str) -> None:
    assert guarded(text) == "'" + text


@pytest.mark.parametrize(
    "text",
    [
        "",
        "Rosa",
        "Rosa 2",
        "Bed 7, left",
        "It hurts = sometimes",
        "a-b",
        "L3",
        "T12",
        "upper lumbar",
        "Marta",
        "May be better",
        "heavy=59e4",
        "5 beds dug over",
        "true enough",
        "日本",
    ],
)
def test_texts_that_a_spreadsheet_leaves_alone(text: str) -> None:
    assert guarded(text) == text


def test_hostile_names_and_notes_are_guarded_and_numbers_are_not() -> None:
    who = sample.person("=1+1")
    session = sample.session(who, note='=HYPERLINK("x")\nsecond "line"; more, of it')
    history = History(
        person=who,
        sessions=(session,),
        measurements=(sample.record(session, 1, sample.measurement(value=-3.5)),),
    )
    (row, *_) = _read(csv_for_spreadsheets(history, DecimalSign.COMMA), ";")
    assert row["person"] == "'=1+1"
    assert row["session_note"] == "'" + session.note
    assert row["value_deg"] == "-3,5"
    (row, *_) = _read(csv_for_programs(history))
    assert (row["person"], row["session_note"]) == ("=1+1", session.note)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(history=histories())
def test_numbers_and_texts_come_back(history: History) -> None:
    exact = _read(csv_for_programs(history))
    shown = _read(csv_for_spreadsheets(history, DecimalSign.COMMA), ";")
    expected = [
        (record, trial)
        for record in history.measurements
        for trial in record.measurement.trials or (None,)
    ]
    assert len(exact) == len(shown) == len(expected)
    notes = {session.id: session.note for session in history.sessions}
    for row, other, (record, trial) in zip(exact, shown, expected, strict=True):
        unit = record.measurement.unit
        value = trial.value if trial else None
        name = f"trial_value_{unit}" if unit == "fraction" else "trial_value_deg"
        assert row[name] == ("" if value is None else repr(value))
        assert row["session_note"] == notes[record.session_id]
        assert row["person"] == history.person.pseudonym
        if value is not None:
            back = float(other[name].replace(",", "."))
            assert math.isclose(back, value, rel_tol=1e-9, abs_tol=5.1e-5)
