"""What all tests share: folders of their own, no window, no network, no skip unnoticed."""

import os
import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from measure.system.paths import model_folder

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

# Tests never touch the sessions of the person who runs them, but they share the pose model.
os.environ["THAWLINE_MODELS"] = str(model_folder())
_SCRATCH = tempfile.mkdtemp(prefix="thawline-tests-")
os.environ["THAWLINE_DATA"] = _SCRATCH

#: How the reason of a skip must begin for CI to accept it.
ACCEPTED_SKIPS = ("needs the synth extra", "needs a program", "data not here")

#: Tests skipped for another reason, in the order met; the processes of a run add theirs.
_unexpected: dict[str, None] = {}


@pytest.fixture
def data_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty data folder that the program under test uses instead of the person's own."""
    folder = tmp_path / "data"
    monkeypatch.setenv("THAWLINE_DATA", str(folder))
    return folder


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_auto_num_workers() -> int:
    """Return how many processes test at once: a third of their time they wait, so one more fits."""
    return (os.cpu_count() or 1) + 1


def _note_skip(report: pytest.TestReport | pytest.CollectReport) -> None:
    if not report.skipped or hasattr(report, "wasxfail"):
        return
    told = report.longrepr
    reason = str(told[2] if isinstance(told, tuple) else told).removeprefix("Skipped: ")
    if not reason.startswith(ACCEPTED_SKIPS):
        _unexpected[f"{report.nodeid}: {reason}"] = None


def pytest_runtest_logreport(report: pytest.TestReport) -> None:
    _note_skip(report)


def pytest_collectreport(report: pytest.CollectReport) -> None:
    _note_skip(report)


@pytest.hookimpl(optionalhook=True)
def pytest_testnodedown(node: Any) -> None:
    """Take over what one of several processes skipped."""
    _unexpected.update(dict.fromkeys(getattr(node, "workeroutput", {}).get("unexpected", ())))


@pytest.hookimpl(wrapper=True)
def pytest_sessionfinish(session: pytest.Session) -> Iterator[None]:
    """In CI a test that does not run is a failure, unless its reason is an accepted one."""
    if os.environ.get("CI") and _unexpected and session.exitstatus == pytest.ExitCode.OK:
        session.exitstatus = pytest.ExitCode.TESTS_FAILED
    if hasattr(session.config, "workeroutput"):
        session.config.workeroutput["unexpected"] = list(_unexpected)
    yield
    shutil.rmtree(_SCRATCH, ignore_errors=True)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    if os.environ.get("CI") and _unexpected:
        terminalreporter.section("skipped for a reason that CI does not accept")
        for line in _unexpected:
            terminalreporter.write_line(line)
