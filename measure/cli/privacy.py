"""`thawline privacy`: what is kept where, who can read it, and how to be rid of it."""

import argparse

from measure.cli.terminal_table import table
from measure.storage.saved_files import SavedFile, saved_files, size_text
from measure.system.paths import data_folder

_PROMISES = """\
Nothing is sent anywhere. The only connection this program opens by itself is made when you
ask for the pose model; a cluster is used only when you name its address.
No picture, video or body point is written to disk unless you ask for a file of them.
Logs hold no readings, names or notes."""

_HOW_TO_DELETE = """\
To delete one person for good:     thawline people delete PERSON
To delete everything:              close the program and delete the folder above
Copies made before updates, files set aside when restoring, and the exports, reports and
backups that you saved elsewhere stay as they are: delete them one by one.

This program does not encrypt the sessions: anyone who can read your files can read them. Turn
on the disk encryption of your system (BitLocker or device encryption, FileVault, LUKS). It also
covers backups, memory files and deleted parts of the disk."""


def configure(parser: argparse.ArgumentParser) -> None:
    """Show what this program saves on this computer, where, and how to delete it.

    Nothing is changed, opened or sent.

    exit codes:
      0  always

    examples:
      thawline privacy
    """
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    print(_PROMISES)
    files = saved_files()
    print(f"\nFolder: {data_folder()}\n")
    if files:
        rows = [
            [file.name, file.purpose, size_text(file.size_bytes), _readers(file)] for file in files
        ]
        print(table(rows, ["file", "what it is", "size", "can be read by"]))
    else:
        print("Nothing is saved yet.")
    print(f"\n{_HOW_TO_DELETE}")
    return 0


def _readers(file: SavedFile) -> str:
    if file.open_to_others is None:
        return "your account and administrators"
    return f"{'others too' if file.open_to_others else 'you only'} ({file.mode})"
