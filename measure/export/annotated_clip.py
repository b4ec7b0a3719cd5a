"""Annotated clip: the analysed frames with trunk line, arm and value drawn in."""

import math
import os
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from measure.clips.read import ClipReading
from measure.domain.landmarks import Landmark, arm
from measure.errors import DataError
from measure.export.clip_series_csv import part_of, refined_series
from measure.report.measurement_wording import number_text
from measure.system.atomic_files import private_descriptor, write_errors
from measure.video.frame import FrameNormalizer
from measure.video.reader import ClipReader
from measure.video.sampling import COARSE_HZ
from measure.video.source import open_clip

_DARK, _LIGHT = (38, 48, 34), (244, 250, 246)


def write_annotated(clip: Path, path: Path, reading: ClipReading) -> None:
    """Write the frames that the coarse pass analysed, each with its own landmarks drawn.

    Only those, since landmarks belong to the frame in which they were detected. The clip
    therefore plays at the rate of the coarse pass, at true speed, without sound. A new file can be
    read by its owner alone.

    Raises
    ------
    DataError
        When the clip cannot be written.
    """
    import cv2

    track, refined = reading.track, refined_series(reading)
    size = (track.width_px, track.height_px)
    # It holds the person's picture: what OpenCV writes keeps the rights of the file that is there.
    with write_errors(path):
        os.close(private_descriptor(path))
    writer = cv2.VideoWriter(str(path), cv2.VideoWriter.fourcc(*"mp4v"), COARSE_HZ, size)
    if not writer.isOpened():
        raise DataError(f"{path} cannot be written. Choose a folder that you may write to.")
    source = open_clip(clip)
    try:
        camera = reading.measurement.provenance.setup.camera
        normalizer = FrameNormalizer(
            sample_aspect=source.facts.sample_aspect,
            quarter_turns=camera.quarter_turns,
            already_mirrored=camera.already_mirrored,
        )
        for frame in ClipReader(source, clip.name, rate_hz=COARSE_HZ).frames():
            if frame.pixels is None:
                continue
            place = int(np.searchsorted(track.time_s, frame.time_s - 1e-4))
            if place >= len(track) or abs(track.time_s[place] - frame.time_s) > 1e-3:
                continue
            image = cv2.cvtColor(normalizer.normalize(frame.pixels).rgb, cv2.COLOR_RGB2BGR)
            if (image.shape[1], image.shape[0]) != size:
                image = cv2.resize(image, size)
            value = refined[place] if np.isfinite(refined[place]) else reading.guide[place]
            _draw(image, reading, place, float(value))
            writer.write(image)
    finally:
        source.close()
        writer.release()


def _draw(image: NDArray[Any], reading: ClipReading, place: int, value: float) -> None:
    points = reading.track.points_px[place]
    measurement = reading.measurement
    own, other = arm(measurement.side), arm(measurement.side.other)
    if np.all(np.isfinite(points)):
        shoulders = (points[Landmark.LEFT_SHOULDER] + points[Landmark.RIGHT_SHOULDER]) / 2
        hips = (points[Landmark.LEFT_HIP] + points[Landmark.RIGHT_HIP]) / 2
        _line(image, shoulders, hips, 2)
        _line(image, points[other.shoulder], points[other.elbow], 1)
        _line(image, points[other.elbow], points[other.wrist], 1)
        _line(image, points[own.shoulder], points[own.elbow], 4)
        _line(image, points[own.elbow], points[own.wrist], 4)
        for mark in (own.shoulder, own.elbow, own.wrist):
            _dot(image, points[mark])
    words = "-" if not math.isfinite(value) else number_text(value, measurement.unit, mark=False)
    part = part_of(measurement, float(reading.track.time_s[place]))
    _text(image, f"{words}  {part}", (12, 40), 1.1)
    _text(image, "estimate, not a diagnosis", (12, image.shape[0] - 14), 0.5)


def _line(image: NDArray[Any], start: NDArray[Any], end: NDArray[Any], width: int) -> None:
    import cv2

    ends = tuple(np.round(start).astype(int)), tuple(np.round(end).astype(int))
    cv2.line(image, *ends, _DARK, width + 3, cv2.LINE_AA)
    cv2.line(image, *ends, _LIGHT, width, cv2.LINE_AA)


def _dot(image: NDArray[Any], place: NDArray[Any]) -> None:
    import cv2

    centre = tuple(np.round(place).astype(int))
    cv2.circle(image, centre, 7, _DARK, -1, cv2.LINE_AA)
    cv2.circle(image, centre, 4, _LIGHT, -1, cv2.LINE_AA)


def _text(image: NDArray[Any], text: str, place: tuple[int, int], scale: float) -> None:
    """Write light text on a dark plate: readable on any wall."""
    import cv2

    font = cv2.FONT_HERSHEY_SIMPLEX
    (width, height), below = cv2.getTextSize(text, font, scale, 2)
    left, foot = place
    cv2.rectangle(
        image, (left - 6, foot - height - 6), (left + width + 6, foot + below + 2), _DARK, -1
    )
    cv2.putText(image, text, place, font, scale, _LIGHT, 2, cv2.LINE_AA)
