"""Command line: finds the subcommands, loads and runs one, turns errors into exit codes.

A subcommand is an entry point of the group ``thawline.commands``: a function
``configure(parser)`` that adds arguments and sets ``parser.set_defaults(run=function)``;
``run(arguments)`` returns the exit code. The first line of its docstring is the help line (kept
again in :mod:`measure.cli.help_lines`), the rest its description. Only the chosen command is
loaded. So this module needs no import of the layers above it.
"""

import argparse
import io
import os
import sys
import traceback
from collections.abc import Callable, Sequence
from importlib.metadata import entry_points, version

from measure.cli.help_lines import HELP_LINES
from measure.errors import ThawlineError, printable

NOTICE = "An estimate, not a diagnosis and not a medical device. Stop before it becomes painful."

Configure = Callable[[argparse.ArgumentParser], None]


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line; return 0 for readings or honest refusals, 2 for wrong use or
    unreadable input, 1 for an error inside Thawline.
    """
    for stream in (sys.stdout, sys.stderr):
        # A terminal that lacks a letter shows a mark instead of failing.
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
    words = sys.argv[1:] if arguments is None else arguments
    try:
        parser = command_parser(words)
        chosen, unknown = parser.parse_known_args(words)
        if unknown:
            _parser_of(parser, words).error(f"unrecognized arguments: {' '.join(unknown)}")
    except SystemExit as stop:
        return stop.code if isinstance(stop.code, int) else 2
    try:
        return int(chosen.run(chosen))
    except ThawlineError as error:
        print(f"thawline: {printable(str(error))}", file=sys.stderr)
        return error.exit_code
    except KeyboardInterrupt:
        print("thawline: stopped.", file=sys.stderr)
        return 130
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except Exception as error:  # noqa: BLE001 - the top of the command line
        if os.environ.get("THAWLINE_TRACEBACK"):
            traceback.print_exc()
        print(
            f"thawline: an error inside Thawline: {type(error).__name__}: {error}\n"
            "What was saved before has not changed. To see the details a developer needs, set "
            "THAWLINE_TRACEBACK=1 and run the command again.",
            file=sys.stderr,
        )
        return 1


def command_parser(arguments: Sequence[str]) -> argparse.ArgumentParser:
    """Return the parser of the whole program, with the options of the command in `arguments`.

    The other commands are listed by name and help line without being loaded.
    """
    parser = argparse.ArgumentParser(
        prog="thawline",
        description="Measures how far a shoulder moves, from a webcam or a recorded clip. "
        + NOTICE,
    )
    parser.add_argument("--version", action="version", version=f"thawline {version('thawline')}")
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", required=True)
    chosen = next((word for word in arguments if not word.startswith("-")), None)
    for entry in sorted(entry_points(group="thawline.commands"), key=lambda entry: entry.name):
        if entry.name == chosen or entry.name not in HELP_LINES:
            _add_command(commands, entry.name, entry.load())
        else:
            commands.add_parser(entry.name, help=HELP_LINES[entry.name])
    return parser


def _parser_of(parser: argparse.ArgumentParser, words: Sequence[str]) -> argparse.ArgumentParser:
    """Return the parser of the command that these words choose, with its own usage."""
    for word in words:
        for action in parser._actions:
            if isinstance(action, argparse._SubParsersAction):
                parser = action.choices.get(word, parser)
    return parser


def _add_command(
    commands: "argparse._SubParsersAction[argparse.ArgumentParser]",
    name: str,
    configure: Configure,
) -> None:
    summary, _, details = (configure.__doc__ or "").partition("\n")
    parser = commands.add_parser(
        name,
        help=summary.strip(),
        description=summary.strip(),
        epilog="\n".join(line.removeprefix("    ") for line in details.splitlines()).strip(),
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    configure(parser)


if __name__ == "__main__":
    sys.exit(main())
