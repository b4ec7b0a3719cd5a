"""Start of the window: one instance, its style, the real services."""

import contextlib
import datetime as dt
import os
import sys
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QLockFile
from PySide6.QtWidgets import QApplication, QStyleFactory

from gui.session.audio_cues import AudioCues
from gui.session.clip_reader import (
    WindowBatchReader,
    local_models,
    open_scrub_thumbnails,
)
from gui.session.engine_feed import EngineBridge
from gui.session.known_setup import SetupProvider, load_stored_setup
from gui.session.known_state import load_calibration_state
from gui.session.placement_check import PlacementMonitor
from gui.session.repository import SessionRepository
from gui.session.services import Services
from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.plain_dialog import plain_dialog
from gui.workers.garbage_collection import collect_garbage_in_gui_thread
from gui.workers.worker_thread import BackgroundWorker
from measure.camera.devices import find_cameras
from measure.live.engine import LiveEngine
from measure.message import system_reason
from measure.pose_models.catalogue import ModelQuality
from measure.storage.location import folder_unusable, private_folder


def configure_application(application: QCoreApplication) -> None:
    """Give the application its name, our style sheet's style, and a collector in its thread."""
    collect_garbage_in_gui_thread(application)
    application.setApplicationName("thawline")
    if isinstance(application, QApplication):
        application.setApplicationDisplayName("Thawline")
        application.setStyle(QStyleFactory.create("Fusion"))


def unset_inherited_environment() -> None:
    """Drop what another library may have set for a Qt of its own."""
    for name in ("QT_QPA_PLATFORM_PLUGIN_PATH", "QT_QPA_FONTDIR"):
        if "cv2" in os.environ.get(name, ""):
            del os.environ[name]


def acquire_instance_lock(folder: Path) -> QLockFile | None:
    """Return the lock of the only window on a data folder, or None when another has it.

    A lock that a killed program left behind is taken over; age alone never frees one.

    Raises
    ------
    MachineError
        When the folder cannot be made or written to.
    """
    try:
        private_folder(folder)
    except OSError as error:
        raise folder_unusable(folder, system_reason(error)) from error
    held = QLockFile(str(folder / "window.lock"))
    held.setStaleLockTime(0)
    if held.tryLock(100):
        return held
    if held.error() is QLockFile.LockError.LockFailedError:
        return None
    raise folder_unusable(folder, tr("it cannot be written to"))


def make_settings_private(path: Path) -> WindowSettings:
    """Return the settings in a file that nobody else can read.

    An empty one is made where there is none: what Qt puts in its place keeps its rights.
    """
    with contextlib.suppress(OSError):
        os.close(os.open(path, os.O_CREAT | os.O_WRONLY, 0o600))
        os.chmod(path, 0o600)
    return WindowSettings(path)


def report_already_running() -> None:
    """Say that there is a window already."""
    report_startup_failure(tr("Thawline is already open. Look for its window."))


def report_startup_failure(text: str) -> None:
    """Say why no window opens, in the terminal and where nobody looks at one."""
    print(f"thawline: {text}", file=sys.stderr)
    plain_dialog(text, tr("Close")).exec()


def build_services(
    folder: Path, clips: tuple[Path, ...] = (), quality: ModelQuality | None = None
) -> Services:
    """Return the services of the real window: live engine, store, cameras, clips.

    Parameters
    ----------
    folder
        Where the window's settings are kept.
    clips
        Clips that play as if they were the camera.
    quality
        The pose model; None takes the best that is here.
    """
    settings = make_settings_private(folder / "window.ini")
    appearance = Appearance(settings.scheme, settings.text_percent)
    appearance.apply()
    records = BackgroundWorker("records")
    return Services(
        appearance=appearance,
        settings=settings,
        feed=EngineBridge(lambda: LiveEngine(lambda: local_models(quality))),
        cues=AudioCues(tones=settings.tones, speech=settings.speech),
        keeper=SessionRepository(),
        records=records,
        slow_worker=BackgroundWorker("slow"),
        find_cameras=find_cameras,
        read_clips=WindowBatchReader(lambda: local_models(quality)),
        open_clip=open_scrub_thumbnails,
        clips=clips,
        setup_provider=SetupProvider(load_stored_setup),
        load_calibration=load_calibration_state,
        # Clips that play as if they were the camera may show anybody, standing anywhere.
        placement_monitor=None if clips else PlacementMonitor(records, dt.date.today),
    )
