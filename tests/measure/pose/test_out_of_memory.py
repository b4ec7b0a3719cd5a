"""A clip for which memory does not do: said in words, and the next clip is read."""

import sys
from pathlib import Path

import pytest

from measure.clips.read import read_clip
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.errors import PoseProcessError
from measure.pose.supervisor import PoseProcess
from tests.fuzz.fuzz_clips import MODELS
from tests.support.odd_clips import odd_clip

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="not on this system: limits")

TASK = MeasurementTask(Movement.ABDUCTION, Side.LEFT, View.FRONT)

#: A pose process whose first run asks for more memory than it is allowed to have.
_GREEDY = """
import sys
from pathlib import Path
from tests.fuzz import scripted_pose
from tests.support.scripted_live import use_up_memory

class Greedy(scripted_pose.ScriptedEstimator):
    def detect(self, rgb, time_s):
        if not Path(sys.argv[1]).exists():
            Path(sys.argv[1]).touch()
            use_up_memory()
        return super().detect(rgb, time_s)

scripted_pose.ScriptedEstimator = Greedy
scripted_pose.main()
"""


@pytest.mark.usefixtures("data_folder")
def test_too_little_memory_is_said_and_the_next_clip_is_read(tmp_path: Path) -> None:
    clip = odd_clip("ordinary")
    command = (sys.executable, "-c", _GREEDY, str(tmp_path / "mark"))
    with PoseProcess(MODELS.bundles, command=command) as process:
        with pytest.raises(PoseProcessError, match=r"ordinary\.mp4 .*too little memory; close"):
            read_clip(process, MODELS, clip, TASK)
        reading = read_clip(process, MODELS, clip, TASK)
    assert reading.measurement.value == pytest.approx(95.0, abs=5.0)
