"""Deleting from a command: asking first, and naming the copies that remain."""

import sys
from collections.abc import Sequence
from pathlib import Path

from measure.errors import InputError


def ask(sentence: str, question: str) -> str:
    """Print what will be deleted, ask on the terminal and return the answer.

    Raises
    ------
    InputError
        When there is no terminal to ask on.
    """
    if not sys.stdin.isatty():
        raise InputError(
            "Deleting needs a confirmation. Where there is no terminal to ask on, add --yes."
        )
    print(sentence)
    return input(question).strip()


def print_copies(copies: Sequence[Path], pronoun: str) -> None:
    """Print which copies may still hold what was deleted."""
    if copies:
        print(
            f"These earlier copies may still contain {pronoun}; delete them if you do not need "
            "them:"
        )
        print("\n".join(f"  {copy}" for copy in copies))
    print(
        "Exports, reports and backups that you saved elsewhere are not deleted; delete them "
        "yourself."
    )
