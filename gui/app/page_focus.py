"""Focus that goes where the eye goes: to a page that came into sight, never back to the menu row.

Qt hands the focus of a control that goes out of sight to whatever comes next in the tab order, be
it on a page that has nothing to do with it. Here it goes to the first control of the page that is
shown.
"""

from PySide6.QtCore import QObject, Qt, QTimer, Slot
from PySide6.QtWidgets import QAbstractScrollArea, QApplication, QStackedWidget, QWidget
from shiboken6 import isValid


class PageFocus(QObject):
    """Looks after the focus of a stack of pages and of the stacks inside its pages."""

    def __init__(self, pages: QStackedWidget) -> None:
        super().__init__(pages)
        self._pages = pages
        self._wanted = QTimer(self, singleShot=True, interval=0)
        self._wanted.timeout.connect(self.put_on_page)
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.focusChanged.connect(self._focus_changed)
        pages.currentChanged.connect(self._wanted.start)

    @Slot(QWidget, QWidget)
    def _focus_changed(self, before: QWidget | None, _now: QWidget | None) -> None:
        """Notice a focus that moved because its control is gone."""
        if before is not None and (not isValid(before) or not before.isVisible()):
            self._wanted.start()

    @Slot()
    def put_on_page(self) -> None:
        """Put the focus on the page that is shown, unless it is there already."""
        page, focused = innermost_page(self._pages), self._pages.window().focusWidget()
        dialog = QApplication.activeModalWidget() or QApplication.activePopupWidget()
        if page is None or dialog is not None or not self._pages.isVisible():
            return
        if focused is not None and focused.isVisible() and page.isAncestorOf(focused):
            return
        first = first_control(page)
        if first is not None:
            first.setFocus(Qt.FocusReason.OtherFocusReason)


def innermost_page(stack: QStackedWidget) -> QWidget | None:
    """Return the page that is shown, of the innermost stack."""
    page = stack.currentWidget()
    inner = stack
    while page is not None:
        inside = page if isinstance(page, QStackedWidget) else _stack_on(page)
        if inside is None or inside is inner or inside.currentWidget() is None:
            return page
        inner, page = inside, inside.currentWidget()
    return None


def _stack_on(page: QWidget) -> QStackedWidget | None:
    """Return the stack that is all of a page, if there is one."""
    stacks = page.findChildren(QStackedWidget, options=Qt.FindChildOption.FindDirectChildrenOnly)
    return next((stack for stack in stacks if stack.size() == page.size()), None)


def first_control(page: QWidget) -> QWidget | None:
    """Return the first control of a page in the tab order; a scroll area only without others."""
    area, control = None, page.nextInFocusChain()
    while control is not None and control is not page:
        reached = control.focusPolicy() & Qt.FocusPolicy.TabFocus and control.isEnabled()
        if reached and control.isVisible() and page.isAncestorOf(control):
            if not isinstance(control, QAbstractScrollArea):
                return control
            area = area or control
        control = control.nextInFocusChain()
    return area
