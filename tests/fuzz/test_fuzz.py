"""A small part of `make fuzz`; each run of the tests takes the same seeds."""

from pathlib import Path

import pytest

from tests.fuzz import fuzz_clips, fuzz_files

pytestmark = pytest.mark.timeout(600)

#: More than any small clip needs to be decoded.
LARGEST_MB = 800.0


@pytest.fixture(autouse=True)
def own_data(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("THAWLINE_DATA", str(tmp_path / "data"))


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
