"""`thawline restore`: puts a backup in the place of the store."""

import argparse
from pathlib import Path

from measure.storage.backup import restore
from measure.storage.location import store_path
from measure.system.clock import SystemClock


def configure(parser: argparse.ArgumentParser) -> None:
    """Replace all data here with a backup, even if the data are damaged.

    The backup is checked first; if it is incomplete, nothing is changed. The data that were here
    stay in the same folder under another name and can be restored in the same way.

    exit codes:
      0  done
      1  another program has the store open, or the disk could not be read or written
      2  wrong use, or no usable backup

    examples:
      thawline restore ~/thawline-2026-11-25.sqlite
    """
    parser.add_argument("file", type=Path, metavar="FILE", help="a file made by thawline backup")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    now, aside = restore(arguments.file, store_path(), SystemClock())
    print(f"The store now holds {now}.")
    if aside:
        print(f"What was here before is now in {aside}")
    return 0
