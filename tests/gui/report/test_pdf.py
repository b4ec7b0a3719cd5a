"""The report as PDF: searchable, with its own fonts, on one page or two, whole on the disk."""

import shutil
import subprocess
import threading
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import qInstallMessageHandler
from PySide6.QtGui import QFontMetricsF, QTextDocument
from PySide6.QtWidgets import QApplication
from shiboken6 import isValid

from gui.report import pdf
from gui.report.files import report_bytes, write_report
from gui.report.language import translate_into
from gui.report.pdf import PrintedReport, RenderedPdf, make_pdf, plain_font
from measure.demo.story import story_histories
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History
from measure.report.caveats import DEMO
from measure.report.choices import ReportChoices
from measure.report.svg import Box, Diagram, Dot, Draw, Line, Shape, Words
from tests.support.progress_histories import day, history
from tests.support.record_samples import moment, person

NOW = moment("2026-11-25T09:00:00+00:00", 60)
TWELVE = [(7 * week, 90.0 + week) for week in range(12)]


def garden() -> dict[str, History]:
    return {records.person.pseudonym: records for records in story_histories(NOW)}


def plain(name: str = "Rosa") -> History:
    return history({(Movement.FLEXION, Side.LEFT): TWELVE}, who=person(name))


def made(html: Callable[[Draw, float], str], foot: str = "") -> RenderedPdf:
    return make_pdf(PrintedReport(html=html, foot=foot), "t")


def text_of(content: bytes, folder: Path) -> str:
    """Return the PDF's text as pdftotext finds it, blanks joined."""
    if not shutil.which("pdftotext"):
        pytest.skip("not on this system: pdftotext")
    path = folder / "text.pdf"
    path.write_bytes(content)
    done = subprocess.run(
        ["pdftotext", "-layout", path, "-"], capture_output=True, check=True, timeout=60
    )
    return " ".join(done.stdout.decode("utf-8").split())


def test_a_search_finds_words_with_fl_and_fi(qapp: QApplication, tmp_path: Path) -> None:
    detailed = ReportChoices(details=True)
    text = text_of(report_bytes(plain(), day(90), ".pdf", detailed)[0], tmp_path)
    for words in ("Flexion seen from the side", "First days", "confirmed", "practice"):
        assert words in text


def test_a_thread_that_qt_did_not_start_makes_it_without_a_complaint(qapp: QApplication) -> None:
    said: list[str] = []
    before = qInstallMessageHandler(lambda _kind, _context, words: said.append(words))
    try:
        thread = threading.Thread(target=report_bytes, args=(plain(), day(90), ".pdf"))
        thread.start()
        thread.join()
    finally:
        qInstallMessageHandler(before)
    assert said == []


@pytest.mark.parametrize("name", ["Łukasz 120° Ω Ж", "Żółć Ñandú", "flufflier finch", "<b>x</b>"])
def test_names_of_many_languages_are_found(qapp: QApplication, tmp_path: Path, name: str) -> None:
    content, lacking = report_bytes(plain(name), day(90), ".pdf")
    assert lacking == ""
    assert text_of(content, tmp_path).count(name) >= 2


def test_letters_that_the_font_has_not_are_named(qapp: QApplication) -> None:
    assert report_bytes(plain("田中 Rosa"), day(90), ".pdf")[1] == "田中"
    assert report_bytes(plain("田中 Rosa"), day(90), ".html")[1] == ""


def test_fonts_are_embedded(qapp: QApplication, tmp_path: Path) -> None:
    if not shutil.which("pdffonts"):
        pytest.skip("not on this system: pdffonts")
    path = tmp_path / "report.pdf"
    write_report(plain(), day(90), path)
    done = subprocess.run(["pdffonts", path], capture_output=True, check=True, timeout=60)
    rows = done.stdout.decode().splitlines()[2:]
    assert sorted(row.split()[0] for row in rows) == [
        "AtkinsonHyperlegible-Bold",
        "AtkinsonHyperlegible-Regular",
    ]
    # Columns from the end: object number and generation, then unicode, subset, embedded.
    assert all(row.split()[-5:-2] == ["yes", "no", "yes"] for row in rows)


@pytest.mark.parametrize("landscape", [False, True])
@pytest.mark.parametrize("language", ["en", "es"])
def test_demo_people_fit_one_page_and_are_marked_on_it(
    qapp: QApplication, tmp_path: Path, language: str, landscape: bool
) -> None:
    tr = translate_into(language)
    choices = ReportChoices(
        question="May I dig again?", landscape=landscape, language=language, tr=tr
    )
    for name, records in garden().items():
        content, _ = report_bytes(records, NOW.day, ".pdf", choices)
        text = text_of(content, tmp_path)
        assert tr("page {page} of {pages}").format(page=1, pages=1) in text
        # In the heading and at the foot.
        assert text.count(tr("Shoulder motion: {name} (demo data)").format(name=name)) == 2
        assert text.count(tr(DEMO)) == 1
        assert "May I dig again?" in text


def test_details_begin_on_a_new_page(qapp: QApplication, tmp_path: Path) -> None:
    records = garden()["demo-Thistle"]
    content, _ = report_bytes(records, NOW.day, ".pdf", ReportChoices(details=True))
    text = text_of(content, tmp_path)
    assert text.index("page 1 of 3") < text.index("The course in words")
    assert text.count("Shoulder motion: demo-Thistle (demo data)") == 1 + 3


def test_every_mark_can_be_painted(qapp: QApplication, tmp_path: Path) -> None:
    picture = Diagram(
        width=80,
        height=40,
        description="all marks",
        marks=(
            Line(x1=0, y1=0, x2=40, y2=40, dashed=True),
            Box(x=4, y=4, width=20, height=8, fill=0.5, edge=None),
            Box(x=4, y=20, width=20, height=8),
            Dot(x=50, y=10, size=4),
            Dot(x=60, y=10, size=4, shape=Shape.SQUARE, filled=False),
            Dot(x=70, y=10, size=4, shape=Shape.DIAMOND),
            Dot(x=70, y=20, size=4, shape=Shape.TRIANGLE, shade=0.5),
            Words(x=40, y=30, text="flat figure, flufflier", anchor="middle", bold=True),
        ),
    )
    pdf = made(lambda draw, _: f"<p>before</p><p>{draw(picture)}</p>", "the foot")
    text = text_of(pdf.content, tmp_path)
    assert pdf.pages == 1
    assert "before" in text
    assert "flat figure, flufflier" in text
    assert "the foot page 1 of 1" in text


def test_pictures_are_painted_where_their_place_is(qapp: QApplication, tmp_path: Path) -> None:
    if not shutil.which("pdftoppm"):
        pytest.skip("not on this system: pdftoppm")
    dark = Diagram(
        width=400,
        height=100,
        description="",
        marks=(Box(x=0, y=0, width=400, height=100, fill=0.0),),
    )
    path = tmp_path / "dark.pdf"
    pdf = made(lambda draw, _: f"<table><tr><td>{draw(dark)}</td></tr></table>")
    path.write_bytes(pdf.content)
    done = subprocess.run(
        ["pdftoppm", "-r", "72", "-gray", path], capture_output=True, check=True, timeout=60
    )
    magic, _, _, pixels = done.stdout.split(b"\n", 3)
    assert magic == b"P5"
    black = sum(level < 30 for level in pixels)
    assert black == pytest.approx(400 * 100, rel=0.05)


def test_a_long_text_goes_on_on_the_next_page(qapp: QApplication, tmp_path: Path) -> None:
    pdf = made(lambda *_: "".join(f"<p>line {k}</p>" for k in range(200)))
    text = text_of(pdf.content, tmp_path)
    assert pdf.pages > 2
    assert [f"line {k} " in text + " " for k in range(200)] == [True] * 200


def test_the_font_has_no_ligatures(qapp: QApplication) -> None:
    report_bytes(plain(), day(90), ".pdf")
    metrics = QFontMetricsF(plain_font(20))
    apart = metrics.horizontalAdvance("f") + metrics.horizontalAdvance("l")
    assert metrics.horizontalAdvance("fl") == pytest.approx(apart, abs=1.0)


def test_no_document_of_a_report_is_left_for_another_thread(
    qapp: QApplication, monkeypatch: pytest.MonkeyPatch
) -> None:
    documents: list[QTextDocument] = []

    class Noted(QTextDocument):
        def __init__(self) -> None:
            super().__init__()
            documents.append(self)

    monkeypatch.setattr(pdf, "QTextDocument", Noted)
    report_bytes(plain(), day(90), ".pdf", ReportChoices(details=True))
    assert documents
    assert not any(isValid(document) for document in documents)
