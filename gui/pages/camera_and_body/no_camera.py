"""What a page says while its camera gives no picture: details in its place, steps beside it."""

from PySide6.QtCore import QEvent, QObject, QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from gui.pages.camera_and_body.picture_page import Steps
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.camera_view import CameraView
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.video_view import VideoView
from measure.camera.faults import SourceFault

#: Height of the drawn camera as a share of its place, and how far it stands from the middle.
#: [technical]
_HIGH = 0.26
#: Width of its lines as a share of its height. [technical]
_LINE = 0.05


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
        high = self.height() * _HIGH
        # Above the middle where the details of the trouble stand in it.
        up = high * bool(self._video.empty_text)
        middle = QPointF(self.width() / 2, self.height() / 2 - up)
        pen = QPen(self.appearance.colour("edge"), high * _LINE)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        painter.setBrush(self.appearance.colour("raised"))
        body = QRectF(middle.x() - 0.8 * high, middle.y() - high / 2, 1.6 * high, high)
        painter.drawRoundedRect(body, high * 0.16, high * 0.16)
        painter.drawEllipse(middle, high * 0.28, high * 0.28)
        away = QPointF(0.95 * high, -0.62 * high)
        for colour, wide in (("sunken", 4 * _LINE), ("hold", 1.5 * _LINE)):
            painter.setPen(QPen(self.appearance.colour(colour), high * wide))
            painter.drawLine(middle - away, middle + away)


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
            self.show_steps((*_steps(trouble), tr("Then press Try again.")))


def _steps(trouble: SourceFault) -> tuple[str, ...]:
    """Return what to do about a trouble, one step after the other."""
    plugged = tr("Check that the plug of the camera sits firmly.")
    other = tr("Or choose another camera on the Set-up page.")
    return {
        SourceFault.CAMERA_DENIED: (
            tr("Open the privacy settings of this computer."),
            tr("Go to Camera, and allow it for Thawline."),
        ),
        SourceFault.CAMERA_BUSY: (
            tr("Close video calls and other programs that show your picture."),
        ),
        SourceFault.CAMERA_MISSING: (plugged, other),
        SourceFault.CAMERA_UNPLUGGED: (plugged,),
        SourceFault.CAMERA_BLACK: (
            tr("Open the cover of the camera."),
            tr("Switch on a light in front of you."),
        ),
        SourceFault.CAMERA_STUCK: (
            tr("Unplug the camera and wait a moment."),
            tr("Plug it in again."),
        ),
    }.get(trouble, ())
