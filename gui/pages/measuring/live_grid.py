"""Grids of the live and the set-up page; drawn in the first: how to stand, why nothing counted."""

from PySide6.QtCore import QEvent, QObject, QRect, QSize, Qt, Signal
from PySide6.QtWidgets import QFrame, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import BAR_PX, GAP_PX, LARGE_ENOUGH_PX
from gui.text.wording import tr
from gui.widgets.camera_trouble import FAR, FAR_RIGHT, FAR_WRONG
from gui.widgets.figures.pause_sign import PauseSign
from gui.widgets.figures.position_figure import PositionView
from gui.widgets.figures.position_pair import PositionPair
from gui.widgets.figures.standing_figure import StandingFigure
from gui.widgets.layouts import ArrangedWidget, column, mirrored, row, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.reasons import Reason

#: Width over height of a picture as most cameras give it. [technical]
_ASPECT = 16 / 9
#: Least and greatest share of the width for the picture. [technical]
_LEAST, _MOST = 0.46, 0.60
#: Least width of the right column, as a share of the window's height, which its type is one of
#: too: a final value with its interval stands in one line. [technical]
_BESIDE_SHARE = 0.62
#: Between the columns, and between the picture and its trials, pixels. [technical]
_BETWEEN_PX, _BENEATH_PX = 5 * GAP_PX, 2 * GAP_PX
#: Space beneath a panel for it to end with the picture, beside the line's own. [technical]
_LESS_PX = 4
#: Widths of the figure of a pause, of the space before its sign, and of the sign, relative to
#: their height. [technical]
_RESTING_SHARE, _BEFORE_SIGN, _SIGN_SHARE = 0.62, 0.12, 0.34
#: Set-up page: between the picture and the words, pixels, and the least width of these, in heights
#: of their type. [technical]
_BESIDE_WORDS_PX, _WORDS_TYPES = 4 * GAP_PX, 13


class LiveGrid(ArrangedWidget):
    """Picture and trials at the left, what is read at the right; both begin at one height.

    The picture has the room that it can use.

    Where the right column begins depends on the room alone, never on what is shown in it.

    """

    #: Width of the picture, and of what stands beside it, pixels.
    divided = Signal(int, int)

    def __init__(self, picture: QWidget, trials: QWidget, beside: QWidget) -> None:
        super().__init__()
        self._seen: QWidget = self
        self._picture, self._trials, self._beside = picture, trials, beside
        for member in (picture, trials, beside):
            member.setParent(self)

    def show_through(self, seen: QWidget) -> None:
        """Let the picture be no higher than has room in this widget, in which the grid scrolls."""
        self._seen = seen
        seen.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.Resize and watched is self._seen:
            self._arrange()
        return super().eventFilter(watched, event)

    def sizeHint(self) -> QSize:
        """Return the least size: more is given where there is room."""
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        picture, beside = self._picture.minimumSizeHint(), self._beside.minimumSizeHint()
        wide = picture.width() + _BETWEEN_PX + beside.width()
        return QSize(wide, max(picture.height() + self._below(), beside.height()))

    def _below(self) -> int:
        """Return the height of the trials and the space above them."""
        return _BENEATH_PX + self._trials.sizeHint().height()

    def _arrange(self) -> None:
        room = self.width() - _BETWEEN_PX
        fitting = (min(self.height(), self._seen.height()) - self._below()) * _ASPECT
        most = min(_MOST * room, room - _BESIDE_SHARE * self.window().height())
        left = round(max(min(fitting, most), _LEAST * room))
        high = min(self.height() - self._below(), round(left / _ASPECT))
        trials = QRect(0, high + _BENEATH_PX, left, self._trials.sizeHint().height())
        self.divided.emit(left, room - left)
        whole = max(trials.bottom() + 1, self._beside.minimumSizeHint().height())
        beside = QRect(left + _BETWEEN_PX, 0, room - left, whole)
        for member, place in (
            (self._picture, QRect(0, 0, left, high)),
            (self._trials, trials),
            (self._beside, beside),
        ):
            member.setGeometry(mirrored(self, place))


class SetupGrid(ArrangedWidget):
    """Picture at the left, as large as its height allows; words beside it, as high as it is.

    Words that need more have the whole height, and scroll where even that is too little.
    """

    def __init__(self, appearance: Appearance, picture: QWidget, words: QWidget) -> None:
        super().__init__()
        self._appearance = appearance
        self._picture, self._words, self._area = picture, words, scrollable(words, wide=True)
        for member in (picture, self._area):
            member.setParent(self)
        words.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Place everything anew when the words need another height."""
        if event.type() is QEvent.Type.LayoutRequest and watched is self._words:
            self._arrange()
        return super().eventFilter(watched, event)

    def sizeHint(self) -> QSize:
        """Return the least size: more is given where there is room."""
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        picture, words = self._picture.minimumSizeHint(), self._area.minimumSizeHint()
        return QSize(picture.width() + _BESIDE_WORDS_PX + words.width(), picture.height())

    def _arrange(self) -> None:
        room = self.width() - _BESIDE_WORDS_PX
        type_px = max(LARGE_ENOUGH_PX, self._appearance.px())
        least = max(round(_WORDS_TYPES * type_px) + BAR_PX, self._area.minimumSizeHint().width())
        left = round(min(self.height() * _ASPECT, room - least))
        high = min(self.height(), round(left / _ASPECT))
        wide = room - left
        fits = self._words.heightForWidth(wide - BAR_PX) <= high
        words = QRect(left + _BESIDE_WORDS_PX, 0, wide, high if fits else self.height())
        self._picture.setGeometry(mirrored(self, QRect(0, 0, left, high)))
        self._area.setGeometry(mirrored(self, words))


class PositionPanel(QFrame):
    """How to stand, on a card: the movement as it is done, and from above which way one faces."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__()
        self.setProperty("role", "card")
        self.pair = PositionPair(appearance, FAR, if_room=True)
        self.figure, self.plan = self.pair.figure, self.pair.plan
        column((self.pair, 1), on=self, margins=(2 * GAP_PX,) * 4)


def ending_with_picture(panel: QWidget) -> QWidget:
    """Return a panel beside the picture that ends where it does."""
    return widget_with(column(panel, margins=(0, 0, 0, _LESS_PX)))


def advice_card(*words: QWidget) -> QFrame:
    """Return a card with words in its middle, which leaves them the whole height if need be."""
    made = QFrame()
    made.setProperty("role", "card")
    column(1, *words, 1, on=made, margins=(2 * GAP_PX, 0, 2 * GAP_PX, 0), spacing=GAP_PX)
    return made


class PausePanel(QFrame):
    """Somebody whose arms rest and the pause sign on a card, in the place of the drawings."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__()
        self.sign = PauseSign(appearance)
        self.setProperty("role", "card")
        drawn = _PauseGroup(StandingFigure(appearance), self.sign)
        column((drawn, 1), on=self, margins=(2 * GAP_PX,) * 4)


class _PauseGroup(ArrangedWidget):
    """The figure and the sign side by side, as one group in the middle."""

    def __init__(self, figure: QWidget, sign: QWidget) -> None:
        super().__init__()
        self._figure, self._sign = figure, sign
        for member in (figure, sign):
            member.setParent(self)

    def sizeHint(self) -> QSize:
        """Return the least size: more is given where there is room."""
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        figure, sign = self._figure.minimumSizeHint(), self._sign.minimumSizeHint()
        return QSize(figure.width() + sign.width(), max(figure.height(), sign.height()))

    def _arrange(self) -> None:
        high = min(
            self.height(), round(self.width() / (_RESTING_SHARE + _BEFORE_SIGN + _SIGN_SHARE))
        )
        figure, sign = round(_RESTING_SHARE * high), round(_SIGN_SHARE * high)
        between = round(_BEFORE_SIGN * high)
        left = (self.width() - figure - between - sign) // 2
        top = (self.height() - high) // 2
        self._figure.setGeometry(mirrored(self, QRect(left, top, figure, high)))
        self._sign.setGeometry(mirrored(self, QRect(left + figure + between, top, sign, high)))


class RefusalPanel(QFrame):
    """A trial that is not counted beside one that is, or that one alone where no drawing helps."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__()
        self.setProperty("role", "card")
        self.fault, self.example = (PositionView(appearance, still=True) for _ in range(2))
        self._wrong = label(tr("\u2717 not counted"), FAR_WRONG)
        self._right = label(tr("\u2713 counted"), FAR_RIGHT)
        for words in (self._wrong, self._right):
            words.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        row(
            (column((self.fault, 1), self._wrong, spacing=GAP_PX), 1),
            (column((self.example, 1), self._right, spacing=GAP_PX), 1),
            on=self,
            margins=(2 * GAP_PX,) * 4,
            spacing=2 * GAP_PX,
        )

    def show_refusal(
        self, movement: Movement, side: Side, reason: Reason, *, is_mirrored: bool
    ) -> None:
        """Show what kept a trial from being counted."""
        drawn = self.fault.show_fault(movement, side, reason, mirrored=is_mirrored)
        for member in (self.fault, self._wrong):
            member.setVisible(drawn)
        self.example.show_movement(movement, side, mirrored=is_mirrored)
