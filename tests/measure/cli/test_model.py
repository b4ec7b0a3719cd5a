"""`thawline model`: what it prints and how it ends; how progress looks in a log and a terminal."""

import io
import sys
from pathlib import Path

import pytest

from measure.cli.main import main
from measure.cli.model import download_progress
from measure.pose_models.bundles import load
from measure.pose_models.catalogue import ModelQuality


@pytest.fixture
def offline(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty model folder and no client that could fill it."""
    monkeypatch.setenv("THAWLINE_MODELS", str(tmp_path / "models"))
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setitem(sys.modules, "pip", None)
    return tmp_path / "models"


def test_what_is_here_is_shown_with_its_hash(capsys: pytest.CaptureFixture[str]) -> None:
    """On the real bundles: fetch them beforehand with `thawline model`."""
    assert main(["model", "--show"]) == 0
    assert load(ModelQuality.FULL).sha256 in capsys.readouterr().out


def test_show_fetches_nothing_and_makes_no_folder(
    offline: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["model", "--show"]) == 1
    said = capsys.readouterr()
    assert said.err.count("is not on this computer yet") == 3
    assert said.out == ""
    assert not offline.exists()


@pytest.mark.parametrize("arguments", [[], ["--quality", "lite"], ["--quality", "full"]])
def test_what_cannot_be_had_is_our_failure(
    offline: Path, capsys: pytest.CaptureFixture[str], arguments: list[str]
) -> None:
    assert main(["model", *arguments]) == 1
    assert "npm is not installed" in capsys.readouterr().err


@pytest.mark.parametrize(
    "arguments", [["--quality", "huge"], ["--model", "none.task"], ["--show", "--quality", "full"]]
)
def test_wrong_use_is_code_2(arguments: list[str], tmp_path: Path) -> None:
    assert main(["model", *arguments]) == 2


def test_an_own_bundle_is_shown_as_own(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    copy = tmp_path / "mine.task"
    copy.write_bytes(load(ModelQuality.FULL).content)
    assert main(["model", "--model", str(copy)]) == 0
    assert capsys.readouterr().out.startswith("own ")


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize(("stream", "drawn"), [(io.StringIO(), False), (Terminal(), True)])
def test_each_step_is_told_once_and_a_terminal_gets_a_bar(
    monkeypatch: pytest.MonkeyPatch, stream: io.StringIO, drawn: bool
) -> None:
    monkeypatch.setattr(sys, "stderr", stream)
    with download_progress() as progress:
        for done in (0.1, 0.1, 0.1):
            progress(done, "fetching 41 MB")
        progress(1.0, "ready")
    told = stream.getvalue()
    assert told.count("fetching 41 MB") == 1
    assert told.count("ready") == 1
    assert ("10 %" in told and "100 %" in told) is drawn
