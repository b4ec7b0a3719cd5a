"""Transform from pixels of a video frame to units of a widget. No Qt.

The frame is fitted whole into a rectangle, centred, and mirrored on request. Frame and landmarks
share the transform, so they cannot come apart.
"""

from dataclasses import dataclass

import numpy as np

from measure.domain.landmarks import FloatArray


@dataclass(frozen=True, slots=True, kw_only=True)
class VideoTransform:
    """Transform from pixels of a frame, y down, to units of a widget, y down.

    Attributes
    ----------
    width_px, height_px
        Size of the frame, at least 1.
    left, top, width, height
        The rectangle that the frame fills, in the widget's logical units.
    mirrored
        True to exchange left and right.
    """

    width_px: int
    height_px: int
    left: int
    top: int
    width: int
    height: int
    mirrored: bool = False

    @classmethod
    def fitted(
        cls,
        frame_px: tuple[int, int],
        space: tuple[float, float],
        *,
        mirrored: bool = False,
    ) -> "VideoTransform":
        """Fit a frame of (width, height) whole into a space of (width, height).

        The rectangle lies on whole units, where drawing it is fast and sharp.
        """
        width_px, height_px = frame_px
        scale = min(space[0] / width_px, space[1] / height_px)
        width, height = max(1, int(width_px * scale)), max(1, int(height_px * scale))
        return cls(
            width_px=width_px,
            height_px=height_px,
            left=int(space[0] - width) // 2,
            top=int(space[1] - height) // 2,
            width=width,
            height=height,
            mirrored=mirrored,
        )

    def points(self, points_px: FloatArray) -> FloatArray:
        """Return points, shape (..., 2), in the widget; NaN stays NaN.

        Centres of pixels lie at whole numbers, so the frame's left edge is at x = -0.5.
        """
        x = (points_px[..., 0] + 0.5) * (self.width / self.width_px)
        y = (points_px[..., 1] + 0.5) * (self.height / self.height_px)
        if self.mirrored:
            x = self.width - x
        return np.stack([self.left + x, self.top + y], axis=-1)
