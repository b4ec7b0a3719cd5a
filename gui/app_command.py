"""`thawline app`: opens the window."""

import argparse
from pathlib import Path

from measure.errors import InputError
from measure.pose_model_checksums import ModelQuality


def configure(parser: argparse.ArgumentParser) -> None:
    """Open the window: measure, see progress, review clips, set up the camera.

    exit codes:
      0  closed
      1  another window is open already, or a failure of ours
      2  wrong use

    examples:
      thawline app
      thawline app --source raise.mp4               a clip plays as if it were the camera
      thawline app --source raise.mp4 turned.mp4    one clip for each movement in turn
      thawline app --model-quality full
    """
    parser.add_argument(
        "--source", type=Path, nargs="+", default=[], metavar="CLIP", help="clips for a camera"
    )
    parser.add_argument("--model-quality", choices=[each.value for each in ModelQuality])
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    for clip in arguments.source:
        if not clip.is_file():
            raise InputError(f"There is no clip {clip}. Check the name after --source.")
    from gui.application import clean_environment

    clean_environment()
    from PySide6.QtWidgets import QApplication

    from gui.application import lock, prepare, tell_already_open
    from gui.crash import CrashReporter, quiet_qt
    from measure.folders import data_folder

    application = QApplication.instance() or QApplication(["thawline"])
    prepare(application)
    held = lock(data_folder())
    if held is None:
        tell_already_open()
        return 1
    quiet_qt()
    net = CrashReporter(application)
    net.install()
    try:
        quality = ModelQuality(arguments.model_quality) if arguments.model_quality else None
        return _show(tuple(arguments.source), quality)
    finally:
        net.remove()
        held.unlock()


def _show(clips: tuple[Path, ...], quality: ModelQuality | None) -> int:
    from PySide6.QtWidgets import QApplication

    from gui.background import Background
    from gui.clip_reading import (
        WindowClipReader,
        accepted_measurement,
        local_models,
        open_scrub_pictures,
    )
    from gui.cues import Cues
    from gui.feed import EngineFeed
    from gui.keeper import StoreKeeper
    from gui.look import Look
    from gui.main_window import MainWindow
    from gui.services import Services
    from gui.settings import WindowSettings
    from measure.camera_list import find_cameras
    from measure.folders import data_folder
    from measure.live import LiveEngine

    settings = WindowSettings(data_folder() / "window.ini")
    look = Look(settings.scheme, settings.text_percent)
    look.apply()
    reader = WindowClipReader(
        lambda: local_models(quality),
        already_mirrored=lambda: settings.already_mirrored(settings.camera),
    )
    services = Services(
        look=look,
        settings=settings,
        feed=EngineFeed(lambda: LiveEngine(lambda: local_models(quality))),
        cues=Cues(tones=settings.tones, speech=settings.speech),
        keeper=StoreKeeper(),
        records=Background("records"),
        slow=Background("slow"),
        find_cameras=find_cameras,
        read_clip=reader,
        open_clip=open_scrub_pictures,
        combine_trials=accepted_measurement,
        end_reading=reader.close,
        clips=clips,
    )
    window = MainWindow(services)
    window.show()
    return int(QApplication.exec())
