"""Reading to the end, whatever the source does; choosing frames by their times."""

import itertools
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from measure.errors import ClipError
from measure.video.reader import (
    MOST_BLACK,
    MOST_FAILURES,
    MOST_REPEATS,
    ClipReader,
    SourceFrame,
)
from measure.video.sampling import SKIP, Decimator, MonotonicTimeline, RateSampler, merged
from tests.support.scripted_source import ScriptedSource, Step


def read(source: ScriptedSource, **wanted: object) -> tuple[list[SourceFrame], ClipReader]:
    reader = ClipReader(source, "clip.mp4", **wanted)  # type: ignore[arg-type]
    return list(reader.frames()), reader


def times(frames: list[SourceFrame]) -> list[float]:
    return [frame.time_s for frame in frames]


def steady(count: int, fps: float = 30.0, start_s: float = 0.0) -> list[Step]:
    return [start_s + n / fps for n in range(count)]


def test_every_frame_of_a_good_source() -> None:
    frames, reader = read(ScriptedSource(steady(40, start_s=5.0), stated_frames=40))
    assert times(frames) == pytest.approx([n / 30 for n in range(40)])
    assert reader.frames_read == 40
    assert reader.frames_lost == 0
    assert reader.notes == []


@pytest.mark.parametrize("stated", [None, -1, 0, 10, 20, 40, 10**18])
def test_the_stated_count_decides_nothing(stated: int | None) -> None:
    frames, _ = read(ScriptedSource(steady(20), stated_frames=stated, stated_fps=None))
    assert len(frames) == 20


def test_a_gap_after_failures_is_lost_frames_evenly_spread() -> None:
    script: list[Step] = steady(10)
    script += [None, None]
    script += steady(10, start_s=15 / 30)
    frames, reader = read(ScriptedSource(script))
    assert times(frames) == pytest.approx([n / 30 for n in range(25)])
    assert [frame.index for frame in frames] == list(range(25))
    lost = [frame.index for frame in frames if frame.pixels is None]
    assert lost == [10, 11, 12, 13, 14]
    assert (reader.frames_read, reader.frames_lost) == (20, 5)


def test_failures_without_a_gap_in_time_lost_nothing() -> None:
    frames, reader = read(ScriptedSource([*steady(10), None, *steady(10, start_s=10 / 30)]))
    assert len(frames) == 20
    assert reader.frames_lost == 0


def test_a_pause_without_failure_is_no_damage() -> None:
    frames, reader = read(ScriptedSource([*steady(10), *steady(10, start_s=2.0)]))
    assert len(frames) == 20
    assert reader.frames_lost == 0


def test_damage_shows_up_to_some_frames_late_and_strays_are_dropped() -> None:
    """As decoders do it: the gap comes a frame after the failure, with a late straggler."""
    script: list[Step] = [
        *steady(10),
        None,
        10 / 30,
        16 / 30,
        17 / 30,
        11 / 30,
        *steady(9, start_s=18 / 30),
    ]
    frames, reader = read(ScriptedSource(script))
    assert times(frames) == pytest.approx([n / 30 for n in range(27)])
    assert [frame.index for frame in frames if frame.pixels is None] == [11, 12, 13, 14, 15]
    assert reader.notes == []


def test_a_source_that_fails_for_ever_ends() -> None:
    source = ScriptedSource(itertools.chain(steady(5), itertools.repeat(None)))
    frames, _ = read(source)
    assert len(frames) == 5
    assert source.grabs == 5 + MOST_FAILURES


def test_a_source_that_repeats_for_ever_ends() -> None:
    source = ScriptedSource(itertools.chain(steady(5), itertools.repeat(4 / 30)))
    frames, reader = read(source)
    assert len(frames) == 5
    assert source.grabs == 5 + MOST_REPEATS
    assert "stopped increasing" in reader.notes[0]


def test_a_source_that_starts_anew_for_ever_ends() -> None:
    source = ScriptedSource(itertools.cycle(steady(10)))
    frames, reader = read(source)
    assert 10 < len(frames) < 300
    assert np.all(np.diff(times(frames)) > 0)
    assert "stopped increasing" in reader.notes[0]


@pytest.mark.parametrize("bad", [math.nan, math.inf, -math.inf])
def test_a_source_whose_times_are_no_numbers_ends(bad: float) -> None:
    with pytest.raises(ClipError, match="Not one picture"):
        read(ScriptedSource(itertools.repeat(bad)))


def test_a_new_start_of_times_is_joined() -> None:
    frames, reader = read(ScriptedSource([*steady(30), *steady(30)]))
    assert len(frames) == 58  # two were needed to see that it is a new start
    assert np.all(np.diff(times(frames)) > 0)
    assert np.diff(times(frames)) == pytest.approx(np.full(57, 1 / 30))
    assert "restart 1 times" in reader.notes[0]


def test_a_stray_time_far_ahead_is_dropped() -> None:
    frames, reader = read(ScriptedSource([*steady(10), None, 1e12, *steady(10, start_s=10 / 30)]))
    assert times(frames) == pytest.approx([n / 30 for n in range(20)])
    assert reader.notes == []


def test_two_frames_with_one_time_are_one() -> None:
    frames, _ = read(ScriptedSource([0.0, 0.0, 1 / 30, 2 / 30]))
    assert times(frames) == pytest.approx([0, 1 / 30, 2 / 30])


@given(st.lists(st.floats(allow_nan=True, allow_infinity=True, width=32), max_size=60))
def test_accepted_times_always_increase_from_zero(raw: list[float]) -> None:
    line = MonotonicTimeline()
    accepted = [time for each in raw if (time := line.accept(each, 0.03)) is not None]
    assert all(later > earlier for earlier, later in itertools.pairwise(accepted))
    assert accepted[:1] in ([], [0.0])


def test_nothing_readable_is_said() -> None:
    with pytest.raises(ClipError, match=r"Not one picture of the clip clip\.mp4"):
        read(ScriptedSource([]))
    with pytest.raises(ClipError, match="single picture"):
        read(ScriptedSource([0.0]))


def test_all_black_is_a_fault_and_a_black_start_is_not() -> None:
    with pytest.raises(ClipError, match="completely black"):
        read(ScriptedSource(steady(60), brightness=0))
    frames, reader = read(_BlackAtFirst(steady(60), 5))
    assert all(frame.pixels is not None for frame in frames)
    assert reader.frames_lost == 0


def test_a_long_black_stretch_is_lost() -> None:
    frames, reader = read(_BlackAtFirst(steady(60), 30))
    assert [frame.pixels is None for frame in frames] == [MOST_BLACK <= n < 30 for n in range(60)]
    assert reader.frames_lost == 30 - MOST_BLACK


class _BlackAtFirst(ScriptedSource):
    def __init__(self, script: list[Step], black: int) -> None:
        super().__init__(script)
        self._black = black

    def retrieve(self):  # type: ignore[no-untyped-def]
        pixels = super().retrieve()
        return np.zeros_like(pixels) if self._number < self._black else pixels


def chosen(fps_times: list[float], rate_hz: float) -> list[float]:
    grid = RateSampler(rate_hz)
    return [time for time in fps_times if grid.chooses(time)]


@pytest.mark.parametrize(
    ("fps", "rate_hz", "every"),
    [
        (30, 7.5, 4),
        (15, 7.5, 2),
        (60, 7.5, 8),
        (30, 15, 2),
        (15, 15, 1),
        (15, 60, 1),
        (7.5, 7.5, 1),
    ],
)
def test_a_rate_that_divides_takes_every_so_many(fps: float, rate_hz: float, every: int) -> None:
    frames = [n / fps for n in range(300)]
    assert chosen(frames, rate_hz) == frames[::every]


def test_times_rounded_to_milliseconds_make_no_difference() -> None:
    frames = [round(n / 15, 3) for n in range(300)]
    assert chosen(frames, 7.5) == frames[::2]


def test_jittery_times_are_not_taken_twice() -> None:
    jitter = np.random.default_rng(4).uniform(-0.012, 0.012, 300)
    frames = [n / 15 + float(jitter[n]) for n in range(300)]
    assert chosen(frames, 7.5) == frames[::2]


def test_other_rates_stay_near_the_grid() -> None:
    frames = [n * 1001 / 30000 for n in range(1000)]
    taken = chosen(frames, 7.5)
    assert len(taken) == pytest.approx(frames[-1] * 7.5, abs=2)
    nearest = np.round(np.array(taken) * 7.5) / 7.5
    assert np.abs(np.array(taken) - nearest).max() < 0.5 * 1001 / 30000 + 1e-3
    assert set(np.round(np.diff(taken), 4)) <= {0.1001, 0.1335}


@given(st.lists(st.floats(0.004, 0.5), min_size=2, max_size=200), st.floats(2, 20))
def test_uneven_frames_leave_no_gap_that_a_frame_could_fill(
    steps_s: list[float], rate_hz: float
) -> None:
    frames = [0.0, *np.cumsum(steps_s).tolist()]
    taken = chosen(frames, rate_hz)
    assert taken[0] == 0.0
    longest = 1.5 / rate_hz + max(steps_s)  # the next point, and the first frame past it
    assert max(np.diff([*taken, frames[-1]])) <= longest + 1e-3


@pytest.mark.parametrize("rate_hz", [0, -1, math.nan])
def test_a_rate_must_be_above_zero(rate_hz: float) -> None:
    with pytest.raises(ValueError, match="rate_hz"):
        RateSampler(rate_hz)


def test_frames_that_are_not_chosen_are_not_converted() -> None:
    source = ScriptedSource(steady(40))
    frames, reader = read(source, rate_hz=7.5)
    assert source.retrieved == list(range(0, 40, 4))
    assert [frame.index for frame in frames] == list(range(0, 40, 4))
    assert reader.frames_read == 40


def test_windows_choose_spans_and_end_the_reading() -> None:
    source = ScriptedSource(steady(300))
    passed: list[float] = []
    frames, _ = read(source, windows=[(1.0, 1.2), (3.0, 3.1)], tick=passed.append)
    assert times(frames) == pytest.approx([n / 30 for n in (*range(30, 37), *range(90, 94))])
    assert [frame.window for frame in frames] == [0] * 7 + [1] * 4
    assert source.grabs == 95
    assert len(passed) == 95


def test_windows_use_the_same_grid_as_the_whole_clip() -> None:
    whole, _ = read(ScriptedSource(steady(300)), rate_hz=7.5)
    part, _ = read(ScriptedSource(steady(300)), rate_hz=7.5, windows=[(2.01, 4.0)])
    assert set(times(part)) < set(times(whole))


def test_paces_pass_over_frames_and_begin_anew_with_each_window() -> None:
    paces = [(1.0, 1.5, 1), (0.0, 2.0, 3), (2.2, 2.4, SKIP), (1.9, 9.0, 2)]
    windows = [(0.0, 2.6), (4.1, 4.6)]
    frames, _ = read(ScriptedSource(steady(300)), rate_hz=10, windows=windows, decimation=paces)
    slow, dense = [0.0, 0.3, 0.6, 0.9], [1.0, 1.1, 1.2, 1.3, 1.4, 1.5]
    after = [1.8, 2.1, 2.5]  # three tenths after the last one, then every second
    again = [4.1, 4.3, 4.5]
    assert times(frames) == pytest.approx([*slow, *dense, *after, *again])


def test_without_paces_nothing_is_passed_over() -> None:
    assert all(Decimator([]).takes(n / 10) for n in range(20))
    far = Decimator([(50.0, 60.0, 5)])
    assert all(far.takes(n / 10, stretch=2) for n in range(20))


def test_frames_lost_to_damage_count_for_the_pace() -> None:
    marks = [n / 30 for n in range(30)] + [None] * 5 + [n / 30 for n in range(45, 90)]
    frames, _ = read(ScriptedSource(marks), rate_hz=10, decimation=[(0.0, 9.0, 2)])
    assert times(frames) == pytest.approx([n / 5 for n in range(15)])
    lost = [frame.time_s for frame in frames if frame.pixels is None]
    assert lost == pytest.approx([1.0, 1.2, 1.4])


@pytest.mark.parametrize(
    ("spans", "result"),
    [
        ([], ()),
        ([(1, 2)], ((1, 2),)),
        ([(3, 4), (1, 2)], ((1, 2), (3, 4))),
        ([(1, 3), (2, 4), (4, 5)], ((1, 5),)),
        ([(1, 9), (2, 3)], ((1, 9),)),
    ],
)
def test_spans_that_touch_are_one(
    spans: list[tuple[float, float]], result: tuple[tuple[float, float], ...]
) -> None:
    assert merged(spans) == result


@pytest.mark.parametrize("span", [(2.0, 1.0), (math.nan, 1.0), (0.0, math.inf)])
def test_spans_without_sense_are_refused(span: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="span of time"):
        merged([span])


def test_an_incomplete_recording_is_noted() -> None:
    _, reader = read(ScriptedSource(steady(33), stated_frames=90))
    assert reader.notes == ["The recording seems incomplete: 1.1 of 3.0 s."]


def test_counted_times_are_noted() -> None:
    _, reader = read(ScriptedSource(steady(33), times_known=False))
    assert "no times" in reader.notes[0]
