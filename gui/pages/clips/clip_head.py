"""Head of a clip's page: its name, its place in the list, and what is measured in it."""

from pathlib import Path

from PySide6.QtCore import QSize, Slot
from PySide6.QtGui import QFont, QFontMetrics, QResizeEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from gui.pages.clips.play_buttons import step_button
from gui.pages.clips.row_tools import movement_menu, side_menu
from gui.style.appearance import Appearance
from gui.style.measures import BODY_PX, GAP_PX, MARGIN_PX, TITLE, TITLE_GROWTH
from gui.style.style_sheet import grown
from gui.text.wording import tr
from gui.widgets.buttons import give_role
from gui.widgets.layouts import column, row
from gui.widgets.text import ElidedLabel

#: Room between the name, the place in the list and what is measured, pixels. [technical]
_APART_PX = 3 * GAP_PX


class ClipHead(QWidget):
    """Says which clip is shown; its buttons go to the neighbours and choose movement and side."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__()
        self._appearance = appearance
        #: Which clip of how many is shown.
        self._place = (0, 0)
        self.name = _ClipName()
        #: Name of the clip's file beneath a heading that says another thing.
        self.file = ElidedLabel("quiet")
        self.file.hide()
        self._clip = ""
        self.before = step_button("\u2191", tr("Previous"))
        self.after = step_button("\u2193", tr("Next"))
        self.place = _ClipPlace()
        self.movement = movement_menu(tr("movement"))
        self.side = side_menu(tr("side"))
        # What the others leave: the place says no more than the name has room for.
        self.name.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        row(
            (column(self.name, self.file, spacing=GAP_PX // 2), 1),
            row(self.before, self.place, self.after, spacing=GAP_PX),
            row(self.movement, self.side, spacing=GAP_PX),
            on=self,
            spacing=_APART_PX,
        )
        self._keep_off(2 * GAP_PX)
        appearance.changed.connect(self._fit)

    def show_clip(self, clip: Path) -> None:
        """Show a clip's name, the whole path where the mouse rests."""
        self._clip = clip.name
        self.file.say(clip.name)
        self.show_failure(False)
        for words in (self.name, self.file):
            words.setToolTip(str(clip))

    def show_failure(self, failed: bool) -> None:
        """Say that the clip could not be read, its name beneath; else its name alone."""
        self.name.leads = failed
        self.name.say(tr("Could not be read") if failed else self._clip)
        self.file.setVisible(failed)
        # The heading stands where those of other pages do.
        self._keep_off(MARGIN_PX if failed else 2 * GAP_PX)
        self._fit()

    def _keep_off(self, above: int) -> None:
        """Leave room above what the head says."""
        self.setContentsMargins(MARGIN_PX, above, MARGIN_PX, 0)

    def show_place(self, place: int, total: int) -> None:
        """Show where the clip stands in the list, counted from 0, and which neighbours it has."""
        self.before.setEnabled(place > 0)
        self.after.setEnabled(place + 1 < total)
        self._place = (place + 1, total)
        self._fit()

    def show_choices(self, *, shown: bool, enabled: bool) -> None:
        """Show movement and side, and whether others can be chosen."""
        for control in (self.movement, self.side):
            control.setEnabled(enabled)
            control.setVisible(shown)
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    @Slot()
    def _fit(self) -> None:
        """Say of what the number is only where the name has room beside it."""
        place, total = self._place
        title = grown(BODY_PX * TITLE, TITLE_GROWTH, self._appearance.percent)
        name = _width(self.name.accessibleName(), self._appearance.font(title, bold=True))
        needed = 2 * MARGIN_PX + name + 2 * (_APART_PX + GAP_PX)
        for shown in (self.before, self.after, self.movement, self.side):
            needed += (shown.sizeHint().width() + GAP_PX) * shown.isVisibleTo(self)
        short = tr("{place} of {total}").format(place=place, total=total)
        whole = tr("Clip {place} of {total}").format(place=place, total=total)
        has_room = needed + _width(whole, self.place.font()) <= self.width()
        self.place.say(whole if has_room else short, short)
        self.name.setMinimumWidth(self.name.minimumSizeHint().width())


def _width(words: str, font: QFont) -> int:
    return QFontMetrics(font).horizontalAdvance(words)


class _ClipPlace(QLabel):
    """Says which clip of how many is shown; it can be as narrow as without the word for it."""

    def __init__(self) -> None:
        super().__init__()
        self._short = ""
        self.setProperty("role", "quiet")

    def say(self, words: str, short: str) -> None:
        """Show words, of which there are shorter ones."""
        self._short = short
        self.setText(words)

    def minimumSizeHint(self) -> QSize:
        return QSize(_width(self._short, self.font()), super().minimumSizeHint().height())


class _ClipName(ElidedLabel):
    """The heading of the page; a file's name steps back behind what was read in it."""

    def __init__(self) -> None:
        super().__init__()
        #: Whether it says what the page is about; it is set smaller before it is shortened.
        self.leads = False

    def _fit(self) -> None:
        give_role(self, "display" if self.leads else "title")
        if self.fontMetrics().horizontalAdvance(self.accessibleName()) > self.width():
            give_role(self, "title")
        super()._fit()
