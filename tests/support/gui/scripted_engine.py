"""An engine that plays what it is told instead of a camera, for screenshots and tests."""

import time
from dataclasses import replace

from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import Measurement, Provenance, Trial
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reasons import GateResult, Reason
from measure.live.events import LiveEvent, LiveEventKind, LiveFrame, Phase, SetupHint, Source
from measure.trials.aggregation import aggregate_trials
from tests.support.gui.drawn_person import draw_person


class ScriptedEngine:
    """Frames and events appear when `show` and the others are called.

    Attributes
    ----------
    calls
        Names of the engine's calls in order.
    """

    def __init__(self) -> None:
        self.calls: list[str] = []
        self.source: Source | None = None
        self.closed = False
        self.movement, self.side = Movement.FLEXION, Side.RIGHT
        self._wanted = (3, 1)
        self._next_id = 1
        self._frame_id = 0
        self._pending: list[tuple[int, bool, float]] = []
        self._trials: list[tuple[int, Trial]] = []
        self._discarded: list[tuple[int, Trial]] = []
        self._practiced = 0
        self._newest: LiveFrame | None = None
        self._events: list[LiveEvent] = []

    # -- the engine ---------------------------------------------------------------------------

    def start(self, source: Source) -> None:
        self.calls.append("start")
        self.source = source
        self.show(Phase.SEARCHING_FOR_PERSON)

    def choose(self, movement: Movement, side: Side, trials: int, practice: int) -> None:
        self.calls.append("choose")
        self.movement, self.side, self._wanted = movement, side, (trials, practice)
        self._pending, self._trials, self._practiced = [], [], 0
        self.show(Phase.WAIT_NEUTRAL)

    def newest_frame(self) -> LiveFrame | None:
        newest, self._newest = self._newest, None
        return newest

    def events(self) -> list[LiveEvent]:
        events, self._events = self._events, []
        return events

    def pause(self) -> None:
        self.calls.append("pause")
        self.happen(LiveEventKind.PAUSED)
        self.show(Phase.PAUSED)

    def resume(self) -> None:
        self.calls.append("resume")
        self.happen(LiveEventKind.RESUMED)
        self.show(Phase.WAIT_NEUTRAL)

    def take_position(self) -> None:
        self.calls.append("take_position")

    def discard_last(self) -> None:
        self.calls.append("discard_last")
        if self._pending:
            trial_id, *_ = self._pending.pop()
        elif self._trials:
            trial_id, trial = self._trials.pop()
            self._discarded.append((trial_id, trial))
        else:
            return
        self.happen(
            LiveEventKind.TRIAL_DISCARDED, trial_id=trial_id, measurement=self.measurement()
        )

    def restore_last(self) -> None:
        self.calls.append("restore_last")
        if self._discarded:
            trial_id, trial = self._discarded.pop()
            self._trials.append((trial_id, trial))
            self.happen(
                LiveEventKind.TRIAL_RESTORED,
                trial_id=trial_id,
                trial=trial,
                measurement=self.measurement(),
            )

    def finish_movement(self) -> None:
        self.calls.append("finish_movement")
        self.settle()
        self.happen(LiveEventKind.MEASUREMENT_DONE, measurement=self._made(self._trials))

    def close(self, timeout_s: float) -> Measurement | None:
        self.calls.append("close")
        self.closed = True
        self.settle()
        return self.measurement()

    # -- the script ---------------------------------------------------------------------------

    def show(
        self,
        phase: Phase,
        value: float | None = None,
        *,
        hold_share: float = 0.0,
        reasons: tuple[Reason, ...] = (),
        hints: tuple[SetupHint, ...] = (),
        seen: bool = True,
    ) -> None:
        """Make a frame the newest."""
        picture, points = draw_person(self.movement, self.side, value or 0.0)
        self._frame_id += 1
        self._newest = LiveFrame(
            picture=picture,
            frame_id=self._frame_id,
            time_s=self._frame_id / 30,
            phase=phase,
            points_px=points if seen else None,
            value=value,
            reasons=reasons,
            hold_share=hold_share,
            setup_hints=hints,
            quality=0.9 if seen else None,
        )

    def happen(
        self,
        kind: LiveEventKind,
        *,
        trial_id: int = 0,
        practice: bool = False,
        value: float | None = None,
        trial: Trial | None = None,
        measurement: Measurement | None = None,
        side: Side | None = None,
        trouble: SourceFault | None = None,
        text: str = "",
    ) -> None:
        """Make an event happen."""
        self._events.append(
            LiveEvent(
                kind=kind,
                trial_id=trial_id,
                practice=practice,
                value=value,
                trial=trial,
                measurement=measurement,
                side=side,
                trouble=trouble,
                text=text,
            )
        )

    def capture(self, value: float) -> None:
        """Capture a trial; the practice ones come first."""
        practice = self._practiced < self._wanted[1]
        self._practiced += practice
        self._pending.append((self._next_id, practice, value))
        self.happen(
            LiveEventKind.TRIAL_CAPTURED, trial_id=self._next_id, practice=practice, value=value
        )
        self._next_id += 1
        self.show(Phase.REFINING)

    def settle(self, refused_for: tuple[Reason, ...] = ()) -> None:
        """Settle or refuse what was captured; the movement is done when enough was scored."""
        for trial_id, practice, value in self._pending:
            trial = self._trial(value, refused_for)
            if not practice:
                self._trials.append((trial_id, trial))
            kind = LiveEventKind.TRIAL_REFUSED if refused_for else LiveEventKind.TRIAL_REFINED
            measurement = None if practice else self.measurement()
            self.happen(
                kind, trial_id=trial_id, practice=practice, trial=trial, measurement=measurement
            )
        self._pending = []
        scored = sum(trial.scored for _, trial in self._trials)
        if scored >= self._wanted[0] and self.calls[-1] != "finish_movement":
            self.happen(LiveEventKind.MEASUREMENT_DONE, measurement=self.measurement())
            self.show(Phase.DONE)
        else:
            self.show(Phase.REST)

    def measurement(self) -> Measurement | None:
        """Return what the trials so far make."""
        return self._made(self._trials) if self._trials else None

    def _made(self, trials: list[tuple[int, Trial]]) -> Measurement:
        """Return what trials make; of none a refusal, as of a movement that was never seen."""
        return aggregate_trials(
            [trial for _, trial in trials],
            MeasurementTask(self.movement, self.side, MOVEMENTS[self.movement].views[0]),
            Provenance(model="heavy", passes=("heavy", "heavy mirrored")),
            nothing_found=GateResult(refused_for=(Reason.NO_MOVE,)),
            wanted_trials=self._wanted[0],
        )

    def _trial(self, value: float, refused_for: tuple[Reason, ...]) -> Trial:
        half = 5.0 if MOVEMENTS[self.movement].unit is Unit.DEGREES else 0.12
        start = 3.0 * len(self._trials)
        trial = Trial(
            value=value,
            low=value - half,
            high=value + half,
            start_s=start,
            end_s=start + 3.0,
            hold_start_s=start + 1.1,
            hold_end_s=start + 2.1,
            spread=0.6,
        )
        if not refused_for:
            return trial
        return replace(trial, value=None, low=None, high=None, spread=None, refused_for=refused_for)


class PlayingEngine(ScriptedEngine):
    """Moves by itself by the clock: a movement's trials follow each other in quick time.

    Parameters
    ----------
    trial_s
        How long one trial lasts, seconds.
    """

    def __init__(self, trial_s: float = 1.0) -> None:
        super().__init__()
        self._trial_s = trial_s
        self._since_s: float | None = None
        self._paused = False

    def choose(self, movement: Movement, side: Side, trials: int, practice: int) -> None:
        super().choose(movement, side, trials, practice)
        self._since_s, self._paused = time.monotonic(), False

    def pause(self) -> None:
        super().pause()
        self._paused = True

    def resume(self) -> None:
        super().resume()
        self._since_s, self._paused = time.monotonic(), False

    def finish_movement(self) -> None:
        self._since_s = None
        super().finish_movement()

    def newest_frame(self) -> LiveFrame | None:
        if self._since_s is not None and not self._paused:
            self._move((time.monotonic() - self._since_s) / self._trial_s)
        return super().newest_frame()

    def _move(self, share: float) -> None:
        """Show where a trial is that is done to a share of 0..1."""
        end = 120.0 if MOVEMENTS[self.movement].unit is Unit.DEGREES else 0.6
        if share < 0.2:
            self.show(Phase.WAIT_NEUTRAL, 0.0)
        elif share < 0.5:
            self.show(Phase.MOVE, end * (share - 0.2) / 0.3)
        elif share < 0.8:
            self.show(Phase.HOLD, end, hold_share=(share - 0.5) / 0.3)
        elif share < 1.0:
            self.show(Phase.RETURN, end * (1.0 - share) / 0.2, hold_share=1.0)
        else:
            self._since_s = time.monotonic()
            self.capture(end)
            self.settle()
            done = sum(trial.scored for _, trial in self._trials)
            if done >= self._wanted[0]:
                self._since_s = None
