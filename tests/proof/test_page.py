"""The page of proof: its own row is written, other rows stay, and a fault is never hidden."""

import datetime as dt

import pytest

from tests.proof import page
from tests.proof.page import SUBJECTS, Proof, finish, with_rows

EMPTY = "# Proof\n\n<!-- proof:begin -->\n<!-- proof:end -->\nEnd.\n"
DAY = dt.date(2026, 11, 29)


def proof(subject: str, *faults: str, counts: str = "50 kills") -> Proof:
    return Proof(subject=subject, counts=counts, faults=faults, command="python -m tests.x")


def test_rows_stand_in_the_order_of_the_subjects_and_the_latest_counts() -> None:
    text = with_rows(EMPTY, (proof(SUBJECTS[4]), proof(SUBJECTS[1])), DAY, "abc")
    text = with_rows(text, (proof(SUBJECTS[1], counts="60 kills"),), DAY, "def+")
    rows = [line for line in text.splitlines() if line.startswith("| ")][1:]
    assert rows == [
        f"| {SUBJECTS[1]} | 60 kills | passed | `python -m tests.x` | 2026-11-29 | def+ |",
        f"| {SUBJECTS[4]} | 50 kills | passed | `python -m tests.x` | 2026-11-29 | abc |",
    ]
    assert text.startswith("# Proof")
    assert text.endswith("<!-- proof:end -->\nEnd.\n")


def test_a_fault_stands_in_the_row_is_printed_and_ends_with_1(
    capsys: pytest.CaptureFixture[str],
) -> None:
    bad = proof(SUBJECTS[0], "a trial was lost", "a second one")
    assert "| 2 faults |" in bad.row(DAY, "abc")
    assert finish((proof(SUBJECTS[1]), bad), wanted=False) == 1
    assert "FAULT: a trial was lost\nFAULT: a second one\n" in capsys.readouterr().out
    assert finish((proof(SUBJECTS[1]),), wanted=False) == 0


def test_the_page_holds_rows_of_known_subjects_only() -> None:
    text = page.DOCUMENT.read_text(encoding="utf-8")
    table = text.split("<!-- proof:begin -->\n")[1].split("<!-- proof:end -->")[0]
    subjects = [line.split("|")[1].strip() for line in table.splitlines()[2:]]
    assert subjects == [each for each in SUBJECTS if each in subjects]
    assert with_rows(text, (), DAY, "abc") == text
