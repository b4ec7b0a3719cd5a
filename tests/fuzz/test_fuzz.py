"""A small part of `make fuzz`; each run of the tests takes the same seeds."""

import random
from pathlib import Path

import pytest

from tests.fuzz import fuzz_clips, fuzz_files
from tests.fuzz.damage import damaged
from tests.fuzz.values import hostile_json

pytestmark = pytest.mark.timeout(600)

#: More than any small clip needs to be decoded.
LARGEST_MB = 800.0


@pytest.fixture(autouse=True)
def own_data(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("THAWLINE_DATA", str(tmp_path / "data"))


def test_the_same_seed_is_the_same_damage_whatever_came_before() -> None:
    good = b'{"a": [1, [], {}], "b": {"c": "beans"}}'
    first = [hostile_json(good, random.Random(seed)) for seed in range(300)]
    assert [hostile_json(good, random.Random(seed)) for seed in range(300)] == first
    assert [damaged(good, seed) for seed in range(300)] == [damaged(good, n) for n in range(300)]
    assert len(set(first)) > 200


def test_damaged_files_are_used_or_answered_in_words(tmp_path: Path) -> None:
    place = tmp_path / "damaged"
    place.mkdir()
    tally = fuzz_files.fuzz(place, 0, 200)
    assert tally.faults == []
    assert tally.tried == 200
    # Damage of both sorts was tried: some is survived, some is not.
    assert tally.used > 20
    assert tally.sentences > 20


def test_damaged_clips_end_in_a_reading_a_refusal_or_a_sentence(tmp_path: Path) -> None:
    with fuzz_clips.scripted_process() as process:
        tally = fuzz_clips.fuzz(process, fuzz_clips.MODELS, tmp_path, 0, 60)
    assert tally.faults == []
    assert tally.tried == 60
    assert tally.readings > 5
    assert tally.sentences > 5
    assert tally.largest_mb < LARGEST_MB
