"""Camera and body: the overview, lens, marking and agreement pages, and the ways between."""

from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QFileDialog, QStackedWidget, QWidget

from calibration.agreement.retest import repeatability_by_shoulder
from calibration.agreement.stored_corrections import set_correction_enabled
from calibration.body.lengths import lengths_from_tape
from calibration.body.record import save_body_lengths
from calibration.lens.board_sheet import save_board_sheet
from gui.pages.camera_and_body.agreement import AgreementPage
from gui.pages.camera_and_body.agreement_study import (
    AgreementStudy,
    analyse_study_file,
    save_proposed_corrections,
)
from gui.pages.camera_and_body.body_lengths import TRUNK, BodyLengthsPage
from gui.pages.camera_and_body.calibration_overview import CalibrationPage
from gui.pages.camera_and_body.lens import LensPage
from gui.pages.camera_and_body.marking import MarkedPoints, MarkingPage, MarkingTask
from gui.pages.camera_and_body.marking_tasks import (
    back_marking_task,
    level_marking_task,
    save_marked_back,
    save_marked_level,
)
from gui.pages.camera_and_body.repeatability import RepeatabilityPage, Results
from gui.session.services import Services
from gui.text.wording import tr
from gui.widgets.buttons import bind_keys
from measure.domain.calibration_records import BodySource
from measure.domain.movements import Movement
from measure.storage.store import Store


class CalibrationPages(QStackedWidget):
    """Shows one of its pages; the camera is open while the lens or marks are asked for."""

    message_raised = Signal(str)
    #: Back to where it was opened from.
    back = Signal()

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._marks_back = False
        appearance = services.appearance
        self.overview = CalibrationPage(appearance)
        self.lengths = BodyLengthsPage(appearance)
        self.lens = LensPage(services)
        self.mark = MarkingPage(services)
        self.agreement = AgreementPage(appearance)
        self.repeatability = RepeatabilityPage(appearance)
        for page in (
            self.overview,
            self.lengths,
            self.lens,
            self.mark,
            self.agreement,
            self.repeatability,
        ):
            self.addWidget(page)
        self._connect()
        for page, leave in (
            (self.overview, self.overview.leave),
            (self.lengths, self.lengths.leave),
            (self.lens, self.lens.leave),
            (self.mark, self.mark.leave),
            (self.agreement, self.agreement.leave),
            (self.repeatability, self.repeatability.leave),
        ):
            bind_keys(page, leave, "Escape")

    def _connect(self) -> None:
        overview = self.overview
        overview.lens_wanted.connect(self._begin_lens)
        overview.level_wanted.connect(self._begin_level)
        overview.marks_wanted.connect(self._begin_marks)
        overview.lengths_wanted.connect(self._begin_lengths)
        self.lengths.lengths_typed.connect(self._keep_lengths)
        overview.forget_places.connect(self._forget_places)
        overview.study_wanted.connect(self._open_study)
        overview.retest_wanted.connect(self._show_retest)
        overview.correction_switched.connect(self._switch)
        self.agreement.offers_wanted.connect(self._keep_offers)
        overview.back.connect(self.back)
        self.lens.board_wanted.connect(self._save_board)
        self.lens.kept.connect(self.show_calibration)
        self.lens.message_raised.connect(self.message_raised)
        self.mark.kept.connect(self._keep_marks)
        for page in (self.lengths, self.lens, self.mark, self.agreement, self.repeatability):
            page.back.connect(self.show_calibration)

    # -- the page of what is known ------------------------------------------------------------

    @Slot()
    def show_calibration(self) -> None:
        """Show what is kept, as it is now."""
        self.setCurrentWidget(self.overview)
        self.overview.keep_focus()
        services = self._services
        camera, person = services.settings.camera, services.person_id
        services.records.run(
            lambda: services.load_calibration(camera, person, services.today()),
            lambda state: self.overview.show_state(state, services.feed.size_px),
            self.message_raised.emit,
        )

    @Slot()
    def _save_board(self) -> None:
        name, _ = QFileDialog.getSaveFileName(
            self, tr("Save the board to print"), "board.pdf", "PDF (*.pdf)"
        )
        if name:
            advice = tr("Print it at 100 %. The line on it must measure 100 mm.")
            self._services.slow_worker.run(
                partial(save_board_sheet, Path(name)),
                lambda _: self.message_raised.emit(advice),
                self.message_raised.emit,
            )

    @Slot()
    def _begin_lengths(self) -> None:
        self.setCurrentWidget(self.lengths)
        self.lengths.begin()

    @Slot(object)
    def _keep_lengths(self, typed: dict[str, float]) -> None:
        person = self._person()
        if person is None:
            return
        lengths = lengths_from_tape(
            trunk_cm=typed[TRUNK],
            upper_arm_cm=typed.get("upper_arm"),
            forearm_cm=typed.get("forearm"),
            shoulder_width_cm=typed.get("shoulder_width"),
        )
        day = self._services.today()
        self._run(
            in_store(
                lambda store: save_body_lengths(store, person, lengths.body, BodySource.TAPE, day)
            )
        )

    @Slot()
    def _forget_places(self) -> None:
        person = self._person()
        if person is not None:
            self._run(in_store(lambda store: store.delete_placements(person)))

    def _run(self, work: Callable[[], object]) -> None:
        """Do what waits for the disk, then show what is kept."""
        self._services.records.run(
            work, lambda _: self.show_calibration(), self.message_raised.emit
        )

    def _person(self) -> str | None:
        person = self._services.person_id
        if person is None:
            self.message_raised.emit(tr("First choose the person on the Measure page."))
        return person

    def _camera(self) -> str | None:
        """Return the camera's name, which a profile belongs to."""
        camera = self._services.settings.camera
        if camera is None:
            self.message_raised.emit(tr("First choose the camera on the Set-up page."))
        return camera

    # -- pages with the camera ----------------------------------------------------------------

    @Slot()
    def _begin_lens(self) -> None:
        camera = self._camera()
        if camera is not None:
            self.setCurrentWidget(self.lens)
            self.lens.begin(camera, mirrored=self._services.mirrored)

    @Slot()
    def _begin_level(self) -> None:
        camera = self._camera()
        if camera is not None:
            self._begin_marking(level_marking_task(camera), back=False)

    @Slot()
    def _begin_marks(self) -> None:
        if self._person() is not None:
            self._begin_marking(back_marking_task(self._services.settings.camera), back=True)

    def _begin_marking(self, task: MarkingTask, *, back: bool) -> None:
        self._marks_back = back
        self.setCurrentWidget(self.mark)
        self.mark.begin(task)

    @Slot(object)
    def _keep_marks(self, marked: MarkedPoints) -> None:
        services = self._services
        camera, person, day = services.settings.camera, services.person_id, services.today()
        if self._marks_back and person is not None:
            self._run(lambda: save_marked_back(marked, camera, person, day))
        elif not self._marks_back and camera is not None:
            self._run(lambda: save_marked_level(marked, camera, day))

    # -- a study ------------------------------------------------------------------------------

    @Slot()
    def _open_study(self) -> None:
        name, _ = QFileDialog.getOpenFileName(
            self, tr("A table of camera and goniometer readings"), "", "CSV (*.csv)"
        )
        if name:
            self.show_study(Path(name))

    def show_study(self, path: Path) -> None:
        """Judge a table beside the window's thread, and show what it says."""
        self._services.slow_worker.run(
            lambda: analyse_study_file(path), self._show_study, self.message_raised.emit
        )

    @Slot(object)
    def _keep_offers(self, study: AgreementStudy) -> None:
        camera = self._camera()
        if camera is not None:
            self._run(lambda: save_proposed_corrections(study, camera))

    @Slot(object, bool)
    def _switch(self, movement: Movement, on: bool) -> None:
        """Use a correction from now on, or no longer; either starts a new series."""
        camera = self._camera()
        if camera is not None:
            self.message_raised.emit(tr("Readings from now on start a new series."))
            self._services.records.run(
                in_store(lambda store: set_correction_enabled(store, camera, movement, on=on)),
                failed=self.message_raised.emit,
            )

    @Slot()
    def _show_retest(self) -> None:
        person, services = self._person(), self._services
        if person is not None:
            services.records.run(
                lambda: repeatability_by_shoulder(services.keeper.store.history(person)),
                self._show_repeatability,
                self.message_raised.emit,
            )

    def _show_repeatability(self, results: Results) -> None:
        self.repeatability.show_results(results)
        self.setCurrentWidget(self.repeatability)

    def _show_study(self, study: AgreementStudy) -> None:
        self.agreement.show_study(study)
        self.setCurrentWidget(self.agreement)


def in_store(work: Callable[[Store], object]) -> Callable[[], object]:
    """Return a job for the thread that waits for the disk: open the store and do `work` in it."""

    def job() -> object:
        with Store.open() as store:
            return work(store)

    return job
