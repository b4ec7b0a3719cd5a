"""What is saved on this computer: files and how large; where they are, who can read them."""

from PySide6.QtCore import Qt, QUrl, Slot
from PySide6.QtGui import QDesktopServices, QShowEvent
from PySide6.QtWidgets import QLabel, QLayout, QSizePolicy, QVBoxLayout, QWidget

from gui.pages.settings.data_page import DataPage, data_page_title
from gui.session.services import Services
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, clear_layout, column, row, separator, widget_with
from gui.widgets.side_by_side import LARGE_FROM_PERCENT, SideBySide
from gui.widgets.text import ElidedLabel, label, terms
from gui.widgets.titled_page import TitledPage
from measure.progress.wording import with_decimal_sign
from measure.storage.location import STORE_NAME
from measure.storage.saved_files import SavedFile, saved_files, size_text
from measure.system.paths import data_folder

#: Space above and below a hairline between two files, steps. [technical]
_AROUND_LINE = 0.875
#: Least size that is shown as a number, bytes. [technical]
_SHOWN_BYTES = 1024
#: Width of the size of a file, in sizes of the text: as "1023 kB". [technical]
_SIZE_WIDTH = 5


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
        self._folder, self._readers = ElidedLabel(), label("", "quiet")
        self.open_folder = button(tr("Open the folder"))
        self.open_folder.clicked.connect(self._open_folder)
        self._files: list[SavedFile] = []
        self._rows = QVBoxLayout()
        services.appearance.changed.connect(self._show)
        promise = tr("Nothing is sent anywhere. No picture or video is saved unless you ask.")
        where = label(tr("Where"), "title")
        said = column(where, self._folder, self._readers, spacing=GAP_PX // 2)
        place = card(said, 1, row(self.open_folder, 1), spacing=GAP_PX)
        privacy = card(label(tr("Privacy"), "title"), _more_to_know(), 1, spacing=GAP_PX)
        around = SideBySide(services.appearance, (place, 2), (privacy, 3), spacing=2 * GAP_PX)
        #: Everything that waits until the sizes are counted.
        self._counted = widget_with(column(card(self._rows), around, spacing=2 * GAP_PX))
        self._counted.hide()
        self.lay_out(label(promise, "lead"), self._counted)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._services.slow_worker.run(saved_files, self.show_files, self.message_raised.emit)

    def show_files(self, files: list[SavedFile]) -> None:
        """Show these files, one a line; what is about people goes first."""
        self._files = sorted(files, key=lambda file: file.name != STORE_NAME)
        self._counted.show()
        self._show()

    @Slot()
    def _show(self) -> None:
        clear_layout(self._rows)
        readers = {readers_words(file) for file in self._files}
        together = readers.pop() if len(readers) == 1 else ""
        self._folder.say(str(data_folder()))
        self._readers.setText(tr("Can be read by: {readers}").format(readers=together))
        self._readers.setVisible(bool(together))
        if not self._files:
            self._rows.addWidget(label(tr("Nothing is saved yet.")))
            return
        self._rows.setSpacing(self._appearance.gap(_AROUND_LINE))
        self._rows.addWidget(self._heading())
        for file in self._files:
            self._rows.addWidget(separator())
            self._rows.addWidget(self._file_line(file, readers=not together))

    def _heading(self) -> QWidget:
        """Return the heads of the columns."""
        heads = (tr("What"), tr("How long"), tr("Size"))
        what, kept, size = (label(words, "strong") for words in heads)
        return self._line(what, kept, size, headed=True)

    def _file_line(self, file: SavedFile, *, readers: bool) -> QWidget:
        """Return a line of the table: what a file is, how long it stays, its size.

        Parameters
        ----------
        readers
            Whether it also says who can read the file.
        """
        read = tr("Can be read by: {readers}").format(readers=readers_words(file))
        how_long = "\n".join([_sentence(tr(file.duration)), *([read] if readers else [])])
        tiny = file.size_bytes < _SHOWN_BYTES
        size = tr("under 1 kB") if tiny else with_decimal_sign(size_text(file.size_bytes), tr)
        what, kept = label(_sentence(tr(file.purpose))), label(how_long, "quiet")
        line = self._line(what, kept, label(size))
        line.setToolTip(file.name)
        return line

    def _line(
        self, what: QLabel, kept: QLabel, how_large: QLabel, *, headed: bool = False
    ) -> QWidget:
        """Return the cells of a line side by side, or those of a file one below the other."""
        how_large.setWordWrap(False)
        how_large.setSizePolicy(QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Preferred)
        how_large.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop)
        if self._appearance.percent >= LARGE_FROM_PERCENT:
            said: QLayout = column(what, *([] if headed else [kept]), spacing=0)
        else:
            said = row((what, 1), (kept, 1), spacing=3 * GAP_PX)
            how_large.setMinimumWidth(self._appearance.px(_SIZE_WIDTH))
        return widget_with(row((said, 1), how_large, spacing=2 * GAP_PX))

    @Slot()
    def _open_folder(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(data_folder())))


def _more_to_know() -> QWidget:
    """Return what else is to be known of the files, by what it is about."""
    deleting = tr(
        "One person: under \u201cPeople\u201d. Everything: close Thawline and delete this folder."
    )
    online = tr("Only to download the body tracking model, when you ask for it.")
    encryption = tr("None: turn on the disk encryption of your system.")
    lines = ((tr("Deleting"), deleting), (tr("Online"), online), (tr("Encryption"), encryption))
    return terms([(name, label(words)) for name, words in lines])


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:]
