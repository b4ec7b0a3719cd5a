"""The command from a table to words, JSON and plot."""

import json
from pathlib import Path

import numpy as np
import pytest

from calibration.agreement.pairs_table import pairs_from_text
from calibration.agreement.plot import agreement_figure, save_agreement_figure
from calibration.agreement.study import Agreement, analyse_agreement
from measure.cli.main import main
from measure.errors import DataError

HEADER = "person,movement,side,camera_deg,goniometer_deg,repeat,tester"


def table(people: int, movement: str = "flexion", gain: float = 0.9) -> str:
    random = np.random.default_rng(people)
    rows = []
    for person in range(people):
        angle = random.uniform(40, 160)
        for repeat in (1, 2):
            camera = gain * angle + 4 + random.normal(0, 2)
            read = angle + random.normal(0, 2)
            side = "left" if person % 2 else "right"
            rows.append(f"P{person},{movement},{side},{camera:.1f},{read:.1f},{repeat},Wren")
    return "\n".join(rows)


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
    assert "could not be written" in capsys.readouterr().err


def found_in(text: str) -> list[Agreement]:
    studies = [analyse_agreement(rows) for rows in pairs_from_text(text).by_movement().values()]
    return [each for each in studies if isinstance(each, Agreement)]


def test_a_plot_has_a_panel_for_each_movement_and_names_every_line(tmp_path: Path) -> None:
    found = found_in(f"{HEADER}\n{table(16)}\n{table(12, 'abduction', gain=1.0)}")
    figure = agreement_figure(found)
    first, second = figure.axes
    legend = first.get_legend()
    assert legend is not None
    names = [text.get_text() for text in legend.get_texts()]
    assert names[:2] == ["left shoulder", "right shoulder"]
    assert [name.split()[0] for name in names[2:]] == ["bias", "upper", "lower", "gain"]
    assert second.get_title() == "Abduction: 24 pairs, 12 people"
    # Black and white only: no line or marker has a colour.
    assert {line.get_color() for line in first.get_lines()} == {"black", "0.6"}
    save_agreement_figure(found, tmp_path / "plot.pdf")
    assert (tmp_path / "plot.pdf").read_bytes().startswith(b"%PDF")


def test_a_plot_of_another_kind_is_refused(tmp_path: Path) -> None:
    with pytest.raises(DataError, match="must end in"):
        save_agreement_figure([], tmp_path / "plot.exe")
