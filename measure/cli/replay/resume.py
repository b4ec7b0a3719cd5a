"""Resuming a replay: results and kept tracks of earlier runs with the same settings."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from measure.batch.cache_key import ResultKeys
from measure.batch.results_file import ResultsFile
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult, ReadingSettings


@dataclass(frozen=True, slots=True, kw_only=True)
class TrackFiles:
    """Files that keep the tracks of each entry; other settings are another file.

    Attributes
    ----------
    names
        File names without ending, one for each entry.
    key
        Returns the key of an entry's result by its number.
    """

    folder: Path
    names: Sequence[str]
    key: Callable[[int], str]

    def path(self, number: int) -> Path:
        return self.folder / f"{self.names[number]}-{self.key(number)[:12]}.npz"


@dataclass(frozen=True, slots=True, kw_only=True)
class EarlierRuns:
    """What earlier runs left behind: a results file and kept tracks, each where asked for."""

    results: ResultsFile | None
    tracks: TrackFiles | None

    @classmethod
    def open(
        cls,
        results: Path | None,
        tracks: Path | None,
        entries: Sequence[ClipEntry],
        names: Sequence[str],
        settings: ReadingSettings,
    ) -> "EarlierRuns":
        """Open the results file, read what it holds, and name the files of kept tracks.

        Raises
        ------
        DataError
            As :class:`measure.batch.results_file.ResultsFile`.
        """
        if results is not None:
            results_file = ResultsFile(results, entries, settings)
            key = results_file.key
        else:
            results_file = None
            keys = ResultKeys(settings)

            def key(number: int) -> str:
                return keys.of(entries[number])

        track_files = None if tracks is None else TrackFiles(folder=tracks, names=names, key=key)
        return cls(results=results_file, tracks=track_files)

    def cached(self, number: int) -> ClipResult | None:
        """Return the result of an entry, or None where it, or its tracks, have to be made."""
        if self.results is None:
            return None
        result = self.results.cached(number)
        if result is None or result.error is not None or self.tracks is None:
            return result
        return result if self.tracks.path(number).exists() else None
