"""The page of exercises for the person: whole, on one page, drawn, in both languages."""

import datetime as dt
import shutil
import subprocess
from pathlib import Path

import pytest
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QApplication

from gui.report.handout import ONE_PAGE, handout_pdf
from gui.report.handout_file import plan_to_print, write_handout
from gui.report.handout_words import handout_words
from gui.report.language import translate_into
from measure.cli.main import main
from measure.domain.exercises import EXERCISE_FACTS, Exercise, ListedExercise
from measure.domain.home_programme_records import Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.records import History
from measure.errors import InputError
from measure.storage.store import Store
from tests.support.record_samples import person, some_id

NOTE = "Stand in a doorway, the forearm on the frame, and lean forwards a little."
#: The exercises with the longest descriptions, in the language with longer words.
LONGEST = sorted(ListedExercise, key=lambda listed: -len(EXERCISE_FACTS[listed].how))


def plan_of(listed: list[ListedExercise], own: int = 0, limit: int = 4) -> Plan:
    exercises = [Exercise(listed=item) for item in listed]
    exercises += [Exercise(own_name=f"Door lean {number}") for number in range(own)]
    return Plan(
        id=some_id("plan"),
        person_id=some_id("Rosa"),
        first_day=dt.date(2026, 11, 15),
        exercises=tuple(
            PlannedExercise(
                exercise=exercise,
                repetitions=10,
                hold_s=15,
                times_a_day=3,
                sides=(Side.LEFT, Side.RIGHT),
                note=NOTE,
            )
            for exercise in exercises
        ),
        pain_limit=limit,
        chosen_by="physiotherapist",
        review=dt.date(2026, 12, 15),
    )


def pdf_of(plan: Plan, code: str = "en") -> bytes:
    return handout_pdf(handout_words(person("Rosa"), plan, translate_into(code)))


def pages_of(content: bytes, folder: Path) -> list[str]:
    """Return the text of each page as pdftotext finds it, blanks joined."""
    if not shutil.which("pdftotext"):
        pytest.skip("not on this system: pdftotext")
    path = folder / "page.pdf"
    path.write_bytes(content)
    done = subprocess.run(["pdftotext", path, "-"], capture_output=True, check=True, timeout=60)
    pages = done.stdout.decode("utf-8").split("\f")
    return [" ".join(page.split()) for page in pages if page.strip()]


@pytest.mark.parametrize(
    ("exercise", "said"),
    [
        (ListedExercise.TOWEL, False),
        (ListedExercise.WALL_WALK, True),
        (ListedExercise.CROSS_BODY, True),
    ],
)
def test_the_page_says_that_a_drawing_is_as_in_a_mirror_unless_it_is_from_behind(
    exercise: ListedExercise, said: bool
) -> None:
    words = handout_words(person("Rosa"), plan_of([exercise]), str)
    assert ("as in a mirror" in words.facts) is said


def test_the_page_says_all_that_the_clinician_set(qapp: QApplication, tmp_path: Path) -> None:
    (page,) = pages_of(pdf_of(plan_of([ListedExercise.WALL_WALK], own=1)), tmp_path)
    for words in (
        "Exercises: Rosa",
        "Chosen by: physiotherapist. From 15 Nov 2026. Review: 15 Dec 2026.",
        "Move slowly, and stop before it becomes painful. Stop when pain reaches 4 of 10, or "
        "before.",
        "Wall walk",
        "10 repetitions, held for 15 s, 3 times a day, both sides",
        "Face a wall and walk your fingers up it",
        NOTE,
        "Door lean 0",
        "Stop and call the emergency number",
        "Stop and see your clinician within a few days",
        "Thawline added nothing",
    ):
        assert words in page
    (strict,) = pages_of(pdf_of(plan_of([ListedExercise.TOWEL], limit=1)), tmp_path)
    assert "Stop at the first pain." in strict


@pytest.mark.parametrize("code", ["en", "es"])
def test_six_exercises_stand_on_one_page(qapp: QApplication, tmp_path: Path, code: str) -> None:
    pages = pages_of(pdf_of(plan_of(LONGEST[:ONE_PAGE]), code), tmp_path)
    assert len(pages) == 1
    tr = translate_into(code)
    for listed in LONGEST[:ONE_PAGE]:
        assert tr(EXERCISE_FACTS[listed].name) in pages[0]


def test_more_exercises_go_on_on_the_next_page(qapp: QApplication, tmp_path: Path) -> None:
    pages = pages_of(pdf_of(plan_of(list(ListedExercise), own=4)), tmp_path)
    assert len(pages) > 1
    for number in range(4):
        assert sum(f"Door lean {number}" in page for page in pages) == 1
    assert all("emergency number" in page for page in pages)


def test_it_speaks_spanish_throughout(qapp: QApplication, tmp_path: Path) -> None:
    (page,) = pages_of(pdf_of(plan_of([ListedExercise.PENDULUM]), "es"), tmp_path)
    assert page.startswith("Ejercicios: Rosa")
    english = page.replace(NOTE, "").replace("physiotherapist", "")
    assert not {"the", "and", "pain", "stop", "Stop", "your"} & set(english.split())


@pytest.mark.parametrize("listed", list(ListedExercise))
def test_each_exercise_of_the_list_is_drawn(
    qapp: QApplication, tmp_path: Path, listed: ListedExercise
) -> None:
    if not shutil.which("pdftoppm"):
        pytest.skip("not on this system: pdftoppm")
    path = tmp_path / "page.pdf"
    path.write_bytes(pdf_of(plan_of([listed])))
    subprocess.run(
        ["pdftoppm", "-r", "30", "-png", path, tmp_path / "page"], check=True, timeout=60
    )
    (picture,) = map(QImage, map(str, tmp_path.glob("page*.png")))
    dark = sum(
        picture.pixelColor(x, y).lightness() < 200
        for x in range(picture.width() // 5)
        for y in range(picture.height() // 8, picture.height() // 3)
    )
    assert dark > 60


def test_a_page_is_written_once_and_needs_a_programme(qapp: QApplication, tmp_path: Path) -> None:
    plan, today = plan_of([ListedExercise.TOWEL]), dt.date(2026, 11, 25)
    assert plan_to_print(History(person=person(), plans=(plan,)), today) == plan
    with pytest.raises(InputError, match="no programme"):
        plan_to_print(History(person=person()), today)
    with pytest.raises(InputError, match="does not end in"):
        write_handout(person(), plan, "en", tmp_path / "page.html")
    write_handout(person(), plan, "en", tmp_path / "page.pdf")
    with pytest.raises(InputError):
        write_handout(person(), plan, "en", tmp_path / "page.pdf")


def test_the_command_writes_the_page_of_exercises(
    data_folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with Store.open() as store:
        store.save_person(person("Rosa"))
    target = tmp_path / "exercises.pdf"
    asked = ["report", "Rosa", "--to", str(target), "--exercises", "--language", "es"]
    assert main(asked) == 2
    assert "no programme of exercises" in capsys.readouterr().err
    with Store.open() as store:
        store.save_plan(plan_of([ListedExercise.PENDULUM]))
    assert main(asked) == 0
    (page,) = pages_of(target.read_bytes(), tmp_path)
    assert page.startswith("Ejercicios: Rosa")
