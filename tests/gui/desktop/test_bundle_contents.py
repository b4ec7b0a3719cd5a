"""What a bundle leaves out: unused parts, and the libraries that only those needed."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from gui.desktop.bundle_contents import needed, without_symbols

#: Which libraries each file needs, those of its libraries included.
IMPORTS = {
    "/lib/virtualkeyboard.so": {"libKeys.so", "libQuick.so", "libCore.so"},
    "/lib/libKeys.so": {"libQuick.so", "libCore.so"},
    "/lib/libQuick.so": {"libCore.so"},
    "/lib/libCore.so": set(),
    "/lib/widgets.so": {"libCore.so"},
    "/lib/opened-by-name.so": set(),
}


def entry(name: str, place: str = "", kind: str = "BINARY") -> tuple[str, str, str]:
    return f"{place}{name}", f"/lib/{name}", kind


def test_libraries_that_only_unused_parts_needed_go_with_them() -> None:
    kept = [
        entry("libCore.so"),
        entry("widgets.so", "PySide6/", "EXTENSION"),
        entry("opened-by-name.so"),
        ("libQuick.txt", "/lib/libQuick.txt", "DATA"),
    ]
    dropped = [
        entry("libQuick.so"),
        entry("libKeys.so"),
        ("PySide6/Qt/lib/libKeys.so", "libKeys.so", "SYMLINK"),
        entry("virtualkeyboard.so", "PySide6/Qt/plugins/platforminputcontexts/"),
        ("PySide6/Qt/translations/qtbase_fr.qm", "/lib/fr.qm", "DATA"),
    ]
    assert needed([*dropped, *kept], lambda source: IMPORTS[source]) == kept


@pytest.mark.parametrize(
    ("place", "stays"),
    [
        ("PySide6/Qt/translations/qtbase_es.qm", True),
        ("PySide6/Qt/plugins/platforms/libqxcb.so", True),
        ("PySide6\\plugins\\platforms\\qwindows.dll", True),
        ("PySide6/Qt/plugins/texttospeech/libqtexttospeech_speechd.so", True),
        ("PySide6/Qt/plugins/printsupport/libcupsprintersupport.so", True),
        ("cv2/data/haarcascade_eye.xml", True),
        ("PySide6\\plugins\\multimedia\\ffmpegmediaplugin.dll", False),
        ("PySide6/Qt/plugins/platforms/libqvnc.so", False),
        ("cv2/qt/plugins/platforms/libqxcb.so", False),
    ],
)
def test_each_part_is_known_by_its_place(place: str, stays: bool) -> None:
    entries = [(place, "/lib/part", "DATA")]
    assert needed(entries, lambda source: set()) == (entries if stays else [])


@pytest.mark.skipif(sys.platform != "linux", reason="not on this system: ldd")
def test_a_library_loses_its_symbols_and_still_loads(tmp_path: Path) -> None:
    if shutil.which("strip") is None or shutil.which("cc") is None:
        pytest.skip("needs a program: strip and a compiler, to build a bundle")
    source, library = tmp_path / "beans.c", tmp_path / "beans.so"
    names = "\n".join(f"static int bean_{n}(void) {{ return {n}; }}" for n in range(5000))
    calls = " + ".join(f"bean_{n}()" for n in range(5000))
    source.write_text(f"{names}\nint beans(void) {{ return {calls}; }}\n")
    subprocess.run(["cc", "-g", "-shared", "-fPIC", "-o", library, source], check=True)
    before = [
        ("beans.so", str(library), "EXTENSION"),
        ("beans-0123abcd.so.1", str(library), "DATA"),
    ]
    after = without_symbols(before, tmp_path / "stripped")
    assert [(dest, kind) for dest, _, kind in after] == [(dest, kind) for dest, _, kind in before]
    assert Path(after[0][1]).stat().st_size < library.stat().st_size / 2
    assert after[1] == before[1]
    code = "import ctypes, sys; print(ctypes.CDLL(sys.argv[1]).beans())"
    said = subprocess.check_output([sys.executable, "-c", code, after[0][1]], text=True)
    assert int(said) == sum(range(5000))
