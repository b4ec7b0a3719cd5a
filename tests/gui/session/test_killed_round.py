"""A program that is killed in the middle of a round: what was done is in the store."""

from pathlib import Path

import pytest

from measure.storage.store import Store
from tests.support.gui.round_process import begin_store, lost, start_round
from tests.support.record_samples import person


@pytest.mark.parametrize("repetitions", [1, 3, 7])
def test_a_killed_round_is_kept_as_done_in_part(tmp_path: Path, repetitions: int) -> None:
    begin_store(tmp_path)
    child = start_round(tmp_path)
    assert child.stdout is not None
    for _ in range(repetitions):
        assert child.stdout.readline() == "saved\n"
    child.kill()
    child.wait(30)
    child.stdout.close()
    assert lost(tmp_path, repetitions) == []
    # What is looked for would be seen.
    with Store.open(tmp_path / "sessions.sqlite") as store:
        store.delete_exercise_log(store.exercises_done(person("Rosa").id)[0].id)
    assert lost(tmp_path, repetitions) != []
