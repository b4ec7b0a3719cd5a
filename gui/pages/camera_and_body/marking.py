"""Marking page: upright lines, or neck and pelvis, marked in a picture of the camera."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QStackedWidget, QWidget

from gui.drawing.calibration_guides import Guide
from gui.pages.camera_and_body.guide_panel import GuidePanel
from gui.pages.camera_and_body.picture_page import frame_picture
from gui.pages.camera_and_body.point_marking import PointMarkingView
from gui.session.services import Services
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.camera_trouble import TroubleSteps
from gui.widgets.camera_view import CameraView
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import column, widget_with
from gui.widgets.text import Steps, label
from gui.widgets.video_view import image_of
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.landmarks import FloatArray
from measure.live.events import LiveFrame


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedPoints:
    """A picture with its marks.

    Attributes
    ----------
    marks_px
        Shape (n, 2), pixels of the full-size picture.
    points_px
        Shape (33, 2), the person's landmarks in the same pixels; None where nobody was seen.
    size_px
        Of the full-size picture.
    fixed
        Whether the camera was said to be fixed.
    """

    marks_px: FloatArray
    points_px: FloatArray | None
    size_px: tuple[int, int]
    fixed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkingTask:
    """What is to be marked.

    Attributes
    ----------
    before
        What to do before a picture is taken.
    steps
        What each mark is.
    least
        Number of marks that are needed; two more count where lines are marked.
    in_pairs
        Whether two marks make a line.
    needs_person
        Whether a person must be seen in the picture.
    describe
        Returns what the marks tell, in words; empty when they do not fit.
    outline
        The whole way in steps, of which taking the picture is the first.
    guide
        Drawing of what is marked.
    better
        Returns what to do where the marks tell too little to be kept; else nothing.
    """

    before: str
    steps: tuple[str, ...]
    least: int
    in_pairs: bool
    needs_person: bool
    describe: Callable[[MarkedPoints], str]
    outline: tuple[str, ...]
    guide: Guide
    better: Callable[[MarkedPoints], str] = lambda _marked: ""


class MarkingPage(QWidget):
    """Takes a picture, then its marks."""

    #: MarkedPoints that is to be kept.
    kept = Signal(object)
    back = Signal()

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        appearance = services.appearance
        self._services = services
        self._task: MarkingTask | None = None
        self._frame: LiveFrame | None = None
        self._still: LiveFrame | None = None
        self.sentence = FittedSentence(appearance, lines=1, heading=True)
        # The picture is shown as it is, never mirrored.
        self.camera = CameraView(services, self.sentence, stills=True)
        self.camera.framed.connect(self.take_frame)
        self.camera.happened.connect(self._take_event)
        self.camera.troubled.connect(self._refresh)
        self.picture = PointMarkingView(appearance)
        self.steps = Steps("step", present_role="step-here")
        self.guide = GuidePanel(appearance)
        self.trouble = TroubleSteps(appearance, self.camera)
        self.description_label = label("", "step-here")
        #: What marks tell that are too little.
        self.detail_label = label("", "step")
        self.fixed = WrappingCheckBox(appearance, tr("The camera stays where it is"))
        self.stays = label(tr("Then this level is used on later days too."), "quiet")
        self.take = button(tr("Take this picture"), "main")
        self.again = button(tr("Another picture"))
        self.undo = button(tr("Undo the last mark"))
        #: In its place once the marks are whole and do not do.
        self.redo = button(tr("Mark again"), "main")
        self.keep = button(tr("Save"), "main")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.take.clicked.connect(self._take)
        self.again.clicked.connect(self._again)
        self.undo.clicked.connect(self.picture.take_back)
        self.redo.clicked.connect(self._mark_again)
        self.keep.clicked.connect(self._keep)
        self.leave.clicked.connect(self.back)
        self.picture.changed.connect(self._refresh)
        self._views = QStackedWidget()
        self._lay_out()

    def _lay_out(self) -> None:
        for view in (self.camera, self.picture):
            self._views.addWidget(view)
        words = column(
            self.description_label,
            self.detail_label,
            self.steps,
            (self.trouble, 1),
            column(self.fixed, self.stays, spacing=0),
            0,
            spacing=2 * GAP_PX,
        )
        ways = [self.leave, self.again, self.undo]
        buttons = [*ways, self.redo, self.take, self.keep, self.camera.retry]
        beside = self._views, widget_with(words), self.guide
        frame_picture(self, self._services, self.sentence, beside, buttons)

    @property
    def is_live(self) -> bool:
        """Whether the camera's picture is shown, and none is taken yet."""
        return self._still is None

    def begin(self, task: MarkingTask) -> None:
        """Open the camera and begin with its picture; the page has to be in sight."""
        self._task, self._still, self._frame = task, None, None
        self._refresh()
        self.camera.open()
        self.leave.setFocus(Qt.FocusReason.OtherFocusReason)

    @Slot(object)
    def take_frame(self, frame: LiveFrame) -> None:
        """Have the newest frame ready to be taken, as long as none was."""
        if self.is_live:
            self._frame = frame
            could, can = self.take.isEnabled(), self._may_take(frame)
            self.take.setEnabled(can)
            if can and not could:
                self.take.setFocus(Qt.FocusReason.OtherFocusReason)

    @Slot()
    def _take_event(self) -> None:
        """Let a picture go that came before a trouble."""
        if self.is_live and self.camera.trouble is not None:
            self._frame = None
        self._refresh()

    def _may_take(self, frame: LiveFrame | None) -> bool:
        task = self._task
        if frame is None or task is None:
            return False
        return frame.points_px is not None or not task.needs_person

    @Slot()
    def _take(self) -> None:
        if self._task is None or self._frame is None or not self._may_take(self._frame):
            return
        self._still = self._frame
        self.picture.show_picture(
            image_of(self._still), most=len(self._task.steps), in_pairs=self._task.in_pairs
        )
        self._refresh()
        self.picture.setFocus(Qt.FocusReason.OtherFocusReason)

    @Slot()
    def _again(self) -> None:
        if self._task is not None:
            self.begin(self._task)

    @Slot()
    def _mark_again(self) -> None:
        """Begin anew in the same picture."""
        self.picture.clear()
        self.picture.setFocus(Qt.FocusReason.OtherFocusReason)

    @Slot()
    def _refresh(self) -> None:
        """Say what to mark next, and what the marks tell so far."""
        task = self._task
        if task is None:
            return
        live, many = self.is_live, len(self.picture.marks_px)
        self._views.setCurrentWidget(self.camera if live else self.picture)
        pictures = self.camera.trouble is None or not live
        self.steps.show_steps(task.outline, done=0 if live else 1)
        self.steps.setVisible(pictures and not (many and not live))
        self.guide.show_guide(task.guide if pictures else None)
        self.take.setVisible(live and pictures)
        self.take.setEnabled(self._may_take(self._frame))
        self.again.setVisible(not live)
        description = better = ""
        enough = not live and many >= task.least and not (task.in_pairs and many % 2)
        if enough:
            description = task.describe(self._marked())
            better = task.better(self._marked()) if description else ""
        good = bool(description) and not better
        words = better or description or (tr("These marks do not fit.") if enough else "")
        detail = description if better else ""
        for said, text in ((self.description_label, words), (self.detail_label, detail)):
            said.setText(text)
            said.setVisible(bool(text))
        self.keep.setEnabled(good)
        self.keep.setVisible(good)
        in_vain = enough and not good
        self.redo.setVisible(in_vain)
        self.undo.setVisible(many > 0 and not live and not in_vain)
        for member in (self.fixed, self.stays):
            member.setVisible(task.in_pairs and good)
        if live:
            self.camera.say(task.before)
        elif better:
            self.sentence.say(tr("The line is too short."))
        elif many < len(task.steps):
            self.sentence.say(task.steps[many])
        else:
            self.sentence.say(tr("Save it, or take another picture."))

    @Slot()
    def _keep(self) -> None:
        if self._still is not None:
            self.kept.emit(self._marked())

    def _marked(self) -> MarkedPoints:
        still = self._still
        assert still is not None
        width, height = still.full_size_px
        scale = width / still.picture.shape[1], height / still.picture.shape[0]

        def full(points: FloatArray) -> FloatArray:
            grown: FloatArray = (points + 0.5) * np.array(scale) - 0.5
            return grown

        points = still.points_px
        return MarkedPoints(
            marks_px=full(np.array(self.picture.marks_px, dtype=np.float64)),
            points_px=None if points is None else full(np.asarray(points)),
            size_px=(width, height),
            fixed=self.fixed.isChecked(),
        )
