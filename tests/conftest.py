"""What all tests share: an own data folder each, no window, no network."""

import os
from pathlib import Path

import pytest

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


@pytest.fixture
def data_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty data folder that the program under test uses instead of the person's own."""
    folder = tmp_path / "data"
    monkeypatch.setenv("THAWLINE_DATA", str(folder))
    return folder
