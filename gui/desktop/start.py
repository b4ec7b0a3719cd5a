"""What a desktop bundle starts: the window when nothing is asked for, else the command line.

It also stands in for the interpreter. The processes that Thawline starts for itself (the pose
process, the list of cameras, the checks of ``thawline check``) ask `sys.executable` for
``-P -m MODULE`` or ``-c CODE``; in a bundle that is this program, and there is no other Python.
"""

import multiprocessing
import os
import runpy
import sys
from collections.abc import Sequence
from pathlib import Path

#: Options of the interpreter that stand before ``-m`` or ``-c`` and change nothing here: a bundle
#: never looks for modules in the folder that it is started from.
_NO_MATTER = ("-P", "-I", "-B", "-S", "-s", "-E")


def main(arguments: Sequence[str]) -> int:
    """Run what the arguments ask for; return the exit code."""
    use_what_is_inside(Path(__file__).parent)
    rest = list(arguments)
    while rest and rest[0] in _NO_MATTER:
        rest.pop(0)
    if rest[:1] == ["-m"] and len(rest) > 1:
        sys.argv = rest[1:]
        runpy.run_module(rest[1], run_name="__main__", alter_sys=True)
        return 0
    if rest[:1] == ["-c"] and len(rest) > 1:
        sys.argv = ["-c", *rest[2:]]
        exec(rest[1], {"__name__": "__main__"})
        return 0
    from measure.cli.main import main as command_line

    return command_line(list(arguments) or ["app"])


def use_what_is_inside(folder: Path) -> None:
    """Let the pose model be found in the bundle, unless another folder was asked for."""
    os.environ.setdefault("THAWLINE_MODELS", str(folder / "models"))


if __name__ == "__main__":
    # Python's own helper processes are asked for in the same way, and are done with here.
    multiprocessing.freeze_support()
    sys.exit(main(sys.argv[1:]))
