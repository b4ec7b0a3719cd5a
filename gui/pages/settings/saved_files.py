"""What is saved on this computer, as a table: files, how long, who can read them."""

from PySide6.QtCore import Qt, QUrl, Slot
from PySide6.QtGui import QDesktopServices, QShowEvent
from PySide6.QtWidgets import QGridLayout

from gui.pages.settings.data_page import DataPage, data_page_title
from gui.session.services import Services
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, clear_layout, column, widget_with
from gui.widgets.text import label
from gui.widgets.titled_page import TitledPage
from measure.progress.wording import with_decimal_sign
from measure.storage.location import STORE_NAME
from measure.storage.saved_files import SavedFile, saved_files, size_text
from measure.system.paths import data_folder

#: Shares of the columns: what and in which file, how long and for whom. [technical]
_SHARES = (3, 2)
#: Text size from which a file's facts stand below its purpose, per cent. [technical]
_BELOW_FROM_PERCENT = 125


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
        self.folder, self.readers = label("", "small"), label("", "strong")
        self.open_folder = button(tr("Open the folder"))
        self.open_folder.clicked.connect(self._open_folder)
        self._files: list[SavedFile] = []
        self._rows = QGridLayout()
        self._rows.setHorizontalSpacing(3 * GAP_PX)
        self._rows.setVerticalSpacing(GAP_PX)
        services.appearance.changed.connect(self._show)
        promises = (
            tr(
                "Nothing is sent anywhere. Thawline goes online only when you ask it to download "
                "the body tracking model."
            ),
            tr("No picture, video or body point is saved unless you ask for a file of them."),
            tr(
                "To delete one person, use the page \u201cPeople\u201d. To delete everything, "
                "close Thawline and delete the folder above."
            ),
            tr(
                "Thawline does not encrypt its files: anyone who can read your files can read "
                "them. Turn on the disk encryption of your system."
            ),
        )
        self.lay_out(
            column(self.readers, self.folder, spacing=0),
            card(self._rows),
            column(*(label(promise, "quiet") for promise in promises), spacing=GAP_PX // 2),
            buttons=[self.open_folder],
        )

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._services.slow_worker.run(saved_files, self.show_files, self.message_raised.emit)

    def show_files(self, files: list[SavedFile]) -> None:
        """Show these files, one a line; what is about people goes first."""
        self._files = sorted(files, key=lambda file: file.name != STORE_NAME)
        self._show()

    @Slot()
    def _show(self) -> None:
        files = self._files
        self.folder.setText(str(data_folder()))
        clear_layout(self._rows)
        beside = self._appearance.percent < _BELOW_FROM_PERCENT
        for place, share in enumerate(_SHARES):
            self._rows.setColumnStretch(place, share if beside else not place)
        if not files:
            self._rows.addWidget(label(tr("Nothing is saved yet.")), 0, 0)
            return
        readers = {readers_words(file) for file in files}
        together = readers.pop() if len(readers) == 1 else ""
        words = tr("Can be read by: {readers}").format(readers=together)
        self.readers.setText(words)
        self.readers.setVisible(bool(together))
        for line, file in enumerate(files, start=1):
            purpose, where, how_long = (
                label(words, role) for words, role in _cells(file, readers=not together)
            )
            first = column(purpose, where, spacing=0)
            if beside:
                self._rows.addWidget(how_long, line, 1, Qt.AlignmentFlag.AlignTop)
            else:
                first.addWidget(how_long)
            self._rows.addWidget(widget_with(first), line, 0, Qt.AlignmentFlag.AlignTop)

    @Slot()
    def _open_folder(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(data_folder())))


def _cells(file: SavedFile, *, readers: bool) -> tuple[tuple[str, str], ...]:
    """Return the words of a file's cells with their roles: its purpose, name and size, how long.

    Parameters
    ----------
    readers
        Whether the last one also says who can read it.
    """
    size = with_decimal_sign(size_text(file.size_bytes), tr)
    read = tr("Can be read by: {readers}").format(readers=readers_words(file))
    purpose, duration = _sentence(tr(file.purpose)), _sentence(tr(file.duration))
    where = tr("{file}, {size}").format(file=file.name, size=size)
    last = f"{duration}. {read}" if readers else duration
    return ((purpose, ""), (where, "small"), (last, "quiet"))


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:]
