"""`thawline app`: opens the window."""

import argparse
from pathlib import Path

from measure.errors import InputError, MachineError
from measure.pose_models.catalogue import ModelQuality


def configure(parser: argparse.ArgumentParser) -> None:
    """Open the window: measure, see progress, review clips, set up the camera.

    exit codes:
      0  closed
      1  another window is open already, or an error inside Thawline
      2  wrong use

    examples:
      thawline app
      thawline app --source raise.mp4               a clip plays as if it were the camera
      thawline app --source raise.mp4 turned.mp4    one clip for each movement in turn
      thawline app --model-quality full
    """
    parser.add_argument(
        "--source",
        type=Path,
        nargs="+",
        default=[],
        metavar="CLIP",
        help="clips to play instead of the camera",
    )
    parser.add_argument("--model-quality", choices=[quality.value for quality in ModelQuality])
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    for clip in arguments.source:
        if not clip.is_file():
            raise InputError(f"There is no clip {clip}. Check the name after --source.")
    from gui.app.application import unset_inherited_environment

    unset_inherited_environment()
    from PySide6.QtWidgets import QApplication

    from gui.app.application import (
        acquire_instance_lock,
        configure_application,
        report_already_running,
        report_startup_failure,
    )
    from gui.app.crash_report import CrashReporter, quiet_qt
    from gui.session.settings import WindowSettings
    from gui.style.fonts import ensure_fonts
    from gui.text.language import install_language
    from gui.text.wording import error_text
    from measure.system.paths import data_folder

    quiet_qt()
    application = QApplication.instance() or QApplication(["thawline"])
    configure_application(application)
    ensure_fonts()
    install_language(application, WindowSettings(data_folder() / "window.ini").language)
    try:
        held = acquire_instance_lock(data_folder())
    except MachineError as error:
        report_startup_failure(error_text(error))
        return error.exit_code
    if held is None:
        report_already_running()
        return 1
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

    from gui.app.application import build_services
    from gui.app.shown_window import ShownWindow
    from measure.system.paths import data_folder

    shown = ShownWindow(build_services(data_folder(), clips, quality))
    shown.show()
    return int(QApplication.exec())
