"""Looks at a clip through the supervised process, as a program of its own: run by itself.

Arguments: a clip and how many frames a second to look at. Prints the number of frames in which
somebody was found, as its only line.
"""

import sys
from pathlib import Path

from measure.pose.jobs import ClipJob, InferencePass
from measure.pose.supervisor import PoseProcess
from measure.pose_models.bundles import load
from measure.pose_models.catalogue import ModelQuality


def main(clip: str, rate_hz: str) -> None:
    lite = InferencePass(quality=ModelQuality.LITE)
    job = ClipJob(clip=Path(clip), passes=(lite,), rate_hz=float(rate_hz))
    with PoseProcess({ModelQuality.LITE: load(ModelQuality.LITE)}) as process:
        frames = process.run(job).frames[lite]
    print(sum(len(frame.points_px) > 0 for frame in frames))


if __name__ == "__main__":
    main(*sys.argv[1:])
