"""Settling captured trials: careful passes, a second try, and the quick look as the last way."""

import threading
import time

import pytest

from measure.domain.acquisition import Setup
from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from measure.live.trial_detector import TrialWatch
from measure.live.trial_refiner import HASTY, SettleOrder, Settling, hastily_settled
from measure.pose.ensemble import Models
from measure.pose_models.catalogue import ModelQuality
from measure.trials.refinement import settle
from measure.trials.scan import paces_of
from measure.video.sampling import CAREFUL_HZ, QUICK_HZ, Thinning
from tests.support.live_figures import empty_bundle, person
from tests.support.scripted_live import FPS, SIZE, SPEED, ScriptedPose, figure, noisy_rgb

MODELS = Models(
    name="heavy",
    bundles={each: empty_bundle(each) for each in (ModelQuality.FULL, ModelQuality.HEAVY)},
)


@pytest.fixture(scope="module")
def captured():
    """The first trial of the scripted figure."""
    watch = TrialWatch(Movement.FLEXION, Side.RIGHT, Setup(), SIZE)
    track = figure()
    rate = FPS / SPEED
    for n in range(len(track)):
        time_s = float(track.time_s[n])
        if n % round(rate / CAREFUL_HZ) == 0:
            watch.add_picture(noisy_rgb(n), n, time_s)
        if n % round(rate / QUICK_HZ) == 0:
            found = watch.look(time_s, person(track, n))
            if found is not None:
                return found
    raise AssertionError("no trial")


def order(captured, trial_id=1):
    return SettleOrder(
        chosen=1,
        trial_id=trial_id,
        captured=captured,
        movement=Movement.FLEXION,
        side=Side.RIGHT,
        setup=Setup(),
    )


class Office:
    def __init__(self, **more):
        self.news = []
        self.came = threading.Event()
        self.process = ScriptedPose(**more)
        self.settling = Settling(MODELS, self._take, lambda models: self.process)

    def _take(self, news):
        self.news.append(news)
        self.came.set()

    def __enter__(self):
        return self

    def __exit__(self, *error):
        self.settling.close(2.0)
        assert self.process.closed


def test_a_trial_is_settled_by_the_careful_passes_over_its_own_pictures(captured):
    with Office() as office:
        office.settling.put(order(captured))
        assert office.came.wait(10.0)
    (news,) = office.news
    (job,) = office.process.jobs
    assert job.passes == MODELS.careful(Movement.FLEXION)
    assert job.alone
    thinning = Thinning(paces_of([captured.found], Movement.FLEXION))
    wanted = [each.index for each in captured.pictures if thinning.takes(each.time_s)]
    assert [each.index for each in job.pictures] == wanted
    assert len(wanted) < len(captured.pictures)
    assert not news.hasty
    assert news.settled.trial.value == pytest.approx(100, abs=8)
    assert news.settled.spread == pytest.approx(0.0)


def test_a_failed_process_gets_a_second_try(captured):
    with Office(failures=1) as office:
        office.settling.put(order(captured))
        assert office.came.wait(10.0)
    assert len(office.process.jobs) == 2
    assert not office.news[0].hasty


def test_when_it_fails_again_the_quick_look_counts_with_a_wider_interval(captured):
    with Office(failures=2) as office:
        office.settling.put(order(captured))
        assert office.came.wait(10.0)
        office.came.clear()
        office.settling.put(order(captured, 2))
        assert office.came.wait(10.0)
    hasty, careful = office.news
    assert hasty.hasty
    assert not careful.hasty
    wide = hasty.settled.trial.high - hasty.settled.trial.low
    narrow = careful.settled.trial.high - careful.settled.trial.low
    assert wide >= narrow
    assert hasty.settled.trial.value == pytest.approx(careful.settled.trial.value, abs=1.0)


def test_the_quick_look_alone_reads_like_one_pass(captured):
    news = hastily_settled(order(captured))
    start_s, end_s = captured.pictures[0].time_s, captured.pictures[-1].time_s
    same = settle(
        [captured.quick.between(start_s, end_s)],
        captured.found,
        Movement.FLEXION,
        Side.RIGHT,
        View.SIDE,
        Setup(),
        HASTY,
    )
    assert news.settled.trial == same.trial


def test_closing_does_not_wait_for_a_trial_and_tells_nothing_more(captured):
    office = Office(seconds=60.0)
    office.settling.put(order(captured))
    time.sleep(0.2)
    began_s = time.monotonic()
    office.settling.close(3.0)
    assert time.monotonic() - began_s < 1.0
    assert office.news == []
    assert office.process.closed
