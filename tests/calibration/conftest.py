"""What tests of calibration share: a store in memory that knows one person."""

from collections.abc import Iterator

import pytest

from measure.domain.records import Person
from measure.storage.store import Store

#: Identifier of the person in the store.
WHO = "0" * 31 + "7"


@pytest.fixture
def store() -> Iterator[Store]:
    """A store in memory that knows one person."""
    with Store.in_memory() as store:
        store.save_person(Person(id=WHO, pseudonym="Bramble"))
        yield store
