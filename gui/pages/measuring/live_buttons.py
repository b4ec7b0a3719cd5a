"""Foot beneath what is read from afar: large buttons that stay in place, and the caution."""

from collections.abc import Mapping, Sequence
from math import ceil

from PySide6.QtCore import QRect, QSize
from PySide6.QtGui import QFontMetricsF, QResizeEvent
from PySide6.QtWidgets import QPushButton, QSizePolicy

from gui.style.appearance import Appearance
from gui.style.measures import BODY_PX, BUTTON_PADDING_PX, GAP_PX, SMALL, TITLE, TITLE_GROWTH
from gui.style.style_sheet import grown
from gui.text.wording import notice
from gui.widgets.buttons import BUTTON_GAP_PX, ButtonRow, ShortcutButton
from gui.widgets.layouts import ArrangedWidget, mirrored
from gui.widgets.text import label

#: Border and rounding beside the padding of a button, and most room to spare in it, pixels.
#: [technical]
_BORDER_PX, _MORE_PX = 4, 120
#: Words may be smaller by this much for the keys to have room beside them; beneath a live picture
#: they are read from farther away than any key is pressed. [technical]
_WITH_KEYS, _WITH_KEYS_LIVE = 0.75, 0.9
#: Least height of the buttons beneath a live picture, pixels. [technical]
_HIGH_PX = 56
#: Least and wanted share of the row for the button that stands out. [technical]
_LEAST_SHARE, _SHARE = 1 / 4, 1 / 3
#: Space between the caution and the link at its line's end, pixels. [technical]
_BESIDE_PX = 3 * GAP_PX
#: Room around the words of the link: its font may be rounded otherwise, pixels. [technical]
_SPARE_PX = 4


class PlacedButtons(ButtonRow):
    """A row of buttons in one line that stay where they are whatever stands on them.

    They are in the largest type in which all have room, never below the text size of 100 %; there
    the row breaks into lines as any other. Somewhat smaller words leave room for all keys.

    Parameters
    ----------
    words
        What may stand on each button, from the left.
    large
        A button beside the row, which is as high as it.
    """

    #: Share of the wanted type down to which the keys are worth smaller words.
    _keys_share = _WITH_KEYS

    def __init__(
        self,
        appearance: Appearance,
        words: Mapping[QPushButton, Sequence[str]],
        *,
        large: QPushButton | None = None,
    ) -> None:
        self._appearance = appearance
        self._words, self._large = words, large
        self._px = appearance.px()
        super().__init__(list(words), wide=True)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            # A layout may have asked for the lines of the former width since the last change.
            self.updateGeometry()

    @staticmethod
    def _at_end(_member: QPushButton) -> bool:
        return False

    def _arrange(self) -> None:
        px = self._largest_px()
        if px != self._px:
            self._px = px
            line = round(QFontMetricsF(self._appearance.font(px)).height())
            self.setStyleSheet(f"QPushButton {{ font-size: {px}px; min-height: {line}px; }}")
        super()._arrange()

    def _button_height(self) -> int:
        high = 0 if self._large is None else self._large.sizeHint().height()
        return max(super()._button_height(), high)

    def _most_px(self) -> int:
        """Return the size of the large button, or of a heading: read from some steps away."""
        if self._large is not None:
            return round(grown(BODY_PX * TITLE, TITLE_GROWTH, self._appearance.percent))
        return max(self._appearance.px(), round(BODY_PX * TITLE))

    def _largest_px(self) -> int:
        """Return the largest type in which the words of the buttons stand in one line."""
        largest = self._most_px()
        smallest = max(BODY_PX, round(largest * self._keys_share))
        for px in range(largest, smallest - 1, -1):
            if self._wide(self._places(px, with_keys=True)) <= self._room():
                return px
        sizes = range(largest, BODY_PX, -1)
        return next((px for px in sizes if self._wide(self._places(px)) <= self._room()), BODY_PX)

    def _places(self, px: int, *, with_keys: bool = False) -> list[int]:
        """Return how wide the place of each button that is shown must be in this type, pixels."""
        metrics = QFontMetricsF(self._appearance.font(px, bold=True))
        around = 2 * (BUTTON_PADDING_PX[1] + _BORDER_PX)
        places = []
        for member in self._shown():
            key = f"  \u00b7  {member.accessibleDescription()}" if with_keys else ""
            widths = (metrics.horizontalAdvance(words + key) for words in self._words[member])
            places.append(around + ceil(max(widths)))
        return places

    def _widths_here(self) -> list[int]:
        """Return places with their keys where these have room, and a share of what is left."""
        for with_keys in (True, False):
            places = self._places(self._largest_px(), with_keys=with_keys)
            spare = self._room() - self._wide(places)
            if spare >= 0:
                return self._shared(places, spare)
        return super()._widths_here()

    def _shared(self, places: list[int], spare: int) -> list[int]:
        """Return the places with what they get of the room that is left, pixels."""
        more = min(_MORE_PX, spare // max(1, len(places)))
        return [place + more for place in places]


class LiveButtons(PlacedButtons):
    """The buttons beneath a live picture: each keeps its place also while it is not offered.

    The last one, at the row's end, stands out.

    Parameters
    ----------
    instead
        A button that stands in the place of the last one.
    """

    _keys_share = _WITH_KEYS_LIVE

    def __init__(
        self,
        appearance: Appearance,
        words: Mapping[QPushButton, Sequence[str]],
        instead: QPushButton,
    ) -> None:
        self._instead = instead
        self._wanted_px = 0
        #: Widths of the columns above, pixels.
        self._columns = (0, 0)
        super().__init__(appearance, words)
        instead.setParent(self)

    def want_px(self, px: int) -> None:
        """Let the words be as large as others that are read from afar, where they have room."""
        if px != self._wanted_px:
            self._wanted_px = px
            self._arrange()

    def divide(self, left: int, right: int) -> None:
        """Let the row part where two columns above it do, pixels; not where words lack the room."""
        if (left, right) != self._columns:
            self._columns = left, right
            self._arrange()

    def _arrange(self) -> None:
        super()._arrange()
        self._part()
        self._instead.setGeometry(self._shown()[-1].geometry())

    def _part(self) -> None:
        """Give the buttons of each half the width of the column above, if they have room in it.

        The row's last one has its share first, and is wider than any other.
        """
        shown, px = self._shown(), self._largest_px()
        half = len(shown) // 2
        least, keyed = self._places(px), self._places(px, with_keys=True)
        left, right = self._columns
        rooms = left - self._wide(least[:half]), right - self._wide(least[half:])
        if min(rooms) < 0:
            return
        first = _filled(least[:half], keyed[:half], rooms[0])
        if max(first) >= least[-1] + rooms[1]:
            first = _filled(least[:half], least[:half], rooms[0])
        last = max(round(_SHARE * self._room()), max(first) + BUTTON_GAP_PX)
        more = min(rooms[1], max(0, last - least[-1]))
        others = _filled(least[half:-1], keyed[half:-1], rooms[1] - more)
        widths = [*first, *others, least[-1] + more]
        at, high = 0, self._button_height()
        for place, (member, wide) in enumerate(zip(shown, widths, strict=True)):
            if place == half:
                at = self.width() - right
            self._put(member, at, 0, wide, high)
            at += wide + BUTTON_GAP_PX

    def _shown(self) -> list[QPushButton]:
        return list(self._words)

    def _button_height(self) -> int:
        return max(super()._button_height(), _HIGH_PX)

    def _most_px(self) -> int:
        return max(super()._most_px(), self._wanted_px)

    def _places(self, px: int, *, with_keys: bool = False) -> list[int]:
        *others, last = super()._places(px, with_keys=with_keys)
        return [*others, max(last, round(_LEAST_SHARE * self._room()))]

    def _shared(self, places: list[int], spare: int) -> list[int]:
        """Let the last one grow to its share first; the others have the rest, the row is full."""
        *others, last = places
        more = min(spare, max(0, round(_SHARE * self._room()) - last))
        wider = (spare - more) // len(others)
        return [*(place + wider for place in others), last + spare - wider * len(others)]


def _filled(least: list[int], keyed: list[int], room: int) -> list[int]:
    """Return the widths of buttons that share room, from the last on first that of their keys."""
    widths = list(least)
    for place in reversed(range(len(widths))):
        more = keyed[place] - least[place]
        if more <= room:
            widths[place] += more
            room -= more
    widths = [wide + room // len(widths) for wide in widths]
    widths[-1] += room % len(widths)
    return widths


class CautionLine(ArrangedWidget):
    """The caution and, at the end of its line, a link that keeps its place while it is hidden.

    Both are as large as has room in one line, running text where they can, and never smaller than
    the small text of 100 %.
    """

    def __init__(self, appearance: Appearance, link: ShortcutButton) -> None:
        super().__init__()
        self._appearance, self._link = appearance, link
        self._px = 0
        self.words = label(notice(), "notice")
        self.words.setWordWrap(False)
        for member in (self.words, link):
            member.setParent(self)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return self.minimumSizeHint()

    def minimumSizeHint(self) -> QSize:
        """Return the height of the line; its type is fitted to the width that it gets."""
        return QSize(0, ceil(max(part.height() for part in self._metrics(self._px))))

    def _arrange(self) -> None:
        px = self._largest_px()
        caution, linked = self._metrics(px)
        if px != self._px:
            self._px = px
            self.setStyleSheet(
                f"QLabel {{ font-size: {px}px; }} QPushButton {{ "
                f"font-size: {max(px, BODY_PX)}px; min-height: {ceil(linked.height())}px; }}"
            )
            self.updateGeometry()
        name, key = self._link.accessibleName(), self._link.accessibleDescription()
        free = self.width() - caution.horizontalAdvance(notice()) - _BESIDE_PX
        with_key = linked.horizontalAdvance(f"{name}  \u00b7  {key}") + _SPARE_PX
        fits = with_key <= free
        wide = ceil(with_key if fits else linked.horizontalAdvance(name) + _SPARE_PX)
        for member, place in (
            (self.words, QRect(0, 0, self.width() - wide - _BESIDE_PX, self.height())),
            (self._link, QRect(self.width() - wide, 0, wide, self.height())),
        ):
            member.setGeometry(mirrored(self, place))

    def _metrics(self, px: int) -> tuple[QFontMetricsF, QFontMetricsF]:
        """Return the metrics of the caution in this type, and of the link beside it."""
        font = self._appearance.font
        return QFontMetricsF(font(px)), QFontMetricsF(font(max(px, BODY_PX)))

    def _largest_px(self) -> int:
        """Return the largest type of the caution in which both stand in the line."""
        least = round(BODY_PX * SMALL)
        sizes = range(max(BODY_PX, self._appearance.px(SMALL)), least, -1)
        return next((px for px in sizes if self._width_at(px) <= self.width()), least)

    def _width_at(self, px: int) -> float:
        """Return the width of the line in this type, pixels."""
        caution, linked = self._metrics(px)
        words = caution.horizontalAdvance(notice()) + _BESIDE_PX
        return words + linked.horizontalAdvance(self._link.accessibleName()) + _SPARE_PX
