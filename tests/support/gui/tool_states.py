"""States of the tools for the pictures: clips, set-up, and what is known of camera and body."""

import threading
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QEventLoop

from gui.app.window_pages import MainPage
from gui.pages.camera_and_body.body_lengths import TRUNK
from gui.pages.clips.clip_rows import ClipRow
from gui.session.interfaces import ReadClip
from measure.camera.faults import SourceFault
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult
from measure.domain.acquisition import KnownSetup
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import ClipError
from measure.live.events import LiveEventKind, Phase, SetupHint
from measure.message import TranslatableMessage
from tests.support.agreement_table import HEADER, table
from tests.support.gui.stage import WindowHarness, read_drawn_clips

#: Clips of the list, one with a name longer than its column, one whose name says nothing.
CLIPS = (
    "bed-three-flexion-right.mp4",
    "bed-four-abduction-left.mp4",
    "the second visit of the garden group in spring, external_rotation, right, indoors.mov",
    "IMG_4711.mp4",
)
#: Folder of clips that was opened before.
RECENT = Path("/study/allotment garden/spring, second visit")
#: Time between two looks while a clip is held, milliseconds. [technical]
_WAIT_MS = 20
#: People of the study of camera and goniometer.
_STUDIED = 36
BROKEN = TranslatableMessage(
    "The clip {clip} contains no pictures that can be decoded: its beginning is damaged, it has "
    "sound only, or it uses an unknown codec. Convert the video to H.264.",
    {"clip": "IMG_4711.mp4"},
)


class _HeldReader:
    """Reads one clip, and the others once it goes on."""

    def __init__(self) -> None:
        self.goes_on = threading.Event()

    def __call__(
        self,
        entries: Sequence[ClipEntry],
        setup: KnownSetup,
        results: Path | None,
        progress: Callable[[float], bool],
        *,
        fresh: bool = False,
    ) -> Iterator[ReadClip]:
        coming = read_drawn_clips(entries, setup, results, progress, fresh=fresh)
        yield next(coming)
        while progress(1.0) and not self.goes_on.wait(_WAIT_MS / 1000):
            pass
        yield from coming


def tool_states(stage: WindowHarness) -> Iterator[str]:
    """Read clips, look for a good place, and calibrate."""
    for part in (_clips, _setup, _known):
        yield from part(stage)


def _clips(stage: WindowHarness) -> Iterator[str]:
    stage.window.go(MainPage.CLIPS)
    yield "clips-empty"
    clips = stage.window.clips
    clips.empty.show_recent((RECENT,))
    yield "clips-recent"
    folder = stage.home / "garden group"
    folder.mkdir()
    clips.open([folder / name for name in CLIPS])
    stage.settle()
    yield "clips-list"
    held = _HeldReader()
    clips.batch._reader = held
    stage.reading_is_held = True
    clips.list.read.click()
    while clips.batch.finished == 0:
        QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, _WAIT_MS)
    yield "clips-reading"
    held.goes_on.set()
    stage.reading_is_held = False
    stage.settle(250)
    clips.batch._reader = read_drawn_clips
    row = clips.model.rows[0]
    row.take(ClipResult(number=0, entry=clip_entry(row), error=ClipError(BROKEN)))
    clips.model.all_changed()
    yield "clips-all-read"
    clips.show_clip(clips.model.rows[1])
    stage.settle()
    yield "clips-read"
    tick = clips.review.trials.ticks[1]
    assert tick is not None
    tick.setChecked(False)
    yield "clips-discarded"
    for _ in ("asks for the day", "saves"):
        clips.review.save.click()
        stage.settle()
    yield "clips-saved"
    clips.show_clip(row)
    stage.settle()
    yield "clips-not-read"
    clips.show_list()


def clip_entry(row: ClipRow) -> ClipEntry:
    """Return the row as a clip to read, with a movement if it has none."""
    row.choose(row.movement or Movement.FLEXION, row.side or Side.LEFT)
    entry = row.entry
    assert entry is not None
    return entry


def _setup(stage: WindowHarness) -> Iterator[str]:
    window = stage.window
    window.go(MainPage.SETUP)
    stage.settle()
    stage.engine.show(Phase.SEARCHING_FOR_PERSON, 10.0, hints=(SetupHint.RAISE_SCREEN,))
    stage.settle(600)
    stage.engine.show(Phase.SEARCHING_FOR_PERSON, 10.0, hints=(SetupHint.RAISE_SCREEN,))
    yield "setup-hint"
    stage.settle(600)
    stage.engine.show(Phase.SEARCHING_FOR_PERSON, 10.0)
    window.setup.refresh()
    yield "setup-good"
    window.setup.hand.click()
    yield "setup-hand"
    stage.engine.happen(LiveEventKind.HAND_RAISED, side=Side.LEFT)
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_BUSY)
    yield "setup-trouble"


def _known(stage: WindowHarness) -> Iterator[str]:
    stage.services.settings.camera = "Integrated Webcam"
    window, known = stage.window, stage.window.calibration
    window.go(MainPage.SETUP)
    stage.engine.happen(LiveEventKind.RECOVERED)
    window.setup.camera_and_body.click()
    stage.settle()
    yield "known"
    known.overview.enter.click()
    stage.settle()
    known.lengths.fields[TRUNK].setText("12")
    known.lengths.keep.click()
    yield "known-wrong-length"
    known.lengths.leave.click()
    stage.settle()
    known.overview.calibrate.click()
    stage.settle()
    stage.engine.show(Phase.SEARCHING_FOR_PERSON)
    stage.settle(100)
    yield "known-lens"
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_DENIED)
    yield "known-lens-trouble"
    stage.engine.happen(LiveEventKind.RECOVERED)
    stage.settle()
    known.lens.leave.click()
    known.overview.uprights.click()
    stage.engine.show(Phase.SEARCHING_FOR_PERSON)
    stage.settle()
    yield "known-level"
    known.mark.take.click()
    for mark in ((200.0, 60.0), (203.0, 400.0)):
        known.mark.picture.mark(mark)
    yield "known-level-marked"
    known.mark.leave.click()
    known.overview.mark_back.click()
    stage.engine.show(Phase.SEARCHING_FOR_PERSON)
    stage.settle()
    yield "known-back"
    known.mark.leave.click()
    known.overview.retest.click()
    stage.settle()
    yield "known-retest"
    known.repeatability.leave.click()
    stage.settle()
    study = stage.home / "spring.csv"
    study.write_text(f"{HEADER}\n{table(_STUDIED)}\n", encoding="utf-8")
    known.show_study(study)
    stage.settle()
    yield "known-agreement"
    known.agreement.leave.click()
    stage.settle()
