"""Body tracking page: which pose models are here, and fetching them, with progress and cancel."""

from PySide6.QtCore import Slot
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QProgressBar

from gui.pages.settings.data_page import DataPage, data_page_title
from gui.session.services import Services
from gui.style.measures import GAP_PX
from gui.text.wording import error_text, message_text, tr
from gui.widgets.buttons import button
from gui.widgets.figures.pictured_card import PicturedCard
from gui.widgets.figures.standing_figure import StandingFigure
from gui.widgets.layouts import column, separator, widget_with
from gui.widgets.text import ElidedLabel, SignedLine, label, terms
from gui.widgets.titled_page import TitledPage
from measure.errors import ModelError
from measure.pose_models.bundles import Bundle, bundle_path, load
from measure.pose_models.catalogue import ModelQuality
from measure.pose_models.package_clients import PACKAGES
from measure.progress.wording import with_decimal_sign
from measure.storage.saved_files import size_text
from measure.system.paths import model_folder

#: Digits of the standard level's fingerprint by which two versions are told apart. [technical]
_VERSION_DIGITS = 8


def quality_name(quality: ModelQuality) -> str:
    """Return a detail level in plain words."""
    return {
        ModelQuality.LITE: tr("Fast"),
        ModelQuality.FULL: tr("Standard"),
        ModelQuality.HEAVY: tr("Detailed"),
    }[quality]


def model_levels() -> dict[ModelQuality, Bundle | str]:
    """Return the bundle of every detail level, or why it cannot be used."""
    levels: dict[ModelQuality, Bundle | str] = {}
    for quality in ModelQuality:
        try:
            levels[quality] = load(quality)
        except ModelError as error:
            levels[quality] = error_text(error)
    return levels


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
        about = tr("Nothing to do, and nothing is sent.")
        lacking = tr(
            "Thawline finds the body in the picture with a model that is downloaded once and "
            "then stays on this computer. Without it, nothing can be measured."
        )
        online = tr(
            "Downloading is the only time Thawline uses the network. About {megabytes} MB come "
            "from the public package registry, through the package program of this computer "
            "(npm or pip). Nothing about you is sent. The files are checked before they are used."
        ).format(megabytes=max(package.megabytes for package in PACKAGES))
        self.state = SignedLine("", "", "title")
        self._levels = widget_with(column(*self.here.values(), spacing=self._appearance.gap(1)))
        self._online, self._about, self._lacking = label(online), label(about), label(lacking)
        self.facts = {tr("Size"): label(""), tr("Version"): label("")}
        # A path needs the whole width.
        self.folder = ElidedLabel()
        facts = column(terms(self.facts.items(), ""), self.folder, spacing=GAP_PX // 2)
        self._facts = widget_with(column(separator(), facts, spacing=self._appearance.gap(2)))
        words = column(
            1,
            self.state,
            self.outcome,
            self.progress,
            self._about,
            self._lacking,
            self._levels,
            self._online,
            self._facts,
            1,
            spacing=self._appearance.gap(2),
        )
        figure = StandingFigure(self._appearance, tracked=True)
        self.lay_out(
            PicturedCard(self._appearance, figure, words),
            buttons=[self.cancel, self.fetch],
            short=True,
        )
        self._facts.setVisible(False)
        self._about.setVisible(False)
        self._say("")
        self._show_running()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._show_running()
        self._check()

    def _check(self) -> None:
        self._services.slow_worker.run(model_levels, self._show_here, self.message_raised.emit)

    def _show_here(self, levels: dict[ModelQuality, Bundle | str]) -> None:
        here = {quality: level for quality, level in levels.items() if isinstance(level, Bundle)}
        for quality in levels:
            ready = quality in here
            words = tr("\u2713  {level}: ready") if ready else tr("\u25cb  {level}: not installed")
            self.here[quality].setText(words.format(level=quality_name(quality)))
        self._missing = len(here) < len(levels)
        if self._missing:
            self.state.say("\u25cb", tr("Not complete on this computer"))
        else:
            self.state.say("\u2713", tr("Ready on this computer"))
        for shown in (self._about, self._facts):
            shown.setVisible(not self._missing)
        for shown in (self._levels, self._lacking, self._online):
            shown.setVisible(self._missing)
        if not self._missing:
            self._show_facts(list(here.values()))
        self._show_running()

    def _show_facts(self, bundles: list[Bundle]) -> None:
        """Show how large the levels are, which they are, and where."""
        standard = next(level for level in bundles if level.quality is ModelQuality.FULL)
        size = with_decimal_sign(size_text(sum(len(bundle.content) for bundle in bundles)), tr)
        version = standard.sha256[:_VERSION_DIGITS]
        for shown, words in zip(self.facts.values(), (size, version), strict=True):
            shown.setText(words)
        self.folder.say(str(model_folder()))

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
