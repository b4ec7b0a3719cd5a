"""Clips for the speed bench, made from the sample clips by the program ffmpeg."""

import subprocess
from pathlib import Path

from measure.clips.inputs import ClipEntry
from measure.domain.landmarks import Side
from measure.domain.movements import Movement

_CLIPS = Path(__file__).resolve().parents[2] / "sample_clips" / "clips"
#: Frames a second of most phones and webcams; the sample clips have fewer.
USUAL_FPS = 30
#: Clips that are read, with what they show.
READ = (
    ("flexion-left-restricted", Movement.FLEXION, Side.LEFT),
    ("abduction-right-restricted", Movement.ABDUCTION, Side.RIGHT),
    ("extension-left-full", Movement.EXTENSION, Side.LEFT),
    ("external-rotation-left-full", Movement.EXTERNAL_ROTATION, Side.LEFT),
)


def usual_entries(folder: Path) -> tuple[ClipEntry, ...]:
    """Return the clips brought to the usual frame rate; frames are repeated where needed."""
    return tuple(
        ClipEntry(
            clip=_made(
                _CLIPS / f"{name}.mp4", folder / f"{name}.mp4", "-vf", f"fps={USUAL_FPS}", *_GOOD
            ),
            movement=movement,
            side=side,
        )
        for name, movement, side in READ
    )


def usual_frames(clip: Path) -> int:
    """Return how many frames a clip has."""
    asked = ["ffprobe", "-v", "error", "-select_streams", "v", "-count_packets"]
    asked += ["-show_entries", "stream=nb_read_packets", "-of", "csv=p=0", str(clip)]
    return int(subprocess.run(asked, check=True, capture_output=True, text=True).stdout)


def usual_clip(folder: Path, seconds: int) -> Path:
    """Return the first clip at the usual rate, repeated or cut to a length."""
    filters = ("-t", str(seconds), "-vf", f"fps={USUAL_FPS}", *_GOOD)
    source = _CLIPS / f"{READ[0][0]}.mp4"
    return _made(source, folder / f"{seconds}s.mp4", *filters, loop=True)


def small_clips(folder: Path) -> tuple[ClipEntry, ...]:
    """Return small clips for work with hundreds of them: one with a trial, the others cut."""
    lengths = zip(READ, (4.5, 1.5, 1.5, 1.5), (320, 480, 320, 640), strict=True)
    return tuple(
        ClipEntry(
            clip=_made(
                _CLIPS / f"{name}.mp4",
                folder / f"small-{name}.mp4",
                *("-t", f"{seconds}", "-vf", f"scale={width}:-2", *_GOOD),
            ),
            movement=movement,
            side=side,
        )
        for (name, movement, side), seconds, width in lengths
    )


def long_clip(folder: Path, minutes: int) -> Path:
    """Return a small clip repeated for some minutes."""
    small = folder / "long-once.mp4"
    if not small.exists():
        _made(_CLIPS / f"{READ[0][0]}.mp4", small, "-vf", "scale=320:-2", *_GOOD)
    return _made(
        small, folder / f"{minutes}min.mp4", "-t", str(60 * minutes), "-c", "copy", loop=True
    )


_GOOD = ("-c:v", "libx264", "-preset", "veryfast", "-crf", "21", "-pix_fmt", "yuv420p", "-an")


def _made(source: Path, target: Path, *how: str, loop: bool = False) -> Path:
    before = ("-stream_loop", "-1") if loop else ()
    command = ["ffmpeg", "-nostdin", "-loglevel", "error", "-y", *before, "-i", str(source)]
    subprocess.run([*command, *how, str(target)], check=True)
    return target
