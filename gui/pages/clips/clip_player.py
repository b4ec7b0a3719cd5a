"""Player of a recorded clip: its picture with the figure, frame by frame, and the curve."""

import time
from collections.abc import Callable

import numpy as np
from PySide6.QtCore import QEvent, QObject, QRectF, QSize, Qt, QTimer, Signal, Slot
from PySide6.QtGui import (
    QKeySequence,
    QPainter,
    QPaintEvent,
    QPalette,
    QResizeEvent,
    QShortcut,
)
from PySide6.QtWidgets import QGridLayout, QSlider, QStyle, QStyleOptionSlider, QWidget

from gui.pages.clips.clip_chart import ClipChart
from gui.pages.clips.measurement_band import ASIDE_PX
from gui.pages.clips.play_buttons import PlayButtons
from gui.pages.clips.zoomable_video import ZoomableVideo
from gui.session.interfaces import ClipAnalysis, ClipThumbnails
from gui.style.appearance import Appearance
from gui.style.measures import BAR_PX, CARD_RADIUS_PX, GAP_PX
from gui.text.wording import tr
from gui.widgets.buttons import bind_keys
from gui.widgets.fold import MoreBelow
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
#: Room between the picture and the words beside it, pixels. [technical]
_APART_PX = 3 * GAP_PX
#: Room in the card of the picture and the words, pixels. [technical]
_INSIDE_PX = 2 * GAP_PX
#: Greatest share of the width for the buttons beside the curve, and the moment beneath them.
#: [technical]
_ASIDE_SHARE = 1 / 6
#: Greatest share of the width for the picture. [technical]
_MOST_SHARE = 0.57
#: Greatest height of the curve across the page, in lines of text. [technical]
_CURVE_LINES = 14
#: Greatest share of the height for the curve beneath the words. [technical]
_BESIDE_SHARE = 0.72
#: Height from which on there is room for a scale above the curve, in lines of text. [technical]
_SCALE_LINES = 28
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
    Picture, buttons and curve are always seen whole. At its end the room of a scroll bar is left.
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
        #: Whether the words beside the picture have room for a scale.
        self.has_room_above = False
        self._appearance = appearance
        self.video = ZoomableVideo(appearance)
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setAccessibleName(tr("frame of the clip"))
        self.slider.valueChanged.connect(self._draw_frame)
        self.slider.sliderPressed.connect(self.pause)
        self.moment = Moment("small")
        self._buttons = PlayButtons()
        self.play, self.back, self.on = self._buttons.play, self._buttons.back, self._buttons.on
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
        self._beneath = row(self._buttons, (self.slider, 1), self.moment, spacing=2 * GAP_PX)
        self._controls = widget_with(self._beneath)
        self._pictured = column(self.video, self._controls, 1, spacing=2 * GAP_PX)
        self._left = widget_with(self._pictured)
        self._words = scrollable(self._beside, wide=True)
        # The card shows through.
        self._words.setProperty("role", "clear")
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(0)
        self._grid.setVerticalSpacing(2 * GAP_PX)
        # The words begin with the room for a ring: it lies before the edge of the curve.
        self._grid.setColumnMinimumWidth(1, _APART_PX - ASIDE_PX)
        self._grid.setColumnMinimumWidth(2, ASIDE_PX)
        self._grid.setColumnStretch(3, 1)
        # The bar that scrolls them lies beside the page.
        self._grid.setColumnMinimumWidth(4, BAR_PX)
        self._grid.setRowStretch(0, 1)
        self._arrange(across=False)
        self._beside.installEventFilter(self)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the card that picture and words stand on, where the curve does not."""
        super().paintEvent(event)
        if not self.has_curve_across:
            return
        place = self._grid.cellRect(0, 0).united(self._grid.cellRect(0, 3))
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(self._appearance.colour("line"))
        painter.setBrush(self._appearance.colour("raised"))
        inside = QRectF(place).adjusted(0.5, 0.5, -0.5, -0.5)
        painter.drawRoundedRect(inside, CARD_RADIUS_PX, CARD_RADIUS_PX)
        painter.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def event(self, event: QEvent) -> bool:
        """Fit anew when the buttons need another height."""
        if event.type() is QEvent.Type.LayoutRequest:
            self._fit()
        return super().event(event)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Fit anew when the words beside the picture need another height."""
        if event.type() is QEvent.Type.LayoutRequest:
            self._fit()
        return super().eventFilter(watched, event)

    def _fit(self) -> None:
        """Give the picture the size that its buttons and the curve leave for it.

        The curve takes the whole width where the picture above it is large enough, and has slider
        and buttons with it; else it lies beneath the words, and they beneath the picture.
        """
        controls = self._aside_size().height() + 2 * _INSIDE_PX
        least = max(self.chart.least_height + self._slider_height(), controls)
        picture = _WORTHWHILE_LINES * self.fontMetrics().lineSpacing()
        across = self.height() - least - 2 * GAP_PX >= picture and self.chart.isVisibleTo(self)
        self._arrange(across=across)
        roomy = across and self.height() >= _SCALE_LINES * self.fontMetrics().lineSpacing()
        if roomy is not self.has_room_above:
            self.has_room_above = roomy
            self.rearranged.emit()
        if across:
            self._fit_across(least, picture)
        else:
            self._fit_beneath()

    def _fit_across(self, least: int, picture: int) -> None:
        """Give the curve the height that the words, and a picture of this height, leave for it."""
        words = self._words_height(round(self.width() * _MOST_SHARE))
        room = self.height() - max(words, picture + 2 * GAP_PX + 2 * _INSIDE_PX)
        most = _CURVE_LINES * self.fontMetrics().lineSpacing()
        high = max(least, min(most, room))
        self.chart.make_room(2 * _INSIDE_PX + self._aside_size().width(), self._slider_height())
        self.chart.setFixedHeight(high)
        size = self._fit_picture(self.height() - high - 2 * GAP_PX - 2 * _INSIDE_PX)
        self._left.setFixedWidth(size.width() + _INSIDE_PX)
        self._place_controls()

    def _fit_beneath(self) -> None:
        """Give the picture the height that its buttons leave, and the curve what the words do."""
        size = self._fit_picture(self.height() - self._controls.sizeHint().height() - 2 * GAP_PX)
        # The buttons stay in a row where that leaves the slider its least width.
        buttons, most = self._buttons.sizeHint().width(), round(self.width() * _MOST_SHARE)
        in_a_row = buttons + 2 * GAP_PX + _LEAST_SLIDER_PX + 2 * GAP_PX + self._moment_width(0)
        self._buttons.setMinimumWidth(buttons if in_a_row <= most else 0)
        needed = self._controls.minimumSizeHint().width()
        left = max(size.width(), needed, min(in_a_row, most))
        self._left.setFixedWidth(left)
        self.moment.setFixedWidth(self._moment_width(left - in_a_row))
        room = min(round(self.height() * _BESIDE_SHARE), self.height() - self._words_height(left))
        self.chart.setFixedHeight(max(self.chart.least_height, room))

    def _moment_width(self, spare: int) -> int:
        """Return the width of the moment: of all its words where the slider keeps enough room."""
        frames = 0 if self._pictures is None else len(self._pictures.times_s)
        metrics = self.moment.fontMetrics()
        long, short = (metrics.horizontalAdvance(words) + 1 for words in self._words_at(frames - 1))
        return long if spare >= long - short + _LEAST_SLIDER_PX else short

    def _fit_picture(self, room: int) -> QSize:
        """Make the picture as large as its share of the width and a height allow."""
        most = round(self.width() * _MOST_SHARE)
        wide, high = self.video.picture_shape
        height = max(_LEAST_PICTURE_PX, min(room, most * high // wide))
        size = QSize(min(most, height * wide // high), height)
        self.video.setFixedSize(size)
        return size

    def _words_height(self, left: int) -> int:
        """Return the height that the words beside a picture of this width take from the curve."""
        wide = self.width() - left - _APART_PX + ASIDE_PX - BAR_PX
        return self._beside.heightForWidth(wide) + 3 * GAP_PX

    def _slider_height(self) -> int:
        """Return the height of the slider above the curve, with the room above it."""
        return GAP_PX + self.slider.sizeHint().height()

    def _aside_size(self) -> QSize:
        """Return the size of the buttons beside the curve with the moment beneath them.

        It is the one that the last frame needs, so that the curve stays where it is.
        """
        buttons, metrics = self._buttons.stacked_size(), self.moment.fontMetrics()
        frames = 0 if self._pictures is None else len(self._pictures.times_s)
        long, short = (metrics.horizontalAdvance(words) + 1 for words in self._words_at(frames - 1))
        words = long if long <= self.width() * _ASIDE_SHARE else short
        high = buttons.height() + GAP_PX + metrics.lineSpacing()
        return QSize(max(buttons.width(), words), high)

    def _arrange(self, *, across: bool) -> None:
        """Put the curve across the whole width with the controls, or beneath the words."""
        if self._grid.count() and across is self.has_curve_across:
            return
        self.has_curve_across = across
        inside = _INSIDE_PX * across
        beside = max(0, inside - ASIDE_PX)
        self._pictured.setContentsMargins(inside, inside, 0, inside)
        lines = self._beside.layout()
        if lines is not None:
            lines.setContentsMargins(0, inside, beside, inside)
        # The lower edge of the card and its corner stay.
        self._words.setViewportMargins(0, 0, 0, 1 if across else 0)
        roles = QPalette.ColorRole
        for fold in self._words.findChildren(MoreBelow):
            fold.stand_on(roles.Base if across else roles.Window, beside)
        self._grid.addWidget(self._left, 0, 0, 1 if across else 2, 1)
        self._grid.addWidget(self._words, 0, 2, 1, 3)
        self._grid.addWidget(self.chart, 1, 0 if across else 3, 1, 4 if across else 1)
        self._controls.setVisible(not across)
        self._buttons.stack(across)
        if across:
            self._buttons.setMinimumWidth(0)
            self.moment.setMinimumWidth(0)
            self.moment.setMaximumWidth(self.maximumWidth())
            for control in (self._buttons, self.moment, self.slider):
                control.setParent(self.chart)
                control.show()
        else:
            self.chart.make_room(0, 0)
            self._beneath.insertWidget(0, self._buttons)
            self._beneath.insertWidget(1, self.slider, 1)
            self._beneath.insertWidget(2, self.moment)
        self.rearranged.emit()

    @Slot()
    def _place_controls(self) -> None:
        """Lay the buttons and the moment beside the curve, the slider along its time above it."""
        if not self.has_curve_across:
            return
        aside, buttons = self._aside_size(), self._buttons.stacked_size().height()
        top = (self.chart.height() - aside.height()) // 2
        self._buttons.setGeometry(_INSIDE_PX, top, aside.width(), buttons)
        top += buttons + GAP_PX
        self.moment.setGeometry(_INSIDE_PX, top, aside.width(), aside.height() - buttons - GAP_PX)
        times_s = (0.0, 1.0) if self._pictures is None else self._pictures.times_s
        first, last = (self.chart.across(float(times_s[place])) for place in (0, -1))
        # The middle of the thumb stands above the moment of the picture.
        thumb = self._thumb_width()
        high = self.slider.sizeHint().height()
        self.slider.setGeometry(first - thumb // 2, GAP_PX, last - first + thumb, high)

    def _thumb_width(self) -> int:
        option = QStyleOptionSlider()
        self.slider.initStyleOption(option)
        part = QStyle.SubControl.SC_SliderHandle
        kind = QStyle.ComplexControl.CC_Slider
        return self.slider.style().subControlRect(kind, option, part, self.slider).width()

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
            self._place_controls()
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
        self._place_controls()

    @Slot()
    def pause(self) -> None:
        self._clock.stop()
        self.play.say(tr("Play"))
        self._place_controls()

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
        self.moment.say_moment(*self._words_at(number))
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

    def _words_at(self, number: int) -> tuple[str, str]:
        """Return which frame one is and its time, and its time alone."""
        if self._pictures is None:
            return "", ""
        times_s = self._pictures.times_s
        time = number_words(float(times_s[number]), 2, tr)
        words = tr("Frame {number} of {total}, {time} s").format(
            number=number + 1, total=len(times_s), time=time
        )
        return words, f"{time} s"

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
