"""The page about Python: its examples give what they show."""

import doctest
import re
from pathlib import Path

import pytest

PAGE = Path(__file__).parents[3] / "measure" / "docs" / "python.md"


@pytest.mark.usefixtures("working_folder")
def test_the_examples_of_the_page_are_true(capsys: pytest.CaptureFixture[str]) -> None:
    blocks = re.findall(r"^```pycon\n(.*?)^```", PAGE.read_text("utf-8"), re.DOTALL | re.MULTILINE)
    examples = doctest.DocTestParser().get_doctest("\n".join(blocks), {}, PAGE.name, str(PAGE), 0)
    assert len(examples.examples) > 15
    failed, _ = doctest.DocTestRunner().run(examples)
    assert failed == 0, capsys.readouterr().out
