"""Movement run: one chosen movement, from its choice to its measurement.

It captures trials, has them refined, and ends when the wanted ones are scored or no more are
wanted. It knows no source: what depends on one is given by the session.
"""

from typing import Protocol

from measure.domain.acquisition import Setup
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import Measurement, Provenance
from measure.domain.movements import Movement, View
from measure.domain.reasons import GateResult
from measure.live.events import LiveEvent, LiveEventKind, Phase
from measure.live.trial_detector import CapturedTrial, OnlineTrialDetector
from measure.live.trial_ledger import TrialLedger
from measure.live.trial_refiner import RefineRequest, RefineResult, TrialRefiner, refine_from_coarse


class Surroundings(Protocol):
    """What a run needs from the session around it."""

    @property
    def last_s(self) -> float:
        """Time of the source's last frame, seconds."""

    def happen(self, event: LiveEvent) -> None:
        """Report an event."""

    def provenance(self, movement: Movement) -> Provenance:
        """Return where a measurement that is made now comes from."""


class MovementRun:
    """One chosen movement.

    Parameters
    ----------
    number
        Tells the runs of one session apart.
    trials, practice
        How many scored and how many practice trials are wanted.
    session
        The session that it belongs to.

    Attributes
    ----------
    view
        As recognised in the last captured trial, or None before.
    detector
        Searches for trials; None until the first frame, and after a break.
    is_done
        Whether its measurement was reported.
    """

    def __init__(
        self,
        number: int,
        movement: Movement,
        side: Side,
        trials: int,
        practice: int,
        session: Surroundings,
    ) -> None:
        self.movement = movement
        self.view: View | None = None
        self.detector: OnlineTrialDetector | None = None
        self.is_done = False
        self._number = number
        self._side = side
        self._session = session
        self._ledger = TrialLedger(movement, side, trials, practice)
        self._refusal = GateResult()
        self._paused = False
        self._finishing = False
        self._unrefined: dict[int, RefineRequest] = {}
        self._discarded: dict[int, RefineRequest] = {}

    @property
    def is_measuring(self) -> bool:
        """Whether trials are searched for at this moment."""
        return self._ledger.wants_more and not (self._paused or self._finishing or self.is_done)

    @property
    def pending(self) -> int:
        """How many captured trials are not refined yet."""
        return 0 if self.is_done else self._ledger.pending

    def phase(self, phase: Phase) -> Phase:
        """Return the phase to show, given the one that the frame shows."""
        if self.is_done:
            return Phase.DONE
        if self._paused:
            return Phase.PAUSED
        full = self._finishing or not self._ledger.wants_more
        if full or (phase is Phase.REST and self._ledger.pending):
            return Phase.REFINING
        return phase

    def detector_for(self, setup: Setup, size_px: tuple[int, int]) -> OnlineTrialDetector:
        """Return the detector, made for frames of a size where there is none yet."""
        if self.detector is None:
            task = MeasurementTask(self.movement, self._side, self.view, setup)
            self.detector = OnlineTrialDetector(task, size_px)
        return self.detector

    # -- orders -------------------------------------------------------------------------------

    def pause(self) -> None:
        """Search for no trials until :meth:`resume`."""
        if not self._paused:
            self._paused = True
            self._session.happen(LiveEvent(kind=LiveEventKind.PAUSED))

    def resume(self) -> None:
        """Go on; an interrupted trial starts anew."""
        if self._paused:
            self._paused = False
            if self.detector is not None:
                self.detector.start_anew(self._session.last_s)
            self._session.happen(LiveEvent(kind=LiveEventKind.RESUMED))

    def toggle_pause(self) -> None:
        """Pause or go on, until the movement is done."""
        if not self.is_done:
            if self._paused:
                self.resume()
            else:
                self.pause()

    def discard_last(self) -> None:
        """Drop the last trial that counts."""
        if self.is_done:
            return
        trial_id = self._ledger.discard_last()
        if trial_id is not None:
            if request := self._unrefined.pop(trial_id, None):
                self._discarded[trial_id] = request
            self._session.happen(
                LiveEvent(
                    kind=LiveEventKind.TRIAL_DISCARDED,
                    trial_id=trial_id,
                    measurement=self._measurement_so_far(),
                )
            )

    def restore_last(self) -> None:
        """Put back the trial that was discarded last, unless enough others took its place."""
        entry = None if self.is_done else self._ledger.restore_last()
        if entry is None:
            return
        request = self._discarded.pop(entry.trial_id, None)
        if request is not None and entry.refined is None:
            self._unrefined[entry.trial_id] = request
        self._session.happen(
            LiveEvent(
                kind=LiveEventKind.TRIAL_RESTORED,
                trial_id=entry.trial_id,
                trial=None if entry.refined is None else entry.refined.trial,
                measurement=self._measurement_so_far(),
            )
        )
        self._end_if_refined()

    def finish(self) -> None:
        """Take no more trials; the movement is done when those captured are refined."""
        if self.is_done:
            return
        if self.detector is not None:
            self._refusal = self.detector.gate_result
        self._finishing = True
        self._end_if_refined()

    def left_over(self) -> Measurement | None:
        """Refine what is pending from the coarse pass, and return what the trials of an
        unfinished movement make; None without any.
        """
        for request in list(self._unrefined.values()):
            self.take_refined(refine_from_coarse(request))
        if self.is_done or not self._ledger.has_captured:
            return None
        return self._ledger.measurement(self._session.provenance(self.movement))

    # -- trials -------------------------------------------------------------------------------

    def capture(self, captured: CapturedTrial, refiner: TrialRefiner) -> None:
        """Take a trial that the detector has captured, and have it refined."""
        self.view = captured.task.known_view
        entry = self._ledger.capture(self.view)
        request = RefineRequest(chosen=self._number, trial_id=entry.trial_id, captured=captured)
        self._unrefined[entry.trial_id] = request
        refiner.put(request)
        self._session.happen(
            LiveEvent(
                kind=LiveEventKind.TRIAL_CAPTURED, trial_id=entry.trial_id, practice=entry.practice
            )
        )

    def take_refined(self, result: RefineResult) -> None:
        """Take a refined trial; one of another run, or a discarded one, is passed over."""
        if result.chosen != self._number:
            return
        self._unrefined.pop(result.trial_id, None)
        entry = self._ledger.refine(result.trial_id, result.refined, coarse_only=result.coarse_only)
        if entry is None:
            return
        self._session.happen(
            LiveEvent(
                kind=LiveEventKind.TRIAL_REFUSED
                if entry.is_refused
                else LiveEventKind.TRIAL_REFINED,
                trial_id=entry.trial_id,
                practice=entry.practice,
                trial=result.refined.trial,
                measurement=self._measurement_so_far(),
            )
        )
        self._end_if_refined()

    def _end_if_refined(self) -> None:
        """Report the measurement, once the movement is done."""
        full = self._ledger.is_complete or (self._finishing and not self._ledger.pending)
        if full and not self.is_done:
            self.is_done = True
            self.detector = None
            measurement = self._ledger.measurement(
                self._session.provenance(self.movement), self._refusal
            )
            self._session.happen(
                LiveEvent(kind=LiveEventKind.MEASUREMENT_DONE, measurement=measurement)
            )

    def _measurement_so_far(self) -> Measurement | None:
        if not self._ledger.has_refined:
            return None
        return self._ledger.measurement(self._session.provenance(self.movement))
