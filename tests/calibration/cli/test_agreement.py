"""The command from a table to words, JSON and plot."""

import json
from pathlib import Path

import pytest

from measure.cli.main import main
from tests.support.agreement_table import HEADER, table


def test_words_json_and_plot(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "spring.csv"
    path.write_text(f"{HEADER}\n{table(16)}\n{table(1, 'abduction')}\n", encoding="utf-8")
    written, drawn = tmp_path / "out.json", tmp_path / "out.png"
    code = main(["agreement", str(path), "--json", str(written), "--plot", str(drawn)])
    assert code == 0
    said = capsys.readouterr().out
    assert "Flexion: 32 pairs of 16 people (16 shoulders)." in said
    assert "Abduction: 2 complete pairs of 1 person." in said
    assert "A correction is offered: for flexion" in said
    content = json.loads(written.read_text(encoding="utf-8"))
    (figures,) = content["studies"]
    assert figures["movement"] == "flexion"
    assert figures["limits"]["pairs"] == 32
    assert figures["camera_repeat"]["shoulders"] == 16
    assert figures["correction"]["study"] == "spring"
    assert figures["correction"]["gain"] < 0
    assert figures["paragraph"] in said
    assert drawn.read_bytes().startswith(b"\x89PNG")


def test_too_little_everywhere_is_wrong_use(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "one.csv"
    path.write_text(f"{HEADER}\nP,flexion,left,90,91,,\n", encoding="utf-8")
    assert main(["agreement", str(path)]) == 2
    shown = capsys.readouterr()
    assert "1 complete pair of 1 person" in shown.err
    assert shown.out == ""


def test_separate_repeats(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "parts.csv"
    rows = [f"{n},flexion,left,{c},{g},," for n, c, g in zip("ABC", "579", "468", strict=True)]
    rows += ["A,flexion,left,6,,,", "B,flexion,left,,7,,"]
    path.write_text("\n".join([HEADER, *rows]), encoding="utf-8")
    assert main(["agreement", str(path), "--separate-repeats"]) == 0
    said = capsys.readouterr().out
    assert "Repeats of a shoulder were counted as such" in said
    assert "at the same moment" in said


@pytest.mark.parametrize("option", ["--json", "--plot"])
def test_files_that_cannot_be_written(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], option: str
) -> None:
    path = tmp_path / "spring.csv"
    path.write_text(f"{HEADER}\n{table(5)}\n", encoding="utf-8")
    assert main(["agreement", str(path), option, str(tmp_path / "gone" / "out.png")]) == 2
    assert "cannot be written" in capsys.readouterr().err
