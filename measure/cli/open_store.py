"""Opening the store for a command: warnings about its place go to the terminal."""

import sys
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from measure.storage.store import Store


def open_store() -> "Store":
    """Open the person's store, and print its warnings where they do not mix with results.

    Raises
    ------
    DataError, MachineError
        As :meth:`measure.storage.store.Store.open`.
    """
    from measure.storage.store import Store

    store = Store.open()
    for warning in store.warnings:
        print(f"Note: {warning}", file=sys.stderr)
    return store


def person_id_of(name: str) -> str:
    """Return the identifier of the stored person with a pseudonym.

    Raises
    ------
    InputError
        When there is no such person.
    DataError, MachineError
        As :func:`open_store`.
    """
    with open_store() as store:
        return store.find_person(name).id
