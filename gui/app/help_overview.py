"""First page of the help: where to read more, when not to measure, and what this is."""

from functools import partial

from PySide6.QtWidgets import QFrame

from gui.app.help_pages import HelpPage, open_page, page_line, page_title
from gui.app.keys import keys_dialog
from gui.protocol.red_flags import ScreeningPage
from gui.style.appearance import Appearance
from gui.text.safety_wording import screening_text
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card
from gui.widgets.text import SignedLine, label
from gui.widgets.titled_page import TitledPage
from gui.widgets.topic_button import TopicButton, TopicGrid


class HelpOverview(TitledPage):
    """Leads to every page of the help."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__(appearance, tr("Help"))
        self.topics: dict[HelpPage, TopicButton] = {}
        for page in HelpPage:
            urgent = appearance if page is HelpPage.WHEN_TO_CALL else None
            self.topics[page] = TopicButton(page_title(page), page_line(page), urgent=urgent)
            self.topics[page].clicked.connect(partial(self._open, page))
        self.keys = button(tr("Keys"))
        self.keys.clicked.connect(self._show_keys)
        about = screening_text(ScreeningPage.ABOUT)
        self.lay_out(
            TopicGrid(list(self.topics.values())),
            *self._signs(),
            card(label(about.title, "strong"), *map(label, about.items), spacing=appearance.gap(1)),
            buttons=[self.keys],
        )

    def _signs(self) -> list[QFrame]:
        """Return a card for each list of signs; what to do stands before the list."""
        gap = self._appearance.gap(1)
        return [
            card(
                label(words, "strong"),
                *(SignedLine("\u2022", item) for item in screening_text(page).items),
                role=role,
                spacing=gap,
            )
            for page, role, words in (
                (
                    ScreeningPage.EMERGENCY,
                    "alarm-card",
                    tr("If any of these apply, do not measure. Get help now:"),
                ),
                (
                    ScreeningPage.SOON,
                    "card",
                    tr(
                        "If any of these apply, see a clinician within a few days, before you "
                        "measure:"
                    ),
                ),
                (
                    ScreeningPage.CLINICIAN,
                    "card",
                    tr("If any of these apply, ask your clinician before you measure:"),
                ),
            )
        ]

    def _open(self, page: HelpPage, _checked: bool = False) -> None:
        open_page(page, self.window())

    def _show_keys(self) -> None:
        keys_dialog(self.window()).open()
