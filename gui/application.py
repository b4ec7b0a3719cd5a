"""Starting the window: one instance, our look, real services, a net for what breaks."""

import contextlib
import os
import sys
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QLockFile
from PySide6.QtWidgets import QApplication, QStyleFactory

from gui.widgets.plain_dialog import plain_dialog
from gui.words import tr


def prepare(application: QCoreApplication) -> None:
    """Give the application its name and the style that our style sheet is made for."""
    application.setApplicationName("thawline")
    if isinstance(application, QApplication):
        application.setApplicationDisplayName("Thawline")
        application.setStyle(QStyleFactory.create("Fusion"))


def clean_environment() -> None:
    """Drop what another library may have set for a Qt of its own."""
    for name in ("QT_QPA_PLATFORM_PLUGIN_PATH", "QT_QPA_FONTDIR"):
        if "cv2" in os.environ.get(name, ""):
            del os.environ[name]


def lock(folder: Path) -> QLockFile | None:
    """Return the lock of the only window on a data folder, or None when another has it.

    A lock that a killed program left behind is taken over; age alone never frees one.
    """
    folder.mkdir(parents=True, exist_ok=True)
    with contextlib.suppress(OSError):
        folder.chmod(0o700)
    held = QLockFile(str(folder / "window.lock"))
    held.setStaleLockTime(0)
    return held if held.tryLock(100) else None


def tell_already_open() -> None:
    """Say that there is a window already."""
    text = tr("Thawline is already open. Look for its window.")
    print(f"thawline: {text}", file=sys.stderr)
    plain_dialog(text, tr("Close")).exec()
