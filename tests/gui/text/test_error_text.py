"""Errors of clips and files in the language of the window: whole sentences, from real errors."""

import ast
import errno
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QApplication

import measure
from gui.pages.clips.clip_rows import ClipRow, Fact
from gui.text.wording import error_text
from gui.translations.texts_of_messages import texts_of_messages
from gui.translations.update import files_of, translations
from measure import errors
from measure.clips.inputs import ClipEntry, clips_named, read_manifest
from measure.clips.outcome import ClipResult
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.record_checks import checked_name
from measure.errors import ClipError, ThawlineError
from measure.export.history_json import read_history
from measure.pose.messages import Failed
from measure.pose_models.bundles import load
from measure.pose_models.catalogue import ModelQuality
from measure.storage.backup import inspect
from measure.storage.store import Store
from measure.system.atomic_files import write_new
from measure.video.container import check_clip
from measure.video.source import open_clip
from tests.support.gui.screenshots import language_in_force

#: Modules whose errors the window shows.
SHOWN = (
    "camera/capture",
    "camera/devices",
    "clips/inputs",
    "clips/outcome",
    "domain/record_checks",
    "export/history_json",
    "storage/backup",
    "storage/calibration_files",
    "storage/errors",
    "storage/location",
    "storage/merge",
    "storage/migrations",
    "storage/person_rows",
    "storage/saved_files",
    "system/atomic_files",
    "system/json_codec",
    "video/container",
    "video/frame",
    "video/reader",
    "video/source",
)


@pytest.fixture
def spanish(qapp: QApplication) -> Iterator[None]:
    with language_in_force(qapp, "es"):
        yield


def raised_by(call: Callable[[], object]) -> ThawlineError:
    with pytest.raises(ThawlineError) as caught:
        call()
    return caught.value


def text_of(call: Callable[[], object]) -> str:
    return error_text(raised_by(call))


def test_every_message_has_a_finished_translation() -> None:
    spanish = translations(files_of("es")[0])
    texts = texts_of_messages()
    assert len(texts) > 150
    assert [text for text in texts if not spanish.get(text)] == []


@pytest.mark.parametrize("module", SHOWN)
def test_no_error_that_the_window_shows_is_bare_english(module: str) -> None:
    file = Path(measure.__path__[0]) / f"{module}.py"
    kinds = {name for name in vars(errors) if name.endswith("Error")} | {"SourceTroubleError"}
    bare = [
        node.lineno
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id in kinds
        and any(
            isinstance(part, ast.JoinedStr)
            or (isinstance(part, ast.Constant) and isinstance(part.value, str))
            for part in node.args
        )
    ]
    assert bare == []


@pytest.mark.usefixtures("spanish")
def test_clips_that_cannot_be_read(tmp_path: Path) -> None:
    assert text_of(lambda: check_clip(tmp_path / "away.mp4")) == (
        f"No se encuentra la grabación away.mp4 en {tmp_path}. Compruebe el nombre."
    )
    assert text_of(lambda: check_clip(tmp_path)) == (
        f"{tmp_path} es una carpeta, no una grabación. Elija uno de sus archivos."
    )
    (tmp_path / "notes.mp4").write_text("notes", encoding="utf-8")
    assert text_of(lambda: check_clip(tmp_path / "notes.mp4")) == (
        "La grabación notes.mp4 es un archivo de texto, no un vídeo."
    )
    (tmp_path / "cut.mp4").write_bytes(b"\0\0\0\x08ftyp" + bytes(100))
    assert text_of(lambda: open_clip(tmp_path / "cut.mp4")).startswith(
        "La grabación cut.mp4 está incompleta: le falta el índice,"
    )
    (tmp_path / "none").mkdir()
    assert text_of(lambda: clips_named([tmp_path / "none"])).startswith(
        f"En {tmp_path / 'none'} no hay grabaciones. Se leen los archivos que terminan en "
    )


@pytest.mark.usefixtures("spanish")
def test_a_clip_that_the_other_process_could_not_read_in_the_list(tmp_path: Path) -> None:
    """The error crosses to the window's process and stands in the row of the clip."""
    clip = tmp_path / "empty.mp4"
    clip.touch()
    error = Failed.of(raised_by(lambda: check_clip(clip))).exception()
    assert type(error) is ClipError
    row = ClipRow.of_entry(ClipEntry(clip=clip, movement=Movement.FLEXION, side=Side.LEFT))
    row.result = ClipResult(
        number=0,
        entry=ClipEntry(clip=clip, movement=Movement.FLEXION, side=Side.LEFT),
        error=error,
    )
    assert row.text(Fact.REASONS) == (
        "La grabación empty.mp4 está vacía (0 bytes). Cópiela o grábela de nuevo."
    )


@pytest.mark.usefixtures("spanish")
def test_a_table_of_clips(tmp_path: Path) -> None:
    table = tmp_path / "clips.csv"
    table.write_text("clip,movement,side\na.mp4,flexion,up\n", encoding="utf-8")
    assert text_of(lambda: read_manifest(table)) == (
        f"{table}, línea 2: 'up' no es un lado. Escriba left (izquierdo) o right (derecho)."
    )


@pytest.mark.usefixtures("spanish")
def test_backups_and_histories(tmp_path: Path) -> None:
    notes = tmp_path / "notes.sqlite"
    notes.write_text("notes", encoding="utf-8")
    assert text_of(lambda: inspect(notes)) == (
        f"{notes} no es una copia de seguridad completa (el archivo no es una base de datos). "
        "No se ha cambiado nada. Elija otra copia de seguridad."
    )
    assert text_of(lambda: inspect(tmp_path / "away.sqlite")) == (
        f"No existe el archivo {tmp_path / 'away.sqlite'}."
    )
    history = tmp_path / "rowan.json"
    history.write_text("[]", encoding="utf-8")
    assert text_of(lambda: read_history(history)) == (
        f"No se puede importar {history}. Es JSON, pero no es un historial de los que crea "
        "`thawline export PERSON --format json`. No se ha cambiado nada. Elija un archivo creado "
        "con `thawline export --format json`."
    )


@pytest.mark.usefixtures("spanish")
def test_a_full_disk_and_a_file_that_is_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "report.html"
    target.write_text("mine", encoding="utf-8")
    assert text_of(lambda: write_new(target, b"new")).startswith(
        f"{target} ya existe y se ha dejado como estaba. Elija otro nombre, por ejemplo: "
    )

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    assert text_of(lambda: write_new(tmp_path / "new.html", b"new")) == (
        f"No se ha podido escribir {tmp_path / 'new.html'} (no queda espacio en el disco). No ha "
        "quedado ningún archivo incompleto. Compruebe el nombre, el espacio y los permisos del "
        "disco, o elija otro lugar."
    )


@pytest.mark.usefixtures("spanish")
def test_models_stores_and_names(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("THAWLINE_MODELS", str(tmp_path))
    assert text_of(lambda: load(ModelQuality.FULL)) == (
        "El modelo de seguimiento del cuerpo «full» todavía no está en este ordenador. "
        "Ejecute: thawline model"
    )
    store = tmp_path / "store.sqlite"
    store.write_bytes(b"no database at all" * 300)
    assert "está dañado (el archivo no es una base de datos)" in text_of(lambda: Store.open(store))
    assert text_of(lambda: checked_name(" ")) == "Un seudónimo necesita al menos un carácter."


def test_the_terminal_reads_english(qapp: QCoreApplication, tmp_path: Path) -> None:
    with language_in_force(qapp, "es"):
        error = raised_by(lambda: check_clip(tmp_path / "away.mp4"))
        assert str(error) == (f"The clip away.mp4 was not found in {tmp_path}. Check the name.")
