"""What the network's wrapper is put through, in a process of its own: run by itself.

The argument is the path of a bundle. Prints one JSON object; a crash or a hang of native code
fails the test that started it, not the test run.
"""

import gc
import itertools
import json
import math
import os
import sys
from pathlib import Path
from types import SimpleNamespace

import numpy as np

from measure.domain.landmarks import LANDMARKS
from measure.errors import PoseProcessError, ThawlineError
from measure.pose import network as network_module
from measure.pose.memory import release_freed
from measure.pose.network import PoseNetwork, mp
from measure.video.frame import FrameNormalizer


def failing(action) -> str:  # type: ignore[no-untyped-def]
    """The error of an action, or nothing."""
    try:
        action()
    except ThawlineError as error:
        return f"{type(error).__name__}: {error}"
    return ""


def views(picture):  # type: ignore[no-untyped-def]
    yield picture
    yield picture[:, ::-1]
    yield picture[::-1]
    yield picture[:, :, ::-1]
    yield picture[7:90, 11:100]
    yield np.rot90(picture)
    yield np.asfortranarray(picture)


def pixels_survive() -> bool:
    """Whether the library reads, from every kind of view, the pixels that the view shows."""
    picture = np.random.default_rng(0).integers(0, 256, (120, 160, 3), dtype=np.uint8)
    for view in views(picture):
        rgb = FrameNormalizer().normalize(view).rgb
        image = mp.Image(image_format=mp.ImageFormat.SRGB, data=rgb)
        if not np.array_equal(image.numpy_view(), view[:, :, ::-1]):
            return False
    return True


class Scripted:
    """Stands in for the library: each look takes the next number of people."""

    def __init__(self, people):  # type: ignore[no-untyped-def]
        self.people = list(people)
        self.asked_ms: list[int] = []

    def detect_for_video(self, image, time_ms):  # type: ignore[no-untyped-def]
        call_index = len(self.asked_ms)
        self.asked_ms.append(time_ms)
        mark = SimpleNamespace(x=call_index / 100, y=0.0, visibility=1.0, presence=1.0)
        return SimpleNamespace(pose_landmarks=[[mark] * LANDMARKS] * self.people[call_index])

    def close(self) -> None:
        pass


def run_scripted_network(bundle: bytes, picture, people, *, fine: bool, step_s=0.25):  # type: ignore[no-untyped-def]
    """Which look each picture gets its result from (-1: nobody), and all times asked."""
    network = PoseNetwork(bundle, fine=fine)
    network._native.close()
    network._native = Scripted(people)
    found = []
    while len(network._native.asked_ms) < len(people):
        found.append(network.detect(picture, step_s * len(found)))
    network.close()
    used = [round(100 * each.places[0, 0, 0]) if len(each.places) else -1 for each in found]
    return used, network._native.asked_ms


#: How often the network is opened to see whether memory grows.
OPENINGS = 20


class Cycle:
    """Refers to itself, so that only the cyclic collector can take it away."""

    def __init__(self, network: PoseNetwork) -> None:
        self.network = network
        self.itself = self


def resident_mb() -> float:
    """Memory held now (Linux), or 0 where that is not told."""
    try:
        pages = int(Path("/proc/self/statm").read_text().split()[1])
    except OSError:
        return 0.0
    return pages * os.sysconf("SC_PAGE_SIZE") / 2**20


def growth_mb(bundle: bytes, picture) -> float:  # type: ignore[no-untyped-def]
    """Memory that opening and closing again and again, with some pictures each, adds.

    Freed memory is given back first, as the pose process does, or what the allocator keeps would
    leap by tens of megabytes; the least of several openings is what is truly held.
    """
    held = []
    for _ in range(OPENINGS):
        with PoseNetwork(bundle) as network:
            for frame in range(10):
                network.detect(picture, frame / 10)
        release_freed()
        held.append(resident_mb())
    return min(held[-6:]) - min(held[2:8])


def main(bundle: bytes) -> None:
    grey = np.full((240, 320, 3), 120, dtype=np.uint8)
    told: dict[str, object] = {
        "proxies": sorted(
            {os.environ.get(n, "") for n in ("https_proxy", "HTTPS_PROXY", "all_proxy")}
        ),
        "no_proxy": os.environ.get("no_proxy"),
        "pixels_survive": pixels_survive(),
    }
    given_s = [0, 0, 0.033, 0.033, 0.020, 0.0666, math.nan, -5, 1.0]
    told["milliseconds"] = list(
        itertools.accumulate(given_s, network_module.next_millisecond, initial=-1)
    )[1:]
    with PoseNetwork(bundle) as network:
        for time_s in given_s[:-1]:
            found = network.detect(grey, time_s)
        told["shape"] = found.places.shape[1:]
        told["view"] = failing(lambda: network.detect(grey[:, ::-1], 1.0))
        told["grey"] = failing(lambda: network.detect(grey[:, :, 0], 1.0))
        told["floats"] = failing(lambda: network.detect(grey / 255, 1.0))  # type: ignore[arg-type]
        told["after refusals"] = failing(lambda: network.detect(grey, 1.1))
    told["after close"] = failing(lambda: network.detect(grey, 2.0))
    network.close()

    poisoned = PoseNetwork(bundle)
    bad = mp.Image(image_format=mp.ImageFormat.GRAY8, data=np.zeros((64, 64), dtype=np.uint8))
    try:
        poisoned._native.detect_for_video(bad, 5)
    except RuntimeError:
        told["poisoned"] = failing(lambda: poisoned.detect(grey, 1.0))
    poisoned.close()

    for _ in range(5):
        held = Cycle(PoseNetwork(bundle))
        try:
            held.network.detect(grey[:, ::-1], 0.0)
        except PoseProcessError:
            held.network.close()
        del held
        gc.collect()
    told["growth_mb"] = growth_mb(bundle, grey)
    # Nobody, one, one, nobody, one; then one who is lost again when looked at for the third time.
    told["plain looks"] = run_scripted_network(bundle, grey, [0, 1, 1, 0, 1], fine=False)
    told["looks after a pause"] = run_scripted_network(
        bundle, grey, [1, 1, 1, 0, 1, 1], fine=True, step_s=3.0
    )
    told["careful looks"] = run_scripted_network(
        bundle, grey, [0, 1, 1, 1, 1, 0, 1, 1, 0], fine=True
    )
    told["broken bundle"] = failing(lambda: PoseNetwork(b"PK broken"))
    told["opened"], told["closed"] = PoseNetwork.opened, PoseNetwork.closed
    told["way out"] = network_module._NOWHERE
    print(json.dumps(told))


if __name__ == "__main__":
    main(Path(sys.argv[1]).read_bytes())
