"""Source log: properties and irregularities of a live source, for the records of its readings."""

from measure.domain.acquisition import Setup
from measure.domain.measurements import Provenance
from measure.domain.movements import Movement
from measure.live.messages import SourceOpened
from measure.live.supervisor import FrameResult
from measure.pose.ensemble import ModelSet
from measure.system.versions import software


class SourceLog:
    """Counts the frames of one opening of a source and keeps its irregularities."""

    def __init__(self) -> None:
        self._opened: SourceOpened | None = None
        self._size_px: tuple[int, int] | None = None
        self._frames = 0
        self._first_s: float | None = None
        self._last_s = 0.0
        self._fps = 0.0
        self._notes: list[str] = []

    @property
    def last_s(self) -> float:
        """Time of the last frame, seconds."""
        return self._last_s

    def open(self, opened: SourceOpened) -> None:
        """Note what the source says about itself."""
        self._opened = opened

    def count(self, frame: FrameResult) -> None:
        """Count a frame."""
        self._frames += 1
        self._last_s = frame.pose.time_s
        self._first_s = self._last_s if self._first_s is None else self._first_s
        self._fps = frame.fps or self._fps
        self._size_px = frame.size_px if frame.rgb is not None else self._size_px

    def note(self, sentence: str) -> None:
        """Note an irregularity."""
        self._notes.append(sentence)

    def provenance(self, models: ModelSet, movement: Movement, setup: Setup) -> Provenance:
        """Return where a reading of this source comes from."""
        span_s = self._last_s - (self._first_s or 0.0)
        source = {
            "backend": "unknown" if self._opened is None else self._opened.backend,
            "size": "unknown" if self._size_px is None else "{}x{}".format(*self._size_px),
            "frames_read": str(self._frames),
            "looks_a_second": f"{(self._frames - 1) / span_s:.1f}" if span_s > 0 else "unknown",
            **({"measured_fps": f"{self._fps:.2f}"} if self._fps else {}),
            **({"notes": " ".join(self._notes)} if self._notes else {}),
        }
        if self._opened is not None:
            source["sample_aspect"] = f"{self._opened.sample_aspect:.4f}"
        return Provenance(
            model=models.name,
            model_hashes=models.hashes,
            passes=tuple(map(models.pass_name, models.fine())),
            software=software(),
            source=source,
            setup=setup,
        )
