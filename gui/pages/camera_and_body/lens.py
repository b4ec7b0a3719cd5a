"""Lens page: the printed board shown to the camera, guided view by view."""

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QWidget

from calibration.lens.capture import ENOUGH_VIEWS, CaptureGuidance, LensCapture, ViewOutcome
from calibration.lens.fit import COVERAGE_CELLS, FEWEST_VIEWS, LensFit
from gui.drawing.calibration_guides import Guide
from gui.pages.camera_and_body.coverage_grid import CoverageGrid
from gui.pages.camera_and_body.guide_panel import GuidePanel
from gui.pages.camera_and_body.picture_page import frame_picture
from gui.session.services import Services
from gui.session.tones import Tone
from gui.style.measures import GAP_PX
from gui.text.wording import message_text, tr
from gui.widgets.buttons import button, give_role
from gui.widgets.camera_trouble import TroubleSteps
from gui.widgets.camera_view import CameraView
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import column, row, widget_with
from gui.widgets.text import Steps, label
from measure.live.events import LiveFrame
from measure.storage.store import Store
from measure.video.frame import Picture


class LensPage(QWidget):
    """Looks at one picture at a time, beside the window's thread."""

    #: A profile was made and kept.
    kept = Signal()
    message_raised = Signal(str)
    back = Signal()
    board_wanted = Signal()

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        appearance = services.appearance
        self._cues, self._slow = services.cues, services.slow_worker
        self._capture: LensCapture | None = None
        self._busy = False
        self._mirrored = False
        self.sentence = FittedSentence(appearance, lines=1, heading=True)
        self.camera = CameraView(services, self.sentence, stills=True)
        self.camera.framed.connect(self.take_frame)
        self.coverage = CoverageGrid(appearance, self.camera.video)
        self.camera.troubled.connect(self._show_step)
        self.count = label("", "title")
        self.steps = Steps("step", present_role="step-here")
        self.guide = GuidePanel(appearance, Guide.BOARD)
        self.trouble = TroubleSteps(appearance, self.camera)
        self.make = button(tr("Save the lens profile"), "main")
        self.board = button(tr("Save the board to print"))
        #: Goes on without printing.
        self.have = button(tr("I have the board"))
        self.have.setProperty("leads_on", True)
        self.anew = button(tr("Start over"), "link")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.make.clicked.connect(self._make)
        self.anew.clicked.connect(self._start_over)
        self.leave.clicked.connect(self.back)
        self.board.clicked.connect(self.board_wanted)
        self.have.clicked.connect(self._have_board)
        self._camera_name, self._kept = "", 0
        #: Whether there is a board: until then it may not be printed yet.
        self._has_board = False
        self._lay_out(services)

    def _lay_out(self, services: Services) -> None:
        again = row(self.anew, 1)
        words = column(
            self.steps,
            (self.trouble, 1),
            self.count,
            again,
            0,
            spacing=2 * GAP_PX,
        )
        beside = self.camera, widget_with(words), self.guide
        buttons = [self.leave, self.have, self.board, self.make, self.camera.retry]
        self._shown = frame_picture(self, services, self.sentence, beside, buttons)

    def begin(self, camera: str, *, mirrored: bool) -> None:
        """Open the camera and begin to collect views; the page has to be in sight."""
        self._camera_name, self._mirrored = camera, mirrored
        self.camera.video.set_mirrored(mirrored)
        self.camera.open()
        self._start_over()
        self.leave.setFocus(Qt.FocusReason.OtherFocusReason)

    @Slot(object)
    def take_frame(self, frame: LiveFrame) -> None:
        """Look for the board in a frame, unless one is being looked at."""
        capture = self._capture
        if self._busy or capture is None:
            return
        self._busy = True
        width, height = frame.full_size_px
        # The frame's memory may be used again while this picture is looked at.
        picture = Picture(rgb=frame.picture.copy(), width_px=width, height_px=height)
        self._slow.run(
            lambda: capture.offer(picture),
            lambda guidance: self._guide(capture, guidance),
            self._failed,
        )

    @Slot()
    def _start_over(self) -> None:
        self._capture, self._busy = LensCapture(self._camera_name), False
        self.make.setEnabled(False)
        self.coverage.show_cells(self._no_cells(), mirrored=self._mirrored)
        self._has_board = False
        self._count(0)
        self.camera.say(tr("Lens: print the board first."))

    @Slot()
    def _have_board(self) -> None:
        """Go on to the board that was printed before."""
        self._has_board = True
        self.camera.say(tr("Hold the board in front of the camera."))
        self._show_step()

    @staticmethod
    def _no_cells() -> NDArray[np.bool_]:
        return np.zeros((COVERAGE_CELLS[1], COVERAGE_CELLS[0]), dtype=np.bool_)

    def _guide(self, capture: LensCapture, guidance: CaptureGuidance) -> None:
        if capture is not self._capture:
            return  # of views that were given up
        self._busy = False
        self._has_board |= guidance.view is not None
        self._count(guidance.kept)
        self.make.setEnabled(guidance.kept >= FEWEST_VIEWS)
        if guidance.coverage is not None:
            self.coverage.show_cells(guidance.coverage.cells, mirrored=self._mirrored)
        if self._has_board and guidance.view is not None:
            self.camera.say(message_text(guidance.message))
        if guidance.shown is ViewOutcome.KEPT:
            self._cues.sound(Tone.CAPTURED)
            self._cues.say(self.sentence.text)

    def _count(self, kept: int) -> None:
        self._kept = kept
        self.count.setText(tr("Views: {kept} of {enough}").format(kept=kept, enough=ENOUGH_VIEWS))
        self._show_step()

    @Slot()
    def _show_step(self) -> None:
        """Offer the step that is next: print the board, then show it; none without pictures."""
        pictures = self.camera.trouble is None
        printed = pictures and self._has_board
        seen = printed and self._kept > 0
        give_role(self.board, "main")
        self.steps.show_steps(
            (
                tr("Print the board at full size."),
                tr("Show it to the camera until every field has a tick."),
                tr("Save the lens profile."),
            ),
            done=int(printed),
        )
        self.steps.setVisible(pictures)
        self.count.setVisible(seen)
        self.guide.show_guide(Guide.BOARD if pictures else None)
        self._shown.lead_with_drawing(not printed)
        self.coverage.setVisible(printed)
        for first in (self.board, self.have):
            first.setVisible(pictures and not printed)
        self.anew.setVisible(seen)
        self.make.setVisible(seen)

    @Slot()
    def _make(self) -> None:
        """Fit the lens; a profile is kept, a refusal says what is missing."""
        capture = self._capture
        if capture is None:
            return
        self.make.setEnabled(False)
        self.camera.say(tr("Calculating the lens profile."))
        self._busy = True
        self._slow.run(lambda: fit_and_save(capture), self._fitted, self._failed)

    def _fitted(self, fit: LensFit) -> None:
        self._busy = False
        words = " ".join(map(message_text, fit.messages))
        self.message_raised.emit(words)
        if fit.profile is not None:
            self._capture = None
            self.kept.emit()
        else:
            self.camera.say(words)

    def _failed(self, why: str) -> None:
        self._busy = False
        self.message_raised.emit(why)


def fit_and_save(capture: LensCapture) -> LensFit:
    """Return the lens that the views make, kept if there is one."""
    fit = capture.fit()
    if fit.profile is not None:
        with Store.open() as store:
            store.save_lens(fit.profile)
    return fit
