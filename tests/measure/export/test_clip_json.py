import json
from dataclasses import replace
from pathlib import Path

import pytest

from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Provenance, Status, Trial
from measure.domain.movements import Movement, Unit, View
from measure.domain.reasons import SENTENCES, Reason
from measure.domain.vertebral_levels import level_of
from measure.errors import ClipError, DataError
from measure.export.clip_json import clip_result, document, write_results
from measure.system.atomic_files import write_json

TRIAL = Trial(
    value=101.234,
    low=96.0,
    high=106.5,
    start_s=1.0,
    end_s=5.0,
    hold_start_s=2.5,
    hold_end_s=4.0,
    flags=(Reason.SHRUG,),
)


def measurement(**changes):
    usual = {
        "movement": Movement.FLEXION,
        "side": Side.LEFT,
        "view": View.SIDE,
        "status": Status.READING,
        "unit": Unit.DEGREES,
        "value": 101.234,
        "low": 96.0,
        "high": 106.5,
        "trials": (TRIAL,),
        "reasons": (Reason.SHRUG,),
        "provenance": Provenance(model="heavy", model_hashes={"heavy": "ab"}),
    }
    return Measurement(**(usual | changes))


REFUSED = measurement(
    status=Status.REFUSED, value=None, low=None, high=None, trials=(), reasons=(Reason.NOBODY,)
)


def test_a_reading_keeps_the_contract():
    (result,) = document({"thawline": "1"}, [("a.mp4", measurement())])["results"]
    contract = {"clip", "movement", "side", "view", "status", "value", "unit", "low", "high"}
    contract |= {"trials", "reasons", "level"}
    assert contract <= result.keys()
    assert (result["status"], result["value"], result["unit"]) == ("reading", 101.23, "deg")
    assert result["trials"][0]["flags"] == ["shrug"]
    assert {"value", "start_s", "end_s", "flags"} <= result["trials"][0].keys()
    assert result["level"] is None


def test_a_refusal_has_no_numbers():
    (result,) = document({}, [("a.mp4", REFUSED)])["results"]
    assert result["status"] == "refused"
    assert (result["value"], result["low"], result["high"]) == (None, None, None)
    assert result["reasons"] == ["nobody"]


def test_a_reach_names_its_levels():
    reach = measurement(
        movement=Movement.HAND_BEHIND_BACK,
        unit=Unit.FRACTION,
        value=0.45678,
        low=0.36,
        high=0.56,
        level=level_of(0.36, 0.45678, 0.56),
    )
    (result,) = document({}, [("a.mp4", reach)])["results"]
    assert result["value"] == 0.4568
    assert set(result["level"]) == {"low", "high", "band", "decided_by"}


def test_every_reason_has_a_sentence():
    assert set(SENTENCES) == set(Reason)
    assert all(sentence.endswith(".") for sentence in SENTENCES.values())


def test_the_file_is_written_whole_or_not_at_all(tmp_path):
    path = tmp_path / "out.json"
    write_json(path, document({}, [("ü.mp4", measurement())]))
    before = path.read_text(encoding="utf-8")
    assert json.loads(before)["results"][0]["clip"] == "ü.mp4"
    with pytest.raises(ValueError, match="Out of range"):
        write_json(path, {"value": float("nan")})
    assert path.read_text(encoding="utf-8") == before
    assert [path.name for path in tmp_path.iterdir()] == ["out.json"]


def test_a_missing_folder_is_said(tmp_path):
    with pytest.raises(DataError, match="cannot be written"):
        write_json(tmp_path / "none" / "out.json", {})


def test_a_clip_carries_its_person_and_trials_left_out():
    entry = ClipEntry(
        clip=Path("a.mp4"), movement=Movement.FLEXION, side=Side.LEFT, person="clover"
    )
    read = measurement(trials=(TRIAL, replace(TRIAL, value=99.0)))
    outcome = ClipResult(number=0, entry=entry, measurement=read, accepted=(True, False))
    written = clip_result(outcome)
    assert (written["person"], written["value"], written["status"]) == ("clover", 101.23, "reading")
    assert [trial["left_out"] for trial in written["trials"]] == [False, True]


def test_a_clip_that_was_not_read_says_why(tmp_path):
    entry = ClipEntry(clip=Path("a.mp4"), movement=Movement.FLEXION, side=Side.LEFT)
    path = tmp_path / "results.json"
    write_results(path, [ClipResult(number=0, entry=entry, error=ClipError("damaged"))])
    (written,) = json.loads(path.read_text())["results"]
    assert (written["clip"], written["status"], written["error"]) == (
        "a.mp4",
        "not read",
        "damaged",
    )
