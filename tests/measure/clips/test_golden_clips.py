"""Golden readings of the committed clips. They change only on purpose:
`python -m tests.bench.keep_clips` writes them.
"""

import json

import pytest

from measure.cli.demo import sample_clips
from measure.clips.observation_file import load_observation
from measure.clips.read import measurement_from_observation
from measure.domain.acquisition import Setup
from measure.domain.measurements import Status
from tests.bench.keep_clips import CLIPS, GOLDEN, TRACKS

READINGS = {reading["name"]: reading for reading in json.loads(GOLDEN.read_text(encoding="utf-8"))}
SAMPLES = {sample.entry.clip.stem: sample for sample in sample_clips(CLIPS)}


def test_every_committed_clip_has_its_golden_reading():
    assert READINGS.keys() == SAMPLES.keys()
    assert READINGS.keys() == {path.stem for path in TRACKS.glob("*.npz")}
    assert READINGS.keys() == {path.stem for path in CLIPS.glob("*.mp4")}


@pytest.mark.parametrize(
    "name", [name for name, reading in SAMPLES.items() if reading.truth is not None]
)
def test_stance_is_seen_in_a_sparsely_sampled_rest(name):
    _, observation = load_observation(TRACKS / f"{name}.npz")
    refined = measurement_from_observation(observation, Setup()).refined
    assert refined
    assert all(trial.neutral is not None for trial in refined if trial.trial.scored)


@pytest.mark.parametrize("name", SAMPLES)
def test_a_committed_clip_reads_as_before(name):
    entry, observation = load_observation(TRACKS / f"{name}.npz")
    assert (entry.movement, entry.side) == (SAMPLES[name].entry.movement, SAMPLES[name].entry.side)
    measurement = measurement_from_observation(observation, Setup()).measurement
    golden = READINGS[name]
    assert [str(reason) for reason in measurement.reasons] == golden["reasons"]
    assert (measurement.status is Status.REFUSED) == (golden["reading"] is None)
    if SAMPLES[name].truth is None:
        assert set(golden["reasons"]) & set(SAMPLES[name].expected)
    if golden["reading"] is None:
        return
    # The last digits differ from one system's arithmetic to another's.
    said = (measurement.value, measurement.low, measurement.high)
    assert said == pytest.approx((golden["reading"], golden["low"], golden["high"]), abs=1e-4)
    assert measurement.low <= SAMPLES[name].truth <= measurement.high
