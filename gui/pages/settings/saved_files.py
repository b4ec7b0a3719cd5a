"""What is saved on this computer: files, sizes, who can read them, and how to be rid of them."""

from PySide6.QtCore import QUrl, Slot
from PySide6.QtGui import QDesktopServices, QShowEvent
from PySide6.QtWidgets import QWidget

from gui.pages.settings.data_page import DataPage, data_page_title
from gui.session.services import Services
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, clear_layout, column, widget_with
from gui.widgets.text import label
from gui.widgets.titled_page import TitledPage
from measure.progress.wording import with_decimal_sign
from measure.storage.saved_files import SavedFile, saved_files, size_text
from measure.system.paths import data_folder


def readers_words(file: SavedFile) -> str:
    """Return who can read a file."""
    if file.open_to_others is None:
        return tr("your account and administrators")
    return tr("others too") if file.open_to_others else tr("only you")


class SavedFilesPage(TitledPage):
    """Lists everything in the program's folders; nothing is changed, opened or sent."""

    def __init__(self, services: Services) -> None:
        super().__init__(services.appearance, data_page_title(DataPage.SAVED))
        self._services = services
        self.folder = label("", "quiet")
        self.open_folder = button(tr("Open the folder"))
        self.open_folder.clicked.connect(self._open_folder)
        self._list = QWidget()
        self._rows = column(on=self._list, spacing=self._appearance.gap(1))
        promises = (
            tr(
                "Nothing is sent anywhere. The only connection that this program opens by itself "
                "is made when you ask for the body tracking model."
            ),
            tr("No picture, video or body point is saved unless you ask for a file of them."),
            tr(
                "To delete one person, use the page \u201cPeople\u201d. To delete everything, "
                "close Thawline and delete the folder below."
            ),
            tr(
                "Files are not encrypted by this program: who can read your files can read them. "
                "Turn on the disk encryption of your system."
            ),
        )
        gap = self._appearance.gap(1)
        self.lay_out(
            card(*(label(promise) for promise in promises), spacing=gap),
            card(label(tr("Files of Thawline"), "strong"), self.folder, self._list, spacing=gap),
            buttons=[self.open_folder],
        )

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._services.slow_worker.run(saved_files, self.show_files, self.message_raised.emit)

    def show_files(self, files: list[SavedFile]) -> None:
        """Show these files, one a line."""
        self.folder.setText(str(data_folder()))
        clear_layout(self._rows)
        if not files:
            self._rows.addWidget(label(tr("Nothing is saved yet.")))
        for file in files:
            purpose = tr(file.purpose)
            facts = tr("{file}, {size}. Can be read by: {readers}.").format(
                file=file.name,
                size=with_decimal_sign(size_text(file.size_bytes), tr),
                readers=readers_words(file),
            )
            words = column(label(purpose[:1].upper() + purpose[1:]), label(facts, "small"))
            self._rows.addWidget(widget_with(words))

    @Slot()
    def _open_folder(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(data_folder())))
