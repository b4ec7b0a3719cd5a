"""Trial ledger: the captured trials of one chosen movement, their outcomes, their measurement.

Pure bookkeeping; nothing is measured here.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import Measurement, Provenance
from measure.domain.movements import MOVEMENTS, Movement, View
from measure.domain.reasons import GateResult
from measure.trials.aggregation import aggregate_refined
from measure.trials.refinement import RefinedTrial

#: Fewer scored trials than this are noted; the protocol asks for one practice and three. [project]
WANTED_TRIALS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One captured trial.

    Attributes
    ----------
    practice
        True for a practice trial, which is never scored.
    view
        What the camera saw.
    refined
        None until it is refined.
    coarse_only
        True where the fine passes could not be made, and the coarse one had to do.
    """

    trial_id: int
    practice: bool
    view: View
    refined: RefinedTrial | None = None
    coarse_only: bool = False

    @property
    def is_refused(self) -> bool:
        return self.refined is not None and not self.refined.trial.scored


class TrialLedger:
    """Trials of one movement of one side.

    Parameters
    ----------
    trials, practice
        How many are wanted.
    """

    def __init__(self, movement: Movement, side: Side, trials: int, practice: int) -> None:
        self.movement = movement
        self.side = side
        self._trials = trials
        self._practice = practice
        self._entries: list[Entry] = []
        self._discarded: list[Entry] = []
        self._last_id = 0

    @property
    def pending(self) -> int:
        """How many are still being refined."""
        return sum(entry.refined is None for entry in self._entries)

    @property
    def is_complete(self) -> bool:
        """Whether all wanted trials were scored and nothing is pending."""
        scored = sum(entry.refined is not None and not entry.is_refused for entry in self._scorable)
        return scored >= self._trials and not self.pending

    @property
    def wants_more(self) -> bool:
        """Whether another trial is to be captured; those pending count as if scored."""
        counted = sum(not entry.is_refused for entry in self._scorable)
        return counted < self._trials

    @property
    def has_captured(self) -> bool:
        """Whether there is any trial besides practice."""
        return bool(self._scorable)

    @property
    def has_refined(self) -> bool:
        """Whether any trial besides practice was refined."""
        return any(entry.refined is not None for entry in self._scorable)

    def capture(self, view: View) -> Entry:
        """Note a captured trial; it is a practice one as long as practice is wanted."""
        practised = sum(entry.practice and not entry.is_refused for entry in self._entries)
        self._last_id += 1
        entry = Entry(trial_id=self._last_id, practice=practised < self._practice, view=view)
        self._entries.append(entry)
        return entry

    def refine(self, trial_id: int, refined: RefinedTrial, *, coarse_only: bool) -> Entry | None:
        """Note what became of a trial; None if it was discarded meanwhile."""
        for entries in (self._entries, self._discarded):
            for place, entry in enumerate(entries):
                if entry.trial_id == trial_id and entry.refined is None:
                    entries[place] = replace(entry, refined=refined, coarse_only=coarse_only)
                    return entries[place] if entries is self._entries else None
        return None

    def discard_last(self) -> int | None:
        """Drop the last trial that counts; return its number, or None without one."""
        counting = [entry for entry in self._scorable if not entry.is_refused]
        if not counting:
            return None
        self._entries.remove(counting[-1])
        self._discarded.append(counting[-1])
        return counting[-1].trial_id

    def restore_last(self) -> Entry | None:
        """Put the trial that was discarded last back in its place; None where there is none.

        It stays out once as many others as are wanted have taken its place.
        """
        if not self._discarded or not self.wants_more:
            return None
        entry = self._discarded.pop()
        self._entries = sorted([*self._entries, entry], key=lambda entry: entry.trial_id)
        return entry

    def measurement(
        self, provenance: Provenance, nothing_found: GateResult | None = None
    ) -> Measurement:
        """Return the measurement that the refined trials make.

        Parameters
        ----------
        nothing_found
            Why there are none, where there are none.
        """
        entries = [entry for entry in self._scorable if entry.refined is not None]
        refined = [entry.refined for entry in entries if entry.refined is not None]
        coarse_only = sum(entry.coarse_only for entry in entries)
        if coarse_only:
            source = {**provenance.source, "trials_looked_at_once": str(coarse_only)}
            provenance = replace(provenance, source=source)
        task = MeasurementTask(self.movement, self.side, self._view(entries), provenance.setup)
        return aggregate_refined(
            refined, task, provenance, nothing_found=nothing_found, wanted_trials=WANTED_TRIALS
        )

    @property
    def _scorable(self) -> Sequence[Entry]:
        return [entry for entry in self._entries if not entry.practice]

    def _view(self, entries: Sequence[Entry]) -> View:
        return entries[-1].view if entries else MOVEMENTS[self.movement].views[0]
