"""`make bench-real`: how far the readings lie from angles that were marked on real people.

    python -m tests.bench.bench_real [FOLDER ...] [--write] [--json FILE] [--cases]

Reads the numbers of tests/real_people, and those of further folders of the same form. `--write`
copies the tables into measure/docs/accuracy.md, between their marks, and the shortest into
README.md.
"""

import argparse
import json
import re
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from tests.bench import bench_real_table as tables
from tests.bench import readme_table
from tests.bench.bench_real_cases import IN_TREE, RealPeople, load_real_people
from tests.bench.bench_real_floor import floor_text
from tests.bench.bench_real_goals import goals
from tests.bench.bench_real_readings import ArmReading, ClipReading, read_arms, read_clips

_ROOT = Path(__file__).resolve().parents[2]
_MARKS = re.compile(r"(<!-- real-people:begin -->\n).*?(<!-- real-people:end -->)", re.DOTALL)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folders", type=Path, nargs="*", metavar="FOLDER")
    parser.add_argument("--write", action="store_true", help="copy the tables into the documents")
    parser.add_argument("--json", type=Path, metavar="FILE", help="write every reading")
    parser.add_argument("--cases", action="store_true", help="print a line for every reading")
    arguments = parser.parse_args()
    people = load_real_people([IN_TREE, *arguments.folders])
    arms, clips = read_arms(people.arms), read_clips(people.clips)
    text = report(people, arms, clips)
    print(text)
    if arguments.cases:
        print("\n".join([*map(_arm_line, arms), *map(_clip_line, clips)]))
    if arguments.json:
        rows = {"arms": [_arm_data(one) for one in arms], "clips": [_clip_data(c) for c in clips]}
        arguments.json.write_text(json.dumps(rows, indent=1), encoding="utf-8")
    if arguments.write:
        _copy(_ROOT / "measure/docs/accuracy.md", text)
        readme_table.main()
    return 0


def usable(arms: Sequence[ArmReading], *, right_person: bool = True) -> list[ArmReading]:
    """Return the usable arms, on the annotated person or else on another one."""
    return [one for one in arms if one.arm.usable and one.arm.right_person is right_person]


def report(people: RealPeople, arms: Sequence[ArmReading], clips: Sequence[ClipReading]) -> str:
    """Return the report as Markdown."""
    good = usable(arms)
    in_tree = [one for one in good if one.arm.name in people.in_tree]
    groups = tables.full_groups(good)
    parts = [
        tables.about_arms(good, in_tree),
        tables.short_table(tables.summary_groups(good, in_tree)),
        tables.held_sentence(good),
        tables.wrong_person(usable(arms, right_person=False)),
        "### Real people by movement, view and range",
        tables.full_table(groups),
        "### Real people and lines with nothing fitted",
        "One pass of the heavy model against its own trunk line, over the arms that are read.",
        tables.lines_table({**groups, "all": good}),
        "### What the marking allows",
        floor_text(good),
        "### Habits of marking",
        "Hanging arms in abduction, by where the marking comes from.",
        tables.sources_table(good),
        "### Real people by deciding model",
        "Flexion and abduction as everywhere; on the right intervals whose width comes from all "
        "other groups alone, each group one witness. Difficulty is what the reading itself tells "
        "(`measure/kinematics/uncertainty`), and no interval is narrower than the least shown.",
        tables.models_table({"heavy": good, "full": usable(read_arms(people.arms, "full"))}),
        "### Real arms that should rather be refused",
        tables.doubtful_text(arms),
        "### Clips of real people",
        tables.clips_text(clips) + "\n" + tables.traps_text(clips),
        "### Goals for real people",
        "The goals are the project's own.",
        tables.goals_table(goals(good, clips)),
    ]
    return "\n\n".join(parts)


def _arm_line(one: ArmReading) -> str:
    task = one.arm.task
    said = "refused" if one.half_deg is None else f"{one.value_deg:.1f} ± {one.half_deg:.1f}"
    return (
        f"{one.arm.name:44s} {task.movement} {task.side} {one.arm.seen_from} "
        f"marked {one.arm.marked_deg:.1f} {said} error {one.error_deg:.1f} "
        f"{','.join(one.refused_for)} notes {','.join(one.notes)}"
    )


def _clip_line(one: ClipReading) -> str:
    said = "refused" if one.value is None else f"{one.value:.2f} ({one.low:.2f} to {one.high:.2f})"
    return (
        f"{one.clip.name:44s} {one.clip.trap or 'to be read'} clicked {one.clip.clicked_deg} "
        f"{said} {'CAUGHT ' if one.caught else ''}{'coarse ' if one.coarse_only else ''}"
        f"{','.join(one.reasons)} {one.clip.why}"
    )


def _arm_data(one: ArmReading) -> dict[str, Any]:
    arm = one.arm
    return {
        "name": arm.name,
        "source": arm.source,
        "group": arm.group,
        "movement": arm.task.movement,
        "side": arm.task.side,
        "view": arm.seen_from,
        "near": arm.near,
        "usable": arm.usable,
        "right_person": arm.right_person,
        "marked_deg": arm.marked_deg,
        "noise_deg": arm.noise_deg,
        "value_deg": one.value_deg,
        "half_deg": one.half_deg,
        "refused_for": one.refused_for,
        "notes": one.notes,
        "plain_deg": one.plain_deg,
    }


def _clip_data(one: ClipReading) -> dict[str, Any]:
    return {
        "name": one.clip.name,
        "group": one.clip.group,
        "trap": one.clip.trap,
        "clicked_deg": one.clip.clicked_deg,
        "value": one.value,
        "low": one.low,
        "high": one.high,
        "reasons": one.reasons,
        "caught": one.caught,
        "coarse_only": one.coarse_only,
    }


def _copy(path: Path, text: str) -> None:
    before = path.read_text(encoding="utf-8")
    after = _MARKS.sub(lambda marks: f"{marks[1]}{text}\n{marks[2]}", before)
    path.write_text(after, encoding="utf-8")


if __name__ == "__main__":
    sys.exit(main())
