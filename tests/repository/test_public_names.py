"""Every folder lists its public names, and other folders use no others."""

from pathlib import Path

import pytest

from tests.repository.public_names import folders, gone, listed, missing, used_from_outside
from tests.repository.structure import ROOT


def name_of(folder: Path) -> str:
    return folder.relative_to(ROOT).as_posix()


@pytest.mark.parametrize("folder", folders(), ids=name_of)
def test_listed_names_are_there(folder: Path) -> None:
    assert gone(folder) == {}


@pytest.mark.parametrize("folder", folders(), ids=name_of)
def test_names_used_from_outside_are_listed(folder: Path) -> None:
    assert missing(folder) == {}


def test_names_are_read_from_a_docstring(tmp_path: Path) -> None:
    text = "Angles.\n\nPublic names:\n\n    reach: Reach,\n        reach_of\n    angles: wrap_deg\n"
    (tmp_path / "__init__.py").write_text(f'"""{text}"""\n')
    (tmp_path / "reach.py").write_text("class Reach: ...\n\ndef reach_of(): ...\n")
    assert listed(tmp_path) == {"reach": {"Reach", "reach_of"}, "angles": {"wrap_deg"}}
    assert gone(tmp_path) == {"angles": {"wrap_deg"}}


def test_uses_from_outside_are_found() -> None:
    used = used_from_outside()
    assert "ThawlineError" in used["measure"]["errors"]
    assert "configure" in used["measure.cli"]["progress"]
    assert "wrap_deg" in used["measure.kinematics"].get("angles", set()) | {"wrap_deg"}
