"""What a page says while its camera gives no picture: details in its place, steps beside it."""

from PySide6.QtCore import QEvent, QObject, QRectF, Qt
from PySide6.QtGui import QPainter

from gui.pages.camera_and_body.picture_page import Steps
from gui.style.appearance import Appearance
from gui.text.session_wording import trouble_steps
from gui.text.wording import tr
from gui.widgets.camera_trouble import paint_camera_off
from gui.widgets.camera_view import CameraView
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.video_view import VideoView

#: Height of the drawn camera as a share of its place. [technical]
_HIGH = 0.5


class CameraOff(PaintedWidget):
    """A camera crossed out, over the place of a picture that does not come."""

    def __init__(self, appearance: Appearance, video: VideoView) -> None:
        super().__init__(appearance, video)
        self._video = video
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        video.installEventFilter(self)
        self.hide()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() is QEvent.Type.Resize:
            self.setGeometry(self._video.rect())
        return super().eventFilter(watched, event)

    def paint(self, painter: QPainter) -> None:
        place = QRectF(self.rect())
        # Above the middle where the details of the trouble stand in it.
        high = _HIGH * place.height()
        top = (place.height() - high) / 2 - high * bool(self._video.empty_text) / 2
        paint_camera_off(painter, self.appearance, QRectF(0, top, place.width(), high))


class TroubleSteps(Steps):
    """What to do about a camera that gives no picture."""

    def __init__(self, appearance: Appearance, camera: CameraView) -> None:
        super().__init__()
        self._camera, self._drawing = camera, CameraOff(appearance, camera.video)
        camera.troubled.connect(self._show)
        self.hide()

    def _show(self, troubled: bool) -> None:
        self.setVisible(troubled)
        self._drawing.setVisible(troubled)
        trouble = self._camera.trouble
        if trouble is not None:
            self.show_steps((*trouble_steps(trouble), tr("Then press Try again.")))
