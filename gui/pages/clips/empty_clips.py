"""What the page of clips shows before there are any: where to drop them, and what comes out."""

from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import CARD_RADIUS_PX
from gui.text.wording import tr
from gui.widgets.buttons import ElidedButton, button
from gui.widgets.layouts import clear_layout, column
from gui.widgets.page_frame import frame_page
from gui.widgets.text import label


class DropTarget(QFrame):
    """A large frame that says what can be dropped here."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
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
            painter.setBrush(self._appearance.colour("raised"))
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
        pad = appearance.gap(3)
        column(
            1,
            label(tr("Drop a folder, clips or a manifest here"), "display"),
            label(
                tr(
                    "For each clip you get a reading with its 95 % range, or the reason why "
                    "there is none."
                ),
                "lead",
            ),
            label(
                tr(
                    "A manifest is a CSV table with the columns clip, movement, side, and "
                    "optionally view, reference, person. Clips stay where they are."
                ),
                "quiet",
            ),
            1,
            on=self.target,
            margins=(pad, pad, pad, pad),
            spacing=appearance.gap(2),
        )
        self._recent = QVBoxLayout()
        self._recent.setSpacing(appearance.gap(1))
        self._recent_title = label(tr("Opened before"), "title")
        self.recent: list[ElidedButton] = []
        frame_page(
            self,
            (self.target, 1),
            self._recent_title,
            self._recent,
            buttons=(self.folder, self.manifest, self.clips),
            spacing=appearance.gap(3),
        )
        self.show_recent(())

    def show_recent(self, folders: tuple[Path, ...]) -> None:
        """Offer folders or manifests that were opened before."""
        clear_layout(self._recent)
        self.recent = []
        self._recent_title.setVisible(bool(folders))
        for folder in folders:
            offered = ElidedButton(str(folder))
            offered.setCheckable(False)
            offered.clicked.connect(
                lambda _checked=False, path=folder: self.folder_wanted.emit(path)
            )
            self._recent.addWidget(offered)
            self.recent.append(offered)
