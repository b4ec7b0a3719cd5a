"""`thawline import`: takes up a history that was exported as JSON."""

import argparse
from pathlib import Path

from measure.cli.open_store import open_store
from measure.export.history_json import read_history


def configure(parser: argparse.ArgumentParser) -> None:
    """Import a person's history from a file written by: thawline export --format json

    Records that are not here yet are added. Records that are here stay as they are, even where
    the file differs, so importing the same file twice changes nothing. If someone else has the
    pseudonym, a number is added to it.

    exit codes:
      0  imported, or everything was here already
      2  wrong use, or the file is not a history; nothing was changed

    examples:
      thawline import rosa.json
    """
    parser.add_argument("file", type=Path, metavar="FILE", help="an exported history")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    history = read_history(arguments.file)
    with open_store() as store:
        merged = store.merge(history)
    name = merged.person.pseudonym
    print(
        f"{'Added' if merged.new_person else 'Found'} {name}. Records added: {merged.added}; "
        f"here already: {merged.same}."
    )
    if merged.kept:
        print(f"Records that differ here and were left as they are: {merged.kept}.")
    if merged.new_person and name != history.person.pseudonym:
        print(f"The pseudonym {history.person.pseudonym} was taken, so it is {name} here.")
    return 0
