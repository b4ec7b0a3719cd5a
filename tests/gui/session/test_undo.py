"""Undo: what was deleted comes back, the latest first, and is never lost on the way."""

from collections.abc import Iterator

import pytest
from PySide6.QtWidgets import QApplication

from gui.session.undo import UndoList
from gui.workers.worker_thread import BackgroundWorker
from measure.errors import MachineError


class Deleted:
    """Things that were deleted, and a list that puts them back."""

    def __init__(self) -> None:
        self.worker = BackgroundWorker("records")
        self.undo = UndoList(self.worker)
        self.back: list[str] = []
        self.told: list[str] = []
        self.undo.message_raised.connect(self.told.append)

    def delete(self, name: str) -> None:
        self.undo.offer(f"Deleted: {name}.", lambda: self.back.append(name))

    def press_undo(self) -> None:
        self.undo.undo()
        while self.worker.busy:
            self.worker.collect()


@pytest.fixture
def deleted(qapp: QApplication) -> Iterator[Deleted]:
    made = Deleted()
    yield made
    made.worker.close(3.0)


def test_the_latest_comes_back_first_and_each_once(deleted: Deleted) -> None:
    deleted.delete("Rosa")
    deleted.delete("Hazel")
    assert deleted.undo.next is not None
    assert deleted.undo.next.words == "Deleted: Hazel."
    for _ in range(3):
        deleted.press_undo()
    assert deleted.back == ["Hazel", "Rosa"]
    assert deleted.undo.next is None


def test_what_could_not_be_put_back_can_be_tried_again(deleted: Deleted) -> None:
    full = [True]

    def put_back() -> None:
        if full:
            raise MachineError("The disk is full.")
        deleted.back.append("Rosa")

    deleted.undo.offer("Deleted: Rosa.", put_back)
    deleted.press_undo()
    assert deleted.told == ["The disk is full."]
    full.clear()
    deleted.press_undo()
    assert deleted.back == ["Rosa"]


def test_what_is_withdrawn_is_offered_no_longer(deleted: Deleted) -> None:
    entry = deleted.undo.offer("A trial.", lambda: deleted.back.append("trial"))
    deleted.undo.withdraw(entry)
    deleted.undo.withdraw(entry)
    deleted.press_undo()
    assert deleted.back == []
