"""What the live engine decides, on a stick figure: no threads, no processes."""

from dataclasses import replace

import numpy as np
import pytest

from measure.camera.faults import SourceFault
from measure.domain.landmarks import Landmark, Side
from measure.domain.measurements import Status
from measure.domain.movements import Movement, View
from measure.domain.reasons import Reason
from measure.errors import ModelError
from measure.live.events import LiveEvent, LiveEventKind, LiveFrame, Phase, Source
from measure.live.messages import Ended, FaultChanged, SourceOpened
from measure.live.session import SLEPT_S, Backends, LiveSession
from measure.live.trial_refiner import COARSE_ONLY, RefineRequest, RefineResult, refine_from_coarse
from measure.pose.ensemble import ModelSet
from measure.pose_models.catalogue import ModelQuality
from tests.support.live_figures import RATE_HZ, empty_bundle, seen_frames
from tests.support.stick_figure import elevation_track, raise_and_hold

MODELS = ModelSet(
    name="heavy",
    bundles={each: empty_bundle(each) for each in (ModelQuality.FULL, ModelQuality.HEAVY)},
)


class Desk:
    """A session with everything around it faked; time is set by hand."""

    def __init__(self, *, models=MODELS):
        self.now_s = 100.0
        self.wall_s = 1e9
        self.opened = []
        self.used = []
        self.orders: list[RefineRequest] = []
        self.frames: list[LiveFrame] = []
        self.events: list[LiveEvent] = []
        self._models = models
        self.session = LiveSession(
            self._backends,
            self.frames.append,
            self.events.append,
            clock=lambda: self.now_s,
            wall=lambda: self.wall_s,
        )

    def _backends(self):
        if self._models is None:
            raise ModelError("The pose model is missing. Run: thawline model.")
        return Backends(models=self._models, supervisor=self, refiner=self)

    def open(self, order):
        self.opened.append(order)

    def use(self, quality):
        self.used.append(quality)

    def put(self, order):
        self.orders.append(order)

    @property
    def kinds(self):
        return [each.kind for each in self.events]

    def begin(self, movement=Movement.FLEXION, side=Side.RIGHT, trials=3, practice=0):
        self.session.open(Source())
        self.session.choose(movement, side, trials, practice)

    def play(self, series, *, start_s=0.0, movement=Movement.FLEXION, view=View.SIDE, **more):
        track = elevation_track(
            series, movement, Side.RIGHT, view, rate_hz=RATE_HZ, trunk_px=110, **more
        )
        session = len(self.opened)
        for seen in seen_frames(track, session=session, start_s=start_s):
            self.session.take(seen)
        return start_s + len(series) / RATE_HZ

    def settle_all(self):
        """Settle what was captured, as the settling thread would."""
        orders, self.orders = self.orders, []
        for order in orders:
            news = refine_from_coarse(order)
            self.session.take(
                RefineResult(
                    chosen=news.chosen,
                    trial_id=news.trial_id,
                    refined=news.refined,
                    coarse_only=False,
                )
            )


def one_raise(peak=100.0, **more):
    return raise_and_hold(peak, rate_hz=RATE_HZ, after_s=2.0, **more)


def test_a_position_that_is_not_held_still_is_said_to_be_so():
    desk = Desk()
    desk.begin()
    rising = raise_and_hold(90.0)[: round(2.4 * RATE_HZ)]
    desk.play(rising)
    desk.session.take_position()
    assert desk.kinds[-1] is LiveEventKind.NOT_STILL
    assert desk.orders == []


def test_practice_and_three_trials_make_a_measurement():
    desk = Desk()
    desk.begin(practice=1)
    end_s = 0.0
    for peak in (70, 100, 104, 102):
        end_s = desk.play(one_raise(peak), start_s=end_s)
        desk.settle_all()
    captured = [each for each in desk.events if each.kind is LiveEventKind.TRIAL_CAPTURED]
    assert [(each.trial_id, each.practice) for each in captured] == [
        (1, True),
        (2, False),
        (3, False),
        (4, False),
    ]
    done = desk.events[-1]
    assert done.kind is LiveEventKind.MEASUREMENT_DONE
    assert done.measurement.status is Status.READING
    assert len(done.measurement.trials) == 3
    values = sorted(trial.value for trial in done.measurement.trials)
    assert done.measurement.value == values[1]
    assert Reason.FEW_TRIALS not in done.measurement.reasons
    assert desk.session.end() is None


def test_each_settled_trial_comes_with_the_measurement_so_far():
    desk = Desk()
    desk.begin()
    desk.play(one_raise())
    desk.settle_all()
    settled = desk.events[-1]
    assert settled.kind is LiveEventKind.TRIAL_REFINED
    assert settled.trial.value == settled.measurement.value
    assert Reason.FEW_TRIALS in settled.measurement.reasons


def test_a_practice_trial_makes_no_measurement():
    desk = Desk()
    desk.begin(practice=1)
    desk.play(one_raise())
    desk.settle_all()
    assert desk.events[-1].practice
    assert desk.events[-1].measurement is None
    assert desk.session.end() is None


def test_a_refused_trial_is_told_with_its_reason_and_another_is_taken():
    desk = Desk()
    desk.begin(trials=1)
    end_s = desk.play(one_raise(), elbow_bend_deg=60.0)
    desk.settle_all()
    refused = desk.events[-1]
    assert refused.kind is LiveEventKind.TRIAL_REFUSED
    assert Reason.ELBOW_BENT in refused.trial.refused_for
    desk.play(one_raise(), start_s=end_s)
    desk.settle_all()
    assert desk.kinds[-2:] == [LiveEventKind.TRIAL_REFINED, LiveEventKind.MEASUREMENT_DONE]


def test_no_more_trials_are_taken_than_asked_for():
    desk = Desk()
    desk.begin(trials=2)
    end_s = 0.0
    for _ in range(4):
        end_s = desk.play(one_raise(), start_s=end_s)
    assert len(desk.orders) == 2
    assert desk.frames[-1].phase is Phase.REFINING


def test_phases_as_the_window_sees_them():
    desk = Desk()
    desk.session.open(Source())
    desk.play(np.zeros(20))
    assert desk.frames[-1].phase is Phase.REST
    desk.session.choose(Movement.FLEXION, Side.RIGHT, 1, 0)
    desk.play(one_raise(hold_s=2.5), start_s=5.0)
    seen = [frame.phase for frame in desk.frames]
    order = [Phase.MOVE, Phase.HOLD, Phase.RETURN, Phase.REFINING]
    places = [seen.index(phase) for phase in order]
    assert places == sorted(places)
    desk.settle_all()
    desk.play(np.zeros(10), start_s=30.0)
    assert desk.frames[-1].phase is Phase.DONE


def test_frames_carry_points_value_and_rising_numbers():
    desk = Desk()
    desk.begin()
    desk.play(one_raise())
    numbers = [frame.frame_id for frame in desk.frames]
    assert numbers == sorted(set(numbers))
    top = max(frame.value for frame in desk.frames if frame.value is not None)
    assert top == pytest.approx(100, abs=8)
    last = desk.frames[-1]
    # The picture is a tenth as wide as the source: points are those of the picture.
    assert last.points_px[Landmark.NOSE, 0] == pytest.approx(64 * 0.5, abs=6)
    assert last.quality == pytest.approx(1.0)


def test_discarding_takes_the_last_trial_out_and_asks_for_another():
    desk = Desk()
    desk.begin(trials=2)
    end_s = desk.play(one_raise(80))
    desk.settle_all()
    end_s = desk.play(one_raise(110), start_s=end_s)
    desk.session.movement.discard_last()
    dropped = desk.events[-1]
    assert dropped.kind is LiveEventKind.TRIAL_DISCARDED
    assert dropped.trial_id == 2
    assert len(dropped.measurement.trials) == 1
    desk.settle_all()  # its settling comes too late
    assert desk.events[-1] is dropped
    desk.play(one_raise(82), start_s=end_s)
    desk.settle_all()
    assert desk.kinds[-1] is LiveEventKind.MEASUREMENT_DONE
    desk.session.movement.discard_last()
    assert desk.kinds[-1] is LiveEventKind.MEASUREMENT_DONE


def test_a_discarded_trial_can_be_put_back_refined_or_not():
    desk = Desk()
    desk.begin(trials=2)
    end_s = desk.play(one_raise(80))
    desk.settle_all()
    movement = desk.session.movement
    movement.discard_last()
    movement.restore_last()
    restored = desk.events[-1]
    assert restored.kind is LiveEventKind.TRIAL_RESTORED
    assert restored.trial.value == pytest.approx(80, abs=8)
    assert len(restored.measurement.trials) == 1
    desk.play(one_raise(110), start_s=end_s)
    movement.discard_last()
    movement.restore_last()
    assert desk.events[-1].trial is None  # it was not refined yet
    desk.settle_all()
    assert desk.kinds[-1] is LiveEventKind.MEASUREMENT_DONE
    assert len(desk.events[-1].measurement.trials) == 2
    movement.restore_last()
    assert desk.kinds[-1] is LiveEventKind.MEASUREMENT_DONE


def test_finishing_settles_what_was_captured_first():
    desk = Desk()
    desk.begin()
    desk.play(one_raise())
    desk.session.movement.finish()
    assert LiveEventKind.MEASUREMENT_DONE not in desk.kinds
    desk.settle_all()
    assert desk.kinds[-1] is LiveEventKind.MEASUREMENT_DONE
    assert len(desk.events[-1].measurement.trials) == 1


def test_finishing_without_a_trial_says_why_there_is_none():
    desk = Desk()
    desk.begin()
    desk.play(np.zeros(60))
    desk.session.movement.finish()
    measurement = desk.events[-1].measurement
    assert measurement.status is Status.REFUSED
    assert Reason.NO_MOVE in measurement.reasons


def test_closing_refines_pending_trials_from_the_coarse_pass_with_a_wide_interval():
    desk = Desk()
    desk.begin()
    desk.play(one_raise())
    fine = Desk()
    fine.begin()
    fine.play(one_raise())
    fine.settle_all()
    left = desk.session.end()
    assert left.value == pytest.approx(fine.events[-1].measurement.value)
    assert left.high - left.low >= (
        fine.events[-1].measurement.high - fine.events[-1].measurement.low
    )
    assert left.provenance.source["trials_looked_at_once"] == "1"
    assert COARSE_ONLY not in MODELS.bundles


def test_pausing_takes_no_trials_and_an_interrupted_one_begins_anew():
    desk = Desk()
    desk.begin()
    series = one_raise()
    half = len(series) // 2
    end_s = desk.play(series[:half])
    desk.session.movement.pause()
    desk.session.movement.pause()
    desk.session.movement.resume()
    end_s = desk.play(series[half:], start_s=end_s)
    assert desk.orders == []
    desk.session.movement.pause()
    end_s = desk.play(one_raise(), start_s=end_s)
    assert desk.frames[-1].phase is Phase.PAUSED
    assert desk.orders == []
    desk.session.movement.resume()
    desk.play(one_raise(), start_s=end_s)
    assert len(desk.orders) == 1
    assert [
        kind for kind in desk.kinds if kind in (LiveEventKind.PAUSED, LiveEventKind.RESUMED)
    ] == [
        LiveEventKind.PAUSED,
        LiveEventKind.RESUMED,
    ] * 2


def hand_up(series_length, side):
    """An abduction track at rest whose one hand is raised after a second, for two seconds."""
    track = elevation_track(
        np.zeros(series_length),
        Movement.ABDUCTION,
        Side.RIGHT,
        View.FRONT,
        rate_hz=RATE_HZ,
        trunk_px=110,
    )
    points = track.points_px.copy()
    mark = Landmark.LEFT_WRIST if side is Side.LEFT else Landmark.RIGHT_WRIST
    points[30:90, mark, 1] = points[0, Landmark.NOSE, 1] - 60
    return replace(track, points_px=points)


@pytest.mark.parametrize(
    ("side", "expected"),
    [
        (Side.LEFT, [LiveEventKind.HAND_RAISED, LiveEventKind.PAUSED]),
        (Side.RIGHT, []),
    ],
)
def test_the_other_hand_raised_pauses(side, expected):
    desk = Desk()
    desk.begin(Movement.ABDUCTION)
    for seen in seen_frames(hand_up(120, side)):
        desk.session.take(seen)
    assert desk.kinds == expected


def test_either_hand_is_told_while_no_movement_is_chosen():
    desk = Desk()
    desk.session.open(Source())
    for seen in seen_frames(hand_up(120, Side.RIGHT)):
        desk.session.take(seen)
    assert [(each.kind, each.side) for each in desk.events] == [
        (LiveEventKind.HAND_RAISED, Side.RIGHT)
    ]


def test_a_new_source_keeps_the_trials_captured_so_far():
    desk = Desk()
    desk.begin(trials=2)
    desk.play(one_raise())
    desk.settle_all()
    desk.session.open(Source())
    assert desk.opened[-1].session == 2
    desk.play(one_raise(104))
    desk.settle_all()
    assert desk.kinds[-1] is LiveEventKind.MEASUREMENT_DONE
    assert len(desk.events[-1].measurement.trials) == 2


def test_news_of_a_source_that_was_left_is_passed_over():
    desk = Desk()
    desk.begin()
    desk.session.open(Source())
    track = elevation_track(np.zeros(5), Movement.FLEXION, Side.RIGHT, View.SIDE)
    for seen in seen_frames(track, session=1):
        desk.session.take(seen)
    desk.session.take(FaultChanged(session=1, trouble=SourceFault.CAMERA_BLACK))
    assert desk.frames == []
    assert desk.events == []


def test_trouble_breaks_a_trial_off_and_recovery_is_told_once():
    desk = Desk()
    desk.begin()
    series = one_raise()
    half = len(series) // 2
    desk.play(series[:half])
    desk.session.take(
        FaultChanged(session=1, trouble=SourceFault.CAMERA_STUCK, text="stands still")
    )
    desk.session.take(FaultChanged(session=1, trouble=None))
    desk.session.take(FaultChanged(session=1, trouble=None))
    desk.play(series[half:], start_s=60.0)
    assert desk.kinds == [LiveEventKind.TROUBLE, LiveEventKind.RECOVERED]
    assert desk.events[0].trouble is SourceFault.CAMERA_STUCK
    assert desk.events[0].text == "stands still"
    assert desk.orders == []


def test_a_clip_that_ends_gives_its_last_trial_and_says_so():
    desk = Desk()
    desk.begin()
    desk.play(one_raise()[: round(4.8 * RATE_HZ)])
    desk.session.take(Ended(session=1))
    assert desk.kinds == [LiveEventKind.TRIAL_CAPTURED, LiveEventKind.TROUBLE]
    assert desk.events[-1].trouble is SourceFault.CLIP_ENDED


def test_without_a_model_the_window_is_told_at_once():
    desk = Desk(models=None)
    desk.begin()
    assert desk.events[0].trouble is SourceFault.MODEL_MISSING
    assert "thawline model" in desk.events[0].text


@pytest.mark.parametrize(("clock_s", "wall_s"), [(SLEPT_S + 1, SLEPT_S + 1), (0.2, 3600.0)])
def test_after_sleep_the_camera_is_opened_anew_and_trials_stay(clock_s, wall_s):
    desk = Desk()
    desk.begin(trials=2)
    desk.play(one_raise())
    desk.settle_all()
    desk.now_s += clock_s
    desk.wall_s += wall_s
    desk.session.tick()
    assert len(desk.opened) == 2
    desk.session.tick()
    assert len(desk.opened) == 2
    desk.play(one_raise())
    desk.settle_all()
    done = desk.events[-1]
    assert done.kind is LiveEventKind.MEASUREMENT_DONE
    assert "slept" in done.measurement.provenance.source["notes"]


def test_another_size_of_picture_begins_anew():
    desk = Desk()
    desk.begin()
    series = one_raise()
    half = len(series) // 2
    end_s = desk.play(series[:half])
    end_s = desk.play(series[half:], start_s=end_s, size=(320, 240))
    assert desk.orders == []
    desk.play(one_raise(), start_s=end_s, size=(320, 240))
    assert len(desk.orders) == 1


def test_the_person_lost_is_told_once():
    desk = Desk()
    desk.begin()
    desk.play(np.zeros(60))
    track = elevation_track(np.zeros(90), Movement.FLEXION, Side.RIGHT, View.SIDE, rate_hz=RATE_HZ)
    for seen in seen_frames(track, start_s=2.0):
        nobody = replace(
            seen.pose,
            points_px=np.empty((0, 33, 2)),
            visibility=np.empty((0, 33)),
            presence=np.empty((0, 33)),
        )
        desk.session.take(replace(seen, pose=nobody))
    assert desk.kinds == [LiveEventKind.PERSON_LOST]
    assert desk.frames[-1].phase is Phase.SEARCHING_FOR_PERSON
    assert desk.frames[-1].points_px is None
    assert Reason.NOBODY in desk.frames[-1].reasons


def test_behind_the_back_the_heavy_model_runs():
    desk = Desk()
    desk.begin(Movement.HAND_BEHIND_BACK)
    assert desk.opened[0].quality is ModelQuality.FULL
    assert desk.used[-1] is ModelQuality.HEAVY


def test_where_it_came_from_is_kept_with_the_measurement():
    desk = Desk()
    desk.begin()
    desk.session.take(SourceOpened(session=1, backend="V4L2, OpenCV 5.1", sample_aspect=1.0))
    desk.play(one_raise())
    desk.settle_all()
    provenance = desk.events[-1].measurement.provenance
    assert provenance.source["backend"] == "V4L2, OpenCV 5.1"
    assert provenance.source["size"] == "640x480"
    assert float(provenance.source["looks_a_second"]) == pytest.approx(RATE_HZ, abs=1.0)
    assert provenance.model == "heavy"
    assert set(provenance.model_hashes) == {"full", "heavy"}
