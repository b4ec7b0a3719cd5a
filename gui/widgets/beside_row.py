"""Words with what can be done about them beside, or beneath where there is no room."""

from PySide6.QtCore import QRect, QSize
from PySide6.QtWidgets import QFrame, QSizePolicy, QStyle, QWidget

from gui.style.measures import GAP_PX
from gui.widgets.layouts import ArrangedWidget, card, separator

#: Share of a row for the words beside controls that fill the rest. [technical]
_WORDS_SHARE = 0.28
#: Least room for words beside a button, in widths of a digit. [technical]
_LEAST_DIGITS = 26
#: Space between words and controls, pixels. [technical]
_BETWEEN_PX = 2 * GAP_PX


class BesideRow(ArrangedWidget):
    """One line of a list: words at the left, a control at the right.

    Parameters
    ----------
    filling
        Whether the control takes the room that the words leave, and begins at the same place in
        every row; otherwise it is as wide as it needs and stands at the line's end.
    above
        Space above the control where it stands beneath the words, pixels.
    least_digits
        Least room for the words beside a button, in widths of a digit.
    """

    def __init__(
        self,
        words: QWidget,
        control: QWidget,
        *,
        filling: bool = False,
        above: int = GAP_PX // 2,
        least_digits: int = _LEAST_DIGITS,
    ) -> None:
        super().__init__()
        self._above, self._least_digits = above, least_digits
        self._words, self._control, self._filling = words, control, filling
        #: Rows that stand all beside or all beneath, with controls of one width; this one too.
        self.together: tuple[BesideRow, ...] = (self,)
        for member in (words, control):
            member.setParent(self)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def sizeHint(self) -> QSize:
        wide = self._words.sizeHint().width() + self._wanted().width() + _BETWEEN_PX
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        """Return the width that either needs alone, and the height of one of them."""
        words, control = self._words.minimumSizeHint(), self._control.minimumSizeHint()
        return QSize(max(words.width(), control.width()), max(words.height(), control.height()))

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return max(place.bottom() + 1 for place in self._places(width))

    def _arrange(self) -> None:
        places = self._places(self.width())
        beside = self._beside(self.width(), self._control_width())
        for member, place in zip((self._words, self._control), places, strict=True):
            middle = (self.height() - place.height()) // 2
            if beside:
                place.moveTop(middle)
            elif member is self._control:
                # Of two rows side by side, both controls stand at one height.
                place.moveBottom(self.height() - 1)
            member.setGeometry(QStyle.visualRect(self.layoutDirection(), self.rect(), place))

    def _control_width(self) -> int:
        """Return the width of the control, the same in the rows that go with it."""
        return max(row.control_width() for row in self.together)

    def control_width(self) -> int:
        """Return the width that the control of this row alone wants."""
        return self._wanted().width()

    def _wanted(self) -> QSize:
        """Return the size that the control wants, no less than the least it was given."""
        return self._control.sizeHint().expandedTo(self._control.minimumSize())

    def _beside(self, width: int, control: int) -> bool:
        """Return whether both have room in one line, here and in the rows that go with it."""
        return all(row.has_room(width, control) for row in self.together)

    def has_room(self, width: int, control: int) -> bool:
        """Return whether words and a control so wide have room in one line of this width."""
        if self._filling:
            return control <= width - self._words_width(width, control) - _BETWEEN_PX
        least = self._least_digits * self.fontMetrics().horizontalAdvance("0")
        return least + _BETWEEN_PX + control <= width

    def _words_width(self, width: int, control: int) -> int:
        return round(_WORDS_SHARE * width) if self._filling else width - _BETWEEN_PX - control

    def _places(self, width: int) -> tuple[QRect, QRect]:
        """Return where words and control are in a row of this width."""
        words, control = self._words, self._control
        if control.isHidden():
            return QRect(0, 0, width, _height_of(words, width)), QRect()
        needed = self._control_width()
        if self._beside(width, needed):
            wide = self._words_width(width, needed)
            left = wide + _BETWEEN_PX
            rest = width - left
            return (
                QRect(0, 0, wide, _height_of(words, wide)),
                QRect(left, 0, rest, _height_of(control, rest)),
            )
        high = _height_of(words, width)
        wide = width if self._filling else min(width, needed)
        return (
            QRect(0, 0, width, high),
            QRect(0, high + self._above, wide, _height_of(control, wide)),
        )


def _height_of(widget: QWidget, width: int) -> int:
    high = (
        widget.heightForWidth(width) if widget.hasHeightForWidth() else widget.sizeHint().height()
    )
    return max(high, widget.minimumHeight())


def aligned(*rows: BesideRow) -> list[BesideRow]:
    """Let rows stand all beside or all beneath, with controls of one width."""
    for row in rows:
        row.together = rows
    return list(rows)


def list_card(*rows: QWidget, spacing: int = GAP_PX * 3 // 2) -> QFrame:
    """Return a card with rows one below the other, a hairline between any two.

    Parameters
    ----------
    spacing
        Space above and below a hairline, pixels.
    """
    contents: list[QWidget] = []
    for row in rows:
        contents += [separator(), row] if contents else [row]
    return card(*contents, 1, spacing=spacing)
