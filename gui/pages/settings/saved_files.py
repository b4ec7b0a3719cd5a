"""What is saved on this computer, as a table: files, how long, who can read them."""

from PySide6.QtCore import Qt, QUrl, Slot
from PySide6.QtGui import QDesktopServices, QShowEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from gui.pages.settings.data_page import DataPage, data_page_title
from gui.session.services import Services
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, clear_layout, column, row, separator, widget_with
from gui.widgets.text import label
from gui.widgets.titled_page import TitledPage
from measure.progress.wording import with_decimal_sign
from measure.storage.location import STORE_NAME
from measure.storage.saved_files import UNTIL_DELETED, SavedFile, saved_files, size_text
from measure.system.paths import data_folder

#: Shares of a line for what is saved and for how long. [technical]
_SHARES = (5, 3)
#: Least size that is shown as a number, bytes. [technical]
_SHOWN_BYTES = 1024
#: Width of the size of a file, in sizes of the text: as "1023 kB". [technical]
_SIZE_WIDTH = 5
#: Text size from which it says how long below what it is, per cent. [technical]
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
        self.folder, self.readers = label("", "quiet"), label("", "quiet")
        self.open_folder = button(tr("Open the folder"))
        self.open_folder.clicked.connect(self._open_folder)
        self._files: list[SavedFile] = []
        self._rows = QVBoxLayout()
        self._rows.setSpacing(GAP_PX)
        services.appearance.changed.connect(self._show)
        promises = (
            (
                tr("Online"),
                tr(
                    "Nothing is sent anywhere. Thawline goes online only when you ask it to "
                    "download the body tracking model."
                ),
            ),
            (
                tr("Pictures"),
                tr("No picture, video or body point is saved unless you ask for a file of them."),
            ),
            (
                tr("Deleting"),
                tr(
                    "To delete one person, use \u201cPeople\u201d. To delete everything, close "
                    "Thawline and delete the folder above."
                ),
            ),
            (
                tr("Encryption"),
                tr(
                    "Thawline does not encrypt its files: anyone who can read your files can read "
                    "them. Turn on the disk encryption of your system."
                ),
            ),
        )
        self._promises = QGridLayout()
        self._promises.setHorizontalSpacing(3 * GAP_PX)
        self._promises.setVerticalSpacing(GAP_PX // 2)
        self._promises.setColumnStretch(1, 1)
        for line, (about, words) in enumerate(promises):
            top = Qt.AlignmentFlag.AlignTop
            self._promises.addWidget(_unbroken(about, "strong"), line, 0, top)
            self._promises.addWidget(label(words, "quiet"), line, 1, top)
        self.lay_out(
            column(self.folder, self.readers, spacing=0),
            card(self._rows),
            self._promises,
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
        if not files:
            self._rows.addWidget(label(tr("Nothing is saved yet.")))
            return
        readers = {readers_words(file) for file in files}
        together = readers.pop() if len(readers) == 1 else ""
        words = tr("Can be read by: {readers}").format(readers=together)
        self.readers.setText(words)
        self.readers.setVisible(bool(together))
        usual = tr("Kept until you delete it, unless another time is named.")
        self._rows.addWidget(label(usual, "quiet"))
        for file in files:
            self._rows.addWidget(separator())
            self._rows.addWidget(self._line(file, readers=not together))

    def _line(self, file: SavedFile, *, readers: bool) -> QWidget:
        """Return a line of the table: what a file is, how long it stays, its size.

        Parameters
        ----------
        readers
            Whether it also says who can read the file.
        """
        read = tr("Can be read by: {readers}").format(readers=readers_words(file))
        named = [] if file.duration == UNTIL_DELETED else [_sentence(tr(file.duration))]
        purpose = label(_sentence(tr(file.purpose)))
        how_long = label(". ".join((*named, read) if readers else named), "quiet")
        if not how_long.text():
            how_long.hide()
        tiny = file.size_bytes < _SHOWN_BYTES
        words = tr("under 1 kB") if tiny else with_decimal_sign(size_text(file.size_bytes), tr)
        size = _unbroken(words)
        size.setMinimumWidth(self._appearance.px(_SIZE_WIDTH))
        size.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop)
        if self._appearance.percent < _BELOW_FROM_PERCENT:
            made = row((purpose, _SHARES[0]), (how_long, _SHARES[1]), size, spacing=2 * GAP_PX)
        else:
            made = row((column(purpose, how_long, spacing=0), 1), size, spacing=2 * GAP_PX)
        line = widget_with(made)
        line.setToolTip(file.name)
        return line

    @Slot()
    def _open_folder(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(data_folder())))


def _unbroken(words: str, role: str = "") -> QLabel:
    """Return words that stay on one line."""
    made = label(words, role)
    made.setWordWrap(False)
    made.setSizePolicy(QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Preferred)
    return made


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:]
