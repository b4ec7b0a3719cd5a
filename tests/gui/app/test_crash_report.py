"""What is told when something of ours breaks."""

from pathlib import Path

import pytest

from gui.app.crash_report import crash_report_text


def test_details_name_versions_and_place_but_not_the_persons_home(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(Path, "home", lambda: Path(__file__).parents[3])
    try:
        raise ZeroDivisionError("a mistake of ours")
    except ZeroDivisionError as error:
        told = crash_report_text(type(error), error, error.__traceback__)
    assert "qt " in told
    assert "opencv" in told
    assert Path(__file__).name in told
    assert "a mistake of ours" in told
    assert str(Path(__file__).parents[3]) not in told
