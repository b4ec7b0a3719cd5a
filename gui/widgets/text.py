"""Labels with a role of the style sheet, and the notice of every page with a number."""

import re
from collections.abc import Iterable, Sequence
from html import escape

from PySide6.QtCore import QEvent, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QGridLayout,
    QLabel,
    QSizePolicy,
    QWidget,
)

from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import notice
from gui.widgets.buttons import give_role
from gui.widgets.layouts import centred, clear_layout, column, row, widget_with

#: Least room for a shortened text, in widths of a digit. [technical]
_LEAST_DIGITS = 8
#: Least letters of a text's last line: its last words are not parted. [technical]
_LAST_LETTERS = 10
#: Least share of its size in which a sentence is set to have one line. [technical]
_LEAST_SIZE = 0.78
#: Sign of a step that is done.
_DONE = "\u2713"


def label(text: str, role: str = "") -> QLabel:
    """Return a wrapping label; it has a role of the style sheet, or none.

    Roles: display (heading of a page), number (what a page is about), title (heading of a section),
    lead (a leading sentence), strong, quiet (steps back), small (quiet and small), notice, alarm,
    key (a key of the keyboard, drawn as one).
    """
    made = QLabel(text)
    made.setProperty("role", role)
    made.setWordWrap(True)
    made.setTextFormat(Qt.TextFormat.PlainText)
    policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
    policy.setHeightForWidth(True)
    made.setSizePolicy(policy)
    return made


def tag() -> QLabel:
    """Return a label of one line for a few words that stand out, on a ground of their own."""
    made = label("", "tag")
    made.setWordWrap(False)
    made.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
    return made


def section_heading(text: str) -> QLabel:
    """Return the heading of a section, with twice the usual room above it."""
    made = label(text, "title")
    made.setContentsMargins(0, 2 * GAP_PX, 0, 0)
    return made


def end_together(text: str) -> str:
    """Return a text whose last words are not parted, so that no short one has a line to itself."""
    place = text.rfind(" ")
    while place > 0 and len(re.sub("<[^>]*>", "", text[place + 1 :])) < _LAST_LETTERS:
        text = f"{text[:place]}\u00a0{text[place + 1 :]}"
        place = text.rfind(" ")
    return text


class OneLineLabel(QLabel):
    """A sentence that is set a little smaller where that spares it a second line.

    Parameters
    ----------
    bold
        Whether its role sets it in bold type.
    share
        Size of its role, relative to running text.
    """

    def __init__(
        self, appearance: Appearance, text: str, role: str, *, bold: bool, share: float = 1.0
    ) -> None:
        super().__init__(text)
        self._appearance, self._bold, self._share, self._px = appearance, bold, share, 0
        self.setProperty("role", role)
        self.setWordWrap(True)
        self.setTextFormat(Qt.TextFormat.PlainText)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        asked = self._appearance.px(self._share)
        wide = QFontMetricsF(self._appearance.font(asked, bold=self._bold))
        fitting = int(asked * (self.width() - 2) / max(1.0, wide.horizontalAdvance(self.text())))
        px = fitting if _LEAST_SIZE * asked <= fitting < asked else 0
        if px != self._px:
            self._px = px
            self.setStyleSheet(f"font-size: {px}px;" if px else "")


class ElidedLabel(QLabel):
    """A label of one line for names of any length, shortened in the middle; its tool tip is the
    whole.
    """

    def __init__(self, role: str = "") -> None:
        super().__init__()
        self._whole = ""
        self.setProperty("role", role)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)

    def say(self, text: str) -> None:
        """Show another text."""
        self._whole = text
        self.setAccessibleName(text)
        self.setToolTip(text)
        self.updateGeometry()
        self._fit()

    def sizeHint(self) -> QSize:
        return QSize(self.fontMetrics().horizontalAdvance(self._whole), super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        metrics = self.fontMetrics()
        least = _LEAST_DIGITS * metrics.horizontalAdvance("0")
        whole = metrics.horizontalAdvance(self._whole)
        return QSize(min(least, whole), super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        self.setText(
            self.fontMetrics().elidedText(self._whole, Qt.TextElideMode.ElideMiddle, self.width())
        )


class SignedLine(QWidget):
    """A line of a list: its text hangs beside its sign, or beside a drawn one that means it."""

    def __init__(
        self,
        sign: str,
        text: str,
        role: str = "",
        sign_role: str | None = None,
        *,
        drawn: QWidget | None = None,
    ) -> None:
        super().__init__()
        self._words = label(text, role)
        self._sign = label(sign, role if sign_role is None else sign_role)
        self._sign.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
        self._sign.setAlignment(Qt.AlignmentFlag.AlignTop)
        self._shown = self._sign if drawn is None else drawn
        row(self._shown, (self._words, 1), on=self, spacing=12)

    def keep_sign_width(self, px: int) -> None:
        """Let the text begin at the same place beside any sign."""
        self._shown.setFixedWidth(px)

    def say(
        self, sign: str, text: str, *, role: str | None = None, sign_role: str | None = None
    ) -> None:
        """Show another sign and text, in another role of the style sheet where one is given."""
        self._sign.setText(sign)
        self._words.setText(text)
        if role is not None:
            give_role(self._words, role)
            give_role(self._sign, role if sign_role is None else sign_role)

    def emphasise(self, phrases: Iterable[str]) -> None:
        """Set phrases of the text in bold, each where it comes first."""
        shown = escape(self._words.text())
        for phrase in map(escape, phrases):
            shown = shown.replace(phrase, f"<b>{phrase}</b>", 1)
        self._words.setTextFormat(Qt.TextFormat.RichText)
        self._words.setText(end_together(shown))

    def text(self) -> str:
        """Return sign and text as they are read."""
        return f"{self._sign.text()}  {self._words.text()}"


class Steps(QWidget):
    """Numbered steps, with a tick at those that are done; their texts begin at one line.

    Parameters
    ----------
    role
        Of the style sheet.
    present_role
        Of the first step that is not done, where that one stands out.
    """

    def __init__(
        self, role: str, spacing: int = GAP_PX, *, present_role: str | None = None
    ) -> None:
        super().__init__()
        self._role = role
        self._present_role = role if present_role is None else present_role
        self._lines = QGridLayout(self)
        self._lines.setContentsMargins(0, 0, 0, 0)
        self._lines.setHorizontalSpacing(2 * GAP_PX)
        self._lines.setVerticalSpacing(spacing)
        self._lines.setColumnStretch(1, 1)

    def show_steps(self, steps: Sequence[str], done: int = 0) -> None:
        """Show steps of which the first ones are done."""
        clear_layout(self._lines)
        for number, step in enumerate(steps, start=1):
            role = self._present_role if number == done + 1 else self._role
            sign = label(_DONE if number <= done else f"{number}", role)
            sign.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
            sign.setAlignment(Qt.AlignmentFlag.AlignTop)
            self._lines.addWidget(sign, number, 0)
            self._lines.addWidget(label(end_together(step), role), number, 1)


def terms(lines: Iterable[tuple[str, QLabel]], role: str = "quiet") -> QWidget:
    """Return lines of a term, in a role of the style sheet, and beside it what is said of it."""
    grid = QGridLayout()
    grid.setContentsMargins(0, 0, 0, 0)
    grid.setHorizontalSpacing(3 * GAP_PX)
    grid.setVerticalSpacing(GAP_PX // 2)
    grid.setColumnStretch(1, 1)
    for line, (name, words) in enumerate(lines):
        term = label(name, role)
        term.setWordWrap(False)
        term.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
        grid.addWidget(term, line, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(words, line, 1)
    return widget_with(grid)


def titled(name: str, line: str) -> QWidget:
    """Return a name, and beneath it a quiet line about it."""
    made = QWidget()
    column(label(name, "strong"), label(line, "quiet"), on=made, spacing=GAP_PX // 4)
    return made


class NumberLine(QWidget):
    """A large number and what stands beside it on one baseline, or words one below the other."""

    def __init__(self, number: QLabel, beside: QLabel, spacing: int) -> None:
        super().__init__()
        self._number, self._beside = number, beside
        self._line = row(number, (beside, 1), on=self, spacing=spacing)
        for member in (number, beside):
            member.setAlignment(Qt.AlignmentFlag.AlignBottom)

    def set_level(self, level: bool) -> None:
        """Set both on one baseline, or one below the other."""
        way = QBoxLayout.Direction
        self._line.setDirection(way.LeftToRight if level else way.TopToBottom)
        self._number.setWordWrap(not level)
        fixed = QSizePolicy.Policy.Fixed if level else QSizePolicy.Policy.Expanding
        policy = QSizePolicy(fixed, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(not level)
        self._number.setSizePolicy(policy)
        self._lift()

    def event(self, event: QEvent) -> bool:
        """Find the baseline anew when the type of one is another."""
        if event.type() in (QEvent.Type.LayoutRequest, QEvent.Type.Show):
            self._lift()
        return super().event(event)

    def _lift(self) -> None:
        level = self._line.direction() is QBoxLayout.Direction.LeftToRight
        below = self._number.fontMetrics().descent() - self._beside.fontMetrics().descent()
        lift = below if level else 0
        if self._beside.contentsMargins().bottom() != lift:
            self._beside.setContentsMargins(0, 0, 0, lift)


class NoticeBar(QWidget):
    """The notice of every page with a number: an estimate, not a diagnosis."""

    def __init__(self, parent: QWidget | None = None, *, wide: bool = False) -> None:
        super().__init__(parent)
        self.words = label(notice(), "notice")
        column(self.words if wide else centred(self.words), on=self, margins=(0, 4, 0, 4))
