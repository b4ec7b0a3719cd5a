"""Writes the golden readings of the sample clips, which the tests hold the readings against.

    python -m tests.bench.keep_clips

What the networks saw is kept in tests/tracks/clips/. A clip without such a file is looked at,
which takes a while: delete the files of clips that were filmed anew, or all of them for other
networks. Run it only when readings change on purpose.
"""

import argparse
import json
from pathlib import Path

from tqdm import tqdm

from measure.cli.demo import SampleClip, sample_clips
from measure.clips.inputs import ClipEntry
from measure.clips.observation_file import load_observation, save_observation
from measure.clips.read import measurement_from_observation, observe_clip
from measure.domain.acquisition import Setup
from measure.pose.ensemble import models_for
from measure.pose.supervisor import PoseProcess
from tests.bench.accuracy_cases import lesser

_ROOT = Path(__file__).resolve().parents[2]
CLIPS = _ROOT / "sample_clips" / "clips"
TRACKS = _ROOT / "tests" / "tracks" / "clips"
GOLDEN = TRACKS / "readings.json"


def main() -> None:
    argparse.ArgumentParser(description=__doc__.splitlines()[0]).parse_args()
    samples = sample_clips(CLIPS)
    observe_samples([sample for sample in samples if not _kept(sample).exists()])
    readings = [golden(sample.entry.clip.stem) for sample in samples]
    GOLDEN.write_text(json.dumps(readings, indent=1) + "\n", encoding="utf-8")


def observe_samples(samples: list[SampleClip]) -> None:
    """Keep what the networks see of the clips."""
    if not samples:
        return
    TRACKS.mkdir(parents=True, exist_ok=True)
    models = models_for()
    with PoseProcess(models.bundles) as process:
        for sample in tqdm(samples, desc="looking"):
            entry = sample.entry
            observation = observe_clip(process, models, entry.clip, entry.task(Setup()))
            # Where it lay on this computer is nobody's business.
            unnamed = ClipEntry(
                clip=Path(entry.clip.name), movement=entry.movement, side=entry.side
            )
            save_observation(_kept(sample), unnamed, observation)


def _kept(sample: SampleClip) -> Path:
    return TRACKS / f"{sample.entry.clip.stem}.npz"


def golden(name: str) -> dict[str, object]:
    """Return the reading of kept tracks, with both models and as the full one alone would."""
    _, observation = load_observation(TRACKS / f"{name}.npz")
    both = measurement_from_observation(observation, Setup()).measurement
    alone = lesser(observation, "full")
    full = measurement_from_observation(alone, Setup()).measurement if alone.fine else None
    return {
        "name": name,
        "reading": both.value,
        "low": both.low,
        "high": both.high,
        "reasons": [str(reason) for reason in both.reasons],
        "reading_full": None if full is None else full.value,
    }


if __name__ == "__main__":
    main()
