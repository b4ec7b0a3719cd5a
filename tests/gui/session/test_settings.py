"""What the window remembers, and what it makes of a spoilt file."""

from pathlib import Path

import pytest

from gui.protocol.plan import HOME_MOVEMENTS, SessionMode
from gui.session.settings import TEXT_SCALES, WindowSettings
from gui.style.palette import Scheme
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, Assistance, BodyPosition


@pytest.fixture
def ini(tmp_path: Path) -> Path:
    return tmp_path / "window.ini"


def again(settings: WindowSettings, ini: Path) -> WindowSettings:
    settings.save()
    return WindowSettings(ini)


def test_what_a_first_start_finds(ini: Path) -> None:
    settings = WindowSettings(ini)
    assert settings.scheme is Scheme.SYSTEM
    assert settings.text_percent == 100
    assert (settings.tones, settings.speech, settings.mirror_preview) == (True, True, True)
    assert settings.camera is None
    assert settings.movements == HOME_MOVEMENTS
    assert settings.conduct == AssessmentCondition()
    assert settings.mode is None
    assert not settings.own_choice
    assert settings.geometry.isEmpty()


def test_everything_is_there_after_a_restart(ini: Path) -> None:
    settings = WindowSettings(ini)
    settings.scheme = Scheme.DARK
    settings.text_percent = 175
    settings.tones = False
    settings.speech = False
    settings.mirror_preview = False
    settings.camera = "Kamera \u00dcber, 2"
    settings.set_already_mirrored("Kamera \u00dcber, 2", True)
    settings.movements = (Movement.EXTENSION,)
    settings.conduct = AssessmentCondition(help=Assistance.STICK, posture=BodyPosition.SITTING)
    settings.person_id = "b" * 32
    settings.mode = SessionMode.CLINIC
    settings.own_choice = True
    found = again(settings, ini)
    assert found.scheme is Scheme.DARK
    assert found.text_percent == 175
    assert (found.tones, found.speech, found.mirror_preview) == (False, False, False)
    assert found.camera == "Kamera \u00dcber, 2"
    assert found.already_mirrored("Kamera \u00dcber, 2")
    assert found.movements == (Movement.EXTENSION,)
    assert found.conduct == AssessmentCondition(help=Assistance.STICK, posture=BodyPosition.SITTING)
    assert found.person_id == "b" * 32
    assert found.mode is SessionMode.CLINIC
    assert found.own_choice


def test_the_mirror_is_remembered_for_each_camera_by_name(ini: Path) -> None:
    settings = WindowSettings(ini)
    settings.set_already_mirrored("Desk", True)
    settings.set_already_mirrored("Lid", True)
    settings.set_already_mirrored("Desk", False)
    found = again(settings, ini)
    assert not found.already_mirrored("Desk")
    assert found.already_mirrored("Lid")
    assert not found.already_mirrored(None)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "no ini at all",
        "[look]\nscheme=plaid\ntext_percent=many\ngeometry=7\n",
        "[cues]\ntones=perhaps\n[session]\nhelp=robot\nposture=flying\n",
        "[session]\nmovements=dance, leap\nmode=gallop\nown_choice=maybe\n",
        "\0\0\0",
    ],
)
def test_a_spoilt_file_counts_as_nothing_set(ini: Path, text: str) -> None:
    ini.write_text(text)
    settings = WindowSettings(ini)
    assert settings.scheme is Scheme.SYSTEM
    assert settings.text_percent in TEXT_SCALES
    assert settings.conduct == AssessmentCondition()
    assert settings.movements == HOME_MOVEMENTS
    assert settings.mode is None
    assert isinstance(settings.tones, bool)


@pytest.mark.parametrize(("asked", "given"), [(90, 100), (160, 150), (999, 200)])
def test_text_sizes_are_the_ones_offered(ini: Path, asked: int, given: int) -> None:
    settings = WindowSettings(ini)
    settings.text_percent = asked
    assert settings.text_percent == given
