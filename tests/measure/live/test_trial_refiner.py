"""Refining captured trials: fine passes, a second try, and the coarse pass as the last way."""

import threading
import time

import pytest

from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.live.trial_detector import OnlineTrialDetector
from measure.live.trial_refiner import COARSE_ONLY, RefineRequest, TrialRefiner, refine_from_coarse
from measure.pose.ensemble import ModelSet
from measure.pose_models.catalogue import ModelQuality
from measure.trials.refinement import refine_trial
from measure.trials.scan import decimation_plan
from measure.video.sampling import COARSE_HZ, FINE_HZ, Decimator
from tests.support.live_figures import empty_bundle, person
from tests.support.scripted_live import FPS, SIZE, SPEED, ScriptedPose, figure, noisy_rgb

MODELS = ModelSet(
    name="heavy",
    bundles={quality: empty_bundle(quality) for quality in (ModelQuality.FULL, ModelQuality.HEAVY)},
)


@pytest.fixture(scope="module")
def captured():
    """The first trial of the scripted figure."""
    watch = OnlineTrialDetector(MeasurementTask(Movement.FLEXION, Side.RIGHT), SIZE)
    track = figure()
    rate = FPS / SPEED
    for n in range(len(track)):
        time_s = float(track.time_s[n])
        if n % round(rate / FINE_HZ) == 0:
            watch.add_picture(noisy_rgb(n), n, time_s)
        if n % round(rate / COARSE_HZ) == 0:
            trial = watch.update(time_s, person(track, n))
            if trial is not None:
                return trial
    raise AssertionError("no trial")


def request(captured, trial_id=1):
    return RefineRequest(chosen=1, trial_id=trial_id, captured=captured)


class RefinerDesk:
    def __init__(self, **more):
        self.news = []
        self.came = threading.Event()
        self.process = ScriptedPose(**more)
        self.refiner = TrialRefiner(MODELS, self._take, lambda models: self.process)

    def _take(self, news):
        self.news.append(news)
        self.came.set()

    def __enter__(self):
        return self

    def __exit__(self, *error):
        self.refiner.close(2.0)
        assert self.process.closed


def test_a_trial_is_settled_by_the_careful_passes_over_its_own_pictures(captured):
    with RefinerDesk() as desk:
        desk.refiner.put(request(captured))
        assert desk.came.wait(10.0)
    (news,) = desk.news
    (job,) = desk.process.jobs
    assert job.passes == MODELS.fine()
    assert job.alone
    decimator = Decimator(decimation_plan([captured.candidate], Movement.FLEXION))
    wanted = [picture.index for picture in captured.pictures if decimator.takes(picture.time_s)]
    assert [picture.index for picture in job.pictures] == wanted
    assert len(wanted) < len(captured.pictures)
    assert not news.coarse_only
    assert news.refined.trial.value == pytest.approx(100, abs=8)
    assert news.refined.spread == pytest.approx(0.0)


def test_a_failed_process_gets_a_second_try(captured):
    with RefinerDesk(failures=1) as desk:
        desk.refiner.put(request(captured))
        assert desk.came.wait(10.0)
    assert len(desk.process.jobs) == 2
    assert not desk.news[0].coarse_only


def test_when_it_fails_again_the_coarse_pass_counts_with_a_wider_interval(captured):
    with RefinerDesk(failures=2) as desk:
        desk.refiner.put(request(captured))
        assert desk.came.wait(10.0)
        desk.came.clear()
        desk.refiner.put(request(captured, 2))
        assert desk.came.wait(10.0)
    coarse, fine = desk.news
    assert coarse.coarse_only
    assert not fine.coarse_only
    wide = coarse.refined.trial.high - coarse.refined.trial.low
    narrow = fine.refined.trial.high - fine.refined.trial.low
    assert wide >= narrow
    assert coarse.refined.trial.value == pytest.approx(fine.refined.trial.value, abs=1.0)


def test_the_coarse_pass_alone_reads_like_one_pass(captured):
    news = refine_from_coarse(request(captured))
    start_s, end_s = captured.pictures[0].time_s, captured.pictures[-1].time_s
    same = refine_trial(
        [captured.coarse.between(start_s, end_s)],
        captured.candidate,
        MeasurementTask(Movement.FLEXION, Side.RIGHT, View.SIDE),
        COARSE_ONLY,
    )
    assert news.refined.trial == same.trial


def test_closing_does_not_wait_for_a_trial_and_tells_nothing_more(captured):
    desk = RefinerDesk(seconds=60.0)
    desk.refiner.put(request(captured))
    time.sleep(0.2)
    began_s = time.monotonic()
    desk.refiner.close(3.0)
    assert time.monotonic() - began_s < 1.0
    assert desk.news == []
    assert desk.process.closed
