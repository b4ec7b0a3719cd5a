"""Frame of a page with the camera's picture: it stands at the left, what to do beside it."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, QRect, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QPushButton, QStyle, QWidget

from gui.pages.camera_and_body.guide_panel import GuidePanel
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
#: Most height of a drawing beneath the words, pixels. [technical]
_MOST_GUIDE_PX = 300
#: Width and height of a picture of most cameras. [technical]
_COMMON_SHAPE = (16, 9)


class PictureBeside(QWidget):
    """A picture as large as its place allows, in its own shape, and words beside it that scroll.

    A drawing stands where words or picture leave room beneath them. Without a picture its place
    is as high as the page.
    """

    def __init__(
        self, services: Services, picture: QWidget, words: QWidget, guide: GuidePanel
    ) -> None:
        super().__init__()
        self._services, self._picture, self._guide = services, picture, guide
        self._page, self._words = words, scrollable(words, wide=True)
        for member in (picture, self._words, guide):
            member.setParent(self)
        words.installEventFilter(self)
        services.feed.framed.connect(self.arrange)
        self._shape = _COMMON_SHAPE

    def minimumSizeHint(self) -> QSize:
        words, picture = self._words.minimumSizeHint(), self._picture.minimumSizeHint()
        return QSize(words.width() + _BETWEEN_PX + picture.width(), picture.height())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Place everything anew when the words need another height."""
        if event.type() is QEvent.Type.LayoutRequest:
            self._place()
        return super().eventFilter(watched, event)

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
        if self._services.feed.why_no_picture:
            picture.setHeight(self.height())
        left = wide + _BETWEEN_PX
        words = QRect(left, 0, self.width() - left, self.height())
        guide = self._guide_place(picture, words)
        self._guide.setVisible(not guide.isEmpty())
        if guide.left() == left:
            words.setBottom(guide.top() - 1 - 2 * GAP_PX)
        for member, place in (
            (self._picture, picture),
            (self._words, words),
            (self._guide, guide),
        ):
            member.setGeometry(QStyle.visualRect(self.layoutDirection(), self.rect(), place))

    def _guide_place(self, picture: QRect, words: QRect) -> QRect:
        """Return where the drawing is: its lower edge is the picture's, else the page's."""
        if not self._guide.is_wanted:
            return QRect()
        least, gap = self._guide.minimumSizeHint(), 2 * GAP_PX
        top = self._page.heightForWidth(words.width()) + gap
        beneath_words = QRect(words.left(), top, words.width(), picture.height() - top)
        beneath_picture = QRect(0, picture.height() + gap, picture.width(), 0)
        beneath_picture.setBottom(self.height() - 1)
        to_the_foot = QRect(words.left(), top, words.width(), self.height() - top)
        for place in (beneath_words, beneath_picture, to_the_foot):
            if place.height() >= least.height() and place.width() >= least.width():
                place.setTop(max(place.top(), place.bottom() + 1 - _MOST_GUIDE_PX))
                return place
        return QRect()


def frame_picture(
    page: QWidget,
    services: Services,
    beside: tuple[QWidget, QWidget, GuidePanel],
    buttons: Sequence[QPushButton],
) -> None:
    """Lay out a page: picture, what to do and a drawing of it, and the ways on and out."""
    shown = PictureBeside(services, *beside)
    area = row((shown, 1), margins=(MARGIN_PX, MARGIN_PX, MARGIN_PX, GAP_PX))
    foot = row(ButtonRow(buttons, wide=True), margins=(MARGIN_PX, GAP_PX, MARGIN_PX, GAP_PX))
    column((area, 1), separator(), foot, on=page, spacing=0)
