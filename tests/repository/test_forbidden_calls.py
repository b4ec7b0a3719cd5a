"""What no module may import or call: ways out of this computer, trust in files, traps."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PACKAGES = ("measure", "gui", "calibration", "sample_clips")

#: Packages that open connections, run what a file holds, or fight with those we use.
NEVER = {
    "aiohttp", "asyncio", "av", "code", "ctypes", "dill", "email", "ftplib", "http", "httpx",
    "imageio", "joblib", "marshal", "moviepy", "pickle", "requests", "shelve", "smtplib", "socket",
    "socketserver", "ssl", "telnetlib", "urllib", "urllib3", "webbrowser", "websockets", "xmlrpc",
    "yaml", "PySide6.QtNetwork", "PySide6.QtWebEngineCore", "PySide6.QtWebEngineWidgets",
    "PySide6.QtWebSockets",
}  # fmt: skip

#: The one place for each exception: Windows is asked what kind of disk a folder is on, and Linux's
#: C library to give freed memory back.
ALLOWED = {("measure/storage/disk_kind.py", "ctypes"), ("measure/pose/memory.py", "ctypes")}


def trees() -> Iterator[tuple[str, ast.AST]]:
    for package in PACKAGES:
        for file in sorted((ROOT / package).rglob("*.py")):
            name = str(file.relative_to(ROOT))
            yield name, ast.parse(file.read_text(encoding="utf-8"))


def imported(tree: ast.AST) -> Iterator[str]:
    """Yield each imported module by its whole name, and by each of its beginnings."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            names = [each.name for each in node.names]
        elif isinstance(node, ast.ImportFrom) and node.level == 0 and node.module:
            names = [f"{node.module}.{each.name}" for each in node.names]
        else:
            continue
        for name in names:
            parts = name.split(".")
            yield from (".".join(parts[:end]) for end in range(1, len(parts) + 1))


def called(tree: ast.AST) -> Iterator[tuple[str, ast.Call]]:
    """Yield the last part of the name of everything called."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            if isinstance(node.func, ast.Attribute):
                yield node.func.attr, node
            elif isinstance(node.func, ast.Name):
                yield node.func.id, node


def callers(*names: str) -> list[str]:
    return [
        f"{file}: {name}" for file, tree in trees() for name, _ in called(tree) if name in names
    ]


def test_nothing_imports_what_it_must_not() -> None:
    found = {(file, name) for file, tree in trees() for name in imported(tree) if name in NEVER}
    assert found == ALLOWED


def test_no_window_of_the_video_library() -> None:
    assert callers("imshow", "waitKey", "namedWindow", "destroyAllWindows") == []


def test_nothing_seeks_in_a_clip() -> None:
    named = [
        f"{file}: {node.attr}"
        for file, tree in trees()
        for node in ast.walk(tree)
        if isinstance(node, ast.Attribute) and node.attr.startswith("CAP_PROP_POS_")
    ]
    # The time of the frame just read is asked for, and never set.
    assert named == ["measure/video/source.py: CAP_PROP_POS_MSEC"]
    setters = [
        ast.unparse(call.args[0])
        for file, tree in trees()
        if file == "measure/video/source.py"
        for name, call in called(tree)
        if name == "set" and isinstance(call.func, ast.Attribute)
    ]
    assert setters == ["cv2.CAP_PROP_ORIENTATION_AUTO"]


def test_nothing_depends_on_the_locale() -> None:
    fields = ("QDoubleSpinBox", "QSpinBox", "setlocale", "localeconv", "toLocaleString")
    assert callers(*fields) == []
    names = [
        file
        for file, tree in trees()
        for node in ast.walk(tree)
        if isinstance(node, ast.Name | ast.Attribute)
        and (node.id if isinstance(node, ast.Name) else node.attr) == "QLocale"
    ]
    # The language of texts and of the voice is chosen in the first two; the last names the days
    # beneath a chart in it. No number or date that is kept or read again is formed by it.
    assert set(names) <= {
        "gui/text/language.py",
        "gui/session/audio_cues.py",
        "gui/text/chart_wording.py",
    }


@pytest.mark.parametrize(
    "name", ["eval", "exec", "compile", "os.system", "os.popen", "tempfile.mktemp"]
)
def test_nothing_runs_a_text_or_guesses_a_name(name: str) -> None:
    found = [
        file for file, tree in trees() for _, call in called(tree) if ast.unparse(call.func) == name
    ]
    # The bundle's start stands in for the interpreter, which runs the code it is given.
    assert found == (["gui/desktop/start.py"] if name == "exec" else [])


def test_no_shell() -> None:
    with_shell = [
        file
        for file, tree in trees()
        for _, call in called(tree)
        if any(
            keyword.arg == "shell" and ast.unparse(keyword.value) != "False"
            for keyword in call.keywords
        )
    ]
    assert with_shell == []


def test_arrays_are_read_without_trust() -> None:
    trusting = [
        f"{file}:{call.lineno}"
        for file, tree in trees()
        for name, call in called(tree)
        if name == "load"
        and isinstance(call.func, ast.Attribute)
        and ast.unparse(call.func.value) in ("np", "numpy", "torch")
        and not any(
            keyword.arg == "allow_pickle" and ast.unparse(keyword.value) == "False"
            for keyword in call.keywords
        )
    ]
    assert trusting == []
