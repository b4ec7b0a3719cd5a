"""A folder with clips, and the page with them in its list."""

from pathlib import Path

from gui.app.window_pages import MainPage
from gui.pages.clips.clip_rows import ClipRow
from gui.pages.clips.clips_page import ClipsPage
from tests.support.gui.stage import WindowHarness

NAMES = ("bed-three_flexion_right.mp4", "abduction-left.mov", "IMG_4711.mp4")


def fill_folder(folder: Path) -> Path:
    """Put three clips and something else into a folder, and return it."""
    for name in (*NAMES, "notes.txt"):
        (folder / name).touch()
    return folder


def open_folder(stage: WindowHarness, folder: Path) -> ClipsPage:
    """Return the page with the clips of a folder in its list."""
    stage.window.go(MainPage.CLIPS)
    stage.window.clips.open([folder])
    stage.settle()
    return stage.window.clips


def read_first(stage: WindowHarness, page: ClipsPage) -> None:
    """Read the flexion clip on its own page."""
    page.show_clip(row_named(page, NAMES[0]))
    stage.settle()
    page.review.read.click()
    stage.settle()


def row_named(page: ClipsPage, name: str) -> ClipRow:
    """Return the row of the clip with this name."""
    return next(row for row in page.model.rows if row.clip.name == name)
