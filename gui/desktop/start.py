"""Start of a desktop bundle: the window without arguments, else the command line.

It also stands in for the interpreter. The processes that Thawline starts for itself (pose worker,
list of cameras, checks of ``thawline check``) run `sys.executable` with ``-P -m MODULE`` or
``-c CODE``; in a bundle that is this program, and there is no other Python.
"""

import multiprocessing
import os
import runpy
import sys
from collections.abc import Sequence
from pathlib import Path

#: Options of the interpreter before ``-m`` or ``-c`` that change nothing here: a bundle never
#: imports modules from the folder that it is started from.
_IGNORED_OPTIONS = ("-P", "-I", "-B", "-S", "-s", "-E")


def main(arguments: Sequence[str]) -> int:
    """Run the module, code or command that the arguments name; return the exit code."""
    use_what_is_inside(Path(__file__).parent)
    rest = list(arguments)
    while rest and rest[0] in _IGNORED_OPTIONS:
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
    # Python's own helper processes are started in the same way and end here.
    multiprocessing.freeze_support()
    sys.exit(main(sys.argv[1:]))
