"""Room that a page leaves a widget down to the lower edge of the window."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QPoint, QTimer, Slot
from PySide6.QtWidgets import QScrollArea, QWidget

from gui.widgets.fold import FADED_PX


class FoldRoom(QObject):
    """Tells how high a widget may be so that all of it is seen at once.

    Parameters
    ----------
    fit
        Called with the room in pixels whenever that may have changed.
    """

    def __init__(self, shown: QWidget, fit: Callable[[int], None]) -> None:
        super().__init__(shown)
        self._shown, self._fit = shown, fit
        self._watched: list[QWidget] = []
        self._timer = QTimer(self, singleShot=True, interval=0)
        self._timer.timeout.connect(self._measure)
        shown.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        kinds = QEvent.Type
        if event.type() is kinds.Show:
            self._watch()
        if event.type() in (kinds.Show, kinds.Hide, kinds.Move, kinds.Resize):
            self._timer.start()
        return super().eventFilter(watched, event)

    def _area(self) -> QScrollArea | None:
        above = self._shown.parentWidget()
        while above is not None and not isinstance(above, QScrollArea):
            above = above.parentWidget()
        return above

    def _watch(self) -> None:
        """Notice when anything between the widget and the edge of its page moves."""
        area, above = self._area(), self._shown.parentWidget()
        while above is not None and above is not area:
            if above not in self._watched:
                above.installEventFilter(self)
                self._watched.append(above)
            above = above.parentWidget()

    @Slot()
    def _measure(self) -> None:
        area = self._area()
        if area is None or not self._shown.isVisible():
            return
        page = area.widget()
        assert page is not None
        top = self._shown.mapTo(page, QPoint(0, 0)).y()
        self._fit(area.viewport().height() - top - FADED_PX)
        # Else what lies beneath stays where it was for some rounds, and on top of it.
        above = self._shown.parentWidget()
        while above is not None and above is not area:
            around = above.layout()
            if around is not None:
                around.activate()
            above = above.parentWidget()
