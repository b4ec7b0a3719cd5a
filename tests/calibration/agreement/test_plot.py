"""The Bland-Altman plot."""

from pathlib import Path

import pytest

from calibration.agreement.pairs_table import pairs_from_text
from calibration.agreement.plot import agreement_figure, save_agreement_figure
from calibration.agreement.study import Agreement, analyse_agreement
from measure.errors import DataError
from tests.support.agreement_table import HEADER, table


def studies_of(text: str) -> list[Agreement]:
    results = [analyse_agreement(rows) for rows in pairs_from_text(text).by_movement().values()]
    return [result for result in results if isinstance(result, Agreement)]


def test_a_plot_has_a_panel_for_each_movement_and_names_every_line(tmp_path: Path) -> None:
    studies = studies_of(f"{HEADER}\n{table(16)}\n{table(12, 'abduction', gain=1.0)}")
    figure = agreement_figure(studies)
    first, second = figure.axes
    legend = first.get_legend()
    assert legend is not None
    names = [text.get_text() for text in legend.get_texts()]
    assert names[:2] == ["left shoulder", "right shoulder"]
    assert [name.split()[0] for name in names[2:]] == ["bias", "upper", "lower", "gain"]
    assert second.get_title() == "Abduction: 24 pairs, 12 people"
    # Black and white only: no line or marker has a colour.
    assert {line.get_color() for line in first.get_lines()} == {"black", "0.6"}
    save_agreement_figure(studies, tmp_path / "plot.pdf")
    assert (tmp_path / "plot.pdf").read_bytes().startswith(b"%PDF")


def test_a_plot_of_another_kind_is_refused(tmp_path: Path) -> None:
    with pytest.raises(DataError, match="must end in"):
        save_agreement_figure([], tmp_path / "plot.exe")
