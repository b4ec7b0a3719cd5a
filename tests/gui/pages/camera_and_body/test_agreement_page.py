"""Page of a study against a goniometer: a plot for each movement."""

from pathlib import Path

from pytestqt.qtbot import QtBot

from gui.pages.camera_and_body.agreement import AgreementPage
from gui.pages.camera_and_body.agreement_study import analyse_study_file
from gui.style.appearance import Appearance
from tests.support.agreement_table import HEADER, table


def test_each_movement_has_its_own_plot_until_another_study_is_shown(
    appearance: Appearance, qtbot: QtBot, tmp_path: Path
) -> None:
    page = AgreementPage(appearance)
    qtbot.addWidget(page)
    page.resize(1100, 900)
    page.show()
    file = tmp_path / "spring.csv"
    file.write_text(f"{HEADER}\n{table(12)}\n{table(12, 'abduction')}", encoding="utf-8")
    page.show_study(analyse_study_file(file))
    assert page.heading.text() == "Camera against goniometer"
    first, second = page.plots
    assert first.accessibleName() == "plot of the differences: Flexion"
    assert second.accessibleName() == "plot of the differences: Abduction"
    qtbot.waitUntil(lambda: first.geometry().bottom() < second.geometry().top())
    file.write_text(f"{HEADER}\n{table(12)}", encoding="utf-8")
    page.show_study(analyse_study_file(file))
    assert len(page.plots) == 1
    assert not first.isVisible()
    assert not second.isVisible()


def test_larger_words_leave_the_plot_as_low(appearance: Appearance, tmp_path: Path) -> None:
    file = tmp_path / "spring.csv"
    file.write_text(f"{HEADER}\n{table(12)}", encoding="utf-8")
    page = AgreementPage(appearance)
    page.show_study(analyse_study_file(file))
    (plot,) = page.plots
    usual = plot.heightForWidth(960)
    appearance.choose(percent=200)
    assert plot.heightForWidth(960) <= usual
