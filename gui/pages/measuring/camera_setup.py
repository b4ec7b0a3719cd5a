"""Set-up page: choice of the camera, advice on the place, check of left and right."""

import time
from collections.abc import Sequence

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt, Signal, Slot
from PySide6.QtGui import (
    QHideEvent,
    QIcon,
    QImage,
    QKeySequence,
    QPainter,
    QPixmap,
    QShortcut,
    QShowEvent,
)
from PySide6.QtWidgets import (
    QButtonGroup,
    QPushButton,
    QWidget,
)

from gui.pages.measuring.live_grid import SetupGrid
from gui.session.services import Services
from gui.session.setup_check import (
    AMISS,
    GOOD,
    SetupAspect,
    SideCheck,
    aspect_text,
    line_amiss,
    raise_sentence,
    setup_sentence,
    side_check_text,
)
from gui.session.tones import Tone
from gui.style.measures import BAR_PX, GAP_PX, MARGIN_PX
from gui.text.session_wording import trouble_sentence
from gui.text.wording import tr
from gui.widgets.buttons import ButtonRow, ElidedButton, bind_keys, button, give_role
from gui.widgets.camera_trouble import FAR_GOOD, FAR_STEP, FAR_WRONG, TroubleSteps, paint_camera
from gui.widgets.camera_view import CameraView
from gui.widgets.figures.position_figure import PositionView
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import (
    ABOVE_GROUP,
    BELOW_GROUP,
    FlowRow,
    card,
    column,
    row,
    separator,
    widget_with,
)
from gui.widgets.scroll_page import bring_to_top
from gui.widgets.side_by_side import LARGE_FROM_PERCENT
from gui.widgets.text import SignedLine, label
from gui.widgets.video_view import image_of
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.live.events import LiveEvent, LiveEventKind, LiveFrame

_THUMBNAIL = QSize(80, 45)
#: Between a small picture and its name, beside the gap that a button has there, pixels.
#: [technical]
_BEFORE_NAME_PX = 8
_THUMBNAIL_EVERY_S = 0.5
#: Least height of the drawing of a raised hand, pixels. [technical]
_HAND_PX = 120
#: Cameras that have room beneath the checks. [technical]
_TILES = 2


class SetupPage(QWidget):
    """Shows the camera while the page is open, and says what to change."""

    mirror_changed = Signal(bool)
    #: The place is good enough; measuring is to begin.
    measuring_wanted = Signal()
    #: The pages of what is known about camera and body.
    calibration_requested = Signal()
    #: Text size, language, voice and the rest.
    settings_requested = Signal()

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._frame: LiveFrame | None = None
        self._thumbnail_at = 0.0
        #: The hand to raise while left and right are checked.
        self._asked: Side | None = None
        self.sentence = FittedSentence(services.appearance, lines=1, heading=True)
        self.camera = CameraView(services, self.sentence)
        self.camera.video.set_framing(True)
        self.camera.framed.connect(self._take_frame)
        self.camera.happened.connect(self._take_event)
        self.camera.retry.clicked.connect(self.find_cameras)
        self.trouble = TroubleSteps(services.appearance, self.camera)
        self.cameras: list[QPushButton] = []
        self._group = QButtonGroup(self)
        self._group.idClicked.connect(self._choose_camera)
        self._tiles = FlowRow(2 * GAP_PX, most_columns=1)
        self.search_again = button(tr("Look for cameras again"), "link")
        self.search_again.clicked.connect(self.find_cameras)
        self.checks = {place: SignedLine("", "", FAR_STEP) for place in SetupAspect}
        #: In place of the checks while nothing is seen.
        self.unseen = SignedLine("\u25cb", tr("Nothing seen yet"), FAR_STEP)
        self.mirror = WrappingCheckBox(services.appearance, tr("Mirror the picture"))
        self.mirror.setChecked(services.mirrored)
        self.mirror.toggled.connect(self._mirror_toggled)
        self.hand = button(tr("Check left and right"))
        self.hand.clicked.connect(self.ask_for_hand)
        self.other_hand = button("")
        self.other_hand.clicked.connect(self._ask_for_other_hand)
        self.hand_words = label("", "title")
        why = tr("Thawline then knows left from right. Raise it only as far as is comfortable.")
        self.hand_note = label(why, FAR_STEP)
        #: Gives up the check of left and right.
        self.end_asking = button(tr("Back"), key=tr("Escape"))
        self.end_asking.clicked.connect(self._stop_asking)
        QShortcut(QKeySequence("Escape"), self.end_asking).activated.connect(self.end_asking.click)
        self.hand_figure = PositionView(services.appearance, still=True, close=True)
        self.hand_figure.setMinimumHeight(_HAND_PX)
        self.camera_and_body = button(tr("Camera and body"))
        self.camera_and_body.clicked.connect(self._show_calibration)
        self.settings = button(tr("Settings"))
        self.settings.clicked.connect(self.settings_requested)
        self.tone = button(tr("Play a tone"))
        self.voice = button(tr("Say a sentence"))
        self.sound_words = label("", "small")
        #: Opens what few people need: sound, sides, what makes ranges narrower.
        self.more = button(tr("Camera, sound and more"), "link", checkable=True)
        #: The main button once the place is good; until then it is a quiet one.
        self.start = button(tr("Start measuring"), key=tr("Enter"))
        self.start.setProperty("leads_on", True)
        for source, slot in (
            (self.tone, self.play_tone),
            (self.voice, self.say_sentence),
            (self.start, self.measuring_wanted),
        ):
            source.clicked.connect(slot)
        bind_keys(self, self.start, "Return", "Enter")
        self._lay_out()

    def _lay_out(self) -> None:
        sides = card(label(tr("Left and right"), "quiet"), self.mirror, self.hand)
        tries = FlowRow(GAP_PX, filling=False)
        tries.offer([self.tone, self.voice])
        sound = card(label(tr("Sound and voice"), "quiet"), tries, self.sound_words)
        surer = card(label(tr("For narrower ranges"), "quiet"), self.camera_and_body)
        self._extras = widget_with(
            column(sides, sound, surer, row(self.settings, 1), spacing=2 * GAP_PX)
        )
        self._extras.setVisible(False)
        self.more.toggled.connect(self._show_extras)
        #: What is not right yet comes first.
        self._lines = column(spacing=2 * GAP_PX)
        self._rules = [separator() for _ in range(len(self.checks) - 1)]
        self._put_in_order(list(self.checks))
        self._place = self._checks_card()
        waiting = SignedLine("\u25cb", tr("Waiting for your hand"), FAR_STEP)
        self._drawn = card(self.hand_note, (self.hand_figure, 1), waiting, spacing=GAP_PX)
        side = widget_with(
            column(
                (self.trouble, 1),
                self.hand_words,
                (self._drawn, 1),
                (self._place, 1),
                self._tiles,
                row(self.search_again, 1),
                self._extras,
                spacing=2 * GAP_PX,
            )
        )
        grid = SetupGrid(self._services.appearance, self.camera, side)
        around = MARGIN_PX
        asking = [self.end_asking, self.other_hand]
        buttons = [self.more, *asking, self.camera.retry, self.start]
        foot = row(ButtonRow(buttons, wide=True), margins=(around, GAP_PX, around, GAP_PX))
        framed = column(
            self.sentence,
            (grid, 1),
            margins=(around, around, around - BAR_PX, 2 * GAP_PX),
            spacing=2 * GAP_PX,
        )
        column((framed, 1), separator(), foot, on=self, spacing=0)

    def _checks_card(self) -> QWidget:
        """Return a card with the lines, or the one for nothing seen, as one group."""
        return card(ABOVE_GROUP, self.unseen, self._lines, BELOW_GROUP)

    def _put_in_order(self, aspects: Sequence[SetupAspect]) -> None:
        """Put the lines one below the other, rules between them."""
        while self._lines.takeAt(0) is not None:
            pass
        for rule, aspect in zip((None, *self._rules), aspects, strict=True):
            if rule is not None:
                self._lines.addWidget(rule)
            self._lines.addWidget(self.checks[aspect])
        self._in_order = list(aspects)

    # -- opening and closing ------------------------------------------------------------------

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.camera.video.set_mirrored(self._services.mirrored)
        self.find_cameras()
        self.camera.open()
        self.refresh()

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self._frame, self._asked = None, None
        self.hand_words.setText("")

    def _reopen(self) -> None:
        """Open the camera as it is chosen now."""
        self._frame = None
        self.camera.reopen()
        self.refresh()

    @Slot()
    def find_cameras(self) -> None:
        """List the cameras anew; that takes a moment."""
        services = self._services
        services.slow_worker.run(services.find_cameras, self._show_cameras, self._no_cameras)

    def _no_cameras(self, why: str) -> None:
        self._show_cameras(())
        self.search_again.setToolTip(why)

    def _show_cameras(self, names: Sequence[str]) -> None:
        for widget in self.cameras:
            self._group.removeButton(widget)
        self.cameras = []
        clip = self._services.source().clip
        shown = [clip.name] if clip else list(names)
        chosen = self._services.settings.camera
        for place, name in enumerate(shown):
            widget = ElidedButton(name)
            widget.set_thumbnail_size(_THUMBNAIL + QSize(_BEFORE_NAME_PX, 0), max(shown, key=len))
            widget.setIcon(self._thumbnail())
            widget.setChecked(clip is not None or name == chosen or (not chosen and place == 0))
            self._group.addButton(widget, place)
            self.cameras.append(widget)
        self._tiles.offer(self.cameras)
        self.refresh()
        if not shown:
            self.camera.say(trouble_sentence(SourceFault.CAMERA_MISSING))

    def _thumbnail(self, small: QImage | None = None, *, crossed: bool = False) -> QIcon:
        """Return a small picture, or a drawn camera, with room between it and the name."""
        whole = QPixmap(_THUMBNAIL + QSize(_BEFORE_NAME_PX, 0))
        whole.fill(Qt.GlobalColor.transparent)
        place = QRect(QPoint(0, 0), _THUMBNAIL)
        painter = QPainter(whole)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(place, self._services.appearance.colour("sunken"))
        if small is None:
            around = QRectF(place).adjusted(0, 4, 0, -4)
            paint_camera(painter, self._services.appearance, around, crossed=crossed)
        else:
            at = QRect(QPoint(0, 0), small.size())
            at.moveCenter(place.center())
            painter.drawImage(at.topLeft(), small)
        painter.end()
        return QIcon(whole)

    @Slot(int)
    def _choose_camera(self, place: int) -> None:
        """Remember the camera by its name: numbers change with what is plugged in."""
        if not self._services.clips:
            self._services.settings.camera = self.cameras[place].accessibleName()
            self._reopen()

    @Slot()
    def _show_calibration(self) -> None:
        """Let the camera that is shown as chosen be the chosen one: what is known has its name."""
        chosen = self._group.checkedButton()
        settings = self._services.settings
        if settings.camera is None and chosen is not None and not self._services.clips:
            settings.camera = chosen.accessibleName()
        self.calibration_requested.emit()

    # -- what the camera gives ----------------------------------------------------------------

    @Slot(object)
    def _take_frame(self, frame: LiveFrame) -> None:
        self._frame = frame
        now = time.monotonic()
        if now - self._thumbnail_at >= _THUMBNAIL_EVERY_S:
            self._thumbnail_at = now
            self._show_thumbnail(frame)
            self.refresh()

    def _show_thumbnail(self, frame: LiveFrame) -> None:
        chosen = self._group.checkedButton()
        if chosen is not None:
            small = image_of(frame).scaled(
                _THUMBNAIL,
                Qt.AspectRatioMode.KeepAspectRatio,
                Qt.TransformationMode.FastTransformation,
            )
            chosen.setIcon(self._thumbnail(small))

    @Slot(object)
    def _take_event(self, event: LiveEvent) -> None:
        if event.kind is LiveEventKind.TROUBLE:
            self._frame = None
            chosen = self._group.checkedButton()
            if chosen is not None:
                # What it saw last is no more.
                chosen.setIcon(self._thumbnail(crossed=True))
        elif event.kind is LiveEventKind.HAND_RAISED and self._asked and event.side:
            self._take_hand(event.side)
        self.refresh()

    @Slot()
    def refresh(self) -> None:
        """Say the one thing to do, and how the place is."""
        frame = self._frame
        if self._asked is not None:
            self.camera.say(raise_sentence(self._asked))
        elif frame is None:
            self.camera.say(tr("Opening the camera."))
        elif frame.setup_hints:
            self.camera.say(setup_sentence(frame.setup_hints[0]))
        elif frame.points_px is None:
            self.camera.say(tr("Stand where the camera sees you from head to hips."))
        else:
            self.camera.say(tr("This is a good place."))
        good = frame is not None and not frame.setup_hints and frame.points_px is not None
        give_role(self.start, "main" if good and self._asked is None else "")
        pictures = not self.camera.lacks_picture
        asking = self._asked is not None and self.camera.trouble is None
        self.start.setEnabled(pictures and not asking)
        self.start.setVisible(pictures and not asking)
        amiss = bool(frame and frame.setup_hints)
        self.start.say(tr("Start anyway") if amiss else tr("Start measuring"))
        give_role(self.camera.retry, "" if pictures else "main")
        self.search_again.setVisible(self.more.isChecked() or not self.cameras)
        seen = None if self.camera.trouble else frame
        self._place.setVisible(self._asked is None and self.camera.trouble is None)
        self.unseen.setVisible(seen is None)
        self._show_checks(seen)
        self.hand_words.setVisible(bool(self.hand_words.text()) and self.camera.trouble is None)
        self.camera.video.set_framing(not asking, line_amiss(frame))
        if asking:
            self.more.setChecked(False)
        self.more.setVisible(not asking)
        self._tiles.setVisible(not asking and self._offers_cameras(pictures=pictures))
        for member in (self._drawn, self.end_asking, self.other_hand):
            member.setVisible(asking)

    def _show_checks(self, seen: LiveFrame | None) -> None:
        """Say how the place is in a frame, first what is not right yet; nothing without one."""
        said = {place: aspect_text(place, seen) for place in self.checks}
        amiss_first = sorted(said, key=lambda place: said[place][0] != AMISS)
        for place, words in self.checks.items():
            sign, line = said[place]
            wrong = sign == AMISS
            role = FAR_WRONG if wrong else FAR_STEP
            words.say(sign, line, role=role, sign_role=FAR_GOOD if sign == GOOD else role)
            words.setVisible(seen is not None)
        for rule in self._rules:
            rule.setVisible(seen is not None)
        if amiss_first != self._in_order:
            self._put_in_order(amiss_first)

    @Slot(bool)
    def _show_extras(self, shown: bool) -> None:
        """Show what few people need, from the cameras on, or put it away."""
        self._extras.setVisible(shown)
        self.refresh()
        if shown:
            bring_to_top(self._tiles if self.cameras else self._extras)

    def _offers_cameras(self, *, pictures: bool) -> bool:
        """Return whether the cameras are to be seen: where they have room, or when asked for.

        One camera that works leaves nothing to choose.
        """
        if self.more.isChecked() or not self.cameras:
            return bool(self.cameras)
        large = self._services.appearance.percent >= LARGE_FROM_PERCENT
        fit = len(self.cameras) <= _TILES and not large
        return fit and not (pictures and len(self.cameras) == 1)

    # -- sound and voice ----------------------------------------------------------------------

    @Slot()
    def play_tone(self) -> None:
        """Sound the tone of a captured trial."""
        cues = self._services.cues
        cues.warm_up()
        cues.try_tone(Tone.CAPTURED)
        silent = tr("No sound device was found. The same words are on the screen.")
        heard = tr("If you heard nothing, turn up the volume of the computer.")
        self.sound_words.setText(heard if cues.has_sound else silent)

    @Slot()
    def say_sentence(self) -> None:
        """Speak as while measuring."""
        cues = self._services.cues
        cues.warm_up()
        cues.try_voice(tr("This is the voice that tells you what to do."))
        silent = tr("No voice was found on this computer. Tones and the screen guide you instead.")
        heard = tr("If you heard nothing, turn up the volume of the computer.")
        self.sound_words.setText(heard if cues.has_voice else silent)

    # -- left and right -----------------------------------------------------------------------

    @Slot()
    def ask_for_hand(self) -> None:
        """Ask for a raised hand, to find out whether the source shows a mirror image."""
        self._ask_for(Side.RIGHT)

    @Slot()
    def _ask_for_other_hand(self) -> None:
        if self._asked is not None:
            self._ask_for(self._asked.other)

    def _ask_for(self, side: Side) -> None:
        self._asked = side
        self.hand_words.setText("")
        self.hand_figure.show_raised_hand(side, mirrored=self._services.mirrored)
        other = tr("Use the left hand") if side is Side.RIGHT else tr("Use the right hand")
        self.other_hand.say(other)
        self.refresh()

    @Slot()
    def _stop_asking(self) -> None:
        self._asked = None
        self.refresh()

    def _take_hand(self, side: Side) -> None:
        services = self._services
        camera = services.settings.camera
        was = services.settings.already_mirrored(camera)
        check = SideCheck.AS_EXPECTED if side is self._asked else SideCheck.EXCHANGED
        if check is SideCheck.EXCHANGED:
            services.settings.set_already_mirrored(camera, not was)
        self._asked = None
        self.hand_words.setText(side_check_text(check))
        self.hand_words.setVisible(True)
        if check is SideCheck.EXCHANGED:
            self._reopen()

    @Slot(bool)
    def _mirror_toggled(self, wanted: bool) -> None:
        self._services.settings.mirror_preview = wanted
        self.camera.video.set_mirrored(wanted)
        self.mirror_changed.emit(wanted)
