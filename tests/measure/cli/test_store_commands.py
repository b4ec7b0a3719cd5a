"""The commands around the store, as a person types them."""

import json
import os
import subprocess
import sys
from dataclasses import replace
from importlib.metadata import entry_points
from pathlib import Path

import pytest

from measure.cli.main import main
from measure.domain.landmarks import Side
from measure.domain.reasons import SENTENCES
from measure.domain.records import AgeBand, History
from measure.export.history_schema import SCHEMA
from measure.storage import connection
from measure.storage.disk_kind import DiskKind
from measure.storage.store import Store
from tests.support import record_samples as sample

COMMANDS = ("people", "sessions", "export", "import", "backup", "restore", "privacy")


@pytest.fixture
def rosa(data_folder: Path) -> History:
    """Rosa with two sessions in the store that the commands use."""
    who = sample.person()
    first, second = sample.session(who, 1), sample.session(who, 2, finished=False)
    history = History(
        person=who,
        sessions=(first, second),
        measurements=(
            sample.record(first, 1),
            sample.record(first, 2, sample.REACH),
            sample.record(first, 3, sample.REFUSAL),
            sample.record(second, 1),
        ),
        plans=(sample.plan(who),),
    )
    with Store.open() as store:
        store.merge(history)
    return history


def _run(*arguments: str) -> int:
    return main([str(each) for each in arguments])


@pytest.mark.parametrize("command", COMMANDS)
def test_help_has_examples_and_exit_codes(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(command, "--help") == 0
    told = capsys.readouterr().out
    assert "examples:" in told
    assert f"thawline {command}" in told
    assert "exit codes:" in told


def test_the_commands_are_entry_points() -> None:
    names = {entry.name for entry in entry_points(group="thawline.commands")}
    assert names >= set(COMMANDS)


def test_people_from_nobody_to_nobody(
    data_folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert _run("people") == 0
    assert "No one has been added yet" in capsys.readouterr().out
    assert _run("people", "add", "Rosa", "--affected", "both", "--since", "2026-03") == 0
    assert _run("people", "add", "ROSA") == 2
    assert "already called Rosa" in capsys.readouterr().err
    assert _run("people", "add", "Emil", "--onset", "injury", "--dominant", "left") == 0
    capsys.readouterr()
    assert _run("people") == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line.split()[0] for line in lines[2:]] == ["Emil", "Rosa"]
    assert "left and right" in lines[3]
    assert _run("people", "--json") == 0
    assert [each["pseudonym"] for each in json.loads(capsys.readouterr().out)] == ["Emil", "Rosa"]
    assert _run("people", "show", "emil") == 0
    assert "injury" in capsys.readouterr().out
    assert _run("people", "delete", "Emil", "--yes") == 0
    assert "Deleted Emil for good, with 0 sessions." in capsys.readouterr().out
    assert _run("people", "show", "Emil") == 2
    assert "The people here are: Rosa" in capsys.readouterr().err


def test_everything_about_a_person_can_be_edited(
    data_folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert _run("people", "add", "Rosa", "--affected", "left", "--since", "2026-03") == 0
    changes = ("--affected", "both", "--age", "50-59", "--diabetes", "no", "--thyroid", "yes")
    assert _run("people", "edit", "Rosa", *changes) == 0
    assert _run("people", "edit", "Rosa", "--pseudonym", "Sorrel", "--since", "none") == 0
    capsys.readouterr()
    with Store.open() as store:
        (person,) = store.people()
    assert (person.pseudonym, person.affected, person.since) == ("Sorrel", tuple(Side), None)
    assert (person.age_band, person.diabetes, person.thyroid) == (AgeBand.FIFTIES, False, True)
    assert _run("people", "edit", "Sorrel", "--diabetes", "none", "--affected", "none") == 0
    with Store.open() as store:
        (person,) = store.people()
    assert (person.diabetes, person.affected, person.thyroid) == (None, (), True)
    capsys.readouterr()
    assert _run("people", "edit", "Sorrel", "--thyroid", "yes") == 0
    assert "Nothing to change" in capsys.readouterr().out
    assert _run("people", "add", "Tansy") == 0
    assert _run("people", "edit", "Tansy", "--pseudonym", "sorrel") == 2
    assert "Choose another pseudonym" in capsys.readouterr().err


@pytest.mark.parametrize(
    "arguments",
    [
        ("add", ""),
        ("add", "x" * 61),
        ("add", "Rosa", "--since", "lately"),
        ("add", "Rosa", "--affected", "knee"),
        ("add", "Rosa\x1b[2J"),
        ("show", "Nobody"),
        ("edit", "Nobody", "--onset", "gradual"),
        ("delete", "Nobody", "--yes"),
    ],
)
def test_wrong_use_of_people(
    arguments: tuple[str, ...], data_folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert _run("people", *arguments) == 2
    assert capsys.readouterr().err


@pytest.mark.parametrize(("typed", "left"), [("Rosa", 0), ("yes", 1), ("", 1)])
def test_deleting_asks_for_the_pseudonym(
    typed: str, left: int, rosa: History, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys.stdin, "isatty", lambda: True, raising=False)
    monkeypatch.setattr("builtins.input", lambda text: typed)
    assert _run("people", "delete", "Rosa") == 0
    with Store.open() as store:
        assert len(store.people()) == left


def test_deleting_without_a_terminal_needs_a_yes(
    rosa: History, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys.stdin, "isatty", lambda: False, raising=False)
    assert _run("people", "delete", "Rosa") == 2
    assert "add --yes" in capsys.readouterr().err
    with Store.open() as store:
        assert len(store.people()) == 1


def test_deleting_names_the_copies_that_may_hold_more(
    rosa: History, data_folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert _run("backup", str(tmp_path / "copy.sqlite")) == 0
    assert _run("restore", str(tmp_path / "copy.sqlite")) == 0
    capsys.readouterr()
    assert _run("people", "delete", "Rosa", "--yes") == 0
    assert str(data_folder / "sessions-set-aside-") in capsys.readouterr().out


def test_sessions_show_interval_refusal_and_notice(
    rosa: History, capsys: pytest.CaptureFixture[str]
) -> None:
    assert _run("sessions", "rosa") == 0
    told = capsys.readouterr().out
    assert "2026-04-02 10:00" in told
    assert "91°" in told
    assert "83 to 100°" in told
    assert "L3 to T12" in told
    assert "refused" in told
    refusals = [each for record in rosa.measurements for each in record.measurement.refused_for]
    assert refusals
    assert all(f"{reason}: {SENTENCES[reason]}" in told for reason in refusals)
    assert "1/4/6" in told
    assert "not finished" in told
    assert "not a diagnosis" in told
    assert _run("sessions", "Rosa", "--last", "1") == 0
    told = capsys.readouterr().out
    assert "2026-04-02" not in told
    assert "2026-04-03" in told


def test_sessions_as_json(rosa: History, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run("sessions", "Rosa", "--json") == 0
    content = json.loads(capsys.readouterr().out)
    assert [len(session["measurements"]) for session in content] == [3, 1]
    assert content[0]["measurements"][0]["measurement"]["value"] == 91.25


def test_one_session_is_deleted_after_asking(
    rosa: History, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys.stdin, "isatty", lambda: True, raising=False)
    monkeypatch.setattr("builtins.input", lambda _: "no")
    assert _run("sessions", "Rosa", "--delete", "2026-04-02 10:00") == 0
    told = capsys.readouterr().out
    assert "the session of Rosa at 2026-04-02 10:00, measurements: 3" in told
    assert "Nothing was deleted." in told
    monkeypatch.setattr("builtins.input", lambda _: "yes")
    assert _run("sessions", "Rosa", "--delete", "2026-04-02 10:00") == 0
    assert "Deleted for good" in capsys.readouterr().out
    with Store.open() as store:
        (left,) = store.sessions(rosa.person.id)
        assert left == rosa.sessions[1]
        assert store.measurements(rosa.person.id) == [rosa.measurements[3]]


def test_deleting_a_session_needs_its_time_and_a_yes(
    rosa: History, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys.stdin, "isatty", lambda: False, raising=False)
    assert _run("sessions", "Rosa", "--delete", "2026-04-02") == 2
    assert "Give the time as `thawline sessions` lists it" in capsys.readouterr().err
    assert _run("sessions", "Rosa", "--delete", "2026-04-02 10:00") == 2
    assert "add --yes" in capsys.readouterr().err
    with Store.open() as store:
        twin = replace(rosa.sessions[0], id="9" * 32)
        store.save_session(twin)
    assert _run("sessions", "Rosa", "--delete", "2026-04-02 10:00", "--yes") == 2
    assert "2 sessions began at" in capsys.readouterr().err
    with Store.open() as store:
        assert len(store.sessions(rosa.person.id)) == 3
        store.delete_session(twin.id)
    assert _run("sessions", "Rosa", "--delete", "2026-04-02 10:00", "--yes") == 0


def test_pain_of_a_session_is_corrected(rosa: History, capsys: pytest.CaptureFixture[str]) -> None:
    at = ("--correct-pain", "2026-04-02 10:00")
    first = rosa.measurements[0]
    task = (first.measurement.movement.value, first.measurement.side.value)
    assert _run("sessions", "Rosa", *at, "--at-rest", "3", "--during", *task, "none") == 0
    told = capsys.readouterr().out
    assert "Pain corrected on" in told
    assert "at rest: 3 instead of 1" in told
    with Store.open() as store:
        session = store.session(rosa.sessions[0].id)
        records = {each.id: each for each in store.measurements(rosa.person.id)}
    assert session.pain == replace(rosa.sessions[0].pain, rest=3)
    assert told.strip() in session.note
    corrected = [each for each in rosa.measurements if each != records[each.id]]
    assert [records[each.id].pain_during for each in corrected] == [None]
    assert _run("sessions", "Rosa", *at, "--at-rest", "3") == 0
    assert "Nothing to change." in capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (("--at-rest", "1"), "Give --correct-pain"),
        (("--correct-pain", "2026-04-02 10:00", "--at-rest", "11"), "Pain is rated from 0"),
        (("--correct-pain", "2026-04-02 10:00", "--worst", "much"), "from 0 to 10, or none"),
        (
            ("--correct-pain", "2026-04-02 10:00", "--during", "flexion", "up", "3"),
            "no movement 'flexion' of the side 'up'",
        ),
        (("--correct-pain", "2026-04-05 10:00", "--worst", "1"), "There is no session at"),
    ],
)
def test_wrong_use_of_a_correction(
    arguments: tuple[str, ...], told: str, rosa: History, capsys: pytest.CaptureFixture[str]
) -> None:
    assert _run("sessions", "Rosa", *arguments) == 2
    assert told in capsys.readouterr().err
    with Store.open() as store:
        assert store.sessions(rosa.person.id) == list(rosa.sessions)


def test_sessions_of_demo_people_say_so(
    data_folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    who = sample.person("Rosa", demo=True)
    with Store.open() as store:
        store.merge(History(person=who, sessions=(sample.session(who),)))
    assert _run("sessions", "Rosa") == 0
    assert "made-up person" in capsys.readouterr().out
    assert _run("people") == 0
    assert "Rosa (demo)" in capsys.readouterr().out


def test_a_terminal_that_lacks_letters_still_lists(data_folder: Path) -> None:
    with Store.open() as store:
        store.save_person(sample.person("Łukasz"))
    ran = subprocess.run(
        [sys.executable, "-m", "measure.cli.main", "people"],
        capture_output=True,
        env=os.environ | {"PYTHONIOENCODING": "ascii"},
        timeout=100,
    )
    assert (ran.returncode, ran.stderr) == (0, b"")
    assert b"?ukasz" in ran.stdout


@pytest.mark.parametrize("last", ["0", "-1", "two", "1.5"])
def test_wrong_counts(last: str, rosa: History, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run("sessions", "Rosa", "--last", last) == 2
    assert "at least 1" in capsys.readouterr().err


@pytest.mark.parametrize("kind", ["csv", "spreadsheet", "json", "fhir"])
def test_exports_to_a_file_and_to_a_folder(kind: str, rosa: History, tmp_path: Path) -> None:
    file = tmp_path / "out.file"
    assert _run("export", "Rosa", "--format", kind, "--to", str(file)) == 0
    folder = tmp_path / "folder"
    folder.mkdir()
    assert _run("export", "Rosa", "--format", kind, "--to", str(folder)) == 0
    (made,) = folder.iterdir()
    assert made.name.startswith("Rosa-20")
    assert len(made.read_bytes()) == len(file.read_bytes())
    if os.name == "posix":
        assert made.stat().st_mode & 0o077 == 0


def test_nothing_is_overwritten(
    rosa: History, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "rosa.json"
    file.write_text("mine")
    assert _run("export", "Rosa", "--format", "json", "--to", str(file)) == 2
    assert "rosa (2).json" in capsys.readouterr().err
    assert _run("backup", str(file)) == 2
    assert file.read_text() == "mine"


def test_options_of_exports(rosa: History, tmp_path: Path) -> None:
    point, codes = tmp_path / "point.csv", tmp_path / "codes.json"
    arguments = ("--format", "spreadsheet", "--decimal", "point", "--to", str(point))
    assert _run("export", "Rosa", *arguments) == 0
    assert ",91.25," in point.read_text(encoding="utf-8-sig")
    arguments = ("--format", "fhir", "--unverified-codes", "--to", str(codes))
    assert _run("export", "Rosa", *arguments) == 0
    assert _run("export", "Rosa", "--format", "xml", "--to", str(tmp_path / "x")) == 2
    assert _run("export", "Rosa", "--format", "csv") == 2
    assert _run("export", "Nobody", "--format", "csv", "--to", str(tmp_path / "x")) == 2
    assert not (tmp_path / "x").exists()


def test_hostile_pseudonyms_make_harmless_file_names(data_folder: Path, tmp_path: Path) -> None:
    for number, name in enumerate(["../../up", "CON", "a/b:c", "-rf", "日" * 60, "=1+1"]):
        with Store.open() as store:
            store.save_person(sample.person(name, id=sample.some_id(str(number))))
        arguments = ("--format", "csv", "--to", str(tmp_path / "out"))
        (tmp_path / "out").mkdir(exist_ok=True)
        assert _run("export", "--", name) == 2
        assert main(["export", *arguments, "--", name]) == 0
    made = list((tmp_path / "out").iterdir())
    assert len(made) == 6
    assert sorted(each.name for each in tmp_path.iterdir()) == ["data", "out"]


def test_there_and_back_to_another_computer(
    rosa: History,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    file = tmp_path / "rosa.json"
    assert _run("export", "Rosa", "--format", "json", "--to", str(file)) == 0
    monkeypatch.setenv("THAWLINE_DATA", str(tmp_path / "other"))
    assert _run("import", str(file)) == 0
    assert "Added Rosa. Records added: 7;" in capsys.readouterr().out
    with Store.open() as store:
        assert store.history(rosa.person.id) == rosa
    assert _run("import", str(file)) == 0
    assert "Found Rosa. Records added: 0; here already: 7." in capsys.readouterr().out
    file.write_bytes(file.read_bytes()[:-100])
    assert _run("import", str(file)) == 2
    assert "Nothing was changed" in capsys.readouterr().err
    assert _run("import", str(tmp_path / "nothing.json")) == 2


def test_backup_and_restore(
    rosa: History, data_folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    copy = tmp_path / "copy.sqlite"
    assert _run("backup", str(copy)) == 0
    (data_folder / "sessions.sqlite").write_bytes(b"")
    assert _run("sessions", "Rosa") == 2
    assert "thawline restore BACKUP" in capsys.readouterr().err
    assert _run("restore", str(copy)) == 0
    assert "now holds 1 person, 2 sessions and 4 measurements." in capsys.readouterr().out
    assert _run("sessions", "Rosa") == 0
    assert _run("restore", str(tmp_path / "nothing")) == 2


def test_privacy_says_what_is_kept_where(
    rosa: History,
    data_folder: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("THAWLINE_MODELS", str(data_folder / "models"))
    (data_folder / "models").mkdir()
    (data_folder / "models" / "pose-full.task").write_bytes(b"x" * 3000)
    (data_folder / "strange.txt").write_text("?")
    for name in ("bodies.json", "lens-profiles.json", "levels.json", "window.ini"):
        (data_folder / name).write_text("")
    before = {each.name: each.stat().st_mtime_ns for each in data_folder.iterdir()}
    assert _run("privacy") == 0
    told = capsys.readouterr().out
    assert str(data_folder) in told
    assert "people, bodies, places, sessions, notes, cameras" in told
    assert "3 kB" in told
    assert told.count("another file") == 1
    assert "thawline people delete" in told
    assert "does not encrypt" in told
    assert "Rosa" not in told
    if os.name == "posix":
        assert "you only (0600)" in told
    assert {each.name: each.stat().st_mtime_ns for each in data_folder.iterdir()} == before


def test_privacy_before_anything_is_kept(
    data_folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("THAWLINE_MODELS", str(data_folder / "models"))
    assert _run("privacy") == 0
    assert "Nothing is saved yet" in capsys.readouterr().out
    assert not data_folder.exists()


@pytest.mark.skipif(os.name != "posix", reason="not on this system: file modes")
def test_privacy_tells_when_others_can_read(
    rosa: History, data_folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    data_folder.chmod(0o755)
    (data_folder / "open.txt").write_text("")
    (data_folder / "open.txt").chmod(0o644)
    assert _run("privacy") == 0
    assert "others too (0644)" in capsys.readouterr().out


@pytest.mark.parametrize(
    "arguments",
    [
        ("people",),
        ("people", "show", "Rosa"),
        ("sessions", "Rosa"),
        ("progress", "Rosa"),
        ("export", "Rosa", "--format", "json", "--to", "{folder}/rosa.json"),
        ("report", "Rosa", "--to", "{folder}/rosa.html"),
    ],
    ids=lambda arguments: " ".join(arguments[:2]),
)
def test_a_bad_place_for_the_sessions_is_told_beside_the_results(
    arguments: tuple[str, ...],
    rosa: History,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.setattr(connection, "disk_kind", lambda folder: DiskKind.NETWORK)
    assert _run(*(each.format(folder=tmp_path) for each in arguments)) == 0
    told = capsys.readouterr()
    assert "on a network disk" in told.err
    assert "on a network disk" not in told.out


@pytest.mark.parametrize("schema", range(1, SCHEMA))
def test_files_of_earlier_versions_are_imported(data_folder: Path, schema: int) -> None:
    file = Path(__file__).parents[1] / f"export/golden/history-of-schema-{schema}.json"
    assert _run("import", str(file)) == 0
    with Store.open() as store:
        history = store.history(store.find_person("Rosa").id)
    assert len(history.measurements) == 2
    assert history.plans
    assert history.exercises_done
