"""Keys of clip results: equal where reading again would give the same numbers."""

import hashlib
from importlib.resources import files
from pathlib import Path

from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ReadingSettings
from measure.errors import LONGEST_PATH, ClipError, in_short
from measure.pose.jobs import WARMUP_RUNS
from measure.system.json_codec import to_json
from measure.system.versions import software
from measure.trials.scan import REST_EVERY, SHORT_HOLD_S
from measure.video.sampling import COARSE_HZ, FINE_HZ

#: Files of the package whose numbers enter every reading.
_TABLES = ("fitted.json", "intervals.json")
#: Begins the key of a clip that could not even be opened.
MISSING = "missing-"


class ResultKeys:
    """Maker of keys for entries read with the same settings."""

    def __init__(self, settings: ReadingSettings) -> None:
        tables = [files("measure.kinematics").joinpath(name).read_bytes() for name in _TABLES]
        self._settings = to_json(
            {
                "model": settings.models.name,
                "bundles": settings.models.hashes,
                "setup": settings.setup,
                "every_frame": settings.every_frame,
                "looks": [COARSE_HZ, FINE_HZ, REST_EVERY, SHORT_HOLD_S, WARMUP_RUNS],
                "software": software(),
                "tables": [hashlib.sha256(table).hexdigest() for table in tables],
            }
        )

    def of(self, entry: ClipEntry) -> str:
        """Return the key: of the clip's content, what it shows, model and settings.

        A clip that cannot be opened has a key of its name, which begins with "missing-".
        """
        try:
            return self._digest(content_hash(entry.clip), entry)
        except ClipError:
            return MISSING + self._digest(str(entry.clip), entry)

    def _digest(self, content: str, entry: ClipEntry) -> str:
        view = "" if entry.view is None else str(entry.view)
        parts = (content, str(entry.movement), str(entry.side), view, self._settings)
        return hashlib.sha256("\0".join(parts).encode("utf-8", "surrogatepass")).hexdigest()


def content_hash(clip: Path) -> str:
    """Return the SHA-256 of a file's bytes.

    Raises
    ------
    ClipError
        When it cannot be opened or read.
    """
    try:
        if not clip.is_file():
            raise ClipError(f"There is no file {in_short(clip, LONGEST_PATH)}. Check the name.")
        with clip.open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or error
        raise ClipError(f"{in_short(clip, LONGEST_PATH)} cannot be read: {why}.") from error
