"""`thawline replay` with the scripted arm in place of the networks. Run by itself."""

import functools
import sys

import pytest

from measure.batch import run
from measure.cli.main import main
from measure.cli.replay import command as replay
from measure.clips.outcome import ReadingSettings
from measure.pose.supervisor import PoseProcess
from tests.support import scripted_arm


def put_in_place(patch: pytest.MonkeyPatch) -> None:
    """Let replay start the stand-in, and ask for no real bundle."""
    process = functools.partial(PoseProcess, command=scripted_arm.COMMAND)
    patch.setitem(run.read_many.__kwdefaults__, "new_process", process)
    settings = ReadingSettings(models=scripted_arm.MODELS)
    patch.setattr(replay, "settings_of", lambda quality, own: settings)


if __name__ == "__main__":
    put_in_place(pytest.MonkeyPatch())
    sys.exit(main(sys.argv[1:]))
