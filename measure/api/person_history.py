"""The store of people and sessions opened from Python, and a person's progress."""

import datetime as dt
import os
import warnings
from pathlib import Path

from measure.progress.overview import Progress, progress_of
from measure.storage.store import Store


def open_store(path: str | os.PathLike[str] | None = None) -> Store:
    """Open the store of people, sessions and measurements; close it after use.

    Parameters
    ----------
    path
        Its file; None for the one that window and command line use.

    Returns
    -------
    Store
        A context manager that closes the store.

    Raises
    ------
    DataError
        A store was there and is gone, is damaged, or comes from a later version.
    MachineError
        The folder or the disk cannot be used.

    Examples
    --------
    >>> import thawline
    >>> with thawline.open_store() as store:
    ...     [person.pseudonym for person in store.people()]
    ['demo-Bramble', 'demo-Clover', 'demo-Marigold', 'demo-Thistle']
    """
    store = Store.open(None if path is None else Path(path))
    for warning in store.warnings:
        warnings.warn(warning, stacklevel=2)
    return store


def progress(person: str, *, store: Store | None = None, today: dt.date | None = None) -> Progress:
    """Return what can be said about a person's weeks and months.

    Parameters
    ----------
    person
        Pseudonym, in any case of letters, or identifier.
    store
        An open store; None for the one that window and command line use.
    today
        What could be said on that day; None for the present day.

    Raises
    ------
    InputError
        Nobody has that name.
    DataError, MachineError
        As in :func:`open_store`.

    Examples
    --------
    >>> import thawline
    >>> progress = thawline.progress("demo-Marigold")
    >>> flexion = progress.of(thawline.Movement.FLEXION, thawline.Side.LEFT)
    >>> flexion.verdict
    <Verdict.GAINING: 'gaining'>
    >>> flexion.change.low > 0
    True
    """
    if store is None:
        with open_store() as own_store:
            return progress(person, store=own_store, today=today)
    history = store.history(store.find_person(person).id)
    return progress_of(history, today or store.now().day)
