"""What the program reads on real people whose numbers stand here, and that they may stand here."""

import functools

from tests.bench.bench_real import usable
from tests.bench.bench_real_cases import IN_TREE, load_real_people, read_json
from tests.bench.bench_real_figures import figures
from tests.bench.bench_real_readings import ArmReading, ClipReading, read_arms, read_clips
from tests.real_people.extract import PASSED_ON

#: Bounds that the readings keep here: a change that breaks one is worse on real people.
MEAN_ERROR_DEG, BIAS_DEG, HELD, READ = 4.5, 1.0, 0.95, 0.68
#: Largest file in bytes.
LARGEST = 1_500_000


@functools.cache
def arms() -> list[ArmReading]:
    return usable(read_arms(load_real_people().arms))


@functools.cache
def clips() -> list[ClipReading]:
    return read_clips(load_real_people().clips)


def test_only_what_may_be_passed_on_is_here_and_is_attributed() -> None:
    page = (IN_TREE / "README.md").read_text(encoding="utf-8")
    files = sorted(IN_TREE.glob("*.json.gz"))
    assert [path.name for path in files] == ["arms.json.gz", "series.json.gz"]
    for path in files:
        assert path.stat().st_size < LARGEST
        content = read_json(path)
        for kind in ("arms", "series", "traps"):
            for entry in content.get(kind, ()):
                assert entry["source"] in PASSED_ON
                assert entry["source"] in page


def test_no_place_that_anybody_marked_is_here() -> None:
    for entry in read_json(IN_TREE / "arms.json.gz")["arms"]:
        named = {
            name.removesuffix("_deg").removesuffix("_over_trunk") for name in entry["annotated"]
        }
        assert named <= {
            "arm_to_trunk",
            "wrist_line_to_trunk",
            "elbow",
            "trunk_tilt",
            "other_arm",
            "upper_arm",
            "forearm",
        }


def test_errors_on_real_arms_stay_within_bounds() -> None:
    cell = figures(arms())
    assert cell is not None
    assert cell.mean_error.value <= MEAN_ERROR_DEG
    assert abs(cell.bias.value) <= BIAS_DEG


def test_intervals_hold_on_real_arms() -> None:
    cell = figures(arms())
    assert cell is not None
    assert cell.held is not None
    assert cell.held.value >= HELD


def test_most_usable_arms_are_read() -> None:
    cell = figures(arms())
    assert cell is not None
    assert cell.offered == 119
    assert cell.accepted / cell.offered >= READ


def test_clicked_clips_are_read_near_their_angle() -> None:
    errors = [abs(one.error_deg) for one in clips() if not one.clip.trap and one.value is not None]
    assert len(errors) >= 8
    assert sum(errors) / len(errors) <= 4.5


def test_no_trap_is_read() -> None:
    traps = [one for one in clips() if one.clip.trap]
    assert len(traps) == 45
    assert [one.clip.name for one in traps if one.caught] == []
