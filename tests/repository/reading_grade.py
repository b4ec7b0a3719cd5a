"""Reading grade of the pages that users read: ``python -m tests.repository.reading_grade``.

Flesch-Kincaid grade of the running text, by the library readability. Tables, commands and code
count for nothing, links by their words. Prints each page; ends with 1 when one is too hard.
"""

import argparse
import re
import sys
from html import unescape
from pathlib import Path

import readability

ROOT = Path(__file__).parents[2]
#: Highest school grade that a page for users may need. [project]
HIGHEST_GRADE = 8.0


def user_pages() -> list[Path]:
    """Return README and the pages of the window's help."""
    help_pages = (ROOT / "gui/help").iterdir()
    return [ROOT / "README.md", *sorted(p for p in help_pages if p.suffix in (".md", ".html"))]


def running_text(page: Path) -> str:
    """Return the sentences of a page, headings and list items ended by a full stop."""
    text = page.read_text(encoding="utf-8")
    return _of_html(text) if page.suffix == ".html" else _of_markdown(text)


def grade(page: Path) -> float:
    """Return the Flesch-Kincaid grade of a page."""
    # The library takes a sentence a line, and words apart from marks.
    lines = re.split(r"(?<=[.!?:])\s+", " ".join(running_text(page).split()))
    tokens = [" ".join(re.findall(r"[\w'-]+|[^\w\s]", line)) for line in lines]
    measures = readability.getmeasures("\n".join(tokens), lang="en")
    return float(measures["readability grades"]["Kincaid"])


def _of_markdown(text: str) -> str:
    text = re.sub(r"```.*?```|<!--.*?-->", "", text, flags=re.DOTALL)
    text = re.sub(r"^\|.*$", "", text, flags=re.MULTILINE)
    text = re.sub(r"!?\[([^\]]*)\]\([^)]*\)", r"\1", text)
    text = re.sub(r"`[^`]*`", "it", text)
    text = re.sub(r"^(#+|-|\d+\.) ", "", text, flags=re.MULTILINE)
    return re.sub(r"(?<![.!?:\n])\n(?=\n)", ".\n", text)


def _of_html(text: str) -> str:
    text = re.sub(r"<(head|script|style|table)\b.*?</\1>", "", text, flags=re.DOTALL)
    text = re.sub(r"</(p|li|h\d|figcaption)>", ". ", text)
    return unescape(re.sub(r"<[^>]+>", "", text)).replace("..", ".")


def main() -> int:
    """Print each page's grade; return 1 where one is over the limit."""
    argparse.ArgumentParser(description=__doc__.partition("\n")[0]).parse_args()
    grades = {page: grade(page) for page in user_pages()}
    for page, needed in grades.items():
        print(f"reading grade {needed:4.1f} of at most {HIGHEST_GRADE:.0f}  {page.name}")
    return int(max(grades.values()) > HIGHEST_GRADE)


if __name__ == "__main__":
    sys.exit(main())
