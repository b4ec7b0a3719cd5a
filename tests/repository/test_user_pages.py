"""The pages for users: links lead somewhere, printed pages stand alone, facts are the code's."""

import re
from html.parser import HTMLParser
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QByteArray
from PySide6.QtGui import QImage, QPainter
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QApplication

from gui.protocol.red_flags import DAYS_BETWEEN_CHECKS, HIGH_PAIN, PAIN_JUMP, ScreeningPage
from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from gui.text.safety_wording import screening_text
from measure.domain.movements import MOVEMENTS, Movement
from measure.progress.home_programme import USUAL_PAIN_LIMIT
from tests.support.gui.handout_drawings import handout_drawings, write

ROOT = Path(__file__).parents[2]
HELP = ROOT / "gui" / "help"
PRINTED = ("measure-at-home.html", "clinic-card.html")
PAGES = [
    ROOT / "README.md",
    ROOT / "DEVELOPERS.md",
    ROOT / "calibration" / "README.md",
    *sorted((ROOT / "measure" / "docs").glob("*.md")),
    *sorted(page for page in HELP.iterdir() if page.suffix in (".md", ".html")),
]
#: Drawings and text of one printed page together, bytes.
SMALL = 120_000


def links(page: Path) -> set[str]:
    text = page.read_text(encoding="utf-8")
    found = re.findall(r"\]\(([^)\s]+)\)", text) if page.suffix == ".md" else []
    return set(found) | set(re.findall(r'(?:href|src)="([^"]+)"', text))


def words_of(name: str) -> str:
    return " ".join((HELP / name).read_text(encoding="utf-8").split())


class Tags(HTMLParser):
    """Collects tags in order, with their attributes, and sees that they are closed."""

    empty = ("meta", "link", "img", "br")

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.seen: list[tuple[str, dict[str, str | None]]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen.append((tag, dict(attrs)))
        if tag not in self.empty:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


def tags(name: str) -> list[tuple[str, dict[str, str | None]]]:
    parser = Tags()
    parser.feed((HELP / name).read_text(encoding="utf-8"))
    assert parser.open == []
    return parser.seen


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_links_lead_to_files_of_ours(page: Path) -> None:
    for link in links(page):
        assert "://" not in link, link
        assert (page.parent / link.partition("#")[0]).exists(), link


def test_the_readme_names_every_page_for_people() -> None:
    named = links(ROOT / "README.md")
    for page in PAGES[2:]:
        if page.name != "json-export.md":
            assert page.relative_to(ROOT).as_posix() in named, page.name


@pytest.mark.parametrize("name", PRINTED)
def test_a_printed_page_is_plain_and_small(name: str) -> None:
    seen = tags(name)
    kinds = {tag for tag, _ in seen}
    assert not kinds & {"script", "iframe", "form", "video"}
    pictures = [attributes for tag, attributes in seen if tag == "img"]
    assert all(attributes.get("alt") for attributes in pictures)
    files = {HELP / str(attributes["src"]) for attributes in pictures}
    assert sum(file.stat().st_size for file in (HELP / name, *files)) < SMALL


@pytest.mark.parametrize("name", PRINTED)
def test_a_printed_page_says_first_what_it_is_not(name: str) -> None:
    notice = words_of(name).split("</h1>")[1][:300]
    assert "not a diagnosis" in notice
    assert "before it becomes painful" in notice


def test_the_page_for_the_home_shows_every_movement() -> None:
    sources = {attributes.get("src") for tag, attributes in tags(PRINTED[0]) if tag == "img"}
    assert sources == {
        "pictures/place.svg",
        *(f"pictures/{kind}-{each.value}.svg" for kind in ("stand", "above") for each in Movement),
    }


def test_the_card_names_movements_and_zeros_as_the_table_does() -> None:
    card = words_of("clinic-card.html")
    for facts in MOVEMENTS.values():
        assert f"<td>{facts.name}</td>" in card
        assert f"<td>{facts.zero}</td>" in card


def test_when_to_call_tells_the_limits_in_force() -> None:
    page = words_of("when-to-call.md")
    assert (DAYS_BETWEEN_CHECKS, "thirty days" in page) == (30, True)
    assert f"hurts {HIGH_PAIN} of 10 or more, or {PAIN_JUMP} more than when you began" in page
    assert f"({USUAL_PAIN_LIMIT} of 10 if no one has set one)" in page


@pytest.mark.parametrize(
    "question", [ScreeningPage.EMERGENCY, ScreeningPage.SOON, ScreeningPage.CLINICIAN]
)
def test_when_to_call_asks_what_the_window_asks(question: ScreeningPage) -> None:
    page = words_of("when-to-call.md")
    missing = [item for item in screening_text(question).items if f"- {item}" not in page]
    assert missing == []


def test_when_to_call_begins_with_the_emergency() -> None:
    headings = re.findall(r"^## (.+)$", (HELP / "when-to-call.md").read_text("utf-8"), re.M)
    assert "emergency" in headings[0]


@pytest.mark.parametrize("name", ["trust.md", "clinic-card.html", "measure-at-home.html"])
def test_no_page_copies_a_measured_error(name: str) -> None:
    """Figures of accuracy stand in one place only, where the bench writes them."""
    text = words_of(name)
    assert not re.search(r"±|mean error|\bP95\b|\d+(\.\d+)? ?% of the (clips|readings)", text)


def test_no_page_urges_anybody() -> None:
    for name in (*PRINTED, "trust.md", "when-to-call.md"):
        told = words_of(name).lower()
        for urging in ("as far as you can", "push", "try harder", "a bit further", "beat your"):
            assert urging not in told, (name, urging)


def test_the_drawings_of_the_pages_are_those_of_the_code(
    qapp: QApplication, tmp_path: Path
) -> None:
    """Painted from the files and from the code they look the same, whatever Qt's version writes."""
    appearance = Appearance(Scheme.LIGHT)
    assert write(tmp_path) == len(list(HELP.glob("pictures/*.svg"))) == 2 * len(Movement) + 1
    for stem, size, paint in handout_drawings(appearance):
        kept, painted = (QImage(size, QImage.Format.Format_RGB32) for _ in range(2))
        for image in (kept, painted):
            image.fill(0xFFFFFFFF)
        painter = QPainter(kept)
        file = (HELP / "pictures" / f"{stem}.svg").read_bytes()
        QSvgRenderer(QByteArray(file)).render(painter)
        painter.end()
        painter = QPainter(painted)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint(painter)
        painter.end()
        assert _share_unlike(kept, painted) < 0.01, stem


def _share_unlike(one: QImage, other: QImage) -> float:
    """Return the share of pixels whose lightness differs by more than a tenth."""
    first, second = (
        np.frombuffer(each.convertToFormat(QImage.Format.Format_Grayscale8).constBits(), np.uint8)
        for each in (one, other)
    )
    return float(np.mean(np.abs(first.astype(int) - second.astype(int)) > 25))
