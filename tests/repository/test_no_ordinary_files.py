"""Devices and pipes in the place of files: refused in words, never waited for, never replaced."""

import os
import stat
from pathlib import Path

import pytest

from measure.cli.main import main
from tests.support import real_model

pytestmark = [
    pytest.mark.skipif(os.name != "posix", reason="not on this system: devices as files"),
    pytest.mark.timeout(60),
    pytest.mark.usefixtures("data_folder"),
]

CLIP = str(real_model.CLIPS / "flexion-left-full.mp4")
READ_CLIP = ("replay", CLIP, "--movement", "flexion", "--side", "left")

#: What each command is given instead of a file.
READERS = {
    "import": ("import", "{path}"),
    "restore": ("restore", "{path}"),
    "manifest": ("replay", "--manifest", "{path}"),
    "clip": ("replay", "{path}", "--movement", "flexion", "--side", "left"),
    "set-up": (*READ_CLIP, "--setup", "{path}"),
    "tracks": ("replay", "--from-tracks", "{path}"),
    "model": (*READ_CLIP, "--model", "{path}"),
    "pairs": ("agreement", "{path}"),
    "show": ("calibrate", "setup", "show", "{path}"),
    "lens": ("calibrate", "lens", "clip", "{path}", "--camera", "Garden"),
    "window": ("app", "--source", "{path}"),
}
WRITERS = {
    "json": (*READ_CLIP, "--json", "{path}"),
    "csv": (*READ_CLIP, "--csv", "{path}"),
    "track": (*READ_CLIP, "--track", "{path}"),
    "results": (*READ_CLIP, "--results", "{path}"),
    "backup": ("backup", "{path}"),
}


@pytest.fixture
def pipe(tmp_path: Path) -> Path:
    """A pipe that nobody writes to: whoever opens it waits for ever."""
    made = tmp_path / "pipe.csv"
    os.mkfifo(made)
    return made


@pytest.mark.parametrize("order", [*READERS.values(), *WRITERS.values()], ids=[*READERS, *WRITERS])
@pytest.mark.parametrize("which", ["pipe", "device"])
def test_no_ordinary_file_is_refused(
    order: tuple[str, ...], which: str, pipe: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = pipe if which == "pipe" else Path("/dev/zero")
    kind = stat.S_IFMT(path.stat().st_mode)
    if order is READERS["clip"]:
        real_model.bundle()
        order = (*order, "--model-quality", "lite")
    assert main([word.format(path=path) for word in order]) == 2
    told = capsys.readouterr().err
    assert path.name in told
    assert "Traceback" not in told
    assert stat.S_IFMT(path.stat().st_mode) == kind
