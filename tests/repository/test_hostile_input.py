"""Files made to harm: enormous by their own word or in truth, and paths that lead elsewhere."""

import json
import tracemalloc
from collections.abc import Callable
from pathlib import Path

import pytest

from calibration.agreement.pairs_table import read_pairs
from measure.batch.results_file import ResultsFile
from measure.cli.main import main
from measure.clips.inputs import read_manifest
from measure.clips.observation_file import load_observation
from measure.clips.outcome import ReadingSettings
from measure.clips.setup_file import read_setup
from measure.errors import ClipError, ManifestError, ThawlineError
from measure.export.history_json import read_history
from measure.pose.jobs import ClipJob, InferencePass
from measure.pose_models.bundles import own_bundle
from measure.pose_models.catalogue import ModelQuality
from measure.storage.backup import inspect
from tests.fuzz.fuzz_clips import MODELS, scripted_process
from tests.support import real_model
from tests.support.odd_clips import odd_clip

GIGABYTE = 1 << 30
#: What may be taken from memory to find out that a file is too large.
MOST_BYTES = 30_000_000


READERS: dict[str, Callable[[Path], object]] = {
    "history": read_history,
    "manifest": read_manifest,
    "set-up": read_setup,
    "pairs": read_pairs,
    "bundle": own_bundle,
    "tracks": load_observation,
    "backup": inspect,
    "results": lambda path: ResultsFile(path, [], ReadingSettings(models=MODELS)),
}


@pytest.mark.parametrize("read", READERS.values(), ids=READERS)
@pytest.mark.parametrize("start", [b"", b'{"a": ['], ids=["nothing", "json"])
def test_a_gigabyte_is_refused_before_it_is_read(
    read: Callable[[Path], object], start: bytes, tmp_path: Path
) -> None:
    path = tmp_path / "large"
    with path.open("wb") as file:
        file.write(start)
        file.truncate(GIGABYTE)  # takes no room on the disk
    tracemalloc.start()
    try:
        with pytest.raises(ThawlineError) as caught:
            read(path)
        most = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert most < MOST_BYTES
    assert len(str(caught.value)) > 20


ELSEWHERE = (
    "../../../../etc/passwd",
    "/etc/passwd",
    "/dev/zero",
    "/dev/stdin",
    "/proc/self/mem",
    "http://127.0.0.1:9/clip.mp4",
    "rtsp://127.0.0.1:9/clip",
    "file:///etc/passwd",
    "concat:/etc/passwd|/etc/hosts",
    "\\\\server\\share\\clip.mp4",
    "C:\\Windows\\win.ini",
    "nul",
    "..",
    "%00",
)


@pytest.mark.timeout(120)
@pytest.mark.usefixtures("data_folder")
def test_a_manifest_that_leads_elsewhere_reads_nothing_and_writes_nothing_there(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    real_model.bundle()
    manifest, results, tracks = (tmp_path / each for each in ("clips.csv", "all.json", "tracks"))
    rows = "".join(f'"{path}",flexion,left\n' for path in ELSEWHERE if "://" not in path)
    manifest.write_text(f"clip,movement,side\n{rows}", encoding="utf-8")
    order = ["replay", "--manifest", str(manifest), "--model-quality", "lite"]
    assert main([*order, "--json", str(results), "--keep-tracks", str(tracks)]) == 2
    told = capsys.readouterr()
    assert "Traceback" not in told.err
    assert "root:" not in told.err + told.out
    assert told.err.count("thawline: ") >= rows.count("\n")
    assert {each["status"] for each in json.loads(results.read_text())["results"]} == {"not read"}
    assert list(tracks.glob("*")) == []
    assert {each.name for each in tmp_path.iterdir()} <= {
        *("clips.csv", "all.json", "tracks", "data")
    }


@pytest.mark.parametrize("path", [path for path in ELSEWHERE if "://" in path])
def test_an_address_in_a_manifest_is_refused_as_a_whole(path: str, tmp_path: Path) -> None:
    manifest = tmp_path / "clips.csv"
    manifest.write_text(f"clip,movement,side\n{path},flexion,left\n", encoding="utf-8")
    with pytest.raises(ManifestError, match="is an address"):
        read_manifest(manifest)


def test_a_header_of_fifty_thousand_by_fifty_thousand_is_refused_in_little_memory() -> None:
    clip = odd_clip("absurd-avi")
    with scripted_process() as process:
        with pytest.raises(ClipError, match="size of the picture"):
            process.run(ClipJob(clip=clip, passes=(InferencePass(quality=ModelQuality.FULL),)))
        assert process.process_id is not None
        status = Path(f"/proc/{process.process_id}/status")
        if status.exists():
            held_kb = next(
                int(line.split()[1])
                for line in status.read_text().splitlines()
                if line.startswith("VmHWM")
            )
            assert held_kb < 600_000  # one such picture would take 7,500,000


def test_ten_million_frames_by_the_header_are_as_many_as_there_are() -> None:
    one_pass = InferencePass(quality=ModelQuality.FULL)
    with scripted_process() as process:
        poses = process.run(ClipJob(clip=odd_clip("endless-avi"), passes=(one_pass,)))
    assert poses.facts.frames_read == 10
    assert len(poses.frames[one_pass]) == 10
