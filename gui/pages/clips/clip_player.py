"""Player of a recorded clip: its picture with the figure, frame by frame, and the curve."""

import time
from collections.abc import Callable

import numpy as np
from PySide6.QtCore import QEvent, QSize, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QKeySequence, QResizeEvent, QShortcut
from PySide6.QtWidgets import QGridLayout, QSlider, QWidget

from gui.pages.clips.clip_chart import ClipChart
from gui.pages.clips.zoomable_video import ZoomableVideo
from gui.session.interfaces import ClipAnalysis, ClipThumbnails
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.buttons import FlowRow, ShortcutButton, bind_keys, button
from gui.widgets.layouts import column, row, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import ElidedLabel
from measure.domain.landmarks import FloatArray, Side
from measure.domain.measurements import Trial
from measure.live.events import LiveFrame, Phase
from measure.progress.wording import number_words

#: Time between two looks at the clock while a clip plays, milliseconds. [technical]
_PLAY_INTERVAL_MS = 15
#: Least height of the picture, pixels. [technical]
_LEAST_PICTURE_PX = 180
#: Least width of the slider beside the buttons in a row, pixels. [technical]
_LEAST_SLIDER_PX = 104
#: Width of the slider's handle, pixels. [technical]
_HANDLE_PX = 26
#: Greatest share of the width for the picture. [technical]
_MOST_SHARE = 0.57
#: Share of the height for the curve across the page, and the most of it beneath the words.
#: [technical]
_CURVE_SHARE, _BESIDE_SHARE = 0.3, 0.62
#: Height from which on a picture above the curve is large enough, in lines of text. [technical]
_WORTHWHILE_LINES = 9


class ClipPlayer(QWidget):
    """Plays a clip, and shows the frame that slider, key or curve choose.

    Parameters
    ----------
    beside
        What stands beside the picture, above the curve; it scrolls where it has no room.

    Notes
    -----
    Picture, buttons and curve are always seen whole.
    """

    #: The curve has gone to another place.
    rearranged = Signal()

    def __init__(self, appearance: Appearance, beside: QWidget) -> None:
        super().__init__()
        self._pictures: ClipThumbnails | None = None
        self._analysis: ClipAnalysis | None = None
        self._began = (0.0, 0.0)
        self._beside = beside
        #: Whether the curve takes the whole width.
        self.has_curve_across = False
        self.video = ZoomableVideo(appearance)
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setAccessibleName(tr("frame of the clip"))
        self.slider.valueChanged.connect(self._draw_frame)
        self.slider.sliderPressed.connect(self.pause)
        self.moment = Moment("small")
        self.play = button(tr("Play"), key=tr("Space"))
        self.back = step_button("\u2190", tr("Previous frame"))
        self.on = step_button("\u2192", tr("Next frame"))
        self.chart = ClipChart(appearance)
        self.chart.moved.connect(self.show_moment)
        self.chart.placed.connect(self._place_controls)
        self._clock = QTimer(self)
        self._clock.setInterval(_PLAY_INTERVAL_MS)
        self._clock.timeout.connect(self._go_on)
        self._lay_out()
        self.play.clicked.connect(self.play_or_pause)
        self.back.clicked.connect(lambda: self.step(-1))
        self.on.clicked.connect(lambda: self.step(1))

    def _lay_out(self) -> None:
        self._buttons = FlowRow(GAP_PX, filling=False)
        self._buttons.offer([self.back, self.play, self.on])
        self._moved = column(1, self.slider, self.moment, 1, spacing=0)
        self._beneath = row(self._buttons, (self._moved, 1), spacing=2 * GAP_PX)
        self._controls = widget_with(self._beneath)
        self._left = widget_with(column(self.video, self._controls, 1, spacing=GAP_PX))
        self._words = scrollable(self._beside, wide=True)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(3 * GAP_PX)
        self._grid.setVerticalSpacing(2 * GAP_PX)
        self._grid.setColumnStretch(1, 1)
        self._grid.setRowStretch(0, 1)
        self._arrange(across=False)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def event(self, event: QEvent) -> bool:
        """Fit anew when the buttons need another height."""
        if event.type() is QEvent.Type.LayoutRequest:
            self._fit()
        return super().event(event)

    def _fit(self) -> None:
        """Give the picture the size that its buttons and the curve leave for it.

        The curve takes the whole width where the picture above it is large enough, and has slider
        and buttons with it; else it lies beneath the words, and they beneath the picture.
        """
        shown = self.chart.isVisibleTo(self)
        least = self.chart.least_height
        slid = least + self.slider.sizeHint().height() + GAP_PX
        curve = max(slid, round(self.height() * _CURVE_SHARE)) + 2 * GAP_PX
        worthwhile = _WORTHWHILE_LINES * self.fontMetrics().lineSpacing()
        across = self.height() - curve >= worthwhile and shown
        self._arrange(across=across)
        self.chart.setFixedHeight(curve - 2 * GAP_PX if across else self._height_beneath(least))
        controls = 0 if across else self._controls.sizeHint().height() + GAP_PX
        room = self.height() - controls - curve * across
        most = round(self.width() * _MOST_SHARE)
        wide, high = self.video.picture_shape
        height = max(_LEAST_PICTURE_PX, min(room, most * high // wide))
        size = QSize(min(most, height * wide // high), height)
        self.video.setFixedSize(size)
        if across:
            self._left.setFixedWidth(size.width())
            self._place_controls()
            return
        # The buttons stay in a row where that leaves the slider its least width.
        buttons = self._buttons.sizeHint().width()
        in_a_row = (
            buttons + 2 * GAP_PX + max(_LEAST_SLIDER_PX, self.moment.minimumSizeHint().width())
        )
        self._buttons.setMinimumWidth(buttons if in_a_row <= most else 0)
        needed = self._controls.minimumSizeHint().width()
        self._left.setFixedWidth(max(size.width(), needed, min(in_a_row, most)))

    def _height_beneath(self, least: int) -> int:
        """Return the height that the words above the curve leave for it."""
        beside = self.width() - round(self.width() * _MOST_SHARE) - 3 * GAP_PX
        words = self._beside.heightForWidth(beside) + 3 * GAP_PX
        most = round(self.height() * _BESIDE_SHARE)
        return max(least, min(most, self.height() - words))

    def _arrange(self, *, across: bool) -> None:
        """Put the curve across the whole width with the controls, or beneath the words."""
        if self._grid.count() and across is self.has_curve_across:
            return
        self.has_curve_across = across
        self._grid.addWidget(self._left, 0, 0, 1 if across else 2, 1)
        self._grid.addWidget(self._words, 0, 1)
        self._grid.addWidget(self.chart, 1, 0 if across else 1, 1, 2 if across else 1)
        self._controls.setVisible(not across)
        if across:
            self._buttons.setMinimumWidth(0)
            for control in (self._buttons, self.moment, self.slider):
                control.setParent(self.chart)
                control.show()
            gutter = self._buttons.sizeHint().width() + 2 * GAP_PX
            self.chart.make_room(gutter, self.slider.sizeHint().height() + GAP_PX)
        else:
            self.chart.make_room(0, 0)
            self._beneath.insertWidget(0, self._buttons)
            self._moved.insertWidget(1, self.slider)
            self._moved.insertWidget(2, self.moment)
        self.rearranged.emit()

    @Slot()
    def _place_controls(self) -> None:
        """Lay the slider over the curve's time, the buttons and the moment beside the curve."""
        if not self.has_curve_across or self._pictures is None:
            return
        buttons = self._buttons.sizeHint()
        self._buttons.setGeometry(2 * GAP_PX, 2 * GAP_PX, buttons.width(), buttons.height())
        line = self.moment.sizeHint().height()
        top = 3 * GAP_PX + buttons.height()
        self.moment.setGeometry(2 * GAP_PX, top, buttons.width(), line)
        times, high = self._pictures.times_s, self.slider.sizeHint().height()
        # The handle's middle is at an end where its edge is at the slider's.
        aside = _HANDLE_PX // 2
        left, right = (round(self.chart.place_of(float(times[at]))) for at in (0, -1))
        left, right = max(left, buttons.width()), min(right, self.chart.width())
        self.slider.setGeometry(left - aside, GAP_PX, right - left + 2 * aside, high)

    def bind_keys(self, page: QWidget) -> None:
        """Let the keys work anywhere on a page."""
        bind_keys(page, self.play, "Space")
        calls: tuple[tuple[str, Callable[[], None]], ...] = (
            ("Left", lambda: self.step(-1)),
            ("Right", lambda: self.step(1)),
            ("+", self.video.zoom_in),
            ("-", self.video.zoom_out),
            ("0", self.video.show_whole),
            ("Z", self.chart.zoom_in),
            ("X", self.chart.zoom_out),
            ("C", self.chart.show_whole),
        )
        for key, call in calls:
            shortcut = QShortcut(QKeySequence(key), page)
            shortcut.setContext(Qt.ShortcutContext.WidgetWithChildrenShortcut)
            shortcut.activated.connect(call)

    @property
    def playing(self) -> bool:
        return self._clock.isActive()

    def show_empty(self, text: str) -> None:
        """Show no clip, and say why."""
        self.pause()
        self._pictures = None
        self.video.show_empty(text)
        self.moment.say("")

    def show_clip(self, pictures: ClipThumbnails) -> None:
        """Show a clip from its beginning."""
        self.pause()
        self._pictures = pictures
        self.video.show_whole()
        self.slider.setRange(0, len(pictures.times_s) - 1)
        self.slider.setValue(0)
        self._draw_frame(0)
        self._fit()

    def show_analysis(self, analysis: ClipAnalysis | None, accepted: tuple[bool, ...] = ()) -> None:
        """Draw the curve of a clip that was read, and which of its trials are accepted."""
        self._analysis = analysis
        self.chart.setVisible(analysis is not None)
        if analysis is None:
            self.video.measure_arm(None, Side.RIGHT)
        else:
            measurement = analysis.measurement
            trials = zip(measurement.trials, accepted, strict=True)
            self.chart.show_curve(measurement.movement, analysis.curve, tuple(trials))
            self.video.measure_arm(measurement.movement, measurement.side)
        self._draw_frame(self.slider.value())

    @Slot(object)
    def show_trial(self, trial: Trial) -> None:
        """Show the middle of a trial's hold."""
        if trial.hold_start_s is not None and trial.hold_end_s is not None:
            self.show_moment((trial.hold_start_s + trial.hold_end_s) / 2)

    @Slot(float)
    def show_moment(self, time_s: float) -> None:
        """Show the frame nearest to a moment."""
        self.pause()
        self._show_nearest(time_s)

    def _show_nearest(self, time_s: float) -> None:
        if self._pictures is not None:
            self.slider.setValue(int(np.argmin(np.abs(self._pictures.times_s - time_s))))

    def step(self, frames: int) -> None:
        """Go some frames forwards or backwards."""
        self.pause()
        self.slider.setValue(self.slider.value() + frames)

    @Slot()
    def play_or_pause(self) -> None:
        """Play from the present frame, at the end from the beginning, or pause."""
        if self.playing or self._pictures is None:
            self.pause()
            return
        if self.slider.value() == self.slider.maximum():
            self.slider.setValue(0)
        self._began = time.monotonic(), float(self._pictures.times_s[self.slider.value()])
        self._clock.start()
        self.play.say(tr("Pause"))

    @Slot()
    def pause(self) -> None:
        self._clock.stop()
        self.play.say(tr("Play"))

    @Slot()
    def _go_on(self) -> None:
        """Show the frame that is due, at the speed at which it was filmed."""
        clock_s, began_s = self._began
        self._show_nearest(began_s + time.monotonic() - clock_s)
        if self.slider.value() == self.slider.maximum():
            self.pause()

    @Slot(int)
    def _draw_frame(self, number: int) -> None:
        if self._pictures is None:
            return
        time_s = float(self._pictures.times_s[number])
        time = number_words(time_s, 2, tr)
        words = tr("Frame {number} of {total}, {time} s").format(
            number=number + 1, total=len(self._pictures.times_s), time=time
        )
        self.moment.say_moment(words, f"{time} s")
        self.chart.show_moment(time_s)
        picture = self._pictures.at(time_s)
        self.video.show_frame(
            LiveFrame(
                picture=picture,
                frame_id=number,
                time_s=time_s,
                phase=Phase.DONE,
                points_px=self._points(time_s, picture.shape[1]),
            )
        )

    def _points(self, time_s: float, width_px: int) -> FloatArray | None:
        """Return the landmarks at a moment, shape (33, 2), in a picture of this width.

        Between two analysed frames they lie on the straight line from one to the other.
        """
        if self._analysis is None or not len(self._analysis.track):
            return None
        track = self._analysis.track
        after = int(np.clip(np.searchsorted(track.time_s, time_s), 1, max(1, len(track) - 1)))
        first, last = track.time_s[after - 1], track.time_s[min(after, len(track) - 1)]
        share = float(np.clip((time_s - first) / max(last - first, 1e-9), 0.0, 1.0))
        before_px = track.points_px[after - 1]
        points = before_px + share * (track.points_px[min(after, len(track) - 1)] - before_px)
        shrink = width_px / track.width_px
        placed: FloatArray = (points + 0.5) * shrink - 0.5
        return placed


def step_button(key: str, name: str) -> ShortcutButton:
    """Return a button that shows its key alone, and says its name to who hears or rests on it."""
    made = button(key)
    made.setAccessibleName(name)
    made.setToolTip(name)
    return made


class Moment(ElidedLabel):
    """Says which frame is shown, and where that has no room its time alone."""

    def __init__(self, role: str) -> None:
        super().__init__(role)
        self._short = ""

    def say_moment(self, words: str, short: str) -> None:
        """Show a moment, in its long words where they have room."""
        self._short = short
        self.say(words)

    def _fit(self) -> None:
        long = self.accessibleName()
        fits = self.fontMetrics().horizontalAdvance(long) <= self.width()
        self.setText(long if fits else self._short)
