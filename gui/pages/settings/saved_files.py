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

#: Shares of the two columns: what and where, how long and for whom. [technical]
_SHARES = (3, 2)


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
        self._rows = QGridLayout()
        self._rows.setHorizontalSpacing(3 * GAP_PX)
        for place, share in enumerate(_SHARES):
            self._rows.setColumnStretch(place, share)
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
            self.readers,
            card(self._rows),
            self.folder,
            *(label(promise, "quiet") for promise in promises),
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
            self._rows.addWidget(label(tr("Nothing is saved yet.")), 0, 0)
            return
        readers = {readers_words(file) for file in files}
        together = readers.pop() if len(readers) == 1 else ""
        words = tr("Can be read by: {readers}").format(readers=together)
        self.readers.setText(words)
        self.readers.setVisible(bool(together))
        for place, heading in enumerate((tr("What"), tr("How long"))):
            self._rows.addWidget(label(heading, "quiet"), 0, place)
        # What is about people goes first.
        files = sorted(files, key=lambda file: file.name != STORE_NAME)
        for line, file in enumerate(files, start=1):
            for place, (words, facts) in enumerate(_cells(file, with_readers=not together)):
                lines = [label(words), *([label(facts, "small")] if facts else [])]
                cell = column(*lines, spacing=0)
                self._rows.addWidget(widget_with(cell), line, place, Qt.AlignmentFlag.AlignTop)

    @Slot()
    def _open_folder(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(data_folder())))


def _cells(file: SavedFile, *, with_readers: bool) -> tuple[tuple[str, str], tuple[str, str]]:
    """Return the words of a file's two cells, each with its facts."""
    size = with_decimal_sign(size_text(file.size_bytes), tr)
    read = tr("Can be read by: {readers}").format(readers=readers_words(file))
    purpose, duration = _sentence(tr(file.purpose)), _sentence(tr(file.duration))
    where = tr("{file}, {size}").format(file=file.name, size=size)
    return (purpose, where), (duration, read if with_readers else "")


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:]
