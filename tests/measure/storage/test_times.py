"""Order and durations of sessions while clocks are changed under them."""

import datetime as dt
from pathlib import Path

import pytest

from measure.domain.exercises import Exercise, ListedExercise
from measure.errors import InputError
from measure.storage.store import Store
from measure.system.clock import SystemClock, Timestamp, new_id
from tests.support import record_samples as sample
from tests.support.record_samples import FixedClock


def test_sessions_in_the_hour_that_comes_twice_stay_in_order(tmp_path: Path) -> None:
    """Vienna, 2026-10-25: 02:50 summer time comes before 02:10 winter time."""
    clock = FixedClock("2026-10-25T00:50:00+00:00", offset_min=120)
    with Store.open(tmp_path / "sessions.sqlite", clock=clock) as store:
        store.save_person(sample.person())
        who = store.people()[0].id
        summer = store.start_session(who)
        clock.utc, clock.offset_min = clock.utc + dt.timedelta(minutes=20), 60
        winter = store.start_session(who)
        assert store.sessions(who) == [summer, winter]
    assert summer.started.local.strftime("%H:%M") == "02:50"
    assert winter.started.local.strftime("%H:%M") == "02:10"
    assert summer.started.day == winter.started.day == dt.date(2026, 10, 25)


def test_sessions_round_the_hour_that_is_left_out_stay_in_order(tmp_path: Path) -> None:
    """Vienna, 2026-03-29: after 01:59 winter time comes 03:00 summer time."""
    clock = FixedClock("2026-03-29T00:59:00+00:00", offset_min=60)
    with Store.open(tmp_path / "sessions.sqlite", clock=clock) as store:
        store.save_person(sample.person())
        who = store.people()[0].id
        winter = store.start_session(who)
        clock.utc, clock.offset_min = clock.utc + dt.timedelta(minutes=1), 120
        clock.seconds += 60
        done = store.finish_session(winter.id)
        summer = store.start_session(who)
        assert store.sessions(who) == [done, summer]
    assert done.duration_s == 60
    assert [each.started.local.strftime("%H:%M") for each in (winter, summer)] == [
        "01:59",
        "03:00",
    ]


def test_a_journey_across_zones_keeps_order_and_days(tmp_path: Path) -> None:
    clock = FixedClock("2026-06-01T10:00:00+00:00", offset_min=13 * 60)
    with Store.open(tmp_path / "sessions.sqlite", clock=clock) as store:
        store.save_person(sample.person())
        who = store.people()[0].id
        auckland = store.start_session(who)
        clock.utc, clock.offset_min = clock.utc + dt.timedelta(hours=1), -10 * 60
        honolulu = store.start_session(who)
        assert store.sessions(who) == [auckland, honolulu]
    assert honolulu.started.day == dt.date(2026, 6, 1)
    assert auckland.started.day == dt.date(2026, 6, 1)
    assert auckland.started.local > honolulu.started.local.replace(
        tzinfo=auckland.started.local.tzinfo
    )


def test_setting_the_clock_back_makes_no_negative_duration(tmp_path: Path) -> None:
    clock = FixedClock()
    with Store.open(tmp_path / "sessions.sqlite", clock=clock) as store:
        store.save_person(sample.person())
        who = store.people()[0].id
        session = store.start_session(who)
        clock.utc -= dt.timedelta(hours=1)
        clock.seconds += 300
        assert store.finish_session(session.id).duration_s == 300
        later = store.start_session(who)
        assert {each.id for each in store.sessions(who)} == {session.id, later.id}


def test_equal_times_keep_the_order_of_entry(tmp_path: Path) -> None:
    with Store.open(tmp_path / "sessions.sqlite", clock=FixedClock()) as store:
        store.save_person(sample.person())
        who = store.people()[0].id
        entered = [store.start_session(who).id for _ in range(20)]
        store.finish_session(entered[3])
        assert [each.id for each in store.sessions(who)] == entered
        taps = [
            store.log_exercise(who, Exercise(listed=ListedExercise.PENDULUM)).id for _ in range(20)
        ]
        assert [each.id for each in store.exercises_done(who)] == taps
        store.delete_exercise_log(taps[0])
        assert [each.id for each in store.exercises_done(who)] == taps[1:]


def test_a_session_that_another_program_began_gets_no_duration(tmp_path: Path) -> None:
    path = tmp_path / "sessions.sqlite"
    with Store.open(path, clock=FixedClock()) as store:
        store.save_person(sample.person())
        session = store.start_session(store.people()[0].id, note="Cut short.")
        assert not session.finished
    with Store.open(path, clock=FixedClock()) as store:
        (found,) = store.sessions(session.person_id)
        assert found == session
        finished = store.finish_session(session.id)
        assert (finished.finished, finished.duration_s) == (True, None)
        # Finishing twice changes nothing.
        assert store.finish_session(session.id) == finished


def test_a_session_of_no_length_keeps_its_zero(tmp_path: Path) -> None:
    with Store.open(tmp_path / "sessions.sqlite", clock=FixedClock()) as store:
        store.save_person(sample.person())
        session = store.start_session(store.people()[0].id)
        assert store.finish_session(session.id).duration_s == 0
        assert store.finish_session(session.id).duration_s == 0


@pytest.mark.parametrize(
    ("utc", "offset_min", "part"),
    [
        (dt.datetime(2026, 1, 1), 0, "without its zone"),
        (dt.datetime(2026, 1, 1, tzinfo=dt.UTC), 841, "not an offset"),
        (dt.datetime(2026, 1, 1, tzinfo=dt.UTC), -841, "not an offset"),
        (dt.datetime(1, 1, 1, tzinfo=dt.UTC), 0, "year 1 "),
        (dt.datetime(9999, 12, 31, 23, tzinfo=dt.UTC), 0, "year 9999"),
    ],
)
def test_moments_that_cannot_be(utc: dt.datetime, offset_min: int, part: str) -> None:
    with pytest.raises(InputError, match=part):
        Timestamp(utc=utc, offset_min=offset_min)


def test_a_moment_given_in_another_zone_is_kept_in_utc() -> None:
    vienna = dt.timezone(dt.timedelta(hours=2))
    moment = Timestamp(utc=dt.datetime(2026, 7, 1, 0, 30, tzinfo=vienna), offset_min=120)
    assert moment.utc.isoformat() == "2026-06-30T22:30:00+00:00"
    assert moment.day == dt.date(2026, 7, 1)


@pytest.mark.parametrize("zone", ["Europe/Vienna", ":America/St_Johns", "Asia/Kathmandu"])
def test_the_system_clock_names_its_zone(zone: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TZ", zone)
    now = SystemClock().now()
    assert now.zone == zone.lstrip(":")
    assert abs((dt.datetime.now(dt.UTC) - now.utc).total_seconds()) < 60


def test_identifiers_differ() -> None:
    assert len({new_id() for _ in range(1000)}) == 1000
