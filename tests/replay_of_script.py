"""`thawline replay` with the scripted arm in place of the networks. Run by itself."""

import functools
import sys

from measure import batch, replay_command
from measure.clip_outcome import ReadingSettings
from measure.command_line import main
from measure.pose import PoseProcess
from tests import scripted_arm


def put_in_place() -> None:
    """Let replay start the stand-in, and ask for no real bundle."""
    process = functools.partial(PoseProcess, command=scripted_arm.COMMAND)
    batch.read_many.__kwdefaults__["new_process"] = process
    replay_command.settings_of = lambda quality, own: ReadingSettings(models=scripted_arm.MODELS)


if __name__ == "__main__":
    put_in_place()
    sys.exit(main(sys.argv[1:]))
