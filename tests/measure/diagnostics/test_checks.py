"""`thawline check`: each lack has a finding with a cure, and the exit code follows."""

import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

from measure.cli import check
from measure.cli.main import main
from measure.diagnostics import checks
from measure.diagnostics.checks import (
    Finding,
    Purpose,
    check_machine,
    display_finding,
    folder_finding,
    library_finding,
    model_findings,
    opencv_finding,
    package_findings,
    platform_finding,
    python_finding,
    ready,
    space_finding,
)
from measure.diagnostics.system_libraries import (
    DEBIAN_PACKAGES,
    Loading,
    Part,
    libraries,
    packages_for,
    try_loading,
)


@pytest.mark.parametrize(
    ("found", "is_64_bit", "present"),
    [
        ((3, 10), True, False),
        ((3, 11), True, True),
        ((3, 12), False, False),
        ((3, 13), True, True),
        ((3, 14), True, False),
    ],
)
def test_python_must_be_a_tried_one(found: tuple[int, int], is_64_bit: bool, present: bool) -> None:
    finding = python_finding(found, is_64_bit)
    assert finding.present is present
    assert bool(finding.cure) is not present


@pytest.mark.parametrize(
    ("system", "processor", "words"),
    [
        ("linux", "x86_64", ""),
        ("linux", "aarch64", ""),
        ("win32", "AMD64", ""),
        ("darwin", "arm64", ""),
        ("darwin", "x86_64", "no longer available for Macs with an Intel"),
        ("linux", "riscv64", "Use Linux (x86-64 or ARM64)"),
        ("win32", "ARM64", "Use Linux (x86-64 or ARM64)"),
        ("freebsd14", "amd64", "Use Linux (x86-64 or ARM64)"),
    ],
)
def test_systems_without_the_pose_library_are_told_so(
    system: str, processor: str, words: str
) -> None:
    finding = platform_finding(system, processor)
    assert finding.present is not bool(words)
    assert words in finding.cure


def test_packages_are_held_against_the_tried_ranges() -> None:
    findings = list(
        package_findings(
            [
                "pytest>=9,<10",
                "pytest>=99",
                "no-such-package-here>=1",
                "PySide6-Essentials>=99",
                "pytest>=99; python_version < '3'",
                "torch; extra == 'synth'",
            ]
        )
    )
    assert [each.present for each in findings] == [True, False, False, False]
    assert findings[1].cure == 'Install a tried version: pip install "pytest>=99"'
    assert findings[2].result == "not installed"
    assert [each.purpose for each in findings] == [*[Purpose.MEASURING] * 3, Purpose.WINDOW]


@pytest.mark.parametrize(
    ("providers", "words"),
    [
        (["opencv-contrib-python"], ""),
        (["opencv-contrib-python", "opencv-contrib-python"], ""),
        ([], "pip install opencv-contrib-python"),
        (["opencv-python"], "pip uninstall opencv-python"),
        (
            ["opencv-python-headless", "opencv-contrib-python"],
            "pip uninstall opencv-contrib-python opencv-python-headless",
        ),
    ],
)
def test_opencv_comes_from_exactly_one_package(providers: list[str], words: str) -> None:
    finding = opencv_finding(providers)
    assert finding.present is not bool(words)
    assert words in finding.cure


def test_this_environment_has_one_opencv_and_loads_everything() -> None:
    for part, file in libraries().items():
        assert try_loading(part, file) == Loading(part=part)


def test_missing_system_libraries_are_all_named_with_their_packages() -> None:
    missing = ("libEGL.so.1", "libGLESv2.so.2", "libunheard-of.so.7")
    finding = library_finding(
        Loading(part=Part.POSE, missing=missing, error="libEGL.so.1: cannot open")
    )
    assert not finding.present
    assert finding.purpose is Purpose.MEASURING
    assert all(name in finding.result for name in missing)
    assert "apt-get install libegl1 libgles2 libunheard-of.so.7" in finding.cure


@pytest.mark.skipif(sys.platform != "linux", reason="not on this system: ELF files")
def test_a_library_that_wants_a_missing_one_is_found_in_a_child(tmp_path: Path) -> None:
    """A library of this environment, told to want system libraries that do not exist."""
    source = libraries()[Part.POSE]
    assert source is not None
    content = source.read_bytes()
    broken = tmp_path / source.name
    broken.write_bytes(
        content.replace(b"libEGL.so.1\0", b"libEGX.so.1\0").replace(
            b"libGLESv2.so.2\0", b"libGLESv8.so.2\0"
        )
    )
    loading = try_loading(Part.POSE, broken)
    assert not loading.works
    assert loading.missing == ("libEGX.so.1", "libGLESv8.so.2")


def test_a_library_that_is_not_one_is_said_so_without_dying(tmp_path: Path) -> None:
    file = tmp_path / "lib.so"
    file.write_text("text")
    loading = try_loading(Part.WINDOW, file)
    assert not loading.works
    assert loading.missing == ()
    assert library_finding(loading).cure
    assert "not installed completely" in library_finding(try_loading(Part.POSE, None)).result


def test_debian_packages_are_named_once() -> None:
    assert packages_for(["libgthread-2.0.so.0", "libglib-2.0.so.0"]) == ["libglib2.0-0"]
    assert all(name.startswith("lib") and ".so." in name for name in DEBIAN_PACKAGES)


def test_a_missing_model_lacks_for_measuring(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("THAWLINE_MODELS", str(tmp_path))
    full, heavy, lite = model_findings()
    assert not any(each.present for each in (full, heavy, lite))
    assert (full.purpose, heavy.purpose) == (Purpose.MEASURING, Purpose.STEADIER_READINGS)
    assert "thawline model" in full.cure
    assert f"copy pose-full.task from another computer into {tmp_path}" in full.cure
    assert "npm" in heavy.cure


def test_the_data_folder_is_inspected_but_not_made(tmp_path: Path) -> None:
    folder = tmp_path / "not" / "yet"
    assert folder_finding(folder).present
    assert folder_finding(tmp_path).present
    assert list(tmp_path.iterdir()) == []
    (tmp_path / "file").write_text("in the way")
    finding = folder_finding(tmp_path / "file" / "data")
    assert not finding.present
    assert "THAWLINE_DATA" in finding.cure


@pytest.mark.skipif(os.name == "nt", reason="not on this system: POSIX permissions")
def test_a_read_only_data_folder_is_found_as_an_ordinary_person() -> None:
    code = (
        "import os, sys; from pathlib import Path\n"
        "from measure.diagnostics.checks import folder_finding\n"
        "os.geteuid() or os.setuid(65534)\n"
        "print(folder_finding(Path(sys.argv[1])).present)"
    )
    with tempfile.TemporaryDirectory() as folder:
        Path(folder).chmod(0o555)
        done = subprocess.run(
            [sys.executable, "-c", code, folder], capture_output=True, text=True, check=True
        )
    assert done.stdout.strip() == "False"


def test_too_little_space_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert space_finding(tmp_path / "not yet").present
    monkeypatch.setattr(checks, "FREE_SPACE_WANTED", 1 << 60)
    assert "THAWLINE_DATA" in space_finding(tmp_path).cure


@pytest.mark.parametrize(
    ("system", "environment", "present", "words"),
    [
        ("win32", {}, True, ""),
        ("darwin", {}, True, ""),
        ("linux", {}, False, "graphical session"),
        ("linux", {"WAYLAND_DISPLAY": "none-here", "XDG_RUNTIME_DIR": "/none"}, False, "Log in"),
        ("linux", {"DISPLAY": ":987"}, False, "Log in"),
    ],
)
def test_a_display_is_needed_for_the_window_only(
    system: str, environment: dict[str, str], present: bool, words: str
) -> None:
    finding = display_finding(system, environment)
    assert finding.present is present
    assert words in finding.cure
    assert finding.purpose is Purpose.WINDOW


def test_every_check_has_a_name_of_its_own_and_cures_of_one_line() -> None:
    findings = check_machine()
    assert len({finding.name for finding in findings}) == len(findings)
    assert all("\n" not in finding.cure for finding in findings)


def lacking(purpose: Purpose) -> Finding:
    return Finding(name="This", purpose=purpose, result="gone", cure="Get it.")


@pytest.mark.parametrize(
    ("purpose", "code", "words"),
    [
        (Purpose.MEASURING, 1, "Clips cannot be measured"),
        (Purpose.CAMERA, 0, "Clips can be measured. Something is missing for: camera."),
        (Purpose.WINDOW, 0, "Something is missing for: window"),
        (None, 0, "Nothing is missing."),
    ],
)
def test_the_exit_code_says_whether_clips_can_be_measured(
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    purpose: Purpose | None,
    code: int,
    words: str,
) -> None:
    there = Finding(name="That", purpose=Purpose.MEASURING, result="fine")
    findings = [there, lacking(purpose)] if purpose else [there]
    monkeypatch.setattr(check, "check_machine", lambda: findings)
    assert main(["check"]) == code
    printed = capsys.readouterr().out
    assert words in printed
    assert ("Get it." in printed) is bool(purpose)
    assert ready(findings) is (code == 0)


def test_json_holds_the_same(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(check, "check_machine", lambda: [lacking(Purpose.MEASURING)])
    assert main(["check", "--json"]) == 1
    told = json.loads(capsys.readouterr().out)
    assert told["ready"] is False
    assert told["findings"] == [
        {
            "name": "This",
            "present": False,
            "purpose": "measuring",
            "found": "gone",
            "cure": "Get it.",
        }
    ]
