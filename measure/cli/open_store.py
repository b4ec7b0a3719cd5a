"""Opening the store for a command: what is to be told about its place goes to the terminal."""

import sys

from measure.storage.store import Store


def open_store() -> Store:
    """Open the person's store, and print its warnings where they do not mix with results.

    Raises
    ------
    DataError, MachineError
        As :meth:`measure.storage.store.Store.open`.
    """
    store = Store.open()
    for warning in store.warnings:
        print(f"Note: {warning}", file=sys.stderr)
    return store
