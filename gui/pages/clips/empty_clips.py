"""What the page of clips shows before there are any: where to drop them, and what comes out."""

from pathlib import Path

from PySide6.QtCore import QEvent, QObject, Qt, Signal, Slot
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from gui.pages.clips.film import LEAST_FILM_PX, Film
from gui.style.appearance import Appearance
from gui.style.measures import CARD_RADIUS_PX, GAP_PX
from gui.text.wording import tr
from gui.widgets.buttons import ShortcutButton, button
from gui.widgets.layouts import card, clear_layout, column, row, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.side_by_side import LARGE_FROM_PERCENT
from gui.widgets.text import ElidedLabel, label

#: Share of the empty room for the film, beside one share above and one below. [technical]
_FILM_SHARE = 8


class DropTarget(QFrame):
    """A large frame that says what can be dropped here.

    Parameters
    ----------
    ground
        Colour within the frame while nothing is dragged.
    """

    def __init__(self, appearance: Appearance, ground: str = "raised") -> None:
        super().__init__()
        self._appearance, self._ground = appearance, ground
        self._over = False
        appearance.changed.connect(self.update)

    def show_over(self, over: bool) -> None:
        """Show that what is dragged can be dropped."""
        self._over = over
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        try:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            colour = self._appearance.colour("arm" if self._over else "edge")
            painter.setPen(QPen(colour, 3 if self._over else 2, Qt.PenStyle.DashLine))
            painter.setBrush(self._appearance.colour("raised" if self._over else self._ground))
            painter.drawRoundedRect(
                self.rect().adjusted(2, 2, -2, -2), CARD_RADIUS_PX, CARD_RADIUS_PX
            )
        finally:
            painter.end()


class EmptyClips(QWidget):
    """Invites to drop clips, and offers the folders that were read last."""

    #: A folder that was opened before.
    folder_wanted = Signal(object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.target = DropTarget(appearance)
        self.clips = button(tr("Choose clips"), "main")
        self.folder = button(tr("Choose a folder"))
        self.manifest = button(tr("Choose a manifest"))
        self.manifest.setToolTip(_manifest_words())
        self.invitation = label(tr("Drop clips or a folder here"), "title")
        self.outcome = label(
            tr("For each clip: a reading with its 95 % range,\nor why there is none."), "lead"
        )
        #: What a manifest is, for it can be dropped too.
        self._about = label(tr("Manifest: a CSV table of clips, movements and sides."), "quiet")
        for words in (self.invitation, self.outcome, self._about):
            words.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._film = Film(appearance)
        pad = 3 * GAP_PX
        column(
            1,
            (self._film, _FILM_SHARE),
            self.invitation,
            self.outcome,
            self._about,
            1,
            on=self.target,
            margins=(pad, pad, pad, pad),
            spacing=2 * GAP_PX,
        )
        self.target.installEventFilter(self)
        appearance.changed.connect(self._show_film)
        self._recent = QVBoxLayout()
        self._recent.setSpacing(GAP_PX)
        self._earlier = widget_with(
            column(label(tr("Opened before"), "title"), self._recent, spacing=GAP_PX)
        )
        self.recent: list[ShortcutButton] = []
        frame_page(
            self,
            label(tr("Recorded clips"), "display"),
            self._earlier,
            (self.target, 1),
            buttons=(self.folder, self.manifest, self.clips),
            spacing=2 * GAP_PX,
        )
        self.show_recent(())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Leave the film out where it would be too low to be read."""
        if watched is self.target and event.type() is QEvent.Type.Resize:
            self._show_film()
        return super().eventFilter(watched, event)

    @Slot()
    def _show_film(self) -> None:
        """Show the film where it is high enough, and no folder needs its room."""
        wide = self.target.width() - 6 * GAP_PX
        words = sum(word.heightForWidth(wide) for word in (self.invitation, self.outcome))
        if self._about.isVisibleTo(self):
            words += self._about.heightForWidth(wide) + 2 * GAP_PX
        room = self.target.height() - words - 10 * GAP_PX
        large = self.recent and self._appearance.percent >= LARGE_FROM_PERCENT
        self._film.setVisible(room >= LEAST_FILM_PX and not large)

    def show_recent(self, folders: tuple[Path, ...]) -> None:
        """Offer folders or manifests that were opened before."""
        clear_layout(self._recent)
        self.recent = []
        self._earlier.setVisible(bool(folders))
        self._about.setVisible(not folders)
        for folder in folders:
            opens = button(tr("Open"))
            opens.setAccessibleName(tr("Open {name}").format(name=folder.name))
            opens.setToolTip(str(folder))
            opens.clicked.connect(lambda _checked=False, path=folder: self.folder_wanted.emit(path))
            name, place = ElidedLabel("lead"), ElidedLabel("quiet")
            name.say(folder.name)
            place.say(str(folder.parent))
            words = column(1, name, place, 1, spacing=0)
            self._recent.addWidget(card(row((words, 1), opens, spacing=2 * GAP_PX)))
            self.recent.append(opens)
        self._show_film()


def _manifest_words() -> str:
    return tr(
        "A manifest is a CSV table with the columns clip, movement, side, and "
        "optionally view, reference, person. Clips stay where they are."
    )
