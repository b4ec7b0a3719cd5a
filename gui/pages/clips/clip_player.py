"""Player of a recorded clip: its picture with the figure, a slider, and the curve over time."""

import numpy as np
from PySide6.QtCore import Qt, Slot
from PySide6.QtWidgets import QSlider, QWidget

from gui.session.interfaces import ClipAnalysis, ClipThumbnails
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.clip_chart import ClipChart
from gui.widgets.layouts import column, row
from gui.widgets.text import label
from gui.widgets.video_view import VideoView
from measure.domain.measurements import Trial
from measure.live.events import LiveFrame, Phase
from measure.progress.wording import number_words

#: Steps of the slider in a second. [technical]
_STEPS_S = 20


class ClipPlayer(QWidget):
    """Shows the moment that the slider or a click into the curve chooses."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._pictures: ClipThumbnails | None = None
        self._analysis: ClipAnalysis | None = None
        self.video = VideoView(appearance, smooth=True)
        self.video.show_empty(tr("Open a clip or a folder of clips."))
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setAccessibleName(tr("moment of the clip"))
        self.slider.valueChanged.connect(self._scrubbed)
        self.moment = label("", "quiet")
        self.moment.setWordWrap(False)
        self.chart = ClipChart(appearance)
        self.chart.moved.connect(self.show_moment)
        scrub = row((self.slider, 8), (self.moment, 1))
        column((self.video, 6), scrub, (self.chart, 4), on=self, spacing=24)

    def show_empty(self, text: str) -> None:
        """Show no clip, and say why."""
        self._pictures = None
        self.video.show_empty(text)

    def show_clip(self, pictures: ClipThumbnails) -> None:
        """Show a clip from its beginning."""
        self._pictures = pictures
        self.slider.setRange(0, max(1, round(pictures.duration_s * _STEPS_S)))
        self.show_moment(0.0)

    def show_analysis(self, analysis: ClipAnalysis | None, accepted: tuple[bool, ...] = ()) -> None:
        """Draw the curve of a clip that was read, and which of its trials are accepted."""
        self._analysis = analysis
        self.chart.setVisible(analysis is not None)
        if analysis is not None:
            measurement = analysis.measurement
            trials = zip(measurement.trials, accepted, strict=True)
            self.chart.show_curve(measurement.movement, analysis.curve, tuple(trials))
            self.video.measure_arm(measurement.movement, measurement.side)

    @Slot(object)
    def show_trial(self, trial: Trial) -> None:
        """Show the middle of a trial's hold."""
        if trial.hold_start_s is not None and trial.hold_end_s is not None:
            self.show_moment((trial.hold_start_s + trial.hold_end_s) / 2)

    @Slot(float)
    def show_moment(self, time_s: float) -> None:
        """Show the picture of a moment."""
        step = round(time_s * _STEPS_S)
        if self.slider.value() == step:
            self._draw_moment(time_s)
        self.slider.setValue(step)

    @Slot(int)
    def _scrubbed(self, step: int) -> None:
        self._draw_moment(step / _STEPS_S)

    def _draw_moment(self, time_s: float) -> None:
        self.moment.setText(f"{number_words(time_s, 1, tr)} s")
        self.chart.show_moment(time_s)
        if self._pictures is None:
            return
        picture = self._pictures.at(time_s)
        points = None
        if self._analysis is not None and len(self._analysis.track):
            track = self._analysis.track
            nearest = int(np.argmin(np.abs(track.time_s - time_s)))
            shrink = picture.shape[1] / track.width_px
            points = (track.points_px[nearest] + 0.5) * shrink - 0.5
        self.video.show_frame(
            LiveFrame(
                picture=picture, frame_id=0, time_s=time_s, phase=Phase.DONE, points_px=points
            )
        )
