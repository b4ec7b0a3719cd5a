"""Frame of a page with the camera's picture: it stands at the left, what to do beside it."""

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QObject, QRect, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QPushButton, QStyle, QWidget

from gui.pages.camera_and_body.guide_panel import GuidePanel
from gui.session.services import Services
from gui.style.measures import BAR_PX, CARD_RADIUS_PX, GAP_PX, MARGIN_PX
from gui.widgets.buttons import ButtonRow
from gui.widgets.layouts import column, row, separator
from gui.widgets.scroll_page import scrollable
from gui.widgets.video_view import VideoView

#: Shares of the width for the picture: the largest, down to the foot of most windows; the least,
#: that makes room for the drawing; that of a place without a picture. [technical]
_MOST_SHARE, _LEAST_SHARE, _EMPTY_SHARE = 0.65, 0.4, 0.6
#: Least share of the width for a drawing that has the picture's place. [technical]
_LEAST_LEADING_SHARE = 0.64
#: Steps in which a smaller picture is tried, pixels. [technical]
_STEP_PX = 12
#: Height that a drawing should have, if need be of a smaller picture, pixels. [technical]
_GOOD_GUIDE_PX = 180
#: Space between picture and words, pixels. [technical]
_BETWEEN_PX = 4 * GAP_PX
#: Width and height of a picture of most cameras. [technical]
_COMMON_SHAPE = (16, 9)


class PictureBeside(QWidget):
    """A picture as large as its place allows, in its own shape, and words beside it that scroll.

    A drawing stands beneath the words, its lower edge on the picture's where that leaves it room.
    Words without a drawing are as high as the picture where they fit. Where the drawing is what the
    present step is about, it has the picture's place, and the picture that beneath the words.
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
        self._drawing_leads = False
        #: What a picture smaller than its column stands on.
        self._tile = QRect()

    def lead_with_drawing(self, leads: bool) -> None:
        """Let the drawing be the larger one, or the picture."""
        if leads is not self._drawing_leads:
            self._drawing_leads = leads
            self._place()

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

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the tile of a picture that is smaller than its column."""
        super().paintEvent(event)
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self._services.appearance.colour("sunken"))
        tile = QStyle.visualRect(self.layoutDirection(), self.rect(), self._tile)
        painter.drawRoundedRect(tile, CARD_RADIUS_PX, CARD_RADIUS_PX)
        painter.end()

    def arrange(self) -> None:
        """Follow the shape of the camera's pictures."""
        shape = self._services.feed.size_px or _COMMON_SHAPE
        if shape != self._shape:
            self._shape = shape
            self._place()

    def _place(self) -> None:
        picture = self._picture_place()
        left = picture.width() + _BETWEEN_PX
        words = QRect(left, 0, self._wide() - left, self.height())
        guide = self._guide_place(picture, words)
        self._guide.setVisible(not guide.isEmpty())
        if guide.left() == left:
            words.setBottom(guide.top() - 1 - 2 * GAP_PX)
        elif self._words_height(picture.width()) <= picture.height():
            words.setBottom(picture.bottom())
        self._tile = QRect()
        leading = (
            self._beneath_words(picture) if self._drawing_leads and not guide.isEmpty() else None
        )
        if leading is not None:
            picture, guide = leading
            words = QRect(picture.left(), 0, picture.width(), picture.top() - 2 * GAP_PX)
        elif self._drawing_leads and not guide.isEmpty():
            self._tile = guide
            around = 3 * GAP_PX // 2
            picture, guide = (
                self._within(guide.adjusted(around, around, -around, -around)),
                picture,
            )
        for video in self._picture.findChildren(VideoView):
            video.set_around("ground" if self._tile.isEmpty() else "sunken")
        self.update()
        for member, place in (
            (self._picture, picture),
            (self._words, words.adjusted(0, 0, BAR_PX, 0)),
            (self._guide, guide),
        ):
            member.setGeometry(QStyle.visualRect(self.layoutDirection(), self.rect(), place))

    def _beneath_words(self, place: QRect) -> tuple[QRect, QRect] | None:
        """Return the largest picture as wide as the words and beneath them, and the drawing.

        The drawing has the picture's place where the picture then has room beneath the words. None
        where both have no room one below the other.
        """
        whole = self._wide()
        column = whole - place.width() - _BETWEEN_PX
        top = self._words_height(place.width()) + 2 * GAP_PX
        if top + self._high(column) <= place.height():
            picture = QRect(place.right() + 1 + _BETWEEN_PX, 0, column, self._high(column))
            picture.moveBottom(place.bottom())
            return picture, place
        for left in range(round(whole * _LEAST_LEADING_SHARE), whole, _STEP_PX):
            column = whole - left - _BETWEEN_PX
            top = self._words_height(left) + 2 * GAP_PX
            fits = top + self._high(column) <= self.height()
            if fits and column >= self._picture.minimumSizeHint().width():
                low = max(top + self._high(column), min(self.height(), self._high(left)))
                picture = QRect(left + _BETWEEN_PX, 0, column, self._high(column))
                picture.moveBottom(low - 1)
                return picture, QRect(0, 0, left, low)
        return None

    def _within(self, place: QRect) -> QRect:
        """Return the largest place of a picture in the middle of another."""
        across, down = self._shape
        wide = min(place.width(), place.height() * across // down)
        shown = QRect(0, 0, wide, self._high(wide))
        shown.moveCenter(place.center())
        return shown

    def _wide(self) -> int:
        """Return the width of the contents; the words' bar lies in the page's margin."""
        return self.width() - BAR_PX

    def _most_share(self) -> float:
        """Return the picture's most of the width; without one the words have more if need be."""
        across, down = self._shape
        wide = min(round(self._wide() * _MOST_SHARE), self.height() * across // down)
        lacking = bool(self._services.feed.why_no_picture)
        narrow = lacking and self._words_height(wide) > self._high(wide)
        return _EMPTY_SHARE if narrow else _MOST_SHARE

    def _picture_place(self) -> QRect:
        """Return the largest picture that has room, with the drawing beside it where possible."""
        wide, high = self._shape
        beside = self.width() - _BETWEEN_PX - self._words.minimumSizeHint().width()
        most = min(round(self._wide() * self._most_share()), beside, self.height() * wide // high)
        widths = range(most, round(self._wide() * _LEAST_SHARE), -_STEP_PX)
        needed = {tried: self._words_height(tried) + 2 * GAP_PX for tried in widths}
        for guide in (_GOOD_GUIDE_PX, self._guide.minimumSizeHint().height()):
            for level in (True, False):
                for tried, words in needed.items():
                    room = self._high(tried) if level else self.height()
                    if self._guide.is_wanted and words + guide <= room:
                        return QRect(0, 0, tried, self._high(tried))
        return QRect(0, 0, most, self._high(most))

    def _words_height(self, wide: int) -> int:
        """Return the height of the words beside a picture of a width."""
        return self._page.heightForWidth(self._wide() - wide - _BETWEEN_PX)

    def _high(self, wide: int) -> int:
        return wide * self._shape[1] // self._shape[0]

    def _guide_place(self, picture: QRect, words: QRect) -> QRect:
        """Return where the drawing is: its lower edge is the picture's, else the page's."""
        if not self._guide.is_wanted:
            return QRect()
        least, top = self._guide.minimumSizeHint(), self._words_height(picture.width()) + 2 * GAP_PX
        beneath_words = QRect(words.left(), top, words.width(), picture.height() - top)
        to_the_foot = QRect(words.left(), top, words.width(), self.height() - top)
        beneath_picture = QRect(0, picture.height() + 2 * GAP_PX, picture.width(), 0)
        beneath_picture.setBottom(self.height() - 1)
        for place in (beneath_words, to_the_foot, beneath_picture):
            if place.height() >= least.height() and place.width() >= least.width():
                return place
        return QRect()


def frame_picture(
    page: QWidget,
    services: Services,
    heading: QWidget,
    beside: tuple[QWidget, QWidget, GuidePanel],
    buttons: Sequence[QPushButton],
) -> PictureBeside:
    """Lay out a page: heading, picture, what to do and a drawing of it, the ways on and out.

    Returns what lies between heading and foot.
    """
    shown = PictureBeside(services, *beside)
    around = MARGIN_PX
    area = column(
        row((heading, 1), margins=(0, 0, BAR_PX, 0)),
        (shown, 1),
        margins=(around, around, around - BAR_PX, 2 * GAP_PX),
        spacing=2 * GAP_PX,
    )
    foot = row(ButtonRow(buttons, wide=True), margins=(around, GAP_PX, around, GAP_PX))
    column((area, 1), separator(), foot, on=page, spacing=0)
    return shown
