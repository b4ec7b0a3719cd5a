"""Camera and body: what is kept is shown; the lens, marks and lengths by mouse or keyboard."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import TypeVar

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QFileDialog, QLabel, QLineEdit

from calibration.statistics.repeatability import RetestSession, repeatability
from gui.app.window_pages import MainPage
from gui.pages.camera_and_body.body_lengths import TRUNK
from gui.pages.camera_and_body.change_band import ChangeBand
from gui.session.known_setup import SetupProvider, load_stored_setup
from gui.session.known_state import load_calibration_state
from measure.camera.faults import SourceFault
from measure.domain.calibration_records import BodySource
from measure.domain.landmarks import LANDMARKS, Landmark, Side
from measure.domain.movements import Movement
from measure.live.events import LiveEventKind, LiveFrame, Phase
from measure.storage.store import Store
from tests.calibration.placement.test_placement import placed
from tests.support.gui.stage import TODAY, WindowHarness
from tests.support.setup_samples import sample_lens
from tests.support.virtual_board import MORE, USUAL, photograph, poses

CAMERA = "Integrated Webcam"
T = TypeVar("T")


@pytest.fixture
def known(stored_stage: WindowHarness) -> WindowHarness:
    """A stage on the page of what is known, with a data folder of its own."""
    stage = stored_stage
    stage.services.load_calibration = load_calibration_state
    stage.services.setup_provider = SetupProvider(load_stored_setup)
    stage.services.settings.camera = CAMERA
    stage.window.go(MainPage.SETUP)
    stage.window.setup.camera_and_body.click()
    stage.settle()
    return stage


def stored(work: Callable[..., T], *arguments: object) -> T:
    """Return what `work` returns for the store in the data folder."""
    with Store.open() as store:
        return work(store, *arguments)


def person_of(stage: WindowHarness) -> str:
    return stage.store.people()[0].id


def frame(grey: np.ndarray, points_px: np.ndarray | None = None) -> LiveFrame:
    return LiveFrame(
        picture=np.ascontiguousarray(np.repeat(grey[:, :, None], 3, axis=2)),
        frame_id=1,
        time_s=0.0,
        phase=Phase.SEARCHING_FOR_PERSON,
        points_px=points_px,
    )


def blank() -> np.ndarray:
    return np.full((480, 640), 120, dtype=np.uint8)


def from_behind() -> np.ndarray:
    """Landmarks of somebody's back: the trunk 200 pixels high."""
    points = np.full((LANDMARKS, 2), 300.0)
    for mark, place in (
        (Landmark.LEFT_SHOULDER, (250, 150)),
        (Landmark.RIGHT_SHOULDER, (390, 150)),
        (Landmark.LEFT_HIP, (280, 350)),
        (Landmark.RIGHT_HIP, (360, 350)),
    ):
        points[mark] = place
    return points


def test_the_page_is_reached_from_the_set_up_and_left_by_a_key(known: WindowHarness) -> None:
    pages = known.window.calibration
    assert pages.isVisible()
    assert pages.currentWidget() is pages.overview
    assert pages.overview.lens.text() == "10 min \u00b7 For an arm near the picture's edge"
    assert pages.overview.calibrate.hasFocus()
    QTest.keyClick(pages.overview.calibrate, Qt.Key.Key_Escape)
    assert known.window.setup.isVisible()


def test_leaving_for_another_page_lets_the_camera_go(known: WindowHarness) -> None:
    known.window.calibration.overview.calibrate.click()
    assert known.services.feed.running
    engine = known.engine
    known.window.go(MainPage.PROGRESS)
    known.settle(100)
    assert engine.closed
    assert not known.services.feed.running


def test_everything_on_these_pages_can_be_named_and_reached_by_the_keyboard(
    known: WindowHarness,
) -> None:
    pages = known.window.calibration
    pages.overview.calibrate.click()
    pages.show_calibration()
    for kind in (QAbstractButton, QLineEdit):
        for each in pages.findChildren(kind):
            assert each.accessibleName(), each
            assert each.focusPolicy() is not Qt.FocusPolicy.NoFocus
    assert pages.mark.picture.accessibleName()
    assert pages.lens.coverage.accessibleName()


# -- the lens ---------------------------------------------------------------------------------


def test_the_board_is_saved_for_printing(
    known: WindowHarness, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "board.pdf"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(target), ""))
    known.window.calibration.lens.board.click()
    known.settle()
    assert target.read_bytes().startswith(b"%PDF")
    assert "100 mm" in known.window.messages.text


def test_a_lens_is_guided_made_and_kept(known: WindowHarness) -> None:
    pages = known.window.calibration
    pages.overview.calibrate.click()
    page = pages.lens
    assert not page.make.isEnabled()
    for place, pose in enumerate(poses(USUAL, MORE)[:16]):
        view = frame(photograph(USUAL, pose, noise=3))
        for _ in range(2):  # the second time it is still
            page.take_frame(view)
            known.settle()
        assert page.count.text() == f"Views: {place + 1} of 24"
    assert page.coverage.accessibleName() == "The board was seen in 100 % of the picture."
    assert page.sentence.text == "Please move or tilt the board: 16 of 24 views."
    known.services.feed.size_px = (640, 480)  # as these pictures are
    page.make.click()
    known.settle()
    (profile,) = stored(Store.lenses)
    assert profile.camera_name == CAMERA
    assert profile.focal_px == pytest.approx((500, 500), rel=0.01)
    assert "Lens calculated from 16 views" in known.window.messages.text
    assert pages.currentWidget() is pages.overview
    assert pages.overview.lens.text().startswith("\u2713  Calibrated at 640 x 480 pixels")
    assert known.services.source().setup.camera.lens == profile


def test_a_profile_of_another_picture_size_is_not_called_calibrated(known: WindowHarness) -> None:
    profile = sample_lens(camera_name=CAMERA)
    stored(Store.save_lens, profile)
    assert known.services.feed.size_px == (1280, 720)
    known.window.calibration.show_calibration()
    known.settle()
    words = known.window.calibration.overview.lens
    assert words.text() == (
        "\u25b6  The lens was calibrated at 640 x 480 pixels, which does not apply at "
        "1280 x 720; a typical field of view is assumed. Calibrate the lens at this size too."
    )
    stored(Store.save_lens, replace(profile, width_px=1280, height_px=720))
    stored(Store.save_lens, replace(profile, width_px=1920, height_px=1080))
    known.window.calibration.show_calibration()
    known.settle()
    assert words.text() == "\u2713  Calibrated at 1280 x 720 pixels: 104 degrees wide."


def test_too_few_views_are_refused_with_what_to_do(known: WindowHarness) -> None:
    page = known.window.calibration.lens
    known.window.calibration.overview.calibrate.click()
    page.take_frame(frame(blank()))
    known.settle()
    assert page.sentence.text == "Lens: print the board first."
    page.make.setEnabled(True)
    page.make.click()
    known.settle()
    assert page.sentence.text.startswith("No lens profile was created. Useful views")
    assert stored(Store.lenses) == []
    assert known.window.calibration.currentWidget() is page


def test_without_a_chosen_camera_no_profile_is_begun(known: WindowHarness) -> None:
    known.services.settings.camera = ""
    known.window.calibration.overview.calibrate.click()
    assert known.window.calibration.currentWidget() is known.window.calibration.overview
    assert "First choose the camera" in known.window.messages.text


def test_a_camera_without_a_picture_has_steps_of_its_own(known: WindowHarness) -> None:
    known.window.calibration.overview.calibrate.click()
    known.settle()
    page = known.window.calibration.lens
    assert page.steps.isVisible()
    assert not page.trouble.isVisible()
    known.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_DENIED)
    known.settle()
    said = [words.text() for words in page.trouble.findChildren(QLabel) if words.isVisible()]
    assert said[1::2][-1].replace("\xa0", " ") == "Then press Try again."
    assert not page.steps.isVisible()
    main = [one for one in (page.board, page.make, page.camera.retry) if one.isVisible()]
    assert main == [page.camera.retry]


def test_the_present_step_stands_out(known: WindowHarness) -> None:
    known.window.calibration.overview.calibrate.click()
    known.settle()
    page = known.window.calibration.lens

    def bold() -> list[str]:
        shown = [words for words in page.steps.findChildren(QLabel) if words.isVisible()]
        return [words.text().replace("\xa0", " ") for words in shown if words.font().bold()]

    assert bold() == ["1", "Print the board at full size."]
    assert page.guide.width() > page.camera.width()
    page.have.click()
    known.settle()
    assert page.guide.width() < page.camera.width()
    assert bold() == ["2", "Show it to the camera until every field has a tick."]


def test_a_board_that_is_seen_moving_is_guided(known: WindowHarness) -> None:
    known.window.calibration.overview.calibrate.click()
    page = known.window.calibration.lens
    page.take_frame(frame(photograph(USUAL, poses(USUAL, MORE)[0], noise=3)))
    known.settle()
    assert page.sentence.text not in ("", "Lens: print the board first.")
    assert not page.count.isVisible()


# -- marks ------------------------------------------------------------------------------------


def test_a_door_frame_marked_with_the_mouse_gives_the_level(known: WindowHarness) -> None:
    pages = known.window.calibration
    pages.overview.uprights.click()
    page = pages.mark
    assert not page.take.isEnabled()
    page.take_frame(frame(blank()))
    page.take.click()
    transform = page.picture.transform()
    assert transform is not None
    for mark in ((320.0, 40.0), (320.0, 440.0)):
        x, y = transform.points(np.array(mark))
        QTest.mouseClick(
            page.picture,
            Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.NoModifier,
            QPoint(round(x), round(y)),
        )
    assert page.picture.marks_px == pytest.approx(np.array([(320, 40), (320, 440)]), abs=1.5)
    assert "give or take" in page.description_label.text()
    page.fixed.setChecked(True)
    page.keep.click()
    known.settle()
    level = stored(Store.level, CAMERA)
    assert level is not None
    assert level.roll_deg == pytest.approx(0, abs=0.3)
    assert (level.day, level.fixed) == (TODAY, True)
    assert pages.currentWidget() is pages.overview
    assert pages.overview.level.text().startswith("\u2713  Turned")


def test_neck_and_pelvis_marked_by_the_keyboard_alone(known: WindowHarness) -> None:
    pages = known.window.calibration
    pages.overview.mark_back.click()
    page = pages.mark
    page.take_frame(frame(blank()))
    assert not page.take.isEnabled()  # nobody is seen
    page.take_frame(frame(blank(), from_behind()))
    assert page.take.hasFocus()
    QTest.keyClick(page.take, Qt.Key.Key_Space)
    picture = page.picture
    assert picture.hasFocus()

    def move(key: Qt.Key, times: int) -> None:
        for _ in range(times):
            QTest.keyClick(picture, key)

    # From the picture's middle, 320 x 240, in steps of ten.
    move(Qt.Key.Key_Up, 13)
    QTest.keyClick(picture, Qt.Key.Key_Space)
    move(Qt.Key.Key_Down, 22)
    move(Qt.Key.Key_Left, 2)
    QTest.keyClick(picture, Qt.Key.Key_Space)
    move(Qt.Key.Key_Right, 9)
    QTest.keyClick(picture, Qt.Key.Key_Return)
    QTest.keyClick(picture, Qt.Key.Key_Backspace)
    assert len(picture.marks_px) == 2
    move(Qt.Key.Key_Left, 5)
    QTest.keyClick(picture, Qt.Key.Key_Return)
    assert picture.marks_px == [(320.0, 110.0), (300.0, 330.0), (340.0, 330.0)]
    assert page.description_label.text().startswith("Neck at 120 %, pelvis at 10 %")
    page.keep.click()
    known.settle()
    record = stored(Store.body, person_of(known))
    assert record is not None
    assert record.body.c7_height == pytest.approx(1.2)
    assert record.body.iliac_spines == pytest.approx(0.1)
    assert pages.overview.marks.text() == "\u2713  Measured on 2026-11-25."
    assert known.services.source().setup.body.c7_height == pytest.approx(1.2)


def test_a_line_that_is_too_short_says_first_what_to_do(known: WindowHarness) -> None:
    known.window.calibration.overview.uprights.click()
    page = known.window.calibration.mark
    page.take_frame(frame(blank()))
    page.take.click()
    for mark in ((60.0, 100.0), (60.0, 300.0)):
        page.picture.mark(mark)
    assert page.sentence.text == "The line is too short."
    assert page.description_label.text() == "Mark a longer edge, such as a whole door frame."
    assert page.detail_label.text().startswith("It shows the level to within ")
    assert page.detail_label.isVisible()
    assert not page.keep.isVisible()
    assert not page.undo.isVisible()
    assert page.redo.property("role") == "main"
    page.redo.click()
    assert page.picture.marks_px == []
    assert page.picture.hasFocus()
    assert page.sentence.text == "Mark the upper end of something upright."
    assert not page.detail_label.isVisible()
    assert not page.redo.isVisible()


def test_marks_that_do_not_fit_are_not_kept(known: WindowHarness) -> None:
    pages = known.window.calibration
    pages.overview.mark_back.click()
    page = pages.mark
    page.take_frame(frame(blank(), from_behind()))
    page.take.click()
    for mark in ((320.0, 300.0), (300.0, 330.0), (340.0, 330.0)):
        page.picture.mark(mark)
    assert page.description_label.text() == "These marks do not fit."
    assert not page.keep.isEnabled()
    page.picture.mark((1.0, 1.0))
    assert len(page.picture.marks_px) == 3
    page.again.click()
    assert page.is_live


# -- lengths, places --------------------------------------------------------------------------


def test_typed_lengths_are_kept_and_used(known: WindowHarness) -> None:
    pages = known.window.calibration
    pages.overview.enter.click()
    page = pages.lengths
    assert page.isVisible()
    for name, text in ((TRUNK, "49"), ("upper_arm", "30,5"), ("forearm", "25.5")):
        page.fields[name].setText(text)
    page.keep.click()
    known.settle()
    record = stored(Store.body, person_of(known))
    assert record is not None
    assert record.lengths_from is BodySource.TAPE
    assert record.body.upper_arm == pytest.approx(30.5 / 49)
    assert record.body.shoulder_width is None
    assert pages.overview.isVisible()
    assert pages.overview.lengths.text() == "\u2713  Measured on 2026-11-25."
    pages.overview.enter.click()
    assert page.fields[TRUNK].text() == ""
    assert record.body.forearm == pytest.approx(25.5 / 49)
    assert known.services.source().setup.body.upper_arm == pytest.approx(30.5 / 49)


def test_text_for_a_number_is_answered_in_words(known: WindowHarness) -> None:
    known.window.calibration.overview.enter.click()
    page = known.window.calibration.lengths
    page.fields[TRUNK].setText("long")
    page.keep.click()
    assert page.wrong.text() == "\u2717  long is not a number."
    assert page.advice.text() == "Check the length marked \u2717, then save."
    assert not page.keep.isEnabled()
    assert stored(Store.body, person_of(known)) is None
    page.fields[TRUNK].setText("49")
    assert page.keep.isEnabled()
    assert page.keep.property("role") == "main"


def test_kept_places_are_counted_and_forgotten(known: WindowHarness) -> None:
    who = known.keeper.store.people()[0].id
    stored(Store.save_placement, placed(person_id=who, movement=Movement.FLEXION))
    pages = known.window.calibration
    pages.show_calibration()
    known.settle()
    assert pages.overview.place.text() == "\u2713  Places saved: 1."
    pages.overview.forget.click()
    known.settle()
    assert stored(Store.placements, who) == []
    assert not pages.overview.forget.isEnabled()


# -- studies ----------------------------------------------------------------------------------


def test_a_table_of_readings_is_judged_with_its_plot(known: WindowHarness, tmp_path: Path) -> None:
    rows = ["person,movement,side,camera_deg,goniometer_deg"]
    rows += [f"m{n},flexion,left,{80 + 5 * n},{82 + 5 * n + n % 3}" for n in range(12)]
    table = tmp_path / "spring.csv"
    table.write_text("\n".join(rows), encoding="utf-8")
    pages = known.window.calibration
    pages.show_study(table)
    known.settle()
    assert pages.currentWidget() is pages.agreement
    assert "12 pairs" in pages.agreement.words.text()
    assert pages.agreement.heading.text() == "Flexion: 3.0\u00b0 less than the goniometer."
    (plot,) = pages.agreement.plots
    assert plot.isVisible()
    assert plot.accessibleName() == "plot of the differences: Flexion"
    pages.agreement.leave.click()
    assert pages.currentWidget() is pages.overview


def test_a_table_that_cannot_be_judged_is_told(known: WindowHarness, tmp_path: Path) -> None:
    table = tmp_path / "spring.csv"
    table.write_text("person,movement\na,flexion", encoding="utf-8")
    known.window.calibration.show_study(table)
    known.settle()
    assert "camera_deg" in known.window.messages.text
    assert known.window.calibration.currentWidget() is known.window.calibration.overview


def test_how_well_own_sessions_repeat(known: WindowHarness) -> None:
    known.window.calibration.overview.retest.click()
    known.settle()
    page = known.window.calibration.repeatability
    assert known.window.calibration.currentWidget() is page
    assert page.nothing.isVisible()
    assert page.sentence.text() == "How much change is likely real?"


def test_own_sessions_say_which_change_is_likely_real(known: WindowHarness) -> None:
    """Ten sessions of flexion, three trials each, two degrees about one line."""
    page = known.window.calibration.repeatability
    sessions = [
        RetestSession(day=day, trials=(100 + 2 * (-1) ** day, 101 + 2 * (-1) ** day))
        for day in range(0, 30, 3)
    ]
    result = repeatability(Movement.FLEXION, sessions)
    page.show_results({(Movement.FLEXION, Side.LEFT): result})
    amount = f"{result.mdc90:.0f}°"
    meaning = "Nine of ten repeat sessions differ by less."
    basis = "From 10 recorded sessions. No drift is shown."

    def texts() -> list[str]:
        labels = page.table.findChildren(QLabel)
        return [words.text() for words in labels if words.isVisibleTo(page)]

    assert texts() == ["Flexion, left arm", meaning, basis]
    assert page.sentence.text() == f"{amount} or more is likely a real change."
    words = f"drawing: changes of less than {amount} may be chance"
    bands = page.table.findChildren(ChangeBand)
    assert bands[-1].accessibleName() == words
    page.show_results(dict.fromkeys([(Movement.FLEXION, side) for side in Side], result))
    assert page.sentence.text() == "How much change is likely real?"
    told = [amount, meaning, basis]
    assert texts() == ["Flexion, left arm", *told, "Flexion, right arm", *told]


def test_an_offered_correction_is_kept_off_and_switched_on(
    known: WindowHarness, tmp_path: Path
) -> None:
    """A camera that reads five degrees too much, in forty people."""
    rows = ["person,movement,side,camera_deg,goniometer_deg"]
    rows += [f"m{n},flexion,left,{65 + 2 * n + n % 3},{60 + 2 * n + n % 2}" for n in range(40)]
    table = tmp_path / "spring.csv"
    table.write_text("\n".join(rows), encoding="utf-8")
    pages = known.window.calibration
    pages.show_study(table)
    known.settle()
    assert pages.agreement.keep.isVisible()
    pages.agreement.keep.click()
    known.settle()
    assert pages.currentWidget() is pages.overview
    (tick,) = pages.overview.corrections
    assert tick.text() == "Correct flexion by the study spring (40 pairs)"
    assert not tick.isChecked()
    assert known.services.source().setup_of(Movement.FLEXION).correction is None
    tick.click()
    known.settle()
    correction = known.services.source().setup_of(Movement.FLEXION).correction
    assert correction is not None
    assert 4.0 < correction.bias_deg < 7.0
    assert known.window.messages.text == "Readings from now on start a new series."
    pages.show_calibration()
    known.settle()
    assert pages.overview.corrections[0].isChecked()
    pages.overview.corrections[0].click()
    known.settle()
    assert known.services.source().setup_of(Movement.FLEXION).correction is None
