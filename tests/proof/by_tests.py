"""Rows of the page of proof that tests show: they are run and counted.

    python -m tests.proof.by_tests [SUBJECT...] [--write]

The subjects are those of `TESTS`, by their first words, as in `network`. Without any the bundle is
left out, which `THAWLINE_BUNDLE` has to name. A skipped test proves nothing and counts as a fault.
"""

import argparse
import os
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from xml.etree import ElementTree

from tests.proof.page import ROOT, Proof, finish

_LIVE = "tests/measure/live"

#: What shows each subject: test files, tests, or tests of a file by a word.
TESTS: dict[str, tuple[str, ...]] = {
    "two programs at once": (
        "tests/measure/storage/test_faults.py::test_two_programs_at_once_lose_no_session",
        "tests/measure/storage/test_steps.py::test_a_store_that_another_program_updated_meanwhile",
        "tests/measure/storage/test_store.py"
        "::test_a_store_that_another_program_holds_is_waited_for_then_named",
        "tests/measure/pose_models/test_fetching.py::test_two_at_once_fetch_only_once",
        "tests/gui/app/test_application.py::test_a_second_window_on_the_same_folder_is_not_opened",
        "tests/gui/app/test_application.py"
        "::test_the_lock_of_a_killed_window_does_not_keep_the_next_one_out",
        "tests/gui/app/test_command.py::test_a_second_window_is_refused",
    ),
    "clocks changed": (
        "tests/measure/storage/test_times.py",
        "tests/measure/domain/test_exercise_rounds.py::test_a_clock_that_was_put_back_changes_nothing",
        "tests/gui/protocol/test_exercise_round.py::test_a_clock_that_runs_backwards_changes_nothing",
        "tests/gui/session/test_clock_set_back.py",
        f"{_LIVE}/test_session.py::test_after_sleep_the_camera_is_opened_anew_and_trials_stay",
    ),
    "network traced": (
        "tests/repository/test_nobody_is_called.py",
        "tests/repository/test_nothing_leaves.py",
        f"{_LIVE}/test_live_clips.py::test_nothing_leaves_while_measuring_live",
        "tests/gui/session/test_guided_session.py",
    ),
    "bundle": ("tests/gui/desktop/test_bundle.py",),
}


def counted(subject: str) -> tuple[str, list[str]]:
    """Run the tests of a subject; return their counts in words, and those that did not pass."""
    with TemporaryDirectory() as folder:
        report = Path(folder) / "report.xml"
        ran = [sys.executable, "-m", "pytest", "-q", f"--junitxml={report}", *TESTS[subject]]
        done = subprocess.run(ran, cwd=ROOT, capture_output=True, text=True, check=False)
        if not report.exists():
            return "no test ran", [done.stdout + done.stderr]
        cases = list(ElementTree.parse(report).iter("testcase"))
    faults = [
        f"{case.get('classname')}::{case.get('name')}: {child.tag}: {child.get('message')}"
        for case in cases
        for child in case
        if child.tag in ("failure", "error", "skipped")
    ]
    if done.returncode and not faults:
        faults.append(done.stdout[-2000:])
    return f"{len(cases)} tests", faults


def bundle_size() -> str:
    """Return how large the bundle is, in words."""
    files = Path(os.environ.get("THAWLINE_BUNDLE", "")).rglob("*")
    size = sum(file.lstat().st_size for file in files)
    return f"; {size / 1e6:.0f} MB ({size / (1 << 20):.0f} MiB)"


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("subjects", nargs="*", metavar="SUBJECT")
    parser.add_argument("--write", action="store_true", help="write the rows into the page")
    arguments = parser.parse_args()
    wanted = [
        subject
        for subject in TESTS
        if subject.startswith(tuple(arguments.subjects or set(TESTS) - {"bundle"}))
    ]
    code = 0
    for subject in wanted:
        counts, faults = counted(subject)
        counts += bundle_size() if subject == "bundle" else ""
        command = f'python -m tests.proof.by_tests "{subject}"'
        proof = Proof(subject=subject, counts=counts, faults=tuple(faults), command=command)
        code |= finish((proof,), wanted=arguments.write)
    return code if wanted else 2


if __name__ == "__main__":
    sys.exit(main())
