"""A whole session at home in the real window, led by clips, beside `thawline replay` of them.

    python -m tests.bench.bench_guided [--movements abduction ...] [--model-quality full]
                                       [--pictures FOLDER] [--clinic]

Both sides of flexion, abduction, external rotation and hand behind back, one clip each, on a
screen that is not there. Prints each kept reading beside the one of replay, and how long the
window's thread was held up while measuring. Ends with 1 where they differ by more than a degree.
With --clinic it is flexion alone, two trials of one side and then of the other, and what is printed
is how long that took; it ends with 1 where that was not less than two minutes.
"""

import argparse
import csv
import json
import os
import subprocess
import sys
import tempfile
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from gui.protocol.plan import HOME_MOVEMENTS
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.storage.store import Store
from measure.system.paths import model_folder
from tests.support.real_model import clip
from tests.support.virtual_screen import virtual_screen

Part = tuple[Movement, Side, str]

#: In the order of a session at home: the right side first each time.
SESSION: tuple[Part, ...] = (
    (Movement.FLEXION, Side.RIGHT, "flexion-right-full"),
    (Movement.FLEXION, Side.LEFT, "flexion-left-full"),
    (Movement.ABDUCTION, Side.RIGHT, "abduction-right-from-behind"),
    (Movement.ABDUCTION, Side.LEFT, "abduction-left-full"),
    (Movement.EXTERNAL_ROTATION, Side.RIGHT, "external-rotation-right-restricted"),
    (Movement.EXTERNAL_ROTATION, Side.LEFT, "external-rotation-left-full"),
    (Movement.HAND_BEHIND_BACK, Side.RIGHT, "hand-behind-back-right-from-side"),
    (Movement.HAND_BEHIND_BACK, Side.LEFT, "hand-behind-back-left-full"),
)

#: A clinician has so long for both sides, seconds.
CLINIC_S = 120.0

#: Readings that differ by less are the same: a degree, or a hundredth of the way up the back.
SAME = {Unit.DEGREES: 1.0, Unit.FRACTION: 0.01}


def lead(
    folder: Path, more: list[str], movements: Sequence[Movement], clips: Sequence[Path]
) -> tuple[list[Measurement], dict[str, Any]]:
    """Return what a session led in the window kept, and what was told of it."""
    with virtual_screen() as display:
        done = subprocess.run(
            [
                *(
                    sys.executable,
                    "-m",
                    "tests.support.guided_window",
                    *more,
                    "--movements",
                    *movements,
                ),
                *("--", *map(str, clips)),
            ],
            env={
                **os.environ,
                "DISPLAY": display,
                "QT_QPA_PLATFORM": "xcb",
                "THAWLINE_DATA": str(folder),
                "THAWLINE_MODELS": str(model_folder()),
            },
            stdout=subprocess.PIPE,
            text=True,
            check=True,
        )
    told = json.loads(done.stdout.splitlines()[-1])
    print(
        f"longest time that the window's thread was not free while measuring: "
        f"{told['longest_ms']:.0f} ms, longest work in one go {told['longest_work_ms']:.0f} ms "
        "(goal: 50 ms)"
    )
    with Store.open(folder / "sessions.sqlite") as store:
        (person,) = store.people()
        return [each.measurement for each in store.measurements(person.id)], told


def clinic(folder: Path, more: list[str]) -> int:
    """Lead both sides of flexion at the clinic's pace; print how long that took."""
    clips = []
    for side in (Side.RIGHT, Side.LEFT):
        twice = folder / f"flexion-{side.value}-twice.mp4"
        once = clip(f"flexion-{side.value}-full")
        command = ["ffmpeg", "-loglevel", "error", "-stream_loop", "1", "-i", str(once)]
        subprocess.run([*command, "-c", "copy", str(twice)], check=True)
        clips.append(twice)
    kept, told = lead(folder, [*more, "--clinic"], [Movement.FLEXION], clips)
    for each in kept:
        scored = sum(trial.scored for trial in each.trials)
        print(f"{each.side.value}: {each.value} from {scored} trials")
    took_s = told["measured_s"]
    print(f"both sides took {took_s:.0f} s (goal: less than {CLINIC_S:.0f})")
    done = [each.side for each in kept if each.value is not None] == [Side.RIGHT, Side.LEFT]
    return 0 if done and took_s < CLINIC_S else 1


def replay(folder: Path, more: list[str], session: Sequence[Part]) -> dict[str, float | None]:
    """Return the value that the command gives for each clip, by the clip's name."""
    table, results = folder / "clips.csv", folder / "results.json"
    with table.open("w", newline="") as file:
        writer = csv.writer(file)
        writer.writerow(("clip", "movement", "side"))
        for movement, side, name in session:
            writer.writerow((clip(name), movement.value, side.value))
    subprocess.run(
        [
            *(sys.executable, "-m", "measure.cli.main", "replay", *more),
            *("--manifest", str(table), "--json", str(results)),
        ],
        stdout=subprocess.DEVNULL,
        check=True,
    )
    document = json.loads(results.read_text(encoding="utf-8"))
    return {Path(each["clip"]).stem: each["value"] for each in document["results"]}


def main() -> int:
    parser = argparse.ArgumentParser(description="A session in the window beside replay.")
    parser.add_argument("--movements", type=Movement, nargs="+", default=HOME_MOVEMENTS)
    parser.add_argument("--model-quality")
    parser.add_argument("--pictures")
    parser.add_argument("--clinic", action="store_true")
    arguments = parser.parse_args()
    quality = ["--model-quality", arguments.model_quality] if arguments.model_quality else []
    pictures = ["--pictures", arguments.pictures] if arguments.pictures else []
    with tempfile.TemporaryDirectory() as scratch:
        if arguments.clinic:
            return clinic(Path(scratch), quality + pictures)
        session = [part for part in SESSION if part[0] in arguments.movements]
        clips = [clip(name) for *_, name in session]
        kept, _ = lead(Path(scratch), quality + pictures, arguments.movements, clips)
        replayed = replay(Path(scratch), quality, session)
    # Nothing is kept of a movement in which nothing was captured.
    values = {(each.movement, each.side): each.value for each in kept}
    same = values.keys() <= {(movement, side) for movement, side, _ in session}
    for movement, side, name in session:
        live, told = values.get((movement, side)), replayed[name]
        if live is None or told is None:
            agrees = live is told
        else:
            agrees = abs(live - told) <= SAME[MOVEMENTS[movement].unit]
        same = same and agrees
        print(f"{name}: window {live}, replay {told}: {'same' if agrees else 'DIFFERENT'}")
    return 0 if same else 1


if __name__ == "__main__":
    sys.exit(main())
