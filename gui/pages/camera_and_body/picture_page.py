"""Frame of a page with the camera's picture: it stands at the left, what to do beside it."""

from collections.abc import Sequence

from PySide6.QtCore import QRect, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QPushButton, QStyle, QWidget

from gui.session.services import Services
from gui.style.measures import GAP_PX, MARGIN_PX
from gui.widgets.buttons import ButtonRow
from gui.widgets.layouts import column, row, separator
from gui.widgets.scroll_page import scrollable

#: Share of the width for the picture at 100 %, and how much of it larger text takes for itself
#: at 200 %. [technical]
_SHARE, _FOR_TEXT = 0.66, 0.16
#: Space between picture and words, pixels. [technical]
_BETWEEN_PX = 4 * GAP_PX
#: Width and height of a picture of most cameras. [technical]
_COMMON_SHAPE = (16, 9)


class PictureBeside(QWidget):
    """A picture as large as its place allows, in its own shape, and words beside it that scroll."""

    def __init__(self, services: Services, picture: QWidget, words: QWidget) -> None:
        super().__init__()
        self._services, self._picture = services, picture
        self._words = scrollable(words, wide=True)
        for member in (picture, self._words):
            member.setParent(self)
        services.feed.framed.connect(self.arrange)
        self._shape = _COMMON_SHAPE

    def minimumSizeHint(self) -> QSize:
        words, picture = self._words.minimumSizeHint(), self._picture.minimumSizeHint()
        return QSize(words.width() + _BETWEEN_PX + picture.width(), picture.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place()

    def arrange(self) -> None:
        """Follow the shape of the camera's pictures."""
        shape = self._services.feed.size_px or _COMMON_SHAPE
        if shape != self._shape:
            self._shape = shape
            self._place()

    def _place(self) -> None:
        larger = self._services.appearance.percent / 100 - 1
        most = round(self.width() * (_SHARE - _FOR_TEXT * larger))
        most = min(most, self.width() - _BETWEEN_PX - self._words.minimumSizeHint().width())
        wide, high = self._shape
        wide = min(most, self.height() * wide // high)
        picture = QRect(0, 0, wide, wide * self._shape[1] // self._shape[0])
        left = wide + _BETWEEN_PX
        words = QRect(left, 0, self.width() - left, self.height())
        for member, place in ((self._picture, picture), (self._words, words)):
            member.setGeometry(QStyle.visualRect(self.layoutDirection(), self.rect(), place))


def frame_picture(
    page: QWidget,
    services: Services,
    picture: QWidget,
    words: QWidget,
    buttons: Sequence[QPushButton],
) -> None:
    """Lay out a page: the picture with what to do beside it, and the ways on and out."""
    shown = PictureBeside(services, picture, words)
    area = row((shown, 1), margins=(MARGIN_PX, MARGIN_PX, MARGIN_PX, GAP_PX))
    foot = row(ButtonRow(buttons, wide=True), margins=(MARGIN_PX, GAP_PX, MARGIN_PX, GAP_PX))
    column((area, 1), separator(), foot, on=page, spacing=0)
