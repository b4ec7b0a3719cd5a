"""Folders of this program: data, pose models and logs."""

import os
from pathlib import Path

import platformdirs


def data_folder() -> Path:
    """Return the folder for sessions and models; `THAWLINE_DATA` overrides it.

    The folder is not created here.
    """
    own = os.environ.get("THAWLINE_DATA")
    if own:
        return Path(own).expanduser()
    return Path(platformdirs.user_data_dir("thawline", appauthor=False))


def model_folder() -> Path:
    """Return the folder for pose bundles; `THAWLINE_MODELS` overrides it.

    Apart from the data folder, so that tests and several people share one download.
    """
    own = os.environ.get("THAWLINE_MODELS")
    if own:
        return Path(own).expanduser()
    return data_folder() / "models"


def log_folder() -> Path:
    """Return the folder for logs, which hold no readings, names or notes."""
    return data_folder() / "logs"


def make_private(folder: Path) -> None:
    """Make a folder that only its owner can read, unless it exists."""
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
