"""Window settings, kept in an ini file between starts.

Nothing here changes a number, except what describes the source; that is stored again with each
session.
"""

import datetime as dt
from enum import StrEnum
from pathlib import Path
from typing import TypeVar

from PySide6.QtCore import QByteArray, QSettings

from gui.protocol.plan import HOME_MOVEMENTS, SessionMode
from gui.protocol.reminders import times_in
from gui.style.palette import Scheme
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, Assistance, BodyPosition

#: Folders of clips that are remembered. [technical]
MOST_RECENT = 4
TEXT_SCALES = (100, 125, 150, 175, 200)

AnyEnum = TypeVar("AnyEnum", bound=StrEnum)


class WindowSettings:
    """Typed access to one ini file; a value that makes no sense counts as not set."""

    def __init__(self, path: Path) -> None:
        self._ini = QSettings(str(path), QSettings.Format.IniFormat)

    def save(self) -> None:
        """Write to disk now."""
        self._ini.sync()

    # -- look ---------------------------------------------------------------------------------

    @property
    def scheme(self) -> Scheme:
        return self._choice("look/scheme", Scheme, Scheme.SYSTEM)

    @scheme.setter
    def scheme(self, scheme: Scheme) -> None:
        self._ini.setValue("look/scheme", scheme.value)

    @property
    def text_percent(self) -> int:
        """One of TEXT_SCALES."""
        percent = self._number("look/text_percent", 100)
        return min(TEXT_SCALES, key=lambda item: abs(item - percent))

    @text_percent.setter
    def text_percent(self, percent: int) -> None:
        self._ini.setValue("look/text_percent", percent)

    @property
    def language(self) -> str:
        """A code of :data:`gui.text.language.LANGUAGES`, or empty for the system's language."""
        return self._text("look/language")

    @language.setter
    def language(self, code: str) -> None:
        self._ini.setValue("look/language", code)

    @property
    def geometry(self) -> QByteArray:
        value = self._value("look/geometry", QByteArray(), QByteArray)
        return value if isinstance(value, QByteArray) else QByteArray()

    @geometry.setter
    def geometry(self, geometry: QByteArray) -> None:
        self._ini.setValue("look/geometry", geometry)

    # -- clips --------------------------------------------------------------------------------

    @property
    def recent_clips(self) -> tuple[Path, ...]:
        """Folders and manifests that were opened last and are still there, the newest first."""
        names = self._text("clips/recent").split("\n")
        return tuple(Path(name) for name in names if name and Path(name).exists())

    def add_recent_clips(self, path: Path) -> None:
        """Put a folder or manifest first."""
        others = [other for other in self.recent_clips if other != path]
        names = map(str, [path, *others][:MOST_RECENT])
        self._ini.setValue("clips/recent", "\n".join(names))

    # -- backups ------------------------------------------------------------------------------

    @property
    def latest_backup(self) -> tuple[str, dt.date] | None:
        """The name of the file of the latest backup made in the window, and its day."""
        day, _, name = self._text("backups/latest").partition(" ")
        try:
            return (name, dt.date.fromisoformat(day)) if name else None
        except ValueError:
            return None

    @latest_backup.setter
    def latest_backup(self, made: tuple[str, dt.date] | None) -> None:
        self._ini.setValue("backups/latest", f"{made[1].isoformat()} {made[0]}" if made else "")

    # -- cues ---------------------------------------------------------------------------------

    @property
    def tones(self) -> bool:
        return self._flag("cues/tones", True)

    @tones.setter
    def tones(self, wanted: bool) -> None:
        self._ini.setValue("cues/tones", wanted)

    @property
    def speech(self) -> bool:
        return self._flag("cues/speech", True)

    @speech.setter
    def speech(self, wanted: bool) -> None:
        self._ini.setValue("cues/speech", wanted)

    # -- reminders ----------------------------------------------------------------------------

    @property
    def reminders(self) -> bool:
        """Whether to remind of the exercises; off until somebody wants it."""
        return self._flag("reminders/wanted", False)

    @reminders.setter
    def reminders(self, wanted: bool) -> None:
        self._ini.setValue("reminders/wanted", wanted)

    @property
    def reminder_times(self) -> tuple[dt.time, ...]:
        """Local times of the day, the earliest first."""
        try:
            return times_in(self._text("reminders/times"))
        except ValueError:
            return ()

    @reminder_times.setter
    def reminder_times(self, times: tuple[dt.time, ...]) -> None:
        self._ini.setValue("reminders/times", " ".join(f"{time:%H:%M}" for time in times))

    # -- source -------------------------------------------------------------------------------

    @property
    def camera(self) -> str | None:
        """The camera's name, never its number, which changes with what is plugged in."""
        return self._text("source/camera") or None

    @camera.setter
    def camera(self, name: str) -> None:
        self._ini.setValue("source/camera", name)

    def already_mirrored(self, camera: str | None) -> bool:
        """Return whether this camera delivers a mirror image."""
        return (camera or "") in self._names("source/already_mirrored")

    def set_already_mirrored(self, camera: str | None, mirrored: bool) -> None:
        others = [name for name in self._names("source/already_mirrored") if name != (camera or "")]
        names = [*others, camera or ""] if mirrored else others
        self._ini.setValue("source/already_mirrored", names)

    @property
    def mirror_preview(self) -> bool:
        return self._flag("source/mirror_preview", True)

    @mirror_preview.setter
    def mirror_preview(self, wanted: bool) -> None:
        self._ini.setValue("source/mirror_preview", wanted)

    # -- session ------------------------------------------------------------------------------

    @property
    def person_id(self) -> str | None:
        return self._text("session/person") or None

    @person_id.setter
    def person_id(self, person_id: str) -> None:
        self._ini.setValue("session/person", person_id)

    @property
    def conduct(self) -> AssessmentCondition:
        return AssessmentCondition(
            help=self._choice("session/help", Assistance, Assistance.NONE),
            posture=self._choice("session/posture", BodyPosition, BodyPosition.STANDING),
        )

    @conduct.setter
    def conduct(self, conduct: AssessmentCondition) -> None:
        self._ini.setValue("session/help", conduct.help.value)
        self._ini.setValue("session/posture", conduct.posture.value)

    @property
    def movements(self) -> tuple[Movement, ...]:
        """What a session at home consists of, in the table's order."""
        names = self._names("session/movements")
        chosen = tuple(movement for movement in Movement if movement.value in names)
        return chosen or HOME_MOVEMENTS

    @movements.setter
    def movements(self, movements: tuple[Movement, ...]) -> None:
        self._ini.setValue("session/movements", [movement.value for movement in movements])

    @property
    def mode(self) -> SessionMode | None:
        """Whether this computer is used at home or in a clinic; None until someone says it."""
        text = self._text("session/mode")
        return SessionMode(text) if text in set(SessionMode) else None

    @mode.setter
    def mode(self, mode: SessionMode | None) -> None:
        self._ini.setValue("session/mode", "" if mode is None else mode.value)

    @property
    def own_choice(self) -> bool:
        """Whether the person chooses the movements of a session instead of the plan."""
        return self._flag("session/own_choice", False)

    @own_choice.setter
    def own_choice(self, wanted: bool) -> None:
        self._ini.setValue("session/own_choice", wanted)

    # -- reading, with the type said: an ini file holds text only ----------------------------

    def _value(self, key: str, default: object, kind: type) -> object:
        try:
            return self._ini.value(key, default, type=kind)
        except (TypeError, ValueError):  # such as bytes that are no text
            return default

    def _text(self, key: str) -> str:
        return str(self._value(key, "", str))

    def _flag(self, key: str, default: bool) -> bool:
        return bool(self._value(key, default, bool))

    def _number(self, key: str, default: int) -> int:
        try:
            return int(self._text(key) or default)
        except ValueError:
            return default

    def _names(self, key: str) -> list[str]:
        values = self._value(key, [], list)
        return [str(value) for value in values] if isinstance(values, list) else []

    def _choice(self, key: str, kind: type[AnyEnum], default: AnyEnum) -> AnyEnum:
        text = self._text(key)
        return kind(text) if text in {item.value for item in kind} else default
