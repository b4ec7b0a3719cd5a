"""A program that opens a window, says when it is painted, and ends; run by the bench of starts.

    python -m tests.bench.window_start empty
    python -m tests.bench.window_start window
    python -m tests.bench.window_start camera CLIP

Prints "page" when the first page is on the screen and, with a clip for a camera, "picture" when its
first picture is. The data folder is that of THAWLINE_DATA.
"""

import sys
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QApplication, QMainWindow, QWidget


class FirstPaint(QObject):
    """Prints a word once a widget was painted, then calls what follows."""

    def __init__(self, widget: QWidget, word: str, follows: Callable[[], object]) -> None:
        super().__init__(widget)
        self._word, self._follows, self._done = word, follows, False
        widget.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if event.type() is QEvent.Type.Paint and not self._done:
            self._done = True
            QTimer.singleShot(0, self._tell)
        return False

    def _tell(self) -> None:
        print(self._word, flush=True)
        self._follows()


def main(mode: str, clips: tuple[Path, ...]) -> int:
    if mode == "empty":
        application = QApplication(["thawline"])
        window = QMainWindow()
        painted, leave = QWidget(), application.quit
        window.setCentralWidget(painted)
    else:
        from gui.app.application import build_services, configure_application
        from gui.app.shown_window import ShownWindow
        from gui.app.window_pages import MainPage
        from gui.style.fonts import ensure_fonts
        from measure.system.paths import data_folder

        application = QApplication(["thawline"])
        configure_application(application)
        ensure_fonts()
        services = build_services(data_folder(), clips)
        services.cues.tones_wanted = services.cues.speech_wanted = False
        window = ShownWindow(services).window
        painted = window.measure.start

        def leave() -> None:
            if mode == "window":
                window.close()
                return
            services.feed.framed.connect(show_picture)
            window.go(MainPage.SETUP)

        def show_picture(_frame: object) -> None:
            services.feed.framed.disconnect(show_picture)
            QTimer.singleShot(0, tell_picture)

        def tell_picture() -> None:
            print("picture", flush=True)
            window.close()

    paint = FirstPaint(painted, "page", leave)
    window.show()
    code = application.exec()
    del paint
    return code


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], tuple(map(Path, sys.argv[2:]))))
